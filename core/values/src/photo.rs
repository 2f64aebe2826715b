//! What is poor about a photo.

use serde::{Deserialize, Serialize};

use crate::TagId;

/// What is poor about a photo that is kept all the same, or whom its tag belongs to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhotoDoubt {
    /// Out of focus, moved, or nothing in it.
    Blurred,
    /// Too little light.
    Dark,
    /// Too much light.
    Bright,
    /// It shows the tag of another point.
    OtherTag {
        /// What that one was called then.
        belongs: String,
    },
    /// It shows a tag of ours that belonged to nothing known there.
    UnknownTag {
        /// The tag.
        tag: TagId,
    },
    /// What it was taken for has a tag, and none can be read in it.
    NoTag,
}
