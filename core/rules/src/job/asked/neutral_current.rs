//! A neutral may carry the current of a circuit that is not isolated: it is clamped before it is parted, with everything else live (trade
//! press on borrowed neutrals; common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "neutral-current",
    home: Step::OpenUp,
    arises: |_| vec![Asked { step: None, of: Subject::Job }],
    answers: &[said("none").reading(Quantity::Current, "current"), stops("current")],
    // Each neutral for itself.
    counts: |job, given| job.neutrals_parted.iter().all(|parted| parted.clock < given.stamp.clock),
    // One that was parted is told all the same: what has happened is never refused.
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};
