//! Charge can come back after the reading that showed it gone: it is read once more at the work, or a short stays on, before anybody touches
//! anything (29 CFR 1910.147(d)(5)(ii), read in a mirror: while it can return, verification goes on; NFPA 70E 120.5(7), from an excerpt).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "charge-returned",
    home: Step::Work,
    arises: |job| {
        let stores = job.stored.iter().any(|s| s.found.is_some());
        if stores && job.finished.is_none() { once(Step::Work) } else { Vec::new() }
    },
    answers: &[said("gone").reading(Quantity::DirectVoltage, "returned"), said("shorted"), stops("returned")],
    counts: since_this_run,
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};
