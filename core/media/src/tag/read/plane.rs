//! Pictures of brightness, and what makes a code in them easier to find. Each takes time in proportion to the pixels.

use std::borrow::Cow;

use super::Luma;

/// Half the contrast below which a neighbourhood counts as even and is left white: sensor noise in a dark picture is less.
const EVEN: i32 = 4;

/// Rows from the top without gaps; at least one pixel.
pub(super) struct Plane<'a> {
    width: usize,
    height: usize,
    pixels: Cow<'a, [u8]>,
}

impl<'a> Plane<'a> {
    pub fn of(luma: &Luma<'a>) -> Plane<'a> {
        Plane { width: luma.width as usize, height: luma.height as usize, pixels: Cow::Borrowed(luma.pixels) }
    }

    pub fn width(&self) -> u32 {
        self.width as u32
    }

    pub fn height(&self) -> u32 {
        self.height as u32
    }

    pub fn long_side(&self) -> u32 {
        self.width().max(self.height())
    }

    pub fn pixels(&self) -> &[u8] {
        &self.pixels
    }

    /// Half the size, each pixel the mean of four; a side of one pixel stays.
    pub fn halved(&self) -> Plane<'static> {
        let (width, height) = ((self.width / 2).max(1), (self.height / 2).max(1));
        let mut pixels = Vec::with_capacity(width * height);
        for y in 0..height {
            let upper = self.row(2 * y);
            let lower = self.row((2 * y + 1).min(self.height - 1));
            pixels.extend((0..width).map(|x| {
                let (left, right) = (2 * x, (2 * x + 1).min(self.width - 1));
                let sum = [upper[left], upper[right], lower[left], lower[right]].map(u16::from).iter().sum::<u16>();
                ((sum + 2) / 4) as u8
            }));
        }
        Plane { width, height, pixels: Cow::Owned(pixels) }
    }

    /// Differences from the neighbourhood of `radius` made three times as large: undoes some blur of about that size.
    pub fn sharpened(&self, radius: usize) -> Plane<'static> {
        let mean = self.smoothed_by(radius);
        self.with(&mean, |own, mean| (mean + 3 * (own - mean)).clamp(0, 255) as u8)
    }

    /// Black where darker than the neighbourhood of `radius`: undoes shade and glare that are larger than that.
    pub fn thresholded(&self, radius: usize) -> Plane<'static> {
        let mean = self.smoothed_by(radius);
        self.with(&mean, |own, mean| if own < mean - EVEN { 0 } else { 255 })
    }

    /// Each pixel the mean of nine: less noise.
    pub fn smoothed(&self) -> Plane<'static> {
        self.smoothed_by(1)
    }

    /// Black for white.
    pub fn inverted(&self) -> Plane<'static> {
        self.made(self.pixels.iter().map(|p| 255 - p).collect())
    }

    fn row(&self, y: usize) -> &[u8] {
        &self.pixels[y * self.width..(y + 1) * self.width]
    }

    fn made(&self, pixels: Vec<u8>) -> Plane<'static> {
        Plane { width: self.width, height: self.height, pixels: Cow::Owned(pixels) }
    }

    fn with(&self, other: &Plane, made: impl Fn(i32, i32) -> u8) -> Plane<'static> {
        self.made(self.pixels.iter().zip(other.pixels()).map(|(a, b)| made(i32::from(*a), i32::from(*b))).collect())
    }

    /// The mean over a square of side 2 x `radius` + 1, as far as it lies in the picture; running sums down and across.
    fn smoothed_by(&self, radius: usize) -> Plane<'static> {
        let mut columns = vec![0_u32; self.width];
        let mut pixels = Vec::with_capacity(self.pixels.len());
        let take = |columns: &mut [u32], row: &[u8]| columns.iter_mut().zip(row).for_each(|(c, p)| *c += u32::from(*p));
        for y in 0..radius.min(self.height) {
            take(&mut columns, self.row(y));
        }
        for y in 0..self.height {
            if y + radius < self.height {
                take(&mut columns, self.row(y + radius));
            }
            if y > radius {
                columns.iter_mut().zip(self.row(y - radius - 1)).for_each(|(c, p)| *c -= u32::from(*p));
            }
            let rows = (y + radius).min(self.height - 1) - y.saturating_sub(radius) + 1;
            let mut sum: u32 = columns.iter().take(radius).sum();
            for x in 0..self.width {
                if x + radius < self.width {
                    sum += columns[x + radius];
                }
                if x > radius {
                    sum -= columns[x - radius - 1];
                }
                let across = (x + radius).min(self.width - 1) - x.saturating_sub(radius) + 1;
                pixels.push((sum / (rows * across) as u32) as u8);
            }
        }
        self.made(pixels)
    }
}
