//! Photos: any bytes are a photo that is measured, turned and copied, or are refused; what a copy holds is a photo again.
//!
//! A photo is looked at for tags, so a decoder's panic that is caught is no finding: see `tag.rs`.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::evidence::check;

fuzz_target!(init: std::panic::set_hook(Box::new(|panic| eprintln!("{panic}"))), |bytes: &[u8]| {
    if let Ok(photo) = check(bytes) {
        photo.codes();
        assert!(check(&photo.thumbnail).is_ok(), "a copy is no photo");
    }
});
