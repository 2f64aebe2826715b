//! What the answers say of parts and paths, in the trade's words.

use super::model::{Link, LinkKind, Node, NodeKind, Position};
use super::network::{Network, quoted};

/// The most links that a sentence names one by one.
const NAMED: usize = 12;

/// The id, with what is written on the part where that is more.
pub(super) fn named(id: &str, label: &str) -> String {
    if label.is_empty() || label == id { id.to_owned() } else { format!("{id} ({label})") }
}

pub(super) fn node(node: &Node) -> String {
    named(&node.id, &node.label)
}

/// Why a lock that was given on this link does not count; `None` if it does.
pub(super) fn lock_counts_not(link: &Link) -> Option<String> {
    let name = named(&link.id, &link.label);
    if link.kind == LinkKind::Unknown {
        return Some(format!("{name} is locked, but nobody knows what it is: go and look what it parts."));
    }
    if !link.kind.parts() {
        return Some(format!("{name} is {}, which parts nothing: lock the switch at its end.", link.kind.word()));
    }
    if !link.lockable {
        return Some(format!("{name} is given as locked, but the network says that it takes no lock."));
    }
    link.left_joined().map(|why| format!("{name} is locked, but {why}."))
}

/// What to say of an id that was given as locked and that no link has.
pub(super) fn no_such_lock(network: &Network, id: &str) -> String {
    match network.node(id) {
        Some(node) => format!(
            "{} is given as locked, but it is {}, and locks are on links.",
            quoted(id),
            match node.kind {
                NodeKind::Source => "a source",
                NodeKind::Board => "a board",
                NodeKind::Load => "a load",
                NodeKind::Junction => "a junction",
                NodeKind::Unknown => "a part that nobody knows",
            }
        ),
        None => format!("{} is given as locked, but it is not in the network.", quoted(id)),
    }
}

/// Why nobody knows enough of a node that can be reached, and of which that is so.
pub(super) fn node_unknown(network: &Network, at: usize) -> String {
    let part = &network.nodes()[at];
    let name = node(part);
    match (part.kind, network.is_described(at)) {
        (NodeKind::Unknown, true) => format!("Nobody knows what {name} is: it may be a source."),
        (NodeKind::Unknown, false) => {
            format!("{name} is named by a link, and nobody described it: it may be a source.")
        }
        _ => format!("At {name} something was not traced: {}.", part.untraced),
    }
}

/// Why nobody knows enough of a link of an unknown kind.
pub(super) fn link_unknown(link: &Link) -> String {
    format!("Nobody traced {} from {} to {}.", named(&link.id, &link.label), link.from, link.to)
}

/// Where a link normally stands and what of it matters on an uncovered path: "Q2 (normally closed, not locked)".
pub(super) fn on_path(link: &Link, given: bool) -> String {
    let name = named(&link.id, &link.label);
    if !link.kind.switches() {
        return match link.kind {
            LinkKind::Unknown => format!("{name} (not traced)"),
            kind => format!("{name} ({})", kind.word()),
        };
    }
    let what = match link.kind {
        LinkKind::Switch => String::new(),
        kind => format!("{}, ", kind.word()),
    };
    let stands = match link.normally {
        Position::Open => "normally open",
        Position::Closed => "normally closed",
    };
    let lock = match (given, link.kind.parts() && link.lockable, link.normally) {
        (true, ..) => "the lock on it does not count",
        (false, false, _) => "takes no lock",
        (false, true, Position::Open) => "not locked open",
        (false, true, Position::Closed) => "not locked",
    };
    format!("{name} ({what}{stands}, {lock})")
}

/// An uncovered path in a sentence.
pub(super) fn path(network: &Network, source: usize, way: &[(usize, usize)], given: &[bool]) -> String {
    let from = &network.nodes()[source];
    let name = match from.sort {
        super::SourceSort::Unsaid => node(from),
        sort if from.label.is_empty() && from.id.eq_ignore_ascii_case(sort.word()) => node(from),
        sort => format!("{} ({})", from.id, if from.label.is_empty() { sort.word() } else { &from.label }),
    };
    let Some(&(_, end)) = way.last() else {
        return format!("{name} is a source, and it is in the work zone itself.");
    };
    let to = node(&network.nodes()[end]);
    let steps: Vec<String> = way
        .iter()
        .map(|(link, _)| (&network.links()[*link], given[*link]))
        .filter(|(link, _)| link.kind != LinkKind::Cable)
        .map(|(link, given)| on_path(link, given))
        .collect();
    match steps.len() {
        0 => format!("{name} reaches {to} with nothing between them that parts the conductors."),
        1..=NAMED => format!("{name} reaches {to} through {}.", list(&steps)),
        n => format!("{name} reaches {to} through {}, and {} more.", steps[..NAMED].join(", "), n - NAMED),
    }
}

/// "a", "a and b", "a, b and c".
pub(super) fn list<S: AsRef<str>>(items: &[S]) -> String {
    let items: Vec<&str> = items.iter().map(AsRef::as_ref).collect();
    match items.split_last() {
        None => String::new(),
        Some((last, [])) => (*last).to_owned(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}

/// "1 circuit", "2 circuits".
pub(super) fn count(number: usize, one: &str) -> String {
    if number == 1 { format!("1 {one}") } else { format!("{number} {one}s") }
}
