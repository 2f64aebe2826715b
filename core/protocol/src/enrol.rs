//! Enrolling: a one-time code, shown as a QR, for a token.

use serde::{Deserialize, Serialize};
use stillbar_values::{DeviceId, EntryId};

/// How the text of an office's code begins.
const CODE: &str = "stillbar-enrol:1:";
/// What a phone signs, before the code.
const SIGNED: &str = "stillbar-enrol-1:";

/// What a phone asks for when it joins an office.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Ask {
    /// The one-time code.
    pub code: String,
    /// The phone's public key.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub device: DeviceId,
    /// What the phone is called.
    pub label: String,
    /// Ed25519 over [`signed`], base64.
    pub sig: String,
}

/// What it is given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Enrolled {
    /// Its token.
    pub token: String,
    /// What the office is called.
    pub office: String,
    /// The sites of the phone.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schema(required = true, value_type = Vec<crate::schema::Id>))]
    pub sites: Vec<EntryId>,
    /// The office's own public key.
    #[serde(default)]
    #[cfg_attr(feature = "schema", schema(required = true, nullable = false, value_type = crate::schema::Id))]
    pub office_device: Option<DeviceId>,
}

/// What a phone signs to show that it has the key that it asks with.
pub fn signed(code: &str) -> String {
    format!("{SIGNED}{code}")
}

/// The text of a QR for a code of the office at `url`.
pub fn code_text(url: &str, code: &str) -> String {
    format!("{CODE}{url}:{code}")
}

/// Address and code of such a text. The code is behind the last colon; the address has colons of its own.
pub fn read_code(text: &str) -> Option<(&str, &str)> {
    text.strip_prefix(CODE)?.rsplit_once(':')
}
