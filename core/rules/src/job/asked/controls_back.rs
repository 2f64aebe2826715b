//! What was blocked so that it does not start by itself is set back, or somebody knows that it is not (common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "controls-back",
    home: Step::HandBack,
    arises: |job| {
        let blocked =
            job.given.iter().filter(|g| g.question == super::starts_itself::QUESTION.code && g.answer == "blocked");
        let mut of: Vec<_> = blocked.filter_map(|g| g.of).filter(|id| job.found().any(|s| s.stamp.id == *id)).collect();
        of.sort();
        of.dedup();
        of.into_iter().map(|of| Asked { step: Some(Step::HandBack), of: Some(of) }).collect()
    },
    answers: &[named("automatic"), stands("left-blocked")],
    counts: |job, given| {
        job.this_round(&given.stamp)
            && job.points.iter().filter_map(|p| p.closed.as_ref()).all(|c| c.clock < given.stamp.clock)
    },
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
};
