//! What keeps a step from being done, or an isolation from holding, with the values that a sentence needs. The room for text makes one.
//!
//! Labels are as people typed them; a person is named by the entry that brought them.

use super::asked::Open;
use super::ended::Void;
use super::known::ToldBy;
use super::{SupplyFinding, SupplyName};
use crate::journal::EntryId;
use crate::journal::fact::SourceKind;
use crate::prove::{Earthing, Met, Reading};

/// Something that a step still lacks.
#[derive(Debug, Clone, PartialEq)]
pub enum Blocker {
    /// The permit's reference, or why there is none.
    Permit,
    /// Nobody is in charge.
    NobodyInCharge,
    /// Nobody was told that the supply goes off.
    NobodyTold,
    /// No barrier, no danger sign.
    NoBarrier,
    /// The rotation before the isolation.
    RotationBefore,
    /// Which circuits there are to shed.
    CircuitsUnsaid,
    /// No instrument is fit for use.
    NoInstrument,
    /// One instrument is fit for use, and two are needed.
    OneInstrument,
    /// A circuit that is not off yet.
    CircuitOn {
        /// Its label.
        label: String,
    },
    /// A point that is secured by nothing.
    NotSecured {
        /// The point's label.
        at: String,
    },
    /// Somebody without a lock of their own.
    NoOwnLock {
        /// Who.
        person: EntryId,
        /// The point's label.
        at: String,
    },
    /// A point without a caution sign.
    NoSign {
        /// The point's label.
        at: String,
    },
    /// What the photos of a point do not show.
    Photo(PhotoLack),
    /// The isolation does not hold.
    Way(OpenWay),
    /// Which covers came off.
    CoversUnsaid,
    /// Something may still hold a charge.
    Charged(Charged),
    /// A learner's run waits for its signature.
    Unsigned,
    /// The last proof is worth nothing any more.
    Void(Void),
    /// The indicator is not proved.
    IndicatorUnproved,
    /// The reference is not shown to be earth.
    ReferenceUnproved,
    /// A voltage was met.
    Indication(Met),
    /// A pair without a reading that counts.
    NotTested {
        /// The first conductor.
        first: String,
        /// The second.
        then: String,
        /// Only its reading of direct voltage is missing.
        direct: bool,
    },
    /// No pair is tested under a proof that stands.
    NothingTested,
    /// The indicator is not proved again.
    NotProvedAgain,
    /// The work is under way.
    AtWork,
    /// The work has not begun under a proof that stands.
    NotAtWork,
    /// A cover that is not back.
    CoverOff {
        /// Which.
        what: String,
    },
    /// Nobody was warned that the supply comes back.
    NobodyWarned,
    /// A lock that is still on.
    LockOn {
        /// Its owner.
        owner: EntryId,
        /// What it is on; `None` if that is not known here.
        place: Option<String>,
    },
    /// A sign that still hangs.
    SignUp {
        /// The point's label.
        at: String,
    },
    /// A point that is still open.
    StillOpen {
        /// Its label.
        at: String,
    },
    /// A point that is still open and would bring a supply beside others.
    Beside {
        /// Its label.
        at: String,
        /// What it brings.
        own: SupplyName,
        /// Beside what.
        others: Vec<SupplyName>,
    },
    /// A reading with the supply back that stands out.
    Finding {
        /// What was found.
        finding: SupplyFinding,
        /// What is to be done about it.
        ask: FindingAsk,
    },
    /// A pair that is not read with the supply back.
    NotRead {
        /// The first conductor.
        first: String,
        /// The second.
        then: String,
    },
    /// The rotation with the supply back.
    RotationUnread,
    /// The rotation, while motors are in danger.
    RotationUnguarded,
    /// A circuit that is not on again.
    CircuitOff {
        /// Its label.
        label: String,
    },
    /// The installation is not handed back.
    NotHandedBack,
    /// A temporary earth that is still in.
    EarthIn {
        /// The number on it.
        label: String,
        /// Where it is.
        at: String,
    },
    /// A question of the procedure that is open.
    Question(Open),
}

