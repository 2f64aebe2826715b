//! The tests of the office. Whatever the database has to do with runs over both backends (`rig::each`).

mod answers;
mod company;
#[path = "../../../core/tests/it/desk.rs"]
#[allow(dead_code, reason = "the core's tests use the rest")]
mod desk;
mod exchange;
mod log;
mod people;
mod phone;
mod photos;
mod postgres;
mod records;
mod rig;
mod simulation;
mod stamps;
mod store;
mod sync;
mod wire;
mod words;
