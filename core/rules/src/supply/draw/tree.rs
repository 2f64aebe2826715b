//! What hangs below what: a tree from the sources down, and the links that are left over.

use std::collections::{HashMap, HashSet, VecDeque};

use super::text::{NAME, SMALL, short, width, wrap};
use super::{DrawnScene, Label};
use crate::supply::model::{Link, LinkKind, Node, NodeKind, SourceSort};

/// The height of the room for a switch on its way down.
pub const SYMBOL: f32 = 62.0;
/// The height of the room above what hangs on plain conductors.
pub const PLAIN: f32 = 30.0;
/// The height of one row of a list of loads.
const ROW: f32 = 52.0;
/// From the edge of a slot to the line in it.
pub const LEFT: f32 = 16.0;
/// The most loads in one list.
const LISTED: usize = 10;
/// The most characters in one line of a part's name, and of a link's.
const NAME_CHARS: usize = 18;
const LINK_CHARS: usize = 12;

/// Something that has a place in the drawing.
pub struct Item {
    pub body: NodeBody,
    pub row: usize,
    pub parent: Option<usize>,
    /// The link on which it hangs below its parent, if that is drawn above it.
    pub via: Option<usize>,
    pub below: Vec<usize>,
    /// Links that come in from above besides `via`.
    pub also: Vec<usize>,
    /// How wide the columns of `via` and `also` are, from the left.
    pub slots: Vec<f32>,
    /// Width and height of itself, without what is below.
    pub own: (f32, f32),
    /// The height of the room for the symbols above it.
    pub drop: f32,
    /// Left edge and width of itself and all below it.
    pub block: (f32, f32),
    /// Left upper corner of itself.
    pub at: (f32, f32),
}

/// What an item is.
pub enum NodeBody {
    /// A node.
    Node(usize),
    /// Loads that hang on one node alone: link and load.
    List(Vec<(usize, usize)>),
    /// A column that a link needs on its way past a row, or to leave its node.
    Column,
    /// One end of a link between two nodes of a row, with its symbol.
    TieOut(usize),
    /// The other end.
    TieIn,
}

/// A link that is no part of the tree: it runs sideways above the row that it ends in.
pub struct Sideways {
    pub link: usize,
    /// The item from which it comes down: a column or a tie's end.
    pub from: usize,
    /// The node into which it goes from above, or the tie's other end.
    pub to: usize,
    /// The item whose column it is in the first place: from its node down to `from`.
    pub columns: Vec<usize>,
    /// Which of the lanes above the row, from the top.
    pub lane: usize,
    /// The height at which it runs.
    pub y: f32,
}

/// The whole, from which places follow.
pub struct TreePlan {
    pub items: Vec<Item>,
    pub roots: Vec<usize>,
    pub sideways: Vec<Sideways>,
}

/// Works out what hangs below what.
pub fn plan(scene: &DrawnScene) -> TreePlan {
    let parents = parents(scene);
    let mut plan = TreePlan { items: Vec::new(), roots: Vec::new(), sideways: Vec::new() };
    let mut item_of: HashMap<usize, usize> = HashMap::new();
    let mut used: HashSet<usize> = HashSet::new();
    // Parents come before their children in this order.
    for &(node, parent) in &parents {
        let Some((link, above)) = parent else {
            let item = plan.add(NodeBody::Node(node), None, None, scene);
            plan.roots.push(item);
            item_of.insert(node, item);
            continue;
        };
        used.insert(link);
        let parent = item_of[&above];
        if is_leaf(scene, node) {
            let list = plan.items[parent]
                .below
                .iter()
                .copied()
                .find(|i| matches!(&plan.items[*i].body, NodeBody::List(list) if list.len() < LISTED));
            let list = list.unwrap_or_else(|| plan.add(NodeBody::List(Vec::new()), Some(parent), None, scene));
            if let NodeBody::List(loads) = &mut plan.items[list].body {
                loads.push((link, node));
            }
            plan.items[list].measure(scene);
        } else {
            let item = plan.add(NodeBody::Node(node), Some(parent), Some(link), scene);
            item_of.insert(node, item);
        }
    }
    for &link in scene.links.iter().filter(|link| !used.contains(link)) {
        let mut ends = scene.network.ends(link).map(|end| item_of[&end]);
        ends.sort_by_key(|end| (plan.items[*end].row, *end));
        plan.sideways(link, ends, scene);
    }
    plan
}

impl TreePlan {
    fn add(&mut self, body: NodeBody, parent: Option<usize>, via: Option<usize>, scene: &DrawnScene) -> usize {
        let row = parent.map_or(0, |p| self.items[p].row + 1);
        let zero = (0.0, 0.0);
        let (below, also, slots) = (Vec::new(), Vec::new(), Vec::new());
        let mut item = Item { body, row, parent, via, below, also, slots, own: zero, drop: 0.0, block: zero, at: zero };
        item.measure(scene);
        self.items.push(item);
        let number = self.items.len() - 1;
        if let Some(parent) = parent {
            self.items[parent].below.push(number);
        }
        number
    }

