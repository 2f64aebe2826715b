//! An office that a person wants to join.

use stillbar_protocol::read_code;

/// An office that is to be joined.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Join {
    /// Where it is.
    pub url: String,
    /// The one-time code.
    pub code: String,
}

impl Join {
    /// From the text of the office's code.
    pub fn read(text: &str) -> Option<Join> {
        let (url, code) = read_code(text.trim())?;
        let plain = url.starts_with("https://") || url.starts_with("http://");
        let fits = plain && url.len() <= 200 && (8..=100).contains(&code.len());
        fits.then(|| Join { url: url.trim_end_matches('/').to_owned(), code: code.to_owned() })
    }
}
