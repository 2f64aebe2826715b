//! A job from above: its steps, its time line, corrections and deviations; and two pieces that every step shares.

use super::Route;
use super::build::Page;
use super::company;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::parts::{EntryKind, StepRow, StepState, Tone};
use crate::app::NotDone;
use crate::job::asked::Open;
use crate::job::steps::{self, Stage, Step};
use crate::job::{Blocker, Job, Standing};
use crate::journal::{Entry, EntryId, Fact};
use crate::text::{self, AskJob};

/// The job's steps; the next one is the main action.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(job.title.clone());
    page.fact("Place", job.place.clone());
    page.fact(text::screens::plan::equipment(), job.equipment.clone());
    page.fact("Work", job.scope.clone());
    page.fact("Rules", text::rules_in_short(job.rule_set));
    company::of_job(&mut page, look, job);
    let states = job.steps();
    let current = states.iter().position(|s| !s.passed());
    let mut stage = None;
    for (i, state) in states.iter().enumerate() {
        if stage != Some(state.step.stage()) {
            stage = Some(state.step.stage());
            page.heading(text::stage(state.step.stage()));
        }
        page.step(row(job, look, state, i, current));
    }
    page.heading("At any time");
    company::whom_to_call(&mut page, look, job);
    super::aside::row(&mut page, job);
    let on = job.locks_on().count() + job.aside_locks().count();
    page.row("Locks and keys", vec![format!("{on} on now")], go(Route::Locks(job.id())));
    page.row("Supply network", vec![super::supply::cut::in_short(look, job)], go(Route::Cut(job.id())));
    if job.handed.is_none() {
        let lines = vec!["Another source, another scope, a parted neutral.".into()];
        page.row("Something changed", lines, go(Route::Change(job.id())));
        page.row("Shift change", vec![], go(Route::Shift(job.id())));
    }
    let lines = vec!["Everything that was recorded, and corrections.".into()];
    page.row("Time line", lines, go(Route::TimeLine(job.id())));
    let lines = vec!["A PDF that anyone can check, to hand on.".into()];
    page.row("Record of this job", lines, go(Route::Record(job.id())));
    next(&mut page, job);
    page
}

fn row(job: &Job, look: &Look, state: &steps::StepState, i: usize, current: Option<usize>) -> StepRow {
    let stop = matches!(job.standing(), Standing::Indication { .. }) && state.step == Step::DeadTest;
    let now = current.and_then(|c| job.sequence().get(c).copied());
    // Plans are made, and points isolated, in any order: the person starts with what is in front of them.
    let either_order = match now {
        Some(Step::Isolate(_)) => matches!(state.step, Step::Isolate(_)),
        _ => now.is_some_and(|s| s.stage() == Stage::Plan) && state.step.stage() == Stage::Plan,
    };
    let (shape, word) = match current {
        _ if stop && job.finished.is_none() => (StepState::Stop, "stop"),
        // A step whose turn has not come may lack nothing because there is nothing yet: that is not done.
        Some(c) if i > c && state.lacks.is_empty() && state.step.stage() != Stage::Plan && !either_order => {
            (StepState::Later, "later")
        }
        _ if state.lacks.is_empty() => (StepState::Done, "done"),
        _ if state.passed() => (StepState::Deviated, "skipped"),
        Some(c) if c == i => (StepState::Now, "now"),
        _ if either_order => (StepState::Open, "to do"),
        _ => (StepState::Later, "later"),
    };
    let mut lines: Vec<String> = Vec::new();
    if matches!(shape, StepState::Now | StepState::Open | StepState::Stop) {
        lines.extend(state.lacks.iter().take(3).map(|lack| text::blocker(lack, look.world)));
        if state.lacks.len() > 3 {
            lines.push(format!("And {} more.", state.lacks.len() - 3));
        }
    }
    if let Some(deviation) = &state.deviation {
        lines.push(format!("Skipped: {} ({})", deviation.why, look.by(&deviation.stamp)));
    }
    let action = if shape == StepState::Later { String::new() } else { go(Route::Step(job.id(), state.step)) };
    StepRow {
        number: (i + 1).to_string(),
        title: text::title(state.step, job),
        state: shape,
        word: word.into(),
        lines,
        action,
    }
}

/// The way on: the step whose turn it is.
pub(super) fn next(page: &mut Page, job: &Job) {
    // Work that is under way when a proof ends goes before everything else.
    if job.at_work() && !matches!(job.standing(), Standing::Proved { .. }) {
        page.main("Stop work: treat as live", go(Route::Step(job.id(), Step::Work)));
        return;
    }
    match job.current() {
        // Whatever was proved before would not stand.
        Some(Step::ProveBefore) if super::aside::open(job).next().is_some() => {
            page.main("Next: Look at the spot, entries are put aside", go(Route::Asides(job.id())))
        }
        Some(step) => page.main(format!("Next: {}", text::title(step, job)), go(Route::Step(job.id(), step))),
        None => page.main("Back to the jobs", go(Route::Home)),
    };
}

