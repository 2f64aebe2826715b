//! The brain of Stillbar.
//!
//! Everything that knows about isolating, locks, proving dead and records is here; a shell draws a [`Screen`] and runs
//! its [`Errand`]s. Start at [`Field`], the one object that a shell holds.

#[cfg(feature = "bindings")]
uniffi::setup_scaffolding!();

pub mod app;
pub mod demo;
pub mod evidence;
pub mod job;
pub mod journal;
pub mod journey;
mod json;
pub mod names;
pub mod point;
pub mod prove;
pub mod record;
pub mod screens;
pub mod site;
pub mod store;
pub mod supply;
pub mod sync;
pub mod tag;
pub mod text;
pub mod words;
pub mod world;

pub use app::{Field, OpenError, Platform, PlatformError};
pub use screens::parts::{self, Errand, Filled, Outcome, Screen};
pub use screens::svg;
