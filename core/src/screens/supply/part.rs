//! One part of a site's network: noted, corrected, seen open or closed, crossed out.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, options, picked, read_word, spare, word_of};
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::journal::{EntryId, Fact};
use crate::supply::{Conductors, Drawn, Link, LinkKind, Node, NodeKind, Position, SourceSort};
use crate::text::{self, AskFirst, AskSupply, Gone};

/// The conductors that are asked for by name; the protective conductor is never switched.
const CONDUCTORS: [&str; 4] = ["L1", "L2", "L3", "N"];

/// What a node is, in a word or two.
pub(super) fn node_word(node: &Node) -> String {
    match node.kind {
        NodeKind::Source => match node.sort {
            SourceSort::Unsaid => "A source, nobody said which".into(),
            sort => format!("Source: {}", text::source_sort(sort)),
        },
        NodeKind::Board => "Board".into(),
        NodeKind::Load => "Load".into(),
        NodeKind::Junction => "Joint or terminals".into(),
        NodeKind::Unknown => "Nobody knows what it is: it may be a source".into(),
    }
}

/// What a link is, in a few words.
pub(super) fn link_word(link: &Link) -> String {
    let mut words = vec![link_kind_word(link.kind).to_lowercase()];
    if link.kind.parts() {
        words.push(if link.lockable { "takes a lock" } else { "takes no lock" }.into());
    }
    if link.kind.switches() {
        words.push(format!("normally {}", link.normally.word()));
    }
    words.extend(link.left_joined().map(|left| text::left_joined(&left)));
    words.join(", ")
}

fn link_kind_word(kind: LinkKind) -> &'static str {
    match kind {
        LinkKind::Switch => "Switch, breaker or fuses",
        LinkKind::Cable => "Cable",
        LinkKind::Changeover => "Way of a changeover switch",
        LinkKind::Tie => "Tie between two supplies",
        LinkKind::Inverter => "Inverter that can feed by itself",
        LinkKind::Inlet => "Inlet for a mobile set",
        LinkKind::Transformer => "Transformer",
        LinkKind::Unknown => "Not traced",
    }
}

/// Kind and sort of a node in one answer.
fn node_options() -> Vec<(String, String)> {
    let sorts = SourceSort::ALL.iter().map(|sort| {
        let word = match sort {
            SourceSort::Unsaid => "Another source".to_owned(),
            sort => format!("Source: {}", text::source_sort(*sort)),
        };
        (format!("source {}", word_of(sort)), word)
    });
    let others = NodeKind::ALL.iter().filter(|k| **k != NodeKind::Source);
    let others = others.map(|kind| (word_of(kind), node_word(&Node::new("", *kind))));
    others.clone().take(2).chain(sorts).chain(others.skip(2)).collect()
}

/// A new source, board or load, and what feeds it.
pub fn new_node(look: &Look) -> Page {
    let mut page = Page::new("A source, board or load");
    node_form(&mut page, look, &Node::default());
    if !look.drawn.is_empty() {
        page.heading("What feeds it, if you know");
        page.choice("from", "From", node_choices(look.drawn), look.draft("from"));
        link_form(&mut page, look, &Link::default(), "through");
    }
    page.main("Keep this part", "node");
    page
}

/// A new switch or cable between two nodes.
pub fn new_link(look: &Look) -> Page {
    let mut page = Page::new("A switch or cable");
    if look.drawn.nodes().is_empty() {
        page.para("It joins two parts. Add the first source, board or load before it.");
    }
    ends_form(&mut page, look, &Link::default());
    link_form(&mut page, look, &Link::default(), "id");
    page.main("Keep this part", "link");
    page
}

/// A part as an entry noted it, to correct it.
pub fn view(look: &Look, entry: EntryId) -> Page {
    let mut page;
    if let Some(noted) = look.drawn.nodes().iter().find(|n| n.stamp.id == entry) {
        page = Page::new(format!("{}, {}", noted.part.id, node_word(&noted.part)));
        page.fact("Noted", look.by(&noted.stamp));
        node_form(&mut page, look, &noted.part);
        page.main("Keep the correction", "node");
    } else if let Some(noted) = look.drawn.links().iter().find(|l| l.stamp.id == entry) {
        let link = &noted.part;
        page = Page::new(format!("{}, {}", link.id, link_word(link)));
        page.fact("Noted", look.by(&noted.stamp));
        if link.kind.switches() {
            if let Some(at) = look.drawn.states().get(&link.id) {
                page.fact("Last", text::seen(*at));
            }
            page.button("I see it open", "seen-open");
            page.button("I see it closed", "seen-closed");
        }
        ends_form(&mut page, look, link);
        link_form(&mut page, look, link, "id");
        page.main("Keep the correction", "link");
    } else {
        page = Page::new("This part was corrected or crossed out meanwhile");
        return page;
    }
    page.heading("It is not there");
    page.entry("gone", "How you know", "Traced to its end and taken out", look.draft("gone"));
    page.toned("Cross it out", "gone", Tone::Forbid);
    page
}

