//! What the types look like, for a description of the API.

use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};
use utoipa::{PartialSchema, ToSchema};

/// An id: 64 hex digits in small letters.
pub struct Id;

impl PartialSchema for Id {
    fn schema() -> RefOr<Schema> {
        ObjectBuilder::new().schema_type(Type::String).pattern(Some("^[0-9a-f]{64}$")).into()
    }
}

impl ToSchema for Id {}

/// A text that is one of these words.
pub(crate) fn one_of(words: impl Iterator<Item = &'static str>) -> RefOr<Schema> {
    ObjectBuilder::new().schema_type(Type::String).enum_values(Some(words)).into()
}
