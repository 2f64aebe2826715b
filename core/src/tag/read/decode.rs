//! The two decoders, each behind a wall: what panics in there found nothing.

use std::panic::{AssertUnwindSafe, catch_unwind};

use rxing::common::HybridBinarizer;
use rxing::{BarcodeFormat, BinaryBitmap, DecodeHints, Luma8Source, Reader};

use super::{Luma, MAX_CODES};

/// The first code that rxing sees.
pub(super) fn first(luma: &Luma) -> Vec<String> {
    let look = || {
        let source = Luma8Source::new_with_slice(&luma.pixels, luma.width, luma.height).ok()?;
        let hints = DecodeHints::default()
            .with(rxing::DecodeHintValue::TryHarder(true))
            .with(rxing::DecodeHintValue::AlsoInverted(true))
            .with(rxing::DecodeHintValue::PossibleFormats([BarcodeFormat::QR_CODE].into()));
        let mut bitmap = BinaryBitmap::new(HybridBinarizer::new(source));
        let result = rxing::qrcode::QRCodeReader.decode_with_hints(&mut bitmap, &hints).ok()?;
        Some(result.getText().to_owned())
    };
    catch_unwind(AssertUnwindSafe(look)).ok().flatten().into_iter().collect()
}

/// Every code that rqrr sees.
pub(super) fn all(luma: &Luma) -> Vec<String> {
    let look = || {
        let (width, height) = (luma.width as usize, luma.height as usize);
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| luma.pixels[y * width + x]);
        let grids = picture.detect_grids();
        // One grid's panic must not hide the next one.
        let read = |grid: &rqrr::Grid<_>| catch_unwind(AssertUnwindSafe(|| grid.decode().ok())).ok().flatten();
        grids.iter().take(4 * MAX_CODES).filter_map(read).map(|(_, text)| text).collect::<Vec<_>>()
    };
    catch_unwind(AssertUnwindSafe(look)).unwrap_or_default()
}