fn node_form(page: &mut Page, look: &Look, node: &Node) {
    let known = match node.kind {
        NodeKind::Source => format!("source {}", word_of(&node.sort)),
        NodeKind::Unknown if node.id.is_empty() => String::new(),
        kind => word_of(&kind),
    };
    if node.id.is_empty() {
        page.entry("id", "Name, as it is labelled", "Short and its own, such as: DB4", look.draft("id"));
    }
    page.choice("kind", "What it is", node_options(), look.draft_or("kind", &known));
    page.entry("label", "What is written on it beside that", "", look.draft_or("label", &node.label));
    page.entry("place", "Where it is", "Room and board", look.draft_or("place", &node.place));
    let hint = "Such as: lights of the finishing hall";
    page.entry("stops", "What stops when it has no supply", hint, look.draft_or("stops", &node.stops));
    let tell = look.draft_or("tell", &node.tell.join("\n"));
    page.field("tell", "Who has to be told before, one in a line", "", tell, EntryKind::Long, 600);
    let hint = "Such as: a cable into the wall behind it. While it stands here nothing is shown to be cut.";
    page.entry(
        "untraced",
        "Something else here that nobody has traced",
        hint,
        look.draft_or("untraced", &node.untraced),
    );
}

fn ends_form(page: &mut Page, look: &Look, link: &Link) {
    page.choice("from", "From", node_choices(look.drawn), look.draft_or("from", &link.from));
    page.choice("to", "To", node_choices(look.drawn), look.draft_or("to", &link.to));
}

/// `name` is the field of its name: a node's form has a name of its own.
fn link_form(page: &mut Page, look: &Look, link: &Link, name: &str) {
    let known = if link.id.is_empty() { String::new() } else { word_of(&link.kind) };
    if link.id.is_empty() {
        page.entry(name, "Name of the switch or cable", "As it is labelled, such as: Q4", look.draft(name));
    }
    page.choice(
        "link-kind",
        "Kind of link",
        options(&LinkKind::ALL, link_kind_word),
        look.draft_or("link-kind", &known),
    );
    page.entry("link-label", "What is written on the switch beside that", "", look.draft_or("link-label", &link.label));
    page.entry("at", "Where the switch is", "Room and board", look.draft_or("at", &link.place));
    let lockable = [("yes", "It takes a lock"), ("no", "It takes no lock")];
    let lockable = lockable.map(|(value, label)| (value.to_owned(), label.to_owned())).into();
    let known_lock = match (link.id.is_empty(), link.lockable) {
        (true, _) => "",
        (false, true) => "yes",
        (false, false) => "no",
    };
    page.choice("lockable", "Can it be locked open?", lockable, look.draft_or("lockable", known_lock));
    let positions = [(Position::Closed, "Closed"), (Position::Open, "Open")];
    let positions = positions.map(|(at, label)| (word_of(&at), label.to_owned())).into();
    page.choice("normally", "In normal service it is", positions, look.draft_or("normally", &word_of(&link.normally)));
    let all = || CONDUCTORS.map(|c| (c.to_owned(), c.to_owned())).into();
    let here = look.draft_or("conductors", &names(&link.conductors).join("\n"));
    page.several("conductors", "Conductors that have to be opened here", all(), here);
    page.several("poles", "Conductors that it opens", all(), look.draft_or("poles", &names(&link.poles).join("\n")));
}

fn names(conductors: &Option<Conductors>) -> Vec<String> {
    match conductors {
        Some(Conductors::Names(names)) => names.clone(),
        _ => Vec::new(),
    }
}

fn node_choices(drawn: &Drawn) -> Vec<(String, String)> {
    drawn.nodes().iter().map(|n| (n.part.id.clone(), n.part.id.clone())).collect()
}

