//! Which jobs a change touches: a lock that comes off, a tie that is closed, a source that is found.
//!
//! A job counts on its own locks, and on those of others at points that it shares. Each job's check before the change is held against
//! that after it; what only got worse elsewhere is not told.

use super::check::{Check, check};
use super::model::{Link, Node};
use super::network::{Network, SupplyError};
use super::restore::Held;

/// What changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// A job takes its lock off a link.
    LockRemoved {
        /// The link.
        link: String,
        /// The job, by its place in the list.
        by: usize,
    },
    /// A link is closed, whoever had it locked.
    Closed {
        /// The link.
        link: String,
    },
    /// Parts were found, or turned out to be something else: a node or link with a known id goes in its place.
    Found {
        /// The nodes.
        nodes: Vec<Node>,
        /// The links.
        links: Vec<Link>,
    },
}

/// A job that a change touches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Touched {
    /// The job, by its place in the list.
    pub job: usize,
    /// What it is called.
    pub name: String,
    /// What was shown before.
    pub before: Check,
    /// What is shown after it.
    pub after: Check,
}

/// The jobs whose zone a change opens a path to, or makes doubtful, in the order of the list.
///
/// A job whose answer stays the same, or gets better, is not in it; one that was not cut before is, if the change adds a path.
pub fn touched(network: &Network, jobs: &[Held], change: &Change) -> Result<Vec<Touched>, SupplyError> {
    let after = match change {
        Change::Found { nodes, links } => grown(network, nodes, links)?,
        _ => network.clone(),
    };
    let mut touched = Vec::new();
    // Who named no work zone counts on nothing; their locks may still be counted on by others.
    for (job, held) in jobs.iter().enumerate().filter(|(_, held)| !held.zone.is_empty()) {
        let before = check(network, &held.zone, &counted(jobs, held, None))?;
        let after = check(&after, &held.zone, &counted(jobs, held, Some(change)))?;
        let closed = match change {
            // What was open, and kept it from being live, though nothing had it locked.
            Change::Closed { link } => after.paths.iter().any(|p| p.way.contains(link)),
            _ => false,
        };
        let worse = after.paths.iter().any(|p| !before.paths.iter().any(|b| b.way == p.way))
            || after.not_shown.iter().any(|d| !before.not_shown.contains(d));
        if closed || worse {
            touched.push(Touched { job, name: held.job.clone(), before, after });
        }
    }
    Ok(touched)
}

/// The links that `job` may count on as locked, once a change is made.
fn counted(jobs: &[Held], job: &Held, change: Option<&Change>) -> Vec<String> {
    let owns = |place: usize, link: &String| {
        let off = matches!(change, Some(Change::LockRemoved { link: l, by }) if l == link && *by == place);
        jobs[place].own.contains(link) && !off
    };
    let closed = |link: &String| matches!(change, Some(Change::Closed { link: l }) if l == link);
    let own = job.own.iter().chain(&job.shared);
    let mut counted: Vec<String> =
        own.filter(|link| !closed(link) && (0..jobs.len()).any(|place| owns(place, link))).cloned().collect();
    counted.sort();
    counted.dedup();
    counted
}

/// The network with what was found.
fn grown(network: &Network, nodes: &[Node], links: &[Link]) -> Result<Network, SupplyError> {
    let mut all_nodes = network.described().to_vec();
    for node in nodes {
        match all_nodes.iter_mut().find(|n| n.id == node.id) {
            Some(known) => *known = node.clone(),
            None => all_nodes.push(node.clone()),
        }
    }
    let mut all_links = network.links().to_vec();
    for link in links {
        match all_links.iter_mut().find(|l| l.id == link.id) {
            Some(known) => *known = link.clone(),
            None => all_links.push(link.clone()),
        }
    }
    Network::new(all_nodes, all_links)
}
