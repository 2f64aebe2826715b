//! pandapower's JSON (`pandapower.to_json`): buses, lines, transformers, switches, loads and what feeds.
//!
//! The tables are data frames in pandas' "split" form, written as texts inside the file. Every bus becomes a node; every switch a point that
//! takes a lock, because the format does not say which do. What is out of service stays in as a path that is open and takes no lock.

use std::collections::HashSet;

use serde_json::Value;

use super::{FileError, FileFault, Many, Odd, Place, Read, Remarks};
use crate::json::broken;
use crate::supply::model::{Link, LinkKind, Node, NodeKind, Position, SourceSort};
use crate::supply::network::MAX_PARTS;

/// Whether a text begins as such a file does.
pub fn is_one(text: &str) -> bool {
    let head = text.get(..text.floor_char_boundary(400)).unwrap_or(text);
    head.contains("\"_module\"") && head.contains("pandapowerNet")
}

pub fn read(text: &str) -> Result<Read, FileError> {
    let whole: Value = serde_json::from_str(text).map_err(|error| {
        let place = Place::At { line: error.line(), column: error.column() };
        FileError::new(place, FileFault::Json(broken(&error)))
    })?;
    let tables = whole.get("_object").ok_or_else(|| wrong("_object", Odd::File))?;
    let mut build = NetworkBuild { tables, nodes: Vec::new(), links: Vec::new(), ends: HashSet::new() };
    build.buses()?;
    build.switches()?;
    build.branches()?;
    build.at_buses()?;
    build.unknown()?;
    Ok(super::network(build.nodes, build.links, Remarks::default())?)
}

fn wrong(table: &str, what: Odd) -> FileError {
    FileError::new(Place::Table(table.to_owned()), FileFault::Pandapower(what))
}

struct NetworkBuild<'a> {
    tables: &'a Value,
    nodes: Vec<Node>,
    links: Vec<Link>,
    /// The nodes between a branch and its switch at a bus.
    ends: HashSet<String>,
}

/// A data frame in the "split" form.
struct Table {
    name: String,
    columns: Vec<String>,
    index: Vec<i64>,
    data: Vec<Vec<Value>>,
}

impl Table {
    fn cell(&self, row: usize, column: &str) -> Option<&Value> {
        let at = self.columns.iter().position(|name| name == column)?;
        self.data[row].get(at)
    }

    /// A bus's or another part's number.
    fn number(&self, row: usize, column: &str) -> Result<i64, FileError> {
        let cell = self.cell(row, column);
        // A whole number is a number with a point where pandas once had a gap in the column.
        let number =
            cell.and_then(|v| v.as_i64().or_else(|| v.as_f64().filter(|f| f.fract() == 0.0).map(|f| f as i64)));
        number.ok_or_else(|| self.wrong(row, column))
    }

    fn wrong(&self, row: usize, column: &str) -> FileError {
        let place = Place::Row(self.name.clone(), self.index[row]);
        FileError::new(place, FileFault::Pandapower(Odd::Column(column.to_owned())))
    }

    fn flag(&self, row: usize, column: &str, default: bool) -> bool {
        self.cell(row, column).and_then(Value::as_bool).unwrap_or(default)
    }

    /// What people called it, as far as it fits.
    fn label(&self, row: usize) -> String {
        let name = self.cell(row, "name").and_then(Value::as_str).unwrap_or_default();
        let name: String = name.chars().filter(|c| !c.is_control()).take(crate::supply::MAX_TEXT).collect();
        name.trim().to_owned()
    }

    fn text(&self, row: usize, column: &str) -> &str {
        self.cell(row, column).and_then(Value::as_str).unwrap_or_default()
    }
}