    fn sideways(&mut self, link: usize, [a, b]: [usize; 2], scene: &DrawnScene) {
        if self.items[a].row == self.items[b].row {
            let from = self.add(NodeBody::TieOut(link), Some(a), None, scene);
            let to = self.add(NodeBody::TieIn, Some(b), None, scene);
            self.sideways.push(Sideways { link, from, to, columns: vec![from], lane: 0, y: 0.0 });
            return;
        }
        let mut columns = vec![self.add(NodeBody::Column, Some(a), None, scene)];
        let mut from = columns[0];
        while self.items[from].row + 1 < self.items[b].row {
            from = self.add(NodeBody::Column, Some(from), None, scene);
            columns.push(from);
        }
        self.items[b].also.push(link);
        self.items[b].measure(scene);
        self.sideways.push(Sideways { link, from, to: b, columns, lane: 0, y: 0.0 });
    }
}

impl Item {
    fn measure(&mut self, scene: &DrawnScene) {
        self.own = own(scene, self);
        let links = self.via.iter().chain(&self.also);
        self.slots = links.clone().map(|link| slot(scene, *link)).collect();
        self.drop = match self.body {
            NodeBody::List(_) => 12.0,
            _ => links.map(|link| drop(scene, *link)).fold(PLAIN, f32::max),
        };
    }
}

/// Whether it goes into a list: it is no board and no source, and has one link.
fn is_leaf(scene: &DrawnScene, node: usize) -> bool {
    let part = &scene.network.nodes()[node];
    !matches!(part.kind, NodeKind::Source | NodeKind::Board)
        && scene.network.around(node).len() == 1
        && scene.more[node] == 0
}

/// A node and what it hangs on: link and node above. `None`: it is on top.
type Hangs = (usize, Option<(usize, usize)>);

/// Every node, each after the one it hangs on. Sources are on top. Supply from outside goes before what stands by, and closed links before
/// open ones, so that the tree is the network as it normally runs.
fn parents(scene: &DrawnScene) -> Vec<Hangs> {
    let nodes = scene.network.nodes();
    let mut hangs: Vec<Hangs> = Vec::new();
    let mut seen: HashSet<usize> = HashSet::new();
    let sources: Vec<usize> =
        scene.nodes.iter().copied().filter(|node| nodes[*node].kind == NodeKind::Source).collect();
    let outside =
        |node: &usize| matches!(nodes[*node].sort, SourceSort::Grid | SourceSort::SecondFeeder | SourceSort::Unsaid);
    let (first, second): (Vec<usize>, Vec<usize>) = sources.iter().copied().partition(outside);
    for &source in &sources {
        hangs.push((source, None));
        seen.insert(source);
    }
    let spread = |starts: &[usize], open_too: bool, hangs: &mut Vec<Hangs>, seen: &mut HashSet<usize>| {
        let mut open: VecDeque<usize> = starts.iter().copied().collect();
        while let Some(node) = open.pop_front() {
            for step in scene.network.around(node) {
                let (link, to) = (step.link as usize, step.to as usize);
                let drawn = scene.links.binary_search(&link).is_ok();
                if drawn && (open_too || normally_closed(&scene.network.links()[link])) && seen.insert(to) {
                    hangs.push((to, Some((link, node))));
                    open.push_back(to);
                }
            }
        }
    };
    spread(&first, false, &mut hangs, &mut seen);
    spread(&second, false, &mut hangs, &mut seen);
    let known: Vec<usize> = hangs.iter().map(|h| h.0).collect();
    spread(&known, true, &mut hangs, &mut seen);
    // What no source reaches: boards first.
    let mut rest: Vec<usize> = scene.nodes.iter().copied().filter(|node| !seen.contains(node)).collect();
    rest.sort_by_key(|node| (nodes[*node].kind != NodeKind::Board, *node));
    for node in rest {
        if seen.insert(node) {
            hangs.push((node, None));
            spread(&[node], true, &mut hangs, &mut seen);
        }
    }
    hangs
}

fn normally_closed(link: &Link) -> bool {
    !link.kind.switches() || link.normally == crate::supply::Position::Closed
}

/// The lines in which a node's name is written.
pub fn name_lines(node: &Node) -> Vec<String> {
    let mut lines = vec![short(&node.id, NAME_CHARS)];
    let more = [&node.label, &node.stops].into_iter().find(|text| !text.is_empty() && **text != node.id);
    if let Some(more) = more {
        lines.extend(wrap(more, NAME_CHARS));
    } else if node.id.chars().count() > NAME_CHARS {
        lines = wrap(&node.id, NAME_CHARS);
    }
    lines
}

