//! The indicator has two poles, and its category and voltage are fit for the place, its leads with it (IEC 61010-031, IEC 61243-3, GS38). A
//! detector that touches nothing proves nothing.

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "instrument-fit",
    home: Step::Instruments,
    arises: |job| if job.instruments.is_empty() { Vec::new() } else { once(Step::Instruments) },
    answers: &[plain("fits"), stops("does-not-fit")],
    // Of every instrument that the job had by then.
    counts: |job, given| {
        let first =
            |c: &crate::job::Checked| job.checks.iter().find(|f| f.instrument == c.instrument).map(|f| f.stamp.clock);
        job.instruments.iter().filter_map(first).all(|clock| clock < given.stamp.clock)
    },
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Anyway,
};
