//! One part of a site's network: noted, corrected, seen open or closed, crossed out.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, options, picked, read_word, spare, word_of};
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::journal::{EntryId, Fact};
use crate::supply::{Conductors, Drawn, Link, LinkKind, Node, NodeKind, Position, SourceSort};
use crate::text::screens::supply as said;
use crate::text::{self, AskFirst, AskSupply, Gone};

/// The conductors that are asked for by name; the protective conductor is never switched.
const CONDUCTORS: [&str; 4] = ["L1", "L2", "L3", "N"];

/// What a node is, in a word or two.
pub(super) fn node_word(node: &Node) -> String {
    match node.kind {
        NodeKind::Source => match node.sort {
            SourceSort::Unsaid => said::part_source_unsaid(),
            sort => said::part_source(text::source_sort(sort)),
        },
        NodeKind::Board => said::part_board(),
        NodeKind::Load => said::part_load(),
        NodeKind::Junction => said::part_junction(),
        NodeKind::Unknown => said::part_unknown(),
    }
}

/// What a link is, in a few words.
pub(super) fn link_word(link: &Link) -> String {
    let mut words = vec![link_kind_word(link.kind)];
    if link.kind.parts() {
        words.push(if link.lockable { said::part_takes_lock() } else { said::part_takes_no_lock() });
    }
    if link.kind.switches() {
        words.push(match link.normally {
            Position::Open => said::part_normally_open(),
            Position::Closed => said::part_normally_closed(),
        });
    }
    words.extend(link.left_joined().map(|left| text::left_joined(&left)));
    text::commas(words)
}

fn link_kind_word(kind: LinkKind) -> String {
    match kind {
        LinkKind::Switch => said::part_link_switch(),
        LinkKind::Cable => said::part_link_cable(),
        LinkKind::Changeover => said::part_link_changeover(),
        LinkKind::Tie => said::part_link_tie(),
        LinkKind::Inverter => said::part_link_inverter(),
        LinkKind::Inlet => said::part_link_inlet(),
        LinkKind::Transformer => said::part_link_transformer(),
        LinkKind::Unknown => said::part_link_unknown(),
    }
}

/// Kind and sort of a node in one answer.
fn node_options() -> Vec<(String, String)> {
    let sorts = SourceSort::ALL.iter().map(|sort| {
        let word = match sort {
            SourceSort::Unsaid => said::part_source_other(),
            sort => said::part_source(text::source_sort(*sort)),
        };
        (format!("source {}", word_of(sort)), word)
    });
    let others = NodeKind::ALL.iter().filter(|k| **k != NodeKind::Source);
    let others = others.map(|kind| (word_of(kind), node_word(&Node::new("", *kind))));
    others.clone().take(2).chain(sorts).chain(others.skip(2)).collect()
}

/// A new source, board or load, and what feeds it.
pub fn new_node(look: &Look) -> Page {
    let mut page = Page::new(said::part_new_node());
    node_form(&mut page, look, &Node::default());
    if !look.drawn.is_empty() {
        page.heading(said::part_fed_by());
        page.choice("from", &said::part_from(), node_choices(look.drawn), look.draft("from"));
        link_form(&mut page, look, &Link::default(), "through");
    }
    page.main(said::part_save(), "node");
    page
}

/// A new switch or cable between two nodes.
pub fn new_link(look: &Look) -> Page {
    let mut page = Page::new(said::part_new_link());
    if look.drawn.nodes().is_empty() {
        page.para(said::part_joins());
    }
    ends_form(&mut page, look, &Link::default());
    link_form(&mut page, look, &Link::default(), "id");
    page.main(said::part_save(), "link");
    page
}