/// What is done on these screens.
pub fn act(act: &mut Act, site: EntryId, entry: Option<EntryId>, verb: &str) -> Result<(), NotDone> {
    let drawn = act.drawn(site);
    let node = entry.and_then(|id| drawn.nodes().iter().find(|n| n.stamp.id == id)).map(|n| n.part.clone());
    let link = entry.and_then(|id| drawn.links().iter().find(|l| l.stamp.id == id)).map(|l| l.part.clone());
    if entry.is_some() && node.is_none() && link.is_none() {
        return Err(Gone::Part.into());
    }
    let id = node.as_ref().map(|n| n.id.clone()).or(link.as_ref().map(|l| l.id.clone()));
    match verb {
        "node" => {
            let noted = read_node(act, &drawn, node)?;
            let name = noted.id.clone();
            act.keep_at(site, Fact::NodeNoted { node: noted })?;
            if entry.is_none() && !act.given("through").is_empty() {
                let from = act.need("from", AskSupply::FedFrom)?;
                let link = read_link(act, &drawn, None, "through", (from, name))?;
                act.keep_at(site, Fact::LinkNoted { link })?;
            }
        }
        "link" => {
            let ends = (act.need("from", AskSupply::From)?, act.need("to", AskSupply::To)?);
            let link = read_link(act, &drawn, link, "id", ends)?;
            act.keep_at(site, Fact::LinkNoted { link })?;
        }
        "gone" => {
            let (part, why) = (id.ok_or(UNKNOWN)?, act.need("gone", AskSupply::GoneHow)?);
            act.keep_at(site, Fact::PartGone { part, why })?;
        }
        "seen-open" | "seen-closed" => {
            let position = if verb == "seen-open" { Position::Open } else { Position::Closed };
            let link = link.ok_or(UNKNOWN)?.id;
            act.say = Some(format!("Kept: {link} {}.", text::seen(position)));
            act.keep_at(site, Fact::LinkSeen { link, position })?;
        }
        _ => return Err(UNKNOWN.into()),
    }
    act.go = Some(Route::Network(site));
    Ok(())
}

fn read_node(act: &Act, drawn: &Drawn, known: Option<Node>) -> Result<Node, NotDone> {
    let id = match known {
        Some(node) => node.id,
        None => fresh(act, drawn, "id")?,
    };
    let chosen = act.need("kind", AskSupply::Kind)?;
    let (kind, sort) = match chosen.split_once(' ') {
        Some(("source", sort)) => (Some(NodeKind::Source), read_word(sort)),
        _ => (read_word(&chosen), Some(SourceSort::Unsaid)),
    };
    let tell = spare(act, "tell")?.lines().map(str::trim).filter(|l| !l.is_empty()).map(str::to_owned).collect();
    Ok(Node {
        id,
        kind: kind.ok_or(AskSupply::Kind)?,
        sort: sort.ok_or(AskSupply::Kind)?,
        label: spare(act, "label")?,
        place: spare(act, "place")?,
        stops: spare(act, "stops")?,
        tell,
        circuit: None,
        untraced: spare(act, "untraced")?,
    })
}

fn read_link(
    act: &Act,
    drawn: &Drawn,
    known: Option<Link>,
    name: &str,
    ends: (String, String),
) -> Result<Link, NotDone> {
    let id = match known.as_ref() {
        Some(link) => link.id.clone(),
        None => fresh(act, drawn, name)?,
    };
    let kind: LinkKind = picked(act, "link-kind", AskSupply::LinkKind)?;
    let lockable = if kind.parts() {
        match act.need("lockable", AskSupply::Lockable)?.as_str() {
            "yes" => true,
            "no" => false,
            _ => return Err(AskSupply::Lockable.into()),
        }
    } else {
        false
    };
    let normally = if kind.switches() { picked(act, "normally", AskSupply::Normally)? } else { Position::Closed };
    let marked = |field: &str| -> Option<Conductors> {
        let given = act.given(field);
        let names: Vec<String> =
            CONDUCTORS.iter().filter(|c| given.lines().any(|l| l == **c)).map(|c| (*c).to_owned()).collect();
        (!names.is_empty()).then_some(Conductors::Names(names))
    };
    let (poles, conductors) = if kind.parts() { (marked("poles"), marked("conductors")) } else { (None, None) };
    // A count that came with a file stays where nobody marks names.
    let was = |field: fn(&Link) -> &Option<Conductors>| known.as_ref().and_then(|l| field(l).clone());
    Ok(Link {
        id,
        from: ends.0,
        to: ends.1,
        kind,
        label: spare(act, "link-label")?,
        place: spare(act, "at")?,
        lockable,
        normally,
        poles: poles.or_else(|| was(|l| &l.poles).filter(|c| matches!(c, Conductors::Count(_)))),
        conductors: conductors.or_else(|| was(|l| &l.conductors).filter(|c| matches!(c, Conductors::Count(_)))),
    })
}

/// A name that no part has yet.
fn fresh(act: &Act, drawn: &Drawn, field: &str) -> Result<String, NotDone> {
    let id = act.need(field, AskSupply::Name)?;
    let taken = drawn.nodes().iter().any(|n| n.part.id == id) || drawn.links().iter().any(|l| l.part.id == id);
    if taken { Err(AskFirst::PartNamed { id }.into()) } else { Ok(id) }
}
