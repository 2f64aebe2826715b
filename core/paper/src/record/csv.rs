//! Readings and time line as one CSV file (RFC 4180): a row a line of either, the kind first.

use super::report::{Report, When};
use super::write_error::WriteError;

/// The columns.
const HEAD: [&str; 14] = [
    "table",
    "number",
    "at",
    "by",
    "entry",
    "run",
    "kind",
    "first",
    "then",
    "reading",
    "indicates",
    "device",
    "says",
    "withdrawn",
];

/// Readings and time line. Line ends are CRLF, the first line names the columns, and a cell that a spreadsheet would take for a formula has an
/// apostrophe before it.
pub fn csv(report: &Report) -> Result<String, WriteError> {
    let _speaking = report.speaking();
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    out.write_record(HEAD)?;
    for r in &report.readings {
        let run = r.run.map(|n| n.to_string()).unwrap_or_default();
        let indicates = if r.indicates { "yes" } else { "no" };
        row(
            &mut out,
            "reading",
            r.number,
            &r.when,
            [&run, &r.kind, &r.first, &r.then, &r.reading, indicates, "", "", r.withdrawn.as_deref().unwrap_or("")],
        )?;
    }
    for line in &report.time_line {
        let (device, withdrawn) = (line.device.to_string(), line.withdrawn.as_deref().unwrap_or(""));
        row(&mut out, "time line", line.number, &line.when, ["", "", "", "", "", "", &device, &line.says, withdrawn])?;
    }
    let bytes = out.into_inner().map_err(|e| csv::Error::from(e.into_error()))?;
    String::from_utf8(bytes).map_err(|_| WriteError::Part("the table is no text"))
}

fn row(
    out: &mut csv::Writer<Vec<u8>>,
    table: &str,
    number: usize,
    when: &When,
    rest: [&str; 9],
) -> Result<(), WriteError> {
    let number = number.to_string();
    let by = when.named();
    let first = [table, &number, &when.at, by.as_deref().unwrap_or(""), &when.entry];
    let cells = first.into_iter().chain(rest).map(harmless);
    Ok(out.write_record(cells)?)
}

/// What people typed goes to spreadsheets, and must stay text there.
fn harmless(cell: &str) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{cell}") } else { cell.to_owned() }
}
