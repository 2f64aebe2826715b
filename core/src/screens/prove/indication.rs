//! What the screen says when a voltage was met, and what has to be written before another test.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::give_up::GIVE_UP;
use super::super::home::go;
use super::super::parts::Tone;
use super::{behind, results};
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, TroubleKind};
use crate::journal::{EntryId, Fact};
use crate::prove::{Met, Reading, Test};
use crate::text::{self, AskProve};

pub(super) fn view(page: &mut Page, look: &Look, job: &Job, plan: &[Test], lit: &[Met]) {
    let pair = lit.last().and_then(|met| met.pair.as_ref());
    let off = pair.map(|[first, then]| format!("Take the probe off {then} first, then off {first}"));
    let off = off.unwrap_or_else(|| "Take the probes off".into());
    page.caution(Tone::Forbid, format!("Treat as live. {off}, and put the cover between you and it."));
    // The rest stands in the table of readings below: what to do must not be pushed off the screen.
    for met in lit.iter().take(3) {
        page.fact(
            text::met_at(met),
            format!("{}, expected no indication ({})", text::reading(met.reading), look.by(&met.stamp)),
        );
    }
    behind::view(page, job);
    page.heading("What to do now");
    page.para("1. Keep everybody away from the conductors. Tell the person who answers for the isolation.");
    page.para("2. Find the cause: the wrong point opened, a source that was missed, a neutral shared with another circuit, an induced voltage.");
    page.para("3. A source that was missed goes into the job, with its own point and lock.");
    page.para("4. Then prove the indicator and test every pair again. An explanation does not make a conductor dead.");
    page.button("A source was missed", go(Route::Change(job.id())));
    page.button("Look at the points again", go(Route::Step(job.id(), Step::Points)));
    let unread = lit.iter().filter(|met| met.reading == Reading::Lit(None));
    if let Some((met, [first, then])) = unread.filter_map(|met| Some((met, met.pair.as_ref()?))).next() {
        let levels = [12, 24, 50, 120, 230, 400, 690].map(|v| (v.to_string(), format!("{v} V"))).to_vec();
        page.choice("level", &format!("If you saw it: {} was lit to", text::met_at(met)), levels, look.draft("level"));
        page.button("Save the level", format!("level {first}:{then}"));
    }
    if let Some(run) = job.run() {
        behind::more(page, look, run, plan);
    }
    results(page, job, plan);
    explain(page, look, job);
}

/// What was behind it: found, or looked for and not found. Both are answers.
pub(super) fn explain(page: &mut Page, look: &Look, job: &Job) {
    for trouble in job.unexplained().filter(|t| !matches!(t.kind, TroubleKind::Voltage(_))) {
        page.caution(Tone::Forbid, format!("{} ({})", text::trouble(&trouble.kind), look.by(&trouble.stamp)));
    }
    page.entry(
        "cause",
        "What the cause was, and what was done about it",
        "It stays with the record.",
        look.draft("cause"),
    );
    page.main("Save the cause, then prove again", "cause found");
    page.para("If it was looked for and not found: two whole tests follow, the second with another indicator or by another person.");
    page.toned("Cause not found", "cause none", Tone::Quiet);
    if job.finished.is_none() {
        page.button(GIVE_UP, go(Route::GiveUp(job.id())));
    }
}

/// Keeps what was behind everything that is not explained yet.
pub(super) fn cause(act: &mut Act, job: EntryId, found: bool) -> Result<(), NotDone> {
    let ask = if found { AskProve::Cause } else { AskProve::CauseSought };
    let cause = act.need("cause", ask)?;
    let of = act.job(job)?.unexplained().map(|t| t.stamp.id).collect();
    act.keep(Some(job), Fact::CauseNoted { of, found, cause })?;
    // Where the cause leads to a question, that comes before another test.
    let open = act.job(job)?.current().filter(|step| *step < Step::ProveBefore);
    act.go = Some(Route::Step(job, open.unwrap_or(Step::ProveBefore)));
    Ok(())
}
