//! The reader of tags on what is no picture of a tag: no panic, no tag, and an end. What it does find is held against other
//! readers in `tests/outside/test_tags_read.py`.

use proptest::prelude::*;
use stillbar_core::tag::read::{FoundTag, Luma, LumaError, MAX_PIXELS, frame, still};

fn both(width: u32, height: u32, pixels: &[u8]) -> [FoundTag; 2] {
    let luma = Luma::new(width, height, pixels).unwrap();
    [frame(&luma), still(&luma)]
}

#[test]
fn a_size_that_is_not_the_bytes_is_refused() {
    for (width, height) in [(0, 0), (0, 5), (5, 0), (u32::MAX, u32::MAX), (60_000, 60_000), (MAX_PIXELS as u32 + 1, 1)]
    {
        assert_eq!(Luma::new(width, height, &[]).err(), Some(LumaError::Size), "{width} x {height}");
    }
    for bytes in [0, 5, 7] {
        assert_eq!(Luma::new(2, 3, &vec![0; bytes]).err(), Some(LumaError::Bytes), "{bytes}");
    }
    assert!(Luma::new(2, 3, &[0; 6]).is_ok());
}

#[test]
fn an_even_picture_holds_nothing() {
    for grey in [0, 128, 255] {
        for (width, height) in [(1, 1), (1, 700), (700, 1), (2, 2), (3, 5), (39, 41), (640, 480), (1281, 721)] {
            let found = both(width, height, &vec![grey; (width * height) as usize]);
            assert_eq!(found, [FoundTag::default(), FoundTag::default()], "{width} x {height} of {grey}");
        }
    }
}

/// Squares in squares everywhere: as many corner marks as there can be, and no code.
#[test]
fn many_corner_marks_come_to_an_end() {
    let (width, height) = (448, 448);
    let pixels: Vec<u8> = (0..width * height)
        .map(|at: u32| {
            let (x, y) = ((at % width / 3 % 9) as i32 - 4, (at / width / 3 % 9) as i32 - 4);
            if matches!(x.abs().max(y.abs()), 2 | 4) { 255 } else { 0 }
        })
        .collect();
    assert_eq!(both(width, height, &pixels), [FoundTag::default(), FoundTag::default()]);
}

/// Found by `fuzz/targets/tag.rs`: on this frame a decoder asserts that a corner lies in the picture and panics (rqrr 0.10.1). The
/// first byte is the fuzzer's own, the second is the width.
#[test]
fn a_panicking_decoder_ends_its_look_only() {
    let [_, width, pixels @ ..] = include_bytes!("../samples/frame-no-decoder-stands");
    let height = pixels.len() / usize::from(*width);
    let pixels = &pixels[..height * usize::from(*width)];
    assert_eq!(both(u32::from(*width), height as u32, pixels), [FoundTag::default(), FoundTag::default()]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Bytes at random, in blocks of every size, so that there are edges at every scale.
    #[test]
    fn noise_holds_nothing(width in 1_u32..220, height in 1_u32..220, block in 1_u32..12, seed in any::<u32>()) {
        let grey = |x: u32, y: u32| {
            let mixed = (x / block).wrapping_mul(0x9E37_79B1) ^ (y / block).wrapping_mul(0x85EB_CA77) ^ seed;
            (mixed.wrapping_mul(0xC2B2_AE3D) ^ mixed >> 15).wrapping_mul(0x27D4_EB2F).to_be_bytes()[0]
        };
        let pixels: Vec<u8> = (0..height).flat_map(|y| (0..width).map(move |x| grey(x, y))).collect();
        prop_assert_eq!(both(width, height, &pixels), [FoundTag::default(), FoundTag::default()]);
    }
}
