//! What may start or come back by itself is blocked where it is controlled, beside being locked at its power (29 CFR 1910.333(b)(2);
//! common practice): automatic start, changeover, remote control, an inverter that restarts, a vehicle.

use super::*;
use crate::journal::fact::SourceKind;

pub(super) static QUESTION: Question = Question {
    code: "starts-itself",
    home: Step::OpenUp,
    arises: |job| {
        let found = job.found().filter(|s| s.kind != SourceKind::Control);
        // Whoever stands at its point answers; a source without a point keeps the plan from being done.
        let at = |source: EntryId| job.points.iter().find(|p| p.cuts == Some(source));
        found
            .filter_map(|s| {
                at(s.stamp.id).map(|p| Asked { step: Some(Step::Isolate(p.stamp.id)), of: Subject::Part(s.stamp.id) })
            })
            .collect()
    },
    answers: &[said("blocked"), said("cannot"), stops("not-blocked")],
    // The block stays where it is, whatever the scope.
    counts: |_, _| true,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};

/// Every answer by which something was blocked, also one that no longer holds.
pub(super) fn blocked(job: &Job) -> impl Iterator<Item = &GivenAnswer> {
    job.given.iter().filter(|g| g.question == QUESTION.code && g.answer == "blocked")
}
