//! `stillbar tag new`: tags and signs to print.

use std::fs::File;
use std::io::{self, ErrorKind};
use std::path::PathBuf;

use clap::Args;
use serde::Serialize;
use stillbar_core::store::write_whole;
use stillbar_core::tag::TagId;
use stillbar_core::tag::sheet::{Grid, Label, MAX_TAGS, SheetError, SheetKind, print};

use crate::file::{FileError, bounded};

/// More than the points that fit in one file take.
const MAX_POINTS: usize = 1 << 20;

/// Why no tags were made.
#[derive(Debug, thiserror::Error)]
pub enum NewTagsError {
    /// There is no such grid.
    #[error("There is no grid called {:?}; there are: {}.", .0, grids())]
    NoGrid(String),
    /// None, or too many.
    #[error("--count takes 1 to {MAX_TAGS}; this is {0}.")]
    Count(usize),
    /// Fewer tags than points.
    #[error("{points} points do not go on {count} tags: leave --count out, or name fewer points.")]
    TooFew {
        /// How many points were named.
        points: usize,
        /// How many tags were asked for.
        count: usize,
    },
    /// The PDF is there already.
    #[error(transparent)]
    There(#[from] FileError),
    /// The file of points is no text.
    #[error("{0} cannot be read as text in UTF-8. Give a file with a point in each line.")]
    NoPoints(PathBuf),
    /// The file of points is too large.
    #[error("{0} has more than 1 MiB. Give a file with a point in each line, at most {MAX_TAGS}.")]
    TooManyPoints(PathBuf),
    /// No tag can have an id of its own.
    #[error("The system gives no random bytes; try again.")]
    NoRandom,
    /// They do not go on such a sheet.
    #[error(transparent)]
    Sheet(#[from] SheetError),
    /// The PDF could not be written.
    #[error("{path} could not be written: {}. Give another place.", unwritten(.why))]
    Unwritten {
        /// The PDF.
        path: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The tags could not be told as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

fn grids() -> String {
    Grid::ALL.map(|grid| grid.name).join(", ")
}

fn unwritten(why: &io::Error) -> String {
    match why.kind() {
        ErrorKind::NotFound => "the folder is not there".to_owned(),
        ErrorKind::PermissionDenied => "you may not write there".to_owned(),
        ErrorKind::StorageFull => "the disk is full".to_owned(),
        other => other.to_string(),
    }
}

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

/// Makes the tags and writes the PDF, whole or not at all.
pub fn new(new: &NewTags) -> Result<String, NewTagsError> {
    let grid = Grid::named(&new.sheet).ok_or_else(|| NewTagsError::NoGrid(new.sheet.clone()))?;
    let points = points(new)?;
    let full = if points.is_empty() { grid.count() } else { points.len() };
    let count = new.count.unwrap_or(full);
    if count == 0 || count > MAX_TAGS {
        return Err(NewTagsError::Count(count));
    }
    if count < points.len() {
        return Err(NewTagsError::TooFew { points: points.len(), count });
    }
    if new.output.exists() && !new.force {
        return Err(FileError::There(new.output.clone()).into());
    }
    let mut labels = Vec::with_capacity(count);
    for k in 0..count {
        let mut bytes = [0; TagId::RANDOM_BYTES];
        getrandom::fill(&mut bytes).map_err(|_| NewTagsError::NoRandom)?;
        let point = points.get(k).cloned().unwrap_or_default();
        labels.push(Label { tag: TagId::from_random(bytes), site: new.site.trim().to_owned(), point });
    }
    let kind = if new.signs { SheetKind::Signs } else { SheetKind::Tags };
    let pdf = print(&labels, &grid, kind)?;
    write_whole(&new.output, &pdf).map_err(|why| NewTagsError::Unwritten { path: new.output.clone(), why })?;
    if new.json {
        let made: Vec<MadeTag> =
            labels.iter().map(|l| MadeTag { tag: l.tag.to_string(), site: &l.site, point: &l.point }).collect();
        return Ok(serde_json::to_string(&made)?);
    }
    let lines: String = labels.iter().map(|l| format!("{}  {}\n", l.tag.spaced(), l.point)).collect();
    Ok(format!("{lines}{count} tags in {}. Print it at 100 %, without \"fit to page\".\n", new.output.display()))
}

fn points(new: &NewTags) -> Result<Vec<String>, NewTagsError> {
    let Some(path) = &new.points else { return Ok(new.point.iter().map(|p| p.trim().to_owned()).collect()) };
    let read = File::open(path).and_then(|file| bounded(file, MAX_POINTS));
    let text = read.ok().and_then(|bytes| String::from_utf8(bytes).ok());
    let text = text.ok_or_else(|| NewTagsError::NoPoints(path.clone()))?;
    if text.len() > MAX_POINTS {
        return Err(NewTagsError::TooManyPoints(path.clone()));
    }
    Ok(text.lines().map(str::trim).filter(|l| !l.is_empty()).map(str::to_owned).collect())
}
