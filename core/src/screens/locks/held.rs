//! Locks of other jobs at the points of a job, and a padlock that goes through points of several.

use crate::app::NotDone;
use crate::job::Job;
use crate::journal::{EntryId, Fact};
use crate::screens::Route;
use crate::screens::build::Page;
use crate::screens::context::{Act, Look};
use crate::screens::home::go;
use crate::store::LockRow;
use crate::text;
use crate::text::no_pin;
use crate::text::screens::locks as said;
use crate::text::times;

/// The locks of other jobs at this point, or at one that may be the same; each once.
pub fn beside(job: &Job, point: EntryId) -> Vec<&LockRow> {
    let held = job.known.iter().flat_map(|k| &k.held);
    let mut rows: Vec<&LockRow> = held.filter(|(at, _)| *at == point).map(|(_, lock)| lock).collect();
    rows.sort_by_key(|l| (l.since_ms, l.fit));
    rows.dedup_by_key(|l| l.fit);
    rows
}

/// A row for each of them, with whose job it is for.
pub fn rows(page: &mut Page, look: &Look, job: &Job, point: EntryId) {
    for lock in beside(job, point) {
        row(page, look, lock);
    }
}

/// A lock of any job, as a row that leads to it.
pub fn row(page: &mut Page, look: &Look, lock: &LockRow) {
    let since = no_pin(times::when(lock.since_ms, lock.zone, look.now), lock.no_pin);
    let mut lines = vec![said::held_for(&lock.job_title), said::held_since(since)];
    if !lock.telephone.is_empty() {
        lines.push(said::held_telephone(&lock.telephone));
    }
    if let Some(why) = &lock.aside {
        lines.push(said::held_aside(why));
    }
    let (owner, place) = (look.name(lock.owner), text::row_place(lock));
    let title = match lock.on {
        true => said::held_row(owner, &lock.label, place),
        false => said::held_row_off(owner, &lock.label, place),
    };
    page.row(
        title,
        lines,
        go(if lock.aside.is_some() { Route::Asides(lock.job) } else { Route::Lock(lock.job, lock.fit) }),
    );
}

/// Who holds this point open for another job, in a sentence; empty if nobody does.
pub fn says(look: &Look, job: &Job, point: EntryId) -> String {
    let locks = beside(job, point).into_iter();
    text::semicolons(locks.map(|l| said::held_says(&l.job_title, &l.label, look.name(l.owner))))
}

/// Takes a lock off. A padlock that goes through points of other jobs comes off there in the same act, and that is said.
pub fn take_off(act: &mut Act, job: EntryId, lock: EntryId, cut: Option<String>) -> Result<(), NotDone> {
    let beside = act.app.padlock_beside(job, lock)?;
    act.keep(Some(job), Fact::LockRemoved { lock, cut: cut.clone() })?;
    let mut places = Vec::new();
    for row in beside {
        if act.job(row.job)?.lock(row.fit).is_some_and(|l| l.is_on()) {
            let off = act.keep(Some(row.job), Fact::LockRemoved { lock: row.fit, cut: cut.clone() });
            if let Err(why) = off {
                return Err(NotDone::PadlockBeside { there: Box::new(row), why: Box::new(why) });
            }
        }
        places.push(said::held_place(text::row_place(&row), &row.job_title));
    }
    if !places.is_empty() {
        act.say = Some(said::held_off_too(text::semicolons(places)));
    }
    Ok(())
}
