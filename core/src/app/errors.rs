//! What can go wrong between a shell and the core.

pub use crate::store::OpenError;

/// The device could not do what the core asked of it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[cfg_attr(feature = "bindings", derive(uniffi::Error))]
pub enum PlatformError {
    /// Why, in one sentence.
    #[error("{why}")]
    Failed {
        /// The sentence.
        why: String,
    },
}
