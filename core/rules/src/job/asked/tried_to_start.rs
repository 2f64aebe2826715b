//! After isolating, the normal controls are worked where that is practice: nothing starts (29 CFR 1910.333(b)(2)(iv)(A)). It is no test for
//! voltage.

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "tried-to-start",
    home: Step::OpenUp,
    arises: |job| {
        if super::starts_itself::blocked(job).next().is_some() { once(Step::OpenUp) } else { Vec::new() }
    },
    answers: &[plain("nothing-moved"), stands("not-tried"), stops("it-started")],
    counts: points_open,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};
