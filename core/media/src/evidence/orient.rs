//! Which way up the camera was held, and the picture turned upright.

use std::io::Cursor;

use exif::{In, Reader, Tag};
use image_webp::WebPDecoder;

use super::decode::Pixels;
use super::header::ImageKind;

/// The orientation (Exif 2.32, tag 0x0112), 1 where the file has none that can be read: a picture on its side is still one.
pub(super) fn orientation(kind: ImageKind, bytes: &[u8]) -> u8 {
    let mut reader = Reader::new();
    // Cameras write damaged fields beside good ones.
    reader.continue_on_error(true);
    let read = match kind {
        ImageKind::WebP => webp(bytes).map(|exif| reader.read_raw(exif)),
        ImageKind::Jpeg | ImageKind::Png => Some(reader.read_from_container(&mut Cursor::new(bytes))),
    };
    let found = read.and_then(|read| read.or_else(|e| e.distill_partial_result(|_| ())).ok());
    let Some(found) = found else { return 1 };
    let value = found.get_field(Tag::Orientation, In::PRIMARY).and_then(|field| field.value.get_uint(0));
    value.and_then(|v| u8::try_from(v).ok()).filter(|v| (1..=8).contains(v)).unwrap_or(1)
}

/// The Exif of a WebP file. Many programs put the mark of JPEG's segments before it, which RFC 9649 does not.
fn webp(bytes: &[u8]) -> Option<Vec<u8>> {
    let exif = WebPDecoder::new(Cursor::new(bytes)).ok()?.exif_metadata().ok()??;
    Some(exif.strip_prefix(b"Exif\0\0").map(<[u8]>::to_vec).unwrap_or(exif))
}

/// Turns and mirrors so that what was up is up.
pub(super) fn upright<const CHANNELS: usize>(from: Pixels<CHANNELS>, orientation: u8) -> Pixels<CHANNELS> {
    let (w, h) = (from.width as usize, from.height as usize);
    let (right, down) = (1, w as isize);
    let (last_x, last_y) = (w as isize - 1, (h as isize - 1) * w as isize);
    // The pixel that becomes the top left one, and the ways through the file that lead right and down when upright.
    let (first, across, along) = match orientation {
        2 => (last_x, -right, down),
        3 => (last_x + last_y, -right, -down),
        4 => (last_y, right, -down),
        5 => (0, down, right),
        6 => (last_y, -down, right),
        7 => (last_x + last_y, -down, -right),
        8 => (last_x, down, -right),
        _ => return from,
    };
    let (width, height) = if orientation > 4 { (h, w) } else { (w, h) };
    let mut data = vec![0; from.data.len()];
    // In squares that fit the cache: turned row by row, every byte of a large picture would be a miss.
    const SQUARE: usize = 64;
    for top in (0..height).step_by(SQUARE) {
        for left in (0..width).step_by(SQUARE) {
            for y in top..height.min(top + SQUARE) {
                for x in left..width.min(left + SQUARE) {
                    let source = (first + x as isize * across + y as isize * along) as usize * CHANNELS;
                    let target = (y * width + x) * CHANNELS;
                    data[target..target + CHANNELS].copy_from_slice(&from.data[source..source + CHANNELS]);
                }
            }
        }
    }
    Pixels { data, width: width as u32, height: height as u32 }
}
