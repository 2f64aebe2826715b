//! The points to lock: fewest circuits lost, fewest locks, and what lies between.

use super::check::{Check, MAX_DOUBTS, check};
use super::front::{FrontCut, front};
use super::islands::{BEYOND, Bare, Islands};
use super::network::{Network, SupplyError};
use super::supplied::{States, Supplied};
use super::told::{Doubt, Path, path};

/// How many steps over links the search between the two ends may take: about half a second.
const WORK: u64 = 30_000_000;
/// The most proposals that are told.
const MAX_PROPOSALS: usize = 50;

/// The answer to what could be locked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposals {
    /// The work zone as it was asked for.
    pub zone: Vec<String>,
    /// The cuts that are worth weighing: fewest circuits lost first, fewest locks last. Empty: nothing that takes a lock cuts the zone.
    pub proposals: Vec<Proposal>,
    /// Whether these are all. The first always loses the fewest circuits and the last always has the fewest locks.
    pub complete: bool,
    /// Where nothing cuts the zone: a path on which nothing takes a lock.
    pub bare: Option<Path>,
    /// Where what nobody knows enough of cannot be cut off: those parts. Every proposal is then "not shown".
    pub not_shown: Vec<Doubt>,
}

/// One set of points to lock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposal {
    /// The links to be locked open, in the network's order.
    pub lock: Vec<String>,
    /// What stops in each circuit that is lost, in the network's order; the work zone's own circuits are among them.
    pub loses: Vec<String>,
    /// Those circuits' ids.
    pub circuits: Vec<String>,
    /// Who must be told before, each once.
    pub tell: Vec<String>,
    /// What it is the best in.
    pub why: Worth,
    /// What [`check`] says with these points locked.
    pub check: Check,
}

/// What a proposal is worth beside the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Worth {
    /// Both the fewest circuits lost and the fewest locks.
    Best,
    /// The fewest circuits lost.
    FewestLost,
    /// The fewest locks.
    FewestLocks,
    /// It lies between the two.
    Between,
}

impl Proposal {
    /// How many locks it takes.
    pub fn locks(&self) -> usize {
        self.lock.len()
    }
}

/// Proposes which links to lock open so that no source reaches `zone`. `states`: where links stand now, which decides what has a supply to lose.
///
/// Exact: the first proposal loses the fewest circuits (and has the fewest locks of those, if `complete`), the last has the fewest locks (and of
/// those loses the fewest circuits). Between them everything that no other proposal beats in both, if `complete`.
pub fn propose<Z: AsRef<str>>(network: &Network, zone: &[Z], states: &States) -> Result<Proposals, SupplyError> {
    let nodes = network.zone(zone)?;
    let supplied = Supplied::new(network, states)?;
    // What nobody knows enough of may be a source. Only where that cannot be cut off, the known sources alone are.
    let strict = Islands::of(network, &nodes, true);
    let islands = match strict {
        Ok(islands) => Ok(islands),
        Err(_) => Islands::of(network, &nodes, false),
    };
    let mut answer = Proposals {
        zone: zone.iter().map(|id| id.as_ref().to_owned()).collect(),
        proposals: Vec::new(),
        complete: true,
        bare: None,
        not_shown: Vec::new(),
    };
    let islands = match islands {
        Ok(islands) => islands,
        Err(Bare { source, way }) => {
            answer.bare = Some(path(network, source, &way, &vec![false; network.links().len()]));
            return Ok(answer);
        }
    };
    let off = |inside: &[bool], node: usize| match islands.of[node] {
        BEYOND => false,
        island => inside[island as usize],
    };
    let steps = (network.nodes().len() + 2 * network.links().len()) as u64;
    let found = front(&islands, |inside| supplied.circuits_lost(|node| off(inside, node)), steps, WORK);
    answer.complete = found.complete && found.cuts.len() <= MAX_PROPOSALS;
    let count = found.cuts.len();
    for (i, cut) in found.cuts.iter().enumerate() {
        // Both ends are always told.
        if i + 1 >= MAX_PROPOSALS && i + 1 < count {
            continue;
        }
        let lost = supplied.lost(|node| off(&cut.inside, node));
        answer.proposals.push(proposal(network, zone, cut, &lost, worth(i, count))?);
    }
    if let Some(first) = answer.proposals.first() {
        answer.not_shown = first.check.not_shown.clone();
        answer.not_shown.retain(|doubt| answer.proposals.iter().all(|p| p.check.not_shown.contains(doubt)));
        answer.not_shown.truncate(MAX_DOUBTS);
    }
    Ok(answer)
}

fn worth(place: usize, count: usize) -> Worth {
    match (place, place + 1 == count) {
        (0, true) => Worth::Best,
        (0, false) => Worth::FewestLost,
        (_, true) => Worth::FewestLocks,
        _ => Worth::Between,
    }
}

fn proposal<Z: AsRef<str>>(
    network: &Network,
    zone: &[Z],
    cut: &FrontCut,
    lost: &[usize],
    why: Worth,
) -> Result<Proposal, SupplyError> {
    let lock: Vec<String> = cut.locks.iter().map(|link| network.links()[*link].id.clone()).collect();
    let lost: Vec<_> = lost.iter().map(|node| &network.nodes()[*node]).collect();
    let mut tell: Vec<String> = Vec::new();
    for who in lost.iter().flat_map(|node| &node.tell) {
        if !tell.contains(who) {
            tell.push(who.clone());
        }
    }
    let circuits = lost.iter().filter(|node| node.is_circuit());
    Ok(Proposal {
        check: check(network, zone, &lock)?,
        loses: circuits.clone().map(|node| node.stopping().to_owned()).collect(),
        circuits: circuits.map(|node| node.id.clone()).collect(),
        lock,
        tell,
        why,
    })
}
