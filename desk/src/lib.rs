//! The desk: the field app of Stillbar in a browser on a laptop.
//!
//! It draws what the core says and sends back what the person did; no rule and no text of the job is in here. Start at
//! [`render::page`] for what is drawn, at [`server::router`] for what is answered, and at [`cli::run`] for the commands.

pub mod body;
pub mod calls;
pub mod cli;
pub mod company;
pub mod error;
pub mod file;
pub mod folder;
pub mod guard;
pub mod office;
pub mod photo;
pub mod platform;
pub mod record;
pub mod render;
pub mod server;
pub mod start;
pub mod supply;
pub mod tag_read;
pub mod tags;
pub mod told;
pub mod words;
