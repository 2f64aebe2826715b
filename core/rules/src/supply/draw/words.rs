//! What a drawing shows, in words: for whoever does not see it, and with the texts that are shortened in it.

use super::Scene;
use super::tree::notes;
use crate::supply::model::{LinkKind, NodeKind, SourceSort};

/// The most characters; the rest is counted. Enough for all that is drawn unless every text is as long as it may be.
const MOST: usize = 30_000;

/// Names every part that is drawn, with what is shown of it.
pub fn words(scene: &Scene) -> String {
    let mut all = String::from("Single-line diagram.");
    if scene.is_part() {
        all += &format!(" {} of {} parts are drawn.", scene.nodes.len(), scene.network.nodes().len());
    }
    let mut said = vec![false; scene.network.links().len()];
    let mut left = 0;
    // Sources first, as they are on top.
    let mut nodes = scene.nodes.clone();
    nodes.sort_by_key(|node| (scene.network.nodes()[*node].kind != NodeKind::Source, *node));
    for node in nodes {
        let text = part(scene, node, &mut said);
        if text.is_empty() {
            continue;
        }
        if all.len() + text.len() > MOST {
            left += 1;
        } else {
            all += " ";
            all += &text;
        }
    }
    if left > 0 {
        all += &format!(" {left} more parts are drawn and not named here.");
    }
    all
}

/// A node and the links from it that were not said yet.
fn part(scene: &Scene, node: usize, said: &mut [bool]) -> String {
    let part = &scene.network.nodes()[node];
    let kind = match part.kind {
        NodeKind::Source if part.sort == SourceSort::Unsaid => "source".to_owned(),
        NodeKind::Source => format!("source, {}", part.sort.word()),
        kind => kind.name().to_owned(),
    };
    let mut about = vec![kind];
    about.extend([&part.label, &part.stops, &part.place].into_iter().filter(|t| !t.is_empty()).cloned());
    about.extend(notes(scene, node).into_iter().map(|(note, _)| note));
    let mut text = format!("{}: {}", part.id, about.join(", "));
    let mut ways = Vec::new();
    for step in scene.network.around(node) {
        let (link, to) = (step.link as usize, step.to as usize);
        if scene.links.binary_search(&link).is_ok() && !std::mem::replace(&mut said[link], true) {
            ways.push(way(scene, link, &scene.network.nodes()[to].id));
        }
    }
    if !ways.is_empty() {
        text += &format!("; {}", ways.join("; "));
    }
    text + "."
}

fn way(scene: &Scene, link: usize, to: &str) -> String {
    let part = &scene.network.links()[link];
    let mut about = vec![part.kind.word().to_owned()];
    if !part.label.is_empty() {
        about.push(part.label.clone());
    }
    if part.kind.switches() {
        about.push(
            match (scene.locked[link], scene.given[link], scene.closed[link]) {
                (true, ..) => "locked open",
                (_, true, _) => "locked, and the lock does not count",
                (.., true) => "closed",
                (.., false) => "open",
            }
            .into(),
        );
    }
    if part.kind.parts() && !part.lockable && !scene.given[link] {
        about.push("takes no lock".into());
    }
    if scene.path_links.contains(&link) {
        about.push("on an uncovered path".into());
    }
    let name = if part.kind == LinkKind::Cable {
        format!("to {to} by {}", part.id)
    } else {
        format!("to {to} over {}", part.id)
    };
    format!("{name} ({})", about.join(", "))
}
