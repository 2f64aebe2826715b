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
use crate::text::{self, AskFirst, AskRestore};

pub(super) fn view(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Warn,
        "The supply is on. Test as on live equipment, with the protection that your site's rules ask for. No cover comes off for it: \
         read at an outlet or at test points.",
    );
    if !job.supply_comes_back() {
        page.para("No supply goes back on here: nothing has to be read.");
    }
    let pairs = job.presence_pairs();
    for (first, then) in &pairs {
        if let Some(reading) = job.presence_of(first, then) {
            page.fact(format!("Read {first} – {then}"), text::reading(reading));
        }
    }
    answers(look, job, page);
    let rows = pairs.iter().map(|(first, then)| PadRow {
        field: pair_field(first, then),
        label: format!("{first} – {then}"),
        hint: format!("One probe on {first}, the other on {then}."),
        chosen: look.draft(&pair_field(first, then)),
    });
    page.pad(Pad {
        label: "Supply present".into(),
        rows: rows.collect(),
        options: vec![answer("none", "No indication", Tone::Warn), answer("lit", "Lit", Tone::Plain)],
        volts: true,
    });
    let present = |(a, b): &(String, String)| job.presence_of(a, b).is_some_and(|r| r.indicates(0));
    let all = pairs.iter().all(present);
    if all {
        page.button("Read again and keep", "presence");
    } else {
        put(page, "Keep the readings", "presence");
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
            let said = format!("{}. {} ({})", answer.who, answer.how, look.by(&answer.stamp));
            page.fact(format!("{} {}", text::supply_finding(finding), text::supply_answer(answer.answer)), said);
        }
    }
    if open.is_empty() {
        return;
    }
    page.heading("What becomes of it");
    let named = |f: &&SupplyFinding| (joined(f), text::supply_finding(f));
    let only = if open.len() == 1 { joined(open[0]) } else { String::new() };
    page.several("odd", "Which readings", open.iter().map(named).collect(), look.draft_or("odd", &only));
    // Nobody is offered to accept what nobody may.
    let may = |a: &&SupplyAnswer| **a != SupplyAnswer::Accepted || open.iter().any(|f| !f.is_missing());
    let offered = SupplyAnswer::ALL.iter().filter(may);
    let offered = offered.map(|a| (word_of(a), text::supply_answer(*a))).collect();
    page.choice("answer", "Answer", offered, look.draft("answer"));
    let hint = "Name of who accepts it; or what is left off; or what was wrong";
    page.entry("answer-who", "Who accepts it, what is left off, or what was wrong", hint, look.draft("answer-who"));
    let hint = "How they were told and why; how it stays off; or what was mended";
    page.entry("answer-how", "How", hint, look.draft("answer-how"));
    put(page, "Save this answer", "answer");
}

/// The readings of a finding as one word.
fn joined(finding: &SupplyFinding) -> String {
    finding.of.iter().map(EntryId::to_string).collect::<Vec<_>>().join(",")
}

fn rotation(look: &Look, job: &Job, all_present: bool, page: &mut Page) {
    page.heading("Rotation of the lines");
    let before = job.rotation_before();
    match (&job.rotation_found, before) {
        (Some((stamp, _, how)), Some(before)) => {
            page.fact(
                "Before isolating",
                format!("{}: that is right. {how} ({})", text::rotation(before), look.by(stamp)),
            );
        }
        (found, _) => {
            let why = found.as_ref().map_or_else(String::new, |(_, _, how)| format!(" ({how})"));
            page.caution(
                Tone::Must,
                format!("The rotation was not read before{why}. First uncouple what turns, or watch a short bump."),
            );
        }
    }
    if let Some((stamp, rotation, how, _)) = &job.rotation {
        let word = text::rotation_choice(*rotation);
        page.fact(format!("Read {}", look.by(stamp)), format!("{word}. {how}"));
    }
    let options = Rotation::ALL.map(|(rotation, value)| (value.to_owned(), text::rotation_choice(rotation))).into();
    page.choice("rotation", "Which way it turns", options, look.draft("rotation"));
    if before.is_none() {
        let guards = RotationGuard::ALL.map(|g| (word_of(&g), text::rotation_guard(g))).into();
        page.choice("guard", "How motors are kept from harm", guards, look.draft("guard"));
    }
    let hint = "Instrument and where it was read, or why it is not needed.";
    page.entry("rotation-how", "How you know", hint, look.draft("rotation-how"));
    if all_present {
        put(page, "Keep the rotation", "rotation");
    } else {
        page.button("Keep the rotation", "rotation");
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
        act.say = Some("Saved. Now read again: only a new reading shows it.".into());
    }
    act.onward(job, Step::Presence)
}
