//! Photos as evidence: from a camera file to what is kept, shown and judged, in one bounded pass.
//!
//! Promises: the original is only read; what is made for sharing holds the picture and nothing else (no place, no serial
//! number); whatever the file holds, the answer is a [`Checked`] or a sentence for the person, never a panic; the size is
//! known before anything is decoded. A poor picture is warned of and never refused: the person on site may have no better
//! one. Start at [`check`].

mod copies;
mod decode;
mod header;
mod measure;
mod orient;
mod warn;

use std::panic::{self, AssertUnwindSafe};

use sha2::{Digest, Sha256};

pub use copies::{PRINT_SIDE, THUMBNAIL_SIDE, WORKING_SIDE};
pub use measure::{Exposure, MEASURED_SIDE};
pub use warn::{BLURRED_BELOW, tag_warnings};

use decode::Pixels;

pub use crate::tag::read::MAX_PIXELS;
use crate::tag::read::{FoundTag, Luma, still};
use stillbar_values::PhotoDoubt;

/// Most bytes of a photo: a 12 MP camera file has 3 to 6 MB.
pub const MAX_PHOTO_BYTES: usize = 40 << 20;
/// Most pixels of the luma plane that tags are read from: all of a 12 MP photo (4032 x 3024).
pub const MAX_LUMA_PIXELS: u64 = 12_500_000;

/// What is known of a photo, and what was made from it.
#[derive(Debug, Clone, PartialEq)]
pub struct Checked {
    /// Media type by the file's own first bytes, whatever it was called.
    pub media: &'static str,
    /// Pixels across, upright.
    pub width: u32,
    /// Pixels down, upright.
    pub height: u32,
    /// How the camera was held: 1 to 8, the Exif tag 0x0112; 1 where the file does not say.
    pub orientation: u8,
    /// Variance of the Laplacian at [`MEASURED_SIDE`].
    pub sharpness: f32,
    /// How the light was.
    pub exposure: Exposure,
    /// SHA-256 of the file as it came, hex.
    pub sha256: String,
    /// JPEG, upright, long side at most [`THUMBNAIL_SIDE`], no metadata.
    pub thumbnail: Vec<u8>,
    /// JPEG, upright, long side at most [`WORKING_SIDE`], no metadata.
    pub working: Vec<u8>,
    /// JPEG, upright, long side at most [`PRINT_SIDE`], no metadata.
    pub print: Vec<u8>,
    /// Brightness, one byte a pixel, upright, at most [`MAX_LUMA_PIXELS`].
    pub luma: Vec<u8>,
    /// Pixels across of `luma`.
    pub luma_width: u32,
    /// Pixels down of `luma`.
    pub luma_height: u32,
    /// What is poor about the picture.
    pub warnings: Vec<PhotoDoubt>,
}

impl Checked {
    /// The codes that are read in it.
    pub fn codes(&self) -> FoundTag {
        // The plane has the size that it claims, by construction.
        Luma::new(self.luma_width, self.luma_height, &self.luma).map(|luma| still(&luma)).unwrap_or_default()
    }
}

/// The media type of a picture that can be kept, by its first bytes.
pub fn media(bytes: &[u8]) -> Option<&'static str> {
    header::sniff(bytes).ok().map(header::ImageKind::media)
}

/// Why a file cannot be kept as a photo. Each is a sentence for the person that says what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PhotoError {
    /// No bytes.
    #[error("The photo is empty. Take it again.")]
    Empty,
    /// More than [`MAX_PHOTO_BYTES`].
    #[error("The photo has more than 40 MB. Set the camera to a smaller size and take it again.")]
    TooManyBytes,
    /// More than [`MAX_PIXELS`].
    #[error(
        "The photo says that it has {width} x {height} pixels; at most 60 million are read. \
         Set the camera to a smaller size and take it again."
    )]
    TooManyPixels {
        /// Across, as the file says.
        width: u32,
        /// Down, as the file says.
        height: u32,
    },
    /// HEIC, HEIF or AVIF.
    #[error(
        "This photo is in a format (HEIC) that cannot be kept here. Set the camera to JPEG, which some cameras call most \
         compatible, and take it again."
    )]
    Heic,
    /// Several pictures in one.
    #[error("This file is a moving picture. Take a single photo.")]
    Moving,
    /// Nothing that is known here.
    #[error("This file is not a JPEG, PNG or WebP picture. Choose a photo.")]
    Foreign,
    /// The end is missing.
    #[error("The photo ends too early: part of the file is missing. Take it again, or copy it again from the camera.")]
    CutShort,
    /// Damaged, or of a kind of JPEG, PNG or WebP that no camera writes.
    #[error("The photo is damaged and cannot be read as {0}. Take it again, or copy it again from the camera.")]
    Damaged(&'static str),
}

/// Reads a photo once and makes all that is wanted of it.
pub fn check(bytes: &[u8]) -> Result<Checked, PhotoError> {
    if bytes.is_empty() {
        return Err(PhotoError::Empty);
    }
    if bytes.len() > MAX_PHOTO_BYTES {
        return Err(PhotoError::TooManyBytes);
    }
    let kind = header::sniff(bytes)?;
    // The decoders are others' code on a stranger's bytes. They are built to give errors; should one panic, the app stays up.
    panic::catch_unwind(AssertUnwindSafe(|| read(kind, bytes))).unwrap_or(Err(PhotoError::Damaged(kind.name())))
}

fn read(kind: header::ImageKind, bytes: &[u8]) -> Result<Checked, PhotoError> {
    let (width, height) = header::size(kind, bytes)?;
    if u64::from(width) * u64::from(height) > MAX_PIXELS {
        return Err(PhotoError::TooManyPixels { width, height });
    }
    let damaged = || PhotoError::Damaged(kind.name());
    let orientation = orient::orientation(kind, bytes);

    // The full picture in colour is the largest thing here, so it is only ever held once, and turned after it is small.
    let colour = decode::rgb(kind, bytes).filter(|p| (p.width, p.height) == (width, height)).ok_or_else(damaged)?;
    let small = copies::shrunk(&colour, WORKING_SIDE).ok_or_else(damaged)?;
    let luma = measure::luma(colour);
    let luma = orient::upright(measure::at_most(luma, MAX_LUMA_PIXELS).ok_or_else(damaged)?, orientation);

    let working = orient::upright(small, orientation);
    let print = copies::shrunk(&working, PRINT_SIDE).ok_or_else(damaged)?;
    let thumbnail = copies::shrunk(&working, THUMBNAIL_SIDE).ok_or_else(damaged)?;
    let (sharpness, exposure) = measure::measure(&luma);
    let (width, height) = if orientation > 4 { (height, width) } else { (width, height) };
    let Pixels { data: luma, width: luma_width, height: luma_height } = luma;
    Ok(Checked {
        media: kind.media(),
        width,
        height,
        orientation,
        sharpness,
        exposure,
        sha256: sha256(bytes),
        thumbnail: copies::jpeg(&thumbnail).ok_or_else(damaged)?,
        working: copies::jpeg(&working).ok_or_else(damaged)?,
        print: copies::jpeg(&print).ok_or_else(damaged)?,
        luma,
        luma_width,
        luma_height,
        warnings: warn::of_light(sharpness, &exposure),
    })
}

/// What names `bytes` (FIPS 180-4): 64 hexadecimal digits in small letters.
pub fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect()
}
