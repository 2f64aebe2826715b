//! What stands proved in a job, and why nothing does, with the values that a sentence needs. The room for text makes one.

use super::Summary;
use super::blocker::OpenWay;
use super::known::ToldBy;
use super::trouble::TroubleKind;
use crate::journal::Stamp;
use crate::prove::Met;
use crate::supply::Uncut;

/// What stands proved. Only `Proved` allows work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing {
    /// No run has begun.
    NotBegun,
    /// A run is under way; so many tests are missing. With none missing, the reference or the second proof is.
    UnderWay {
        /// Tests without a reading that counts.
        missing: usize,
    },
    /// A voltage was read, and its cause is not noted.
    Indication {
        /// What was read: the conductors or the place, and the reading.
        readings: Vec<Met>,
    },
    /// A run is worth nothing any more.
    Void {
        /// Why.
        why: Void,
    },
    /// A learner's run waits for somebody of the job who does not learn.
    Unsigned,
    /// Every pair was read without indication and the indicator worked before and after.
    Proved {
        /// The last proof of the indicator.
        since: Stamp,
    },
}

/// Something that ended every proof before it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Voided {
    /// When, and by which device.
    pub stamp: Stamp,
    /// What.
    pub why: Ended,
}

/// What an entry ended the proofs before it with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ended {
    /// A lock came off.
    LockOff {
        /// What it was on; `None` if that is not known here.
        place: Option<String>,
    },
    /// Stored energy was found.
    StoredFound {
        /// What.
        what: String,
    },
    /// A source was found.
    SourceFound {
        /// What.
        what: String,
    },
    /// A point was added.
    PointAdded {
        /// Its label.
        label: String,
    },
    /// A point was opened that was not open while tests were made.
    PointOpened {
        /// Its label.
        label: String,
    },
    /// A point was closed for another job in between.
    ClosedBetween {
        /// Its label.
        label: String,
    },
    /// A point was closed.
    PointClosed {
        /// Its label; `None` if it is not known here.
        label: Option<String>,
    },
    /// A point was opened by one device and closed by another, and neither knew.
    OpenedAndClosed {
        /// Its label.
        label: String,
    },
    /// The scope changed.
    Scope,
    /// The work zone in the network changed.
    Zone,
    /// The shift changed.
    Shift,
    /// Somebody answered for a way that the network shows.
    WayAnswered,
    /// The work was left.
    WorkLeft,
    /// The work was finished.
    WorkFinished,
    /// The work was stopped.
    WorkStopped,
    /// The isolation was given up.
    GivenUp,
    /// A cover came off.
    CoverOff {
        /// Which.
        what: String,
    },
    /// The limit for dead was changed.
    Limit,
    /// Rules of the company were heard of that set a lower limit for dead.
    CompanyLimit,
    /// A neutral was parted.
    NeutralParted {
        /// Which.
        what: String,
    },
    /// An entry was withdrawn.
    Withdrawn,
    /// Conductors, earthing or voltage had been noted wrong.
    SystemCorrected,
    /// A temporary earth came off before the work was over.
    EarthOff {
        /// Its number.
        label: String,
    },
    /// Something stays live.
    StaysLive {
        /// What.
        what: String,
    },
    /// A question was answered so that nothing goes on.
    Answered {
        /// Its code.
        question: &'static str,
        /// The answer's.
        answer: &'static str,
        /// What it is about, as it is called; empty for the job.
        about: String,
    },
}

/// Why a run is worth nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Void {
    /// An entry ended it.
    Ended(Ended),
    /// Something was met, and its cause is not noted.
    Trouble(TroubleKind),
    /// Something was met that whoever began the run did not know of, or not its cause.
    TroubleUnknown(TroubleKind),
    /// Its indicator was found not fit for use.
    IndicatorUnfit,
    /// What its indicator was proved on was found not fit for use.
    ProverUnfit,
    /// A cause was not found, and only one whole run was made since.
    TestTwice,
    /// Nothing is known beside the job.
    HeldAgainstNothing,
    /// The isolation does not hold.
    Way(OpenWay),
    /// A newer version wrote something here, or at this site, that this one cannot read.
    Newer,
    /// The device has forgotten what it wrote.
    Forgotten,
    /// A source is known at the site and not answered for.
    SourceKnown {
        /// What it is.
        what: String,
        /// Who tells of it.
        told_by: ToldBy,
    },
    /// A source was found at the site, and whoever began the run did not know that it is answered for.
    SourceFound {
        /// What it is.
        what: String,
    },
    /// The network shows a way that no lock cuts.
    Network {
        /// What keeps the work zone from being cut.
        why: Box<Uncut>,
    },
    /// Nobody said in time what is worked on in the network.
    ZoneUnsaid,
    /// An entry about the job is put aside.
    Aside {
        /// What it says.
        says: Box<Summary>,
    },
    /// The indicator begins too late for the voltages of the job.
    LightsLate,
    /// What the indicator was proved on is not known here.
    ProverUnknown,
    /// The indicator was not checked in this shift.
    NotThisShift,
    /// No clock tells how old the proof is.
    ClockDoubt,
    /// The proof is too old.
    TooOld,
}

impl Ended {
    /// Its name in records.
    pub fn code(&self) -> &'static str {
        match self {
            Ended::LockOff { .. } => "lock-off",
            Ended::StoredFound { .. } => "stored-found",
            Ended::SourceFound { .. } => "source-found",
            Ended::PointAdded { .. } => "point-added",
            Ended::PointOpened { .. } => "point-opened",
            Ended::ClosedBetween { .. } => "closed-between",
            Ended::PointClosed { .. } => "point-closed",
            Ended::OpenedAndClosed { .. } => "opened-and-closed",
            Ended::Scope => "scope",
            Ended::Zone => "zone",
            Ended::Shift => "shift",
            Ended::WayAnswered => "way-answered",
            Ended::Answered { .. } => "answered",
            Ended::SystemCorrected => "system-corrected",
            Ended::EarthOff { .. } => "earth-off",
            Ended::StaysLive { .. } => "stays-live",
            Ended::WorkLeft => "work-left",
            Ended::WorkFinished => "work-finished",
            Ended::WorkStopped => "work-stopped",
            Ended::GivenUp => "given-up",
            Ended::CoverOff { .. } => "cover-off",
            Ended::Limit => "limit",
            Ended::CompanyLimit => "company-limit",
            Ended::NeutralParted { .. } => "neutral-parted",
            Ended::Withdrawn => "withdrawn",
        }
    }
}

impl Void {
    /// Its name in records.
    pub fn code(&self) -> &'static str {
        match self {
            Void::Ended(ended) => ended.code(),
            Void::Trouble(..) => "trouble",
            Void::TroubleUnknown(..) => "trouble-unknown",
            Void::IndicatorUnfit => "indicator-unfit",
            Void::ProverUnfit => "prover-unfit",
            Void::TestTwice => "test-twice",
            Void::HeldAgainstNothing => "held-against-nothing",
            Void::Way(..) => "way",
            Void::Newer => "newer",
            Void::Forgotten => "forgotten",
            Void::SourceKnown { .. } => "source-known",
            Void::SourceFound { .. } => "source-found",
            Void::Network { .. } => "network",
            Void::ZoneUnsaid => "zone-unsaid",
            Void::Aside { .. } => "aside",
            Void::LightsLate => "lights-late",
            Void::ProverUnknown => "prover-unknown",
            Void::NotThisShift => "not-this-shift",
            Void::ClockDoubt => "clock-doubt",
            Void::TooOld => "too-old",
        }
    }
}
