//! What the commands ask of the core, one function a question.

use std::fmt::Write;
use std::path::Path;
use std::sync::Arc;

use serde::Serialize;
use stillbar_core::prove::{self, Order, Test};
use stillbar_core::{demo, store};

use crate::platform::{SECRET, System};

/// What `stillbar plan --json` prints.
#[derive(Serialize)]
struct Plan {
    tests: Vec<Test>,
}

/// The dead tests of these conductors in this order, as `stillbar plan --json` prints them. An error is one sentence.
pub fn plan(conductors: &str, order: &str) -> Result<String, String> {
    serde_json::to_string(&Plan { tests: tests(conductors, order)? }).map_err(|e| e.to_string())
}

/// The same plan as text, one test a line.
pub fn plan_text(conductors: &str, order: &str) -> Result<String, String> {
    let mut out = String::new();
    for (i, test) in tests(conductors, order)?.iter().enumerate() {
        let Test { first, then, expect, .. } = test;
        // Writing to a String cannot fail.
        let _ = writeln!(
            out,
            "{:>4}. {first} – {then}   first probe on {first}, held; then {then}. Expect {expect}.",
            i + 1
        );
    }
    Ok(out)
}

fn tests(conductors: &str, order: &str) -> Result<Vec<Test>, String> {
    let known: Vec<&str> = Order::ALL.iter().map(|o| o.name()).collect();
    let order = Order::ALL.into_iter().find(|o| o.name() == order);
    let order = order.ok_or_else(|| format!("The order is one of: {}.", known.join(", ")))?;
    Ok(prove::plan(&prove::parse_conductors(conductors).map_err(|e| format!("{e}."))?, order))
}

/// Fills an empty `folder` with the demo's jobs.
pub fn seed_demo(folder: &Path) -> Result<(), String> {
    demo::seed(&folder.to_string_lossy(), Arc::new(System::new(folder)?))
}

/// Begins a new database in `folder` with all that can be read from the damaged one, which stays. Returns what was kept.
pub fn rescue(folder: &Path, json: bool) -> Result<String, String> {
    let rescued = store::rescue(folder).map_err(|e| e.to_string())?;
    // The device begins a new chain with a new key; the old key stays with what it signed.
    let key = folder.join(SECRET);
    if key.exists() {
        std::fs::rename(&key, rescued.kept.join(SECRET)).map_err(|e| {
            format!(
                "The journal is rescued, but {} could not be moved beside the damaged files ({e}). Move it there.",
                key.display()
            )
        })?;
    }
    if json {
        return serde_json::to_string(&rescued).map_err(|e| e.to_string());
    }
    let missing = if rescued.missing.is_empty() {
        "Every device's chain is whole as far as it reaches; entries after the last one saved cannot be told from here."
            .to_owned()
    } else {
        format!("Missing: {}.", rescued.missing.join("; "))
    };
    Ok(format!(
        "{} entries whose signature holds are in a new journal. {missing} The damaged files are kept in {}.",
        rescued.entries,
        rescued.kept.display()
    ))
}
