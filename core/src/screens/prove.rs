//! The steps of proving dead: open up, prove the indicator, test every pair, prove the indicator again.

mod behind;
mod indication;
mod pairs;
mod reference;

use self::pairs::{REREAD, dead_test, level, readings, results};
use super::Route;
use super::again;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::job::{lacking, next};
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, Standing};
use crate::journal::fact::{InstrumentKind, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::prove::Reading;
use crate::text::screens::plan as said_plan;
use crate::text::screens::prove as said;
use crate::text::{self, AskProve};

/// What a step of proving shows.
pub fn view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(text::title(step, job));
    match step {
        Step::OpenUp => open_up(&mut page, look, job),
        Step::ProveBefore => prove_before(&mut page, look, job),
        Step::ProveReference => reference::view(&mut page, look, job),
        Step::Discharge => reference::discharge(&mut page, look, job),
        Step::DeadTest => dead_test(&mut page, look, job),
        _ => prove_after(&mut page, look, job),
    }
    page
}

/// What is done on a step of proving.
pub fn act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), NotDone> {
    match (verb, arg) {
        ("cover", _) => {
            let what = if arg == "usual" { said::usual_cover() } else { act.need("what", AskProve::Cover)? };
            act.keep(Some(job), Fact::CoverOff { what })?;
            // Others may have to come off as well.
            if arg == "last" || arg == "usual" { act.onward(job, step) } else { Ok(()) }
        }
        ("no-covers", _) => {
            let why = act.need("why", AskProve::NoCovers)?;
            act.keep(Some(job), Fact::NoCovers { why })?;
            act.onward(job, step)
        }
        ("before", works) => begin(act, job, works == "works"),
        ("reference" | "direct", _) => reference::act(act, job, verb, arg),
        ("after", works) => end(act, job, works == "works"),
        ("readings", group) => readings(act, job, group),
        ("seen", _) => {
            let pair = act.need("seen", AskProve::Seen)?;
            let (first, then) = pair.split_once(':').ok_or(UNKNOWN)?;
            let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
            let (first, then) = (first.to_owned(), then.to_owned());
            act.keep(Some(job), Fact::ReadingTaken { run, first, then, reading: Reading::Lit(None), dc: false })?;
            (act.alarm, act.say) = (true, Some(said::indication()));
            Ok(())
        }
        ("cause", found) => indication::cause(act, job, found != "none"),
        ("sign-run", _) => {
            sign_run(act, job)?;
            act.onward(job, Step::ProveAfter)
        }
        ("level", pair) => level(act, job, pair),
        ("reread", pair) => {
            act.prefill(Route::Step(job, step), REREAD, pair);
            act.go = Some(Route::Step(job, step));
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}

fn open_up(page: &mut Page, look: &Look, job: &Job) {
    page.caution(Tone::Warn, said::covers_caution());
    lacking(page, look, job, Step::OpenUp);
    for (stamp, what, back) in &job.covers {
        let state = if back.is_some() { said::cover_back() } else { said::cover_off() };
        page.fact(state, said::cover_by(what, look.by(stamp)));
    }
    let begun = !job.covers.is_empty() || job.no_covers.is_some();
    let before = again::covers(look);
    // Where nobody has named a cover before, the one that most boards have is a tap.
    if before.is_empty() && !begun {
        page.button(said::usual_cover_off(), "cover usual");
    }
    page.entry_again(look, "what", &said::cover(), &said::cover_hint(), before);
    page.button(said_plan::cover_off_more(), "cover");
    if !begun {
        page.main(said_plan::cover_off_last(), "cover last");
        page.entry("why", &said::no_cover_why(), &said::no_cover_hint(), look.draft("why"));
        page.button(said::no_cover(), "no-covers");
    }
    if begun {
        next(page, job);
    }
}

fn sound(look: &Look, job: &Job, kind: InstrumentKind) -> Vec<(String, String)> {
    let fit = job.instruments.iter().filter(|c| c.faults.is_empty());
    fit.filter(|c| look.world.instruments.get(&c.instrument).is_some_and(|i| i.kind == kind))
        .map(|c| (c.instrument.to_string(), text::instrument(look.world, c.instrument)))
        .collect()
}

fn one(options: &[(String, String)]) -> &str {
    // With a single instrument there is nothing to choose.
    if let [(value, _)] = options { value } else { "" }
}

fn proving_choices(page: &mut Page, look: &Look, job: &Job) {
    let mut on = sound(look, job, InstrumentKind::ProvingUnit);
    let chosen = look.draft_or("on", one(&on));
    on.push(("source".into(), said::known_source()));
    page.choice("on", &said::on(), on, chosen);
    page.entry("source", &said::which_source(), &said::which_source_hint(), look.draft("source"));
}

fn prove_before(page: &mut Page, look: &Look, job: &Job) {
    lacking(page, look, job, Step::ProveBefore);
    if matches!(job.standing(), Standing::UnderWay { .. } | Standing::Proved { .. }) {
        if let Some(run) = job.run() {
            page.fact(said::indicator(), text::instrument(look.world, run.indicator));
            page.fact(said::proved(), look.by(&run.before));
        }
        next(page, job);
        return;
    }
    if job.at_work() {
        page.caution(Tone::Forbid, said::stop_work());
        page.main(said::stop_work_first(), go(Route::Step(job.id(), Step::Work)));
        return;
    }
    if job.unexplained().next().is_some() {
        indication::explain(page, look, job);
        return;
    }
    page.para(said::ranges());
    let indicators = sound(look, job, InstrumentKind::Indicator);
    if indicators.is_empty() {
        page.caution(Tone::Forbid, said::no_indicator());
        page.main(said::check_indicator(), go(Route::Step(job.id(), Step::Instruments)));
        return;
    }
    let chosen = look.draft_or("indicator", one(&indicators));
    page.choice("indicator", &said::voltage_indicator(), indicators, chosen);
    proving_choices(page, look, job);
    page.toned(said::responds_not(), "before fails", Tone::Forbid);
    page.main(said::responds(), "before works");
}

fn proved_on(act: &Act) -> Result<ProvedOn, NotDone> {
    let on = act.need("on", AskProve::On)?;
    if on == "source" {
        let what = act.need("source", AskProve::Source)?;
        return Ok(ProvedOn::KnownSource(what));
    }
    Ok(ProvedOn::ProvingUnit(on.parse().map_err(|_| UNKNOWN)?))
}

fn begin(act: &mut Act, job: EntryId, works: bool) -> Result<(), NotDone> {
    let indicator = act.need_id("indicator", AskProve::Indicator)?;
    let on = proved_on(act)?;
    act.keep(Some(job), Fact::IndicatorProved { run: None, indicator, on, works })?;
    if works {
        act.say = Some(said::is_proved());
        return act.onward(job, Step::ProveBefore);
    }
    act.alarm = true;
    act.say = Some(said::failed());
    act.go = Some(Route::Step(job, Step::Instruments));
    Ok(())
}

/// A long test is proved in between: what was read before then counts, and the test goes on.
fn prove_between(page: &mut Page, look: &Look, job: &Job) {
    const SOON_MS: i64 = 30 * 60_000;
    let Some(left) = job.test_left().filter(|left| *left < SOON_MS) else { return };
    let text = match left.max(0) / 60_000 {
        0 => said::between_late(),
        minutes => said::between(minutes),
    };
    page.caution(Tone::Must, text);
    proving_choices(page, look, job);
    page.toned(said::responds_not(), "after fails", Tone::Forbid);
    page.button(said::responds(), "after works");
}

fn prove_after(page: &mut Page, look: &Look, job: &Job) {
    if let Standing::Proved { since } = job.standing() {
        page.fact(said::again_by(), look.by(&since));
        results(page, job, &job.plan());
        next(page, job);
        return;
    }
    lacking(page, look, job, Step::ProveAfter);
    if job.standing() == Standing::Unsigned {
        page.caution(Tone::Must, said::supervised());
        match look.acting.filter(|p| job.people().contains(p) && !job.learns(Some(*p))) {
            Some(person) => {
                let name = look.name(person);
                page.mark("mark", said::signs(&name), look.draft("mark"));
                page.main(said::sign_as(name), "sign-run");
            }
            None => _ = page.main(said::hand_on(), go(Route::People)),
        }
        results(page, job, &job.plan());
        return;
    }
    if !matches!(job.standing(), Standing::UnderWay { missing: 0 }) {
        next(page, job);
        return;
    }
    let Some(run) = job.run() else { return };
    page.fact(said::indicator(), text::instrument(look.world, run.indicator));
    page.para(said::after());
    proving_choices(page, look, job);
    page.toned(said::responds_not(), "after fails", Tone::Forbid);
    page.main(said::responds(), "after works");
}

/// Somebody of the job who does not learn stands by a test: a learner's, or before they let the work start.
pub(super) fn sign_run(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
    let name = act.world().name(act.acting()?);
    let mark = act.signature(&name)?;
    act.keep(Some(job), Fact::RunSigned { run, mark }).map(drop)
}

fn end(act: &mut Act, job: EntryId, works: bool) -> Result<(), NotDone> {
    let on = proved_on(act)?;
    let now = act.job(job)?;
    let run = now.run().ok_or(AskProve::IndicatorFirst)?;
    let whole = now.known.as_ref().is_some_and(|known| now.untested(run, &known.now).is_empty());
    act.keep(Some(job), Fact::IndicatorProved { run: Some(run.id()), indicator: run.indicator, on, works })?;
    if works && !whole {
        act.say = Some(said::goes_on());
        return act.onward(job, Step::DeadTest);
    }
    if works {
        return act.onward(job, Step::ProveAfter);
    }
    act.alarm = true;
    act.say = Some(said::after_failed());
    act.go = Some(Route::Step(job, Step::DeadTest));
    Ok(())
}
