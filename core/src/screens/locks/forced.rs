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
    page.heading("Removal in the owner's absence");
    page.fact(
        "Authority",
        format!("{authority}, {}, reached {}. Begun {}.", forced.function, forced.reached, look.by(&forced.begun)),
    );
    page.fact("Why it cannot wait", &forced.why);
    for (stamp, how) in &forced.not_on_site {
        page.fact(format!("Not on site, {}", look.by(stamp)), how);
    }
    for (stamp, how, outcome) in &forced.sought {
        page.fact(format!("Sought, {}", look.by(stamp)), format!("{how}: {outcome}"));
    }
    if let Some((stamp, how)) = &forced.told {
        page.fact(format!("Told, {}", look.by(stamp)), how);
    }
    if lock.is_on() {
        steps(look, lock, forced, &owner, page);
    } else if untold(lock).is_some() {
        page.entry("told-how", &format!("How {owner} was told"), "In person, by telephone.", look.draft("told-how"));
        page.main(format!("{owner} has been told"), "told");
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
    act.say = Some(format!(
        "Kept. The lock is off and the proof has ended. {} has to know before they resume. This device is with {authority}.",
        act.world().name(lock.owner)
    ));
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
    format!(
        "Tell {} before they resume work: their lock {} was taken off under the authority of {}. They believe that it is \
         still on.",
        look.name(lock.owner),
        lock.label,
        look.name(forced.authority)
    )
}

fn begin(look: &Look, job: &Job, lock: &Lock, owner: &str, page: &mut Page) {
    page.heading(format!("If {owner} is absent"));
    page.caution(
        Tone::Forbid,
        format!(
            "Nobody but {owner} takes this lock off. Only where your site's procedure allows it: a named authority answers for \
             it, {owner} is not on site, every reasonable attempt to reach them was made, and they know before they resume."
        ),
    );
    // Anybody known here, on the job or not, but for the owner and those who learn.
    let mut without: Vec<EntryId> = job.people().into_iter().filter(|p| job.learns(Some(*p))).collect();
    without.push(lock.owner);
    page.choice("authority", "Who answers for it", look.people(&without), look.draft("authority"));
    page.entry(
        "force-function",
        "What they are at this site",
        "Site manager, control room",
        look.draft("force-function"),
    );
    page.entry(
        "force-reached",
        "How you reached them",
        "In person, by telephone at what time",
        look.draft("force-reached"),
    );
    page.field("force-why", "Why it cannot wait", "", look.draft("force-why"), EntryKind::Long, 500);
    page.toned("Begin a forced removal", "force", Tone::Forbid);
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
        &format!("How you found that {owner} is not on site"),
        "Gate list, site radio, asked whom.",
        look.draft("absent-how"),
    );
    offer(page, format!("{owner} is not on site"), "not-on-site", forced.not_on_site.is_empty());
    page.entry("sought-how", "How you tried to reach them", "Number rung, at what time.", look.draft("sought-how"));
    page.entry("sought-outcome", "What came of it", "No answer, message left.", look.draft("sought-outcome"));
    offer(page, "Keep this attempt".into(), "sought", forced.sought.is_empty());
    if !lacks.is_empty() {
        return;
    }
    let authority = look.name(forced.authority);
    page.caution(
        Tone::Warn,
        format!(
            "Taking the lock off ends the proof at once: treat everything as live. See for yourselves that {owner} and their \
             tools are clear. Give the device to {authority}; {authority} signs below."
        ),
    );
    if let Some((_, to)) = lock.offered {
        page.para(format!("The lock is on offer to {}, who has not taken it.", look.name(to)));
    }
    sign_here(look, page, forced.authority, format!("{authority} signs for the removal"));
    put(page, format!("Take the lock off under the authority of {authority}"), "force-off");
}
