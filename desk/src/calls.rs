//! What the commands ask of the core, one function a question.

use std::path::Path;

use serde_json::Value;

/// The dead tests of these conductors in this order, as `stillbar plan --json` prints them. An error is one sentence.
pub fn plan(_conductors: &str, _order: &str) -> Result<Value, String> {
    todo!()
}

/// The same plan as text, one test a line.
pub fn plan_text(_conductors: &str, _order: &str) -> Result<String, String> {
    todo!()
}

/// Fills an empty `folder` with the demo's jobs.
pub fn seed_demo(_folder: &Path) -> Result<(), String> {
    todo!()
}

/// Begins a new database in `folder` with all that can be read from the damaged one, which stays. Returns what was kept.
pub fn rescue(_folder: &Path) -> Result<String, String> {
    todo!()
}
