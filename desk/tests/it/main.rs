//! The tests of the desk: what is drawn, what is answered, who is let in, and the folders it makes.

mod blocks;
mod door;
mod field;
mod folder;
mod gallery;
mod help;
mod platform;
mod private;
mod proving;
mod render;
mod samples;
mod server;
mod windows;
mod words;
