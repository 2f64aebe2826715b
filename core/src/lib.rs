//! The brain of Stillbar.
//!
//! Everything that knows about isolating, locks, proving dead and records is here; a shell draws a [`Screen`] and runs
//! its [`Errand`]s. Start at [`Field`], the one object that a shell holds.

#[cfg(feature = "bindings")]
uniffi::setup_scaffolding!();

pub mod app;
#[cfg(feature = "bindings")]
mod bindings;
pub mod demo;
pub mod journey;
pub mod record;
pub mod screens;
pub mod store;
pub mod sync;
pub mod tag;
pub mod text;
pub mod words;

pub use app::{Field, OpenError, Platform, PlatformError};
pub use screens::parts::{self, Errand, Filled, Outcome, Screen};
pub use screens::svg;
pub use stillbar_journal as journal;
pub use stillbar_media::evidence;
use stillbar_rules::json;
pub use stillbar_rules::{job, point, prove, site, supply, world};
pub use stillbar_values::names;
