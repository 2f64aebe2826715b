//! What a record says of a job in every state that a story brings it to, beside what the phone says.

use std::path::Path;

use crate::desk::*;
use stillbar_core::app::of_folder;
use stillbar_core::journey::{stories, story};
use stillbar_core::record::verify;
use stillbar_core::store::Store;
use stillbar_core::text::Distorted;

/// Lines that wait in a form until something is tapped.
const TYPED: [&str; 4] = ["fill", "choose", "read", "sign"];
/// Every so many taps a record is made.
const EVERY: usize = 3;

/// A record that said "proved dead" of a job of which the phone says "treat as live" could kill; one that said less would not be used. And
/// whatever a state is, its record holds when every message is worded otherwise.
#[test]
fn a_record_says_what_the_phone_says() {
    let journeys = Path::new(env!("CARGO_MANIFEST_DIR")).join("journeys");
    let mut proved = 0;
    for name in stories(&journeys).unwrap() {
        let script = story(&journeys, &name).unwrap();
        let (folder, device) = (tempfile::tempdir().unwrap(), Device::new(7));
        let field = device.open(folder.path()).unwrap();
        let (mut form, mut taps) = (Vec::new(), 0);
        for line in script.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#')) {
            form.push(line);
            if TYPED.iter().any(|verb| line.split(' ').next() == Some(verb)) {
                continue;
            }
            device.play(&field, &form.join("\n"));
            form.clear();
            taps += 1;
            if taps % EVERY != 0 {
                continue;
            }
            for job in Store::look(folder.path()).unwrap().jobs().unwrap() {
                let made = of_folder(folder.path(), &*device, &job.id.to_string(), false).unwrap();
                let (state, says) = (&made.report().state, field.standing_says(job.id));
                assert!(says.starts_with(&format!("{}. ", &*state.word)), "{name}, {line}: {state:?}\n{says}");
                proved += usize::from(*state.word.code() == "proved");
                let json = made.json().unwrap();
                let _worded = Distorted::new();
                let verdict = verify(&json).unwrap();
                assert!(verdict.holds, "{name}, {line}: {:?}", verdict.failures);
            }
        }
    }
    assert!(proved > 3, "{proved}");
}
