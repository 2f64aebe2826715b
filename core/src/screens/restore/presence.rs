//! The supply is back: read it, read which way it turns, and answer for what does not look as it should.

use std::collections::BTreeSet;

use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, SupplyFinding};
use crate::journal::fact::{Rotation, RotationGuard, SupplyAnswer};
use crate::journal::{EntryId, Fact};
use crate::prove::{Reading, parse_volts};
use crate::screens::build::{Page, answer};
use crate::screens::context::{Act, Look};
use crate::screens::home::{UNKNOWN, id, picked, word_of};
use crate::screens::locks::put;
use crate::screens::parts::{Pad, PadRow, Tone};
use crate::text::screens::restore as said;
use crate::text::{self, AskFirst, AskRestore};

pub(super) fn view(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Warn, said::supply_on());
    if !job.supply_comes_back() {
        page.para(said::nothing_to_read());
    }
    let pairs = job.presence_pairs();
    for (first, then) in &pairs {
        if let Some(reading) = job.presence_of(first, then) {
            page.fact(said::read_pair(first, then), text::reading(reading));
        }
    }
    answers(look, job, page);
    let rows = pairs.iter().map(|(first, then)| PadRow {
        field: pair_field(first, then),
        label: said::pair(first, then),
        hint: said::probes(first, then),
        chosen: look.draft(&pair_field(first, then)),
    });
    page.pad(Pad {
        label: said::present(),
        rows: rows.collect(),
        options: vec![answer("none", said::no_indication(), Tone::Warn), answer("lit", said::lit(), Tone::Plain)],
        volts: true,
        done: String::new(),
    });
    let present = |(a, b): &(String, String)| job.presence_of(a, b).is_some_and(|r| r.indicates(0));
    let all = pairs.iter().all(present);
    if all {
        page.button(said::read_again(), "presence");
    } else {
        put(page, said::save_readings(), "presence");
    }
    if job.turns() {
        rotation(look, job, all, page);
    }
}

/// What was read and does not look as it should: what becomes of it.
fn answers(look: &Look, job: &Job, page: &mut Page) {
    let findings = job.supply_findings();
    let open: Vec<&SupplyFinding> = findings.iter().filter(|f| !job.is_answered(f)).collect();
    for finding in &findings {
        if !job.is_answered(finding) {
            page.caution(if finding.is_missing() { Tone::Forbid } else { Tone::Warn }, text::supply_finding(finding));
        }
        if let Some(answer) = job.supply_answer(finding) {
            let how = said::answered_how(&answer.who, &answer.how, look.by(&answer.stamp));
            page.fact(said::answered(text::supply_finding(finding), text::supply_answer(answer.answer)), how);
        }
    }
    if open.is_empty() {
        return;
    }
    page.heading(said::what_is_done());
    let named = |f: &&SupplyFinding| (joined(f), text::supply_finding(f));
    let only = if open.len() == 1 { joined(open[0]) } else { String::new() };
    page.several("odd", &said::which_readings(), open.iter().map(named).collect(), look.draft_or("odd", &only));
    // Nobody is offered to accept what nobody may.
    let may = |a: &&SupplyAnswer| **a != SupplyAnswer::Accepted || open.iter().any(|f| !f.is_missing());
    let offered = SupplyAnswer::ALL.iter().filter(may);
    let offered = offered.map(|a| (word_of(a), text::supply_answer(*a))).collect();
    page.choice("answer", &said::answer(), offered, look.draft("answer"));
    page.entry("answer-who", &said::answer_who(), &said::answer_who_hint(), look.draft("answer-who"));
    page.entry("answer-how", &said::answer_how(), &said::answer_how_hint(), look.draft("answer-how"));
    put(page, said::save_answer(), "answer");
}

/// The readings of a finding as one word.
fn joined(finding: &SupplyFinding) -> String {
    finding.of.iter().map(EntryId::to_string).collect::<Vec<_>>().join(",")
}

