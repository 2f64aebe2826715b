//! Both labels, as docs/questions.md asks for them: "at each point of the normal supply that has another label than the equipment or is in
//! another place, once it is open and a photo of it is there".

use stillbar_core::journal::{Entry, EntryId, Fact};

use super::alike::alike;
use super::known::Known;

/// A photo of this is there.
pub fn has_photo(known: &Known, job: EntryId, point: EntryId) -> bool {
    known
        .of(job)
        .any(|e| matches!(e.body.fact, Fact::PhotoTaken { of, .. } if of == point) && !known.is_withdrawn(e.id))
}

/// It is of this job and of the normal supply, and has another label than the equipment or is in another place.
pub fn is_apart(known: &Known, job: EntryId, point: EntryId) -> bool {
    let Some(point) = known.get(point).filter(|p| p.job() == Some(job) && !known.is_withdrawn(p.id)) else {
        return false;
    };
    let Some(Fact::JobOpened { equipment, place, .. }) = known.get(job).map(|e| &e.body.fact) else { return false };
    match &point.body.fact {
        Fact::PointAdded { label, at, cuts: None, .. } => !(alike(label, equipment) && alike(at, place)),
        _ => false,
    }
}

/// The points of a job of which it is asked now.
pub fn asked<'a>(known: &Known<'a>, job: EntryId) -> Vec<&'a Entry> {
    let open = |point: &Entry| {
        let switched = known.of(job).filter(|e| match e.body.fact {
            Fact::PointOpened { point: p, .. } | Fact::PointClosed { point: p, .. } => p == point.id,
            _ => false,
        });
        matches!(switched.last().map(|e| &e.body.fact), Some(Fact::PointOpened { .. }))
    };
    known.of(job).filter(|p| is_apart(known, job, p.id) && open(p) && has_photo(known, job, p.id)).collect()
}
