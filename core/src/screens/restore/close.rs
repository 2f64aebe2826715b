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
use crate::text::screens::restore as said;

pub(super) fn view(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Warn, said::closing());
    page.para(said::site_order());
    page.para(said::only_found_on());
    let (order, cautions) = in_order(look, job);
    for why in cautions {
        page.caution(Tone::Forbid, why);
    }
    let mut asked = None;
    for (point, caution) in order {
        let label = &point.label;
        match job.back(point) {
            Back::NotOpen => match &point.closed {
                Some(closed) => row(page, label, StepState::Done, said::closed(look.by(closed))),
                None => row(page, label, StepState::Later, said::never_opened()),
            },
            Back::FoundOff if point.stays_open => {
                row(page, label, StepState::Done, said::normally_open());
            }
            Back::FoundOff => row(page, label, StepState::Done, said::found_off()),
            Back::Held(lock) => {
                stays(page, label, held(look, lock));
                locks::held::rows(page, look, job, point.stamp.id);
            }
            Back::After(first) => {
                let line = said::after(text::commas(first.iter().map(|p| p.label.clone())));
                match first.iter().find_map(|p| job.held_by(p)) {
                    Some(lock) => stays(page, label, text::sentences(line, held(look, lock))),
                    None => row(page, label, StepState::Later, line),
                }
            }
            Back::Beside(own, others) => {
                let others = text::ands(others.iter().map(text::supply_name));
                beside(page, look, point, &text::supply_name(&own), &others, asked.is_none());
                asked.get_or_insert(point);
            }
            Back::On if job.aside_at(point.stamp.id).is_some() => {
                stays(page, label, aside(look, job, point));
                put(page, said::look_at_aside(), go(Route::Asides(job.id())));
            }
            Back::On => {
                if !caution.is_empty() {
                    page.caution(Tone::Warn, said::caution(label, caution));
                }
                let state = super::next_or_open(page);
                row(page, label, state, said::brings_back(text::supply_name(&job.brings(point)), &point.at));
                put(page, said::is_closed(label), format!("close {}", point.stamp.id));
            }
        }
    }
    if let Some(point) = asked.filter(|_| page.main.is_none()) {
        if point.cuts.is_none() {
            page.main(said::is_closed_because(&point.label), format!("beside {}", point.stamp.id));
        } else {
            page.main(said::leave_open(&point.label), go(Route::Deviate(job.id(), Step::Close)));
        }
    }
}

/// A point that would make two supplies: said in red, and closed only with a reason. `form`: only one is asked for at a time.
fn beside(page: &mut Page, look: &Look, point: &Point, own: &str, others: &str, form: bool) {
    let label = &point.label;
    row(page, label, StepState::Open, said::brings_beside(own, others, &point.at));
    if !form {
        return;
    }
    page.caution(Tone::Forbid, said::do_not_close(label, own, others));
    page.entry("beside", &said::why_both(), &said::why_both_hint(), look.draft("beside"));
    page.toned(said::close_beside(label, others), format!("beside {}", point.stamp.id), Tone::Forbid);
}

fn stays(page: &mut Page, title: &str, line: String) {
    let (title, word) = (title.to_owned(), said::stays_open());
    let (number, action) = (String::new(), String::new());
    page.step(StepRow { number, title, state: StepState::Later, word, lines: vec![line], action });
}

/// By what entry that is put aside a point stays open: somebody has to look.
fn aside(look: &Look, job: &Job, point: &Point) -> String {
    job.aside_at(point.stamp.id).map_or_else(String::new, |(label, owner)| said::held_aside(label, look.name(owner)))
}

/// By what a point is held open.
pub(super) fn held(look: &Look, lock: &LockRow) -> String {
    said::held(&lock.label, look.name(lock.owner), &lock.job_title)
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
        Err(e) => (plain(), vec![said::no_order(text::network_fault(&e.why))]),
    }
}

/// What stays open at the hand-back and why, for whoever takes the installation back.
pub(super) fn still_open(look: &Look, job: &Job, page: &mut Page) {
    for point in &job.points {
        let line = match job.back(point) {
            Back::Held(lock) => held(look, lock),
            Back::FoundOff => said::found_off(),
            Back::NotOpen => continue,
            _ => said::still_open(),
        };
        page.fact(point.label.clone(), line);
    }
}
