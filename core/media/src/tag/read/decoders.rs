//! The two decoders, which find the corner marks of a symbol in different ways and miss different symbols.

use std::collections::HashSet;
use std::panic::{AssertUnwindSafe, catch_unwind};

use rqrr::PreparedImage;
use rxing::common::HybridBinarizer;
use rxing::multi::MultipleBarcodeReader;
use rxing::qrcode::cpp_port::QrReader;
use rxing::{BarcodeFormat, BinaryBitmap, DecodeHints, Luma8Source, RXingResult};

use super::plane::Plane;

/// Most symbols that are decoded in one look.
const MAX_SYMBOLS: usize = 64;

/// Looks for squares nested in each other (rxing).
pub(super) fn nested(plane: &Plane) -> Vec<String> {
    guarded(|| {
        let hints = DecodeHints {
            TryHarder: Some(true),
            PossibleFormats: Some(HashSet::from([BarcodeFormat::QR_CODE])),
            ..DecodeHints::default()
        };
        let Ok(source) = Luma8Source::new_with_slice(plane.pixels(), plane.width(), plane.height()) else {
            return Vec::new();
        };
        let mut bitmap = BinaryBitmap::new(HybridBinarizer::new(source));
        let results = QrReader.decode_multiple_with_hints(&mut bitmap, &hints).unwrap_or_default();
        results.iter().take(MAX_SYMBOLS).map(text).collect()
    })
}

/// Few symbols say which encoding their bytes have, and of two or three characters the decoder's guess is often wrong. Bytes
/// that are UTF-8 beyond ASCII are hardly ever anything else.
fn text(symbol: &RXingResult) -> String {
    match str::from_utf8(symbol.getRawBytes()) {
        Ok(text) if !text.is_ascii() => text.to_owned(),
        _ => symbol.getText().to_owned(),
    }
}

/// Looks for filled areas of one colour, then fits a skewed grid (rqrr).
pub(super) fn skewed(plane: &Plane) -> Vec<String> {
    guarded(|| {
        let (width, pixels) = (plane.width() as usize, plane.pixels());
        let mut image =
            PreparedImage::prepare_from_greyscale(width, plane.height() as usize, |x, y| pixels[y * width + x]);
        let grids = image.detect_grids();
        grids.iter().take(MAX_SYMBOLS).filter_map(|g| g.decode().ok()).map(|(_, text)| text).collect()
    })
}

/// The decoders are others' code on whatever the camera sees. Should one panic, this look has found nothing.
fn guarded(look: impl FnOnce() -> Vec<String>) -> Vec<String> {
    catch_unwind(AssertUnwindSafe(look)).unwrap_or_default()
}
