//! The indicator and what proves it: which, and in what condition they were found before use.

use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, id, options, picked, spare};
use super::super::job::next;
use super::super::parts::{EntryKind, Tone};
use super::passed;
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{InstrumentKind, LightsFrom};
use crate::journal::{EntryId, Fact, Stamp};
use crate::names::alike;
use crate::text::{self, AskFirst, AskPlan, InstrumentPart};

/// The checks so far, one more check, and a new instrument.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    for check in &job.instruments {
        let (name, by) = (text::instrument(look.world, check.instrument), look.by(&check.stamp));
        let note = if check.note.is_empty() { String::new() } else { format!(" {}", check.note) };
        if check.faults.is_empty() {
            page.fact(name, format!("Leads, tips and case sound, in date.{note} ({by})"));
        } else {
            let faults: Vec<String> = check.faults.iter().map(|fault| text::fault(*fault)).collect();
            page.caution(Tone::Forbid, format!("{name}: {}.{note} Do not use it. ({by})", faults.join(", ")));
        }
    }
    let known = &look.world.instruments;
    let unchecked: Vec<&EntryId> =
        known.keys().filter(|id| !job.instruments.iter().any(|c| c.instrument == **id)).collect();
    let shift = if passed(job, Step::Instruments) { Vec::new() } else { of_this_shift(look, job) };
    for (instrument, stamp) in &shift {
        page.fact(
            text::screens::again::this_shift(),
            text::screens::again::checked_this_shift(text::instrument(look.world, *instrument), look.when(stamp)),
        );
    }
    if !shift.is_empty() {
        let ids: Vec<String> = shift.iter().map(|(id, _)| id.to_string()).collect();
        page.main(text::screens::again::looked_over_again(), format!("shift {}", ids.join(" ")));
    }
    if !known.is_empty() {
        page.heading("Look it over before use");
        let all = known.iter().map(|(id, i)| {
            let fit = job.instruments.iter().rfind(|c| c.instrument == *id).map(|c| c.faults.is_empty());
            let checked = match fit {
                None => "",
                Some(true) => " (checked)",
                Some(false) => " (not fit)",
            };
            (id.to_string(), format!("{}: {}{checked}", kind_word(i.kind), text::instrument(look.world, *id)))
        });
        // The one that is left is the one in the hand.
        let left = if let [only] = unchecked[..] { only.to_string() } else { String::new() };
        page.choice("instrument", "Instrument", all.collect(), look.draft_or("instrument", &left));
        let sound = [("leads", "Leads are sound"), ("tips", "Tips are sound"), ("case", "Case is sound")];
        let mut sound: Vec<_> = sound.map(|(value, label)| (value.to_owned(), label.to_owned())).into();
        sound.push(("date".into(), "Its check is in date".into()));
        page.several("sound", "Mark what you looked at and found sound", sound, look.draft("sound"));
        page.para(
            "Tips: at most 4 mm of bare metal, better 2 mm or less, and finger barriers (GS38, guidance). \
             Your local rules come first.",
        );
        page.entry("note", "What is not sound, or anything else about it", "Empty if all is sound", look.draft("note"));
    }
    let done = passed(job, Step::Instruments);
    // With the indicator checked and nothing left to look over, what is missing has to be added first.
    let check_leads = !done && !unchecked.is_empty();
    if check_leads && shift.is_empty() {
        page.main("Save this check", "check");
    } else if !known.is_empty() {
        page.button("Save this check", "check");
    }

    page.heading("An instrument that is not listed");
    page.choice("kind", "What it is for", options(&KINDS, kind_word), look.draft("kind"));
    page.entry("name", "Maker and type", "As printed on it", look.draft("name"));
    page.field("serial", "Serial number", "As printed on it", look.draft("serial"), EntryKind::Text, 60);
    page.para("For an indicator: the lowest voltage at which it lights or shows a figure, as its maker says.");
    let steps = LIGHTS_FROM.map(|mv| (mv.to_string(), format!("{} V", mv / 1000))).to_vec();
    page.choice("lights-ac", "Its lowest indication, AC", steps.clone(), look.draft("lights-ac"));
    let mut direct = steps;
    direct.push(("none".into(), "It shows no direct voltage".into()));
    page.choice("lights-dc", "Its lowest indication, DC", direct, look.draft("lights-dc"));
    if done || check_leads || !shift.is_empty() {
        page.button("Add this instrument", "add");
    } else {
        page.main("Add this instrument", "add");
    }
    if done {
        next(page, job);
    }
}

/// How long a check of an instrument is of this shift, in milliseconds: a long one (common practice, no source).
const SHIFT_MS: i64 = 12 * 3_600_000;

