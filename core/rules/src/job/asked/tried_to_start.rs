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
    // With all points open: one that was opened since was not in the attempt.
    counts: |job, given| {
        let opened = job.points.iter().filter_map(|p| p.opened.as_ref());
        opened.into_iter().all(|o| o.clock < given.stamp.clock)
    },
    before: nothing,
    firm: true,
};
