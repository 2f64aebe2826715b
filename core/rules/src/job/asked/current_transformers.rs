//! The secondary of a current transformer is shorted before its circuit is opened, and never open under current: it would stand at a voltage
//! that no test of the board shows (common practice; IEC 61869-2, from memory).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "current-transformers",
    home: Step::Work,
    arises: |job| {
        // Behind a cover that came off, on a board of three lines: a final circuit has none.
        let may_be = !job.covers.is_empty() && job.turns() && job.finished.is_none();
        if may_be { once(Step::Work) } else { Vec::new() }
    },
    answers: &[plain("none"), plain("left-closed"), said("shorted"), stops("open")],
    counts: behind_covers,
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};

/// Whether shorts were put on, also by an answer that no longer holds.
pub(super) fn shorted(job: &Job) -> bool {
    job.given.iter().any(|g| g.question == QUESTION.code && g.answer == "shorted")
}
