//! A pair of CSV files (RFC 4180), nodes and links, as a spreadsheet makes them.

use csv::{ReaderBuilder, StringRecord, Terminator, Trim, WriterBuilder};

use super::cells::{Cell, Fault, into_link, into_node, link_needs, node_needs, unknown};
use super::{FileError, LINK_FIELDS, MAX_BYTES, NODE_FIELDS, Read, Remarks};
use crate::json::quoted;
use crate::supply::model::{Conductors, Link, LinkKind, Node, NodeKind, Position, SourceSort};
use crate::supply::network::{MAX_PARTS, Network, Where};

/// What parts the items of a list in one cell.
const LIST: char = '|';

/// Reads a network from the texts of two CSV files, each at most [`MAX_BYTES`]. A comma or a semicolon parts the cells.
pub fn from_csv(nodes: &str, links: &str) -> Result<Read, FileError> {
    let mut remarks = Remarks::default();
    let nodes: Vec<(u64, Node)> = rows(
        nodes,
        &NODE_FIELDS,
        |part, field, cell, at| into_node(part, field, cell, &mut remarks, at),
        |seen| node_needs(seen),
    )?;
    let links: Vec<(u64, Link)> = rows(
        links,
        &LINK_FIELDS,
        |part, field, cell, at| into_link(part, field, cell, &mut remarks, at),
        |seen| link_needs(seen),
    )
    .map_err(|error| FileError { second: true, ..error })?;
    let (node_lines, nodes): (Vec<u64>, Vec<Node>) = nodes.into_iter().unzip();
    let (link_lines, links): (Vec<u64>, Vec<Link>) = links.into_iter().unzip();
    super::network(nodes, links, remarks).map_err(|error| {
        let place = |line: u64, field: &str| {
            if field.is_empty() { format!("line {line}") } else { format!("line {line}, {field}") }
        };
        match error.place {
            Where::Whole => FileError::new("", error.say),
            Where::Node(i, field) => FileError::new(place(node_lines[i], field), lines_for(&error.say, &node_lines)),
            Where::Link(i, field) => {
                let error = FileError::new(place(link_lines[i], field), lines_for(&error.say, &link_lines));
                FileError { second: true, ..error }
            }
        }
    })
}

/// A sentence that names another part of the list by number names it by line.
fn lines_for(say: &str, lines: &[u64]) -> String {
    let Some((before, rest)) = say.split_once('[') else { return say.into() };
    let Some((number, after)) = rest.split_once(']') else { return say.into() };
    let (Ok(number), Some(before)) =
        (number.parse::<usize>(), before.strip_suffix("nodes").or_else(|| before.strip_suffix("links")))
    else {
        return say.into();
    };
    lines.get(number).map_or_else(|| say.into(), |line| format!("{before}line {line}{after}"))
}

struct Text<'a>(&'a str);

impl Cell for Text<'_> {
    fn text(&self) -> Result<&str, String> {
        Ok(self.0)
    }

    fn flag(&self) -> Result<bool, String> {
        // Spreadsheets write TRUE; people write yes.
        match self.0.to_ascii_lowercase().as_str() {
            "true" | "yes" | "1" => Ok(true),
            "false" | "no" | "0" => Ok(false),
            _ => Err(format!("{} is not one of true, false, yes, no, 1, 0.", quoted(self.0))),
        }
    }

    fn list(&self, most: usize) -> Result<Vec<String>, String> {
        let list: Vec<String> = self.0.split(LIST).map(|item| item.trim().to_owned()).collect();
        if list.len() > most {
            return Err(format!("this list has {} items and at most {most} are taken; shorten it.", list.len()));
        }
        Ok(list)
    }

    fn count(&self) -> Option<f64> {
        self.0.parse().ok()
    }
}

type Put<'p, P> = dyn FnMut(&mut P, &'static str, &Text, &dyn Fn() -> String) -> Result<(), Fault> + 'p;

