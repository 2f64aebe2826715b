//! Where two supplies meet, an interlock or a shutter keeps one from the other: it is looked at, and none is bridged or held (IEC 60364-5-55
//! 551.7, from memory; common practice).

use super::*;
use crate::journal::fact::SourceKind;

pub(super) static QUESTION: Question = Question {
    code: "interlocks",
    home: Step::OpenUp,
    arises: |job| {
        let meets = |kind| matches!(kind, SourceKind::Generator | SourceKind::SecondFeeder | SourceKind::Ups);
        if job.found().any(|s| meets(s.kind)) { once(Step::OpenUp) } else { Vec::new() }
    },
    answers: &[plain("none-fitted"), said("in-order"), stops("bridged")],
    // With all points open, as it will be while the work goes on.
    counts: points_open,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};
