//! `stillbar record` and `stillbar verify`.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use clap::Args;
use stillbar_core::record::{self, AnchorWitness, MAX_FILE_BYTES, Made, Verdict};
use stillbar_core::store::write_whole;
use stillbar_office::stamp::{self, StampProof};

use crate::platform::DesktopPlatform;
use crate::{file, folder};

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

/// Writes the record. An error is a sentence, with the exit code.
pub fn make(args: &RecordArgs) -> Result<String, (u8, String)> {
    let wrong = |why: String| (2, why);
    let out = &args.out;
    let kind = match out.extension().and_then(|e| e.to_str()).map(str::to_lowercase).as_deref() {
        Some("pdf") => RecordKind::Pdf,
        Some("json") => RecordKind::Json,
        Some("csv") => RecordKind::Csv,
        _ => return Err(wrong(format!("{}: the name has to end in .pdf, .json or .csv.", out.display()))),
    };
    if out.exists() && !args.force {
        return Err(wrong(format!("{} is there already. Give another name, or --force to replace it.", out.display())));
    }
    let mut made = made(args)?;
    if let Some(path) = &args.stamps {
        made = made.anchored(stamps(path).map_err(wrong)?);
    }
    let bytes = match kind {
        RecordKind::Pdf => made.pdf(),
        RecordKind::Json => made.json(),
        RecordKind::Csv => made.csv().map(String::into_bytes),
    };
    let bytes = bytes.map_err(|e| (1, e.to_string()))?;
    write_whole(out, &bytes)
        .map_err(|e| (1, format!("{} could not be written: {}.", out.display(), folder::plain(&e))))?;
    let report = made.report();
    let check = match kind {
        RecordKind::Csv => "A CSV cannot be verified: keep the PDF or the JSON beside it.".to_owned(),
        _ => format!("Anyone can check it: stillbar verify {}", out.display()),
    };
    Ok(format!("{}: {}. Head {}.\n{check}", out.display(), report.title, report.head))
}

fn made(args: &RecordArgs) -> Result<Made, (u8, String)> {
    let path = Path::new(&args.job);
    if args.data.is_none() && path.is_file() {
        if args.withhold_names {
            let why = "Names are withheld where the journal is: name the job and its folder, not a record of it.";
            return Err((2, why.to_owned()));
        }
        return record::reread(&read(path)?).map_err(|why| (1, why));
    }
    let data = args.data.clone().map_or_else(folder::demo_home, Ok).map_err(|why| (1, why))?;
    let platform = DesktopPlatform::new(&data).map_err(|why| (1, why))?;
    stillbar_core::app::of_folder(&data, &platform, &args.job, args.withhold_names).map_err(|why| (1, why.to_string()))
}

/// Bytes of a file of time stamps at most: the latest fourteen of a job of some thousand entries.
const MAX_STAMPS: usize = 16 << 20;

fn stamps(path: &Path) -> Result<Vec<serde_json::Value>, String> {
    let name = file::name(path);
    let bytes = file::read(path, MAX_STAMPS, &name, "the time stamps of a job, as JSON")?;
    // Only looked through for its form: `verify` says what they show.
    let proofs: Vec<StampProof> =
        serde_json::from_slice(&bytes).map_err(|e| format!("{name}: these are no time stamps ({e})."))?;
    proofs.into_iter().map(|p| serde_json::to_value(p).map_err(|e| e.to_string())).collect()
}

fn read(path: &Path) -> Result<Vec<u8>, (u8, String)> {
    file::read(path, MAX_FILE_BYTES, &file::name(path), "a record, PDF or JSON").map_err(|why| (2, why))
}

/// The certificates in a file.
fn trusted(path: Option<&Path>) -> Result<Vec<Vec<u8>>, (u8, String)> {
    let Some(path) = path else { return Ok(Vec::new()) };
    let name = file::name(path);
    let pem = file::read(path, 1 << 20, &name, "certificates in PEM").map_err(|why| (2, why))?;
    stamp::authorities(&pem).map_err(|why| (2, format!("{name}: {why}")))
}

/// What is found, and the exit code: 0 it holds, 1 it does not, 2 it cannot be read.
pub fn verify(path: &Path, authority: Option<&Path>, json: bool) -> (u8, String) {
    let found = trusted(authority).and_then(|authorities| {
        if path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("csv")) {
            let why = "readings and time line as CSV hold no signatures, so there is nothing to verify. Verify the PDF or the JSON of the record";
            return Err((2, format!("{}: {why}.", file::name(path))));
        }
        let witness: AnchorWitness = &|job, entries, anchor| stamp::witness(job, entries, anchor, &authorities);
        let named = |why| (2, format!("{}: {why}", file::name(path)));
        read(path).and_then(|bytes| record::verify_with(&bytes, Some(witness)).map_err(named))
    });
    match found {
        Ok(verdict) => {
            let text = if json { serde_json::to_string(&verdict).unwrap_or_default() } else { told(&verdict) };
            (u8::from(!verdict.holds), text)
        }
        Err((code, why)) if json => (code, serde_json::json!({"holds": false, "unreadable": why}).to_string()),
        Err(said) => said,
    }
}

fn told(verdict: &Verdict) -> String {
    let mut out = String::new();
    let mut line = |text: &str| {
        let _ = writeln!(out, "{text}");
    };
    if !verdict.title.is_empty() {
        line(&format!("{}\nHead {}", verdict.title, verdict.head));
    }
    line(if verdict.holds { "\nThe record holds." } else { "\nThe record does NOT hold." });
    for failure in &verdict.failures {
        line(&format!("  {}: {}", failure.what, failure.why));
    }
    if !verdict.proved.is_empty() {
        line("\nShown:");
        verdict.proved.iter().for_each(|p| line(&format!("  {p}")));
    }
    line("\nNot shown:");
    verdict.not_proved.iter().for_each(|p| line(&format!("  {p}")));
    out
}
