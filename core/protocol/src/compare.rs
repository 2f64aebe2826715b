//! Counts and rolling hashes, to compare at the end of an exchange.

use serde::{Deserialize, Serialize};
use stillbar_values::{DeviceId, EntryId};

/// What the office holds of a phone's sites.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Digest {
    /// By site.
    pub sites: Vec<SiteSum>,
}

/// One site.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct SiteSum {
    /// The site.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub site: EntryId,
    /// By device.
    pub devices: Vec<DeviceSum>,
}

/// What one device wrote for one site.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct DeviceSum {
    /// The device.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub device: DeviceId,
    /// How many entries.
    #[cfg_attr(feature = "schema", schema(value_type = i64, minimum = 0))]
    pub count: u64,
    /// The highest number.
    #[cfg_attr(feature = "schema", schema(value_type = i64, minimum = 0))]
    pub last_seq: u64,
    /// SHA-256 chained over the ids in the order of their numbers, from 32 zero bytes: h = SHA-256(h || id).
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub hash: EntryId,
}
