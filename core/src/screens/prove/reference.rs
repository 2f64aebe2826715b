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
use crate::prove::{Reading, parse_volts};
use crate::text::screens::prove as said;
use crate::text::{self, AskFirst, AskProve, volts};

/// The ways to show that PE is earth, as a screen offers them.
fn ways() -> [(EarthProof, String); 3] {
    [
        (EarthProof::LiveLine, said::earth_live_line()),
        (EarthProof::MainTerminal, said::earth_main_terminal()),
        (EarthProof::Bonded, said::earth_bonded()),
    ]
}

/// Proving the reference.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    if let Some(earth) = job.run().and_then(|r| r.reference()) {
        let word = if earth.holds { said::earth_shown() } else { said::earth_shown_not() };
        page.fact(word, said::earth_shown_by(text::earth(earth.way, &earth.how), look.by(&earth.stamp)));
    }
    if job.run().is_some_and(|r| r.reference_holds()) {
        next(page, job);
        return;
    }
    lacking(page, look, job, Step::ProveReference);
    page.caution(Tone::Warn, text::screens::plan::earth_first());
    // Where the supply has no earthed point a live line shows nothing to PE, whole or broken.
    let earthed = job.live_line_shows_earth();
    let ways = ways().into_iter().filter(|(way, _)| earthed || *way != EarthProof::LiveLine);
    let ways = ways.map(|(way, label)| (word_of(&way), label)).collect();
    page.choice("way", &said::earth_how(), ways, look.draft("way"));
    page.entry_again(look, "how", &said::earth_where(), &said::earth_where_hint(), again::earth(look));
    if let (true, Some((least, most))) = (earthed, job.supply().to_earth()) {
        let about = if least == most {
            said::earth_about(volts(most))
        } else {
            said::earth_about_or(volts(least), volts(most))
        };
        page.fact(said::earth_live_shows(), about);
    }
    page.toned(said::earth_proved_not(), "reference fails", Tone::Forbid);
    page.main(said::earth_proved(), "reference holds");
}

/// Reading direct voltage.
pub fn discharge(page: &mut Page, look: &Look, job: &Job) {
    lacking(page, look, job, Step::Discharge);
    let direct = job.direct();
    if direct.is_empty() {
        page.para(said::discharge_none());
    }
    let run = job.run();
    let mut asked = false;
    for (of, what, seconds) in direct {
        let last = run.and_then(|r| r.discharge.iter().rev().find(|(_, id, _)| *id == of));
        let read = last.map_or_else(said::discharge_unread, |(stamp, _, r)| {
            said::discharge_read(text::reading(*r), look.by(stamp))
        });
        page.fact(said::discharge_wait(&*what, text::waiting(seconds)), read);
        let open = last
            .is_none_or(|(stamp, _, r)| job.shows_voltage(*r, true) || job.wait_left(seconds, &Moment::of(stamp)) > 0);
        if open && !asked {
            asked = true;
            page.caution(Tone::Warn, said::discharge_caution());
            let (label, hint) = (said::discharge_volts(&*what), said::discharge_volts_hint());
            page.field("volts", &label, &hint, look.draft("volts"), EntryKind::Number, 8);
            page.main(said::discharge_save(what), format!("direct {of}"));
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
            act.say = Some(said::earth_failed());
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
