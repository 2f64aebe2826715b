//! Three lines without a neutral are taken to stand evenly about earth. Where deltas with a line at earth are met, somebody reads that this is
//! none: such a line shows nothing to earth while it is live (common practice in North America; trade press).

use stillbar_values::RuleSet;

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "line-at-earth",
    home: Step::Points,
    arises: |job| {
        let met_there = matches!(job.rule_set, Some(RuleSet::Us | RuleSet::Ca));
        if job.system == System::ThreeWire && met_there { once(Step::Points) } else { Vec::new() }
    },
    // Of a line that was seen at earth, nothing but a correction of the conductors lifts the stop.
    answers: &[
        said("none").lifting(&[]),
        stands("not-known").lifting(&[]),
        stops("one-is"),
        plain("corrected").lifting(&["one-is"]),
    ],
    counts: |job, given| (given.answer == "corrected") == (job.system == System::CornerGrounded),
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
