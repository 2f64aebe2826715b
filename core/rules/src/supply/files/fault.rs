//! What can be wrong with a file, and where in it.

use super::super::fault::NetworkFault;
use super::super::network::{SupplyError, Where};
use crate::json::{Broken, JsonKind};

/// One of the two lists of a network.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum List {
    /// The nodes.
    Nodes,
    /// The links.
    Links,
}

impl List {
    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            List::Nodes => "nodes",
            List::Links => "links",
        }
    }
}

/// Where in a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// The file as a whole.
    Whole,
    /// One of the lists.
    List(List),
    /// The part of a list with this number, from 0, and one of its fields or the whole of it (empty).
    Part(List, usize, &'static str),
    /// A line, from 1, and one of its fields or the whole of it (empty).
    Line(u64, &'static str),
    /// A character of a text.
    At {
        /// Its line, from 1.
        line: usize,
        /// Its column, from 1.
        column: usize,
    },
    /// A table of pandapower's.
    Table(String),
    /// A row of one.
    Row(String, i64),
}

impl Place {
    /// The same part, and one of its fields.
    pub(super) fn field(&self, field: &'static str) -> Place {
        match self {
            Place::Part(list, number, _) => Place::Part(*list, *number, field),
            Place::Line(line, _) => Place::Line(*line, field),
            other => other.clone(),
        }
    }
}

impl From<Where> for Place {
    fn from(place: Where) -> Place {
        match place {
            Where::Whole => Place::Whole,
            Where::Node(number, field) => Place::Part(List::Nodes, number, field),
            Where::Link(number, field) => Place::Part(List::Links, number, field),
        }
    }
}

/// Why a file is no network.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FileError {
    /// Whether it is about the second of two files, that of the links.
    pub second: bool,
    /// Where in the file.
    pub place: Place,
    /// What is wrong.
    pub why: FileFault,
}

impl FileError {
    pub(super) fn new(place: Place, why: FileFault) -> FileError {
        FileError { second: false, place, why }
    }

    pub(super) fn whole(why: FileFault) -> FileError {
        FileError::new(Place::Whole, why)
    }
}

impl From<SupplyError> for FileError {
    fn from(error: SupplyError) -> FileError {
        FileError::new(error.place.into(), FileFault::Network(error.why))
    }
}

/// What there are too many of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Many {
    /// Items of a list.
    Items,
    /// Lines of a file.
    Lines,
    /// Parts of a network.
    Parts,
}

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wanted {
    /// A text.
    Text,
    /// True or false.
    Flag,
    /// A list.
    List,
}

/// What in a file of pandapower's is not as it writes it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Odd {
    /// The file.
    File,
    /// A table.
    Table,
    /// A column.
    Column(String),
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileFault {
    /// Its parts are no network.
    Network(NetworkFault),
    /// Two lines with one id.
    IdTwice {
        /// The id.
        id: String,
        /// The first line that has it.
        line: u64,
    },
    /// It is larger than [`super::MAX_BYTES`].
    TooLarge,
    /// Nothing is in a JSON file.
    EmptyJson,
    /// Nothing is in a CSV file that has these fields.
    EmptyCsv {
        /// The fields.
        known: &'static [&'static str],
    },
    /// It is no JSON that can be read.
    Json(Broken),
    /// It is no CSV.
    Csv {
        /// What its reader says.
        why: String,
    },
    /// A quotation mark is left open.
    QuoteOpen,
    /// A line with more or fewer cells than the first.
    Cells {
        /// How many it has.
        count: usize,
        /// How many the first has.
        first: usize,
    },
    /// A field that is not in the format.
    FieldUnknown {
        /// The field.
        field: String,
        /// Those that are.
        known: &'static [&'static str],
    },
    /// A field that is there twice.
    FieldTwice {
        /// The field.
        field: String,
    },
    /// A field of a part that must be there.
    FieldMissing {
        /// The list that the part is in.
        list: List,
        /// The field.
        field: &'static str,
    },
    /// One of the two lists is not there.
    ListMissing,
    /// What stands for the whole file is no object with the two lists.
    NoNetwork,
    /// What stands for a part is no object.
    NoObject,
    /// What stands for one of the lists is none.
    NoList,
    /// More than are taken.
    TooMany(Many),
    /// A list with too many items.
    ListTooLong {
        /// How many it has.
        count: usize,
        /// How many are taken.
        most: usize,
    },
    /// A text without a character.
    TextEmpty,
    /// Something else belongs here.
    Wants {
        /// What.
        wanted: Wanted,
        /// What stands there.
        given: JsonKind,
    },
    /// A word that is none of these.
    NotOneOf {
        /// The word.
        word: String,
        /// What is known.
        known: Vec<&'static str>,
    },
    /// A number that is no number of conductors.
    ConductorCount,
    /// It is not as pandapower writes it.
    Pandapower(Odd),
}
