//! How sharp a picture is and how the light was, always at the same scale.
//!
//! The variance of the Laplacian depends on the scale and on the filter that got there, so both are fixed: brightness by
//! ITU-R BT.601, upright, shrunk by the mean over areas to a long side of [`MEASURED_SIDE`] (never enlarged), the kernel
//! 0 1 0 / 1 -4 1 / 0 1 0 at every pixel that has four neighbours, the variance of the results.

use fast_image_resize::FilterType;

use super::copies::resized;
use super::decode::Pixels;

/// Long side of the picture that is measured.
pub const MEASURED_SIDE: u32 = 1024;

/// Up to here a pixel is nearly black, and from 255 minus this nearly white.
const NEARLY: usize = 12;

/// How the light was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exposure {
    /// Mean brightness, 0 to 255.
    pub mean: f32,
    /// Share of pixels that are nearly black, 0 to 1.
    pub black: f32,
    /// Share of pixels that are nearly white, 0 to 1.
    pub white: f32,
}

/// Brightness by ITU-R BT.601, rounded.
pub(super) fn luma(colour: Pixels<3>) -> Pixels<1> {
    let bright = |p: &[u8]| (77 * u32::from(p[0]) + 150 * u32::from(p[1]) + 29 * u32::from(p[2]) + 128) >> 8;
    let data = colour.data.chunks_exact(3).map(|p| bright(p) as u8).collect();
    Pixels { data, width: colour.width, height: colour.height }
}

/// The same picture with at most so many pixels.
pub(super) fn at_most(plane: Pixels<1>, pixels: u64) -> Option<Pixels<1>> {
    let has = u64::from(plane.width) * u64::from(plane.height);
    if has <= pixels {
        return Some(plane);
    }
    let scale = (pixels as f64 / has as f64).sqrt();
    let side = |length: u32| ((f64::from(length) * scale) as u32).max(1);
    resized(&plane, side(plane.width), side(plane.height), FilterType::Bilinear)
}

/// Sharpness and light of an upright plane.
pub(super) fn measure(plane: &Pixels<1>) -> (f32, Exposure) {
    let long = plane.width.max(plane.height);
    if long <= MEASURED_SIDE {
        return (laplacian_variance(plane), exposure(plane));
    }
    let side = |length: u32| (f64::from(length) * f64::from(MEASURED_SIDE) / f64::from(long)).round().max(1.0) as u32;
    let small = means(plane, side(plane.width), side(plane.height));
    (laplacian_variance(&small), exposure(&small))
}

/// Shrinks so that each pixel is the mean over its area, parts of pixels counted as parts. In whole numbers, so that every
/// device measures the same; a resizer's box filter takes pixels whole or not at all, which adds edges that are not there.
fn means(from: &Pixels<1>, width: u32, height: u32) -> Pixels<1> {
    let (columns, rows) = (shares(from.width, width), shares(from.height, height));
    let mut sums = vec![0u64; width as usize * height as usize];
    let mut line = vec![0u64; width as usize];
    for (pixels, row) in from.data.chunks_exact(from.width as usize).zip(&rows) {
        line.fill(0);
        for (pixel, column) in pixels.iter().zip(&columns) {
            line[column.at] += column.first * u64::from(*pixel);
            if column.rest > 0 {
                line[column.at + 1] += column.rest * u64::from(*pixel);
            }
        }
        for (at, share) in [(row.at, row.first), (row.at + 1, row.rest)] {
            if share > 0 {
                let sums = &mut sums[at * line.len()..][..line.len()];
                sums.iter_mut().zip(&line).for_each(|(sum, part)| *sum += share * part);
            }
        }
    }
    let all = u64::from(from.width) * u64::from(from.height);
    Pixels { data: sums.iter().map(|sum| ((sum + all / 2) / all) as u8).collect(), width, height }
}

/// Where a pixel of the old length falls: `first` parts of it into pixel `at` of the new one, `rest` into the one after.
struct Share {
    at: usize,
    first: u64,
    rest: u64,
}

/// For each of `from` pixels in a row, its shares of `to` pixels; the shares of each of these sum to `from`.
fn shares(from: u32, to: u32) -> Vec<Share> {
    let (from, to) = (u64::from(from), u64::from(to));
    let share = |pixel: u64| {
        let at = pixel * to / from;
        let first = to.min((at + 1) * from - pixel * to);
        Share { at: at as usize, first, rest: to - first }
    };
    (0..from).map(share).collect()
}

fn laplacian_variance(plane: &Pixels<1>) -> f32 {
    let (w, h) = (plane.width as usize, plane.height as usize);
    let (mut count, mut sum, mut squares) = (0u64, 0i64, 0i64);
    let at = |i: usize| i64::from(plane.data[i]);
    for y in 1..h.max(1) - 1 {
        for i in y * w + 1..(y * w + w).max(2) - 1 {
            let value = at(i - w) + at(i + w) + at(i - 1) + at(i + 1) - 4 * at(i);
            (count, sum, squares) = (count + 1, sum + value, squares + value * value);
        }
    }
    if count == 0 {
        return 0.0;
    }
    let (n, mean) = (count as f64, sum as f64 / count as f64);
    (squares as f64 / n - mean * mean) as f32
}

fn exposure(plane: &Pixels<1>) -> Exposure {
    let mut counts = [0u64; 256];
    for value in &plane.data {
        counts[usize::from(*value)] += 1;
    }
    let all = plane.data.len() as f64;
    let sum: u64 = counts.iter().zip(0..).map(|(count, value)| count * value).sum();
    let share = |of: &[u64]| (of.iter().sum::<u64>() as f64 / all) as f32;
    Exposure {
        mean: (sum as f64 / all) as f32,
        black: share(&counts[..=NEARLY]),
        white: share(&counts[255 - NEARLY..]),
    }
}
