//! The copies for showing and sharing: made from pixels, so that nothing else of the original can get into them.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::{InnerPixel, U8, U8x3};
use fast_image_resize::{FilterType, PixelTrait, ResizeAlg, ResizeOptions, Resizer};
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
    let mut data = vec![0; width as usize * height as usize * CHANNELS];
    let (old, new) = ((from.width, from.height, &from.data[..]), (width, height, &mut data[..]));
    if CHANNELS == 1 {
        typed::<U8>(old, new, filter)?
    } else {
        typed::<U8x3>(old, new, filter)?
    }
    Some(Pixels { data, width, height })
}

/// Told the kind of pixel when it is compiled, the resizer is compiled for that one and not for all thirteen: a fifth of this crate's
/// machine code.
fn typed<P: InnerPixel + PixelTrait>(
    from: (u32, u32, &[u8]),
    to: (u32, u32, &mut [u8]),
    filter: FilterType,
) -> Option<()> {
    let source = TypedImageRef::<P>::from_buffer(from.0, from.1, from.2).ok()?;
    let mut target = TypedImage::<P>::from_buffer(to.0, to.1, to.2).ok()?;
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(filter));
    Resizer::new().resize_typed(&source, &mut target, &options).ok()
}

/// A JPEG file that holds the picture and nothing of where it was taken or with what.
pub(super) fn jpeg(picture: &Pixels<3>) -> Option<Vec<u8>> {
    let (width, height) = (u16::try_from(picture.width).ok()?, u16::try_from(picture.height).ok()?);
    let mut file = Vec::new();
    Encoder::new(&mut file, QUALITY).encode(&picture.data, width, height, ColorType::Rgb).ok()?;
    Some(file)
}
