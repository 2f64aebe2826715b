//! Tools, links, shorts and earths are counted out before a cover goes back (29 CFR 1910.333(b)(2)(v)(A)).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "left-inside",
    home: Step::CoversBack,
    arises: |job| if job.covers.is_empty() { Vec::new() } else { once(Step::CoversBack) },
    answers: &[plain("nothing"), stops("something")],
    // Counted once the work is over: what came off later was not counted.
    counts: |job, given| {
        job.after_work(&given.stamp) && job.covers.iter().all(|(off, ..)| off.clock < given.stamp.clock)
    },
    before: |fact, _| matches!(fact, Fact::CoverBack { .. }),
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};
