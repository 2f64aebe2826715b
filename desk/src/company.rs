//! `stillbar company-rules check`: what a file of rules of a company holds, or what is wrong with it.

use std::path::Path;

use stillbar_core::company::MAX_FILE;
use stillbar_core::job::company::{CompanyError, CompanyFile};
use stillbar_core::journal::fingerprint;
use stillbar_core::text;

use crate::file::{self, FileError};

/// Why a file of rules is not told.
#[derive(Debug, thiserror::Error)]
pub enum CompanyCheckError {
    /// It cannot be read.
    #[error(transparent)]
    File(#[from] FileError),
    /// It is no file of rules, or what it says cannot hold.
    #[error("{name}: {}", text::company_error(.why))]
    Rules {
        /// What the file is called.
        name: String,
        /// What is wrong, and where.
        why: Box<CompanyError>,
    },
    /// The answer could not be written as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

/// Checks the file at `path`, or what is piped in where it is `-`.
pub fn check(path: &Path, json: bool) -> Result<String, CompanyCheckError> {
    let name = file::name(path);
    let text = file::read_text(path, MAX_FILE, &name, "a file of company rules")?;
    let read = CompanyFile::from_json(&text).map_err(|why| CompanyCheckError::Rules { name, why: Box::new(why) })?;
    let sha256 = fingerprint(&read.rules);
    if json {
        let rules: serde_json::Value = serde_json::from_str(&read.to_json())?;
        return Ok(serde_json::to_string(&serde_json::json!({ "sha256": sha256, "rules": rules }))?);
    }
    let told = text::company_file(&read, &sha256);
    let widest = told.iter().map(|(label, _)| label.chars().count()).max().unwrap_or(0);
    let lines = told.iter().map(|(label, says)| {
        let gap = " ".repeat(widest - label.chars().count());
        format!("{label}{gap}  {says}\n")
    });
    Ok(lines.collect())
}
