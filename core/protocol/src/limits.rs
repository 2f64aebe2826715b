//! How much of anything there may be.

/// Entries of one push, and of one page, at most.
pub const ENTRIES: usize = 500;
/// Bytes of one push at most, before and after gzip is taken off.
pub const PUSH_BYTES: usize = 4 * 1024 * 1024;
/// Bytes of bodies in one page at most; one entry always fits.
pub const PAGE_BYTES: usize = 1024 * 1024;
/// Bytes of a request to enrol at most.
pub const ENROL_BYTES: usize = 4096;
/// Photos that are told as wanted at once.
pub const WANTED: usize = 500;
/// Bytes of a photo's copy at most; one of 960 pixels has a twentieth of that.
pub const COPY_BYTES: i64 = 4 * 1024 * 1024;
/// Bytes of one call of an upload whose checksum is verified before any of it is kept, at most.
pub const CHECKED_BYTES: usize = 4 * 1024 * 1024;
/// Bytes of an upload that are kept at once, and that a phone sends at once: what breaks off is lost by no more than these.
pub const PIECE_BYTES: usize = 256 * 1024;
/// How far a device's clock may be ahead, in milliseconds.
pub const AHEAD_MS: i64 = 24 * 3_600_000;
