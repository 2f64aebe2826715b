//! A voltage that was met and whose cause is noted: was it coupled from a neighbour, and gone under the load of a low impedance, or did it
//! stay? One that stays is a source, whatever its cause is said to be (29 CFR 1910.333(b)(2)(iv)(B): the test looks for induced voltage and
//! feed-back; read in an excerpt).

use super::*;
use crate::job::TroubleKind;

pub(super) static QUESTION: Question = Question {
    code: "coupled",
    home: Step::OpenUp,
    arises: |job| {
        let noted = met(job).all(|m| job.causes.iter().any(|c| c.of.contains(&m.id)));
        if met(job).next().is_some() && noted { once(Step::OpenUp) } else { Vec::new() }
    },
    answers: &[
        said("other-cause"),
        stands("gone-under-load").reading(Quantity::Voltage, "stays-under-load"),
        stops("stays-under-load"),
    ],
    // Of every voltage that was met: another one, another answer.
    counts: |job, given| met(job).all(|m| m.clock < given.stamp.clock),
    before: |fact, _| matches!(fact, Fact::IndicatorProved { run: None, .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};

/// The voltages that were met, but for a charge that was left: no neighbour puts that there.
fn met(job: &Job) -> impl Iterator<Item = &Stamp> {
    let charge = |id: EntryId| job.runs.iter().any(|run| run.discharge.iter().any(|(stamp, ..)| stamp.id == id));
    let met = job.troubles.iter().filter(|t| matches!(t.kind, TroubleKind::Voltage(_))).map(|t| &t.stamp);
    met.filter(move |stamp| !charge(stamp.id))
}

/// Whether what was met was coupled from a neighbour.
pub(super) fn is_coupled(job: &Job) -> bool {
    QUESTION.answered(job, &Subject::Job).is_some_and(|given| given.answer == "gone-under-load")
}
