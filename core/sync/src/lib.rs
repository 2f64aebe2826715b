//! The exchange with others: the office when there is signal, another phone where there is none.
//!
//! Promises: an exchange only adds, nothing here is changed or taken away by what comes in; what comes in is checked as if it came from
//! nobody; no call of a screen waits for the network; whatever goes wrong, the next try is always set. Start at [`rules`], which decides;
//! `office` talks, `run` does the exchange, `worker` is the thread.

pub mod cases;
mod holder;
mod join;
pub mod near;
mod no_answer;
pub mod office;
pub mod rules;
mod run;
pub mod worker;

pub use holder::{Done, Exchanged, Holder};
pub use join::Join;
pub use no_answer::no_answer;
pub use office::OfficeClient;
pub use office::{Call, HeardAnswer, OfficeLink};
