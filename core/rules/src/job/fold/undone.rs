//! What is firm and was withdrawn: it stands on the banner until somebody answers it anew.

use std::collections::BTreeSet;

use crate::job::{Undone, UndoneWhat};
use crate::journal::{Entry, EntryId, Fact};

/// What was withdrawn of `sorted`, the job's entries in their order, and was not answered anew since.
pub(super) fn undone(sorted: &[&Entry], withdrawn: &BTreeSet<EntryId>) -> Vec<Undone> {
    let mut all: Vec<Undone> = Vec::new();
    for entry in sorted {
        if let Fact::Withdrawn { entry: gone, why } = &entry.body.fact
            && withdrawn.contains(gone)
            && let Some(what) = sorted.iter().find(|e| e.id == *gone).and_then(|e| firm(&e.body.fact))
        {
            all.push(Undone { stamp: entry.stamp(), why: why.clone(), what });
        } else if !withdrawn.contains(&entry.id) {
            all.retain(|undone| !answers(undone, entry));
        }
    }
    all
}

/// Whether `entry` answers anew what was withdrawn.
pub(super) fn answers(undone: &Undone, entry: &Entry) -> bool {
    match (&undone.what, &entry.body.fact) {
        (UndoneWhat::Source(kind, _), Fact::SourceAnswered { kind: answered, .. }) => kind == answered,
        (UndoneWhat::Stored(_), Fact::StoredAnswered { .. }) => true,
        (UndoneWhat::Check(instrument), Fact::InstrumentChecked { instrument: checked, .. }) => instrument == checked,
        _ => false,
    }
}

fn firm(fact: &Fact) -> Option<UndoneWhat> {
    match fact {
        Fact::SourceAnswered { kind, found: Some(found), .. } => Some(UndoneWhat::Source(*kind, found.what.clone())),
        Fact::StoredAnswered { found: Some(found), .. } => Some(UndoneWhat::Stored(found.what.clone())),
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. }
            if !(*leads_sound && *tips_sound && *body_sound && *in_date) =>
        {
            Some(UndoneWhat::Check(*instrument))
        }
        _ => None,
    }
}
