//! A network with its ends joined up: what every question is asked of.

use std::collections::{HashMap, HashSet};
use std::fmt;
use std::hash::{DefaultHasher, Hasher};

use super::model::{
    Conductors, Link, LinkKind, MAX_CONDUCTORS, MAX_ID, MAX_NOTE, MAX_TELL, MAX_TEXT, Node, NodeKind, SourceSort,
};

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
    around: Vec<Step>,
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
pub(super) struct Step {
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

/// Why nodes and links are no network, or a question cannot be asked of it: one sentence that says what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{place}: {say}")]
pub struct SupplyError {
    /// What it is about.
    pub place: Where,
    /// What is wrong and what to do, ending in a full stop.
    pub say: String,
}

impl SupplyError {
    pub(super) fn new(place: Where, say: impl Into<String>) -> SupplyError {
        SupplyError { place, say: say.into() }
    }
}

impl fmt::Display for Where {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        let dot = |field: &str| if field.is_empty() { String::new() } else { format!(".{field}") };
        match self {
            Where::Whole => f.write_str("the network"),
            Where::Node(i, field) => write!(f, "nodes[{i}]{}", dot(field)),
            Where::Link(i, field) => write!(f, "links[{i}]{}", dot(field)),
        }
    }
}

impl Network {
    /// Joins nodes and links, in time that grows with their number alone.
    ///
    /// Refused: two nodes or two links with one id, a link from a node to itself, a lock on what parts nothing, an inlet without a source
    /// at one end, a sort on what is no source, a text that is too long or cannot be seen, more than [`MAX_PARTS`] of either.
    pub fn new(nodes: Vec<Node>, links: Vec<Link>) -> Result<Network, SupplyError> {
        if nodes.len() > MAX_PARTS || links.len() > MAX_PARTS {
            let say = format!(
                "it has {} nodes and {} links, and at most {MAX_PARTS} of each are taken; leave out what is far from the work.",
                nodes.len(),
                links.len()
            );
            return Err(SupplyError::new(Where::Whole, say));
        }
        for (i, node) in nodes.iter().enumerate() {
            node_fault(node).map_err(|(field, say)| SupplyError::new(Where::Node(i, field), say))?;
        }
        for (i, link) in links.iter().enumerate() {
            link_fault(link).map_err(|(field, say)| SupplyError::new(Where::Link(i, field), say))?;
        }
        let (ends, missing) = ends(&nodes, &links)?;
        let described = nodes.len();
        let mut nodes = nodes;
        nodes.extend(missing.into_iter().map(|id| Node::new(id, NodeKind::Unknown)));
        for (i, link) in links.iter().enumerate() {
            let source = |end: u32| matches!(nodes[end as usize].kind, NodeKind::Source | NodeKind::Unknown);
            if link.kind == LinkKind::Inlet && !ends[i].into_iter().any(source) {
                let say = "an inlet needs a source at one end: the set that is plugged in; add it as a node of the kind source.";
                return Err(SupplyError::new(Where::Link(i, "kind"), say));
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
    pub(super) fn around(&self, node: usize) -> &[Step] {
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
            let say = "no work zone was named; name the board or part to be worked on.";
            return Err(SupplyError::new(Where::Whole, say));
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
                    let say =
                        format!("{} is not in it; name a node or a link as the network does.", quoted(id.as_ref()));
                    return Err(SupplyError::new(Where::Whole, say));
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
            let say = format!("{} is the id of nodes[{first}] too; give each its own id.", quoted(&node.id));
            return Err(SupplyError::new(Where::Node(i, "id"), say));
        }
    }
    let mut missing = Vec::new();
    let mut ends = Vec::with_capacity(links.len());
    let mut seen: HashSet<&str> = HashSet::with_capacity(links.len());
    for (i, link) in links.iter().enumerate() {
        if !seen.insert(&link.id) {
            let first = links.iter().position(|l| l.id == link.id).unwrap_or_default();
            let say = format!("{} is the id of links[{first}] too; give each its own id.", quoted(&link.id));
            return Err(SupplyError::new(Where::Link(i, "id"), say));
        }
        if link.from == link.to {
            let say = format!("{} is the other end too; a link joins two different nodes.", quoted(&link.to));
            return Err(SupplyError::new(Where::Link(i, "to"), say));
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

fn around(nodes: usize, ends: &[[u32; 2]]) -> (Vec<u32>, Vec<Step>) {
    let mut first = vec![0u32; nodes + 1];
    for end in ends.iter().flatten() {
        first[*end as usize + 1] += 1;
    }
    for i in 0..nodes {
        first[i + 1] += first[i];
    }
    let mut next = first.clone();
    let mut around = vec![Step { link: 0, to: 0 }; ends.len() * 2];
    for (link, &[a, b]) in ends.iter().enumerate() {
        for (from, to) in [(a, b), (b, a)] {
            around[next[from as usize] as usize] = Step { link: link as u32, to };
            next[from as usize] += 1;
        }
    }
    (first, around)
}

type Fault = (&'static str, String);

fn node_fault(node: &Node) -> Result<(), Fault> {
    id_fault(&node.id).map_err(|say| ("id", say))?;
    let texts = [("label", &node.label, MAX_TEXT), ("place", &node.place, MAX_TEXT), ("stops", &node.stops, MAX_TEXT)];
    for (field, text, most) in texts.into_iter().chain([("untraced", &node.untraced, MAX_NOTE)]) {
        text_fault(text, most).map_err(|say| (field, say))?;
    }
    if node.tell.len() > MAX_TELL {
        let say = format!("this list has {} items and at most {MAX_TELL} are taken; shorten it.", node.tell.len());
        return Err(("tell", say));
    }
    for who in &node.tell {
        if who.is_empty() {
            return Err(("tell", "a name in it is empty; say who must be told, or leave it out.".into()));
        }
        text_fault(who, MAX_TEXT).map_err(|say| ("tell", say))?;
    }
    if node.sort != SourceSort::Unsaid && !matches!(node.kind, NodeKind::Source | NodeKind::Unknown) {
        let say = format!("only a source has a sort, and this is of the kind {}; correct one.", node.kind.name());
        return Err(("sort", say));
    }
    Ok(())
}

fn link_fault(link: &Link) -> Result<(), Fault> {
    for (field, id) in [("id", &link.id), ("from", &link.from), ("to", &link.to)] {
        id_fault(id).map_err(|say| (field, say))?;
    }
    for (field, text) in [("label", &link.label), ("place", &link.place)] {
        text_fault(text, MAX_TEXT).map_err(|say| (field, say))?;
    }
    for (field, conductors) in [("poles", &link.poles), ("conductors", &link.conductors)] {
        if let Some(conductors) = conductors {
            conductors_fault(conductors).map_err(|say| (field, say))?;
        }
    }
    // What is not known may say anything of itself: a lock on it counts for nothing.
    if link.lockable && !link.kind.parts() && link.kind != LinkKind::Unknown {
        let say = format!(
            "{} does not part conductors so that it could be locked open; draw the switch at its end as a link of its own.",
            link.kind.word()
        );
        return Err(("lockable", say));
    }
    Ok(())
}

fn id_fault(id: &str) -> Result<(), String> {
    if id.is_empty() {
        return Err("an id needs at least one character.".into());
    }
    if id.contains(',') {
        return Err(format!("{} has a comma, which parts ids in lists; write it without.", quoted(id)));
    }
    text_fault(id, MAX_ID)
}

/// Empty, or 1 to `most` characters that can be seen.
fn text_fault(text: &str, most: usize) -> Result<(), String> {
    // Most texts are short ASCII without a space: no need to look at characters one by one.
    if text.len() <= most && text.bytes().all(|byte| byte.is_ascii_graphic()) {
        return Ok(());
    }
    if text.trim().len() != text.len() || text.chars().any(char::is_control) {
        return Err("a text needs characters that can be seen, and no white space before or after it.".into());
    }
    if text.len() > most && text.chars().count() > most {
        let count = text.chars().count();
        return Err(format!("this has {count} characters and at most {most} are taken; shorten it."));
    }
    Ok(())
}

fn conductors_fault(conductors: &Conductors) -> Result<(), String> {
    let count = conductors.count();
    if !(1..=MAX_CONDUCTORS).contains(&count) {
        return Err(format!("1 to {MAX_CONDUCTORS} conductors belong here, not {count}."));
    }
    let Conductors::Names(names) = conductors else { return Ok(()) };
    for (i, name) in names.iter().enumerate() {
        if name.is_empty() || names[..i].contains(name) {
            return Err(format!("{} is empty or there twice; name each conductor once.", quoted(name)));
        }
        text_fault(name, stillbar_values::conductors::NAME)?;
    }
    Ok(())
}

/// An id as far as it fits in a sentence.
pub(super) fn quoted(text: &str) -> String {
    let short: String = text.chars().take(MAX_ID).map(|c| if c.is_control() { '?' } else { c }).collect();
    if text.chars().count() > MAX_ID { format!("\"{short}…\"") } else { format!("\"{short}\"") }
}
