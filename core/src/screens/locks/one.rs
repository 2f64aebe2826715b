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
use crate::text::screens::locks as said;
use crate::text::{self, AskLock};

/// All about one lock.
pub fn view(look: &Look, job: &Job, lock: EntryId) -> Page {
    let Some(lock) = job.lock(lock) else {
        let mut page = Page::new(said::lock_unknown());
        page.para(said::lock_unknown_look());
        return to(page, said::lock_all(), Route::Locks(job.id()));
    };
    let owner = look.name(lock.owner);
    let mut page = Page::new(said::lock_title(&owner));
    if let Some(forced) = forced::untold(lock) {
        page.caution(Tone::Must, forced::must_tell(look, lock, forced));
    }
    page.fact(said::lock_label(), &lock.label);
    page.fact(said::lock_place(), text::place(job, lock.on));
    page.fact(said::lock_secured(), means_word(job, lock));
    page.fact(said::lock_key_holder(), key_place(look, job, lock));
    page.fact(said::lock_fitted(), look.by(&lock.stamp));
    page.fact(said::lock_theirs_since(), look.when(&lock.since));
    let telephone = look.world.telephone(lock.owner);
    let given = if telephone.is_empty() { said::lock_telephone_none() } else { telephone.to_owned() };
    page.fact(said::lock_telephone(), given);
    if lock.off.is_some() {
        page.fact(said::lock_off(), off_line(look, lock));
    }

    let ring = said::lock_ring(&owner);
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
        return to(page, said::lock_all(), Route::Locks(job.id()));
    }
    page
}

fn own_lock(look: &Look, job: &Job, lock: &Lock, page: &mut Page) {
    let (name, place) = (look.name(lock.owner), text::place(job, lock.on));
    page.heading(said::lock_take_it_off());
    for other in &look.site.padlock {
        page.caution(Tone::Warn, said::lock_through_both(text::row_place(other), &other.job_title));
    }
    if let Some(why_not) = may_remove(lock, lock.owner, &job.locks) {
        page.para(text::stays(&why_not, look.world));
    } else if job.finished.is_some() {
        page.para(said::lock_finished());
        page.main(said::lock_take_mine_off(&place, &name), "remove");
    } else {
        page.caution(Tone::Warn, said::lock_not_finished());
        page.toned(said::lock_take_mine_off(&place, &name), "remove", Tone::Forbid);
    }
    // A key in a box that others have locks on is not lost.
    let others = |l: &&Lock| matches!(lock.key, KeyAt::Box(b) if l.on == On::Box(b)) && l.owner != lock.owner;
    if job.locks_on().find(others).is_none() {
        page.heading(said::lock_key_lost());
        page.entry("cut-why", &said::lock_cut_why(), &said::lock_cut_hint(), look.draft("cut-why"));
        page.toned(said::lock_cut_mine(&place, &name), "cut", Tone::Forbid);
    }
}

fn hand_over(look: &Look, job: &Job, lock: &Lock, own: bool, page: &mut Page) {
    let mut others = vec![lock.owner];
    if let Some((_, to)) = lock.offered {
        let name = look.name(to);
        page.heading(said::lock_hand_over_offered());
        page.caution(Tone::Must, said::lock_give_phone(&name, look.name(lock.owner)));
        sign_here(look, page, to, said::lock_signs(&name));
        put(page, said::lock_takes(&name), "take");
        others.push(to);
    } else if own {
        page.heading(said::lock_hand_over());
    }
    // Only who holds the key can offer it.
    let people = people(look, job, &others);
    if !own {
        return;
    }
    let again = lock.offered.is_some();
    if people.is_empty() {
        if !again {
            page.para(said::lock_nobody_else());
        }
        return;
    }
    let (whom, label) = match again {
        true => (said::lock_offer_to_other(), said::lock_offer_other()),
        false => (said::lock_offer_to(), said::lock_offer()),
    };
    page.choice("offer-to", &whom, people, look.draft("offer-to"));
    put(page, label, "offer");
}

/// Lock and key pass to whoever they were offered to: they have the device and sign.
pub fn take(act: &mut Act, job: EntryId, lock: &Lock) -> Result<(), NotDone> {
    let (offer, to) = lock.offered.ok_or(AskLock::OfferFirst)?;
    let name = act.world().name(to);
    let mark = act.signature(&name)?;
    super::keep_as(act, job, to, Fact::KeyTaken { offer, mark })?;
    act.say = Some(said::lock_taken(name));
    Ok(())
}
