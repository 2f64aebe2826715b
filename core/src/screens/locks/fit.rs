//! Fitting a lock: one form for the step of a point and for the list of locks, for one person at a time.
//!
//! The form is that of the person in hand. Another person's lock is entered through a button that names them, and every button that
//! writes a name says it, so that no name is left standing for the next person. Start at [`form`].

use super::held;
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::names::alike;
use crate::point::{Means, Point};
use crate::screens::again;
use crate::screens::build::Page;
use crate::screens::context::{Act, Look};
use crate::screens::home::{UNKNOWN, id};
use crate::screens::parts::Tone;
use crate::site::padlocks;
use crate::store::LockRow;
use crate::text::screens::locks as said;
use crate::text::{self, AskLock, Gone};

/// The field that holds for whom the form is, where that is not the person in hand. It goes when the device is handed on.
pub(crate) const FOR_WHOM: &str = "lock-for";

/// Whose lock the form is about: the one who was named, or the person in hand if they are on the job.
fn whose(look: &Look, job: &Job) -> Option<EntryId> {
    let named = look.draft(FOR_WHOM).parse().ok().filter(|p| job.people().contains(p));
    named.or(look.acting.filter(|p| job.people().contains(p)))
}

/// Nothing that was typed for one person's lock stands in the form for another's.
fn of(name: &str, who: EntryId, acting: Option<EntryId>) -> String {
    if acting == Some(who) { name.to_owned() } else { format!("{name}-{who}") }
}

/// The form for a lock at `at`, or at any point or box of the job. `lead`: its button is the main one.
pub fn form(page: &mut Page, look: &Look, job: &Job, at: Option<&Point>, waiting: &[EntryId]) {
    let Some(who) = whose(look, job) else {
        page.para(said::fit_not_on_job());
        return others(page, look, job, None, waiting);
    };
    let (name, own) = (look.name(who), look.acting == Some(who));
    let field = |field: &str| of(field, who, look.acting);
    let draft = |name: &str| look.draft(&field(name));
    if own {
        page.heading(said::fit_yours());
    } else {
        page.heading(said::fit_of_other(&name));
        page.caution(Tone::Must, said::fit_of_other_only(&name));
    }
    match at {
        Some(point) if !point.lockable => {
            page.caution(Tone::Warn, said::fit_takes_no_lock());
            page.entry(&field("how"), &said::fit_secured(), &said::fit_secured_hint(), draft("how"));
        }
        _ => {
            let before = again::lock_labels(look, who);
            page.entry_again(look, &field("lock-label"), &said::fit_label(), &said::fit_label_hint(), before);
            question(page, look, who, &draft("lock-label"), &field);
            place(page, look, job, at, &field);
        }
    }
    let label = match at {
        Some(point) if !point.lockable => said::fit_save_secured(name),
        _ => said::fit_save(name),
    };
    // Where this person is covered and another is not, the other's lock comes first.
    let missing = at.is_none() || waiting.contains(&who) || at.is_some_and(|p| none_on(job, p));
    if missing && page.main.is_none() {
        page.main(label, format!("fit {who}"));
    } else {
        page.button(label, format!("fit {who}"));
    }
    others(page, look, job, Some(who), waiting);
}

fn none_on(job: &Job, point: &Point) -> bool {
    !job.locks_on().any(|l| l.on == On::Point(point.stamp.id))
}

/// The ways to the forms of others; whoever still has no lock here comes first.
fn others(page: &mut Page, look: &Look, job: &Job, who: Option<EntryId>, waiting: &[EntryId]) {
    let mut people: Vec<EntryId> = job.people().into_iter().filter(|p| Some(*p) != who).collect();
    people.sort_by_key(|p| !waiting.contains(p));
    for person in people {
        let (label, tone) = match look.acting == Some(person) {
            true => (said::fit_back_to_mine(look.name(person)), Tone::Plain),
            false => (said::fit_of_other(look.name(person)), Tone::Quiet),
        };
        let action = format!("for {person}");
        if page.main.is_none() && waiting.contains(&person) {
            page.main(label, action);
        } else {
            page.toned(label, action, tone);
        }
    }
}

