//! What a drawing shows, part by part: for whoever does not see it, and with the texts that are shortened in it.

use super::tree::notes;
use super::{DrawnScene, Label, Stands};
use crate::supply::model::{Link, Node, NodeKind};

/// What a drawing shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// How many parts are drawn.
    pub drawn: usize,
    /// How many there are.
    pub all: usize,
    /// Every part that is drawn, the sources first, as they are on top.
    pub parts: Vec<DrawnPart>,
}

/// A node and the links from it that no part before it names.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnPart {
    /// The node.
    pub node: Node,
    /// What is written beside its name.
    pub notes: Vec<Label>,
    /// The links.
    pub ways: Vec<DrawnWay>,
}

/// A link as it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnWay {
    /// The link.
    pub link: Link,
    /// The node at its other end.
    pub to: String,
    /// How it stands, if it has positions.
    pub stands: Option<Stands>,
    /// Whether it would part the conductors, and takes no lock.
    pub takes_no_lock: bool,
    /// Whether it is on an uncovered path.
    pub uncovered: bool,
}

/// Names every part that is drawn, with what is shown of it.
pub fn outline(scene: &DrawnScene) -> Outline {
    let mut said = vec![false; scene.network.links().len()];
    let mut nodes = scene.nodes.clone();
    nodes.sort_by_key(|node| (scene.network.nodes()[*node].kind != NodeKind::Source, *node));
    let parts = nodes.into_iter().map(|node| part(scene, node, &mut said)).collect();
    Outline { drawn: scene.nodes.len(), all: scene.network.nodes().len(), parts }
}

fn part(scene: &DrawnScene, node: usize, said: &mut [bool]) -> DrawnPart {
    let mut ways = Vec::new();
    for step in scene.network.around(node) {
        let (link, to) = (step.link as usize, step.to as usize);
        if scene.links.binary_search(&link).is_ok() && !std::mem::replace(&mut said[link], true) {
            ways.push(way(scene, link, &scene.network.nodes()[to].id));
        }
    }
    let notes = notes(scene, node).into_iter().map(|(note, _)| note).collect();
    DrawnPart { node: scene.network.nodes()[node].clone(), notes, ways }
}

fn way(scene: &DrawnScene, link: usize, to: &str) -> DrawnWay {
    let part = &scene.network.links()[link];
    DrawnWay {
        link: part.clone(),
        to: to.to_owned(),
        stands: part.kind.switches().then(|| scene.stands(link)),
        takes_no_lock: scene.takes_no_lock(link),
        uncovered: scene.path_links.contains(&link),
    }
}
