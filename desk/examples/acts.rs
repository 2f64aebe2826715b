//! Plays a journey on a data folder as a process that may be ended at any moment, and says what is promised:
//! `cargo run --example acts -- FOLDER JOURNEY`, for `tests/faults/test_boundaries.py`.
//!
//! A line `kept ID ...` names the entries that the app now says are kept; `refused SENTENCE` that it said the disk did not take it.
//! A line `go ROUTE` in the journey goes there from anywhere. What was refused is done once more by the tap alone, since what was typed stands on the screen; the file that FAULT_FREED names says
//! that there is room again.

use std::collections::BTreeSet;
use std::error::Error;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;
use std::sync::Arc;

use stillbar_core::journal::EntryId;
use stillbar_core::journey::{Props, play};
use stillbar_core::parts::Tone;
use stillbar_core::{Field, demo};
use stillbar_desk::{folder, platform::DesktopPlatform};

/// What a person would see if they looked.
fn say(line: &str) {
    let mut out = std::io::stdout().lock();
    let _ = writeln!(out, "{}", line.replace('\n', " "));
    let _ = out.flush();
}

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [folder, script] = &words[..] else { panic!("a folder and a journey") };
    let script = std::fs::read_to_string(script).expect("the journey can be read");
    match acts(Path::new(folder), &script) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            say(&format!("stopped {why}"));
            ExitCode::FAILURE
        }
    }
}

fn acts(data: &Path, script: &str) -> Result<(), Box<dyn Error>> {
    folder::make(data)?;
    let platform = Arc::new(DesktopPlatform::new(data)?);
    let field = Field::open(data.to_string_lossy().into_owned(), platform)?;
    let mut known = BTreeSet::new();
    tell(&field, &mut known)?;
    // What is typed goes to the core with the tap that follows it, as in a shell.
    let mut form = String::new();
    for line in script.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#')) {
        if line.starts_with("go ") {
            field.act(None, line.into(), Vec::new());
            continue;
        }
        form.push_str(line);
        form.push('\n');
        if ["tap", "photo", "scan"].iter().any(|verb| line.starts_with(verb)) {
            act(&field, &form, line)?;
            tell(&field, &mut known)?;
            form.clear();
        }
    }
    say("done");
    Ok(())
}

fn act(field: &Field, form: &str, last: &str) -> Result<(), String> {
    let props = Props { photo: demo::PHOTO, wait: &|_| {} };
    play(field, form, &props)?;
    for _ in 0..2 {
        let refused = field.screen().notice.filter(|n| n.tone == Tone::Forbid);
        let Some(notice) = refused else { return Ok(()) };
        say(&format!("refused {}", notice.text));
        if let Some(freed) = std::env::var_os("FAULT_FREED") {
            std::fs::write(freed, "").map_err(|e| e.to_string())?;
        }
        play(field, last, &props)?;
    }
    match field.screen().notice.filter(|n| n.tone == Tone::Forbid) {
        Some(notice) => Err(format!("it was refused again: {}", notice.text)),
        None => Ok(()),
    }
}

fn tell(field: &Field, known: &mut BTreeSet<EntryId>) -> Result<(), String> {
    let all = field.entries().map_err(|why| why.to_string())?;
    let new: Vec<String> = all.iter().filter(|e| known.insert(e.id)).map(|e| e.id.to_string()).collect();
    if !new.is_empty() {
        say(&format!("kept {}", new.join(" ")));
    }
    Ok(())
}
