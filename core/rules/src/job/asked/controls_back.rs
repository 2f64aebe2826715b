//! What was blocked so that it does not start by itself is set back, or somebody knows that it is not (common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "controls-back",
    home: Step::HandBack,
    arises: |job| {
        let blocked = super::starts_itself::blocked(job);
        let mut of: Vec<_> =
            blocked.filter_map(|g| g.of.part()).filter(|id| job.found().any(|s| s.stamp.id == *id)).collect();
        of.sort();
        of.dedup();
        of.into_iter().map(|of| Asked { step: Some(Step::HandBack), of: Subject::Part(of) }).collect()
    },
    answers: &[named("automatic"), stands("left-blocked")],
    counts: supply_back,
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};
