//! Where more than one person worked, instruments, keys, labels and drawings are counted back before the hand-back (common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "counted-back",
    home: Step::HandBack,
    arises: |job| if job.workers.len() > 1 { once(Step::HandBack) } else { Vec::new() },
    answers: &[plain("all"), stands("missing")],
    counts: supply_back,
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: false,
    in_every_job: InEveryJob::IfRuled,
};
