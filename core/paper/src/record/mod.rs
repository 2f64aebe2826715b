//! The record of a job: what it claims, and the entries from which anyone can see that the claims follow.
//!
//! Promises: a record is made from the journal alone, with no office and no signal; it says nothing that does not follow from the
//! entries in it; [`verify()`] finds every change of one byte; names can be withheld and the rest still holds; it tells no location. Start
//! at [`make`] and [`verify()`]; [`Report`] is what all the writers write.

mod claim;
mod csv;
mod file;
mod links;
mod make;
mod pdf;
pub mod report;
mod tell;
mod tell_points;
mod tell_proof;
mod tell_state;
mod verify;
mod write_error;

pub use claim::Claim;
pub use csv::csv;
pub use file::{FORMAT, MAX_ENTRIES, MAX_FILE_BYTES, MAX_PHOTOS, VERSION};
pub use make::{Made, RecordError, RecordParts, RereadError, Room, gather, make, photos, reread};
pub use report::Report;
pub use verify::{Anchor, AnchorWitness, Failure, Unreadable, Verdict, verify, verify_with};
pub use write_error::WriteError;
