//! Whether any path from any source reaches the work zone when these points are locked open.
//!
//! A path stops at a link that is locked open and made for it, and nowhere else. One flood from the zone answers; it takes time that grows
//! with the network alone. Each further flood looks for paths that would be left if the points of those found before were locked too.

use std::collections::HashSet;

use super::network::{Network, SupplyError};
use super::told::{Doubt, Path, link_unknown, lock_counts_not, no_such_lock, node_unknown, path};

/// The most uncovered paths that are told; there may be more.
pub const MAX_PATHS: usize = 100;
/// The most parts that are named as not shown; there may be more.
pub const MAX_DOUBTS: usize = 100;
/// How many parts the floods that look for further paths may go through in all: in a large network there are few of them.
const FURTHER: usize = 1_000_000;

/// The answer to a check.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Check {
    /// The work zone as it was asked for.
    pub zone: Vec<String>,
    /// Whether every path in the network is cut. Never where something is not shown.
    pub cut: bool,
    /// Parts that keep the answer from being "cut" whatever the paths are, at most [`MAX_DOUBTS`].
    pub not_shown: Vec<Doubt>,
    /// Uncovered paths, at most [`MAX_PATHS`]: the shortest of each source, then others.
    pub paths: Vec<Path>,
    /// How many sources reach the zone, those included whose paths are not listed.
    pub sources: usize,
}

/// Which of the three answers it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Every path in the network is cut.
    Cut,
    /// A path is left.
    NotCut,
    /// No path is left, and something is not known.
    NotShown,
}

impl Check {
    /// Which answer it is.
    pub fn answer(&self) -> Answer {
        match (self.cut, self.paths.is_empty()) {
            (true, _) => Answer::Cut,
            (false, false) => Answer::NotCut,
            (false, true) => Answer::NotShown,
        }
    }
}

/// Checks whether `zone` (ids of nodes, or of links to be worked on) is cut from every source with the links `locked` locked open.
///
/// An id in `locked` that means nothing is no error: it is not shown to cut. A zone that is not in the network is one.
pub fn check<Z: AsRef<str>, L: AsRef<str>>(network: &Network, zone: &[Z], locked: &[L]) -> Result<Check, SupplyError> {
    let zone_nodes = network.zone(zone)?;
    let locks = Locks::read(network, locked);
    let mut doubts = locks.doubts.clone();
    let mut flood = Flood::of(network, &zone_nodes, &locks.stops);
    doubts.extend(flood.doubts(network));
    let sources = flood.sources.len();

    let mut paths: Vec<Path> = Vec::new();
    let mut stops = locks.stops.clone();
    // Sources with a path on which nothing can be locked: there is no use in a second one.
    let mut bare = vec![false; network.nodes().len()];
    let mut left = FURTHER;
    loop {
        let mut found = Vec::new();
        for &source in flood.sources.iter().take(MAX_PATHS - paths.len()) {
            let way = flood.way(source);
            if std::mem::replace(&mut bare[source], !way.iter().any(|s| network.cuts(s.0))) {
                continue;
            }
            paths.push(path(network, source, &way, &locks.given));
            found.extend(way.iter().map(|s| s.0).filter(|link| network.cuts(*link)));
        }
        left = left.saturating_sub(network.nodes().len() + network.links().len());
        if found.is_empty() || paths.len() >= MAX_PATHS || left == 0 {
            break;
        }
        for link in found {
            stops[link] = true;
        }
        flood = Flood::of(network, &zone_nodes, &stops);
    }
    doubts.truncate(MAX_DOUBTS);
    Ok(Check {
        zone: zone.iter().map(|id| id.as_ref().to_owned()).collect(),
        cut: paths.is_empty() && doubts.is_empty(),
        not_shown: doubts,
        paths,
        sources,
    })
}

/// What was given as locked open, and what of it counts.
pub(super) struct Locks {
    /// Which links stop a path.
    pub stops: Vec<bool>,
    /// Which links were given, whether they stop a path or not.
    pub given: Vec<bool>,
    /// What does not count, and why.
    doubts: Vec<Doubt>,
}

impl Locks {
    pub fn read<L: AsRef<str>>(network: &Network, locked: &[L]) -> Locks {
        let count = network.links().len();
        let mut locks = Locks { stops: vec![false; count], given: vec![false; count], doubts: Vec::new() };
        let (found, missing) = network.find_links(locked);
        for i in found {
            let link = &network.links()[i];
            locks.given[i] = true;
            locks.stops[i] = link.cuts();
            if let Some(why) = lock_counts_not(link) {
                locks.doubts.push(Doubt { id: link.id.clone(), why });
            }
        }
        let mut told = HashSet::new();
        for id in missing.into_iter().map(|i| locked[i].as_ref()).filter(|id| told.insert(*id)) {
            locks.doubts.push(Doubt { id: id.to_owned(), why: no_such_lock(network, id) });
        }
        locks
    }
}

/// No link: a node of the zone itself, or one that was not reached.
const NONE: u32 = u32::MAX;

/// What is reached from the zone when some links stop.
pub(super) struct Flood {
    /// The step by which each node was reached, seen from the zone: link and the node before, or [`NONE`].
    from: Vec<[u32; 2]>,
    /// The nodes in the order in which they were reached.
    pub order: Vec<usize>,
    /// The sources among them.
    pub sources: Vec<usize>,
    reached: Vec<bool>,
}

impl Flood {
    pub fn of(network: &Network, zone: &[usize], stops: &[bool]) -> Flood {
        let count = network.nodes().len();
        let mut flood = Flood {
            from: vec![[NONE; 2]; count],
            order: zone.to_vec(),
            sources: Vec::new(),
            reached: vec![false; count],
        };
        for node in zone {
            flood.reached[*node] = true;
        }
        let mut next = 0;
        while next < flood.order.len() {
            let node = flood.order[next];
            next += 1;
            if network.is_source(node) {
                flood.sources.push(node);
            }
            for step in network.around(node) {
                let to = step.to as usize;
                if !stops[step.link as usize] && !std::mem::replace(&mut flood.reached[to], true) {
                    flood.from[to] = [step.link, node as u32];
                    flood.order.push(to);
                }
            }
        }
        flood
    }

    /// From a node to the zone: each link and the node behind it. No way to the zone is shorter.
    pub fn way(&self, node: usize) -> Vec<(usize, usize)> {
        let mut way = Vec::new();
        let mut at = node;
        while self.from[at][0] != NONE {
            let [link, to] = self.from[at];
            at = to as usize;
            way.push((link as usize, at));
        }
        way
    }

    /// The parts among those reached of which nobody knows enough, each once.
    fn doubts(&self, network: &Network) -> Vec<Doubt> {
        let mut doubts = Vec::new();
        let mut seen = HashSet::new();
        for &node in &self.order {
            if network.is_unknown(node) {
                let why = node_unknown(network, node);
                doubts.push(Doubt { id: network.nodes()[node].id.clone(), why });
            }
            // Nothing is known of such a link, so nothing stops at it either: both its ends are reached.
            for step in network.around(node).iter().filter(|step| network.is_unknown_link(step.link as usize)) {
                if seen.insert(step.link) {
                    let link = &network.links()[step.link as usize];
                    doubts.push(Doubt { id: link.id.clone(), why: link_unknown(link) });
                }
            }
            if doubts.len() >= MAX_DOUBTS {
                break;
            }
        }
        doubts
    }
}
