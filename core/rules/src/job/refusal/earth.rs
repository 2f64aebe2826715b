//! Temporary earths.

/// Why something about a temporary earth is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum EarthRefusal {
    /// Its number and its place.
    Unsaid,
    /// Another one of that number is in.
    Alike {
        /// Its number.
        label: String,
        /// Where it is.
        at: String,
    },
    /// Nothing is proved dead.
    NotProved,
    /// No such earth is in.
    NotIn,
    /// One is in, and a cover or a supply may not come back.
    LeftIn {
        /// Its number.
        label: String,
        /// Where it is.
        at: String,
    },
}
