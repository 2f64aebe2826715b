//! Proving dead: what was done, beside the rules of [`stillbar_rules::prove`], which are told here as well.
//!
//! Promises: a run that met an indication, or whose indicator failed its second proof, is never "proved dead"; unknown comes out as treat
//! as live. Start at [`Run`] and [`crate::job::Job::standing`].

mod run;

pub use run::{Earth, Met, Proof, Run, Standing, Taken, Voided};
pub use stillbar_rules::prove::*;