/// Where it is, how it is locked and where its key is.
fn place(page: &mut Page, look: &Look, job: &Job, at: Option<&Point>, field: &dyn Fn(&str) -> String) {
    let draft = |name: &str, usual: &str| look.draft_or(&field(name), usual);
    let boxes = at.map(|p| job.boxes_of(p.stamp.id)).unwrap_or_default();
    match (at, boxes.first()) {
        (None, _) => {
            let points = job.points.iter().map(|p| (format!("point {}", p.stamp.id), p.label.clone()));
            let boxes = job.boxes.iter().map(|b| (format!("box {}", b.stamp.id), b.label.clone()));
            page.choice(&field("on"), &said::fit_where(), points.chain(boxes).collect(), draft("on", ""));
        }
        (Some(point), Some(first)) => {
            let on_box = |b: &&crate::point::LockBox| (format!("box {}", b.stamp.id), said::fit_on_box(&b.label));
            let mut places: Vec<_> = boxes.iter().map(on_box).collect();
            places.push((format!("point {}", point.stamp.id), said::fit_on_point(&point.label)));
            page.para(said::fit_locks_on_box());
            let usual = format!("box {}", first.stamp.id);
            page.choice(&field("on"), &said::fit_where(), places, draft("on", &usual));
        }
        (Some(_), None) => {}
    }
    let mut keys = vec![("owner".to_owned(), said::fit_key_owner())];
    keys.extend(job.boxes.iter().map(|b| (b.stamp.id.to_string(), said::fit_key_box(&b.label))));
    // The only answer, and the answer for a personal lock on a box, may stand there beforehand; a group's key is asked for.
    let usual = if job.boxes.is_empty() || !boxes.is_empty() { "owner" } else { "" };
    // With one answer there is nothing to ask.
    if keys.len() > 1 {
        page.choice(&field("key"), &said::fit_key(), keys, draft("key", usual));
    }
    let mut means = vec![("padlock", said::fit_means_padlock()), ("hasp", said::fit_means_hasp())];
    let unlockable = at.is_none() && job.points.iter().any(|p| !p.lockable);
    if unlockable {
        means.push(("other", said::fit_means_other()));
    }
    let means = means.into_iter().map(|(value, label)| (value.to_owned(), label)).collect();
    page.choice(&field("means"), &said::fit_means(), means, draft("means", ""));
    if unlockable {
        page.entry(&field("how"), &said::fit_means_which(), &said::fit_means_which_hint(), draft("how", ""));
    }
}

/// A padlock is known by its owner and label. One that is on elsewhere is asked about: all that can be true can be answered.
fn question(page: &mut Page, look: &Look, who: EntryId, label: &str, field: &dyn Fn(&str) -> String) {
    let there = padlocks(look.locks, who, label);
    if label.trim().is_empty() || there.is_empty() {
        return;
    }
    page.caution(Tone::Must, said::fit_on_already(label, look.name(who), places(&there)));
    let mut answers = Vec::new();
    if look.acting == Some(who) {
        answers.push(("moved", said::fit_moved()));
        page.para(said::fit_moved_ends());
    } else {
        page.para(said::fit_moved_by_owner(look.name(who)));
    }
    answers.push(("through", said::fit_through()));
    answers.push(("another", said::fit_another()));
    let answers = answers.into_iter().map(|(value, label)| (value.to_owned(), label)).collect();
    page.choice(&field("padlock"), &said::fit_on_elsewhere(), answers, look.draft(&field("padlock")));
    let (label, hint) = (said::fit_mark(), said::fit_mark_hint());
    page.entry(&field("padlock-mark"), &label, &hint, look.draft(&field("padlock-mark")));
}

fn places(there: &[&LockRow]) -> String {
    text::semicolons(there.iter().map(|l| said::held_place(text::row_place(l), &l.job_title)))
}

