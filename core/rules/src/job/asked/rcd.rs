//! Residual current devices are tested before the hand-back: by an instrument, or at least by their button, which is no measurement
//! (IEC 61008-1; common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "rcd",
    home: Step::HandBack,
    arises: |_| once(Step::HandBack),
    answers: &[said("measured"), plain("button"), plain("none-fitted"), stands("not-tested")],
    counts: supply_back,
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
    in_every_job: InEveryJob::Anyway,
};
