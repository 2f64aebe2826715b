//! A neutral that no point opens stays tied to the source: on TT and IT it can stand off earth while everything else is off, as long as the
//! work goes on (IEC 60364-4-46 and 5-53, from memory: there it is opened with the lines).

use super::*;
use crate::prove::{Earthing, Role};

pub(super) static QUESTION: Question = Question {
    code: "neutral-closed",
    home: Step::OpenUp,
    arises: |job| {
        // Not known is the harder case.
        let off_earth = matches!(job.earthing, Earthing::Tt | Earthing::It | Earthing::Unknown);
        if off_earth && closed(job) { once(Step::OpenUp) } else { Vec::new() }
    },
    answers: &[said("parted-elsewhere"), stands("stays-closed"), stops("off-earth")],
    counts: points_open,
    before: nothing,
    firm: true,
    in_every_job: InEveryJob::Never,
};

/// Whether a neutral of the job is opened by no point of it.
fn closed(job: &Job) -> bool {
    let neutrals = job.conductors().into_iter().filter(|c| c.role == Role::Neutral);
    // A point without poles noted is taken to open all.
    let opens = |name: &String| job.points.iter().any(|p| p.poles.is_empty() || p.poles.contains(name));
    !job.points.is_empty() && neutrals.into_iter().any(|c| !opens(&c.name))
}
