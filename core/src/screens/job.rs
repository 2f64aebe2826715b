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
use crate::text::screens::app;
use crate::text::screens::job as said;
use crate::text::screens::locks;
use crate::text::screens::plan as said_plan;
use crate::text::screens::record;
use crate::text::screens::ruled;
use crate::text::screens::supply;
use crate::text::{self, AskJob};

/// The job's steps; the next one is the main action.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(job.title.clone());
    page.fact(said::place(), job.place.clone());
    page.fact(said_plan::equipment(), job.equipment.clone());
    page.fact(said::work(), job.scope.clone());
    page.fact(said::rules(), text::rules_in_short(job.rule_set));
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
    page.heading(said::at_any_time());
    company::whom_to_call(&mut page, look, job);
    super::aside::row(&mut page, job);
    let on = job.locks_on().count() + job.aside_locks().count();
    page.row(locks::title(), vec![said::locks_on(on)], go(Route::Locks(job.id())));
    page.row(supply::cut_title(), vec![super::supply::cut::in_short(look, job)], go(Route::Cut(job.id())));
    if job.handed.is_none() {
        page.row(said::changed(), vec![said::changed_what()], go(Route::Change(job.id())));
        page.row(said::shift(), vec![], go(Route::Shift(job.id())));
    }
    page.row(said::time_line(), vec![said::time_line_what()], go(Route::TimeLine(job.id())));
    page.row(record::title(), vec![said::record_what()], go(Route::Record(job.id())));
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
        _ if stop && job.finished.is_none() => (StepState::Stop, app::word_stop()),
        // A step whose turn has not come may lack nothing because there is nothing yet: that is not done.
        Some(c) if i > c && state.blockers.is_empty() && state.step.stage() != Stage::Plan && !either_order => {
            (StepState::Later, said::word_later())
        }
        _ if state.blockers.is_empty() => (StepState::Done, said::word_done()),
        _ if state.passed() => (StepState::Deviated, said::word_skipped()),
        Some(c) if c == i => (StepState::Now, said::word_now()),
        _ if either_order => (StepState::Open, said::word_to_do()),
        _ => (StepState::Later, said::word_later()),
    };
    let mut lines: Vec<String> = Vec::new();
    if matches!(shape, StepState::Now | StepState::Open | StepState::Stop) {
        lines.extend(state.blockers.iter().take(3).map(|lack| text::blocker(lack, look.world)));
        if state.blockers.len() > 3 {
            lines.push(said::more(state.blockers.len() - 3));
        }
    }
    if let Some(deviation) = &state.deviation {
        lines.push(said::skipped(&deviation.why, look.by(&deviation.stamp)));
    }
    let action = if shape == StepState::Later { String::new() } else { go(Route::Step(job.id(), state.step)) };
    StepRow { number: (i + 1).to_string(), title: text::title(state.step, job), state: shape, word, lines, action }
}

/// The way on: the step whose turn it is.
pub(super) fn next(page: &mut Page, job: &Job) {
    // Work that is under way when a proof ends goes before everything else.
    if job.at_work() && !matches!(job.standing(), Standing::Proved { .. }) {
        page.main(said::stop_work(), go(Route::Step(job.id(), Step::Work)));
        return;
    }
    match job.current() {
        // Whatever was proved before would not stand.
        Some(Step::ProveBefore) if super::aside::open(job).next().is_some() => {
            page.main(said::next_asides(), go(Route::Asides(job.id())))
        }
        Some(step) => page.main(said::next(text::title(step, job)), go(Route::Step(job.id(), step))),
        None => page.main(app::back_to_jobs(), go(Route::Home)),
    };
}

