//! Records, JSON or PDF: refused, or checked to the end. What holds is written again byte for byte, so a mutant that holds is a finding.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::record::{reread, verify};

fuzz_target!(|bytes: &[u8]| {
    let Ok(verdict) = verify(bytes) else { return };
    assert!(!verdict.not_proved.is_empty() && verdict.holds == verdict.failures.is_empty(), "{verdict:?}");
    if verdict.holds {
        let made = reread(bytes).expect("it holds");
        let again = if verdict.kind == "pdf" { made.pdf() } else { made.json() };
        assert_eq!(again.expect("it was written"), bytes, "what holds has one spelling");
    }
});
