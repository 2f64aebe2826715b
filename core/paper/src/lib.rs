//! Paper: what is printed and handed out, the record of a job and sheets of tags.
//!
//! Promises: nothing here opens a data folder, reads a clock or waits for a network; the same entries give the same bytes. Start at
//! [`record::make`], [`record::verify()`] and [`sheet`].

pub mod record;
pub mod sheet;
