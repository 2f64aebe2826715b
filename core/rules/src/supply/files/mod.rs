//! Networks in files: our JSON, a pair of CSV files that a spreadsheet can make, and pandapower's JSON.
//!
//! A file is read whole or refused with one sentence that tells the place. The formats are in `docs/formats.md`.

mod cells;
mod csv;
mod json;
mod pandapower;
mod value;

use super::model::{Link, LinkKind, Node, NodeKind, SourceSort};
use super::network::{Network, SupplyError, Where};
use crate::json::quoted;

pub use csv::{from_csv, to_csv};
pub use json::to_json;

/// The largest file, in bytes.
pub const MAX_BYTES: usize = 256 << 20;
/// The most remarks of one file.
const MAX_REMARKS: usize = 20;

/// A network as a file had it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Read {
    /// The network.
    pub network: Network,
    /// What was taken for something unknown, one sentence each, at most 20.
    pub remarks: Vec<String>,
}

/// Why a file is no network: one sentence, with the place and what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}{say}", if place.is_empty() { String::new() } else { format!("{place}: ") })]
pub struct FileError {
    /// Whether it is about the second of two files, that of the links.
    pub second: bool,
    /// Where in the file: `nodes[2].kind`, `line 3, column 7`; empty for the file as a whole.
    pub place: String,
    /// What is wrong and what to write instead, ending in a full stop.
    pub say: String,
}

impl FileError {
    fn new(place: impl Into<String>, say: impl Into<String>) -> FileError {
        FileError { second: false, place: place.into(), say: say.into() }
    }
}

impl From<SupplyError> for FileError {
    fn from(error: SupplyError) -> FileError {
        let place = if error.place == Where::Whole { String::new() } else { error.place.to_string() };
        FileError::new(place, error.say)
    }
}

/// Reads a network from JSON, ours or pandapower's, in UTF-8. At most [`MAX_BYTES`].
pub fn from_json(text: &str) -> Result<Read, FileError> {
    if text.len() > MAX_BYTES {
        let say =
            format!("it is larger than {MAX_BYTES} bytes, the most that is read; leave out what is far from the work.");
        return Err(FileError::new("", say));
    }
    // Some editors put a byte order mark in front.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::new(
            "",
            "it is empty; write at least {\"nodes\":[{\"id\":\"grid\",\"kind\":\"source\"}],\"links\":[]}.",
        ));
    }
    if pandapower::is_one(text) { pandapower::read(text) } else { json::read(text) }
}

/// Remarks, as far as they are wanted.
#[derive(Default)]
struct Remarks(Vec<String>);

impl Remarks {
    fn add(&mut self, place: &str, text: &str, known: &[&str]) {
        if self.0.len() < MAX_REMARKS {
            let known = known.join(", ");
            self.0.push(format!(
                "{place}: {} is no kind known here ({known}), so it is taken for unknown: where it can be reached nothing is shown to be cut.",
                quoted(text)
            ));
        }
    }
}

const NODE_FIELDS: [&str; 9] = ["id", "kind", "sort", "label", "place", "stops", "tell", "circuit", "untraced"];
const LINK_FIELDS: [&str; 10] =
    ["id", "from", "to", "kind", "label", "place", "lockable", "normally", "poles", "conductors"];

/// What a word for a kind means; `None` if it means nothing here.
fn node_kind(word: &str) -> Option<NodeKind> {
    NodeKind::ALL.into_iter().find(|kind| kind.name() == word)
}

fn link_kind(word: &str) -> Option<LinkKind> {
    LinkKind::ALL.into_iter().find(|kind| kind.name() == word)
}

fn source_sort(word: &str) -> Result<SourceSort, String> {
    let names = SourceSort::ALL.map(SourceSort::name).join(", ");
    SourceSort::ALL
        .into_iter()
        .find(|sort| sort.name() == word)
        .ok_or_else(|| format!("{} is not one of {names}.", quoted(word)))
}

fn position(word: &str) -> Result<super::Position, String> {
    match word {
        "open" => Ok(super::Position::Open),
        "closed" => Ok(super::Position::Closed),
        _ => Err(format!("{} is not one of open, closed.", quoted(word))),
    }
}

/// Fits the parts of a file together.
fn network(nodes: Vec<Node>, links: Vec<Link>, remarks: Remarks) -> Result<Read, SupplyError> {
    Ok(Read { network: Network::new(nodes, links)?, remarks: remarks.0 })
}