impl Blocker {
    /// Whether no deviation passes it over.
    pub fn is_firm(&self) -> bool {
        match self {
            Blocker::Question(open) => open.firm,
            Blocker::Permit
            | Blocker::NobodyTold
            | Blocker::NoBarrier
            | Blocker::RotationBefore
            | Blocker::OneInstrument
            | Blocker::CircuitOn { .. }
            | Blocker::NoSign { .. }
            | Blocker::Photo(_)
            | Blocker::CoversUnsaid
            | Blocker::NobodyWarned
            | Blocker::SignUp { .. }
            | Blocker::StillOpen { .. }
            | Blocker::Beside { .. }
            | Blocker::NotRead { .. }
            | Blocker::RotationUnread
            | Blocker::RotationUnguarded
            | Blocker::CircuitOff { .. } => false,
            Blocker::NobodyInCharge
            | Blocker::CircuitsUnsaid
            | Blocker::NoInstrument
            | Blocker::NotSecured { .. }
            | Blocker::NoOwnLock { .. }
            | Blocker::Way(_)
            | Blocker::Charged(_)
            | Blocker::Unsigned
            | Blocker::Void(_)
            | Blocker::IndicatorUnproved
            | Blocker::ReferenceUnproved
            | Blocker::Indication(_)
            | Blocker::NotTested { .. }
            | Blocker::NothingTested
            | Blocker::NotProvedAgain
            | Blocker::AtWork
            | Blocker::NotAtWork
            | Blocker::CoverOff { .. }
            | Blocker::LockOn { .. }
            | Blocker::Finding { .. }
            | Blocker::EarthIn { .. }
            | Blocker::NotHandedBack => true,
        }
    }
}

/// Where an isolation does not hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OpenWay {
    /// There is no point at all.
    NoPoint,
    /// A kind of source that nobody has looked for.
    SourceUnanswered(SourceKind),
    /// Nobody has looked for stored energy.
    StoredUnanswered,
    /// A source that is known beside the job and not answered for.
    SourceBeside {
        /// What it is.
        what: String,
        /// Who tells of it.
        told_by: ToldBy,
    },
    /// A line of the normal supply that no point opens.
    LineClosed {
        /// The line.
        line: String,
    },
    /// A point opens a protective conductor or a PEN.
    OpensProtective {
        /// The point.
        at: String,
        /// The conductor.
        conductor: String,
    },
    /// No point cuts off the normal supply.
    NoNormalPoint,
    /// A neutral of the normal supply that no point opens and that has to be.
    NeutralClosed {
        /// The neutral.
        neutral: String,
        /// How the supply is earthed.
        earthing: Earthing,
    },
    /// A source that no point cuts off.
    SourceUncut {
        /// What it is.
        what: SupplyName,
    },
    /// A conductor of a source that no point opens.
    SourceConductor {
        /// The conductor.
        conductor: String,
        /// Of which source.
        what: SupplyName,
    },
    /// Stored energy without a reading of direct voltage.
    DirectUnread {
        /// What.
        what: String,
        /// The waiting time on its label; 0 if there is none.
        seconds: u32,
    },
    /// Stored energy that showed a voltage.
    DirectShows {
        /// What.
        what: String,
        /// What was read.
        reading: Reading,
    },
    /// Stored energy that was read too early.
    DirectEarly {
        /// What.
        what: String,
        /// The waiting time on its label.
        seconds: u32,
    },
    /// A question was answered so that nothing goes on.
    Stopped(Open),
    /// A point that is not open.
    NotOpen {
        /// Its label.
        at: String,
    },
    /// A point that was closed for another job.
    ClosedBeside {
        /// Its label.
        at: String,
        /// That job's title, if it is known here.
        job: Option<String>,
    },
    /// A point without a lock.
    NoLock {
        /// Its label.
        at: String,
    },
    /// A point at which somebody has no lock of their own.
    NotAllLocked {
        /// Its label.
        at: String,
    },
}

/// Something that has not been waited for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Charged {
    /// What.
    pub what: String,
    /// The waiting time on its label.
    pub seconds: u32,
    /// Minutes that are left of it.
    pub left_min: i64,
}

/// What the photos of a point do not show.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PhotoLack {
    /// The lock and its label.
    Lock {
        /// The point's label.
        at: String,
    },
    /// The tag.
    Tag {
        /// The point's label.
        at: String,
    },
}

/// What is to be done about a reading that stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FindingAsk {
    /// Read again: it is said to be mended.
    ReadAgain,
    /// Mend it, or leave off what it feeds.
    MendOrLeaveOff,
    /// Say what becomes of it.
    Answer,
}
