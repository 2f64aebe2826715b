//! A single-line diagram of a network, and what it shows part by part.
//!
//! Sources are on top, each part below what feeds it; loads that hang on one board alone are listed below it. Position, lock and an uncovered
//! path are told by shape and word; colour only repeats it. The same network gives the same drawing. The steps: `tree` says what hangs
//! below what, `place` where it is, `paint` and `symbol` draw it, `words` tells it. What
//! is written beside names is a [`Label`]: whoever asks for a drawing words it, and the room that it takes follows.

mod paint;
mod place;
mod symbol;
mod text;
mod tree;
mod words;

use std::collections::HashSet;

pub use words::{DrawnPart, DrawnWay, Outline};

use super::check::{Check, Locks};
use super::model::{LinkKind, NodeKind};
use super::network::Network;
use super::supplied::{States, closed};
use stillbar_values::drawing::Drawing;

/// The most nodes in one drawing; of a larger network the part nearest to the work zone is drawn.
pub const MAX_DRAWN: usize = 80;
/// The most links in one drawing.
pub const MAX_DRAWN_LINKS: usize = 240;

/// What a drawing shows beside the network. All of it may be empty.
#[derive(Debug, Clone, Default)]
pub struct Shown<'a> {
    /// The work zone: ids of nodes or links.
    pub zone: &'a [String],
    /// Links that are locked open.
    pub locked: &'a [String],
    /// Where links stand now, by their ids; those that are not in it stand as they normally do.
    pub states: &'a [(String, super::Position)],
    /// What [`super::check`] says: its uncovered paths and doubts are marked.
    pub check: Option<&'a Check>,
}

/// What is written in a drawing beside names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Label {
    /// Only a part of the network is drawn.
    Part {
        /// How many nodes are drawn.
        drawn: usize,
        /// How many there are.
        all: usize,
    },
    /// What a link is and how it stands.
    Link {
        /// What it is.
        kind: LinkKind,
        /// How it stands, if it has positions.
        stands: Stands,
    },
    /// A link that would part the conductors takes no lock.
    TakesNoLock,
    /// A link is on an uncovered path.
    Uncovered,
    /// A node is worked on.
    WorkZone,
    /// A source reaches the work zone.
    ReachesZone,
    /// Nobody knows enough of a node.
    NotTraced,
    /// Links at a node are left out.
    NotDrawn {
        /// How many.
        links: usize,
    },
}

/// How a link stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// Locked open.
    LockedOpen,
    /// Given as locked, and the lock does not count.
    LockCountsNot,
    /// Closed.
    Closed,
    /// Open, and not locked.
    Open,
}

/// Draws a network with labels in the words of `label`, and tells all that the drawing shows. Ids that are not in the network are left out.
pub fn draw(network: &Network, shown: &Shown, label: &dyn Fn(Label) -> String) -> (Drawing, Outline) {
    let scene = DrawnScene::of(network, shown, label);
    let mut plan = tree::plan(&scene);
    place::order(&mut plan);
    let size = place::place(&mut plan);
    (paint::paint(&scene, &plan, size), words::outline(&scene))
}

/// What is to be drawn, by numbers.
struct DrawnScene<'a> {
    network: &'a Network,
    /// The words of a label.
    label: &'a dyn Fn(Label) -> String,
    /// The nodes drawn, in the network's order.
    nodes: Vec<usize>,
    /// The links that are drawn between them.
    links: Vec<usize>,
    /// For each node of the network, how many of its links are not drawn.
    more: Vec<usize>,
    closed: Vec<bool>,
    /// Locked, and the lock counts.
    locked: Vec<bool>,
    /// Said to be locked.
    given: Vec<bool>,
    zone: HashSet<usize>,
    /// Nodes and links on uncovered paths.
    path_nodes: HashSet<usize>,
    path_links: HashSet<usize>,
}

