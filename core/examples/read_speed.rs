//! How long the reader of tags takes on a camera's frame and on the largest photo, with and without a tag in it:
//! `cargo run --release -p stillbar-core --example read_speed [times]`.

use std::time::{Duration, Instant};

use stillbar_core::tag::read::{FoundTag, Luma, frame, still};
use stillbar_core::tag::{Symbol, TagId};

/// Grain about mid-grey, and in the middle a tag of `module` pixels a module, or none.
fn picture(width: usize, height: usize, module: usize) -> Vec<u8> {
    let mut state = 1u64;
    let mut grain = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 60) as u8
    };
    let mut pixels: Vec<u8> = (0..width * height).map(|at| (at % width * 120 / width) as u8 + 70 + grain()).collect();
    if module > 0 {
        let (side, symbol) = Symbol::of(TagId::from_random([7; TagId::RANDOM_BYTES])).luma(module);
        let side = side as usize;
        let (left, top) = ((width - side) / 2, (height - side) / 2);
        for (y, row) in symbol.chunks_exact(side).enumerate() {
            let at = (top + y) * width + left;
            pixels[at..at + side].copy_from_slice(row);
        }
    }
    pixels
}

/// A reader of tags.
type Read = fn(&Luma) -> FoundTag;

fn main() {
    let times: usize = std::env::args().nth(1).map_or(101, |n| n.parse().expect("a number"));
    let cases: [(&str, usize, usize, Read, usize); 3] = [
        ("frame of 1280 x 720", 1280, 720, frame, times),
        ("frame of 1920 x 1080", 1920, 1080, frame, times),
        ("photo of 50 MP", 8192, 6144, still, times.div_ceil(10)),
    ];
    for (name, width, height, read, times) in cases {
        for module in [0, 6] {
            let pixels = picture(width, height, module);
            let luma = Luma::new(width as u32, height as u32, &pixels).expect("within the limits");
            let mut took: Vec<Duration> = (0..times)
                .map(|_| {
                    let start = Instant::now();
                    assert_eq!(read(&luma).tags.len(), usize::from(module > 0));
                    start.elapsed()
                })
                .collect();
            took.sort_unstable();
            let what = if module == 0 { "no tag" } else { "a tag of 6 pixels a module" };
            println!("| {name}, {what} | median {:.1?}, slowest {:.1?} |", took[times / 2], took[times - 1]);
        }
    }
}
