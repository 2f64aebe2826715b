//! What an office says of itself to anybody.

use serde::{Deserialize, Serialize};

/// What an office can do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Capabilities {
    /// The version of the exchange.
    pub exchange: u32,
    /// The oldest version of an entry that it takes.
    #[serde(default = "first")]
    #[cfg_attr(feature = "schema", schema(required = true))]
    pub oldest: u32,
    /// The newest version of an entry that it takes.
    #[serde(default = "first")]
    #[cfg_attr(feature = "schema", schema(required = true))]
    pub newest: u32,
    /// Entries that it takes at once.
    pub entries_per_push: u32,
    /// Bytes that it takes at once, after gzip is taken off; 0 if it does not say.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schema(required = true, value_type = i64, minimum = 0))]
    pub bytes_per_push: u64,
    /// Entries that it gives at once; 0 if it does not say.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schema(required = true))]
    pub entries_per_page: u32,
    /// Bytes of an original at most.
    #[cfg_attr(feature = "schema", schema(value_type = i64, minimum = 0))]
    pub photo_bytes: u64,
    /// Bytes of a copy at most; 0 if it does not say.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schema(required = true, value_type = i64, minimum = 0))]
    pub copy_bytes: u64,
    /// The office's clock, milliseconds since 1970-01-01T00:00Z.
    #[cfg_attr(feature = "schema", schema(minimum = 0))]
    pub now_ms: i64,
}

/// An office that names no versions takes the first.
fn first() -> u32 {
    1
}
