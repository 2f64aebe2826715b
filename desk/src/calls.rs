//! What the commands ask of the core, one function a question.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use stillbar_core::prove::{self, Case, CaseError, ConductorError, MAX_BYTES, Order};
use stillbar_core::store::plain;
use stillbar_core::{OpenError, demo, store, text};

use crate::file::{self, FileError};
use crate::platform::{DesktopPlatform, NoRandom, SECRET};
use crate::told;

/// Why there is no plan or no judgement.
#[derive(Debug, thiserror::Error)]
pub enum PlanError {
    /// The file cannot be read.
    #[error(transparent)]
    File(#[from] FileError),
    /// There is no such order.
    #[error("The order is one of: {}.", Order::ALL.map(|order| order.name()).join(", "))]
    Order,
    /// The list of conductors cannot be used.
    #[error("{0}.")]
    Conductors(#[from] ConductorError),
    /// What is in the file is no case.
    #[error("{name}: {}", text::case(.why))]
    Case {
        /// What the file is called.
        name: String,
        /// What is wrong, and where.
        why: Box<CaseError>,
    },
    /// The answer could not be written as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

/// Why the demo's jobs were not written.
#[derive(Debug, thiserror::Error)]
pub enum SeedError {
    /// Nothing can be signed.
    #[error(transparent)]
    NoRandom(#[from] NoRandom),
    /// The core plays them, and says in a sentence which line of a journey it could not.
    #[error("{0}")]
    Core(String),
}

/// Why a rescue did not come to its end.
#[derive(Debug, thiserror::Error)]
pub enum RescueError {
    /// The journal could not be rescued.
    #[error(transparent)]
    Journal(#[from] OpenError),
    /// It is, and the key that signed it is still where it was.
    #[error(
        "The journal is rescued, but {key} could not be moved beside the damaged files: {}. Move it there.",
        plain(.why)
    )]
    Key {
        /// The file of the key.
        key: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// What was kept could not be told as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

/// What a plan is made of.
pub enum PlanOf<'a> {
    /// A list such as `L1,L2,L3,N,PE`, and the name of an order.
    List(&'a str, &'a str),
    /// A JSON file, or `-` for what is piped in.
    File(&'a Path),
}

/// The dead tests as `stillbar plan --json` prints them.
pub fn plan(of: &PlanOf) -> Result<String, PlanError> {
    Ok(serde_json::to_string(&text::plan(&prove::plan_case(&case(of)?)))?)
}

/// The same plan as text, one test a line; for a file with everything else that has to be shown.
pub fn plan_text(of: &PlanOf) -> Result<String, PlanError> {
    let plan = text::plan(&prove::plan_case(&case(of)?));
    Ok(match of {
        PlanOf::List(..) => told::tests(&plan),
        PlanOf::File(_) => told::plan(&plan),
    })
}

/// What the readings in a file prove, and what may be behind them.
pub fn judge(path: &Path, json: bool) -> Result<String, PlanError> {
    let judgement = text::judgement(&prove::judge::judge(&read_case(path)?));
    Ok(if json { serde_json::to_string(&judgement)? } else { told::judgement(&judgement) })
}

fn case(of: &PlanOf) -> Result<Case, PlanError> {
    match of {
        PlanOf::List(conductors, order) => {
            let order = Order::ALL.into_iter().find(|o| o.name() == *order).ok_or(PlanError::Order)?;
            let conductors = prove::parse_conductors(conductors)?;
            Ok(Case { order, ..Case::of(conductors) })
        }
        PlanOf::File(path) => read_case(path),
    }
}

/// Reads a case from a JSON file, or from the standard input where `path` is `-`.
fn read_case(path: &Path) -> Result<Case, PlanError> {
    let name = file::name(path);
    let json = file::read_text(path, MAX_BYTES, &name, "a JSON file")?;
    Case::from_json(&json).map_err(|why| PlanError::Case { name, why: Box::new(why) })
}

/// Fills an empty `folder` with the demo's jobs.
pub fn seed_demo(folder: &Path) -> Result<(), SeedError> {
    demo::seed(&folder.to_string_lossy(), Arc::new(DesktopPlatform::new(folder)?)).map_err(SeedError::Core)
}

/// Begins a new database in `folder` with all that can be read from the damaged one, which stays. Returns what was kept.
pub fn rescue(folder: &Path, json: bool) -> Result<String, RescueError> {
    let rescued = store::rescue(folder)?;
    // The device begins a new chain with a new key; the old key stays with what it signed.
    let key = folder.join(SECRET);
    if key.exists() {
        let moved = std::fs::rename(&key, rescued.kept.join(SECRET));
        moved.map_err(|why| RescueError::Key { key, why })?;
    }
    if json {
        return Ok(serde_json::to_string(&rescued)?);
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