impl<'a> DrawnScene<'a> {
    fn of(network: &'a Network, shown: &Shown, label: &'a dyn Fn(Label) -> String) -> DrawnScene<'a> {
        let known: Vec<&String> =
            shown.zone.iter().filter(|id| network.node(id).is_some() || network.link(id).is_some()).collect();
        let zone: HashSet<usize> = network.zone(&known).unwrap_or_default().into_iter().collect();
        let locks = Locks::read(network, shown.locked);
        let states: States = shown.states.iter().filter(|(id, _)| network.link(id).is_some()).cloned().collect();
        let closed = closed(network, &states).unwrap_or_default();
        let closed = closed.iter().zip(&locks.stops).map(|(closed, locked)| *closed && !locked).collect();
        // A node and a link may have one id: on a path they stand in turn, so those of links are the odd ones.
        let of_kind = |odd: usize| -> HashSet<&str> {
            let ways = shown.check.iter().flat_map(|c| &c.paths).map(|p| &p.way);
            ways.flat_map(|way| way.iter().skip(odd).step_by(2)).map(String::as_str).collect()
        };
        let (node_ids, link_ids) = (of_kind(0), of_kind(1));
        let number = |ids: HashSet<&str>, all: &mut dyn Iterator<Item = &'a String>| -> HashSet<usize> {
            all.enumerate().filter(|(_, id)| ids.contains(id.as_str())).map(|(i, _)| i).collect()
        };
        let path_nodes = number(node_ids, &mut network.nodes().iter().map(|n| &n.id));
        let path_links = number(link_ids, &mut network.links().iter().map(|l| &l.id));

        let nodes = chosen(network, &zone, &path_nodes);
        let links = between(network, &nodes, |link| path_links.contains(&link) || locks.given[link]);
        let mut more: Vec<usize> = (0..network.nodes().len()).map(|node| network.around(node).len()).collect();
        for end in links.iter().flat_map(|link| network.ends(*link)) {
            more[end] -= 1;
        }
        let (locked, given) = (locks.stops, locks.given);
        DrawnScene { network, label, nodes, links, more, closed, locked, given, zone, path_nodes, path_links }
    }

    /// How a link stands.
    fn stands(&self, link: usize) -> Stands {
        match (self.locked[link], self.given[link], self.closed[link]) {
            (true, ..) => Stands::LockedOpen,
            (_, true, _) => Stands::LockCountsNot,
            (.., true) => Stands::Closed,
            (.., false) => Stands::Open,
        }
    }

    /// Whether a link would part the conductors and takes no lock.
    fn takes_no_lock(&self, link: usize) -> bool {
        let part = &self.network.links()[link];
        part.kind.parts() && !part.lockable && !self.given[link]
    }

    /// Whether not all of the network is drawn.
    fn is_part(&self) -> bool {
        self.nodes.len() < self.network.nodes().len()
    }
}

/// The links to draw between these nodes, in the network's order: all, or first what matters, then what joins two parts that nothing joined
/// yet, then others.
fn between(network: &Network, nodes: &[usize], matters: impl Fn(usize) -> bool) -> Vec<usize> {
    let drawn: HashSet<usize> = nodes.iter().copied().collect();
    let mut links: Vec<usize> =
        (0..network.links().len()).filter(|l| network.ends(*l).iter().all(|e| drawn.contains(e))).collect();
    if links.len() > MAX_DRAWN_LINKS {
        let mut joined: HashSet<[usize; 2]> = HashSet::new();
        links.sort_by_cached_key(|link| {
            let mut ends = network.ends(*link);
            ends.sort_unstable();
            (!matters(*link), !joined.insert(ends), *link)
        });
        links.truncate(MAX_DRAWN_LINKS);
        links.sort_unstable();
    }
    links
}

/// The nodes to draw: all, or the zone, the uncovered paths, and what is nearest to them.
fn chosen(network: &Network, zone: &HashSet<usize>, paths: &HashSet<usize>) -> Vec<usize> {
    let count = network.nodes().len();
    if count <= MAX_DRAWN {
        return (0..count).collect();
    }
    let mut seen = vec![false; count];
    let mut order: Vec<usize> = Vec::new();
    let mut starts: Vec<usize> = zone.iter().chain(paths).copied().collect();
    starts.sort_unstable_by_key(|node| (!zone.contains(node), *node));
    if starts.is_empty() {
        let sources = (0..count).filter(|i| network.nodes()[*i].kind == NodeKind::Source);
        starts = sources.chain([0]).take(MAX_DRAWN / 4).collect();
    }
    for node in starts {
        if order.len() < MAX_DRAWN && !std::mem::replace(&mut seen[node], true) {
            order.push(node);
        }
    }
    let mut next = 0;
    while next < order.len() && order.len() < MAX_DRAWN {
        for step in network.around(order[next]) {
            let to = step.to as usize;
            if order.len() < MAX_DRAWN && !std::mem::replace(&mut seen[to], true) {
                order.push(to);
            }
        }
        next += 1;
    }
    order.sort_unstable();
    order
}
