//! Where a permit is in force, owner and contractor tell each other how they lock and who controls the points (29 CFR 1910.147(f)(2); common
//! practice elsewhere).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "told-each-other",
    home: Step::Told,
    arises: |job| match &job.permit {
        Some((_, Ok(_))) => once(Step::Told),
        _ => Vec::new(),
    },
    answers: &[named("told"), plain("one-employer")],
    counts: |_, _| true,
    before: nothing,
    firm: false,
    in_every_job: InEveryJob::IfRuled,
};
