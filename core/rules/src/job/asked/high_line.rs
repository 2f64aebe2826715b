//! Which line of a high-leg delta stands higher: often the second, and the meter of the supplier often has it elsewhere (NEC 110.15, 230.56,
//! 408.3(E), from an excerpt). It is shown by a reading before anything is opened, never taken from a colour.

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "high-line",
    home: Step::Points,
    arises: |job| if job.system == System::HighLeg { once(Step::Points) } else { Vec::new() },
    answers: &[said("l1"), said("l2"), said("l3"), stands("not-known")],
    counts: |_, _| true,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
