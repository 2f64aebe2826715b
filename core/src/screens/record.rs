//! The record of a job: what it is, and the way to hand it on.

use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::EntryId;

/// What is in it, and what it does not show.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new("Record of this job");
    page.para(
        "A PDF with all that was recorded here: summary, points, locks and photos, proofs and readings, time line. The signed journal of \
         the job is in it, and anyone can check that every page follows from it.",
    );
    page.caution(
        Tone::Warn,
        "It tells what was done and read, not how anything is now. What comes later is not in it: make it again.",
    );
    page.fact("Photos", job.photos.len().to_string());
    page.fact("Handed back", job.handed.as_ref().map_or("not yet".to_owned(), |(stamp, ..)| look.by(stamp)));
    page.para("It has no location and no telephone numbers. Look at photos and notes before you hand it on.");
    page.main("Share the record", "share-record");
    page.toned("Share it without names and signatures", "share-record withheld", Tone::Quiet);
    page
}

/// What is done there.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "share-record" => act.share_record(job, arg == "withheld"),
        _ => Err(UNKNOWN.into()),
    }
}
