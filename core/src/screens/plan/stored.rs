//! Stored energy: drives, capacitors and whatever keeps a charge after the supply is cut.

use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, options, read_word, word_of};
use super::super::job::next;
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::waits::least;
use crate::journal::fact::{Found, StoredKind};
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskPlan};

/// A week: no label asks for more.
const LONGEST_MINUTES: u32 = 7 * 24 * 60;

/// The answers so far, and one more.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(
        Tone::Warn,
        "Drives, power-factor and smoothing capacitors stay charged after the supply is cut. The label on the equipment says how long to \
         wait; without one, wait as the list says. Afterwards only a reading of direct voltage counts.",
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
    let kind = look.draft_or("kind", &word_of(&StoredKind::NotKnown));
    page.choice("kind", "What it is, and the wait without a label", options(&StoredKind::ALL, text::stored_kind), kind);
    let hint = "From the label on the equipment, never from memory; empty if there is none";
    page.field("minutes", "Waiting time on its label, in minutes", hint, look.draft("minutes"), EntryKind::Number, 6);
    page.field("longer", "Or a longer wait, in minutes", "May stay empty", look.draft("longer"), EntryKind::Number, 6);
    page.button("Stored energy found", "found");
}

/// That none was found, where somebody looked. What was found stands until it is withdrawn.
pub(super) fn none(act: &mut Act, job: EntryId, looked: String) -> Result<Fact, NotDone> {
    if act.job(job)?.stored.iter().any(|s| s.found.is_some()) {
        return Err(AskPlan::StoredStands.into());
    }
    Ok(Fact::StoredAnswered { found: None, seconds: 0, looked, kind: None, label: None })
}

/// Keeps an answer.
pub fn act(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "none" => {
            if !act.given("what").is_empty() || !act.given("at").is_empty() {
                return Err(AskPlan::StoredFoundOrNone.into());
            }
            let looked = act.need("looked", AskPlan::Looked)?;
            none(act, job, looked)?
        }
        "found" => {
            let what = act.need("what", AskPlan::StoredWhat)?;
            let at = act.need("at", AskPlan::StoredAt)?;
            // Nothing picked is not known, which is the longest wait.
            let kind = read_word(&act.given("kind")).unwrap_or(StoredKind::NotKnown);
            let label = minutes(act, "minutes")?;
            let least = least(Some(kind), label);
            // One that is typed as longer and is not is refused by the gate: no wait gets shorter unseen.
            let seconds = minutes(act, "longer")?.unwrap_or(least);
            let (found, looked, kind) = (Some(Found { what, at }), String::new(), Some(kind));
            Fact::StoredAnswered { found, seconds, looked, kind, label }
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}

/// Whole minutes that may stay empty, in seconds.
fn minutes(act: &Act, field: &str) -> Result<Option<u32>, NotDone> {
    let typed = act.given(field);
    if typed.is_empty() {
        return Ok(None);
    }
    let minutes = typed.parse().ok().filter(|minutes| (1..=LONGEST_MINUTES).contains(minutes));
    Ok(Some(minutes.ok_or(AskPlan::StoredMinutes)? * 60))
}
