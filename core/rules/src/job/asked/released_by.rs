//! Who lets the work start may be another than who tested, where a permit is in force: then both stand for it with their names, the tester
//! by the test, the other one by a signature under it (EN 50110-1, 6.2.7: permission by the person in charge; read in an excerpt).

use super::*;
use crate::prove::Run;

pub(super) static QUESTION: Question = Question {
    code: "released-by",
    home: Step::Work,
    arises: |job| match &job.permit {
        Some((_, Ok(_))) if job.finished.is_none() => once(Step::Work),
        _ => Vec::new(),
    },
    answers: &[plain("tester"), plain("another")],
    counts: |job, given| {
        since_this_run(job, given) && (given.answer != "another" || job.run().is_some_and(signed_by_another))
    },
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};

/// Whether somebody who did not begin the test signed it, after the last proof of its indicator.
fn signed_by_another(run: &Run) -> bool {
    let another = |(stamp, seen): &(Stamp, usize)| stamp.by != run.before.by && *seen >= run.proofs.len();
    run.signed.as_ref().is_some_and(another)
}

impl Job {
    /// Whether it is open who lets the work start, so that somebody else than the tester may sign for it.
    pub fn asks_who_releases(&self) -> bool {
        self.asked(&QUESTION, &Subject::Job).is_some() && QUESTION.open(self, &Subject::Job).is_some()
    }
}
