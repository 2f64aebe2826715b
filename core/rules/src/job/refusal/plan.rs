//! What is planned: people, sources, points, tags, limits, steps that are passed over.

use crate::journal::EntryId;
use crate::journal::fact::Limit;

/// Why something of the plan is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanRefusal {
    /// Another person in charge while locks are on.
    ChargeWithLocks,
    /// Another duty for the person in charge while locks are on.
    ChargeLeftWithLocks,
    /// Who leaves still has a lock on.
    LeavesLock {
        /// Who.
        person: EntryId,
        /// What it is on; `None` if that is not known here.
        place: Option<String>,
    },
    /// Who leaves is in charge.
    LeavesCharge {
        /// Who.
        person: EntryId,
    },
    /// A wait for stored energy below what its label or the table asks.
    WaitShort {
        /// What it asks, in seconds.
        least: u32,
    },
    /// What stays live, where, and how it is screened.
    StaysLiveUnsaid,
    /// A conductor that lies behind a point, or is of the normal supply.
    MayNotStayLive {
        /// Which.
        conductor: String,
    },
    /// A control device as a point.
    ControlDevice,
    /// A point that looks like one of this job.
    PointAlike {
        /// The other's label.
        label: String,
    },
    /// A point of the site that is not known there.
    PointNotOfSite,
    /// A point that opens nothing.
    NoPoles,
    /// A point that opens the protective conductor.
    OpensProtective {
        /// The conductor.
        conductor: String,
    },
    /// No such point for a tag.
    NoPointForTag,
    /// A tag that hangs there already.
    TagHangs {
        /// The point's label.
        at: String,
    },
    /// A point that had the most tags.
    TagsMost {
        /// The point's label.
        at: String,
        /// The most.
        most: usize,
    },
    /// What became of a tag.
    TagGoneUnsaid,
    /// A tag that does not hang there.
    TagNotThere {
        /// The point's label.
        at: String,
    },
    /// A step that lacks nothing.
    NothingToPass,
    /// A step that cannot be passed over.
    CannotPass,
    /// A limit by somebody who is not in charge.
    LimitNotInCharge,
    /// A limit above that of the company's rules.
    LimitAboveCompany {
        /// Theirs.
        limit: Limit,
    },
    /// Where somebody looked who found nothing.
    LookedUnsaid,
    /// Terminals of something that is no control supply.
    OnlyControl,
    /// A control supply without terminals.
    NoTerminals,
    /// A terminal that cannot have this name.
    TerminalName {
        /// The name.
        name: String,
    },
    /// Too many terminals of one control supply.
    TerminalsMost {
        /// The most.
        most: usize,
    },
    /// More conductors than are tested together.
    ConductorsMost,
    /// A control supply of no voltage.
    NoControlVoltage,
    /// A source that is not known beside this job.
    SourceNotKnown,
    /// Not two points that can be parted.
    NotTwoPoints,
    /// No such entry is put aside.
    NotAside,
}
