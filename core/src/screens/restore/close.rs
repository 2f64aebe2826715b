//! Closing the points: only what was found on, the normal supply first, and two supplies never together unasked.

use super::row;
use crate::job::steps::Step;
use crate::job::{Back, Job};
use crate::point::Point;
use crate::screens::Route;
use crate::screens::build::Page;
use crate::screens::context::Look;
use crate::screens::home::go;
use crate::screens::locks::{self, put};
use crate::screens::parts::{StepRow, StepState, Tone};
use crate::store::LockRow;
use crate::supply::{self, Position, Restore, States};
use crate::text;

pub(super) fn view(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Warn,
        "Closing a point brings the supply back. Circuits stay off, everybody is clear, stand to the side of the device. Keep \
         to the order that your site's switching rules give.",
    );
    page.para("Only what was found on goes back on.");
    let (order, cautions) = in_order(look, job);
    for why in cautions {
        page.caution(Tone::Forbid, why);
    }
    let mut asked = None;
    for (point, caution) in order {
        let label = &point.label;
        match job.back(point) {
            Back::NotOpen => match &point.closed {
                Some(closed) => row(page, label, StepState::Done, format!("Closed {}.", look.by(closed))),
                None => row(page, label, StepState::Later, "It was never opened.".into()),
            },
            Back::FoundOff if point.stays_open => {
                row(page, label, StepState::Done, "It stays open, as in normal service.".into());
            }
            Back::FoundOff => row(page, label, StepState::Done, "Found off: it stays off.".into()),
            Back::Held(lock) => {
                stays(page, label, held(look, lock));
                locks::held::rows(page, look, job, point.stamp.id);
            }
            Back::After(first) => {
                let names: Vec<&str> = first.iter().map(|p| p.label.as_str()).collect();
                let line = format!("It only follows the supply: after {}.", names.join(", "));
                match first.iter().find_map(|p| job.held_by(p)) {
                    Some(lock) => stays(page, label, format!("{line} {}", held(look, lock))),
                    None => row(page, label, StepState::Later, line),
                }
            }
            Back::Beside(own, others) => {
                let others: Vec<String> = others.iter().map(text::supply_name).collect();
                beside(page, look, point, &text::supply_name(&own), &others.join(" and "), asked.is_none());
                asked.get_or_insert(point);
            }
            Back::On if job.aside_at(point.stamp.id).is_some() => {
                stays(page, label, aside(look, job, point));
                put(page, "Look at the entry put aside", go(Route::Asides(job.id())));
            }
            Back::On => {
                if !caution.is_empty() {
                    page.caution(Tone::Warn, format!("{label}: {caution}"));
                }
                let state = super::next_or_open(page);
                row(
                    page,
                    label,
                    state,
                    format!("Found on. Brings back {}. {}", text::supply_name(&job.brings(point)), point.at),
                );
                put(page, format!("{label} is closed"), format!("close {}", point.stamp.id));
            }
        }
    }
    if let Some(point) = asked.filter(|_| page.main.is_none()) {
        if point.cuts.is_none() {
            page.main(format!("{} is closed, for this reason", point.label), format!("beside {}", point.stamp.id));
        } else {
            page.main(format!("Leave {} open, give a reason", point.label), go(Route::Deviate(job.id(), Step::Close)));
        }
    }
}

/// A point that would make two supplies: said in red, and closed only with a reason. `form`: only one is asked for at a time.
fn beside(page: &mut Page, look: &Look, point: &Point, own: &str, others: &str, form: bool) {
    let label = &point.label;
    row(page, label, StepState::Open, format!("Found on. Brings {own} beside {others}. {}", point.at));
    if !form {
        return;
    }
    page.caution(
        Tone::Forbid,
        format!("Do not close {label}: {own} and {others} on one board can kill and destroy. Only if both were on together before."),
    );
    page.entry("beside", "Why both go on together", "What keeps the two apart or in step", look.draft("beside"));
    page.toned(format!("Close {label} beside {others}"), format!("beside {}", point.stamp.id), Tone::Forbid);
}

fn stays(page: &mut Page, title: &str, line: String) {
    let (title, word) = (title.to_owned(), "stays open".to_owned());
    let (number, action) = (String::new(), String::new());
    page.step(StepRow { number, title, state: StepState::Later, word, lines: vec![line], action });
}

/// By what entry that is put aside a point stays open: somebody has to look.
fn aside(look: &Look, job: &Job, point: &Point) -> String {
    job.aside_at(point.stamp.id).map_or_else(String::new, |(label, owner)| {
        format!("Stays open: lock {label} of {} is on it, by an entry put aside. Look at the point.", look.name(owner))
    })
}

/// By what a point is held open.
pub(super) fn held(look: &Look, lock: &LockRow) -> String {
    format!("Stays open: held by lock {} of {}, for {}.", lock.label, look.name(lock.owner), lock.job_title)
}

/// The points in the order that feeds nothing that is still locked, each with what to look out for; and why some have to stay open.
/// Within the network's order the normal supply comes first, and what would make two supplies last.
fn in_order<'a>(look: &Look, job: &'a Job) -> (Vec<(&'a Point, String)>, Vec<String>) {
    let (mut order, why) = by_network(look, job);
    order.sort_by_key(|(point, _)| job.rank(point));
    (order, why)
}

fn by_network<'a>(look: &Look, job: &'a Job) -> (Vec<(&'a Point, String)>, Vec<String>) {
    let plain = || job.points.iter().map(|p| (p, String::new())).collect();
    let Some(cut) = look.cut else { return (plain(), Vec::new()) };
    let back = job.points.iter().filter(|p| job.goes_back_on(p));
    let wanted: States = back.filter_map(|p| Some((p.switch.clone()?, Position::Closed))).collect();
    match supply::restore(&cut.network, &cut.standing(job), &wanted, look.held) {
        Ok(Restore::Steps(steps)) => {
            let place = |p: &Point| steps.iter().position(|s| p.switch.as_ref() == Some(&s.link));
            let mut order: Vec<(&Point, String)> = job
                .points
                .iter()
                .map(|p| (p, place(p).and_then(|i| steps[i].caution.as_ref()).map(text::caution).unwrap_or_default()))
                .collect();
            order.sort_by_key(|(p, _)| place(p).unwrap_or(usize::MAX));
            (order, Vec::new())
        }
        Ok(Restore::Refused { why }) => (plain(), why.iter().map(text::stays_open).collect()),
        Err(e) => (plain(), vec![format!("The supply network gives no order: {}", text::network_fault(&e.why))]),
    }
}

/// What stays open at the hand-back and why, for whoever takes the installation back.
pub(super) fn still_open(look: &Look, job: &Job, page: &mut Page) {
    for point in &job.points {
        let line = match job.back(point) {
            Back::Held(lock) => held(look, lock),
            Back::FoundOff => "Found off: it stays off.".into(),
            Back::NotOpen => continue,
            _ => "Still open.".into(),
        };
        page.fact(point.label.clone(), line);
    }
}
