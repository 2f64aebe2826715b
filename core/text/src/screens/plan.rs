//! The screens of the plan, and what they share with those of isolation and proof.

use crate::catalogue::say;
use stillbar_journal::fact::{Duty, SourceKind};

says! {
    sources_caution => "sources-caution",
    looked_for => "sources-looked-for",
    stored_energy => "sources-stored",
    where_looked => "where-looked",
    looked_hint => "where-looked-hint",
    save_not_found => "sources-save-none",
    found_one => "sources-found",
    kind_of_source => "sources-kind",
    what_found => "sources-what",
    as_labelled => "as-labelled",
    comes_in => "sources-at",
    comes_in_hint => "sources-at-hint",
    save_source => "sources-save",
    site => "site",
    equipment => "equipment",
    scope_of_work => "scope",
    conductors_and_rules => "conductors-and-rules",
    cover_off_last => "cover-off-last",
    cover_off_more => "cover-off-more",
    still_to_do => "still-to-do",
    may_stay_empty => "may-stay-empty",
    and_more(count) => "and-more",
    earth_first => "earth-first",
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
