//! What the supply network has to say.

use crate::journal::EntryId;
use crate::supply::{Misfit, StaysOpen, Uncut};

/// Why something is refused by a site's network, or about it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NetworkRefusal {
    /// It is not about a site.
    NotOfSite,
    /// A node by the name of a link.
    LinkNamed {
        /// The id.
        id: String,
    },
    /// A link by the name of a node.
    NodeNamed {
        /// The id.
        id: String,
    },
    /// The parts would not fit together.
    Misfit(Misfit),
    /// No such part of the network that is noted.
    NotThere {
        /// The id.
        id: String,
    },
    /// How anybody knows that a part is not there.
    GoneUnsaid,
    /// A part that a lock is on.
    Locked {
        /// The lock's owner.
        owner: EntryId,
        /// The part's id.
        part: String,
        /// The title of the lock's job.
        job: String,
    },
    /// Rules beyond what any site may set: the most minutes.
    RulesTooWide {
        /// Between two proofs.
        between_proofs: u32,
        /// For a proof.
        proof_holds: u32,
    },
    /// No such part of the network that the job rests on.
    NotInNetwork {
        /// The id.
        id: String,
    },
    /// No network is drawn.
    NotDrawn,
    /// The link is a point of this job already.
    PointAlready {
        /// The link's id.
        link: String,
    },
    /// The zone is not cut.
    Way {
        /// What keeps it from being cut.
        why: Box<Uncut>,
    },
    /// A lock of another job holds the link.
    Held {
        /// The point's label.
        at: String,
        /// What is written on the lock.
        lock: String,
        /// Its owner.
        owner: EntryId,
        /// The title of its job.
        job: String,
    },
    /// The order of restoring does not allow it.
    NotYet {
        /// The point's label.
        at: String,
        /// Why.
        why: Vec<StaysOpen>,
    },
}
