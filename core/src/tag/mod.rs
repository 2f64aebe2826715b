//! Tags: what a QR code at a point of isolation says.
//!
//! Promises: a text with one wrong or two exchanged characters is not taken for a tag (ISO 7064 MOD 37-2). Start at [`TagId`],
//! [`Symbol`] for what is printed, and [`read`] for what a camera sees.

pub mod read;
pub mod sheet;
mod symbol;

pub use stillbar_values::tag::{LENGTH, MARK, TagError, TagId, check};
pub use symbol::{QUIET, Symbol};
