//! What is wrong with a file of a network, and where.

use super::case::{broken, kind};
use super::catalogue::say;
use super::lists::commas;
use super::supply::network_fault;
use super::words::quoted;
use stillbar_rules::json::JsonKind;
use stillbar_rules::supply::files::{FileError, FileFault, List, MAX_BYTES, Many, Odd, Place, Remark, Wanted};
use stillbar_rules::supply::{LinkKind, MAX_CONDUCTORS, MAX_PARTS, NodeKind};

/// The most characters of a word of a file that a sentence repeats.
const WORD: usize = 24;
/// The least that a file can hold.
const LEAST: &str = r#"{"nodes":[{"id":"grid","kind":"source"}],"links":[]}"#;

/// Why a file is no network, with its place: one sentence.
pub fn file_error(error: &FileError) -> String {
    match error.place {
        Place::Whole => file_fault(&error.why),
        _ => say!("file-error", place = file_place(&error.place), why = file_fault(&error.why)),
    }
}

/// Where in a file; empty for the file as a whole.
pub fn file_place(place: &Place) -> String {
    match place {
        Place::Whole => String::new(),
        Place::List(list) => list.name().to_owned(),
        // As a path is written in JSON.
        Place::Part(list, number, "") => format!("{}[{number}]", list.name()),
        Place::Part(list, number, field) => format!("{}[{number}].{field}", list.name()),
        Place::Line(line, "") => say!("place-line", line = *line),
        Place::Line(line, field) => say!("place-field", line = *line, field = *field),
        Place::At { line, column } => say!("place-column", line = *line, column = *column),
        Place::Table(table) => table.clone(),
        Place::Row(table, row) => say!("place-row", table = table, row = *row),
    }
}

/// What in a file was taken for something unknown, in a sentence.
pub fn remark(remark: &Remark) -> String {
    let known: Vec<String> = match remark.list {
        List::Nodes => NodeKind::ALL.iter().map(|kind| kind.name().to_owned()).collect(),
        List::Links => LinkKind::ALL.iter().map(|kind| kind.name().to_owned()).collect(),
    };
    let (place, word) = (file_place(&remark.place), quoted(&remark.word, WORD));
    say!("remark-kind", place = place, word = word, known = commas(known))
}

/// What is wrong with a file; begins with a small letter but for a few.
pub fn file_fault(why: &FileFault) -> String {
    match why {
        FileFault::Network(why) => network_fault(why),
        FileFault::IdTwice { id, line } => {
            let first = say!("place-line", line = *line);
            say!("network-id-twice", id = quoted(id, stillbar_rules::supply::MAX_ID), first = first)
        }
        FileFault::TooLarge => say!("file-too-large", most = MAX_BYTES),
        FileFault::EmptyJson => say!("file-empty-json", least = LEAST),
        FileFault::EmptyCsv { known } => say!("file-empty-csv", known = known.join(",")),
        FileFault::Json(why) => broken(why),
        FileFault::Csv { why } => say!("file-no-csv", why = why),
        FileFault::QuoteOpen => say!("file-quote-open"),
        FileFault::Cells { count, first } => say!("file-cells", count = *count, first = *first),
        FileFault::FieldUnknown { field, known } => {
            let known = commas(known.iter().map(|field| (*field).to_owned()));
            say!("file-field-unknown", field = quoted(field, WORD), known = known)
        }
        FileFault::FieldTwice { field } => say!("file-field-twice", field = quoted(field, WORD)),
        FileFault::FieldMissing { list, field } => missing(*list, field),
        FileFault::ListMissing => say!("file-list-missing"),
        FileFault::NoNetwork => say!("file-no-network"),
        FileFault::NoObject => say!("file-no-object"),
        FileFault::NoList => say!("file-no-list"),
        FileFault::TooMany(Many::Items) => say!("file-too-many", most = MAX_PARTS),
        FileFault::TooMany(Many::Lines) => say!("file-too-many-lines", most = MAX_PARTS),
        FileFault::TooMany(Many::Parts) => say!("file-too-many-parts", most = MAX_PARTS),
        FileFault::ListTooLong { count, most } => say!("list-too-long", count = *count, most = *most),
        FileFault::TextEmpty => say!("file-text-empty"),
        FileFault::Wants { wanted, given } => wants(*wanted, *given),
        FileFault::NotOneOf { word, known } => {
            let known = commas(known.iter().map(|word| (*word).to_owned()));
            say!("file-not-one-of", word = quoted(word, WORD), known = known)
        }
        FileFault::ConductorCount => say!("file-conductor-count", most = MAX_CONDUCTORS),
        FileFault::Pandapower(Odd::File) => say!("file-pandapower"),
        FileFault::Pandapower(Odd::Table) => say!("file-pandapower-table"),
        FileFault::Pandapower(Odd::Column(column)) => say!("file-pandapower-column", column = column),
    }
}

fn missing(list: List, field: &str) -> String {
    let fix = match (list, field) {
        (List::Nodes, "kind") => say!("fix-node-kind"),
        (List::Links, "kind") => say!("fix-link-kind"),
        (_, "from") => say!("fix-from"),
        (_, "to") => say!("fix-to"),
        _ => say!("fix-id"),
    };
    say!("file-field-missing", field = field, fix = fix)
}

fn wants(wanted: Wanted, given: JsonKind) -> String {
    let given = kind(given);
    match wanted {
        Wanted::Text => say!("wants-text", given = given),
        Wanted::Flag => say!("wants-flag", given = given),
        Wanted::List => say!("wants-list", given = given),
    }
}
