//! A pair of CSV files (RFC 4180), nodes and links, as a spreadsheet makes them.

use csv::{ReaderBuilder, StringRecord, Terminator, Trim, WriterBuilder};

use super::cells::{Cell, CellFault, into_link, into_node, link_needs, node_needs};
use super::{FileError, FileFault, LINK_FIELDS, MAX_BYTES, Many, NODE_FIELDS, Place, Read, Remarks};
use crate::supply::fault::NetworkFault;
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
        let line = |place: Where| match place {
            Where::Whole => Place::Whole,
            Where::Node(i, field) => Place::Line(node_lines[i], field),
            Where::Link(i, field) => Place::Line(link_lines[i], field),
        };
        let why = match error.why {
            // Another part is named by its line here.
            NetworkFault::IdTwice { id, first } => match line(first) {
                Place::Line(line, _) => FileFault::IdTwice { id, line },
                _ => FileFault::Network(NetworkFault::IdTwice { id, first }),
            },
            why => FileFault::Network(why),
        };
        FileError { second: matches!(error.place, Where::Link(..)), place: line(error.place), why }
    })
}

struct CsvText<'a>(&'a str);

impl Cell for CsvText<'_> {
    fn text(&self) -> Result<&str, FileFault> {
        Ok(self.0)
    }

    fn flag(&self) -> Result<bool, FileFault> {
        // Spreadsheets write TRUE; people write yes.
        match self.0.to_ascii_lowercase().as_str() {
            "true" | "yes" | "1" => Ok(true),
            "false" | "no" | "0" => Ok(false),
            _ => Err(FileFault::NotOneOf {
                word: self.0.to_owned(),
                known: vec!["true", "false", "yes", "no", "1", "0"],
            }),
        }
    }

    fn list(&self, most: usize) -> Result<Vec<String>, FileFault> {
        let list: Vec<String> = self.0.split(LIST).map(|item| item.trim().to_owned()).collect();
        if list.len() > most {
            return Err(FileFault::ListTooLong { count: list.len(), most });
        }
        Ok(list)
    }

    fn count(&self) -> Option<f64> {
        self.0.parse().ok()
    }
}

type Put<'p, P> = dyn FnMut(&mut P, &'static str, &CsvText, &Place) -> Result<(), CellFault> + 'p;

fn rows<P: Default>(
    text: &str,
    known: &'static [&'static str],
    mut put: impl FnMut(&mut P, &'static str, &CsvText, &Place) -> Result<(), CellFault>,
    needs: impl Fn(&dyn Fn(&str) -> bool) -> Result<(), CellFault>,
) -> Result<Vec<(u64, P)>, FileError> {
    if text.len() > MAX_BYTES {
        return Err(FileError::whole(FileFault::TooLarge));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::whole(FileFault::EmptyCsv { known }));
    }
    // One that is left open would swallow all that follows.
    if text.bytes().filter(|byte| *byte == b'"').count() % 2 == 1 {
        return Err(FileError::whole(FileFault::QuoteOpen));
    }
    let first = text.lines().next().unwrap_or_default();
    let delimiter = if first.contains(';') && !first.contains(',') { b';' } else { b',' };
    let mut reader =
        ReaderBuilder::new().delimiter(delimiter).flexible(true).trim(Trim::All).from_reader(text.as_bytes());
    let header = reader.headers().map_err(|error| FileError::new(Place::Line(1, ""), no_csv(&error)))?.clone();
    let fault = |line: u64, (field, why): CellFault| FileError::new(Place::Line(line, field), why);
    let mut fields: Vec<&'static str> = Vec::with_capacity(header.len());
    for (i, name) in header.iter().enumerate() {
        let Some(field) = known.iter().find(|field| **field == name) else {
            return Err(fault(1, ("", FileFault::FieldUnknown { field: name.to_owned(), known })));
        };
        fields.push(field);
        if header.iter().take(i).any(|other| other == name) {
            return Err(fault(1, ("", FileFault::FieldTwice { field: name.to_owned() })));
        }
    }
    needs(&|field| header.iter().any(|name| name == field)).map_err(|f| fault(1, f))?;
    let mut rows = Vec::new();
    let mut record = StringRecord::new();
    let put: &mut Put<P> = &mut put;
    while reader.read_record(&mut record).map_err(|error| FileError::whole(no_csv(&error)))? {
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
            return Err(fault(line, ("", FileFault::Cells { count: record.len(), first: header.len() })));
        }
        if rows.len() == MAX_PARTS {
            return Err(FileError::whole(FileFault::TooMany(Many::Lines)));
        }
        let mut part = P::default();
        for (field, cell) in fields.iter().zip(record.iter()).filter(|(_, cell)| !cell.is_empty()) {
            put(&mut part, field, &CsvText(cell), &Place::Line(line, "")).map_err(|f| fault(line, f))?;
        }
        let filled =
            |field: &str| header.iter().zip(record.iter()).any(|(name, cell)| name == field && !cell.is_empty());
        needs(&filled).map_err(|f| fault(line, f))?;
        rows.push((line, part));
    }
    Ok(rows)
}

fn no_csv(error: &csv::Error) -> FileFault {
    FileFault::Csv { why: error.to_string() }
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
