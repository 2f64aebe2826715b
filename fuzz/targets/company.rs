//! Files of rules of a company: read or refused with a place; one that is read can hold, and is read the same when it is written again.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::company::{call_read, call_written};
use stillbar_core::job::company::{CompanyFile, calls_fit, fits};
use stillbar_core::journal::fingerprint;
use stillbar_core::text::company_error;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    match CompanyFile::from_json(text) {
        Ok(file) => {
            assert!(fits(&file.rules).is_ok() && calls_fit(&file.call).is_ok());
            assert_eq!(call_read(&call_written(&file.call)), file.call);
            let again = CompanyFile::from_json(&file.to_json()).expect("what was written is read");
            assert_eq!(fingerprint(&again.rules), fingerprint(&file.rules));
            assert_eq!(again, file);
        }
        Err(error) => assert!(company_error(&error).len() < 1000),
    }
});
