//! What the commands ask of the core, one function a question.

use std::path::Path;
use std::sync::Arc;

use stillbar_core::prove::{self, Case, MAX_BYTES, Order};
use stillbar_core::store::plain;
use stillbar_core::{demo, store, text};

use crate::platform::{DesktopPlatform, SECRET};
use crate::{file, told};

/// What a plan is made of.
pub enum PlanOf<'a> {
    /// A list such as `L1,L2,L3,N,PE`, and the name of an order.
    List(&'a str, &'a str),
    /// A JSON file, or `-` for what is piped in.
    File(&'a Path),
}

/// The dead tests as `stillbar plan --json` prints them. An error is one sentence.
pub fn plan(of: &PlanOf) -> Result<String, String> {
    serde_json::to_string(&text::plan(&prove::plan_case(&case(of)?))).map_err(|e| e.to_string())
}

/// The same plan as text, one test a line; for a file with everything else that has to be shown.
pub fn plan_text(of: &PlanOf) -> Result<String, String> {
    let plan = text::plan(&prove::plan_case(&case(of)?));
    Ok(match of {
        PlanOf::List(..) => told::tests(&plan),
        PlanOf::File(_) => told::plan(&plan),
    })
}

/// What the readings in a file prove, and what may be behind them. An error is one sentence.
pub fn judge(path: &Path, json: bool) -> Result<String, String> {
    let judgement = text::judgement(&prove::judge::judge(&read_case(path)?));
    if json { serde_json::to_string(&judgement).map_err(|e| e.to_string()) } else { Ok(told::judgement(&judgement)) }
}

fn case(of: &PlanOf) -> Result<Case, String> {
    match of {
        PlanOf::List(conductors, order) => {
            let known: Vec<&str> = Order::ALL.iter().map(|o| o.name()).collect();
            let order = Order::ALL.into_iter().find(|o| o.name() == *order);
            let order = order.ok_or_else(|| format!("The order is one of: {}.", known.join(", ")))?;
            let conductors = prove::parse_conductors(conductors).map_err(|e| format!("{e}."))?;
            Ok(Case { order, ..Case::of(conductors) })
        }
        PlanOf::File(path) => read_case(path),
    }
}

/// Reads a case from a JSON file, or from the standard input where `path` is `-`. An error is one sentence.
fn read_case(path: &Path) -> Result<Case, String> {
    let name = file::name(path);
    let bytes = file::read(path, MAX_BYTES, &name, "a JSON file")?;
    let json = std::str::from_utf8(&bytes)
        .map_err(|e| format!("{name}: byte {} is not UTF-8; save the file as UTF-8.", e.valid_up_to() + 1))?;
    Case::from_json(json).map_err(|e| format!("{name}: {}", text::case(&e)))
}

/// Fills an empty `folder` with the demo's jobs.
pub fn seed_demo(folder: &Path) -> Result<(), String> {
    demo::seed(&folder.to_string_lossy(), Arc::new(DesktopPlatform::new(folder)?))
}

/// Begins a new database in `folder` with all that can be read from the damaged one, which stays. Returns what was kept.
pub fn rescue(folder: &Path, json: bool) -> Result<String, String> {
    let rescued = store::rescue(folder).map_err(|e| e.to_string())?;
    // The device begins a new chain with a new key; the old key stays with what it signed.
    let key = folder.join(SECRET);
    if key.exists() {
        std::fs::rename(&key, rescued.kept.join(SECRET)).map_err(|e| {
            format!(
                "The journal is rescued, but {} could not be moved beside the damaged files: {}. Move it there.",
                key.display(),
                plain(&e)
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
