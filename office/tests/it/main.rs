//! The tests of the office. Whatever the database has to do with runs over both backends (`rig::each`).

mod answers;
mod exchange;
mod phone;
mod photos;
mod postgres;
mod rig;
