//! The steps of proving dead: open up, prove the indicator, test every pair, prove the indicator again.

mod behind;
mod indication;
mod reference;

use super::Route;
use super::again;
use super::build::{Page, answer};
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::job::{lacking, next};
use super::parts::{Pad, PadRow, Tone};
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, Standing};
use crate::journal::fact::{InstrumentKind, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::prove::{Conductor, Reading, ReadingError, Test, parse_volts};
use crate::text::{self, AskFirst, AskProve};

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
            let what = act.need("what", AskProve::Cover)?;
            act.keep(Some(job), Fact::CoverOff { what })?;
            // Others may have to come off as well.
            if arg == "last" { act.onward(job, step) } else { Ok(()) }
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
            (act.alarm, act.say) = (true, Some("An indication. Stop, and treat as live.".into()));
            Ok(())
        }
        ("cause", found) => indication::cause(act, job, found != "none"),
        ("sign-run", _) => {
            sign_run(act, job)?;
            act.onward(job, Step::ProveAfter)
        }
        ("level", pair) => level(act, job, pair),
        _ => Err(UNKNOWN.into()),
    }
}

fn open_up(page: &mut Page, look: &Look, job: &Job) {
    page.caution(Tone::Warn, "Treat every conductor behind a cover as live until all is proved. Gloves and face protection as local rules say.");
    lacking(page, look, job, Step::OpenUp);
    for (stamp, what, back) in &job.covers {
        let state = if back.is_some() { "back" } else { "off" };
        page.fact(format!("Cover {state}"), format!("{what} ({})", look.by(stamp)));
    }
    let hint = "One at a time. Each has to come back before energising.";
    page.entry_again(look, "what", "Cover that comes off", hint, again::covers(look));
    let begun = !job.covers.is_empty() || job.no_covers.is_some();
    page.button(text::screens::plan::cover_off_more(), "cover");
    if !begun {
        page.main(text::screens::plan::cover_off_last(), "cover last");
        page.entry(
            "why",
            "Or: why no cover has to come off",
            "Test points can be reached from outside.",
            look.draft("why"),
        );
        page.button("No cover comes off", "no-covers");
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
    on.push(("source".into(), "A source known to be live".into()));
    page.choice("on", "Proved on", on, chosen);
    page.entry("source", "Which live source, if it was one", "Not part of this isolation", look.draft("source"));
}

fn prove_before(page: &mut Page, look: &Look, job: &Job) {
    lacking(page, look, job, Step::ProveBefore);
    if matches!(job.standing(), Standing::UnderWay { .. } | Standing::Proved { .. }) {
        if let Some(run) = job.run() {
            page.fact("Indicator", text::instrument(look.world, run.indicator));
            page.fact("Proved", look.by(&run.before));
        }
        next(page, job);
        return;
    }
    if job.at_work() {
        page.caution(Tone::Forbid, "The proof has ended under the work.");
        page.main("Stop work first", go(Route::Step(job.id(), Step::Work)));
        return;
    }
    if job.unexplained().next().is_some() {
        indication::explain(page, look, job);
        return;
    }
    page.para("Prove it on every range and on every lamp or sound that the test will use, right before the test.");
    let indicators = sound(look, job, InstrumentKind::Indicator);
    if indicators.is_empty() {
        page.caution(Tone::Forbid, "No voltage indicator was found fit for use. Check one first.");
        page.main("Check an indicator", go(Route::Step(job.id(), Step::Instruments)));
        return;
    }
    let chosen = look.draft_or("indicator", one(&indicators));
    page.choice("indicator", "Voltage indicator", indicators, chosen);
    proving_choices(page, look, job);
    page.toned("It does not respond as it should", "before fails", Tone::Forbid);
    page.main("It responds as it should", "before works");
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
        act.say = Some("The indicator is proved.".into());
        return act.onward(job, Step::ProveBefore);
    }
    act.alarm = true;
    act.say = Some("Do not use this indicator. Take another, and check and prove that one.".into());
    act.go = Some(Route::Step(job, Step::Instruments));
    Ok(())
}

