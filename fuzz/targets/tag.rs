//! Tags: a payload as text, and a camera's frame as a plane of brightness.
//!
//! The first byte chooses. Text: what is read as a tag is written as it was read, and its check character fits. Frame: the second byte is
//! its width, 255 at most, and the rest its pixels.
//!
//! A decoder's panic that `tag::read` catches is no finding: that it ends one look and nothing else is what is promised. The fuzzer's hook
//! would end the process at the first, so it is put aside; a panic that nobody catches still ends it.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::tag::read::{Luma, frame};
use stillbar_core::tag::{LENGTH, TagId, check};

fuzz_target!(init: std::panic::set_hook(Box::new(|panic| eprintln!("{panic}"))), |bytes: &[u8]| {
    match bytes {
        [0, text @ ..] => {
            check(text);
            let Ok(text) = std::str::from_utf8(text) else { return };
            if let Ok(tag) = text.parse::<TagId>() {
                assert_eq!(tag.as_str().len(), LENGTH);
                assert_eq!(tag.as_str().parse::<TagId>().as_ref(), Ok(&tag));
                assert_eq!(tag.spaced().parse::<TagId>(), Ok(tag));
            }
        }
        [_, width, pixels @ ..] if *width > 0 => {
            let height = pixels.len() / usize::from(*width);
            let pixels = &pixels[..height * usize::from(*width)];
            if let Ok(luma) = Luma::new(u32::from(*width), height as u32, pixels) {
                frame(&luma);
            }
        }
        _ => {}
    }
});
