//! Why there is no journal to work with.

/// Why the data folder could not be opened. Each sentence says what to do; nothing was changed or lost.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "every variant has the one field `what`: the sentence to show")]
pub enum OpenError {
    /// Another process has the folder open.
    #[error("{what}")]
    InUse { what: String },
    /// The database is damaged.
    #[error("{what}")]
    Damaged { what: String },
    /// The database was written by a newer version.
    #[error("{what}")]
    Newer { what: String },
    /// The folder cannot be written.
    #[error("{what}")]
    ReadOnly { what: String },
    /// The disk is full.
    #[error("{what}")]
    DiskFull { what: String },
    /// The device's secret is missing or is not the one that signed this journal.
    #[error("{what}")]
    Secret { what: String },
    /// Anything else, in one sentence.
    #[error("{what}")]
    Other { what: String },
}
