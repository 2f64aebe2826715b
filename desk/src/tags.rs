//! `stillbar tag new`: tags and signs to print.

use std::fs::File;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use clap::Args;
use serde::Serialize;
use stillbar_core::store::write_whole;
use stillbar_core::tag::TagId;
use stillbar_core::tag::sheet::{Grid, Label, MAX_TAGS, SheetKind, print};

use crate::file::bounded;

/// More than the points that fit in one file take.
const MAX_POINTS: usize = 1 << 20;

/// What is asked for.
#[derive(Args)]
pub struct NewTags {
    /// How many tags [default: one a point, or a page full]
    #[arg(long, value_name = "N")]
    count: Option<usize>,
    /// The grid of labels: a4-3x8, a4-3x7, a4-2x7, letter-3x10 or letter-2x5
    #[arg(long, value_name = "GRID", default_value = "a4-3x8")]
    sheet: String,
    /// The PDF to write
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
    /// A site to print on every tag
    #[arg(long, value_name = "TEXT", default_value = "")]
    site: String,
    /// A point to print on one tag; once for each
    #[arg(long, value_name = "TEXT", conflicts_with = "points")]
    point: Vec<String>,
    /// A file with a point in each line
    #[arg(long, value_name = "FILE")]
    points: Option<PathBuf>,
    /// Print caution signs, four to a page, each with a tag, instead of labels
    #[arg(long)]
    signs: bool,
    /// Replace the file if it is there
    #[arg(long)]
    force: bool,
    /// Print JSON for a program instead of text for a person
    #[arg(long)]
    json: bool,
}

#[derive(Serialize)]
struct MadeTag<'a> {
    tag: String,
    site: &'a str,
    point: &'a str,
}

/// Makes the tags and writes the PDF, whole or not at all. An error is one sentence.
pub fn new(new: &NewTags) -> Result<String, String> {
    let names = Grid::ALL.map(|g| g.name).join(", ");
    let grid = Grid::named(&new.sheet)
        .ok_or_else(|| format!("There is no grid called {:?}; there are: {names}.", new.sheet))?;
    let points = points(new)?;
    let full = if points.is_empty() { grid.count() } else { points.len() };
    let count = new.count.unwrap_or(full);
    if count == 0 || count > MAX_TAGS {
        return Err(format!("--count takes 1 to {MAX_TAGS}; this is {count}."));
    }
    if count < points.len() {
        return Err(format!(
            "{} points do not go on {count} tags: leave --count out, or name fewer points.",
            points.len()
        ));
    }
    if new.output.exists() && !new.force {
        return Err(format!("{} is there already. Give another name, or --force to replace it.", new.output.display()));
    }
    let mut labels = Vec::with_capacity(count);
    for k in 0..count {
        let mut bytes = [0; TagId::RANDOM_BYTES];
        getrandom::fill(&mut bytes).map_err(|_| "The system gives no random bytes; try again.".to_owned())?;
        let point = points.get(k).cloned().unwrap_or_default();
        labels.push(Label { tag: TagId::from_random(bytes), site: new.site.trim().to_owned(), point });
    }
    let kind = if new.signs { SheetKind::Signs } else { SheetKind::Tags };
    let pdf = print(&labels, &grid, kind).map_err(|e| e.to_string())?;
    write(&new.output, &pdf)?;
    if new.json {
        let made: Vec<MadeTag> =
            labels.iter().map(|l| MadeTag { tag: l.tag.to_string(), site: &l.site, point: &l.point }).collect();
        return serde_json::to_string(&made).map_err(|e| e.to_string());
    }
    let lines: String = labels.iter().map(|l| format!("{}  {}\n", l.tag.spaced(), l.point)).collect();
    Ok(format!("{lines}{count} tags in {}. Print it at 100 %, without \"fit to page\".\n", new.output.display()))
}

fn points(new: &NewTags) -> Result<Vec<String>, String> {
    let Some(path) = &new.points else { return Ok(new.point.iter().map(|p| p.trim().to_owned()).collect()) };
    let shown = path.display();
    let read = File::open(path).and_then(|file| bounded(file, MAX_POINTS));
    let text = read.ok().and_then(|bytes| String::from_utf8(bytes).ok());
    let text =
        text.ok_or_else(|| format!("{shown} cannot be read as text in UTF-8. Give a file with a point in each line."))?;
    if text.len() > MAX_POINTS {
        return Err(format!("{shown} has more than 1 MiB. Give a file with a point in each line, at most {MAX_TAGS}."));
    }
    Ok(text.lines().map(str::trim).filter(|l| !l.is_empty()).map(str::to_owned).collect())
}

fn write(path: &Path, bytes: &[u8]) -> Result<(), String> {
    write_whole(path, bytes).map_err(|e| {
        let why = match e.kind() {
            ErrorKind::NotFound => "the folder is not there".to_owned(),
            ErrorKind::PermissionDenied => "you may not write there".to_owned(),
            ErrorKind::StorageFull => "the disk is full".to_owned(),
            other => other.to_string(),
        };
        format!("{} could not be written: {why}. Give another place.", path.display())
    })
}