fn dead_test(page: &mut Page, look: &Look, job: &Job) {
    let plan = job.plan();
    match job.standing() {
        Standing::Indication { readings } => return indication::view(page, look, job, &plan, &readings),
        Standing::UnderWay { missing: 0 } | Standing::Unsigned | Standing::Proved { .. } => {
            results(page, job, &plan);
            seen_since(page, look, &plan);
            next(page, job);
            return;
        }
        Standing::UnderWay { .. } => {}
        Standing::NotBegun | Standing::Void { .. } => {
            lacking(page, look, job, Step::DeadTest);
            // A failed proof of earth or of an indicator is answered for like a voltage.
            if job.unexplained().next().is_some() {
                indication::explain(page, look, job);
            } else {
                next(page, job);
            }
            return;
        }
    }
    let (Some(run), Some(known)) = (job.run(), &job.known) else { return };
    let missing = job.untested(run, &known.now);
    let Some(group) = missing.first().map(|t| t.group) else { return };
    let tests: Vec<&Test> = missing.iter().filter(|t| t.group == group).collect();
    let groups = plan.last().map_or(0, |t| t.group);
    let held = &tests[0].first;
    super::company::wear(page, job, Step::DeadTest);
    let conductors = job.conductors();
    let seen =
        |name: &str| conductors.iter().find(|c| c.name == name).map_or_else(|| name.to_owned(), Conductor::with_colour);
    let (drawing, label) = text::terminals(&conductors, &tests);
    page.drawing(label, drawing);
    let row = |t: &&Test| {
        // Where only direct voltage is left to read, the pair was read in the other range.
        let dc = job.lacks_direct(run, t, &known.now);
        let (field, range) = if dc { (direct_field(run.id(), t), " DC") } else { (field_of(run.id(), t), "") };
        PadRow {
            chosen: look.draft(&field),
            label: format!("{} – {}{range}", t.first, t.then),
            hint: format!("Other probe on {}. Expected: {}.", seen(&t.then), text::if_dead(t.expect)),
            field,
        }
    };
    let rows = tests.iter().map(row).collect();
    page.pad(Pad {
        label: format!("Set {group} of {groups}: first probe stays on {}. Lift the second one first.", seen(held)),
        rows,
        options: vec![
            answer("none", "Nothing", Tone::Plain),
            answer("continuity", "Continuity", Tone::Plain),
            answer("lit", "Lit", Tone::Forbid),
        ],
        volts: true,
    });
    page.main("Save these readings", format!("readings {group}"));
    prove_between(page, look, job);
    let shown: Vec<&Test> = plan.iter().filter(|t| run.of(t).next().is_some()).collect();
    if !shown.is_empty() {
        results(page, job, &plan);
    }
    seen_since(page, look, &plan);
}

/// A voltage on any pair is taken in whenever it is seen.
fn seen_since(page: &mut Page, look: &Look, plan: &[Test]) {
    let pairs = plan.iter().map(|t| (format!("{}:{}", t.first, t.then), format!("{} – {}", t.first, t.then)));
    page.choice("seen", "An indication seen since", pairs.collect(), look.draft("seen"));
    page.toned("This pair gave an indication", "seen", Tone::Forbid);
}

fn results(page: &mut Page, job: &Job, plan: &[Test]) {
    let Some(run) = job.run() else { return };
    let rows = plan
        .iter()
        .map(|t| {
            let read: Vec<String> = run.of(t).map(|r| text::reading(r.reading)).collect();
            let read = if read.is_empty() { "not tested".into() } else { read.join(", then ") };
            vec![format!("{} – {}", t.first, t.then), read]
        })
        .collect();
    page.table("Readings of this test", &["Pair", "Reading"], rows);
}

/// A long test is proved in between: what was read before then counts, and the test goes on.
fn prove_between(page: &mut Page, look: &Look, job: &Job) {
    const SOON_MS: i64 = 30 * 60_000;
    let Some(left) = job.test_left().filter(|left| *left < SOON_MS) else { return };
    let text = match left.max(0) / 60_000 {
        0 => "The indicator was proved too long ago. Prove it now, then read the pairs since then again.".to_owned(),
        minutes => format!("Prove the indicator again within {minutes} min; the test then goes on."),
    };
    page.caution(Tone::Must, text);
    proving_choices(page, look, job);
    page.toned("It does not respond as it should", "after fails", Tone::Forbid);
    page.button("It responds as it should", "after works");
}

