//! One lock: whose it is, hand-over, and how it comes off.

use super::{forced, key_place, means_word, off_line, people, put, sign_here, to};
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::point::{Lock, may_remove};
use crate::screens::Route;
use crate::screens::build::Page;
use crate::screens::context::{Act, Look};
use crate::screens::parts::Tone;
use crate::text::{self, AskLock};

/// All about one lock.
pub fn view(look: &Look, job: &Job, lock: EntryId) -> Page {
    let Some(lock) = job.lock(lock) else {
        let mut page = Page::new("This lock is not on this device");
        page.para("Look for it in the list of this job's locks.");
        return to(page, "All locks of this job", Route::Locks(job.id()));
    };
    let owner = look.name(lock.owner);
    let mut page = Page::new(format!("Lock of {owner}"));
    if let Some(forced) = forced::untold(lock) {
        page.caution(Tone::Must, forced::must_tell(look, lock, forced));
    }
    page.fact("Lock", &lock.label);
    page.fact("On", text::place(job, lock.on));
    page.fact("Secured by", means_word(job, lock));
    page.fact("Key holder", key_place(look, job, lock));
    page.fact("Fitted", look.by(&lock.stamp));
    page.fact("Theirs since", look.when(&lock.since));
    let telephone = look.world.telephone(lock.owner);
    page.fact("Telephone", if telephone.is_empty() { "not given" } else { telephone });
    if lock.off.is_some() {
        page.fact("Off", off_line(look, lock));
    }

    let ring = format!("Ring {owner}");
    let rings = !telephone.is_empty() && look.acting != Some(lock.owner);
    let own = look.acting == Some(lock.owner);
    if lock.is_on() {
        if own {
            own_lock(look, job, lock, &mut page);
        }
        // A screen has one place to sign: once a forced removal may be signed, an unanswered offer steps back.
        if !forced::ready(lock) {
            hand_over(look, job, lock, own, &mut page);
        }
    }
    if !own || lock.forced.is_some() {
        forced::show(look, job, lock, &mut page);
    }
    if rings {
        put(&mut page, ring, "ring");
    }
    if page.main.is_none() {
        return to(page, "All locks of this job", Route::Locks(job.id()));
    }
    page
}

fn own_lock(look: &Look, job: &Job, lock: &Lock, page: &mut Page) {
    let (name, place) = (look.name(lock.owner), text::place(job, lock.on));
    page.heading("Take it off");
    for other in &look.site.padlock {
        page.caution(
            Tone::Warn,
            format!(
                "This padlock goes through {} too, for {}. It comes off both, and the proof of both ends.",
                text::row_place(other),
                other.job_title
            ),
        );
    }
    if let Some(why_not) = may_remove(lock, lock.owner, &job.locks) {
        page.para(text::stays(&why_not, look.world));
    } else if job.finished.is_some() {
        page.para("The work is finished. Take it off with your own hand, then record it.");
        page.main(format!("Take my lock off {place}, as {name}"), "remove");
    } else {
        page.caution(
            Tone::Warn,
            "The work is not finished. Taking this lock off ends the proof at once: from then on treat everything as live. \
             Get everybody clear first.",
        );
        page.toned(format!("Take my lock off {place}, as {name}"), "remove", Tone::Forbid);
    }
    // A key in a box that others have locks on is not lost.
    let others = |l: &&Lock| matches!(lock.key, KeyAt::Box(b) if l.on == On::Box(b)) && l.owner != lock.owner;
    if job.locks_on().find(others).is_none() {
        page.heading("If the key is lost");
        let hint = "Such as: it fell into the shaft. It counts as off, and ends the proof.";
        page.entry("cut-why", "Why you cut your own lock", hint, look.draft("cut-why"));
        page.toned(format!("My lock on {place} is cut, as {name}"), "cut", Tone::Forbid);
    }
}

fn hand_over(look: &Look, job: &Job, lock: &Lock, own: bool, page: &mut Page) {
    let mut others = vec![lock.owner];
    if let Some((_, to)) = lock.offered {
        let name = look.name(to);
        page.heading("Hand-over");
        page.caution(
            Tone::Must,
            format!(
                "Give the device to {name}; {name} signs below. Until then lock and key stay with {}.",
                look.name(lock.owner)
            ),
        );
        sign_here(look, page, to, format!("{name} signs for lock and key"));
        put(page, format!("{name} takes lock and key"), "take");
        others.push(to);
    } else if own {
        page.heading("Hand over lock and key");
    }
    // Only who holds the key can offer it.
    let people = people(look, job, &others);
    if !own {
        return;
    }
    let again = lock.offered.is_some();
    if people.is_empty() {
        if !again {
            page.para("Nobody else is on this job. Add the person to the job first, then hand over.");
        }
        return;
    }
    page.choice("offer-to", if again { "Or offer it to" } else { "To whom" }, people, look.draft("offer-to"));
    let label = if again { "Offer it to this person instead" } else { "Offer lock and key" };
    put(page, label, "offer");
}

/// Lock and key pass to whoever they were offered to: they have the device and sign.
pub fn take(act: &mut Act, job: EntryId, lock: &Lock) -> Result<(), NotDone> {
    let (offer, to) = lock.offered.ok_or(AskLock::OfferFirst)?;
    let name = act.world().name(to);
    let mark = act.signature(&name)?;
    super::keep_as(act, job, to, Fact::KeyTaken { offer, mark })?;
    act.say = Some(format!("Kept. Lock and key are with {name}, and so is this device."));
    Ok(())
}