/// What `step` still lacks, in sentences.
pub(super) fn lacking(page: &mut Page, look: &Look, job: &Job, step: Step) {
    let Some(state) = job.steps().into_iter().find(|s| s.step == step) else { return };
    if let Some(deviation) = &state.deviation {
        page.caution(Tone::Warn, format!("Skipped: {} ({})", deviation.why, look.by(&deviation.stamp)));
    }
    let mut open: Vec<String> = Vec::new();
    if step == Step::Sources && !state.lacks.is_empty() {
        open.push(text::sources_open(state.lacks.len()));
    } else if !state.passed() {
        // What is asked stands below, with its answers.
        let asked = |lack: &&Blocker| !matches!(lack, Blocker::Question(Open { stopped: None, .. }));
        let lacks: Vec<&Blocker> = state.lacks.iter().filter(asked).collect();
        // A long list would push what there is to do off a phone's screen; the rest comes up as the first is done.
        let shown = if lacks.len() > 3 { 2 } else { lacks.len() };
        open.extend(lacks[..shown].iter().map(|lack| text::blocker(lack, look.world)));
        if shown < lacks.len() {
            open.push(text::screens::plan::and_more(lacks.len() - shown));
        }
    }
    // Before the supply is back a form says by itself what it waits for, and its first field has to be seen on arrival. Afterwards what is
    // listed here are readings, and locks of others.
    let form = matches!(step.stage(), Stage::Plan | Stage::Isolate | Stage::Prove);
    if form {
        page.still_to_do = open;
    } else {
        for what in open {
            page.fact(text::screens::plan::still_to_do(), what);
        }
    }
    company::wear(page, job, step);
    super::asked::view(page, look, job, Some(step));
}

/// What a step still waits for, below its form.
pub(super) fn still_to_do(page: &mut Page) {
    for open in std::mem::take(&mut page.still_to_do) {
        page.fact(text::screens::plan::still_to_do(), open);
    }
}

/// The way to pass a step over, where there is one: at the end of the page, behind all that would make it needless.
pub(super) fn way_past(page: &mut Page, job: &Job, step: Step) {
    if job.steps().iter().any(|s| s.step == step && s.may_deviate()) {
        page.toned("Skip this step, give a reason", go(Route::Deviate(job.id(), step)), Tone::Quiet);
    }
}

/// Passing over what a step asks for.
pub fn deviate(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(format!("Pass over: {}", text::title(step, job)));
    page.caution(
        Tone::Warn,
        "This is kept in your name and shown on everything that follows. Local rules may not allow it: ask the person who \
         answers for the isolation.",
    );
    for lack in job.lacks(step) {
        page.fact("Not done", text::blocker(&lack, look.world));
    }
    page.field(
        "why",
        "Why, and what is done instead",
        "Another person has to understand it.",
        look.draft("why"),
        EntryKind::Long,
        500,
    );
    let name = look.acting.map_or_else(|| "nobody yet".to_owned(), |person| look.name(person));
    page.main(format!("Skip it, signed by {name}"), "deviate");
    page
}

/// Everything that was recorded, latest first.
pub fn time_line(look: &Look, job: &Job) -> Page {
    let chosen = look.draft("entry");
    if let Some(entry) = look.entries.iter().find(|e| e.id.to_string() == chosen) {
        return withdrawal(look, job, entry);
    }
    let mut page = Page::new("Time line");
    page.para(
        "Nothing here can be edited or deleted. A correction is a new entry, and what an entry ended stays ended. Tap an entry to withdraw it.",
    );
    for entry in look.entries.iter().rev() {
        let stamp = entry.stamp();
        let gone = job.withdrawn.iter().find(|(_, id, _)| *id == entry.id);
        let mut lines = vec![look.by(&stamp)];
        if entry.body.clock.0.saturating_sub(entry.body.wall) > 60_000 {
            lines.push("The device's clock was behind when this was kept: its time is in doubt, its place in the order is not.".into());
        }
        if let Some((by, _, why)) = gone {
            lines.push(format!("Withdrawn: {why} ({})", look.by(by)));
        }
        page.step(StepRow {
            number: entry.body.seq.to_string(),
            title: text::said(job, entry, look.world),
            state: if gone.is_some() { StepState::Deviated } else { StepState::Done },
            word: if gone.is_some() { "withdrawn".into() } else { String::new() },
            lines,
            action: if gone.is_some() || job.handed.is_some() {
                String::new()
            } else {
                format!("correct {}", entry.id)
            },
        });
    }
    page.toned("Share this as a message", "share", Tone::Quiet);
    page
}

/// One entry of the time line, and whether it is to be withdrawn.
fn withdrawal(look: &Look, job: &Job, entry: &Entry) -> Page {
    let mut page = Page::new(format!("Withdraw entry {}?", entry.body.seq));
    page.fact("It says", text::said(job, entry, look.world));
    page.fact("Kept", look.by(&entry.stamp()));
    page.caution(
        Tone::Warn,
        "Withdrawing ends any proof that stands. The entry stays in the time line, marked as withdrawn.",
    );
    page.entry("why", "What was wrong with it", "", look.draft("why"));
    page.button("Leave it as it is", "leave-it");
    page.main("Withdraw this entry", format!("withdraw {}", entry.id));
    page
}

/// What is done on a job's own screens.
pub fn act(act: &mut Act, job: EntryId, step: Option<Step>, verb: &str, arg: &str) -> Result<(), NotDone> {
    match (verb, step) {
        ("deviate", Some(step)) => {
            let why = act.need("why", AskJob::Reason)?;
            act.keep(Some(job), Fact::Deviated { step: step.name(), why })?;
            act.go = Some(Route::Step(job, step));
            act.onward(job, step)
        }
        (company::RING, None) => company::ring(act, job, arg),
        ("correct", None) => {
            act.app.edit("entry", arg);
            Ok(())
        }
        ("leave-it", None) => {
            act.app.edit("entry", "");
            Ok(())
        }
        ("withdraw", None) => {
            let entry: EntryId = arg.parse().map_err(|_| UNKNOWN)?;
            let why = act.need("why", AskJob::EntryWrong)?;
            act.keep(Some(job), Fact::Withdrawn { entry, why })?;
            act.say = Some("The entry is withdrawn. It stays in the time line.".into());
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
