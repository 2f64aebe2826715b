//! What is said of a picture that is kept all the same.

use super::Exposure;
use crate::tag::TagId;

/// Sharpness below which a picture is said to be blurred (common practice, no source; a picture of a plain wall is below
/// it too, which is why nothing is refused).
pub const BLURRED_BELOW: f32 = 40.0;
/// Mean brightness, and share of pixels with nothing in them, from which the light is spoken of (common practice, no source).
const DARK_BELOW: f32 = 40.0;
const BRIGHT_ABOVE: f32 = 225.0;
const BLACK_ABOVE: f32 = 0.7;
const WHITE_ABOVE: f32 = 0.5;

/// What is poor about a picture, or who its tag belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PhotoWarning {
    /// Out of focus, moved, or nothing in it.
    Blurred,
    /// Too little light.
    Dark,
    /// Too much light.
    Bright,
    /// The tag of another point.
    OtherTag {
        /// What the tag belongs to.
        belongs: String,
        /// What the picture was taken for.
        here: String,
    },
    /// A tag of ours that belongs to nothing known to this device.
    UnknownTag {
        /// The tag.
        tag: TagId,
        /// What the picture was taken for.
        here: String,
    },
    /// A tag was to be seen and is not.
    NoTag {
        /// What the picture was taken for.
        here: String,
    },
}

pub(super) fn of_light(sharpness: f32, light: &Exposure) -> Vec<PhotoWarning> {
    let mut warnings = Vec::new();
    if sharpness < BLURRED_BELOW {
        warnings.push(PhotoWarning::Blurred);
    }
    if light.mean < DARK_BELOW || light.black > BLACK_ABOVE {
        warnings.push(PhotoWarning::Dark);
    }
    if light.mean > BRIGHT_ABOVE || light.white > WHITE_ABOVE {
        warnings.push(PhotoWarning::Bright);
    }
    warnings
}

/// Compares the tags `found` in a picture with the ones `expected` of what it was taken for, which is called `here`;
/// `name_of` tells what a tag belongs to.
///
/// One expected tag is enough: its neighbours may well be in the picture too. Without one, every tag that was found is
/// named. Where none is expected and none found, there is nothing to say.
pub fn tag_warnings(
    found: &[TagId],
    expected: &[TagId],
    name_of: &dyn Fn(TagId) -> Option<String>,
    here: &str,
) -> Vec<PhotoWarning> {
    let here = here.to_owned();
    if found.is_empty() {
        return if expected.is_empty() { Vec::new() } else { vec![PhotoWarning::NoTag { here }] };
    }
    if found.iter().any(|tag| expected.contains(tag)) {
        return Vec::new();
    }
    let mut warnings = Vec::new();
    for tag in found {
        let here = here.clone();
        let warning = match name_of(*tag) {
            Some(belongs) => PhotoWarning::OtherTag { belongs, here },
            None => PhotoWarning::UnknownTag { tag: *tag, here },
        };
        // A point may have two tags, and a tag may be read twice.
        if !warnings.contains(&warning) {
            warnings.push(warning);
        }
    }
    warnings
}