/// A part as an entry noted it, to correct it.
pub fn view(look: &Look, entry: EntryId) -> Page {
    let mut page;
    if let Some(noted) = look.drawn.nodes().iter().find(|n| n.stamp.id == entry) {
        page = Page::new(said::part_title(&noted.part.id, node_word(&noted.part)));
        page.fact(said::part_noted(), look.by(&noted.stamp));
        node_form(&mut page, look, &noted.part);
        page.main(said::part_save_correction(), "node");
    } else if let Some(noted) = look.drawn.links().iter().find(|l| l.stamp.id == entry) {
        let link = &noted.part;
        page = Page::new(said::part_title(&link.id, link_word(link)));
        page.fact(said::part_noted(), look.by(&noted.stamp));
        if link.kind.switches() {
            if let Some(at) = look.drawn.states().get(&link.id) {
                page.fact(said::part_last(), text::seen(*at));
            }
            page.button(said::part_seen_open(), "seen-open");
            page.button(said::part_seen_closed(), "seen-closed");
        }
        ends_form(&mut page, look, link);
        link_form(&mut page, look, link, "id");
        page.main(said::part_save_correction(), "link");
    } else {
        page = Page::new(said::part_changed());
        return page;
    }
    page.heading(said::part_not_there());
    page.entry("gone", &said::part_gone(), &said::part_gone_hint(), look.draft("gone"));
    page.toned(said::part_cross_out(), "gone", Tone::Forbid);
    page
}

fn node_form(page: &mut Page, look: &Look, node: &Node) {
    let known = match node.kind {
        NodeKind::Source => format!("source {}", word_of(&node.sort)),
        NodeKind::Unknown if node.id.is_empty() => String::new(),
        kind => word_of(&kind),
    };
    if node.id.is_empty() {
        page.entry("id", &said::part_name(), &said::part_name_hint(), look.draft("id"));
    }
    page.choice("kind", &said::part_what(), node_options(), look.draft_or("kind", &known));
    page.entry("label", &said::part_written(), "", look.draft_or("label", &node.label));
    page.entry("place", &said::part_where(), &said::part_where_hint(), look.draft_or("place", &node.place));
    page.entry("stops", &said::part_what_stops(), &said::part_what_stops_hint(), look.draft_or("stops", &node.stops));
    let tell = look.draft_or("tell", &node.tell.join("\n"));
    page.field("tell", &said::part_tell(), "", tell, EntryKind::Long, 600);
    page.entry(
        "untraced",
        &said::part_untraced(),
        &said::part_untraced_hint(),
        look.draft_or("untraced", &node.untraced),
    );
}

fn ends_form(page: &mut Page, look: &Look, link: &Link) {
    page.choice("from", &said::part_from(), node_choices(look.drawn), look.draft_or("from", &link.from));
    page.choice("to", &said::part_to(), node_choices(look.drawn), look.draft_or("to", &link.to));
}

/// `name` is the field of its name: a node's form has a name of its own.
fn link_form(page: &mut Page, look: &Look, link: &Link, name: &str) {
    let known = if link.id.is_empty() { String::new() } else { word_of(&link.kind) };
    if link.id.is_empty() {
        page.entry(name, &said::part_link_name(), &said::part_link_name_hint(), look.draft(name));
    }
    page.choice(
        "link-kind",
        &said::part_link_kind(),
        options(&LinkKind::ALL, link_kind_word),
        look.draft_or("link-kind", &known),
    );
    page.entry("link-label", &said::part_link_written(), "", look.draft_or("link-label", &link.label));
    page.entry("at", &said::part_link_where(), &said::part_where_hint(), look.draft_or("at", &link.place));
    let lockable = [("yes", said::part_lockable_yes()), ("no", said::part_lockable_no())];
    let lockable = lockable.map(|(value, label)| (value.to_owned(), label)).into();
    let known_lock = match (link.id.is_empty(), link.lockable) {
        (true, _) => "",
        (false, true) => "yes",
        (false, false) => "no",
    };
    page.choice("lockable", &said::part_lockable(), lockable, look.draft_or("lockable", known_lock));
    let positions = [(Position::Closed, said::part_closed()), (Position::Open, said::part_open())];
    let positions = positions.map(|(at, label)| (word_of(&at), label)).into();
    page.choice("normally", &said::part_normally(), positions, look.draft_or("normally", &word_of(&link.normally)));
    let all = || CONDUCTORS.map(|c| (c.to_owned(), c.to_owned())).into();
    let here = look.draft_or("conductors", &names(&link.conductors).join("\n"));
    page.several("conductors", &said::part_conductors(), all(), here);
    page.several("poles", &said::part_poles(), all(), look.draft_or("poles", &names(&link.poles).join("\n")));
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
            act.say = Some(said::part_seen(&link, text::seen(position)));
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
