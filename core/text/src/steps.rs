//! Stages and steps.

use super::catalogue::say;
use super::words::yes;
use stillbar_rules::job::Job;
use stillbar_rules::job::steps::{Stage, Step, StepOf};

/// A stage, as a heading.
pub fn stage(stage: Stage) -> String {
    match stage {
        Stage::Plan => say!("stage-plan"),
        Stage::Isolate => say!("stage-isolate"),
        Stage::Prove => say!("stage-prove"),
        Stage::Work => say!("stage-work"),
        Stage::Restore => say!("stage-restore"),
    }
}

/// What stands in the place of a stage once nothing is left to do.
pub fn stage_over() -> String {
    say!("stage-over")
}

/// A step of this job, as a title.
pub fn title(step_of_job: Step, job: &Job) -> String {
    step(&step_of_job.of_job(job))
}

/// A step, as a title.
pub fn step(of: &StepOf) -> String {
    match of.step {
        Step::Permit => say!("step-permit"),
        Step::People => say!("step-people"),
        Step::Told => say!("step-told"),
        Step::Barriers => say!("step-barriers"),
        Step::Sources => say!("step-sources"),
        Step::Stored => say!("step-stored"),
        Step::Points => say!("step-points"),
        Step::Instruments => say!("step-instruments"),
        Step::RotationFound => say!("step-rotation-found"),
        Step::Circuits => say!("step-circuits"),
        Step::Shed => say!("step-shed"),
        Step::Isolate(_) => match &of.point {
            Some(point) => say!("step-isolate", point = point),
            None => say!("step-isolate-unknown"),
        },
        Step::OpenUp => say!("step-open-up"),
        Step::ProveBefore => say!("step-prove-before"),
        Step::ProveReference => say!("step-prove-reference"),
        Step::Discharge => say!("step-discharge"),
        Step::DeadTest => say!("step-dead-test"),
        Step::ProveAfter => say!("step-prove-after"),
        Step::Work => say!("step-work"),
        Step::CoversBack => say!("step-covers-back"),
        Step::Warn => say!("step-warn"),
        Step::Unlock => say!("step-unlock"),
        Step::Close => say!("step-close"),
        Step::Presence => say!("step-presence", turns = yes(of.turns)),
        Step::CircuitsOn => say!("step-circuits-on"),
        Step::HandBack => say!("step-hand-back"),
    }
}
