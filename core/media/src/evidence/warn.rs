//! What is said of a picture that is kept all the same.

use stillbar_values::PhotoDoubt;

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

pub(super) fn of_light(sharpness: f32, light: &Exposure) -> Vec<PhotoDoubt> {
    let mut warnings = Vec::new();
    if sharpness < BLURRED_BELOW {
        warnings.push(PhotoDoubt::Blurred);
    }
    if light.mean < DARK_BELOW || light.black > BLACK_ABOVE {
        warnings.push(PhotoDoubt::Dark);
    }
    if light.mean > BRIGHT_ABOVE || light.white > WHITE_ABOVE {
        warnings.push(PhotoDoubt::Bright);
    }
    warnings
}

/// Compares the tags `found` in a picture with the ones `expected` of what it was taken for;
/// `name_of` tells what a tag belongs to.
///
/// One expected tag is enough: its neighbours may well be in the picture too. Without one, every tag that was found is
/// named. Where none is expected and none found, there is nothing to say.
pub fn tag_warnings(found: &[TagId], expected: &[TagId], name_of: &dyn Fn(TagId) -> Option<String>) -> Vec<PhotoDoubt> {
    if found.is_empty() {
        return if expected.is_empty() { Vec::new() } else { vec![PhotoDoubt::NoTag] };
    }
    if found.iter().any(|tag| expected.contains(tag)) {
        return Vec::new();
    }
    let mut warnings = Vec::new();
    for tag in found {
        let warning = match name_of(*tag) {
            Some(belongs) => PhotoDoubt::OtherTag { belongs },
            None => PhotoDoubt::UnknownTag { tag: *tag },
        };
        // A point may have two tags, and a tag may be read twice.
        if !warnings.contains(&warning) {
            warnings.push(warning);
        }
    }
    warnings
}
