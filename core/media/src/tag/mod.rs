//! Tags in pixels: what is printed, and what a camera sees.
//!
//! Start at [`Symbol`] for what is printed, and [`read`] for what a camera sees.

pub mod read;
mod symbol;

pub use stillbar_values::tag::{LENGTH, MARK, TagError, TagId, check};
pub use symbol::{QUIET, Symbol};
