//! The tests of the office. Whatever the database has to do with runs over both backends (`rig::each`).

mod answers;
mod exchange;
mod people;
mod phone;
mod photos;
mod postgres;
mod records;
mod rig;
mod store;
