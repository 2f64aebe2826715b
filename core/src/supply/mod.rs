//! The supply network of a site: as its journal tells it ([`Drawn`]), and as a job stands beside it ([`Cut`]). What follows from a network is
//! worked out in [`stillbar_rules::supply`], which is told here as well.

mod cut;
mod drawn;

pub use cut::{Cut, held, own_locks, ways};
pub use drawn::{Drawn, MAX_NOTED, Noted, seen_word};
pub use stillbar_rules::supply::*;
