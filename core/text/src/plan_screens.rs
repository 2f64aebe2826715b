//! What the screens of the plan say, beside findings and refusals.

use super::catalogue::say;
use stillbar_journal::fact::{Duty, SourceKind};

/// Above the look for other sources.
pub fn sources_caution() -> String {
    say!("sources-caution")
}

/// The question for the kinds that were not found.
pub fn looked_for() -> String {
    say!("sources-looked-for")
}

/// Stored energy among the kinds of sources.
pub fn stored_energy() -> String {
    say!("sources-stored")
}

/// The label of where somebody looked.
pub fn where_looked() -> String {
    say!("where-looked")
}

/// What to write there.
pub fn looked_hint() -> String {
    say!("where-looked-hint")
}

/// The button that saves what was not found.
pub fn save_not_found() -> String {
    say!("sources-save-none")
}

/// Above the form for a source that was found.
pub fn found_one() -> String {
    say!("sources-found")
}

/// The label of its kind.
pub fn kind_of_source() -> String {
    say!("sources-kind")
}

/// The label of what it is.
pub fn what_found() -> String {
    say!("sources-what")
}

/// How anything is named that has a label of its own.
pub fn as_labelled() -> String {
    say!("as-labelled")
}

/// The label of where a source comes in.
pub fn comes_in() -> String {
    say!("sources-at")
}

/// What to write there.
pub fn comes_in_hint() -> String {
    say!("sources-at-hint")
}

/// The button that saves a source.
pub fn save_source() -> String {
    say!("sources-save")
}

/// What counts as a source of this kind.
pub fn what_counts(kind: SourceKind) -> String {
    match kind {
        SourceKind::SecondFeeder => say!("counts-second-feeder"),
        SourceKind::Generator => say!("counts-generator"),
        SourceKind::Ups => say!("counts-ups"),
        SourceKind::Pv => say!("counts-pv"),
        SourceKind::Battery => say!("counts-battery"),
        SourceKind::Control => say!("counts-control"),
    }
}

/// What a person does in a job.
pub fn duty(duty: Duty) -> String {
    match duty {
        Duty::InCharge => say!("duty-in-charge"),
        Duty::Working => say!("duty-working"),
        Duty::Learning => say!("duty-learning"),
    }
}

/// The label of a site.
pub fn site() -> String {
    say!("site")
}

/// The label of what is isolated.
pub fn equipment() -> String {
    say!("equipment")
}

/// The label of what is worked on.
pub fn scope_of_work() -> String {
    say!("scope")
}

/// The label of the conductors, the earthing and the rules.
pub fn conductors_and_rules() -> String {
    say!("conductors-and-rules")
}

/// The button for a cover after which no other comes off.
pub fn cover_off_last() -> String {
    say!("cover-off-last")
}

/// The button for a cover after which more come off.
pub fn cover_off_more() -> String {
    say!("cover-off-more")
}

/// The label of what a step still waits for.
pub fn still_to_do() -> String {
    say!("still-to-do")
}

/// That there is more of it.
pub fn and_more(count: usize) -> String {
    say!("and-more", count = count)
}

/// Why the earth is proved before any pair is tested.
pub fn earth_first() -> String {
    say!("earth-first")
}