fn rows<P: Default>(
    text: &str,
    known: &[&'static str],
    mut put: impl FnMut(&mut P, &'static str, &Text, &dyn Fn() -> String) -> Result<(), Fault>,
    needs: impl Fn(&dyn Fn(&str) -> bool) -> Result<(), Fault>,
) -> Result<Vec<(u64, P)>, FileError> {
    if text.len() > MAX_BYTES {
        let say =
            format!("it is larger than {MAX_BYTES} bytes, the most that is read; leave out what is far from the work.");
        return Err(FileError::new("", say));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::new("", format!("it is empty; its first line names the fields: {}.", known.join(","))));
    }
    // One that is left open would swallow all that follows.
    if text.bytes().filter(|byte| *byte == b'"').count() % 2 == 1 {
        return Err(FileError::new("", "a quotation mark in it is not closed; write two for one inside a text."));
    }
    let first = text.lines().next().unwrap_or_default();
    let delimiter = if first.contains(';') && !first.contains(',') { b';' } else { b',' };
    let mut reader =
        ReaderBuilder::new().delimiter(delimiter).flexible(true).trim(Trim::All).from_reader(text.as_bytes());
    let header = reader.headers().map_err(|error| FileError::new("line 1", csv_says(&error)))?.clone();
    let fault = |line: u64, (field, say): Fault| {
        FileError::new(if field.is_empty() { format!("line {line}") } else { format!("line {line}, {field}") }, say)
    };
    let mut fields: Vec<&'static str> = Vec::with_capacity(header.len());
    for (i, name) in header.iter().enumerate() {
        let Some(field) = known.iter().find(|field| **field == name) else {
            return Err(fault(1, unknown(name, known)));
        };
        fields.push(field);
        if header.iter().take(i).any(|other| other == name) {
            return Err(fault(
                1,
                ("", format!("the field {} is there twice; keep the one that is true.", quoted(name))),
            ));
        }
    }
    needs(&|field| header.iter().any(|name| name == field)).map_err(|f| fault(1, f))?;
    let mut rows = Vec::new();
    let mut record = StringRecord::new();
    let put: &mut Put<P> = &mut put;
    while reader.read_record(&mut record).map_err(|error| FileError::new("", csv_says(&error)))? {
        let line = record.position().map_or(0, |at| {
            // A record begins behind the empty lines before it.
            let rest = text.as_bytes()[at.byte() as usize..].iter();
            let empty = rest.take_while(|byte| matches!(byte, b'\r' | b'\n')).filter(|byte| **byte == b'\n').count();
            at.line() + empty as u64
        });
        if record.iter().all(str::is_empty) {
            continue;
        }
        if record.len() < header.len() || record.iter().skip(header.len()).any(|cell| !cell.is_empty()) {
            let say =
                format!("it has {} cells and the first line has {}; make them as many.", record.len(), header.len());
            return Err(fault(line, ("", say)));
        }
        if rows.len() == MAX_PARTS {
            return Err(FileError::new(
                "",
                format!("at most {MAX_PARTS} lines are taken; leave out what is far from the work."),
            ));
        }
        let mut part = P::default();
        for (field, cell) in fields.iter().zip(record.iter()).filter(|(_, cell)| !cell.is_empty()) {
            put(&mut part, field, &Text(cell), &|| format!("line {line}")).map_err(|f| fault(line, f))?;
        }
        let filled =
            |field: &str| header.iter().zip(record.iter()).any(|(name, cell)| name == field && !cell.is_empty());
        needs(&filled).map_err(|f| fault(line, f))?;
        rows.push((line, part));
    }
    Ok(rows)
}

fn csv_says(error: &csv::Error) -> String {
    format!("this is no CSV ({error}); save it as comma-separated values in UTF-8.")
}

/// The network as two CSV files, nodes and links, as RFC 4180 has them.
pub fn to_csv(network: &Network) -> (String, String) {
    let flag = |flag: bool| if flag { "true" } else { "false" }.to_owned();
    let nodes = network.described().iter().map(|n: &Node| {
        vec![
            n.id.clone(),
            NodeKind::name(n.kind).to_owned(),
            if n.sort == SourceSort::Unsaid { String::new() } else { n.sort.name().to_owned() },
            n.label.clone(),
            n.place.clone(),
            n.stops.clone(),
            n.tell.join(&LIST.to_string()),
            n.circuit.map(flag).unwrap_or_default(),
            n.untraced.clone(),
        ]
    });
    let links = network.links().iter().map(|l: &Link| {
        vec![
            l.id.clone(),
            l.from.clone(),
            l.to.clone(),
            LinkKind::name(l.kind).to_owned(),
            l.label.clone(),
            l.place.clone(),
            flag(l.lockable),
            if l.normally == Position::Open { "open" } else { "closed" }.to_owned(),
            conductors(l.poles.as_ref()),
            conductors(l.conductors.as_ref()),
        ]
    });
    (write(&NODE_FIELDS, nodes), write(&LINK_FIELDS, links))
}

fn conductors(conductors: Option<&Conductors>) -> String {
    match conductors {
        None => String::new(),
        Some(Conductors::Count(count)) => count.to_string(),
        Some(Conductors::Names(names)) => names.join(&LIST.to_string()),
    }
}

fn write(header: &[&str], rows: impl Iterator<Item = Vec<String>>) -> String {
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    // Writing to memory cannot fail, and every row has as many cells as the header.
    let _ = writer.write_record(header);
    for row in rows {
        let _ = writer.write_record(&row);
    }
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}
