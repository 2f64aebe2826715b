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

pub use answer::{Answer, Why, answer, say};
pub use aside::release;
pub use digest::digest;
pub use feeds::Feeds;
pub use kept::FeedEntry;
pub use pull::{Cursor, pull};
pub use push::{Offered, push, sites_of};
pub use stillbar_protocol::limits::{AHEAD_MS, ENTRIES as MAX_ENTRIES, PAGE_BYTES, PUSH_BYTES as MAX_BYTES};
pub use wire::open;

/// Entries of one device in quarantine at most.
pub const MAX_QUARANTINE: u64 = 5_000;
/// Devices that are not enrolled whose entries are kept aside, at most.
pub const MAX_STRANGERS: u64 = 1_000;
