//! The rules of Stillbar that need nothing but values: proving dead, and the supply network.
//!
//! Promises: pure functions, so no file, thread, clock or random source; the same values give the same answer; unknown comes out as treat as
//! live. Start at [`prove::plan_case`], [`prove::conditions::unmet`] and [`supply::check`].

pub mod json;
pub mod prove;
pub mod supply;
