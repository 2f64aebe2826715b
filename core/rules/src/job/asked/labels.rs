//! Does the point belong to the equipment? The label of each is in a photo, where one is not the other: who looks at the record later sees
//! both (common practice; facts: "the right board").
//!
//! It is asked once the photo of the lock is there, which has often both; a second one is taken where it has not.

use super::*;
use crate::names::alike;

pub(super) static QUESTION: Question = Question {
    code: "labels",
    home: Step::OpenUp,
    arises: |job| {
        let normal = job.points.iter().filter(|p| p.cuts.is_none() && p.opened.is_some());
        // An isolator on the equipment itself has its name, and is where it is: one label, one photo.
        let apart = normal.filter(|p| !alike(&p.label, &job.equipment) || !alike(&p.at, &job.place));
        let seen = apart.map(|p| p.stamp.id).filter(|id| job.photos_of(*id).next().is_some());
        seen.map(|id| Asked { step: Some(Step::Isolate(id)), of: Subject::Part(id) }).collect()
    },
    answers: &[plain("in-photo"), stands("not-shown"), stops("do-not-match")],
    // What is said to be in a photo is in one that was there; labels do not change with the scope.
    counts: |job, given| {
        let photo = |id| job.photos_of(id).any(|p| p.stamp.clock < given.stamp.clock);
        given.answer != "in-photo" || given.of.part().is_some_and(photo)
    },
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
