//! In which order to put points back, so that no zone that somebody still has locked gets a supply from it.
//!
//! First what has to open again opens, because that can feed nothing; then points close from the sources outwards, so that each one closes
//! onto parts that hang on nothing else. Opening first, every step in between has no more closed links than the last one: if the end
//! feeds no locked zone, no step does.

use super::check::{Flood, Locks};
use super::model::{NodeKind, Position};
use super::network::{Network, NetworkFault, SupplyError};
use super::supplied::{States, closed};
use super::told::{Named, Path, path};

/// A job that holds a zone.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Held {
    /// What it is called in sentences.
    pub job: String,
    /// Its work zone: ids of nodes and links.
    pub zone: Vec<String>,
    /// The links on which it has locks of its own.
    pub own: Vec<String>,
    /// The links that it counts on and on which others have locks.
    pub shared: Vec<String>,
}

/// The order, or why there is none.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Restore {
    /// One step after the other; watch each before the next.
    Steps(Vec<RestoreStep>),
    /// No order puts all of it back.
    Refused {
        /// Why, each reason once.
        why: Vec<StaysOpen>,
    },
}

/// Why points have to stay open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StaysOpen {
    /// A link still has a lock.
    Locked {
        /// The link.
        link: String,
        /// The job that counts on the lock.
        job: String,
    },
    /// A locked zone would get a supply, or has one.
    Fed {
        /// The job whose zone it is.
        job: String,
        /// Whether it has one as all stands now.
        already: bool,
        /// The path on which.
        path: Path,
    },
}

/// One step of an order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RestoreStep {
    /// The link.
    pub link: String,
    /// Where it goes.
    pub to: Position,
    /// The nodes that get a supply from it.
    pub feeds: Vec<Named>,
    /// What to look out for.
    pub caution: Option<Caution>,
}

/// What to look out for when a link is closed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Caution {
    /// It joins two supplies.
    Joins {
        /// The source on one side.
        first: String,
        /// The source on the other side.
        then: String,
    },
    /// Neither side has a supply yet.
    NoSupply,
}

/// Orders the way of these links to where they shall be, from how all stand now.
///
/// `now` holds what does not stand as it normally does. `held`: the zones that others still have locked; a link that one of them has locked
/// counts as open, and cannot be closed.
pub fn restore(network: &Network, now: &States, wanted: &States, held: &[Held]) -> Result<Restore, SupplyError> {
    let mut on = closed(network, now)?;
    let target = closed(network, wanted)?;
    let ids: Vec<&String> = wanted.keys().collect();
    let (links, _) = network.find_links(&ids);
    for &link in &links {
        let part = &network.links()[link];
        if !part.kind.switches() {
            return Err(SupplyError::whole(NetworkFault::NotSwitched { id: part.id.clone(), kind: part.kind }));
        }
    }
    let mut locked = vec![None; network.links().len()];
    for holder in held {
        let locks: Vec<&String> = holder.own.iter().chain(&holder.shared).collect();
        for (link, stops) in Locks::read(network, &locks).stops.into_iter().enumerate() {
            if stops {
                on[link] = false;
                locked[link].get_or_insert(holder);
            }
        }
    }
    let mut why = Vec::new();
    let mut after = on.clone();
    for &link in &links {
        after[link] = target[link];
        if let (true, Some(holder)) = (target[link], locked[link]) {
            why.push(StaysOpen::Locked { link: network.links()[link].id.clone(), job: holder.job.clone() });
            after[link] = false;
        }
    }
    for holder in held {
        for (already, state) in [(true, &on), (false, &after)] {
            if let Some(path) = fed(network, holder, state)? {
                why.push(StaysOpen::Fed { job: holder.job.clone(), already, path });
                break;
            }
        }
    }
    if !why.is_empty() {
        return Ok(Restore::Refused { why });
    }
    let mut steps = Vec::new();
    for &link in links.iter().filter(|link| on[**link] && !target[**link]) {
        steps.push(step(network, link, Position::Open, &[], None));
    }
    for &link in &links {
        on[link] &= target[link];
    }
    let open: Vec<usize> = links.iter().copied().filter(|link| target[*link] && !on[*link]).collect();
    close(network, on, open, &mut steps);
    Ok(Restore::Steps(steps))
}

/// The way on which a held zone gets a supply over closed links, if there is one.
fn fed(network: &Network, holder: &Held, on: &[bool]) -> Result<Option<Path>, SupplyError> {
    let zone = network.zone(&holder.zone)?;
    let stops: Vec<bool> = on.iter().map(|on| !on).collect();
    let flood = Flood::of(network, &zone, &stops);
    let Some(&source) = flood.sources.first() else { return Ok(None) };
    Ok(Some(path(network, source, &flood.way(source), &vec![false; on.len()])))
}

/// Closes what is left: always the first link, in the network's order, that has a supply on one side; at last those that have none.
fn close(network: &Network, mut on: Vec<bool>, mut left: Vec<usize>, steps: &mut Vec<RestoreStep>) {
    let nodes = network.nodes();
    // Which source feeds each node; the first one that does.
    let mut by: Vec<Option<usize>> = vec![None; nodes.len()];
    let sources = (0..nodes.len()).filter(|i| nodes[*i].kind == NodeKind::Source);
    for source in sources {
        spread(network, &on, &mut by, source, source);
    }
    while !left.is_empty() {
        let fed = |link: usize| network.ends(link).map(|end| by[end]);
        // Onto dead parts first; what joins two live parts comes when nothing else is left.
        let place = left
            .iter()
            .position(|link| matches!(fed(*link), [Some(_), None] | [None, Some(_)]))
            .or_else(|| left.iter().position(|link| fed(*link).iter().all(Option::is_some)))
            .unwrap_or(0);
        let link = left.remove(place);
        let sides = fed(link);
        on[link] = true;
        let mut fresh = Vec::new();
        let mut caution = None;
        match sides {
            [Some(a), Some(b)] if a != b => {
                caution = Some(Caution::Joins { first: nodes[a].id.clone(), then: nodes[b].id.clone() });
            }
            [Some(_), Some(_)] => {}
            [None, None] => caution = Some(Caution::NoSupply),
            [a, b] => {
                let end = network.ends(link)[usize::from(a.is_some())];
                fresh = spread(network, &on, &mut by, end, a.or(b).unwrap_or_default());
            }
        }
        steps.push(step(network, link, Position::Closed, &fresh, caution));
    }
}

/// Notes that `source` feeds `from` and all that hangs on it. Returns the nodes that had no supply before.
fn spread(network: &Network, on: &[bool], by: &mut [Option<usize>], from: usize, source: usize) -> Vec<usize> {
    if by[from].is_some() {
        return Vec::new();
    }
    by[from] = Some(source);
    let mut fresh = vec![from];
    let mut next = 0;
    while next < fresh.len() {
        for step in network.around(fresh[next]) {
            let to = step.to as usize;
            if on[step.link as usize] && by[to].is_none() {
                by[to] = Some(source);
                fresh.push(to);
            }
        }
        next += 1;
    }
    fresh
}

fn step(network: &Network, link: usize, to: Position, fresh: &[usize], caution: Option<Caution>) -> RestoreStep {
    let feeds = fresh.iter().map(|node| Named::from(&network.nodes()[*node])).collect();
    RestoreStep { link: network.links()[link].id.clone(), to, feeds, caution }
}
