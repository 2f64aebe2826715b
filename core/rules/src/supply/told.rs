//! What the answers tell of parts, paths and faults: values. The room for text words them.

use super::model::{LeftJoined, Link, LinkKind, Node, NodeKind, Position, SourceSort};
use super::network::Network;

/// A part as the answers name it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Its id.
    pub id: String,
    /// What is written on it; may be empty, or the id again.
    pub label: String,
}

impl From<&Node> for Named {
    fn from(node: &Node) -> Named {
        Named { id: node.id.clone(), label: node.label.clone() }
    }
}

impl From<&Link> for Named {
    fn from(link: &Link) -> Named {
        Named { id: link.id.clone(), label: link.label.clone() }
    }
}

/// A part of which nobody knows enough.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Doubt {
    /// The part, or the id that was given.
    pub id: String,
    /// Why.
    pub why: Doubtful,
}

/// Why a part keeps the answer from being "cut".
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Doubtful {
    /// A lock on a link of an unknown kind.
    LockUntraced {
        /// The link.
        link: Named,
    },
    /// A lock on what parts nothing.
    LockPartsNothing {
        /// The link.
        link: Named,
        /// What it is.
        kind: LinkKind,
    },
    /// A lock on what takes none.
    TakesNoLock {
        /// The link.
        link: Named,
    },
    /// A lock on what leaves conductors joined.
    LeavesJoined {
        /// The link.
        link: Named,
        /// What stays joined.
        left: LeftJoined,
    },
    /// A lock on a node.
    LockOnNode {
        /// The id that was given.
        id: String,
        /// What the node is.
        kind: NodeKind,
    },
    /// A lock on what is not in the network.
    LockNowhere {
        /// The id that was given.
        id: String,
    },
    /// Nobody knows what a node is.
    NodeUnknown {
        /// The node.
        node: Named,
    },
    /// A link names a node that nobody described.
    NodeUndescribed {
        /// The node.
        node: Named,
    },
    /// Something at a node was not traced.
    NodeUntraced {
        /// The node.
        node: Named,
        /// What.
        what: String,
    },
    /// Nobody traced a link.
    LinkUntraced {
        /// The link.
        link: Named,
        /// The node at one end.
        from: String,
        /// The node at the other end.
        to: String,
    },
}

/// An uncovered path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Path {
    /// The source, each link on the way that is not a cable, and the part of the zone that it reaches.
    pub ids: Vec<String>,
    /// All nodes and links on the way, in turn, from the source to the zone.
    pub way: Vec<String>,
    /// The source.
    pub source: Named,
    /// Which sort of source.
    pub sort: SourceSort,
    /// The part of the zone that it reaches; `None` if the source itself is in the zone.
    pub to: Option<Named>,
    /// Each link on the way that is not a cable.
    pub over: Vec<Over>,
}

/// A link on an uncovered path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Over {
    /// The link.
    pub link: Named,
    /// What it is.
    pub kind: LinkKind,
    /// Where it normally stands.
    pub normally: Position,
    /// What is to say of a lock.
    pub lock: OverLock,
}

/// Why no lock stops a path at a link.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OverLock {
    /// One is on it and does not count.
    CountsNot,
    /// It takes none.
    TakesNone,
    /// None is on it.
    Off,
}

/// Something that keeps a work zone from being cut, and that somebody may have answered for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Uncut {
    /// A path that no lock cuts.
    Way(Path),
    /// A part of which nobody knows enough.
    Doubt(Doubtful),
    /// The zone is named, and not in the network any more.
    ZoneGone {
        /// The zone.
        zone: Vec<String>,
    },
}

/// Why a lock that was given on this link does not count; `None` if it does.
pub(super) fn lock_counts_not(link: &Link) -> Option<Doubtful> {
    let name = Named::from(link);
    if link.kind == LinkKind::Unknown {
        return Some(Doubtful::LockUntraced { link: name });
    }
    if !link.kind.parts() {
        return Some(Doubtful::LockPartsNothing { link: name, kind: link.kind });
    }
    if !link.lockable {
        return Some(Doubtful::TakesNoLock { link: name });
    }
    link.left_joined().map(|left| Doubtful::LeavesJoined { link: name, left })
}

/// What to tell of an id that was given as locked and that no link has.
pub(super) fn no_such_lock(network: &Network, id: &str) -> Doubtful {
    let id = id.to_owned();
    match network.node(&id) {
        Some(node) => Doubtful::LockOnNode { id, kind: node.kind },
        None => Doubtful::LockNowhere { id },
    }
}

/// Why nobody knows enough of a node that can be reached, and of which that is so.
pub(super) fn node_unknown(network: &Network, at: usize) -> Doubtful {
    let part = &network.nodes()[at];
    let node = Named::from(part);
    match (part.kind, network.is_described(at)) {
        (NodeKind::Unknown, true) => Doubtful::NodeUnknown { node },
        (NodeKind::Unknown, false) => Doubtful::NodeUndescribed { node },
        _ => Doubtful::NodeUntraced { node, what: part.untraced.clone() },
    }
}

/// Why nobody knows enough of a link of an unknown kind.
pub(super) fn link_unknown(link: &Link) -> Doubtful {
    Doubtful::LinkUntraced { link: Named::from(link), from: link.from.clone(), to: link.to.clone() }
}

/// A way as an uncovered path. A source that is the zone itself has no step. `given`: the links on which a lock was given.
pub(super) fn path(network: &Network, source: usize, way: &[(usize, usize)], given: &[bool]) -> Path {
    let from = &network.nodes()[source];
    let to = way.last().map(|(_, end)| &network.nodes()[*end]);
    let (mut ids, mut all, mut over) = (vec![from.id.clone()], vec![from.id.clone()], Vec::new());
    for &(link, node) in way {
        let part = &network.links()[link];
        if part.kind != LinkKind::Cable {
            ids.push(part.id.clone());
            over.push(on_way(part, given[link]));
        }
        all.extend([part.id.clone(), network.nodes()[node].id.clone()]);
    }
    ids.extend(to.map(|node| node.id.clone()));
    Path { ids, way: all, source: Named::from(from), sort: from.sort, to: to.map(Named::from), over }
}

fn on_way(link: &Link, given: bool) -> Over {
    let lock = match (given, link.kind.parts() && link.lockable) {
        (true, _) => OverLock::CountsNot,
        (false, false) => OverLock::TakesNone,
        (false, true) => OverLock::Off,
    };
    Over { link: Named::from(link), kind: link.kind, normally: link.normally, lock }
}
