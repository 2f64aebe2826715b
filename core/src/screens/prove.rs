//! The steps of proving dead: open up, prove the indicator, test every pair, prove the indicator again.

mod behind;
mod reference;

use super::Route;
use super::build::Page;
use super::cx::{Act, Look};
use super::home::{UNKNOWN, go};
use super::job::{lacking, next};
use super::parts::{Opt, Pad, PadRow, Tone};
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{InstrumentKind, ProvedOn};
use crate::journal::{EntryId, Fact};
use crate::prove::{self, Reading, Standing, Test, parse_volts};

/// What a step of proving shows.
pub fn view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(step.title(job));
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
pub fn act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), String> {
    match (verb, arg) {
        ("cover", _) => {
            let what = act.need("what", "Say which cover comes off.")?;
            act.keep(Some(job), Fact::CoverOff { what })?;
            Ok(())
        }
        ("no-covers", _) => {
            let why = act.need("why", "Say why no cover has to come off.")?;
            act.keep(Some(job), Fact::NoCovers { why })?;
            act.onward(job, step)
        }
        ("before", works) => begin(act, job, works == "works"),
        ("reference" | "direct", _) => reference::act(act, job, verb, arg),
        ("after", works) => end(act, job, works == "works"),
        ("readings", group) => readings(act, job, group),
        ("seen", _) => {
            let pair = act.need("seen", "Choose the pair that gave an indication.")?;
            let (first, then) = pair.split_once(':').ok_or(UNKNOWN)?;
            let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
            let (first, then) = (first.to_owned(), then.to_owned());
            act.keep(Some(job), Fact::ReadingTaken { run, first, then, reading: Reading::Lit(None) })?;
            (act.alarm, act.say) = (true, Some("An indication. Stop, and treat as live.".into()));
            Ok(())
        }
        ("cause", _) => {
            let cause = act.need("cause", "Write what the cause was, and what was done about it.")?;
            act.keep(Some(job), Fact::CauseNoted { cause })?;
            act.go = Some(Route::Step(job, Step::ProveBefore));
            Ok(())
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
    page.entry(
        "what",
        "Cover that comes off",
        "One at a time. Each has to come back before energising.",
        look.draft("what"),
    );
    let begun = !job.covers.is_empty() || job.no_covers.is_some();
    if begun {
        page.button("This cover is off", "cover");
    } else {
        page.main("This cover is off", "cover");
        page.entry(
            "why",
            "Or: why no cover has to come off",
            "Test points can be reached from outside.",
            look.draft("why"),
        );
        page.button("No cover comes off", "no-covers");
    }
    if begun {
        next(page, look, job);
    }
}

fn sound(look: &Look, job: &Job, kind: InstrumentKind) -> Vec<(String, String)> {
    let fit = job.instruments.iter().filter(|c| c.faults.is_empty());
    fit.filter(|c| look.world.instruments.get(&c.instrument).is_some_and(|i| i.kind == kind))
        .map(|c| (c.instrument.to_string(), look.world.instrument(c.instrument)))
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
}

fn prove_before(page: &mut Page, look: &Look, job: &Job) {
    lacking(page, look, job, Step::ProveBefore);
    if matches!(job.standing(), Standing::UnderWay { .. } | Standing::Proved { .. }) {
        if let Some(run) = job.run() {
            page.fact("Indicator", look.world.instrument(run.indicator));
            page.fact("Proved", look.by(&run.before));
        }
        next(page, look, job);
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

fn proved_on(act: &Act) -> Result<ProvedOn, String> {
    let on = act.need("on", "Choose what the indicator was proved on.")?;
    if on == "source" {
        return Ok(ProvedOn::KnownSource);
    }
    Ok(ProvedOn::ProvingUnit(on.parse().map_err(|_| UNKNOWN.to_owned())?))
}

fn begin(act: &mut Act, job: EntryId, works: bool) -> Result<(), String> {
    let indicator = act.need_id("indicator", "Choose the voltage indicator.")?;
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
        Standing::Indication { readings } => return indication(page, look, job, &plan, &readings),
        Standing::UnderWay { missing: 0 } | Standing::Proved { .. } => {
            results(page, job, &plan);
            let pairs = plan.iter().map(|t| (format!("{}:{}", t.first, t.then), format!("{} – {}", t.first, t.then)));
            page.choice("seen", "An indication seen since", pairs.collect(), look.draft("seen"));
            page.toned("This pair gave an indication", "seen", Tone::Forbid);
            next(page, look, job);
            return;
        }
        Standing::UnderWay { .. } => {}
        Standing::NotBegun | Standing::Void { .. } => {
            lacking(page, look, job, Step::DeadTest);
            next(page, look, job);
            return;
        }
    }
    let Some(run) = job.run() else { return };
    let missing = run.missing(&plan);
    let Some(group) = missing.first().map(|t| t.group) else { return };
    let tests: Vec<&Test> = missing.into_iter().filter(|t| t.group == group).collect();
    let groups = plan.last().map_or(0, |t| t.group);
    let held = &tests[0].first;
    let (drawing, label) = prove::terminals(&job.conductors(), &tests);
    page.drawing(label, drawing);
    let rows = tests.iter().map(|t| {
        let field = field_of(run.id(), t);
        PadRow {
            chosen: look.draft(&field),
            label: format!("{} – {}", t.first, t.then),
            hint: format!("Other probe on {}. Expected: {}.", t.then, t.expect),
            field,
        }
    });
    let rows = rows.collect();
    let option = |value: &str, label: &str, tone| Opt { value: value.into(), label: label.into(), tone };
    page.pad(Pad {
        label: format!("Group {group} of {groups}: hold {held}, move the other probe, take it off first each time"),
        rows,
        options: vec![
            option("none", "None", Tone::Plain),
            option("continuity", "Continuity", Tone::Plain),
            option("lit", "Lit", Tone::Forbid),
        ],
        volts: true,
    });
    page.main("Keep these readings", format!("readings {group}"));
    let shown: Vec<&Test> = plan.iter().filter(|t| run.of(t).next().is_some()).collect();
    if !shown.is_empty() {
        results(page, job, &plan);
    }
}

fn results(page: &mut Page, job: &Job, plan: &[Test]) {
    let Some(run) = job.run() else { return };
    let rows = plan
        .iter()
        .map(|t| {
            let read: Vec<String> = run.of(t).map(|r| r.reading.word()).collect();
            let read = if read.is_empty() { "not tested".into() } else { read.join(", then ") };
            vec![format!("{} – {}", t.first, t.then), read]
        })
        .collect();
    page.table("Readings of this test", &["Pair", "Reading"], rows);
}

fn indication(page: &mut Page, look: &Look, job: &Job, plan: &[Test], lit: &[prove::Taken]) {
    let off = lit.last().map(|t| format!("Take the probe off {} first, then off {}", t.then, t.first));
    let off = off.unwrap_or_else(|| "Take the probes off".into());
    page.caution(Tone::Forbid, format!("Treat as live. {off}, and put the cover between you and it."));
    // The rest stands in the table of readings below: what to do must not be pushed off the screen.
    for taken in lit.iter().take(3) {
        page.fact(
            format!("{} – {}", taken.first, taken.then),
            format!("{}, expected no indication ({})", taken.reading.word(), look.by(&taken.stamp)),
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
    let unread: Vec<&prove::Taken> = lit.iter().filter(|t| t.reading == Reading::Lit(None)).collect();
    if let Some(taken) = unread.first() {
        let levels = [12, 24, 50, 120, 230, 400, 690].map(|v| (v.to_string(), format!("{v} V"))).to_vec();
        page.choice(
            "level",
            &format!("If you saw it: {} – {} was lit to", taken.first, taken.then),
            levels,
            look.draft("level"),
        );
        page.button("Keep the level", format!("level {}:{}", taken.first, taken.then));
    }
    if let Some(run) = job.run() {
        behind::more(page, look, run, plan);
    }
    results(page, job, plan);
    if job.cause_known() {
        page.main("Prove the indicator again", go(Route::Step(job.id(), Step::ProveBefore)));
    } else {
        page.entry(
            "cause",
            "What the cause was, and what was done about it",
            "It stays with the record.",
            look.draft("cause"),
        );
        page.main("Keep the cause, then prove again", "cause");
    }
}

/// The run is part of the name: what was typed under one run must never be offered as a reading of the next.
fn field_of(run: EntryId, test: &Test) -> String {
    format!("reading-{}-{}-{}", run.short(), test.first, test.then)
}

fn parse_reading(text: &str) -> Result<Reading, String> {
    match text {
        "none" => Ok(Reading::None),
        "continuity" => Ok(Reading::Continuity),
        "lit" => Ok(Reading::Lit(None)),
        volts => parse_volts(volts).map(Reading::Millivolts).map_err(|e| e.to_string()),
    }
}

fn readings(act: &mut Act, job: EntryId, group: &str) -> Result<(), String> {
    let now = act.job(job)?;
    let run = now.run().ok_or("Prove the indicator first.")?;
    let plan = now.plan();
    let mut given = Vec::new();
    for test in plan.iter().filter(|t| group == "all" || t.group.to_string() == group) {
        let text = act.given(&field_of(run.id(), test));
        if !text.is_empty() {
            given.push((test, parse_reading(&text).map_err(|e| format!("{} – {}: {e}", test.first, test.then))?));
        }
    }
    if given.is_empty() {
        return Err("No reading is entered yet. Enter what the indicator showed for each pair.".into());
    }
    let lit = given.iter().any(|(_, r)| r.indicates(now.dead_limit));
    for (test, reading) in given {
        let (first, then) = (test.first.clone(), test.then.clone());
        act.keep(Some(job), Fact::ReadingTaken { run: run.id(), first, then, reading })?;
    }
    if lit {
        (act.alarm, act.say) = (true, Some("An indication. Stop, and treat as live.".into()));
    }
    act.onward(job, Step::DeadTest)
}

fn level(act: &mut Act, job: EntryId, pair: &str) -> Result<(), String> {
    let (first, then) = pair.split_once(':').ok_or(UNKNOWN)?;
    let level = act.need("level", "Choose the level that was lit.")?;
    let reading = Reading::Lit(Some(level.parse().map_err(|_| UNKNOWN.to_owned())?));
    let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
    act.keep(Some(job), Fact::ReadingTaken { run, first: first.into(), then: then.into(), reading })?;
    Ok(())
}

fn prove_after(page: &mut Page, look: &Look, job: &Job) {
    if let Standing::Proved { since } = job.standing() {
        page.fact("Proved again", look.by(&since));
        results(page, job, &job.plan());
        next(page, look, job);
        return;
    }
    lacking(page, look, job, Step::ProveAfter);
    if !matches!(job.standing(), Standing::UnderWay { missing: 0 }) {
        next(page, look, job);
        return;
    }
    let Some(run) = job.run() else { return };
    page.fact("Indicator", look.world.instrument(run.indicator));
    page.para("The same indicator, right after the last pair. If it does not respond now, nobody knows since when: every test is void.");
    proving_choices(page, look, job);
    page.toned("It does not respond as it should", "after fails", Tone::Forbid);
    page.main("It responds as it should", "after works");
}

fn end(act: &mut Act, job: EntryId, works: bool) -> Result<(), String> {
    let on = proved_on(act)?;
    let now = act.job(job)?;
    let run = now.run().ok_or("Prove the indicator first.")?;
    act.keep(Some(job), Fact::IndicatorProved { run: Some(run.id()), indicator: run.indicator, on, works })?;
    if works {
        return act.onward(job, Step::ProveAfter);
    }
    act.say =
        Some("Every test since the first proof is void. Treat as live. Take another indicator and begin again.".into());
    act.go = Some(Route::Step(job, Step::ProveBefore));
    Ok(())
}
