//! The proof and what rests on it: instruments, readings, reference, work.

use crate::job::Fault;
use crate::journal::EntryId;
use crate::prove::limit::Bound;

/// Why something of the proof or the work is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ProofRefusal {
    /// An instrument that was not checked for this job.
    NotChecked,
    /// An instrument that something is wrong with.
    Faulty {
        /// Which.
        instrument: EntryId,
        /// What.
        fault: Fault,
    },
    /// An instrument that failed and was not checked again.
    Failed {
        /// Which.
        instrument: EntryId,
    },
    /// An instrument that was not checked in this shift.
    NotThisShift {
        /// Which.
        instrument: EntryId,
    },
    /// The run is over.
    Over,
    /// Another indicator than that of the run.
    OtherIndicator,
    /// A pair that the plan does not have.
    NotAPair {
        /// The first conductor.
        first: String,
        /// The second.
        then: String,
    },
    /// A live line as proof of earth, where it shows nothing.
    LiveLineShowsNothing,
    /// No such stored energy.
    NoSuchStored,
    /// A cause of nothing that was met.
    CauseOfNothing,
    /// A learner as who stands by a test.
    LearnerSigns,
    /// A learner who begins work.
    LearnerBegins,
    /// Work is under way.
    AtWork,
    /// No proof stands.
    NothingStands,
    /// Work is not under way.
    NotAtWork,
    /// The work is finished already.
    FinishedAlready,
    /// People are at work.
    StopFirst,
    /// People are at work, under an earlier run.
    StopWorkFirst,
    /// Nothing is open that could be given up.
    NothingOpen,
    /// What was met has no cause yet.
    Unexplained,
    /// An indicator that begins too late for this job.
    LightsLate {
        /// Which.
        instrument: EntryId,
        /// Where it has to begin at the latest.
        bound: Bound,
    },
    /// An indicator proved on itself.
    OnItself,
    /// A live source without a name.
    NoLiveSource,
}
