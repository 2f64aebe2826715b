//! What can be wrong with nodes and links, and with what is asked of them.

use super::model::{
    Conductors, Link, LinkKind, MAX_CONDUCTORS, MAX_ID, MAX_NOTE, MAX_TELL, MAX_TEXT, Node, NodeKind, SourceSort,
};
use super::network::Where;

/// What is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NetworkFault {
    /// More than [`super::MAX_PARTS`] of a kind.
    TooLarge {
        /// How many nodes.
        nodes: usize,
        /// How many links.
        links: usize,
    },
    /// An inlet without a source at one end.
    InletAlone,
    /// No work zone was named.
    NoZone,
    /// Neither a node nor a link has this id.
    NotThere {
        /// The id.
        id: String,
    },
    /// No link has this id.
    NoLink {
        /// The id.
        id: String,
    },
    /// A link that nobody opens or closes.
    NotSwitched {
        /// The link.
        id: String,
        /// What it is.
        kind: LinkKind,
    },
    /// Two parts with one id.
    IdTwice {
        /// The id.
        id: String,
        /// The first part that has it.
        first: Where,
    },
    /// A link from a node to itself.
    EndsAlike {
        /// The node.
        id: String,
    },
    /// A list with too many items.
    ListTooLong {
        /// How many it has.
        count: usize,
        /// How many are taken.
        most: usize,
    },
    /// An empty name among those who must be told.
    TellEmpty,
    /// A sort of source on what is none.
    SortOfNone {
        /// What it is.
        kind: NodeKind,
    },
    /// A lock on what parts nothing.
    NotLockable {
        /// What it is.
        kind: LinkKind,
    },
    /// An empty id.
    IdEmpty,
    /// An id with a comma.
    IdComma {
        /// The id.
        id: String,
    },
    /// A text with what cannot be seen.
    Unseen,
    /// A text with too many characters.
    TooLong {
        /// How many it has.
        count: usize,
        /// How many are taken.
        most: usize,
    },
    /// No conductors, or too many.
    ConductorCount {
        /// How many.
        count: usize,
    },
    /// A conductor without a name, or there twice.
    ConductorTwice {
        /// Its name.
        name: String,
    },
}

type PartFault = (&'static str, NetworkFault);

/// What is wrong with a node by itself, and in which field.
pub(super) fn node_fault(node: &Node) -> Result<(), PartFault> {
    id_fault(&node.id).map_err(|why| ("id", why))?;
    let texts = [("label", &node.label, MAX_TEXT), ("place", &node.place, MAX_TEXT), ("stops", &node.stops, MAX_TEXT)];
    for (field, text, most) in texts.into_iter().chain([("untraced", &node.untraced, MAX_NOTE)]) {
        text_fault(text, most).map_err(|why| (field, why))?;
    }
    if node.tell.len() > MAX_TELL {
        return Err(("tell", NetworkFault::ListTooLong { count: node.tell.len(), most: MAX_TELL }));
    }
    for who in &node.tell {
        if who.is_empty() {
            return Err(("tell", NetworkFault::TellEmpty));
        }
        text_fault(who, MAX_TEXT).map_err(|why| ("tell", why))?;
    }
    if node.sort != SourceSort::Unsaid && !matches!(node.kind, NodeKind::Source | NodeKind::Unknown) {
        return Err(("sort", NetworkFault::SortOfNone { kind: node.kind }));
    }
    Ok(())
}

/// What is wrong with a link by itself, and in which field.
pub(super) fn link_fault(link: &Link) -> Result<(), PartFault> {
    for (field, id) in [("id", &link.id), ("from", &link.from), ("to", &link.to)] {
        id_fault(id).map_err(|why| (field, why))?;
    }
    for (field, text) in [("label", &link.label), ("place", &link.place)] {
        text_fault(text, MAX_TEXT).map_err(|why| (field, why))?;
    }
    for (field, conductors) in [("poles", &link.poles), ("conductors", &link.conductors)] {
        if let Some(conductors) = conductors {
            conductors_fault(conductors).map_err(|why| (field, why))?;
        }
    }
    // What is not known may say anything of itself: a lock on it counts for nothing.
    if link.lockable && !link.kind.parts() && link.kind != LinkKind::Unknown {
        return Err(("lockable", NetworkFault::NotLockable { kind: link.kind }));
    }
    Ok(())
}

fn id_fault(id: &str) -> Result<(), NetworkFault> {
    if id.is_empty() {
        return Err(NetworkFault::IdEmpty);
    }
    if id.contains(',') {
        return Err(NetworkFault::IdComma { id: id.to_owned() });
    }
    text_fault(id, MAX_ID)
}

/// Empty, or 1 to `most` characters that can be seen.
fn text_fault(text: &str, most: usize) -> Result<(), NetworkFault> {
    // Most texts are short ASCII without a space: no need to look at characters one by one.
    if text.len() <= most && text.bytes().all(|byte| byte.is_ascii_graphic()) {
        return Ok(());
    }
    if text.trim().len() != text.len() || text.chars().any(char::is_control) {
        return Err(NetworkFault::Unseen);
    }
    if text.len() > most && text.chars().count() > most {
        let count = text.chars().count();
        return Err(NetworkFault::TooLong { count, most });
    }
    Ok(())
}

fn conductors_fault(conductors: &Conductors) -> Result<(), NetworkFault> {
    let count = conductors.count();
    if !(1..=MAX_CONDUCTORS).contains(&count) {
        return Err(NetworkFault::ConductorCount { count });
    }
    let Conductors::Names(names) = conductors else { return Ok(()) };
    for (i, name) in names.iter().enumerate() {
        if name.is_empty() || names[..i].contains(name) {
            return Err(NetworkFault::ConductorTwice { name: name.clone() });
        }
        text_fault(name, stillbar_values::conductors::NAME)?;
    }
    Ok(())
}
