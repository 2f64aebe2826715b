//! Reading tags from pixels: a camera's frame or a photo.
//!
//! Promises: a tag is only told if its check character fits; foreign codes are told as text and never followed; a decoder's
//! panic ends that look at the picture and nothing else; time and memory are bounded by the size of the picture. Start at
//! [`still`].
//!
//! No single look reads all: a coarse scale hides noise and fine texture, a fine one keeps small codes, thresholds against the
//! neighbourhood undo glare and shade, sharpening undoes blur. So a picture is looked at again until something is found.

mod decoders;
mod gathered;
mod plane;

use decoders::{nested, skewed};
use gathered::Gathered;
use plane::Plane;

use super::TagId;

/// Most pixels of a picture: the full size of current phones is 48 to 50 MP.
pub const MAX_PIXELS: u64 = 60_000_000;
/// Most foreign texts that are told of one picture.
pub const MAX_OTHER: usize = 16;
/// Most characters of a foreign text; the rest is cut off. The largest QR code has 7089.
pub const MAX_OTHER_CHARS: usize = 8_000;

/// Longest side at which no code that fills a good part of a photo has been lost to noise.
const COARSE: u32 = 640;
/// Longest side up to which the laborious looks are taken; above it they would take seconds on a phone.
const LABORIOUS: u32 = 2_200;

/// Brightness of a picture: rows from the top without gaps, one byte a pixel.
#[derive(Clone, Copy)]
pub struct Luma<'a> {
    width: u32,
    height: u32,
    pixels: &'a [u8],
}

/// Why bytes are not a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum LumaError {
    /// No pixel, or more than [`MAX_PIXELS`].
    #[error("a picture has 1 to 60 million pixels: ask the camera for another size")]
    Size,
    /// Not one byte a pixel.
    #[error("the picture does not have one byte a pixel: give width x height bytes without gaps between rows")]
    Bytes,
}

impl<'a> Luma<'a> {
    /// The picture, if its size is what it claims.
    pub fn new(width: u32, height: u32, pixels: &'a [u8]) -> Result<Luma<'a>, LumaError> {
        let count = u64::from(width) * u64::from(height);
        if count == 0 || count > MAX_PIXELS {
            return Err(LumaError::Size);
        }
        if pixels.len() as u64 != count {
            return Err(LumaError::Bytes);
        }
        Ok(Luma { width, height, pixels })
    }
}

/// What the codes in a picture say, each once, in the order in which they were found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FoundTag {
    /// Tags whose check character fits.
    pub tags: Vec<TagId>,
    /// Texts of foreign codes, at most [`MAX_OTHER`] of at most [`MAX_OTHER_CHARS`]. A text that begins like a tag and is none
    /// is in neither list: it is a tag misread, and the remedy is another look.
    pub other: Vec<String>,
}

/// Reads a camera's frame: few looks, because the next frame comes anyway.
pub fn frame(luma: &Luma) -> FoundTag {
    let mut found = Gathered::default();
    let full = Plane::of(luma);
    let half = full.halved();
    found.add(nested(&half));
    found.add(nested(&full));
    if found.is_unsure() {
        found.add(skewed(&half));
    }
    found.into_found()
}

/// Reads a photo: scale after scale, and, if nothing is found, by all means that there are.
pub fn still(luma: &Luma) -> FoundTag {
    let mut found = Gathered::default();
    let scales = scales(luma);
    for plane in scales.iter().rev() {
        found.add(nested(plane));
    }
    if found.is_unsure() {
        laborious(&scales, &mut found);
    }
    found.into_found()
}

/// The picture and its halves, the largest first.
fn scales<'a>(luma: &Luma<'a>) -> Vec<Plane<'a>> {
    let mut scales = vec![Plane::of(luma)];
    while let Some(last) = scales.last().filter(|p| p.long_side() > COARSE) {
        scales.push(last.halved());
    }
    scales
}

/// Every means on every scale that is small enough, the cheap scales first, until something is found.
fn laborious(scales: &[Plane], found: &mut Gathered) {
    type Means = fn(&Plane) -> Vec<String>;
    const MEANS: [Means; 6] = [
        skewed,
        |p| nested(&p.sharpened(2)),
        |p| nested(&p.thresholded(24)),
        |p| nested(&p.sharpened(5)),
        |p| nested(&p.smoothed().thresholded(48)),
        |p| nested(&p.inverted()),
    ];
    for means in MEANS {
        for plane in scales.iter().rev().filter(|p| p.long_side() <= LABORIOUS) {
            found.add(means(plane));
            if !found.is_unsure() {
                return;
            }
        }
    }
}
