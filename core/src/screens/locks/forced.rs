//! Taking off the lock of an absent owner: a named authority, the owner not on site, attempts to reach them, told before
//! they resume. The conditions are in [`forced_lacks`].

use super::{keep_as, put, sign_here};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::refusal::{LockRefusal, Refusal};
use crate::journal::{EntryId, Fact};
use crate::point::{Forced, Lock, Off, forced_lacks};
use crate::screens::build::Page;
use crate::screens::context::{Act, Look};
use crate::screens::home::UNKNOWN;
use crate::screens::parts::{EntryKind, Tone};
use crate::store::LockRow;
use crate::text::screens::locks as said;
use crate::text::{self, AskLock};

/// What is known of a forced removal and what it still lacks, or the form that begins one.
pub(super) fn show(look: &Look, job: &Job, lock: &Lock, page: &mut Page) {
    let owner = look.name(lock.owner);
    let Some(forced) = &lock.forced else {
        if lock.is_on() {
            begin(look, job, lock, &owner, page);
        }
        return;
    };
    let authority = look.name(forced.authority);
    page.heading(said::removal_title());
    page.fact(
        said::removal_authority(),
        said::removal_authority_is(authority, &forced.function, &forced.reached, look.by(&forced.begun)),
    );
    page.fact(said::removal_cannot_wait(), &forced.why);
    for (stamp, how) in &forced.not_on_site {
        page.fact(said::removal_not_on_site(look.by(stamp)), how);
    }
    for (stamp, how, outcome) in &forced.sought {
        page.fact(said::removal_sought(look.by(stamp)), said::removal_sought_how(how, outcome));
    }
    if let Some((stamp, how)) = &forced.told {
        page.fact(said::removal_told(look.by(stamp)), how);
    }
    if lock.is_on() {
        steps(look, lock, forced, &owner, page);
    } else if untold(lock).is_some() {
        let hint = said::removal_told_how_hint();
        page.entry("told-how", &said::removal_told_how(&owner), &hint, look.draft("told-how"));
        page.main(said::removal_has_been_told(owner), "told");
    }
}

/// The fact that a form of a forced removal keeps.
pub(super) fn fact(act: &Act, lock: EntryId, verb: &str) -> Result<Fact, NotDone> {
    Ok(match verb {
        "force" => Fact::ForcedBegun {
            lock,
            authority: act.need_id("authority", AskLock::Authority)?,
            function: act.need("force-function", AskLock::AuthorityIs)?,
            reached: act.need("force-reached", AskLock::AuthorityReached)?,
            why: act.need("force-why", AskLock::CannotWait)?,
        },
        "not-on-site" => Fact::OwnerNotOnSite { lock, how: act.need("absent-how", AskLock::NotOnSite)? },
        "sought" => Fact::OwnerSought {
            lock,
            how: act.need("sought-how", AskLock::SoughtHow)?,
            outcome: act.need("sought-outcome", AskLock::SoughtOutcome)?,
        },
        "told" => Fact::OwnerTold { lock, how: act.need("told-how", AskLock::ToldHow)? },
        _ => return Err(UNKNOWN.into()),
    })
}

/// Takes the lock off: the authority has the device and signs.
pub(super) fn sign(act: &mut Act, job: EntryId, lock: &Lock) -> Result<(), NotDone> {
    let forced = lock.forced.as_ref().ok_or(AskLock::AuthorityFirst)?;
    if let Some(lack) = forced_lacks(Some(forced)).first() {
        return Err(Refusal::Lock(LockRefusal::Forced(*lack)).into());
    }
    let authority = act.world().name(forced.authority);
    let mark = act.signature(&authority)?;
    let beside = act.app.padlock_beside(job, lock.stamp.id)?;
    keep_as(act, job, forced.authority, Fact::LockForced { lock: lock.stamp.id, mark: mark.clone() })?;
    for row in beside {
        elsewhere(act, forced, &row, &mark)?;
    }
    act.say = Some(said::removal_done(act.world().name(lock.owner), authority));
    Ok(())
}

