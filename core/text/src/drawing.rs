//! The single-line diagram of a network: what stands in it beside names, and the whole of it in words.

use super::catalogue::say;
use super::lists::commas;
use super::words::{link_kind, source_sort};
use stillbar_rules::supply::draw::{DrawnPart, DrawnWay, Label, Outline, Stands};
use stillbar_rules::supply::{LinkKind, Network, NodeKind, Shown, SourceSort};
use stillbar_values::drawing::Drawing;

/// The most characters; the rest is counted. Enough for all that is drawn unless every text is as long as it may be.
const MAX: usize = 30_000;

/// Draws a network, and says in words all that the drawing shows. Ids that are not in the network are left out.
pub fn draw(network: &Network, shown: &Shown) -> (Drawing, String) {
    let (drawing, outline) = stillbar_rules::supply::draw(network, shown, &label);
    (drawing, words(&outline))
}

/// What is written beside a name in a drawing.
fn label(label: Label) -> String {
    match label {
        Label::Part { drawn, all } => say!("label-part", drawn = drawn, all = all),
        Label::Link { kind, stands } => link(kind, stands),
        Label::TakesNoLock => say!("label-takes-no-lock"),
        Label::Uncovered => say!("label-uncovered"),
        Label::WorkZone => say!("label-work-zone"),
        Label::ReachesZone => say!("label-reaches-zone"),
        Label::NotTraced => say!("label-not-traced"),
        Label::NotDrawn { links } => say!("label-not-drawn", links = links),
    }
}

fn link(kind: LinkKind, stands: Stands) -> String {
    let state = match stands {
        Stands::LockedOpen => say!("label-locked-open"),
        Stands::LockCountsNot => say!("label-lock-no-use"),
        Stands::Closed => say!("label-closed"),
        Stands::Open => say!("label-open"),
    };
    match kind {
        LinkKind::Switch => state,
        LinkKind::Changeover | LinkKind::Tie | LinkKind::Inlet | LinkKind::Inverter => {
            say!("label-kind", kind = kind.name(), state = state)
        }
        LinkKind::Transformer => say!("label-transformer"),
        LinkKind::Cable | LinkKind::Unknown => say!("label-not-traced"),
    }
}

fn words(outline: &Outline) -> String {
    let mut all = say!("drawing");
    let mut add = |sentence: &str| {
        all += " ";
        all += sentence;
        all.len()
    };
    let mut long = if outline.drawn < outline.all {
        add(&say!("drawing-in-part", drawn = outline.drawn, all = outline.all))
    } else {
        0
    };
    let mut left = 0;
    for said in outline.parts.iter().map(part) {
        if long + said.len() > MAX {
            left += 1;
        } else {
            long = add(&said);
        }
    }
    if left > 0 {
        add(&say!("drawing-more", more = left));
    }
    all
}

fn part(part: &DrawnPart) -> String {
    let node = &part.node;
    let kind = match node.kind {
        NodeKind::Source if node.sort != SourceSort::Unsaid => say!("drawn-source", sort = source_sort(node.sort)),
        kind => say!("label-node", kind = kind.name()),
    };
    let texts = [&node.label, &node.stops, &node.place].into_iter().filter(|text| !text.is_empty()).cloned();
    let about = commas([kind].into_iter().chain(texts).chain(part.notes.iter().map(|note| label(*note))));
    if part.ways.is_empty() {
        return say!("drawn-part", id = &*node.id, about = about);
    }
    let ways: Vec<String> = part.ways.iter().map(way).collect();
    say!("drawn-part-ways", id = &*node.id, about = about, ways = ways.join("; "))
}

fn way(way: &DrawnWay) -> String {
    let mut about = vec![link_kind(way.link.kind)];
    about.extend(Some(way.link.label.clone()).filter(|label| !label.is_empty()));
    about.extend(way.stands.map(|stands| match stands {
        Stands::LockedOpen => say!("label-locked-open"),
        Stands::LockCountsNot => say!("drawn-lock-counts-not"),
        Stands::Closed => say!("label-closed"),
        Stands::Open => say!("label-open"),
    }));
    about.extend(way.takes_no_lock.then(|| say!("label-takes-no-lock")));
    about.extend(way.uncovered.then(|| say!("drawn-uncovered")));
    let (to, id, about) = (&*way.to, &*way.link.id, commas(about));
    match way.link.kind {
        LinkKind::Cable => say!("drawn-by", to = to, id = id, about = about),
        _ => say!("drawn-over", to = to, id = id, about = about),
    }
}
