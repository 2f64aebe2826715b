//! What there is to be proved dead: the job's conductors, corrected, and what stays live beside them.

use super::super::{Job, StaysLive, SupplyCorrected};
use crate::journal::{Fact, Stamp};

impl Job {
    pub(super) fn note_supply(&mut self, stamp: Stamp, fact: &Fact) {
        match fact {
            Fact::SystemCorrected { system, earthing, nominal_millivolts, own, why } => {
                let (was, was_nominal, why) = (self.system, self.nominal, why.clone());
                self.corrected.push(SupplyCorrected { stamp, was, was_nominal, why });
                (self.system, self.earthing, self.nominal) = (*system, *earthing, *nominal_millivolts);
                self.own.clone_from(own);
            }
            Fact::StaysLive { what, at, screened, conductors } => {
                let (what, at, screened) = (what.clone(), at.clone(), screened.clone());
                self.stays_live.push(StaysLive { stamp, what, at, screened, conductors: conductors.clone() });
            }
            _ => {}
        }
    }
}
