//! What stays live within reach of the work is screened before anybody touches anything (EN 50110-1, the fifth of its five rules).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "live-beside",
    home: Step::Work,
    arises: |job| {
        // Behind a cover that came off.
        if job.covers.is_empty() || job.finished.is_some() { Vec::new() } else { once(Step::Work) }
    },
    answers: &[plain("none"), said("screened"), stops("not-screened")],
    counts: behind_covers,
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};
