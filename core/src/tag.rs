//! Tags: what a QR code at a point of isolation says.
//!
//! Promises: a text with one wrong or two exchanged characters is not taken for a tag (ISO 7064 MOD 37-2), and none of its characters looks
//! like another. Start at [`TagId`], [`Symbol`] for what is printed, and [`read`] for what a camera sees.

pub use stillbar_media::tag::{QUIET, Symbol, read};
pub use stillbar_paper::sheet;
pub use stillbar_values::tag::{LENGTH, MARK, TagError, TagId, check};
