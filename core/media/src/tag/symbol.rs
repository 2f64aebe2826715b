//! The QR symbol of a text (ISO/IEC 18004): for a tag 21 modules wide, the coarsest that there is.

use qrcode::bits::Bits;
use qrcode::{Color, EcLevel, QrCode, Version};

use super::TagId;

/// Light modules that have to be about a symbol (ISO/IEC 18004, 6.3.8).
pub const QUIET: usize = 4;

/// The modules of a symbol, without the quiet zone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Symbol {
    /// Modules in a row.
    pub width: usize,
    /// Row by row from the top left; `true` is dark.
    pub dark: Vec<bool>,
}

impl Symbol {
    /// The symbol of a tag: version 1, level Q, alphanumeric.
    pub fn of(tag: TagId) -> Symbol {
        // Sixteen alphanumeric characters are exactly what version 1 holds at level Q. Left to choose its segments, the encoder writes
        // a long run of digits apart, and then not all of them have room.
        let mut bits = Bits::new(Version::Normal(1));
        let filled =
            bits.push_alphanumeric_data(tag.as_str().as_bytes()).and_then(|()| bits.push_terminator(EcLevel::Q));
        Symbol::made(filled.and_then(|()| QrCode::with_bits(bits, EcLevel::Q)))
    }

    /// The symbol of any text, as small as it can be at level Q; without modules if the text is too long for any.
    pub fn of_text(text: &str) -> Symbol {
        Symbol::made(QrCode::with_error_correction_level(text, EcLevel::Q))
    }

    /// The symbol of a part that is shown from screen to camera: as coarse as it can be, at level L. A screen has no dirt, and parts come again.
    pub fn of_part(text: &str) -> Symbol {
        Symbol::made(QrCode::with_error_correction_level(text, EcLevel::L))
    }

    fn made(code: Result<QrCode, qrcode::types::QrError>) -> Symbol {
        match code {
            Ok(code) => {
                Symbol { width: code.width(), dark: code.to_colors().into_iter().map(|c| c == Color::Dark).collect() }
            }
            Err(_) => Symbol { width: 0, dark: Vec::new() },
        }
    }

    /// The module in this column and row; outside is light.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.width && y < self.width && self.dark[y * self.width + x]
    }

    /// The dark modules in runs, row by row: column, row and length. Drawn in one piece each, no light hairline stands between neighbours.
    pub fn runs(&self) -> Vec<(usize, usize, usize)> {
        let mut runs = Vec::new();
        for y in 0..self.width {
            let mut x = 0;
            while x < self.width {
                let run = (x..self.width).take_while(|x| self.is_dark(*x, y)).count();
                if run > 0 {
                    runs.push((x, y, run));
                }
                // What ends a run is light.
                x += run + 1;
            }
        }
        runs
    }

    /// A picture with the quiet zone, `scale` pixels a module: its side, and its brightness row by row.
    pub fn luma(&self, scale: usize) -> (u32, Vec<u8>) {
        let side = (self.width + 2 * QUIET) * scale;
        let inside = |at: usize| (at / scale).checked_sub(QUIET);
        let shade = |(x, y)| match (inside(x), inside(y)) {
            (Some(x), Some(y)) if self.is_dark(x, y) => 0,
            _ => 255,
        };
        let pixels = (0..side).flat_map(|y| (0..side).map(move |x| (x, y))).map(shade).collect();
        (side as u32, pixels)
    }
}
