//! A network with its ends joined up: what every question is asked of.

use std::collections::{HashMap, HashSet};
use std::hash::{DefaultHasher, Hasher};

pub use super::fault::NetworkFault;
use super::fault::{link_fault, node_fault};
use super::model::{Link, LinkKind, Node, NodeKind};

/// The most nodes, and the most links.
pub const MAX_PARTS: usize = 1_000_000;

/// Nodes and links that fit together: ids are unique, and every link has two different ends.
///
/// A link may name a node that nobody described. That node is then in the network as one of an unknown kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Network {
    nodes: Vec<Node>,
    links: Vec<Link>,
    /// How many of the nodes were described; the others are only named by links.
    described: usize,
    ends: Vec<[u32; 2]>,
    /// Where a node's part of `around` begins; one more than there are nodes.
    first: Vec<u32>,
    /// The links at each node and what is at their other end, node after node.
    around: Vec<PathStep>,
    /// What a flood has to know of each node and link, and a short hash of each id: close together, because a large network is gone
    /// through from end to end.
    node_marks: Vec<Mark>,
    link_marks: Vec<Mark>,
}

/// What is asked of a part most often.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Mark {
    hash: u32,
    /// A node that is a source; a link on which a lock cuts.
    strong: bool,
    /// Nobody knows enough of it.
    unknown: bool,
}

/// One step from a node: over which link, and to which node.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct PathStep {
    pub link: u32,
    pub to: u32,
}

/// What in a network an error is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Where {
    /// The network as a whole.
    Whole,
    /// The node with this number, from 0, and one of its fields or the whole of it (empty).
    Node(usize, &'static str),
    /// The link with this number, from 0, and one of its fields or the whole of it (empty).
    Link(usize, &'static str),
}

/// Why nodes and links are no network, or a question cannot be asked of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SupplyError {
    /// What it is about.
    pub place: Where,
    /// What is wrong.
    pub why: NetworkFault,
}

impl SupplyError {
    pub(super) fn new(place: Where, why: NetworkFault) -> SupplyError {
        SupplyError { place, why }
    }

    pub(super) fn whole(why: NetworkFault) -> SupplyError {
        SupplyError::new(Where::Whole, why)
    }
}

impl Network {
    /// Joins nodes and links, in time that grows with their number alone.
    ///
    /// Refused: two nodes or two links with one id, a link from a node to itself, a lock on what parts nothing, an inlet without a source
    /// at one end, a sort on what is no source, a text that is too long or cannot be seen, more than [`MAX_PARTS`] of either.
    pub fn new(nodes: Vec<Node>, links: Vec<Link>) -> Result<Network, SupplyError> {
        if nodes.len() > MAX_PARTS || links.len() > MAX_PARTS {
            return Err(SupplyError::whole(NetworkFault::TooLarge { nodes: nodes.len(), links: links.len() }));
        }
        for (i, node) in nodes.iter().enumerate() {
            node_fault(node).map_err(|(field, why)| SupplyError::new(Where::Node(i, field), why))?;
        }
        for (i, link) in links.iter().enumerate() {
            link_fault(link).map_err(|(field, why)| SupplyError::new(Where::Link(i, field), why))?;
        }
        let (ends, missing) = ends(&nodes, &links)?;
        let described = nodes.len();
        let mut nodes = nodes;
        nodes.extend(missing.into_iter().map(|id| Node::new(id, NodeKind::Unknown)));
        for (i, link) in links.iter().enumerate() {
            let source = |end: u32| matches!(nodes[end as usize].kind, NodeKind::Source | NodeKind::Unknown);
            if link.kind == LinkKind::Inlet && !ends[i].into_iter().any(source) {
                return Err(SupplyError::new(Where::Link(i, "kind"), NetworkFault::InletAlone));
            }
        }
        let (first, around) = around(nodes.len(), &ends);
        let node_marks = nodes.iter().map(|n| Mark {
            hash: hash(&n.id),
            strong: n.kind == NodeKind::Source,
            unknown: n.kind == NodeKind::Unknown || !n.untraced.is_empty(),
        });
        let link_marks =
            links.iter().map(|l| Mark { hash: hash(&l.id), strong: l.cuts(), unknown: l.kind == LinkKind::Unknown });
        let (node_marks, link_marks) = (node_marks.collect(), link_marks.collect());
        Ok(Network { nodes, links, described, ends, first, around, node_marks, link_marks })
    }

    /// All nodes, those that are only named by links last.
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// All links.
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    /// The nodes that somebody described.
    pub fn described(&self) -> &[Node] {
        &self.nodes[..self.described]
    }

    /// Whether somebody described the node with this number, or a link only names it.
    pub(super) fn is_described(&self, node: usize) -> bool {
        node < self.described
    }

    /// The node with this id. Looks through all of them.
    pub fn node(&self, id: &str) -> Option<&Node> {
        self.nodes.iter().find(|n| n.id == id)
    }

    /// The link with this id. Looks through all of them.
    pub fn link(&self, id: &str) -> Option<&Link> {
        self.links.iter().find(|l| l.id == id)
    }

    /// The numbers of the two nodes that a link joins.
    pub(super) fn ends(&self, link: usize) -> [usize; 2] {
        self.ends[link].map(|end| end as usize)
    }

    /// The links at a node and what is at their other ends.
    pub(super) fn around(&self, node: usize) -> &[PathStep] {
        &self.around[self.first[node] as usize..self.first[node + 1] as usize]
    }

