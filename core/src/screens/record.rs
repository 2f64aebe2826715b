//! The record of a job: what it is, and the way to hand it on.

use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::EntryId;
use crate::text::screens::record as said;

/// What is in it, and what it does not show.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said::title());
    page.para(said::what());
    page.para(said::signed());
    page.caution(Tone::Warn, said::not_now());
    page.fact(said::photos(), job.photos.len().to_string());
    page.fact(said::handed_back(), job.handed.as_ref().map_or_else(said::not_yet, |(stamp, ..)| look.by(stamp)));
    page.para(said::private());
    page.para(said::in_english());
    page.main(said::share(), "share-record");
    page.toned(said::share_withheld(), "share-record withheld", Tone::Quiet);
    page
}

/// What is done there.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "share-record" => act.share_record(job, arg == "withheld"),
        _ => Err(UNKNOWN.into()),
    }
}