/// What `step` still lacks, in sentences.
pub(super) fn lacking(page: &mut Page, look: &Look, job: &Job, step: Step) {
    let Some(state) = job.steps().into_iter().find(|s| s.step == step) else { return };
    if let Some(deviation) = &state.deviation {
        page.caution(Tone::Warn, said::skipped(&deviation.why, look.by(&deviation.stamp)));
    }
    let mut open: Vec<String> = Vec::new();
    if step == Step::Sources && !state.blockers.is_empty() {
        open.push(text::sources_open(state.blockers.len()));
    } else if !state.passed() {
        // What is asked stands below, with its answers.
        let asked = |lack: &&Blocker| !matches!(lack, Blocker::Question(Open { stopped: None, .. }));
        let blockers: Vec<&Blocker> = state.blockers.iter().filter(asked).collect();
        // A long list would push what there is to do off a phone's screen; the rest comes up as the first is done.
        let shown = if blockers.len() > 3 { 2 } else { blockers.len() };
        open.extend(blockers[..shown].iter().map(|lack| text::blocker(lack, look.world)));
        if shown < blockers.len() {
            open.push(said_plan::and_more(blockers.len() - shown));
        }
    }
    // Before the supply is back a form says by itself what it waits for, and its first field has to be seen on arrival. Afterwards what is
    // listed here are readings, and locks of others.
    let form = matches!(step.stage(), Stage::Plan | Stage::Isolate | Stage::Prove);
    if form {
        page.still_to_do = open;
    } else {
        for what in open {
            page.fact(said_plan::still_to_do(), what);
        }
    }
    company::wear(page, job, step);
    super::asked::view(page, look, job, Some(step));
}

/// What a step still waits for, below its form.
pub(super) fn still_to_do(page: &mut Page) {
    for open in std::mem::take(&mut page.still_to_do) {
        page.fact(said_plan::still_to_do(), open);
    }
}

/// The way to pass a step over, where there is one: at the end of the page, behind all that would make it needless.
pub(super) fn way_past(page: &mut Page, job: &Job, step: Step) {
    if job.steps().iter().any(|s| s.step == step && s.may_deviate()) {
        page.toned(said::skip(), go(Route::Deviate(job.id(), step)), Tone::Quiet);
    }
}

/// Passing over what a step asks for.
pub fn deviate(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(said::skip_title(text::title(step, job)));
    page.caution(Tone::Warn, said::skip_says());
    for lack in job.blockers(step) {
        page.fact(said::not_done(), text::blocker(&lack, look.world));
    }
    page.field("why", &said::skip_why(), &said::skip_why_hint(), look.draft("why"), EntryKind::Long, 500);
    let name = look.acting.map_or_else(ruled::nobody, |person| look.name(person));
    page.main(said::skip_signed(name), "deviate");
    page
}

/// Everything that was recorded, latest first.
pub fn time_line(look: &Look, job: &Job) -> Page {
    let chosen = look.draft("entry");
    if let Some(entry) = look.entries.iter().find(|e| e.id.to_string() == chosen) {
        return withdrawal(look, job, entry);
    }
    let mut page = Page::new(said::time_line());
    page.para(said::time_line_stays());
    for entry in look.entries.iter().rev() {
        let stamp = entry.stamp();
        let gone = job.withdrawn.iter().find(|(_, id, _)| *id == entry.id);
        let mut lines = vec![look.by(&stamp)];
        if entry.body.clock.0.saturating_sub(entry.body.wall) > 60_000 {
            lines.push(said::clock_was_behind());
        }
        if let Some((by, _, why)) = gone {
            lines.push(said::withdrawn_why(why, look.by(by)));
        }
        page.step(StepRow {
            number: entry.body.seq.to_string(),
            title: text::said(job, entry, look.world),
            state: if gone.is_some() { StepState::Deviated } else { StepState::Done },
            word: if gone.is_some() { said::withdrawn() } else { String::new() },
            lines,
            action: if gone.is_some() || job.handed.is_some() {
                String::new()
            } else {
                format!("correct {}", entry.id)
            },
        });
    }
    page.toned(app::share(), "share", Tone::Quiet);
    page
}

/// One entry of the time line, and whether it is to be withdrawn.
fn withdrawal(look: &Look, job: &Job, entry: &Entry) -> Page {
    let mut page = Page::new(said::withdraw_title(entry.body.seq));
    page.fact(said::it_says(), text::said(job, entry, look.world));
    page.fact(said::saved_by(), look.by(&entry.stamp()));
    page.caution(Tone::Warn, said::withdraw_ends());
    page.entry("why", &said::withdraw_why(), "", look.draft("why"));
    page.button(said::leave_it(), "leave-it");
    page.main(said::withdraw(), format!("withdraw {}", entry.id));
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
            act.say = Some(said::withdraw_done());
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
