//! The supply network of a site, as a job stands beside it ([`Cut`]). What follows from a network is worked out in [`stillbar_rules::supply`],
//! which is told here as well.

mod cut;

pub use cut::{Cut, held, own_locks, ways};
pub use stillbar_rules::supply::*;
