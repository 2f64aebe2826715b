//! Which pole of a supply of direct voltage is at earth, if one is: it shows nothing to earth while it is live.

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "earthed-pole",
    home: Step::Points,
    arises: |job| if job.system == System::DcTwoWire { once(Step::Points) } else { Vec::new() },
    answers: &[said("plus"), said("minus"), said("none"), stands("not-known")],
    counts: |_, _| true,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