/// The same padlock at a point of another job is off as well: what was found and tried for the one counts for the other.
fn elsewhere(act: &mut Act, forced: &Forced, row: &LockRow, mark: &str) -> Result<(), NotDone> {
    let (lock, job) = (row.fit, Some(row.job));
    let Forced { authority, function, reached, why, .. } = forced.clone();
    act.keep(job, Fact::ForcedBegun { lock, authority, function, reached, why })?;
    for (_, how) in &forced.not_on_site {
        act.keep(job, Fact::OwnerNotOnSite { lock, how: how.clone() })?;
    }
    for (_, how, outcome) in &forced.sought {
        act.keep(job, Fact::OwnerSought { lock, how: how.clone(), outcome: outcome.clone() })?;
    }
    act.keep(job, Fact::LockForced { lock, mark: mark.to_owned() }).map(drop)
}

/// Whether everything is there and the authority may sign.
pub(super) fn ready(lock: &Lock) -> bool {
    lock.is_on() && forced_lacks(lock.forced.as_ref()).is_empty()
}

/// The forced removal of which the owner does not know yet.
pub(super) fn untold(lock: &Lock) -> Option<&Forced> {
    let forced = lock.forced.as_ref()?;
    (matches!(lock.off, Some(Off::Forced(_))) && forced.told.is_none()).then_some(forced)
}

/// The sentence for [`untold`].
pub(super) fn must_tell(look: &Look, lock: &Lock, forced: &Forced) -> String {
    said::removal_must_tell(look.name(lock.owner), &lock.label, look.name(forced.authority))
}

fn begin(look: &Look, job: &Job, lock: &Lock, owner: &str, page: &mut Page) {
    page.heading(said::removal_if_absent(owner));
    page.caution(Tone::Forbid, said::removal_only_owner(owner));
    page.caution(Tone::Must, said::removal_conditions(owner));
    // Anybody known here, on the job or not, but for the owner and those who learn.
    let mut without: Vec<EntryId> = job.people().into_iter().filter(|p| job.learns(Some(*p))).collect();
    without.push(lock.owner);
    page.choice("authority", &said::removal_who_answers(), look.people(&without), look.draft("authority"));
    page.entry(
        "force-function",
        &said::removal_function(),
        &said::removal_function_hint(),
        look.draft("force-function"),
    );
    page.entry("force-reached", &said::removal_reached(), &said::removal_reached_hint(), look.draft("force-reached"));
    page.field("force-why", &said::removal_cannot_wait(), "", look.draft("force-why"), EntryKind::Long, 500);
    page.toned(said::removal_begin(), "force", Tone::Forbid);
}

fn steps(look: &Look, lock: &Lock, forced: &Forced, owner: &str, page: &mut Page) {
    let lacks = forced_lacks(Some(forced));
    for lack in &lacks {
        page.caution(Tone::Must, text::forced_lack(*lack));
    }
    // What is lacking next gets the main button; what is there already can be added to.
    let offer = |page: &mut Page, label: String, verb: &str, wanted: bool| {
        if wanted {
            put(page, label, verb);
        } else {
            page.button(label, verb);
        }
    };
    page.entry(
        "absent-how",
        &said::removal_found_absent(owner),
        &said::removal_found_absent_hint(),
        look.draft("absent-how"),
    );
    offer(page, said::removal_is_absent(owner), "not-on-site", forced.not_on_site.is_empty());
    page.entry("sought-how", &said::removal_tried(), &said::removal_tried_hint(), look.draft("sought-how"));
    page.entry("sought-outcome", &said::removal_outcome(), &said::removal_outcome_hint(), look.draft("sought-outcome"));
    offer(page, said::removal_save_attempt(), "sought", forced.sought.is_empty());
    if !lacks.is_empty() {
        return;
    }
    let authority = look.name(forced.authority);
    page.caution(Tone::Warn, said::removal_ends_proof(owner));
    page.caution(Tone::Must, said::removal_give_phone(&authority));
    if let Some((_, to)) = lock.offered {
        page.para(said::offered(look.name(to)));
    }
    sign_here(look, page, forced.authority, said::removal_signs(&authority));
    put(page, said::removal_take_off(authority), "force-off");
}
