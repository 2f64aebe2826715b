//! Entries about a job that are put aside: what each says, by whom, why it is not believed, and what somebody found at the spot.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go, id};
use super::parts::{EntryKind, StepRow, StepState, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::known::Aside;
use crate::journal::fact::On;
use crate::journal::{EntryId, Fact};
use crate::text::screens::aside as said;
use crate::text::{self, AskJob};

/// Rows of one screen; those that are answered make room for those that are not.
const MAX: usize = 100;

/// The row on the job's first screen, where there is anything.
pub fn row(page: &mut Page, job: &Job) {
    let (all, open) = (job.asides().len(), open(job).count());
    if all > 0 {
        let line = if open == 0 { said::all_seen() } else { said::to_look_at(open) };
        page.row(said::row(all), vec![line], go(Route::Asides(job.id())));
    }
}

pub(super) fn open(job: &Job) -> impl Iterator<Item = &Aside> {
    job.asides().iter().filter(|a| job.aside_answer(a.entry).is_none())
}

/// The list, or the one that was tapped.
pub fn view(look: &Look, job: &Job) -> Page {
    let chosen = look.draft("aside");
    if let Some(aside) = open(job).find(|a| a.entry.to_string() == chosen) {
        return one(look, job, aside);
    }
    let mut page = Page::new(said::title());
    if job.asides().is_empty() {
        page.para(said::none());
    } else {
        page.caution(Tone::Warn, said::count());
    }
    let answered = job.asides().iter().filter(|a| job.aside_answer(a.entry).is_some());
    for (i, aside) in open(job).chain(answered).take(MAX).enumerate() {
        let mut lines = vec![look.by(&aside.stamp), said::why(&aside.why)];
        let answer = job.aside_answer(aside.entry);
        lines.extend(answer.map(|stamp| said::looked_at_by(look.by(stamp))));
        let (state, word) =
            if answer.is_some() { (StepState::Done, said::looked_at()) } else { (StepState::Open, said::to_do()) };
        let action = if answer.is_some() { String::new() } else { format!("aside {}", aside.entry) };
        let (number, title) = ((i + 1).to_string(), text::summary(&aside.says, look.world));
        page.step(StepRow { number, title, state, word, lines, action });
    }
    if let Some(more) = job.asides().len().checked_sub(MAX + 1) {
        page.para(said::more(more + 1));
    }
    if open(job).next().is_none() {
        super::job::next(&mut page, job);
    }
    page
}

fn one(look: &Look, job: &Job, aside: &Aside) -> Page {
    let mut page = Page::new(said::one());
    page.fact(said::says(), text::summary(&aside.says, look.world));
    page.fact(said::recorded(), look.by(&aside.stamp));
    let device = format!("{:.8}", aside.stamp.device.to_string());
    page.fact(said::device(), said::device_is(device, aside.stamp.seq));
    page.fact(said::because(), aside.why.clone());
    if let (Some((label, _)), Some(on)) = (&aside.lock, aside.on) {
        let place = text::place(job, on);
        page.caution(Tone::Must, said::go_there(place, label));
    }
    page.field("why", &said::how(), &said::how_hint(), look.draft("why"), EntryKind::Long, 500);
    page.button(said::leave_open(), "leave-it");
    page.main(said::answer(), format!("answer {}", aside.entry));
    page
}

/// Locks that count as on by the word of an entry that is put aside, and those of answered ones, in a list of locks.
pub fn locks(page: &mut Page, look: &Look, job: &Job) {
    for aside in job.aside_locks() {
        page.row(title(look, job, aside), vec![because(aside), look.by(&aside.stamp)], go(Route::Asides(job.id())));
    }
}

/// Locks in entries put aside that somebody looked at.
pub fn answered_locks(page: &mut Page, look: &Look, job: &Job) {
    let all = job.asides().iter().filter_map(|a| Some((a, job.aside_answer(a.entry)?, a.lock.as_ref()?)));
    for (i, (aside, stamp, _)) in all.enumerate() {
        if i == 0 {
            page.heading(said::answered());
        }
        page.row(title(look, job, aside), vec![said::looked_at_by(look.by(stamp))], go(Route::Asides(job.id())));
    }
}

/// Such a lock at a point, where there is one.
pub fn at_point(page: &mut Page, look: &Look, job: &Job, point: EntryId) -> usize {
    let there: Vec<&Aside> = job.aside_locks().filter(|a| a.on == Some(On::Point(point))).collect();
    for aside in &there {
        page.row(title(look, job, aside), vec![because(aside)], go(Route::Asides(job.id())));
    }
    there.len()
}

fn title(look: &Look, job: &Job, aside: &Aside) -> String {
    let (label, owner) = aside.lock.clone().unwrap_or((String::new(), EntryId::NONE));
    let place = aside.on.map_or_else(String::new, |on| text::place(job, on));
    said::lock(look.name(owner), place, label)
}

fn because(aside: &Aside) -> String {
    said::counts(&aside.why)
}

/// What is done here.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "aside" => act.note("aside", arg),
        "leave-it" => act.note("aside", ""),
        "answer" => {
            let why = act.need("why", AskJob::AtTheSpot)?;
            act.keep(Some(job), Fact::AsideAnswered { entry: id(arg)?, why })?;
            act.say = Some(said::saved());
        }
        _ => return Err(UNKNOWN.into()),
    }
    Ok(())
}
