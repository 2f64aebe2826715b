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
use crate::text::screens::again as said_again;
use crate::text::screens::plan as said;
use crate::text::{self, AskFirst, AskPlan, InstrumentPart};

/// The checks so far, one more check, and a new instrument.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    for check in &job.instruments {
        let (name, by) = (text::instrument(look.world, check.instrument), look.by(&check.stamp));
        let (note, faults) = (&check.note, text::commas(check.faults.iter().map(|fault| text::fault(*fault))));
        match (check.faults.is_empty(), note.is_empty()) {
            (true, true) => page.fact(name, said::check_sound(by)),
            (true, false) => page.fact(name, said::check_sound_note(note, by)),
            (false, true) => page.caution(Tone::Forbid, said::check_faults(name, faults, by)),
            (false, false) => page.caution(Tone::Forbid, said::check_faults_note(name, faults, note, by)),
        };
    }
    let known = &look.world.instruments;
    let unchecked: Vec<&EntryId> =
        known.keys().filter(|id| !job.instruments.iter().any(|c| c.instrument == **id)).collect();
    let shift = if passed(job, Step::Instruments) { Vec::new() } else { of_this_shift(look, job) };
    for (instrument, stamp) in &shift {
        page.fact(
            said_again::this_shift(),
            said_again::checked_this_shift(text::instrument(look.world, *instrument), look.when(stamp)),
        );
    }
    if !shift.is_empty() {
        let ids: Vec<String> = shift.iter().map(|(id, _)| id.to_string()).collect();
        page.main(said_again::looked_over_again(), format!("shift {}", ids.join(" ")));
    }
    if !known.is_empty() {
        page.heading(said::check_heading());
        let all = known.iter().map(|(id, i)| {
            let fit = job.instruments.iter().rfind(|c| c.instrument == *id).map(|c| c.faults.is_empty());
            let (kind, name) = (said::instrument_kind(i.kind), text::instrument(look.world, *id));
            let label = match fit {
                None => said::instrument_named(kind, name),
                Some(true) => said::instrument_checked(kind, name),
                Some(false) => said::instrument_not_fit(kind, name),
            };
            (id.to_string(), label)
        });
        // The one that is left is the one in the hand.
        let left = if let [only] = unchecked[..] { only.to_string() } else { String::new() };
        page.choice("instrument", &said::instrument(), all.collect(), look.draft_or("instrument", &left));
        let sound = [
            ("leads", said::check_leads()),
            ("tips", said::check_tips()),
            ("case", said::check_case()),
            ("date", said::check_date()),
        ];
        let sound = sound.map(|(value, label)| (value.to_owned(), label)).into();
        page.several("sound", &said::check_mark(), sound, look.draft("sound"));
        page.para(said::check_tips_say());
        page.entry("note", &said::check_note(), &said::check_note_hint(), look.draft("note"));
    }
    let done = passed(job, Step::Instruments);
    // With the indicator checked and nothing left to look over, what is missing has to be added first.
    let check_leads = !done && !unchecked.is_empty();
    if check_leads && shift.is_empty() {
        page.main(said::check_save(), "check");
    } else if !known.is_empty() {
        page.button(said::check_save(), "check");
    }

    page.heading(said::instrument_new());
    page.choice("kind", &said::instrument_for(), options(&KINDS, said::instrument_kind), look.draft("kind"));
    page.entry("name", &said::instrument_name(), &said::instrument_printed(), look.draft("name"));
    let (label, hint) = (said::instrument_serial(), said::instrument_printed());
    page.field("serial", &label, &hint, look.draft("serial"), EntryKind::Text, 60);
    page.para(said::lights_say());
    let steps = LIGHTS_FROM.map(|mv| (mv.to_string(), said::lights_volts(mv / 1000))).to_vec();
    page.choice("lights-ac", &said::lights_ac(), steps.clone(), look.draft("lights-ac"));
    let mut direct = steps;
    direct.push(("none".into(), said::lights_dc_none()));
    page.choice("lights-dc", &said::lights_dc(), direct, look.draft("lights-dc"));
    if done || check_leads || !shift.is_empty() {
        page.button(said::instrument_add(), "add");
    } else {
        page.main(said::instrument_add(), "add");
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
            act.say = Some(said::instrument_added());
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
                act.say = Some(said::check_not_sound(name));
            }
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