/// The run is part of the name: what was typed under one run must never be offered as a reading of the next.
fn field_of(run: EntryId, test: &Test) -> String {
    format!("reading-{}-{}-{}", run.short(), test.first, test.then)
}

/// The same for the range for direct voltage.
fn direct_field(run: EntryId, test: &Test) -> String {
    format!("{}-dc", field_of(run, test))
}

fn parse_reading(text: &str) -> Result<Reading, ReadingError> {
    match text {
        "none" => Ok(Reading::None),
        "continuity" => Ok(Reading::Continuity),
        "lit" => Ok(Reading::Lit(None)),
        volts => parse_volts(volts).map(Reading::Millivolts),
    }
}

fn readings(act: &mut Act, job: EntryId, group: &str) -> Result<(), NotDone> {
    let now = act.job(job)?;
    let run = now.run().ok_or(AskProve::IndicatorFirst)?;
    let plan = now.plan();
    let mut given = Vec::new();
    for test in plan.iter().filter(|t| group == "all" || t.group.to_string() == group) {
        for (field, dc) in [(field_of(run.id(), test), false), (direct_field(run.id(), test), true)] {
            let text = act.given(&field);
            if !text.is_empty() {
                let (first, then) = (test.first.clone(), test.then.clone());
                let reading =
                    parse_reading(&text).map_err(|why| AskFirst::VoltsOf { first, then, why: Box::new(why) })?;
                given.push((test, reading, dc));
            }
        }
    }
    if given.is_empty() {
        return Err(AskProve::Reading.into());
    }
    let lit = given.iter().any(|(_, reading, dc)| now.shows_voltage(*reading, *dc));
    for (test, reading, dc) in given {
        let (first, then) = (test.first.clone(), test.then.clone());
        act.keep(Some(job), Fact::ReadingTaken { run: run.id(), first, then, reading, dc })?;
    }
    if lit {
        (act.alarm, act.say) = (true, Some("An indication. Stop, and treat as live.".into()));
    }
    act.onward(job, Step::DeadTest)
}

fn level(act: &mut Act, job: EntryId, pair: &str) -> Result<(), NotDone> {
    let (first, then) = pair.split_once(':').ok_or(UNKNOWN)?;
    let level = act.need("level", AskProve::Level)?;
    let reading = Reading::Lit(Some(level.parse().map_err(|_| UNKNOWN)?));
    let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
    act.keep(Some(job), Fact::ReadingTaken { run, first: first.into(), then: then.into(), reading, dc: false })?;
    Ok(())
}

fn prove_after(page: &mut Page, look: &Look, job: &Job) {
    if let Standing::Proved { since } = job.standing() {
        page.fact("Proved again", look.by(&since));
        results(page, job, &job.plan());
        next(page, job);
        return;
    }
    lacking(page, look, job, Step::ProveAfter);
    if job.standing() == Standing::Unsigned {
        let text = "Tested under supervision. Who signs has watched it, and answers for it.";
        page.caution(Tone::Must, text);
        match look.acting.filter(|p| job.people().contains(p) && !job.learns(Some(*p))) {
            Some(person) => {
                let name = look.name(person);
                page.mark("mark", format!("{name} signs for this test"), look.draft("mark"));
                page.main(format!("Sign this test as {name}"), "sign-run");
            }
            None => _ = page.main("Hand the device on", go(Route::People)),
        }
        results(page, job, &job.plan());
        return;
    }
    if !matches!(job.standing(), Standing::UnderWay { missing: 0 }) {
        next(page, job);
        return;
    }
    let Some(run) = job.run() else { return };
    page.fact("Indicator", text::instrument(look.world, run.indicator));
    page.para("The same indicator, right after the last pair. If it does not respond now, nobody knows since when: every test is void.");
    proving_choices(page, look, job);
    page.toned("It does not respond as it should", "after fails", Tone::Forbid);
    page.main("It responds as it should", "after works");
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
        act.say = Some("The indicator is proved. The test goes on.".into());
        return act.onward(job, Step::DeadTest);
    }
    if works {
        return act.onward(job, Step::ProveAfter);
    }
    act.alarm = true;
    act.say =
        Some("Every test since the first proof is void. Treat as live. Take another indicator and begin again.".into());
    act.go = Some(Route::Step(job, Step::DeadTest));
    Ok(())
}
