//! Residual current devices are tested before the hand-back: by an instrument, or at least by their button, which is no measurement
//! (IEC 61008-1; common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "rcd",
    home: Step::HandBack,
    arises: |_| once(Step::HandBack),
    answers: &[said("measured"), plain("button"), plain("none-fitted"), stands("not-tested")],
    // With the supply back.
    counts: |job, given| {
        job.this_round(&given.stamp)
            && job.points.iter().filter_map(|p| p.closed.as_ref()).all(|c| c.clock < given.stamp.clock)
    },
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
};