/// The lines beside a link's symbol, and whether each warns; none for plain conductors.
pub fn link_lines(scene: &DrawnScene, link: usize) -> Vec<(String, bool)> {
    let part = &scene.network.links()[link];
    if part.kind == LinkKind::Cable {
        return Vec::new();
    }
    let label = |label: Label| ((scene.label)(label), label == Label::Uncovered);
    let mut lines = vec![(short(&part.id, LINK_CHARS), false)];
    lines.push(label(Label::Link { kind: part.kind, stands: scene.stands(link) }));
    lines.extend(scene.takes_no_lock(link).then(|| label(Label::TakesNoLock)));
    lines.extend(scene.path_links.contains(&link).then(|| label(Label::Uncovered)));
    lines
}

/// How wide the column of a link is.
pub fn slot(scene: &DrawnScene, link: usize) -> f32 {
    let lines = link_lines(scene, link);
    let texts = lines.iter().map(|(line, _)| width(line, SMALL)).fold(0.0, f32::max);
    if lines.is_empty() { 24.0 } else { LEFT + 14.0 + texts + 10.0 + padlock(scene, link) }
}

/// The room for a padlock before a text.
pub fn padlock(scene: &DrawnScene, link: usize) -> f32 {
    if scene.locked[link] { 14.0 } else { 0.0 }
}

/// How high the room for a link's symbol is.
fn drop(scene: &DrawnScene, link: usize) -> f32 {
    if scene.network.links()[link].kind == LinkKind::Cable { PLAIN } else { SYMBOL }
}

fn own(scene: &DrawnScene, item: &Item) -> (f32, f32) {
    match &item.body {
        NodeBody::Node(node) => {
            let part = &scene.network.nodes()[*node];
            let lines = name_lines(part);
            let texts = lines.iter().map(|line| width(line, NAME)).fold(0.0, f32::max) + 24.0;
            let slots: f32 = item.via.iter().chain(&item.also).map(|link| slot(scene, *link)).sum();
            let marks = note_lines(scene, *node).iter().map(|(note, _)| width(note, SMALL)).fold(0.0, f32::max);
            let wide = texts.max(slots).max(marks + 12.0).max(64.0);
            let text = 10.0 + lines.len() as f32 * 17.0;
            let notes = notes(scene, *node).len() as f32 * 15.0;
            match part.kind {
                NodeKind::Source => (wide, text + notes + 44.0),
                _ => (wide, text.max(30.0) + notes),
            }
        }
        NodeBody::List(loads) => {
            let wide = loads
                .iter()
                .map(|load| list_texts(scene, *load))
                .fold((0.0, 0.0), |(a, b): (f32, f32), (c, d)| (a.max(c), b.max(d)));
            (LEFT + wide.0 + 14.0 + wide.1 + 10.0, loads.iter().map(|load| row(scene, *load)).sum())
        }
        NodeBody::Column | NodeBody::TieIn => (18.0, 0.0),
        NodeBody::TieOut(link) => (slot(scene, *link), SYMBOL),
    }
}

/// How wide the switch's part and the load's part of a row are.
pub fn list_texts(scene: &DrawnScene, (link, node): (usize, usize)) -> (f32, f32) {
    let lines = link_lines(scene, link);
    let switch = lines.iter().map(|(line, _)| width(line, SMALL)).fold(30.0, f32::max) + padlock(scene, link) + 12.0;
    let part = &scene.network.nodes()[node];
    let name = name_lines(part).iter().map(|line| width(line, NAME)).fold(0.0, f32::max);
    let marks = note_lines(scene, node).iter().map(|(note, _)| width(note, SMALL)).fold(0.0, f32::max);
    (switch, name.max(marks) + 12.0)
}

/// How high a load's row is: its switch's name above the line, the rest below it.
pub fn row(scene: &DrawnScene, (link, node): (usize, usize)) -> f32 {
    let below = link_lines(scene, link).len().saturating_sub(2);
    let texts = name_lines(&scene.network.nodes()[node]).len() + notes(scene, node).len();
    (ROW + 13.0 * below as f32).max(12.0 + 16.0 * texts as f32)
}

/// What has to be said of a node besides its name, and whether it warns.
pub fn notes(scene: &DrawnScene, node: usize) -> Vec<(Label, bool)> {
    let mut notes = Vec::new();
    if scene.zone.contains(&node) {
        notes.push((Label::WorkZone, false));
    }
    if scene.path_nodes.contains(&node) && scene.network.nodes()[node].kind == NodeKind::Source {
        notes.push((Label::ReachesZone, true));
    }
    if scene.network.is_unknown(node) {
        notes.push((Label::NotTraced, true));
    }
    if scene.more[node] > 0 {
        notes.push((Label::NotDrawn { links: scene.more[node] }, false));
    }
    notes
}

/// The same in words.
pub fn note_lines(scene: &DrawnScene, node: usize) -> Vec<(String, bool)> {
    notes(scene, node).into_iter().map(|(label, warns)| ((scene.label)(label), warns)).collect()
}
