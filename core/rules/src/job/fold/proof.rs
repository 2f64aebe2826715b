//! The dead test and the work, from entries.

use crate::job::{Cause, Job, WorkTurn};
use crate::journal::fact::Duty;
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::prove::{Earth, Proof, Run, Taken};

impl Job {
    pub(super) fn apply_proof(&mut self, entry: &Entry, stamp: Stamp) {
        match &entry.body.fact {
            Fact::IndicatorProved { run: None, indicator, on, works: true } => {
                let run = Run {
                    before: stamp,
                    saw: self.heard.had(stamp.device),
                    indicator: *indicator,
                    proofs: vec![Proof { stamp, on: on.clone(), works: true }],
                    readings: Vec::new(),
                    earth: Vec::new(),
                    discharge: Vec::new(),
                    by_learner: self.learns(stamp.by),
                    signed: None,
                };
                self.runs.push(run);
            }
            Fact::IndicatorProved { run: Some(run), indicator, on, works } => {
                let heard = &self.heard;
                // Another indicator proves nothing of this run.
                if let Some(run) = self.runs.iter_mut().find(|r| r.id() == *run && r.indicator == *indicator) {
                    let place = run.proofs.len();
                    for taken in run.readings.iter_mut().filter(|t| t.until.is_none()) {
                        if heard.saw(&stamp, &taken.stamp) {
                            taken.until = Some(place);
                        }
                    }
                    run.proofs.push(Proof { stamp, on: on.clone(), works: *works });
                }
            }
            Fact::ReadingTaken { run, first, then, reading, dc } => {
                let learns = self.learns(stamp.by);
                let heard = &self.heard;
                if let Some(run) = run_of(&mut self.runs, *run) {
                    let since = run.proofs.iter().rposition(|p| heard.saw(&stamp, &p.stamp));
                    let (first, then) = (first.clone(), then.clone());
                    run.readings.push(Taken { dc: *dc, since, ..Taken::alone(stamp, first, then, *reading) });
                    run.by_learner |= learns;
                }
            }
            Fact::ReferenceProved { run, way, how, holds } => {
                if let Some(run) = run_of(&mut self.runs, *run) {
                    run.earth.push(Earth { stamp, way: *way, how: how.clone(), holds: *holds });
                }
            }
            Fact::DischargeRead { run, of, reading } => {
                if let Some(run) = run_of(&mut self.runs, *run) {
                    run.discharge.push((stamp, *of, *reading));
                }
            }
            Fact::RunSigned { run, .. } => {
                let stands = self.present().any(|w| stamp.by == Some(w.person) && w.duty != Duty::Learning);
                let heard = &self.heard;
                if let Some(run) = run_of(&mut self.runs, *run)
                    && stands
                {
                    let seen = run.proofs.iter().filter(|p| heard.saw(&stamp, &p.stamp)).count();
                    run.signed = Some((stamp, seen));
                }
            }
            Fact::CauseNoted { of, found, cause } => {
                self.causes.push(Cause { stamp, of: of.clone(), found: *found, cause: cause.clone() });
            }
            Fact::WorkBegan { run } => self.work.push((stamp, WorkTurn::Began(*run))),
            Fact::WorkLeft { why } => self.work.push((stamp, WorkTurn::Left(why.clone()))),
            Fact::WorkStopped {} => self.work.push((stamp, WorkTurn::Stopped)),
            Fact::WorkFinished { clear } => {
                self.finished = Some((stamp, clear.clone()));
                self.work.push((stamp, WorkTurn::Finished));
            }
            Fact::GivenUp { why, clear } => {
                (self.finished, self.given_up) = (Some((stamp, clear.clone())), Some((stamp, why.clone())));
                self.work.push((stamp, WorkTurn::Finished));
            }
            _ => {}
        }
    }

    /// Whether this person works under supervision in this job.
    pub fn learns(&self, person: Option<EntryId>) -> bool {
        self.present().any(|w| Some(w.person) == person && w.duty == Duty::Learning)
    }
}

fn run_of(runs: &mut [Run], id: EntryId) -> Option<&mut Run> {
    runs.iter_mut().find(|r| r.id() == id)
}
