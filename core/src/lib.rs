//! The brain of Stillbar.
//!
//! Everything that knows about isolating, locks, proving dead and records is here; a shell draws a [`Screen`] and runs
//! its [`Errand`]s. Start at [`Field`], the one object that a shell holds.

pub mod app;
pub mod screens;

pub use app::{Field, OpenError, Platform};
pub use screens::parts::{self, Errand, Filled, Outcome, Screen};
