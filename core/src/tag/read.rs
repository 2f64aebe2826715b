//! Reading tags from brightness: a frame of a camera, or a still photo.
//!
//! Promises: a text is a tag only if its check character fits; a decoder that panics is a decoder that found nothing; time and memory
//! are bounded by the picture's size. Start at [`frame`] and [`still`].

mod decode;
mod scale;

use std::borrow::Cow;

use super::TagId;
use scale::{halve, stretch};

/// Most pixels that are looked at.
pub const MAX_PIXELS: u64 = 60_000_000;
/// Most codes that are told of one picture, and the longest text of a foreign one, in characters.
const MAX_CODES: usize = 16;
const MAX_TEXT: usize = 500;

/// Brightness, row by row from the top left, one byte a pixel, 0 black.
#[derive(Debug, Clone)]
pub struct Luma<'a> {
    width: u32,
    height: u32,
    pixels: Cow<'a, [u8]>,
}

/// A picture that cannot be looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum LumaError {
    /// The bytes are not as many as the size says.
    #[error("the picture has another number of bytes than its size says")]
    Size,
    /// Too large, or empty.
    #[error("the picture is empty or has more than {MAX_PIXELS} pixels")]
    Pixels,
}

impl<'a> Luma<'a> {
    /// `pixels` of a picture of `width` times `height`.
    pub fn new(width: u32, height: u32, pixels: &'a [u8]) -> Result<Luma<'a>, LumaError> {
        let count = u64::from(width) * u64::from(height);
        if count == 0 || count > MAX_PIXELS {
            return Err(LumaError::Pixels);
        }
        if count != pixels.len() as u64 {
            return Err(LumaError::Size);
        }
        Ok(Luma { width, height, pixels: Cow::Borrowed(pixels) })
    }
}

/// What was found in a picture.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Found {
    /// Tags, each once.
    pub tags: Vec<TagId>,
    /// Texts of other codes, each once, shortened to 500 characters. A tag whose check character does not fit is among neither: it was
    /// misread, and another look will tell.
    pub other: Vec<String>,
}

impl Found {
    fn is_empty(&self) -> bool {
        self.tags.is_empty() && self.other.is_empty()
    }

    fn add(&mut self, texts: Vec<String>) {
        for text in texts {
            if self.tags.len() + self.other.len() >= MAX_CODES {
                return;
            }
            match text.parse::<TagId>() {
                Ok(tag) if self.tags.contains(&tag) => {}
                Ok(tag) => self.tags.push(tag),
                Err(super::TagError::Check) => {}
                Err(super::TagError::Foreign) => {
                    let short: String = text.chars().take(MAX_TEXT).collect();
                    if !self.other.contains(&short) {
                        self.other.push(short);
                    }
                }
            }
        }
    }
}

/// Looks at a frame: quick, because the next one comes at once. Half size first, where a tag at arm's length is easily read.
pub fn frame(luma: &Luma) -> Found {
    let half = halve(luma);
    for picture in [&half, luma] {
        for texts in [decode::first(picture), decode::all(picture)] {
            let mut found = Found::default();
            found.add(texts);
            if !found.is_empty() {
                return found;
            }
        }
    }
    let stretched = stretch(&half);
    let mut found = Found::default();
    found.add(decode::all(&stretched));
    found.add(decode::first(&stretched));
    found
}

/// Looks at a still photo: every size from a few hundred pixels up to the whole, as it is and with its contrast stretched.
pub fn still(luma: &Luma) -> Found {
    let mut sizes = vec![luma.clone()];
    while let Some(last) = sizes.last().filter(|l| l.width.max(l.height) > 800) {
        sizes.push(halve(last));
    }
    let mut found = Found::default();
    // Small ones first: there, noise and blur are averaged away, and each costs a quarter of the next.
    for picture in sizes.iter().rev() {
        found.add(decode::all(picture));
        found.add(decode::first(picture));
        let stretched = stretch(picture);
        found.add(decode::all(&stretched));
        if found.is_empty() {
            found.add(decode::first(&stretched));
        }
    }
    found
}
