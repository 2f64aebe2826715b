//! Entries about a job that are put aside: what each says, by whom, why it is not believed, and what somebody found at the spot.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go, id};
use super::parts::{EntryKind, StepRow, StepState, Tone};
use crate::app::NotDone;
use crate::app::near::entries;
use crate::job::Job;
use crate::job::known::Aside;
use crate::journal::fact::On;
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskJob};

/// Rows of one screen; those that are answered make room for those that are not.
const MAX: usize = 100;

/// The row on the job's first screen, where there is anything.
pub fn row(page: &mut Page, job: &Job) {
    let (all, open) = (job.asides().len(), open(job).count());
    if all > 0 {
        let line = if open == 0 { "All looked at.".into() } else { format!("{open} to look at, at the spot.") };
        page.row(format!("{} put aside", entries(all)), vec![line], go(Route::Asides(job.id())));
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
    let mut page = Page::new("Entries put aside");
    if job.asides().is_empty() {
        page.para("Nothing about this job is put aside.");
    } else {
        page.caution(
            Tone::Warn,
            "These are not in the journal. Until somebody has looked at the spot, each one counts: a lock in it is on.",
        );
    }
    let answered = job.asides().iter().filter(|a| job.aside_answer(a.entry).is_some());
    for (i, aside) in open(job).chain(answered).take(MAX).enumerate() {
        let mut lines = vec![look.by(&aside.stamp), format!("Put aside: {}.", aside.why)];
        let answer = job.aside_answer(aside.entry);
        lines.extend(answer.map(|stamp| format!("Looked at: {}", look.by(stamp))));
        let (state, word) = if answer.is_some() { (StepState::Done, "looked at") } else { (StepState::Open, "to do") };
        let action = if answer.is_some() { String::new() } else { format!("aside {}", aside.entry) };
        let (number, title, word) = ((i + 1).to_string(), text::summary(&aside.says, look.world), word.into());
        page.step(StepRow { number, title, state, word, lines, action });
    }
    if let Some(more) = job.asides().len().checked_sub(MAX + 1) {
        page.para(format!("And {} more, shown as these are answered.", more + 1));
    }
    if open(job).next().is_none() {
        super::job::next(&mut page, job);
    }
    page
}

fn one(look: &Look, job: &Job, aside: &Aside) -> Page {
    let mut page = Page::new("Look at the spot");
    page.fact("It says", text::summary(&aside.says, look.world));
    page.fact("Recorded", look.by(&aside.stamp));
    page.fact("By device", format!("{:.8}, entry {}", aside.stamp.device.to_string(), aside.stamp.seq));
    page.fact("Put aside because", aside.why.clone());
    if let (Some((label, _)), Some(on)) = (&aside.lock, aside.on) {
        let place = text::place(job, on);
        page.caution(
            Tone::Must,
            format!("Go to {place}. Lock {label} counts as on until you have seen that it is not."),
        );
    }
    let hint = "Who was asked, and what is there: another person has to understand it.";
    page.field("why", "How it is at the spot", hint, look.draft("why"), EntryKind::Long, 500);
    page.button("Leave it open", "leave-it");
    page.main("Save: I looked at the spot", format!("answer {}", aside.entry));
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
            page.heading("In entries put aside, looked at");
        }
        page.row(title(look, job, aside), vec![format!("Looked at: {}", look.by(stamp))], go(Route::Asides(job.id())));
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
    format!("{} on {place}: {label}, by an entry put aside", look.name(owner))
}

fn because(aside: &Aside) -> String {
    format!("Counts as on: {}.", aside.why)
}

/// What is done here.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "aside" => act.note("aside", arg),
        "leave-it" => act.note("aside", ""),
        "answer" => {
            let why = act.need("why", AskJob::AtTheSpot)?;
            act.keep(Some(job), Fact::AsideAnswered { entry: id(arg)?, why })?;
            act.say = Some("Saved. The entry stays put aside, and no longer keeps a proof from standing.".into());
        }
        _ => return Err(UNKNOWN.into()),
    }
    Ok(())
}
