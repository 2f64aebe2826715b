//! One row of a file, cell by cell, whichever format it comes from.

use super::super::model::{Conductors, Link, LinkKind, MAX_CONDUCTORS, MAX_TELL, Node, NodeKind};
use super::{Remarks, link_kind, node_kind, position, source_sort};
use crate::json::quoted;

/// What a cell holds, as its format reads it. An error is a sentence.
pub trait Cell {
    /// A text.
    fn text(&self) -> Result<&str, String>;
    /// True or false.
    fn flag(&self) -> Result<bool, String>;
    /// A list of texts.
    fn list(&self, most: usize) -> Result<Vec<String>, String>;
    /// A whole number, if it is one.
    fn count(&self) -> Option<f64>;
}

/// A fault in a field, or in the row as a whole where that is empty.
pub type Fault = (&'static str, String);

/// Puts one cell into a node. `field` is one of [`super::NODE_FIELDS`]; `at` says where the node is.
pub fn into_node(
    node: &mut Node,
    field: &'static str,
    cell: &impl Cell,
    remarks: &mut Remarks,
    at: &dyn Fn() -> String,
) -> Result<(), Fault> {
    let mut put = || -> Result<(), String> {
        match field {
            "id" => node.id = cell.text()?.to_owned(),
            "kind" => {
                let word = cell.text()?;
                node.kind = node_kind(word).unwrap_or_else(|| {
                    remarks.add(&format!("{}.kind", at()), word, &NodeKind::ALL.map(NodeKind::name));
                    NodeKind::Unknown
                });
            }
            "sort" => node.sort = source_sort(cell.text()?)?,
            "label" => node.label = cell.text()?.to_owned(),
            "place" => node.place = cell.text()?.to_owned(),
            "stops" => node.stops = cell.text()?.to_owned(),
            "tell" => node.tell = cell.list(MAX_TELL)?,
            "circuit" => node.circuit = Some(cell.flag()?),
            _ => node.untraced = cell.text()?.to_owned(),
        }
        Ok(())
    };
    put().map_err(|say| (field, say))
}

/// Puts one cell into a link. `field` is one of [`super::LINK_FIELDS`]; `at` says where the link is.
pub fn into_link(
    link: &mut Link,
    field: &'static str,
    cell: &impl Cell,
    remarks: &mut Remarks,
    at: &dyn Fn() -> String,
) -> Result<(), Fault> {
    let mut put = || -> Result<(), String> {
        match field {
            "id" => link.id = cell.text()?.to_owned(),
            "from" => link.from = cell.text()?.to_owned(),
            "to" => link.to = cell.text()?.to_owned(),
            "kind" => {
                let word = cell.text()?;
                link.kind = link_kind(word).unwrap_or_else(|| {
                    remarks.add(&format!("{}.kind", at()), word, &LinkKind::ALL.map(LinkKind::name));
                    LinkKind::Unknown
                });
            }
            "label" => link.label = cell.text()?.to_owned(),
            "place" => link.place = cell.text()?.to_owned(),
            "lockable" => link.lockable = cell.flag()?,
            "normally" => link.normally = position(cell.text()?)?,
            "poles" => link.poles = Some(conductors(cell)?),
            _ => link.conductors = Some(conductors(cell)?),
        }
        Ok(())
    };
    put().map_err(|say| (field, say))
}

/// What must be there.
pub fn node_needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
    needs(&[("id", "give its name, as on the device"), ("kind", "say source, board, load or junction")], seen)
}

/// What must be there.
pub fn link_needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
    let fields = [
        ("id", "give its name, as on the device"),
        ("from", "name the node at one end"),
        ("to", "name the node at the other end"),
        ("kind", "say switch, cable or another kind"),
    ];
    needs(&fields, seen)
}

fn needs(fields: &[(&'static str, &str)], seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
    match fields.iter().find(|(field, _)| !seen(field)) {
        Some((field, fix)) => Err(("", format!("the field \"{field}\" is missing; {fix}."))),
        None => Ok(()),
    }
}

/// A field that is not in the format.
pub fn unknown(field: &str, known: &[&str]) -> Fault {
    ("", format!("the field {} is not known here; known are {}.", quoted(field), known.join(", ")))
}

fn conductors(cell: &impl Cell) -> Result<Conductors, String> {
    match cell.count() {
        Some(n) if n.fract() == 0.0 && (1.0..=MAX_CONDUCTORS as f64).contains(&n) => Ok(Conductors::Count(n as u8)),
        Some(_) => {
            Err(format!("a whole number from 1 to {MAX_CONDUCTORS} belongs here, or the names of the conductors."))
        }
        None => Ok(Conductors::Names(cell.list(MAX_CONDUCTORS)?)),
    }
}
