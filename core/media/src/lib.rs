//! Photos and tags: bytes in, values out.
//!
//! Promises: no file, thread, clock or random source is touched here; whatever the bytes are, the answer is a value or a sentence, never a
//! panic; time and memory are bounded by the size of the picture. Start at [`evidence::check`] for a photo, [`tag::read::still`] for a frame.

pub mod evidence;
pub mod tag;
