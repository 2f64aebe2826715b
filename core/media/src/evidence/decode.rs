//! From the bytes of a file to pixels. The size has been checked before; an error has no more to say than that there is one.

use std::io::Cursor;

use image_webp::WebPDecoder;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use super::header::ImageKind;

/// Rows from the top without gaps; one byte a pixel for brightness, three for colour.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pixels<const CHANNELS: usize> {
    pub data: Vec<u8>,
    pub width: u32,
    pub height: u32,
}

/// The picture in colour, three bytes a pixel, as it lies in the file.
pub(super) fn rgb(kind: ImageKind, bytes: &[u8]) -> Option<Pixels<3>> {
    let (data, channels, width, height) = match kind {
        ImageKind::Jpeg => jpeg(bytes)?,
        ImageKind::Png => png(bytes)?,
        ImageKind::WebP => webp(bytes)?,
    };
    let pixels = width as usize * height as usize;
    if data.len() != pixels * channels {
        return None;
    }
    Some(Pixels { data: three(data, channels), width, height })
}

type Raw = (Vec<u8>, usize, u32, u32);

fn jpeg(bytes: &[u8]) -> Option<Raw> {
    let options = DecoderOptions::default()
        // Ours is the limit on pixels; a panorama may be longer than the decoder's own limit on a side.
        .set_max_width(usize::from(u16::MAX))
        .set_max_height(usize::from(u16::MAX))
        // Cameras pad between segments and append films behind the picture; strict reading refuses those.
        .set_strict_mode(false)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    let data = decoder.decode().ok()?;
    let info = decoder.info()?;
    Some((data, 3, u32::from(info.width), u32::from(info.height)))
}

fn png(bytes: &[u8]) -> Option<Raw> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    // Texts and profiles can unpack to far more than the picture, and nothing here reads them.
    decoder.set_ignore_text_chunk(true);
    decoder.set_ignore_iccp_chunk(true);
    let mut reader = decoder.read_info().ok()?;
    let mut data = vec![0; reader.output_buffer_size()?];
    let info = reader.next_frame(&mut data).ok()?;
    // To the last chunk, so that a file whose end is missing is found out.
    reader.finish().ok()?;
    Some((data, info.color_type.samples(), info.width, info.height))
}

fn webp(bytes: &[u8]) -> Option<Raw> {
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).ok()?;
    let (width, height) = decoder.dimensions();
    let mut data = vec![0; decoder.output_buffer_size()?];
    let channels = if decoder.has_alpha() { 4 } else { 3 };
    decoder.read_image(&mut data).ok()?;
    Some((data, channels, width, height))
}

/// Brings 1 (grey), 2 (grey, alpha), 3 or 4 (colour, alpha) bytes a pixel to three. What can be seen through is on white.
fn three(mut data: Vec<u8>, channels: usize) -> Vec<u8> {
    let on_white = |value: u8, alpha: u8| {
        let (value, alpha) = (u32::from(value), u32::from(alpha));
        ((value * alpha + 255 * (255 - alpha) + 127) / 255) as u8
    };
    match channels {
        1 => data.iter().flat_map(|grey| [*grey; 3]).collect(),
        2 => data.chunks_exact(2).flat_map(|p| [on_white(p[0], p[1]); 3]).collect(),
        4 => {
            // In place: a second picture of that size would double the memory.
            let pixels = data.len() / 4;
            for at in 0..pixels {
                let [r, g, b, alpha] = [0, 1, 2, 3].map(|k| data[4 * at + k]);
                data[3 * at..3 * at + 3].copy_from_slice(&[r, g, b].map(|value| on_white(value, alpha)));
            }
            data.truncate(3 * pixels);
            data.shrink_to_fit();
            data
        }
        _ => data,
    }
}
