//! Which line of a corner-grounded delta is at earth: it shows nothing to earth while it is live (common practice; trade press).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "grounded-line",
    home: Step::Points,
    arises: |job| if job.system == System::CornerGrounded { once(Step::Points) } else { Vec::new() },
    answers: &[said("l1"), said("l2"), said("l3"), stands("not-known")],
    counts: |_, _| true,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
