//! One row of a file, cell by cell, whichever format it comes from.

use super::super::model::{Conductors, Link, LinkKind, MAX_CONDUCTORS, MAX_TELL, Node, NodeKind};
use super::{FileFault, List, Place, Remarks, link_kind, node_kind, position, source_sort};

/// What a cell holds, as its format reads it.
pub trait Cell {
    /// A text.
    fn text(&self) -> Result<&str, FileFault>;
    /// True or false.
    fn flag(&self) -> Result<bool, FileFault>;
    /// A list of texts.
    fn list(&self, most: usize) -> Result<Vec<String>, FileFault>;
    /// A whole number, if it is one.
    fn count(&self) -> Option<f64>;
}

/// A fault in a field, or in the row as a whole where that is empty.
pub type CellFault = (&'static str, FileFault);

/// Puts one cell into a node. `field` is one of [`super::NODE_FIELDS`]; `at` says where the node is.
pub fn into_node(
    node: &mut Node,
    field: &'static str,
    cell: &impl Cell,
    remarks: &mut Remarks,
    at: &Place,
) -> Result<(), CellFault> {
    let mut put = || -> Result<(), FileFault> {
        match field {
            "id" => node.id = cell.text()?.to_owned(),
            "kind" => {
                let word = cell.text()?;
                node.kind = node_kind(word).unwrap_or_else(|| {
                    remarks.add(at, List::Nodes, word);
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
    put().map_err(|why| (field, why))
}

/// Puts one cell into a link. `field` is one of [`super::LINK_FIELDS`]; `at` says where the link is.
pub fn into_link(
    link: &mut Link,
    field: &'static str,
    cell: &impl Cell,
    remarks: &mut Remarks,
    at: &Place,
) -> Result<(), CellFault> {
    let mut put = || -> Result<(), FileFault> {
        match field {
            "id" => link.id = cell.text()?.to_owned(),
            "from" => link.from = cell.text()?.to_owned(),
            "to" => link.to = cell.text()?.to_owned(),
            "kind" => {
                let word = cell.text()?;
                link.kind = link_kind(word).unwrap_or_else(|| {
                    remarks.add(at, List::Links, word);
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
    put().map_err(|why| (field, why))
}

/// What must be there.
pub fn node_needs(seen: impl Fn(&str) -> bool) -> Result<(), CellFault> {
    needs(List::Nodes, &["id", "kind"], seen)
}

/// What must be there.
pub fn link_needs(seen: impl Fn(&str) -> bool) -> Result<(), CellFault> {
    needs(List::Links, &["id", "from", "to", "kind"], seen)
}

fn needs(list: List, fields: &[&'static str], seen: impl Fn(&str) -> bool) -> Result<(), CellFault> {
    match fields.iter().find(|field| !seen(field)) {
        Some(field) => Err(("", FileFault::FieldMissing { list, field })),
        None => Ok(()),
    }
}

fn conductors(cell: &impl Cell) -> Result<Conductors, FileFault> {
    match cell.count() {
        Some(n) if n.fract() == 0.0 && (1.0..=MAX_CONDUCTORS as f64).contains(&n) => Ok(Conductors::Count(n as u8)),
        Some(_) => Err(FileFault::ConductorCount),
        None => Ok(Conductors::Names(cell.list(MAX_CONDUCTORS)?)),
    }
}
