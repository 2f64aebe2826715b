//! The tests of the desk: what is drawn, what is answered, who is let in, and the folders it makes.

mod blocks;
mod folder;
mod gallery;
mod platform;
mod proving;
mod render;
mod samples;
mod server;
