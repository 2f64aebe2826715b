//! The exchange: what phones push and pull. docs/exchange.md is the description for whoever writes another end.
//!
//! Promises: an entry is answered by [`answer()`] and by nothing else; what is answered `accepted`, `duplicate` or `aside` is on disk;
//! a device's chain has no gap and no second entry of one number; the numbers of a site's feed have no gap, and a reader never
//! passes one that is committed later; nothing of one site reaches a device of another. Start at [`push()`].

pub mod answer;
mod aside;
mod digest;
mod feeds;
mod kept;
mod pull;
mod push;
mod rolled;
mod wire;

pub use answer::{Answer, Why, answer};
pub use aside::release;
pub use digest::digest;
pub use feeds::Feeds;
pub use kept::Kept;
pub use pull::{Cursor, Page, pull};
pub use push::{Answered, Offered, Pushed, push, sites_of};
pub use wire::*;

/// Entries of one push at most.
pub const MOST_ENTRIES: usize = 500;
/// Bytes of one push at most, after gzip is taken off.
pub const MOST_BYTES: usize = 4 * 1024 * 1024;
/// Bytes of bodies in one page at most; one entry always fits.
pub const PAGE_BYTES: usize = 1024 * 1024;
/// How far a device's clock may be ahead of the office's, in milliseconds.
pub const AHEAD_MS: i64 = 24 * 3_600_000;
/// Entries of one device in quarantine at most.
pub const MOST_QUARANTINE: u64 = 5_000;
/// Devices that are not enrolled whose entries are kept aside, at most.
pub const MOST_STRANGERS: u64 = 1_000;
