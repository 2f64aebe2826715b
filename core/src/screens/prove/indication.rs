//! What the screen says when a voltage was met, and what has to be written before another test.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::go;
use super::super::parts::Tone;
use super::behind;
use super::pairs::results;
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, TroubleKind};
use crate::journal::{EntryId, Fact};
use crate::prove::{Met, Reading, Test};
use crate::text::screens::give_up;
use crate::text::screens::prove as said;
use crate::text::{self, AskProve};

pub(super) fn view(page: &mut Page, look: &Look, job: &Job, plan: &[Test], lit: &[Met]) {
    let pair = lit.last().and_then(|met| met.pair.as_ref());
    let stop = pair.map_or_else(said::stop, |[first, then]| said::stop_pair(then, first));
    page.caution(Tone::Forbid, stop);
    // The rest stands in the table of readings below: what to do must not be pushed off the screen.
    for met in lit.iter().take(3) {
        page.fact(text::met_at(met), said::unexpected(text::reading(met.reading), look.by(&met.stamp)));
    }
    behind::view(page, job);
    page.heading(said::do_now());
    page.para(said::do_1());
    page.para(said::do_2());
    page.para(said::do_3());
    page.para(said::do_4());
    page.button(said::missed(), go(Route::Change(job.id())));
    page.button(said::points_again(), go(Route::Step(job.id(), Step::Points)));
    let unread = lit.iter().filter(|met| met.reading == Reading::Lit(None));
    if let Some((met, [first, then])) = unread.filter_map(|met| Some((met, met.pair.as_ref()?))).next() {
        let levels = [12, 24, 50, 120, 230, 400, 690].map(|v| (v.to_string(), said::level_volts(v))).to_vec();
        page.choice("level", &said::level(text::met_at(met)), levels, look.draft("level"));
        page.button(said::level_save(), format!("level {first}:{then}"));
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
        page.caution(Tone::Forbid, said::trouble(text::trouble(&trouble.kind), look.by(&trouble.stamp)));
    }
    page.entry("cause", &said::cause(), &said::cause_hint(), look.draft("cause"));
    page.main(said::cause_save(), "cause found");
    page.para(said::cause_none_means());
    page.toned(said::cause_none(), "cause none", Tone::Quiet);
    if job.finished.is_none() {
        page.button(give_up::title(), go(Route::GiveUp(job.id())));
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
