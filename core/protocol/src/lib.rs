//! The wire between phones and an office, defined once: docs/exchange.md tells what the calls mean.
//!
//! Promises: every type reads what it writes; what an older side leaves out has a meaning here; what a newer side adds is passed over, and
//! a word that a newer side invents becomes the most cautious reading of its list, so that the rest is still understood. Nothing here
//! decides, opens a file, reads a clock or waits. Whether bytes are an entry is the journal's to say ([`Carried`]). Start at [`WireEntry`] and
//! [`Capabilities`].

#[macro_use]
mod words;

mod carried;
mod compare;
mod enrol;
mod entries;
pub mod limits;
mod office;
pub mod paths;
pub mod photos;
mod refusal;
#[cfg(feature = "schema")]
pub mod schema;

pub use carried::Carried;
pub use compare::{DeviceSum, Digest, SiteSum};
pub use enrol::{Ask, Enrolled, code_text, read_code, signed};
pub use entries::{Answer, Answered, Erased, Last, Of, Page, Pull, Push, Pushed, Why, WireEntry};
pub use office::Capabilities;
pub use photos::{AllWanted, Size, Wanted};
pub use refusal::{Code, Refusal};

/// The version of the exchange.
pub const EXCHANGE: u32 = 1;
/// The oldest version of an entry that is taken.
pub const OLDEST_ENTRY: u32 = 1;
/// The newest version of an entry that is taken.
pub const NEWEST_ENTRY: u32 = 1;