/// Instruments that the person in hand has found sound in another job within this shift, and when; not looked over for this one yet. What is
/// broken since is found when they are looked over again.
fn of_this_shift(look: &Look, job: &Job) -> Vec<(EntryId, Stamp)> {
    let mut found: Vec<(EntryId, Stamp)> = Vec::new();
    for id in look.world.instruments.keys() {
        let checks = look.site.before.iter().flat_map(|before| &before.checks).filter(|c| c.instrument == *id);
        let Some(last) = checks.max_by_key(|c| c.stamp.clock) else { continue };
        let age = look.now - last.stamp.clock.0;
        let own = last.stamp.by == look.acting && last.faults.is_empty() && (0..SHIFT_MS).contains(&age);
        let failed =
            job.known.iter().flat_map(|k| &k.failures).any(|(of, when)| of == id && when.clock >= last.stamp.clock);
        if own && !failed && !job.checks.iter().any(|c| c.instrument == *id) {
            found.push((*id, last.stamp));
        }
    }
    found
}

/// The lowest indications that are offered, in millivolts: those of IEC 61243-3 and what two-pole indicators commonly have (common practice, no
/// source).
const LIGHTS_FROM: [u32; 6] = [1_000, 6_000, 12_000, 24_000, 50_000, 120_000];

fn lights_from(act: &Act) -> Result<LightsFrom, NotDone> {
    let ask = AskPlan::LightsFromAc;
    let ac = act.need("lights-ac", ask)?.parse().map_err(|_| ask)?;
    let ask = AskPlan::LightsFromDc;
    let dc = match act.need("lights-dc", ask)?.as_str() {
        "none" => None,
        mv => Some(mv.parse().map_err(|_| ask)?),
    };
    Ok(LightsFrom { ac, dc })
}

const KINDS: [InstrumentKind; 3] =
    [InstrumentKind::Indicator, InstrumentKind::ProvingUnit, InstrumentKind::RotationIndicator];

fn kind_word(kind: InstrumentKind) -> &'static str {
    match kind {
        InstrumentKind::Indicator => "Two-pole voltage indicator",
        InstrumentKind::ProvingUnit => "Proving unit",
        InstrumentKind::RotationIndicator => "Phase rotation indicator",
    }
}

/// Adds an instrument, or keeps a check of one.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "shift" => {
            for instrument in arg.split(' ') {
                let fact = Fact::InstrumentChecked {
                    instrument: id(instrument)?,
                    leads_sound: true,
                    tips_sound: true,
                    body_sound: true,
                    in_date: true,
                    note: String::new(),
                    knowing: Vec::new(),
                };
                act.keep(Some(job), fact)?;
            }
            act.onward(job, Step::Instruments)
        }
        "add" => {
            let kind = picked(act, "kind", AskPlan::InstrumentKind)?;
            let name = act.need("name", AskPlan::InstrumentName)?;
            let serial = act.need("serial", AskPlan::InstrumentSerial)?;
            let lights_from = if kind == InstrumentKind::Indicator { Some(lights_from(act)?) } else { None };
            // Two records of one instrument would let a check of the one stand for the other.
            let same =
                |i: &crate::world::Instrument| i.kind == kind && alike(&i.name, &name) && alike(&i.serial, &serial);
            if act.world().instruments.values().any(same) {
                return Err(AskPlan::InstrumentListed.into());
            }
            act.keep(None, Fact::InstrumentNoted { kind, name, serial, lights_from })?;
            act.say = Some("Listed. Now look it over before use.".into());
            Ok(())
        }
        "check" => {
            let instrument = act.need_id("instrument", AskPlan::Instrument)?;
            let (sound, note) = (act.given("sound"), spare(act, "note")?);
            let is = |what: &str| sound.lines().any(|l| l == what);
            let (leads_sound, tips_sound, body_sound, in_date) = (is("leads"), is("tips"), is("case"), is("date"));
            // A tick that was forgotten would be kept as a fault, in the name of whoever has the device.
            let parts = [
                (leads_sound, InstrumentPart::Leads),
                (tips_sound, InstrumentPart::Tips),
                (body_sound, InstrumentPart::Case),
                (in_date, InstrumentPart::Date),
            ];
            let parts: Vec<_> = parts.into_iter().filter(|(sound, _)| !sound).map(|(_, part)| part).collect();
            if !parts.is_empty() && note.is_empty() {
                return Err(AskFirst::NotMarked { parts }.into());
            }
            let fact = Fact::InstrumentChecked {
                instrument,
                leads_sound,
                tips_sound,
                body_sound,
                in_date,
                note,
                knowing: Vec::new(),
            };
            act.keep(Some(job), fact)?;
            if !(leads_sound && tips_sound && body_sound && in_date) {
                let name = text::instrument(act.world(), instrument);
                act.say = Some(format!("Saved. Not everything on {name} is sound: put it aside and do not use it."));
            }
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