impl NetworkBuild<'_> {
    /// A table by name; empty where there is none.
    fn table(&self, name: &str) -> Result<Table, FileError> {
        let empty = Table { name: name.into(), columns: Vec::new(), index: Vec::new(), data: Vec::new() };
        let Some(frame) = self.tables.get(name) else { return Ok(empty) };
        let inner = match frame.get("_object") {
            Some(Value::String(text)) => serde_json::from_str(text).map_err(|_| wrong(name, Odd::Table))?,
            Some(object) => object.clone(),
            None => return Err(wrong(name, Odd::Table)),
        };
        let list = |key: &str| inner.get(key).and_then(Value::as_array).ok_or_else(|| wrong(name, Odd::Table));
        let columns = list("columns")?.iter().map(|c| c.as_str().unwrap_or_default().to_owned()).collect();
        let index: Option<Vec<i64>> = list("index")?.iter().map(Value::as_i64).collect();
        let data: Option<Vec<Vec<Value>>> = list("data")?.iter().map(|row| row.as_array().cloned()).collect();
        match (index, data) {
            (Some(index), Some(data)) if index.len() == data.len() => {
                Ok(Table { name: name.into(), columns, index, data })
            }
            _ => Err(wrong(name, Odd::Table)),
        }
    }

    fn bounded(&self) -> Result<(), FileError> {
        if self.nodes.len() > MAX_PARTS || self.links.len() > MAX_PARTS {
            return Err(FileError::whole(FileFault::TooMany(Many::Parts)));
        }
        Ok(())
    }

    fn buses(&mut self) -> Result<(), FileError> {
        let table = self.table("bus")?;
        for row in 0..table.index.len() {
            // "b" is a busbar; "n" and "m" are nodes and muffs on the way.
            let kind = if table.text(row, "type") == "b" { NodeKind::Board } else { NodeKind::Junction };
            self.nodes.push(Node { label: table.label(row), ..Node::new(bus(table.index[row]), kind) });
        }
        self.bounded()
    }

    /// Switches between two buses here; one at the end of a branch gets a node of its own between itself and the branch.
    fn switches(&mut self) -> Result<(), FileError> {
        let table = self.table("switch")?;
        for row in 0..table.index.len() {
            let from = bus(table.number(row, "bus")?);
            let element = table.number(row, "element")?;
            let to = match table.text(row, "et") {
                "b" => bus(element),
                branch @ ("l" | "t" | "t3") => end(branch, element, &from),
                _ => return Err(table.wrong(row, "et")),
            };
            if table.text(row, "et") != "b" && self.ends.insert(to.clone()) {
                self.nodes.push(Node::new(&to, NodeKind::Junction));
            }
            let id = format!("switch {}", table.index[row]);
            let mut link = Link::new(id, from, to, LinkKind::Switch).lockable();
            link.label = table.label(row);
            link.normally = if table.flag(row, "closed", true) { Position::Closed } else { Position::Open };
            self.links.push(link);
        }
        self.bounded()
    }

    fn branches(&mut self) -> Result<(), FileError> {
        for (name, switched, kind, from, to) in [
            ("line", "l", LinkKind::Cable, "from_bus", "to_bus"),
            ("trafo", "t", LinkKind::Transformer, "hv_bus", "lv_bus"),
            ("impedance", "", LinkKind::Cable, "from_bus", "to_bus"),
            ("tcsc", "", LinkKind::Cable, "from_bus", "to_bus"),
            ("dcline", "", LinkKind::Inverter, "from_bus", "to_bus"),
        ] {
            let table = self.table(name)?;
            for row in 0..table.index.len() {
                let number = table.index[row];
                let ends = [table.number(row, from)?, table.number(row, to)?].map(|b| self.end(switched, number, b));
                self.branch(&table, row, format!("{name} {number}"), kind, ends);
            }
        }
        let table = self.table("trafo3w")?;
        for row in 0..table.index.len() {
            let number = table.index[row];
            let middle = format!("trafo3w {number}");
            self.nodes.push(Node { label: table.label(row), ..Node::new(&middle, NodeKind::Junction) });
            for side in ["hv_bus", "mv_bus", "lv_bus"] {
                let end = self.end("t3", number, table.number(row, side)?);
                let id = format!("trafo3w {number} {}", &side[..2]);
                self.branch(&table, row, id, LinkKind::Transformer, [middle.clone(), end]);
            }
        }
        self.bounded()
    }

    /// A branch; out of service, it is a path that is open and takes no lock.
    fn branch(&mut self, table: &Table, row: usize, id: String, kind: LinkKind, [from, to]: [String; 2]) {
        let mut link = Link::new(id, from, to, kind);
        link.label = table.label(row);
        if !table.flag(row, "in_service", true) {
            link.kind = LinkKind::Switch;
            link.normally = Position::Open;
        }
        self.links.push(link);
    }

    /// Where a branch ends at a bus: at its switch there, if it has one.
    fn end(&self, switched: &str, number: i64, at: i64) -> String {
        let end = end(switched, number, &bus(at));
        if self.ends.contains(&end) { end } else { bus(at) }
    }

    fn at_buses(&mut self) -> Result<(), FileError> {
        let source = |sort| (NodeKind::Source, sort);
        for (name, (kind, sort)) in [
            ("ext_grid", source(SourceSort::Grid)),
            ("gen", source(SourceSort::Generator)),
            ("sgen", source(SourceSort::Generator)),
            ("asymmetric_sgen", source(SourceSort::Generator)),
            ("storage", source(SourceSort::Battery)),
            // What stands for a network outside may feed as well.
            ("xward", source(SourceSort::SecondFeeder)),
            ("ward", source(SourceSort::SecondFeeder)),
            ("load", (NodeKind::Load, SourceSort::Unsaid)),
            ("asymmetric_load", (NodeKind::Load, SourceSort::Unsaid)),
            ("motor", (NodeKind::Load, SourceSort::Unsaid)),
        ] {
            let table = self.table(name)?;
            for row in 0..table.index.len() {
                let id = format!("{name} {}", table.index[row]);
                let pv = table.text(row, "type").eq_ignore_ascii_case("pv");
                let sort = if pv && kind == NodeKind::Source { SourceSort::Pv } else { sort };
                self.nodes.push(Node { label: table.label(row), sort, ..Node::new(&id, kind) });
                let at = bus(table.number(row, "bus")?);
                self.branch(&table, row, format!("{id} at {at}"), LinkKind::Cable, [at, id]);
            }
        }
        self.bounded()
    }

    /// Tables at buses that are not known here, such as those of converters: what they hold is there, and nobody knows what it is.
    fn unknown(&mut self) -> Result<(), FileError> {
        let Some(tables) = self.tables.as_object() else { return Err(wrong("_object", Odd::File)) };
        let other =
            |name: &&String| !KNOWN.contains(&name.as_str()) && !name.starts_with("res_") && !name.starts_with('_');
        for name in tables.keys().filter(other) {
            // What is no table is none of ours.
            let Ok(table) = self.table(name) else { continue };
            let at_buses = table.columns.iter().filter(|c| *c == "bus" || c.ends_with("_bus"));
            let at_buses: Vec<String> = at_buses.cloned().collect();
            for row in 0..if at_buses.is_empty() { 0 } else { table.index.len() } {
                let id = format!("{name} {}", table.index[row]);
                self.nodes.push(Node { label: table.label(row), ..Node::new(&id, NodeKind::Unknown) });
                for column in &at_buses {
                    let at = bus(table.number(row, column)?);
                    self.links.push(Link::new(format!("{id} {column}"), at, &id, LinkKind::Cable));
                }
            }
        }
        self.bounded()
    }
}

/// The tables that are read, and those that neither carry nor feed.
const KNOWN: [&str; 20] = [
    "bus",
    "switch",
    "line",
    "trafo",
    "trafo3w",
    "impedance",
    "tcsc",
    "dcline",
    "ext_grid",
    "gen",
    "sgen",
    "asymmetric_sgen",
    "storage",
    "xward",
    "ward",
    "load",
    "asymmetric_load",
    "motor",
    "shunt",
    "measurement",
];

fn bus(number: i64) -> String {
    format!("bus {number}")
}

fn end(switched: &str, number: i64, bus: &str) -> String {
    let name = match switched {
        "l" => "line",
        "t" => "trafo",
        "t3" => "trafo3w",
        _ => "branch",
    };
    format!("{name} {number} at {bus}")
}
