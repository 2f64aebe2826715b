//! Uncovered paths besides those that a person has answered for.
//!
//! [`super::check`] tells some paths, not all: two that share their points are told as one. Who says of one path that it does not count has
//! said nothing of another that runs over the same points in part. So each answer is held against all paths: one that was not answered
//! leaves the answered ones somewhere, and every place where it could is tried.

use std::collections::{HashMap, HashSet};

use super::check::{Locks, MAX_PATHS};
use super::network::{Network, SupplyError};
use super::told::{Path, path};

/// Uncovered paths from sources to `zone` that are not in `answered` (ways as in [`Path::way`]), with the links `locked` locked open; at most
/// [`MAX_PATHS`], and none only if every path without a detour through a part twice, or through the zone, is answered.
///
/// Takes time with the size of the network times the length of all answered ways.
pub fn paths_besides<Z: AsRef<str>, L: AsRef<str>>(
    network: &Network,
    zone: &[Z],
    locked: &[L],
    answered: &[Vec<String>],
) -> Result<Vec<Path>, SupplyError> {
    let zone = network.zone(zone)?;
    let locks = Locks::read(network, locked);
    let search = BesideSearch { network, locks: &locks, zone: zone.iter().copied().collect() };
    let mut found: Vec<Path> = Vec::new();
    let mut told: HashSet<Vec<String>> = answered.iter().cloned().collect();
    let tree = SearchTree::of(&told);
    let mut prefixes: Vec<Vec<usize>> = zone.iter().map(|node| vec![*node]).collect();
    // Numbers of links and nodes in turn, from the zone outwards; each that answered ways begin with is gone on from.
    while let Some(prefix) = prefixes.pop() {
        let ids = search.ids(&prefix);
        let taken = tree.next.get(&ids);
        for (link, node) in search.steps(&prefix) {
            let next: Vec<usize> = prefix.iter().copied().chain([link, node]).collect();
            let step = (network.links()[link].id.clone(), network.nodes()[node].id.clone());
            if taken.is_some_and(|taken| taken.contains(&step)) {
                prefixes.push(next);
            } else if let Some(way) = search.to_source(next) {
                search.tell(&way, &mut told, &mut found);
            }
            if found.len() >= MAX_PATHS {
                return Ok(found);
            }
        }
        // The way may end here as well.
        if network.is_source(prefix[prefix.len() - 1]) {
            search.tell(&prefix, &mut told, &mut found);
        }
    }
    Ok(found)
}

/// The answered ways from the zone outwards: after which ids which link and node come next.
struct SearchTree {
    next: HashMap<Vec<String>, HashSet<(String, String)>>,
}

impl SearchTree {
    fn of(ways: &HashSet<Vec<String>>) -> SearchTree {
        let mut next: HashMap<Vec<String>, HashSet<(String, String)>> = HashMap::new();
        for way in ways {
            let out: Vec<String> = way.iter().rev().cloned().collect();
            for end in (1..out.len().saturating_sub(1)).step_by(2) {
                next.entry(out[..end].to_vec()).or_default().insert((out[end].clone(), out[end + 1].clone()));
            }
        }
        SearchTree { next }
    }
}

struct BesideSearch<'a> {
    network: &'a Network,
    locks: &'a Locks,
    zone: HashSet<usize>,
}

impl BesideSearch<'_> {
    /// The ids of node, link, node and so on.
    fn ids(&self, prefix: &[usize]) -> Vec<String> {
        let id = |(i, n): (usize, &usize)| match i % 2 {
            0 => self.network.nodes()[*n].id.clone(),
            _ => self.network.links()[*n].id.clone(),
        };
        prefix.iter().enumerate().map(id).collect()
    }

    /// The links on which a way can go on, and where they lead.
    fn steps(&self, prefix: &[usize]) -> Vec<(usize, usize)> {
        let been: HashSet<usize> = prefix.iter().step_by(2).copied().collect();
        let around = self.network.around(prefix[prefix.len() - 1]).iter();
        around
            .map(|step| (step.link as usize, step.to as usize))
            .filter(|(link, to)| !self.locks.stops[*link] && !been.contains(to) && !self.zone.contains(to))
            .collect()
    }

    /// The shortest way on from a prefix to a source, if there is one that crosses neither it nor the zone.
    fn to_source(&self, prefix: Vec<usize>) -> Option<Vec<usize>> {
        let mut from: HashMap<usize, (usize, usize)> = HashMap::new();
        let mut seen: HashSet<usize> = prefix.iter().step_by(2).copied().collect();
        let start = prefix[prefix.len() - 1];
        let mut open = vec![start];
        let mut next = 0;
        while next < open.len() {
            let node = open[next];
            next += 1;
            if self.network.is_source(node) {
                let mut rest = Vec::new();
                let mut at = node;
                while let Some(&(link, before)) = from.get(&at) {
                    rest.extend([at, link]);
                    at = before;
                }
                return Some(prefix.into_iter().chain(rest.into_iter().rev()).collect());
            }
            for step in self.network.around(node) {
                let (link, to) = (step.link as usize, step.to as usize);
                if !self.locks.stops[link] && !self.zone.contains(&to) && seen.insert(to) {
                    from.insert(to, (link, node));
                    open.push(to);
                }
            }
        }
        None
    }

    fn tell(&self, out: &[usize], told: &mut HashSet<Vec<String>>, found: &mut Vec<Path>) {
        let mut way: Vec<(usize, usize)> = Vec::new();
        let source = out[out.len() - 1];
        let mut rest = out;
        while let [before @ .., node, link, _] = rest {
            way.push((*link, *node));
            rest = &rest[..before.len() + 1];
        }
        let path = path(self.network, source, &way, &self.locks.given);
        if told.insert(path.way.clone()) {
            found.push(path);
        }
    }
}
