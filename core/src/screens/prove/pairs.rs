//! The dead test itself: pair after pair, what was read, and a pair that is read once more.

use super::super::build::{Page, answer};
use super::super::context::{Act, Look};
use super::super::home::UNKNOWN;
use super::super::job::{lacking, next};
use super::super::parts::{Pad, PadRow, Tone};
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, Standing};
use crate::journal::{EntryId, Fact};
use crate::prove::{Conductor, Reading, ReadingError, Test, parse_volts};
use crate::text::screens::prove as said;
use crate::text::{self, AskFirst, AskProve};

pub(super) fn dead_test(page: &mut Page, look: &Look, job: &Job) {
    let plan = job.plan();
    match job.standing() {
        Standing::Indication { readings } => return super::indication::view(page, look, job, &plan, &readings),
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
                super::indication::explain(page, look, job);
            } else {
                next(page, job);
            }
            return;
        }
    }
    let (Some(run), Some(known)) = (job.run(), &job.known) else { return };
    let missing = job.untested(run, &known.now);
    // A slip of the thumb is mended by another reading; the one before stays in the record.
    let again = plan.iter().find(|t| look.draft(REREAD) == pair_of(t));
    let Some(group) = again.or(missing.first()).map(|t| t.group) else { return };
    let tests: Vec<&Test> = match again {
        Some(test) => vec![test],
        None => missing.iter().filter(|t| t.group == group).collect(),
    };
    let groups = plan.last().map_or(0, |t| t.group);
    let held = &tests[0].first;
    super::super::company::wear(page, job, Step::DeadTest);
    let conductors = job.conductors();
    let seen =
        |name: &str| conductors.iter().find(|c| c.name == name).map_or_else(|| name.to_owned(), Conductor::with_colour);
    let (drawing, label) = text::terminals(&conductors, &tests);
    page.drawing(label, drawing);
    let row = |t: &&Test| {
        // Where only direct voltage is left to read, the pair was read in the other range.
        let dc = job.lacks_direct(run, t, &known.now);
        let pair = if dc { said::pair_dc(&t.first, &t.then) } else { said::pair(&t.first, &t.then) };
        let field = if dc { direct_field(run.id(), t) } else { field_of(run.id(), t) };
        PadRow {
            chosen: look.draft(&field),
            label: pair,
            hint: said::pair_hint(seen(&t.then), text::if_dead(t.expect)),
            field,
        }
    };
    let rows = tests.iter().map(row).collect();
    page.pad(Pad {
        label: said::set(group, groups, seen(held)),
        rows,
        options: vec![
            answer("none", said::nothing(), Tone::Plain),
            answer("continuity", said::continuity(), Tone::Plain),
            answer("lit", said::lit(), Tone::Forbid),
        ],
        volts: true,
        done: format!("readings {group}"),
    });
    page.main(said::save_readings(), format!("readings {group}"));
    let last = run.readings.last().map(|read| (&read.first, &read.then));
    if let Some(test) = plan.iter().find(|t| again.is_none() && last == Some((&t.first, &t.then))) {
        let label = said::read_again(said::pair(&test.first, &test.then));
        page.toned(label, format!("reread {}", pair_of(test)), Tone::Quiet);
    }
    super::prove_between(page, look, job);
    let shown: Vec<&Test> = plan.iter().filter(|t| run.of(t).next().is_some()).collect();
    if !shown.is_empty() {
        results(page, job, &plan);
    }
    seen_since(page, look, &plan);
}

/// A voltage on any pair is taken in whenever it is seen.
pub(super) fn seen_since(page: &mut Page, look: &Look, plan: &[Test]) {
    let pairs = plan.iter().map(|t| (format!("{}:{}", t.first, t.then), said::pair(&t.first, &t.then)));
    page.choice("seen", &said::seen_since(), pairs.collect(), look.draft("seen"));
    page.toned(said::gave(), "seen", Tone::Forbid);
}

pub(super) fn results(page: &mut Page, job: &Job, plan: &[Test]) {
    let Some(run) = job.run() else { return };
    let rows = plan
        .iter()
        .map(|t| {
            let read = run.of(t).map(|r| text::reading(r.reading)).reduce(said::then);
            let read = read.unwrap_or_else(said::not_tested);
            vec![said::pair(&t.first, &t.then), read]
        })
        .collect();
    page.table(&said::results(), &[&said::column_pair(), &said::column_reading()], rows);
}

/// The pair that is read once more.
pub(super) const REREAD: &str = "reread";

/// A pair as an action names it.
fn pair_of(test: &Test) -> String {
    format!("{}:{}", test.first, test.then)
}

/// The run is part of the name: what was typed under one run must never be offered as a reading of the next.
pub(super) fn field_of(run: EntryId, test: &Test) -> String {
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

pub(super) fn readings(act: &mut Act, job: EntryId, group: &str) -> Result<(), NotDone> {
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
        (act.alarm, act.say) = (true, Some(said::indication()));
    }
    act.onward(job, Step::DeadTest)
}

pub(super) fn level(act: &mut Act, job: EntryId, pair: &str) -> Result<(), NotDone> {
    let (first, then) = pair.split_once(':').ok_or(UNKNOWN)?;
    let level = act.need("level", AskProve::Level)?;
    let reading = Reading::Lit(Some(level.parse().map_err(|_| UNKNOWN)?));
    let run = act.job(job)?.run().ok_or(UNKNOWN)?.id();
    act.keep(Some(job), Fact::ReadingTaken { run, first: first.into(), then: then.into(), reading, dc: false })?;
    Ok(())
}
