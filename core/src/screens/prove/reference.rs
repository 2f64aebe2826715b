//! What the readings rest on: that the protective conductor is earth, and that no direct voltage is left.

use super::super::again;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, id, read_word, word_of};
use super::super::job::{lacking, next};
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::age::Moment;
use crate::job::steps::Step;
use crate::journal::fact::EarthProof;
use crate::journal::{EntryId, Fact};
use crate::prove::{Reading, parse_volts, volts};
use crate::text::{self, AskFirst, AskProve};

/// The ways to show that PE is earth, as a screen offers them.
const WAYS: [(EarthProof, &str); 3] = [
    (EarthProof::LiveLine, "PE to a line that is known to be live shows the full voltage"),
    (EarthProof::MainTerminal, "Low-resistance continuity from PE to the main earthing terminal"),
    (EarthProof::Bonded, "Low-resistance continuity from PE to metalwork that is bonded elsewhere"),
];

/// Proving the reference.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    if let Some(earth) = job.run().and_then(|r| r.reference()) {
        let word = text::in_terms(if earth.holds { "Shown to be earth" } else { "Not earth" });
        page.fact(word, format!("{} ({})", text::earth(earth.way, &earth.how), look.by(&earth.stamp)));
    }
    if job.run().is_some_and(|r| r.reference_holds()) {
        next(page, job);
        return;
    }
    lacking(page, look, job, Step::ProveReference);
    page.caution(Tone::Warn, text::screens::plan::earth_first());
    // Where the supply has no earthed point a live line shows nothing to PE, whole or broken.
    let earthed = job.live_line_shows_earth();
    let ways = WAYS.iter().filter(|(way, ..)| earthed || *way != EarthProof::LiveLine);
    let ways = ways.map(|(way, label)| (word_of(way), text::in_terms(label))).collect();
    page.choice("way", "How it was shown", ways, look.draft("way"));
    page.entry_again(look, "how", "Where, or another way", "Which live line or which terminal", again::earth(look));
    if let (true, Some((least, most))) = (earthed, job.supply().to_earth()) {
        let least = if least == most { String::new() } else { format!("{} or ", volts(least)) };
        page.fact(text::in_terms("A live line shows to earth"), format!("About {least}{} V", volts(most)));
    }
    page.toned(text::in_terms("Earth not proved"), "reference fails", Tone::Forbid);
    page.main(text::in_terms("Earth proved"), "reference holds");
}

/// Reading direct voltage.
pub fn discharge(page: &mut Page, look: &Look, job: &Job) {
    lacking(page, look, job, Step::Discharge);
    let direct = job.direct();
    if direct.is_empty() {
        page.para("No stored energy and no source of direct voltage is in this job.");
    }
    let run = job.run();
    let mut asked = false;
    for (of, what, seconds) in direct {
        let last = run.and_then(|r| r.discharge.iter().rev().find(|(_, id, _)| *id == of));
        let said = last
            .map_or_else(|| "not read".into(), |(stamp, _, r)| format!("{} ({})", text::reading(*r), look.by(stamp)));
        page.fact(format!("{what}, wait {}", text::waiting(seconds)), said);
        let open = last
            .is_none_or(|(stamp, _, r)| job.shows_voltage(*r, true) || job.wait_left(seconds, &Moment::of(stamp)) > 0);
        if open && !asked {
            asked = true;
            page.caution(
                Tone::Warn,
                "Set the instrument to direct voltage. Time alone proves nothing: wait as long as the label says, then read, plus to minus and \
                 each to PE; enter the greatest.",
            );
            page.field(
                "volts",
                &format!("Direct voltage at {what}, in volts"),
                "The greatest of the three",
                look.draft("volts"),
                EntryKind::Number,
                8,
            );
            page.main(format!("Save the reading at {what}"), format!("direct {of}"));
        }
    }
    if !asked {
        next(page, job);
    }
}

/// Keeps a proof of the reference or a reading of direct voltage.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let run = act.job(job)?.run().ok_or(AskProve::IndicatorFirst)?.id();
    if verb == "direct" {
        let of = id(arg)?;
        let typed = act.need("volts", AskProve::Direct)?;
        // Direct voltage has a sign, and with the probes the other way round it is a minus.
        let reading =
            parse_volts(typed.trim_start_matches(['-', '−'])).map(Reading::Millivolts).map_err(AskFirst::Volts)?;
        act.keep(Some(job), Fact::DischargeRead { run, of, reading })?;
        return act.onward(job, Step::Discharge);
    }
    let ask = AskProve::Reference;
    let how = act.given("how");
    let way = match (act.given("way").as_str(), how.is_empty()) {
        ("", true) => return Err(ask.into()),
        ("", false) => EarthProof::Other,
        (way, _) => read_word(way).ok_or(ask)?,
    };
    match arg {
        "holds" => {
            act.keep(Some(job), Fact::ReferenceProved { run, way, how, holds: true })?;
            act.onward(job, Step::ProveReference)
        }
        "fails" => {
            act.keep(Some(job), Fact::ReferenceProved { run, way, how, holds: false })?;
            act.alarm = true;
            act.say = Some(text::in_terms(
                "The reference is not earth. Treat as live, and find the break before any other test.",
            ));
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
