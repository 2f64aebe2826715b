//! The shorts of current transformers come off last, once their circuits are closed again, and the current is seen back (common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "shorts-off",
    home: Step::HandBack,
    arises: |job| if super::current_transformers::shorted(job) { once(Step::HandBack) } else { Vec::new() },
    answers: &[said("off"), stands("left-on")],
    counts: supply_back,
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};
