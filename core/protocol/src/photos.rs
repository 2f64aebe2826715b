//! Photos: which are wanted, and the headers of an upload (tus 1.0.0, <https://tus.io/protocols/resumable-upload>).

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Deserializer, Serialize};

/// The version of tus that every call of an upload names in [`RESUMABLE`].
pub const TUS: &str = "1.0.0";
/// The extensions of tus that an office knows.
pub const EXTENSIONS: &str = "creation,checksum,termination";
/// The header with [`TUS`].
pub const RESUMABLE: &str = "tus-resumable";
/// How many bytes of an upload are there.
pub const OFFSET: &str = "upload-offset";
/// How many bytes it will have.
pub const LENGTH: &str = "upload-length";
/// What it will be: [`metadata`].
pub const METADATA: &str = "upload-metadata";
/// `sha256` and the hash of the bytes of this call, base64.
pub const CHECKSUM: &str = "upload-checksum";
/// The kind of a body of an upload.
pub const OCTETS: &str = "application/offset+octet-stream";
/// The status of bytes that are not what they should be.
pub const MISMATCH: u16 = 460;

/// A size of a photo, in the order in which they go out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Size {
    /// 320 px.
    Thumbnail,
    /// 960 px: what records show, named by the signed entry as the thumbnail is.
    Print,
    /// The file as the camera gave it.
    Original,
}

impl Size {
    /// All, in the order in which they go out.
    pub const ALL: [Size; 3] = [Size::Thumbnail, Size::Print, Size::Original];

    /// Its name on the wire.
    pub fn name(self) -> &'static str {
        match self {
            Size::Thumbnail => "320",
            Size::Print => "960",
            Size::Original => "original",
        }
    }

    /// The size of this name.
    pub fn named(name: &str) -> Option<Size> {
        Size::ALL.into_iter().find(|size| size.name() == name)
    }

    /// What stands behind the hash in the name of the file.
    pub fn suffix(self) -> &'static str {
        match self {
            Size::Thumbnail => ".320.jpg",
            Size::Print => ".960.jpg",
            Size::Original => "",
        }
    }
}

impl Serialize for Size {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.name())
    }
}

#[cfg(feature = "schema")]
impl utoipa::PartialSchema for Size {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::Schema> {
        crate::schema::one_of(Size::ALL.iter().map(|size| size.name()))
    }
}

#[cfg(feature = "schema")]
impl utoipa::ToSchema for Size {}

/// Photos that the office lacks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct AllWanted {
    /// One for each photo; at most [`crate::limits::WANTED`].
    #[cfg_attr(feature = "schema", schema(max_items = 500))]
    pub wanted: Vec<Wanted>,
}

/// A photo that the office lacks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Wanted {
    /// SHA-256 of the original, hex.
    #[cfg_attr(feature = "schema", schema(value_type = crate::schema::Id))]
    pub sha256: String,
    /// What is lacking of it. A size that is not known here is passed over: nobody can send it.
    #[serde(deserialize_with = "known")]
    pub sizes: Vec<Size>,
}

fn known<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<Size>, D::Error> {
    let names = Vec::<String>::deserialize(from)?;
    Ok(names.iter().filter_map(|name| Size::named(name)).collect())
}

/// What an upload says that it will be: `sha256` (the original's, in hex) and `size`, each in base64.
pub fn metadata(sha256: &str, size: Size) -> String {
    format!("sha256 {},size {}", STANDARD.encode(sha256), STANDARD.encode(size.name()))
}

/// Reads [`metadata`]; other keys are passed over.
pub fn read_metadata(text: &str) -> Option<(String, Size)> {
    let value = |key: &str| {
        let mut pairs = text.split(',').map(|pair| pair.trim().split_once(' ').unwrap_or((pair.trim(), "")));
        let (_, value) = pairs.find(|(name, _)| *name == key)?;
        String::from_utf8(STANDARD.decode(value.trim()).ok()?).ok()
    };
    Some((value("sha256")?, Size::named(&value("size")?)?))
}
