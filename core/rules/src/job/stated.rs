//! What is said first of a job, on a banner as in a record: what stands, and what stands beside it. Values; who tells them puts them into
//! words or codes, in this order.

use super::asked::GivenAnswer;
use super::parts::{Deviation, Differs, StaysLive, SupplyCorrected, Undone};
use super::{Cause, Job, Standing, Trouble};
use crate::journal::Stamp;
use crate::journal::fact::Limit;
use crate::point::{Lock, Means};
use crate::prove::judge::neutral::Unexpected;
use crate::prove::limit::Limits;

/// What stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stated<'a> {
    /// The installation was handed back: the supply is there.
    HandedBack {
        /// When and by whom.
        stamp: &'a Stamp,
        /// To whom.
        to: &'a str,
    },
    /// The isolation was given up before the work was done, whatever was proved.
    GivenUp {
        /// When and by whom.
        stamp: &'a Stamp,
        /// Why.
        why: &'a str,
        /// What stood; what was met is said on.
        standing: Standing,
    },
    /// The work is finished, and with it the proof.
    Restoring,
    /// What is proved, or is not.
    Proof(Standing),
}

/// What stands beside that until it is answered anew, and what whoever reads it has to know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SaidBeside<'a> {
    /// A step was passed over.
    PassedOver(&'a Deviation),
    /// A way that the network shows does not count.
    WayDiffers(&'a Differs),
    /// A point is secured without a lock.
    NoLock {
        /// What stands in the list of locks.
        lock: &'a Lock,
        /// How it is secured.
        how: &'a str,
    },
    /// What was found is withdrawn.
    Undone(&'a Undone),
    /// A question was answered so that not all is shown.
    Unshown(&'a GivenAnswer),
    /// The conductors had been noted wrong, and what is tested is something else since.
    Corrected(&'a SupplyCorrected),
    /// Something cannot be made dead here.
    StaysLive(&'a StaysLive),
    /// Something was met, and its cause was not found.
    CauseNotFound(&'a Trouble, &'a Cause),
    /// A newer version wrote something that cannot be read here.
    Newer,
    /// A reading that nobody would expect.
    Unexpected(Unexpected),
    /// Figures up to a limit count as no indication.
    Limit {
        /// What counts.
        limits: Limits,
        /// By which rule.
        rule: &'a Limit,
    },
}

impl Job {
    /// What stands.
    pub fn stated(&self) -> Stated<'_> {
        match (&self.handed, &self.given_up, self.standing()) {
            (Some((stamp, to, ..)), ..) => Stated::HandedBack { stamp, to },
            (None, Some((stamp, why)), standing) => Stated::GivenUp { stamp, why, standing },
            (None, None, Standing::Void { .. }) if self.finished.is_some() => Stated::Restoring,
            (None, None, standing) => Stated::Proof(standing),
        }
    }

    /// What stands beside it.
    pub fn said_beside(&self) -> Vec<SaidBeside<'_>> {
        let mut all: Vec<SaidBeside> = self.stays_live.iter().map(SaidBeside::StaysLive).collect();
        all.extend(self.corrected.iter().map(SaidBeside::Corrected));
        all.extend(self.deviations.iter().map(SaidBeside::PassedOver));
        all.extend(self.differs.iter().map(SaidBeside::WayDiffers));
        all.extend(self.locks_on().filter_map(|lock| match &lock.means {
            Means::Other(how) => Some(SaidBeside::NoLock { lock, how }),
            _ => None,
        }));
        all.extend(self.unshown().into_iter().map(SaidBeside::Unshown));
        all.extend(self.undone.iter().map(SaidBeside::Undone));
        all.extend(self.unfound().map(|(trouble, cause)| SaidBeside::CauseNotFound(trouble, cause)));
        all.extend(self.has_newer().then_some(SaidBeside::Newer));
        all.extend(self.remarks().into_iter().map(SaidBeside::Unexpected));
        let limits = self.limits();
        let rule = self.limit.as_ref().filter(|_| limits.ac_mv > 0 || limits.dc_mv > 0);
        all.extend(rule.map(|rule| SaidBeside::Limit { limits, rule }));
        all
    }
}
