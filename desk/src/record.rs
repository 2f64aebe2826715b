//! `stillbar record` and `stillbar verify`.

use std::fmt::Write;
use std::io;
use std::path::{Path, PathBuf};

use clap::Args;
use stillbar_core::app::{NoRecord, of_folder};
use stillbar_core::record::{self, AnchorWitness, MAX_FILE_BYTES, Made, RecordError, RereadError, Unreadable, Verdict};
use stillbar_core::store::{plain, write_whole};
use stillbar_core::text::screens::command as said;
use stillbar_core::text::terms::Speaking;
use stillbar_office::stamp::{self, NoCertificate, StampProof};

use crate::file::{self, FileError};
use crate::folder::{self, FolderError};
use crate::platform::{DesktopPlatform, NoRandom};

/// Why no record was written.
#[derive(Debug, thiserror::Error)]
pub enum MakeError {
    /// The ending of its name does not say what to write.
    #[error("{0}: the name has to end in .pdf, .json or .csv.")]
    Ending(PathBuf),
    /// A file that was named cannot be used.
    #[error(transparent)]
    File(#[from] FileError),
    /// The names in a record are signed over: they can be left out only where the journal is.
    #[error("Names are withheld where the journal is: name the job and its folder, not a record of it.")]
    Withhold,
    /// What is in the file of time stamps is something else.
    #[error("{name}: these are no time stamps ({why}).")]
    Stamps {
        /// What the file is called.
        name: String,
        /// Why.
        #[source]
        why: serde_json::Error,
    },
    /// The time stamps could not be written into the record.
    #[error(transparent)]
    Json(serde_json::Error),
    /// The data folder cannot be used.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// The laptop cannot lend its chance.
    #[error(transparent)]
    NoRandom(#[from] NoRandom),
    /// The folder has no such job, or no record can be made of it.
    #[error(transparent)]
    NoRecord(#[from] NoRecord),
    /// What is in the file is no whole record.
    #[error(transparent)]
    Reread(#[from] RereadError),
    /// The record cannot be made.
    #[error(transparent)]
    Record(#[from] RecordError),
    /// It could not be written to disk.
    #[error("{path} could not be written: {}.", plain(.why))]
    Unwritten {
        /// The record.
        path: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
}

impl MakeError {
    /// Whether what was given is wrong, rather than that something could not be done with it.
    pub fn is_given_wrong(&self) -> bool {
        match self {
            MakeError::Ending(_)
            | MakeError::File(_)
            | MakeError::Withhold
            | MakeError::Stamps { .. }
            | MakeError::Json(_) => true,
            MakeError::Folder(_)
            | MakeError::NoRandom(_)
            | MakeError::NoRecord(_)
            | MakeError::Reread(_)
            | MakeError::Record(_)
            | MakeError::Unwritten { .. } => false,
        }
    }
}

/// Why a file cannot be looked at as a record.
#[derive(Debug, thiserror::Error)]
pub enum VerifyError {
    /// It, or the file of certificates, cannot be read.
    #[error(transparent)]
    File(#[from] FileError),
    /// There is no certificate in the file of them.
    #[error("{name}: {why}")]
    Certificates {
        /// What the file is called.
        name: String,
        /// Why.
        #[source]
        why: NoCertificate,
    },
    /// It is a part of a record without its signatures.
    #[error(
        "{0}: readings and time line as CSV hold no signatures, so there is nothing to verify. Verify the PDF or the JSON of the record."
    )]
    Csv(String),
    /// It is no record.
    #[error("{name}: {why}")]
    Unreadable {
        /// What the file is called.
        name: String,
        /// Why.
        #[source]
        why: Unreadable,
    },
}

/// What `stillbar record` is given.
#[derive(Args)]
pub struct RecordArgs {
    /// The job: its title, the first digits of its id, or a record whose pages are to be made anew
    #[arg(value_name = "JOB")]
    job: String,
    /// The file to write; its ending says what: .pdf, .json or .csv
    #[arg(short, value_name = "FILE")]
    out: PathBuf,
    /// The data folder [default: that of the demo]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Time stamps of the office that go into the record: the JSON of a job's page there
    #[arg(long, value_name = "FILE")]
    stamps: Option<PathBuf>,
    /// Leave out names and signatures; what is left still verifies
    #[arg(long)]
    withhold_names: bool,
    /// Replace the file if it is there
    #[arg(long)]
    force: bool,
}

#[derive(Clone, Copy)]
enum RecordKind {
    Pdf,
    Json,
    Csv,
}

/// Writes the record.
pub fn make(args: &RecordArgs) -> Result<String, MakeError> {
    let out = &args.out;
    let kind = match out.extension().and_then(|e| e.to_str()).map(str::to_lowercase).as_deref() {
        Some("pdf") => RecordKind::Pdf,
        Some("json") => RecordKind::Json,
        Some("csv") => RecordKind::Csv,
        _ => return Err(MakeError::Ending(out.clone())),
    };
    if out.exists() && !args.force {
        return Err(FileError::There(out.clone()).into());
    }
    let mut made = made(args)?;
    if let Some(path) = &args.stamps {
        made = made.anchored(stamps(path)?);
    }
    let bytes = match kind {
        RecordKind::Pdf => made.pdf()?,
        RecordKind::Json => made.json()?,
        RecordKind::Csv => made.csv()?.into_bytes(),
    };
    write_whole(out, &bytes).map_err(|why| MakeError::Unwritten { path: out.clone(), why })?;
    let report = made.report();
    let _speaking = report.speaking();
    let check = match kind {
        RecordKind::Csv => said::record_csv(),
        _ => said::record_check(out.display().to_string()),
    };
    let made = said::record(out.display().to_string(), &report.title, report.head.to_string());
    Ok(format!("{made}\n{check}"))
}

fn made(args: &RecordArgs) -> Result<Made, MakeError> {
    let path = Path::new(&args.job);
    if args.data.is_none() && path.is_file() {
        if args.withhold_names {
            return Err(MakeError::Withhold);
        }
        return Ok(record::reread(&read(path)?)?);
    }
    let data = args.data.clone().map_or_else(folder::demo_home, Ok)?;
    let platform = DesktopPlatform::new(&data)?;
    Ok(of_folder(&data, &platform, &args.job, args.withhold_names)?)
}

/// Bytes of a file of time stamps at most: the latest fourteen of a job of some thousand entries.
const MAX_STAMPS: usize = 16 << 20;

fn stamps(path: &Path) -> Result<Vec<serde_json::Value>, MakeError> {
    let name = file::name(path);
    let bytes = file::read(path, MAX_STAMPS, &name, "the time stamps of a job, as JSON")?;
    // Only looked through for its form: `verify` says what they show.
    let proofs: Vec<StampProof> = serde_json::from_slice(&bytes).map_err(|why| MakeError::Stamps { name, why })?;
    proofs.into_iter().map(|p| serde_json::to_value(p).map_err(MakeError::Json)).collect()
}

fn read(path: &Path) -> Result<Vec<u8>, FileError> {
    file::read(path, MAX_FILE_BYTES, &file::name(path), "a record, PDF or JSON")
}

/// The certificates in a file.
fn trusted(path: Option<&Path>) -> Result<Vec<Vec<u8>>, VerifyError> {
    let Some(path) = path else { return Ok(Vec::new()) };
    let name = file::name(path);
    let pem = file::read(path, 1 << 20, &name, "certificates in PEM")?;
    stamp::authorities(&pem).map_err(|why| VerifyError::Certificates { name, why })
}

/// What `stillbar verify` finds out.
pub struct Found {
    /// What is printed.
    pub text: String,
    /// The exit code: 0 the record holds, 1 it does not, 2 it cannot be read.
    pub code: u8,
}

/// Looks at a record. What cannot be read is an error for a person, and an answer for a program.
pub fn verify(path: &Path, authority: Option<&Path>, json: bool) -> Result<Found, VerifyError> {
    match verdict(path, authority) {
        Ok(verdict) => {
            let text = if json { serde_json::to_string(&verdict).unwrap_or_default() } else { told(&verdict) };
            Ok(Found { text, code: u8::from(!verdict.holds) })
        }
        Err(why) if json => {
            let text = serde_json::json!({"holds": false, "unreadable": why.to_string()}).to_string();
            Ok(Found { text, code: 2 })
        }
        Err(why) => Err(why),
    }
}

fn verdict(path: &Path, authority: Option<&Path>) -> Result<Verdict, VerifyError> {
    let authorities = trusted(authority)?;
    let name = file::name(path);
    if path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("csv")) {
        return Err(VerifyError::Csv(name));
    }
    let witness: AnchorWitness =
        &|job, entries, anchor| stamp::witness(job, entries, anchor, &authorities).map_err(Into::into);
    record::verify_with(&read(path)?, Some(witness)).map_err(|why| VerifyError::Unreadable { name, why })
}

fn told(verdict: &Verdict) -> String {
    let _speaking = Speaking::of(verdict.rules);
    let mut out = String::new();
    let mut line = |text: &str| {
        let _ = writeln!(out, "{text}");
    };
    if !verdict.title.is_empty() {
        line(&verdict.title);
        line(&said::head(verdict.head.to_string()));
    }
    let holds = if verdict.holds { said::holds() } else { said::does_not_hold() };
    line(&format!("\n{holds}"));
    for failure in &verdict.failures {
        line(&format!("  {}", said::failure(&failure.what, &failure.why)));
    }
    if !verdict.proved.is_empty() {
        line(&format!("\n{}", said::shown()));
        verdict.proved.iter().for_each(|p| line(&format!("  {p}")));
    }
    line(&format!("\n{}", said::not_shown()));
    verdict.not_proved.iter().for_each(|p| line(&format!("  {p}")));
    out
}
