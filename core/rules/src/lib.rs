//! The rules of Stillbar: points and locks, proving dead, the supply network.
//!
//! Promises: pure functions over values and entries, so no file, thread, clock or random source; the same values give the same answer; unknown
//! comes out as treat as live. Start at [`point::Lock`], [`prove::plan_case`], [`prove::conditions::unmet`] and [`supply::check`].

pub mod job;
pub mod json;
pub mod point;
pub mod prove;
pub mod site;
pub mod supply;
pub mod world;

use stillbar_journal as journal;
use stillbar_values::{TagId, names};
