//! Screens.
pub mod parts;
