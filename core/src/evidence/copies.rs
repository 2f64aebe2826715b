//! The copies for showing and sharing: made from pixels, so that nothing else of the original can get into them.

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use jpeg_encoder::{ColorType, Encoder};

use super::decode::Pixels;

/// Long side of the copy for lists.
pub const THUMBNAIL_SIDE: u32 = 320;
/// Long side of the copy for records: 250 dots an inch where a photo is 97 mm wide, and sixty of them fit into an email.
pub const PRINT_SIDE: u32 = 960;
/// Long side of the copy for screens.
pub const WORKING_SIDE: u32 = 1600;

/// JPEG quality: labels stay readable, and a working copy has about 0.3 MB (common practice, no source).
const QUALITY: u8 = 82;

/// The same picture with a long side of at most `side`; a small one is not enlarged.
pub(super) fn shrunk(picture: &Pixels<3>, side: u32) -> Option<Pixels<3>> {
    let long = picture.width.max(picture.height);
    if long <= side {
        return Some(picture.clone());
    }
    let scaled = |length: u32| (f64::from(length) * f64::from(side) / f64::from(long)).round().max(1.0) as u32;
    resized(picture, scaled(picture.width), scaled(picture.height), FilterType::Bilinear)
}

/// Every pixel counts in what it becomes part of: no aliasing, so measures and labels hold.
pub(super) fn resized<const CHANNELS: usize>(
    from: &Pixels<CHANNELS>,
    width: u32,
    height: u32,
    filter: FilterType,
) -> Option<Pixels<CHANNELS>> {
    let kind = if CHANNELS == 1 { PixelType::U8 } else { PixelType::U8x3 };
    let source = ImageRef::new(from.width, from.height, &from.data, kind).ok()?;
    let mut target = Image::new(width, height, kind);
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(filter));
    Resizer::new().resize(&source, &mut target, &options).ok()?;
    Some(Pixels { data: target.into_vec(), width, height })
}

/// A JPEG file that holds the picture and nothing of where it was taken or with what.
pub(super) fn jpeg(picture: &Pixels<3>) -> Option<Vec<u8>> {
    let (width, height) = (u16::try_from(picture.width).ok()?, u16::try_from(picture.height).ok()?);
    let mut file = Vec::new();
    Encoder::new(&mut file, QUALITY).encode(&picture.data, width, height, ColorType::Rgb).ok()?;
    Some(file)
}
