//! The app of Stillbar, over the crates beside it, which are told again here so that a shell names one.
//!
//! Promises: a shell draws a [`Screen`], runs its [`Errand`]s and knows nothing of isolating, locks or proving dead. Start at [`Field`], the one
//! object that a shell holds.

#[cfg(feature = "bindings")]
uniffi::setup_scaffolding!();

pub mod app;
#[cfg(feature = "bindings")]
mod bindings;
#[cfg(feature = "demo")]
pub mod demo;
#[cfg(feature = "demo")]
pub mod journey;
pub mod screens;
pub mod tag;

pub use app::{Field, OpenError, Platform, PlatformError};
pub use screens::parts::{self, Errand, Filled, Outcome, Screen};
pub use screens::svg;
pub use stillbar_journal as journal;
pub use stillbar_media::evidence;
pub use stillbar_paper::record;
pub use stillbar_protocol as wire;
pub use stillbar_rules::{job, point, prove, site, supply, world};
pub use stillbar_store as store;
pub use stillbar_sync as sync;
pub use stillbar_text as text;
pub use stillbar_values::{company, names};
