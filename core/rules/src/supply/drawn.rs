//! The network of one site as its journal tells it: what people noted, corrected and crossed out, in the journal's order.
//!
//! Merging phones can bring together what no single phone would have accepted. Whatever does not fit then is kept as a part of which
//! nobody knows enough, so that the answer becomes "not shown", never "cut".

use std::sync::Arc;

use super::{Link, LinkKind, Network, Node, NodeKind, States, SupplyError, Where};
use stillbar_journal::{Entry, Fact, Stamp};

/// The most nodes, and the most links, that are noted for one site.
pub const MAX_NOTED: usize = 2_000;

/// A site's network.
#[derive(Debug, Clone, Default)]
pub struct Drawn {
    nodes: Vec<Noted<Node>>,
    links: Vec<Noted<Link>>,
    states: States,
    network: Option<Arc<Network>>,
    since: Option<Stamp>,
}

/// Why parts do not fit into a site's network.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Misfit {
    /// More than [`MAX_NOTED`] of a kind.
    TooMany,
    /// They do not fit together.
    Apart(SupplyError),
}

/// A part as it is known now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Noted<P> {
    /// The entry that says so.
    pub stamp: Stamp,
    /// The part.
    pub part: P,
}

impl Drawn {
    /// Takes in an entry; entries about anything else change nothing here. They come in the journal's order.
    pub fn extend(&mut self, entry: &Entry) {
        let stamp = entry.stamp();
        if matches!(entry.body.fact, Fact::NodeNoted { .. } | Fact::LinkNoted { .. }) {
            self.since.get_or_insert(stamp);
        }
        match &entry.body.fact {
            Fact::NodeNoted { node } => put(&mut self.nodes, stamp, node.clone(), |n| &n.id),
            Fact::LinkNoted { link } => put(&mut self.links, stamp, link.clone(), |l| &l.id),
            Fact::PartGone { part, .. } => {
                self.nodes.retain(|n| n.part.id != *part);
                self.links.retain(|l| l.part.id != *part);
                self.states.remove(part);
            }
            Fact::LinkSeen { link, position } => {
                self.states.insert(link.clone(), *position);
            }
            _ => return,
        }
        self.network = None;
    }

    /// Since when there is a network: the entry that drew the first part of it.
    pub fn since(&self) -> Option<Stamp> {
        self.since
    }

    /// Whether nothing was noted.
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty() && self.links.is_empty()
    }

    /// The nodes, in the order in which they were first noted.
    pub fn nodes(&self) -> &[Noted<Node>] {
        &self.nodes
    }

    /// The links, in the order in which they were first noted.
    pub fn links(&self) -> &[Noted<Link>] {
        &self.links
    }

    /// Where links were last seen, by their ids; the others stand as they normally do.
    pub fn states(&self) -> &States {
        &self.states
    }

    /// The network, put together once after each change.
    pub fn network(&mut self) -> Arc<Network> {
        if let Some(network) = &self.network {
            return network.clone();
        }
        let network = Arc::new(self.join());
        self.network = Some(network.clone());
        network
    }

    /// Whether the network would still fit together with these parts in it.
    pub fn fits(&self, nodes: &[Node], links: &[Link]) -> Result<(), Misfit> {
        let mut with = self.clone();
        for node in nodes {
            put(&mut with.nodes, Stamp::NONE, node.clone(), |n| &n.id);
        }
        for link in links {
            put(&mut with.links, Stamp::NONE, link.clone(), |l| &l.id);
        }
        if with.nodes.len() > MAX_NOTED || with.links.len() > MAX_NOTED {
            return Err(Misfit::TooMany);
        }
        with.try_join().map(drop).map_err(Misfit::Apart)
    }

    /// What has to be noted so that every part of `network` stands here as it does there. A part that is here and not there stays:
    /// that a file leaves something out does not say that it is gone.
    pub fn lacks(&self, network: &Network) -> Vec<Fact> {
        let nodes = network.nodes().iter().filter(|node| !self.nodes.iter().any(|n| n.part == **node));
        let links = network.links().iter().filter(|link| !self.links.iter().any(|l| l.part == **link));
        let nodes = nodes.map(|node| Fact::NodeNoted { node: node.clone() });
        nodes.chain(links.map(|link| Fact::LinkNoted { link: link.clone() })).collect()
    }

    fn try_join(&self) -> Result<Network, SupplyError> {
        let nodes = self.nodes.iter().map(|n| n.part.clone()).collect();
        Network::new(nodes, self.links.iter().map(|l| l.part.clone()).collect())
    }

    fn join(&self) -> Network {
        let mut shown = self.clone();
        loop {
            match shown.try_join() {
                Ok(network) => return network,
                Err(SupplyError { place: Where::Node(i, _), .. }) if shown.nodes[i].part.kind != NodeKind::Unknown => {
                    let id = shown.nodes[i].part.id.clone();
                    shown.nodes[i].part = Node::new(id, NodeKind::Unknown);
                }
                Err(SupplyError { place: Where::Link(i, _), .. }) if shown.links[i].part.kind != LinkKind::Unknown => {
                    let Link { id, from, to, .. } = shown.links[i].part.clone();
                    shown.links[i].part = Link::new(id, from, to, LinkKind::Unknown);
                }
                // Nothing can be made of it even so, such as a link from a node to itself: it joins nothing.
                Err(SupplyError { place: Where::Link(i, _), .. }) => {
                    shown.links.remove(i);
                }
                Err(SupplyError { place: Where::Node(i, _), .. }) => {
                    shown.nodes.remove(i);
                }
                Err(_) => {
                    shown.nodes.truncate(MAX_NOTED);
                    shown.links.truncate(MAX_NOTED);
                }
            }
        }
    }
}

/// Where a part goes: in the place of the one with its id, or at the end.
fn put<P>(parts: &mut Vec<Noted<P>>, stamp: Stamp, part: P, id: impl Fn(&P) -> &String) {
    match parts.iter_mut().find(|known| id(&known.part) == id(&part)) {
        Some(known) => *known = Noted { stamp, part },
        None => parts.push(Noted { stamp, part }),
    }
}