    /// Whether a node is a source.
    pub(super) fn is_source(&self, node: usize) -> bool {
        self.node_marks[node].strong
    }

    /// Whether nobody knows enough of a node: of an unknown kind, or with something untraced.
    pub(super) fn is_unknown(&self, node: usize) -> bool {
        self.node_marks[node].unknown
    }

    /// Whether a lock on a link cuts.
    pub(super) fn cuts(&self, link: usize) -> bool {
        self.link_marks[link].strong
    }

    /// Whether a link is of an unknown kind.
    pub(super) fn is_unknown_link(&self, link: usize) -> bool {
        self.link_marks[link].unknown
    }

    /// The numbers of the nodes of a work zone. A link in the list, such as a cable to be worked on, stands for both its ends.
    pub(super) fn zone<S: AsRef<str>>(&self, zone: &[S]) -> Result<Vec<usize>, SupplyError> {
        if zone.is_empty() {
            return Err(SupplyError::whole(NetworkFault::NoZone));
        }
        let links = find(zone, &self.link_marks, |link| &self.links[link].id);
        let nodes = find(zone, &self.node_marks, |node| &self.nodes[node].id);
        let mut all: Vec<usize> = Vec::new();
        for (id, found) in zone.iter().zip(nodes.into_iter().zip(links)) {
            match found {
                // A node goes before a link of the same name.
                (Some(node), _) => all.push(node),
                (None, Some(link)) => all.extend(self.ends(link)),
                (None, None) => {
                    return Err(SupplyError::whole(NetworkFault::NotThere { id: id.as_ref().to_owned() }));
                }
            }
        }
        all.sort_unstable();
        all.dedup();
        Ok(all)
    }

    /// The numbers of the links with these ids, and the places in `ids` of those that no link has.
    pub(super) fn find_links<S: AsRef<str>>(&self, ids: &[S]) -> (Vec<usize>, Vec<usize>) {
        let links = find(ids, &self.link_marks, |link| &self.links[link].id);
        let missing = (0..ids.len()).filter(|i| links[*i].is_none()).collect();
        let mut found: Vec<usize> = links.into_iter().flatten().collect();
        found.sort_unstable();
        found.dedup();
        (found, missing)
    }
}

/// The number of the part that has each of these ids.
fn find<'n, S: AsRef<str>>(ids: &[S], marks: &[Mark], id: impl Fn(usize) -> &'n String) -> Vec<Option<usize>> {
    let mut wanted: Vec<(u32, usize)> = ids.iter().enumerate().map(|(i, id)| (hash(id.as_ref()), i)).collect();
    wanted.sort_unstable();
    let mut found = vec![None; ids.len()];
    for (part, mark) in marks.iter().enumerate() {
        let from = wanted.partition_point(|(hash, _)| *hash < mark.hash);
        for (_, i) in wanted[from..].iter().take_while(|(hash, _)| *hash == mark.hash) {
            if id(part) == ids[*i].as_ref() {
                found[*i] = Some(part);
            }
        }
    }
    found
}

/// Tells most ids apart at once; those that it does not are compared.
fn hash(id: &str) -> u32 {
    let mut hasher = DefaultHasher::new();
    hasher.write(id.as_bytes());
    hasher.finish() as u32
}

/// The ends of each link as numbers; and the ids that links name and no node has, which come after the nodes.
type Ends = (Vec<[u32; 2]>, Vec<String>);

fn ends(nodes: &[Node], links: &[Link]) -> Result<Ends, SupplyError> {
    let mut number: HashMap<&str, u32> = HashMap::with_capacity(nodes.len());
    for (i, node) in nodes.iter().enumerate() {
        if let Some(first) = number.insert(&node.id, i as u32) {
            let why = NetworkFault::IdTwice { id: node.id.clone(), first: Where::Node(first as usize, "") };
            return Err(SupplyError::new(Where::Node(i, "id"), why));
        }
    }
    let mut missing = Vec::new();
    let mut ends = Vec::with_capacity(links.len());
    let mut seen: HashSet<&str> = HashSet::with_capacity(links.len());
    for (i, link) in links.iter().enumerate() {
        if !seen.insert(&link.id) {
            let first = links.iter().position(|l| l.id == link.id).unwrap_or_default();
            let why = NetworkFault::IdTwice { id: link.id.clone(), first: Where::Link(first, "") };
            return Err(SupplyError::new(Where::Link(i, "id"), why));
        }
        if link.from == link.to {
            return Err(SupplyError::new(Where::Link(i, "to"), NetworkFault::EndsAlike { id: link.to.clone() }));
        }
        ends.push([&link.from, &link.to].map(|id| {
            *number.entry(id.as_str()).or_insert_with(|| {
                missing.push(id.clone());
                (nodes.len() + missing.len() - 1) as u32
            })
        }));
    }
    Ok((ends, missing))
}

fn around(nodes: usize, ends: &[[u32; 2]]) -> (Vec<u32>, Vec<PathStep>) {
    let mut first = vec![0u32; nodes + 1];
    for end in ends.iter().flatten() {
        first[*end as usize + 1] += 1;
    }
    for i in 0..nodes {
        first[i + 1] += first[i];
    }
    let mut next = first.clone();
    let mut around = vec![PathStep { link: 0, to: 0 }; ends.len() * 2];
    for (link, &[a, b]) in ends.iter().enumerate() {
        for (from, to) in [(a, b), (b, a)] {
            around[next[from as usize] as usize] = PathStep { link: link as u32, to };
            next[from as usize] += 1;
        }
    }
    (first, around)
}
