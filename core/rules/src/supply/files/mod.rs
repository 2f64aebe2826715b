//! Networks in files: our JSON, a pair of CSV files that a spreadsheet can make, and pandapower's JSON.
//!
//! A file is read whole or refused with the place and what is wrong there. The formats are in `docs/formats.md`.

mod cells;
mod csv;
mod fault;
mod json;
mod pandapower;
mod value;

use super::model::{Link, LinkKind, Node, NodeKind, Position, SourceSort};
use super::network::{Network, SupplyError};

pub use csv::{from_csv, to_csv};
pub use fault::{FileError, FileFault, List, Many, Odd, Place, Wanted};
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
    /// What was taken for something unknown, at most 20.
    pub remarks: Vec<Remark>,
}

/// A word for a kind that is not known here, so that the part is taken for unknown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Remark {
    /// The part.
    pub place: Place,
    /// The list that it is in, which says what kinds there are.
    pub list: List,
    /// The word.
    pub word: String,
}

/// Reads a network from JSON, ours or pandapower's, in UTF-8. At most [`MAX_BYTES`].
pub fn from_json(text: &str) -> Result<Read, FileError> {
    if text.len() > MAX_BYTES {
        return Err(FileError::whole(FileFault::TooLarge));
    }
    // Some editors put a byte order mark in front.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(FileError::whole(FileFault::EmptyJson));
    }
    if pandapower::is_one(text) { pandapower::read(text) } else { json::read(text) }
}

/// Remarks, as far as they are wanted.
#[derive(Default)]
struct Remarks(Vec<Remark>);

impl Remarks {
    fn add(&mut self, place: &Place, list: List, word: &str) {
        if self.0.len() < MAX_REMARKS {
            self.0.push(Remark { place: place.clone(), list, word: word.to_owned() });
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

fn source_sort(word: &str) -> Result<SourceSort, FileFault> {
    let not_one =
        || FileFault::NotOneOf { word: word.to_owned(), known: SourceSort::ALL.map(SourceSort::name).to_vec() };
    SourceSort::ALL.into_iter().find(|sort| sort.name() == word).ok_or_else(not_one)
}

fn position(word: &str) -> Result<Position, FileFault> {
    let all = [Position::Open, Position::Closed];
    let not_one = || FileFault::NotOneOf { word: word.to_owned(), known: all.map(Position::word).to_vec() };
    all.into_iter().find(|position| position.word() == word).ok_or_else(not_one)
}

/// Fits the parts of a file together.
fn network(nodes: Vec<Node>, links: Vec<Link>, remarks: Remarks) -> Result<Read, SupplyError> {
    Ok(Read { network: Network::new(nodes, links)?, remarks: remarks.0 })
}
