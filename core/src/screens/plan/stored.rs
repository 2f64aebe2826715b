//! Stored energy: drives, capacitors and whatever keeps a charge after the supply is cut.

use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::UNKNOWN;
use super::super::job::next;
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::fact::Found;
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskPlan};

/// A week: no label asks for more.
const LONGEST_MINUTES: u32 = 7 * 24 * 60;

/// The answers so far, and one more.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(
        Tone::Warn,
        "Drives, power-factor and smoothing capacitors stay charged after the supply is cut. The label on the equipment says how long to \
         wait; afterwards only a reading of direct voltage counts.",
    );
    for stored in &job.stored {
        let by = look.by(&stored.stamp);
        match &stored.found {
            Some(found) => {
                let text = format!("At {}, wait {} ({by})", found.at, text::waiting(stored.seconds));
                page.fact(found.what.clone(), text)
            }
            None => page.fact("None found", format!("Looked: {} ({by})", stored.looked)),
        };
    }
    page.entry("looked", "Where you looked", "Drives, capacitor banks, labels, persons asked", look.draft("looked"));
    if !job.stored_answered() {
        page.main("No stored energy found", "none");
    } else {
        page.button("No stored energy found", "none");
        next(page, job);
    }
    page.entry("what", "Or what you found", "Such as: drive of pump 3", look.draft("what"));
    page.entry("at", "Where its terminals are", "Where the direct voltage is read", look.draft("at"));
    let hint = "From the label on the equipment, never from memory";
    page.field("minutes", "Waiting time on its label, in minutes", hint, look.draft("minutes"), EntryKind::Number, 6);
    page.button("Stored energy found", "found");
}

/// Keeps an answer.
pub fn act(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "none" => {
            if !act.given("what").is_empty() || !act.given("at").is_empty() {
                return Err(AskPlan::StoredFoundOrNone.into());
            }
            if act.job(job)?.stored.iter().any(|s| s.found.is_some()) {
                return Err(AskPlan::StoredStands.into());
            }
            let looked = act.need("looked", AskPlan::Looked)?;
            Fact::StoredAnswered { found: None, seconds: 0, looked }
        }
        "found" => {
            let what = act.need("what", AskPlan::StoredWhat)?;
            let at = act.need("at", AskPlan::StoredAt)?;
            let ask = AskPlan::StoredMinutes;
            let minutes: u32 = act.need("minutes", ask)?.parse().map_err(|_| ask)?;
            if minutes == 0 || minutes > LONGEST_MINUTES {
                return Err(ask.into());
            }
            Fact::StoredAnswered { found: Some(Found { what, at }), seconds: minutes * 60, looked: String::new() }
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}
