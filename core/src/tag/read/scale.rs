//! Pictures made smaller, and with local contrast.

use super::Luma;

/// Half as wide and half as high: the mean of each two by two pixels. An odd last row or column is left out.
pub(super) fn halve(luma: &Luma) -> Luma<'static> {
    let (width, height) = ((luma.width / 2).max(1), (luma.height / 2).max(1));
    let wide = luma.width as usize;
    let mut pixels = Vec::with_capacity(width as usize * height as usize);
    for y in 0..height as usize {
        // A picture of one row or column has no second one.
        let above = &luma.pixels[2 * y * wide..];
        let below = luma.pixels.get((2 * y + 1) * wide..).filter(|rest| rest.len() >= wide).unwrap_or(above);
        for x in 0..width as usize {
            let right = (2 * x + 1).min(wide - 1);
            let sum =
                u32::from(above[2 * x]) + u32::from(above[right]) + u32::from(below[2 * x]) + u32::from(below[right]);
            pixels.push((sum / 4) as u8);
        }
    }
    Luma { width, height, pixels: pixels.into() }
}

/// Tiles of the local contrast, in pixels.
const TILE: usize = 64;
/// Contrast below this is noise and is not stretched further.
const NOISE: u32 = 16;

/// Each pixel between the darkest and the brightest of its neighbourhood: a dim code, or one half in glare, comes out black and white.
pub(super) fn stretch(luma: &Luma) -> Luma<'static> {
    let (width, height) = (luma.width as usize, luma.height as usize);
    let (across, down) = (width.div_ceil(TILE), height.div_ceil(TILE));
    let mut range = vec![(255u8, 0u8); across * down];
    for (y, row) in luma.pixels.chunks_exact(width).enumerate() {
        for (x, value) in row.iter().enumerate() {
            let tile = &mut range[y / TILE * across + x / TILE];
            *tile = (tile.0.min(*value), tile.1.max(*value));
        }
    }
    // Of a tile and its neighbours, so that no edge of a tile shows.
    let around = |tx: usize, ty: usize| {
        let mut wide = (255u8, 0u8);
        for ny in ty.saturating_sub(1)..(ty + 2).min(down) {
            for nx in tx.saturating_sub(1)..(tx + 2).min(across) {
                let (low, high) = range[ny * across + nx];
                wide = (wide.0.min(low), wide.1.max(high));
            }
        }
        wide
    };
    let wide: Vec<(u8, u8)> = (0..across * down).map(|t| around(t % across, t / across)).collect();
    let mut pixels = Vec::with_capacity(width * height);
    for (y, row) in luma.pixels.chunks_exact(width).enumerate() {
        for (x, value) in row.iter().enumerate() {
            let (low, high) = wide[y / TILE * across + x / TILE];
            let span = u32::from(high - low).max(NOISE);
            pixels.push((u32::from(value - low) * 255 / span).min(255) as u8);
        }
    }
    Luma { width: luma.width, height: luma.height, pixels: pixels.into() }
}
