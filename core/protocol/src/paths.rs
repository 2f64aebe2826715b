//! Where each call goes.

/// [`crate::Capabilities`].
pub const CAPABILITIES: &str = "/capabilities";
/// [`crate::Ask`] for [`crate::Enrolled`].
pub const ENROL: &str = "/enrol";
/// [`crate::Push`] for [`crate::Pushed`], and [`crate::Pull`] for a [`crate::Page`].
pub const ENTRIES: &str = "/entries";
/// [`crate::Digest`].
pub const DIGEST: &str = "/digest";
/// [`crate::AllWanted`].
pub const WANTED: &str = "/wanted";
/// Begins an upload; a photo is below it by its name.
pub const PHOTOS: &str = "/photos";