/// Opens the form for another person's lock, or keeps a lock. `at`: the point whose step it is. True if something was kept.
pub fn act(act: &mut Act, job: EntryId, at: Option<EntryId>, verb: &str, arg: &str) -> Result<bool, NotDone> {
    let who = id(arg)?;
    let now = act.job(job)?;
    match verb {
        "for" if !now.people().contains(&who) => Err(AskLock::OnJobFirst.into()),
        "for" => {
            let own = act.app.acting == Some(who);
            act.note(FOR_WHOM, if own { "" } else { arg });
            Ok(false)
        }
        "fit" => fit(act, &now, at, who),
        _ => Err(UNKNOWN.into()),
    }
}

fn fit(act: &mut Act, job: &Job, at: Option<EntryId>, owner: EntryId) -> Result<bool, NotDone> {
    let acting = act.app.acting;
    let field = |name: &str| of(name, owner, acting);
    let gone = Gone::PointOfStep;
    let point = at.map(|id| job.point(id).ok_or(gone)).transpose()?;
    if let Some(point) = point.filter(|p| !p.lockable) {
        let how = act.need(&field("how"), AskLock::SecuredInstead)?;
        let (on, label, means) = (On::Point(point.stamp.id), "no lock".to_owned(), Means::Other(how));
        let fact = Fact::LockFitted { on, owner, label, key: KeyAt::Owner, means, through: None };
        return act.keep(Some(job.id()), fact).map(|_| true);
    }
    let label = act.need(&field("lock-label"), AskLock::Label)?;
    let on = match point {
        Some(point) if job.boxes_of(point.stamp.id).is_empty() => On::Point(point.stamp.id),
        _ => {
            let ask = AskLock::Where;
            match act.need(&field("on"), ask)?.split_once(' ') {
                Some(("point", id)) => On::Point(id.parse().map_err(|_| ask)?),
                Some(("box", id)) => On::Box(id.parse().map_err(|_| ask)?),
                _ => return Err(ask.into()),
            }
        }
    };
    let ask = AskLock::Key;
    let key = match act.given(&field("key")).as_str() {
        "owner" => KeyAt::Owner,
        "" if job.boxes.is_empty() => KeyAt::Owner,
        lockbox => KeyAt::Box(lockbox.parse().map_err(|_| ask)?),
    };
    if matches!((on, key), (On::Box(_), KeyAt::Box(_))) {
        return Err(AskLock::KeyWithOwner.into());
    }
    let ask = AskLock::Means;
    let means = match act.need(&field("means"), ask)?.as_str() {
        "padlock" => Means::Padlock,
        "hasp" => Means::Hasp,
        "other" => Means::Other(act.need(&field("how"), AskLock::MeansOther)?),
        _ => return Err(ask.into()),
    };
    let there = if matches!(means, Means::Other(_)) { Vec::new() } else { act.app.padlocks(owner, &label) };
    let Some(first) = there.first() else {
        let fact = Fact::LockFitted { on, owner, label, key, means, through: None };
        return act.keep(Some(job.id()), fact).map(|_| true);
    };
    let (label, through) = match act.given(&field("padlock")).as_str() {
        "moved" => {
            for row in &there {
                // One that goes through both came off with the one before.
                if act.job(row.job)?.lock(row.fit).is_some_and(|l| l.is_on()) {
                    held::take_off(act, row.job, row.fit, None)?;
                }
            }
            act.say = Some(said::fit_was_moved(&label, text::row_place(first)));
            (label, None)
        }
        "through" => (label, Some(first.fit)),
        "another" => {
            let ask = AskLock::PadlockMark;
            let marked = format!("{label}, {}", act.need(&field("padlock-mark"), ask)?);
            if alike(&marked, &label) {
                return Err(ask.into());
            }
            (marked, None)
        }
        _ => {
            let name = act.world().name(owner);
            let rows: Vec<&LockRow> = there.iter().collect();
            act.ask(said::fit_on_already_below(label, name, places(&rows)))?;
            return Ok(false);
        }
    };
    act.keep(Some(job.id()), Fact::LockFitted { on, owner, label, key, means, through }).map(|_| true)
}
