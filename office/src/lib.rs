//! The office of Stillbar: a server that takes in what phones recorded, hands it on to the phones of the same site, and shows it to
//! people.
//!
//! It is stateless over its database: any number of processes may stand over one PostgreSQL, and nothing is in a process's memory that
//! another would miss. No rule of a job is in here; the fold is the core's. Start at [`exchange`] for the phones, at
//! [`web::routes()`] for all that is answered, at [`start::run`] for the command.

pub mod audit;
pub mod built;
pub mod enrol;
pub mod error;
pub mod exchange;
pub mod key;
pub mod log;
pub mod office;
pub mod people;
pub mod photos;
pub mod rate;
pub mod records;
pub mod stamp;
pub mod start;
pub mod store;
pub mod web;

/// Bytes as hexadecimal digits in small letters.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|b| format!("{b:02x}")).collect()
}
