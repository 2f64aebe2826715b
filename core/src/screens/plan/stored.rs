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
use crate::text::screens::plan as said;
use crate::text::{self, AskPlan};

/// A week: no label asks for more.
const LONGEST_MINUTES: u32 = 7 * 24 * 60;

/// The answers so far, and one more.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(Tone::Warn, said::stored_says());
    for stored in &job.stored {
        let by = look.by(&stored.stamp);
        match &stored.found {
            Some(found) => {
                page.fact(found.what.clone(), said::stored_wait(&found.at, text::waiting(stored.seconds), by))
            }
            None => page.fact(said::stored_none(), said::looked(&stored.looked, by)),
        };
    }
    page.entry("looked", &said::where_looked(), &said::stored_looked_hint(), look.draft("looked"));
    if !job.stored_answered() {
        page.main(said::stored_save_none(), "none");
    } else {
        page.button(said::stored_save_none(), "none");
        next(page, job);
    }
    page.entry("what", &said::stored_what(), &said::stored_what_hint(), look.draft("what"));
    page.entry("at", &said::stored_at(), &said::stored_at_hint(), look.draft("at"));
    let kind = look.draft_or("kind", &word_of(&StoredKind::NotKnown));
    page.choice("kind", &said::stored_kind(), options(&StoredKind::ALL, text::stored_kind), kind);
    let (label, hint) = (said::stored_minutes(), said::stored_minutes_hint());
    page.field("minutes", &label, &hint, look.draft("minutes"), EntryKind::Number, 6);
    let (label, hint) = (said::stored_longer(), said::may_stay_empty());
    page.field("longer", &label, &hint, look.draft("longer"), EntryKind::Number, 6);
    page.button(said::stored_save(), "found");
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
