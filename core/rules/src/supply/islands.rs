//! The network as cuts see it: what no lock can part is one island, and the points that take a lock lead from island to island.

use super::network::Network;

/// The island of the work zone.
pub(super) const ZONE: u32 = 0;
/// The island of all sources.
pub(super) const SOURCES: u32 = 1;
/// A node that cannot reach the zone except through a source.
pub(super) const BEYOND: u32 = u32::MAX;

/// Islands, numbered in the order in which they are reached from the zone.
pub(super) struct Islands {
    /// The island of each node, or [`BEYOND`].
    pub of: Vec<u32>,
    /// How many there are, [`ZONE`] and [`SOURCES`] included.
    pub count: usize,
    /// The points between them: two islands, and the link.
    pub points: Vec<(u32, u32, u32)>,
}

/// Why there are none: a source that nothing parts from the zone.
pub(super) struct Bare {
    /// The source, or what may be one.
    pub source: usize,
    /// From it to the zone: each link and the node behind it.
    pub way: Vec<(usize, usize)>,
}

/// Whether a node can make the zone live by itself: a source does; where `doubt` counts, so does whatever nobody knows enough of.
fn feeds(network: &Network, node: usize, doubt: bool) -> bool {
    let unknown = || {
        network.is_unknown(node) || network.around(node).iter().any(|step| network.is_unknown_link(step.link as usize))
    };
    network.is_source(node) || doubt && unknown()
}

impl Islands {
    /// Parts a network around the nodes of `zone`. Linear in its size.
    pub fn of(network: &Network, zone: &[usize], doubt: bool) -> Result<Islands, Bare> {
        let count = network.nodes().len();
        let mut islands = Islands { of: vec![BEYOND; count], count: 2, points: Vec::new() };
        let mut from: Vec<Option<(u32, u32)>> = vec![None; count];
        // The seeds of islands that are still to be filled; the zone is the first.
        let mut seeds: Vec<usize> = Vec::new();
        let mut next = 0;
        let mut island: Vec<usize> = zone.to_vec();
        let mut number = ZONE;
        loop {
            let known = seeds.len();
            for node in &island {
                islands.of[*node] = number;
            }
            let mut source = None;
            let mut at = 0;
            while at < island.len() {
                let node = island[at];
                at += 1;
                if feeds(network, node, doubt) {
                    source = source.or(Some(node));
                }
                for step in network.around(node) {
                    let to = step.to as usize;
                    if network.cuts(step.link as usize) {
                        seeds.push(to);
                    } else if islands.of[to] == BEYOND {
                        islands.of[to] = number;
                        from[to] = Some((step.link, node as u32));
                        island.push(to);
                    }
                }
            }
            if let (ZONE, Some(source)) = (number, source) {
                return Err(Bare { source, way: way(&from, source) });
            }
            if source.is_some() {
                // One with all other sources; what lies behind it reaches the zone through it.
                for node in &island {
                    islands.of[*node] = SOURCES;
                }
                seeds.truncate(known);
            } else if number != ZONE {
                islands.count += 1;
            }
            let Some(seed) = (next..seeds.len()).find(|i| islands.of[seeds[*i]] == BEYOND) else { break };
            next = seed + 1;
            island = vec![seeds[seed]];
            number = islands.count as u32;
        }
        for link in 0..network.links().len() {
            let [a, b] = network.ends(link).map(|end| islands.of[end]);
            if network.cuts(link) && a != b && a != BEYOND && b != BEYOND {
                islands.points.push((a, b, link as u32));
            }
        }
        Ok(islands)
    }
}

fn way(from: &[Option<(u32, u32)>], node: usize) -> Vec<(usize, usize)> {
    let mut way = Vec::new();
    let mut at = node;
    while let Some((link, to)) = from[at] {
        at = to as usize;
        way.push((link as usize, at));
    }
    way
}
