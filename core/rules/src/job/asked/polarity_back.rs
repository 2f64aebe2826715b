//! With a supply of direct voltage back, its poles are where they are marked: a reading without sign does not tell it (common practice).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "polarity-back",
    home: Step::Presence,
    arises: |job| if job.noted_supply().is_direct() { once(Step::Presence) } else { Vec::new() },
    answers: &[said("as-marked"), stops("reversed")],
    counts: supply_back,
    before: |fact, _| matches!(fact, Fact::HandedBack { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};
