//! What counts as no indication in a job: the company's limit for figures, and the lowest voltage that an instrument has to indicate.

use super::Job;
use crate::journal::fact::{LightsFrom, Limit};
use crate::prove::limit::{Bound, Limits, bound};
use crate::prove::{Role, System};

impl Job {
    /// The lowest voltages to earth or neutral that the sources of this job put on a line or pole, in millivolts.
    pub fn voltages(&self) -> Vec<u32> {
        let own = match self.system {
            System::ThreeWire => (f64::from(self.nominal) / 3f64.sqrt()).round() as u32,
            System::OnePhase | System::ThreePhaseNeutral => self.nominal,
        };
        let control = self.found().filter(|s| !s.terminals.is_empty()).filter_map(|s| s.millivolts);
        std::iter::once(own).chain(control).filter(|mv| *mv > 0).collect()
    }

    /// What a limit has to be below, and by what an instrument has to indicate.
    pub fn bound(&self) -> Bound {
        bound(&self.voltages())
    }

    /// The limit that counts: the company's where it is below the bound, or else none.
    pub fn limits(&self) -> Limits {
        let bound = self.bound();
        let fits = |l: &&Limit| bound.allows(Limits { ac_mv: l.ac, dc_mv: l.dc });
        self.limit.as_ref().filter(fits).map_or(Limits::default(), |l| Limits { ac_mv: l.ac, dc_mv: l.dc })
    }

    /// Whether an instrument with this lowest indication shows anything on this job.
    pub fn lights_in_time(&self, from: Option<&LightsFrom>) -> bool {
        from.is_some_and(|from| self.bound().lights_in_time(from.ac, from.dc))
    }

    /// Whether something of this job can hold or make direct voltage, so that every pair is read for it too.
    pub fn asks_for_direct(&self) -> bool {
        !self.direct().is_empty() || self.conductors().iter().any(|c| matches!(c.role, Role::DcPlus | Role::DcMinus))
    }
}
