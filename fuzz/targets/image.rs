//! Photos: any bytes are a photo that is measured, turned and copied, or are refused; what a copy holds is a photo again.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::evidence::check;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(photo) = check(bytes) {
        photo.codes();
        assert!(check(&photo.thumbnail).is_ok(), "a copy is no photo");
    }
});