fn rotation(look: &Look, job: &Job, all_present: bool, page: &mut Page) {
    page.heading(said::rotation());
    let before = job.rotation_before();
    match (&job.rotation_found, before) {
        (Some((stamp, _, how)), Some(before)) => {
            page.fact(said::rotation_before(), said::rotation_right(text::rotation(before), how, look.by(stamp)));
        }
        (found, _) => {
            let why = found.as_ref().map(|(_, _, how)| said::rotation_unread_why(how));
            page.caution(Tone::Must, why.unwrap_or_else(said::rotation_unread));
        }
    }
    if let Some((stamp, rotation, how, _)) = &job.rotation {
        let word = text::rotation_choice(*rotation);
        page.fact(said::rotation_read(look.by(stamp)), said::rotation_read_how(word, how));
    }
    let options = Rotation::ALL.map(|(rotation, value)| (value.to_owned(), text::rotation_choice(rotation))).into();
    page.choice("rotation", &said::rotation_way(), options, look.draft("rotation"));
    if before.is_none() {
        let guards = RotationGuard::ALL.map(|g| (word_of(&g), text::rotation_guard(g))).into();
        page.choice("guard", &said::rotation_guard(), guards, look.draft("guard"));
    }
    page.entry("rotation-how", &said::rotation_how(), &said::rotation_how_hint(), look.draft("rotation-how"));
    if all_present {
        put(page, said::save_rotation(), "rotation");
    } else {
        page.button(said::save_rotation(), "rotation");
    }
}

fn pair_field(first: &str, then: &str) -> String {
    format!("presence-{first}-{then}")
}

pub(super) fn act(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    match verb {
        "presence" => keep_presence(act, job),
        "rotation" => keep_rotation(act, job),
        "answer" => keep_answer(act, job),
        _ => Err(UNKNOWN.into()),
    }
}

fn keep_presence(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    // All are read before any is kept: one that cannot be read must not leave half of them kept.
    let mut facts = Vec::new();
    for (first, then) in act.job(job)?.presence_pairs() {
        let reading = match act.given(&pair_field(&first, &then)).as_str() {
            "" => continue,
            "none" => Reading::None,
            "lit" => Reading::Lit(None),
            typed => match parse_volts(typed) {
                Ok(millivolts) => Reading::Millivolts(millivolts),
                Err(why) => return Err(AskFirst::VoltsBack { first, then, why: Box::new(why) }.into()),
            },
        };
        facts.push(Fact::PresenceRead { first, then, reading });
    }
    if facts.is_empty() {
        return Err(AskRestore::Reading.into());
    }
    for fact in facts {
        act.keep(Some(job), fact)?;
    }
    act.onward(job, Step::Presence)
}

fn keep_rotation(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    let ask = AskRestore::Rotation;
    let value = act.need("rotation", ask)?;
    let (rotation, ..) = Rotation::ALL.into_iter().find(|(_, v)| *v == value).ok_or(ask)?;
    let guard = if rotation.is_direction() && act.job(job)?.rotation_before().is_none() {
        Some(picked(act, "guard", AskRestore::RotationGuard)?)
    } else {
        None
    };
    let how = act.need("rotation-how", AskRestore::RotationHow)?;
    act.keep(Some(job), Fact::RotationRead { rotation, how, guard })?;
    act.onward(job, Step::Presence)
}

fn keep_answer(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    let marked = act.need("odd", AskRestore::Odd)?;
    let of = marked.split(['\n', ',']).map(id).collect::<Result<BTreeSet<EntryId>, NotDone>>()?;
    let answer: SupplyAnswer = picked(act, "answer", AskRestore::Answer)?;
    let who = act.need("answer-who", AskRestore::AnswerWho)?;
    let how = act.need("answer-how", AskRestore::AnswerHow)?;
    act.keep(Some(job), Fact::SupplyAnswered { of: of.into_iter().collect(), answer, who, how })?;
    if answer == SupplyAnswer::Mended {
        act.say = Some(said::mended());
    }
    act.onward(job, Step::Presence)
}
