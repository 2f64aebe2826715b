//! Why a record that holds could not be written.

use krilla::error::KrillaError;
use stillbar_text as text;

/// Why no file came of a record. None of it is a person's to mend.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// As JSON.
    #[error("{}", text::json(.0))]
    Json(#[from] serde_json::Error),
    /// As CSV.
    #[error(transparent)]
    Csv(#[from] csv::Error),
    /// A font that is built in cannot be read.
    #[error(transparent)]
    Font(#[from] ttf_parser::FaceParsingError),
    /// A part of a PDF cannot be made.
    #[error("{0}")]
    Part(&'static str),
    /// A picture cannot be shown; why, in the words of who writes the PDF.
    #[error("{0}")]
    Picture(String),
    /// The PDF is refused by who writes it; the beginning of why.
    #[error("{}", begins(.0))]
    Pdf(KrillaError),
    /// The settings of the PDF are refused.
    #[error("{0}")]
    Settings(String),
}

/// It may tell of every letter of every page.
fn begins(error: &KrillaError) -> String {
    format!("{error:?}").chars().take(300).collect()
}
