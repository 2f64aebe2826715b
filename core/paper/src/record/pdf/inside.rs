//! Takes journal and pictures out of a PDF, without believing anything of its structure: what is taken out is checked, and the pages are
//! made again from it.

use std::io::Read;

use crate::record::file::{MAX_FILE_BYTES, MAX_PHOTOS};

/// What was found.
#[derive(Default)]
pub(in crate::record) struct Inside {
    /// The embedded file.
    pub journal: Option<Vec<u8>>,
    /// The JPEG pictures.
    pub pictures: Vec<Vec<u8>>,
}

/// Looks at every stream (ISO 32000-1, 7.3.8) of the file.
pub(in crate::record) fn inside(pdf: &[u8]) -> Inside {
    let mut found = Inside::default();
    let mut at = 0;
    while let Some(begin) = find(pdf, b"stream", at) {
        at = begin + 6;
        // Not the end of another, and right behind a dictionary.
        let before = pdf[..begin].trim_ascii_end();
        if !before.ends_with(b">>") {
            continue;
        }
        let from = match (pdf.get(at), pdf.get(at + 1)) {
            (Some(b'\r'), Some(b'\n')) => at + 2,
            (Some(b'\n'), _) => at + 1,
            _ => continue,
        };
        let dictionary = &before[find_last(before, b" obj").unwrap_or(0)..];
        let has = |name: &[u8]| find(dictionary, name, 0).is_some();
        let length = number_after(dictionary, b"/Length ").filter(|n| from + n <= pdf.len());
        let Some(end) = length.map(|n| from + n).or_else(|| find(pdf, b"endstream", from)) else { continue };
        let bytes = &pdf[from..end];
        if has(b"/EmbeddedFile") && found.journal.is_none() {
            found.journal = if has(b"/FlateDecode") { inflated(bytes) } else { Some(bytes.to_vec()) };
        } else if has(b"/DCTDecode") && found.pictures.len() < MAX_PHOTOS {
            found.pictures.push(bytes.to_vec());
        }
        at = end;
    }
    found
}

fn inflated(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let most = MAX_FILE_BYTES as u64;
    flate2::read::ZlibDecoder::new(bytes).take(most + 1).read_to_end(&mut out).ok()?;
    (out.len() as u64 <= most).then_some(out)
}

fn find(bytes: &[u8], what: &[u8], from: usize) -> Option<usize> {
    let rest = bytes.get(from..)?;
    // The first byte is looked for alone: windows over all of a large file would be slow.
    let mut at = 0;
    while let Some(step) = rest[at..].iter().position(|b| *b == what[0]) {
        at += step;
        if rest[at..].starts_with(what) {
            return Some(from + at);
        }
        at += 1;
    }
    None
}

fn find_last(bytes: &[u8], what: &[u8]) -> Option<usize> {
    // A dictionary is short; what lies further back belongs to something else.
    let from = bytes.len().saturating_sub(4096);
    bytes[from..].windows(what.len()).rposition(|w| w == what).map(|at| from + at)
}

fn number_after(bytes: &[u8], name: &[u8]) -> Option<usize> {
    let from = find(bytes, name, 0)? + name.len();
    let digits: String = bytes[from..].iter().take(10).take_while(|b| b.is_ascii_digit()).map(|b| *b as char).collect();
    digits.parse().ok()
}
