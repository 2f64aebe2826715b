//! The record as PDF/A-3 (ISO 19005-3, level A): tagged, with its fonts, its pictures and the journal of the job in it.
//!
//! The same record gives the same bytes, so that pages can be made again and compared.

mod figures;
mod flow;
mod ink;
mod inside;
mod pages;
mod summary;
mod text;

use crate::record::write_error::WriteError;
use std::collections::BTreeMap;

use krilla::configure::{Archival, ConfigurationBuilder};
use krilla::embed::{AssociationKind, EmbeddedFile, MimeType};
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::{Document, SerializeSettings};

pub(super) use inside::inside;

use super::file::RecordFile;
use super::report::Report;
use flow::PageFlow;

/// What the embedded file is called.
pub(super) const JOURNAL: &str = "journal-of-the-job.json";

/// The PDF of a record. `file` has no bytes of pictures: they stand on the pages. `photos`: JPEG copies by the SHA-256 of their originals.
pub(super) fn write(
    file: &RecordFile,
    report: &Report,
    photos: &BTreeMap<String, Vec<u8>>,
) -> Result<Vec<u8>, WriteError> {
    let _speaking = report.speaking();
    let mut flow = PageFlow::new()?;
    pages::lay_out(&mut flow, file, report, photos);
    let configuration = ConfigurationBuilder::new().with_archival_validator(Archival::A3_A).finish();
    let configuration = configuration.map_err(|e| WriteError::Settings(format!("{e:?}")))?;
    let mut document = Document::new_with(SerializeSettings { configuration, ..SerializeSettings::default() });
    let made = date(&file.made);
    document.set_metadata(
        Metadata::new()
            .title(format!("Record of isolation: {}", flow.clean(&report.title)))
            .description(
                "What was isolated, proved and handed back, with the signed journal from which it follows".into(),
            )
            .language("en".into())
            .creator("Stillbar".into())
            .producer(file.program.clone())
            .document_id(format!("{} {}", file.job, report.head))
            .creation_date(made),
    );
    let embedded = EmbeddedFile {
        path: JOURNAL.into(),
        mime_type: MimeType::new("application/json"),
        description: Some("The signed entries of the job, and what this document claims of them".into()),
        association_kind: AssociationKind::Source,
        data: file.written()?.into(),
        modification_date: Some(made),
        // As it is, so that anybody finds it with any tool.
        compress: Some(false),
        location: None,
    };
    document.embed_file(embedded).ok_or(WriteError::Part("the journal could not be embedded"))?;
    let marks = ink::paint(&mut document, flow)?;
    let mut outline = Outline::new();
    for (title, at) in marks {
        outline.push_child(OutlineNode::new(title, at));
    }
    document.set_outline(outline);
    document.finish().map_err(WriteError::Pdf)
}

/// An RFC 3339 moment as PDF wants it; what cannot be read is the beginning of 1970, and the file's own text still says what it says.
fn date(text: &str) -> DateTime {
    let part = |from: usize, to: usize| text.get(from..to).and_then(|t| t.parse::<u8>().ok());
    let year = text.get(..4).and_then(|t| t.parse().ok()).unwrap_or(1970);
    let mut date = DateTime::new(year)
        .month(part(5, 7).unwrap_or(1))
        .day(part(8, 10).unwrap_or(1))
        .hour(part(11, 13).unwrap_or(0))
        .minute(part(14, 16).unwrap_or(0))
        .second(part(17, 19).unwrap_or(0));
    let sign = if text.get(19..20) == Some("-") { -1 } else { 1 };
    if let (Some(hours), Some(minutes)) = (part(20, 22), part(23, 25)) {
        date = date.utc_offset_hour(sign * i8::try_from(hours).unwrap_or(0)).utc_offset_minute(minutes);
    }
    date
}
