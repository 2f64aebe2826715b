//! Giving up an isolation before the work is done, from wherever it stands: what was opened can then be closed again.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::job::next;
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::text::AskJob;
use crate::text::screens::give_up as said;

/// Why, and that everybody is clear.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said::title());
    if let Some((stamp, why)) = &job.given_up {
        page.fact(said::given_up(), said::given_up_why(why, look.by(stamp)));
        next(&mut page, job);
        return page;
    }
    if job.finished.is_some() {
        page.para(said::finished());
        next(&mut page, job);
        return page;
    }
    if job.at_work() {
        page.caution(Tone::Must, said::at_work());
        page.main(said::stop_work(), go(Route::Step(job.id(), Step::Work)));
        return page;
    }
    if job.points.iter().all(|p| p.opened.is_none()) {
        page.para(said::nothing_open());
        next(&mut page, job);
        return page;
    }
    page.caution(Tone::Forbid, said::live());
    page.para(said::then());
    page.entry("give-up-why", &said::why(), &said::why_hint(), look.draft("give-up-why"));
    page.field("give-up-clear", &said::clear(), &said::clear_hint(), look.draft("give-up-clear"), EntryKind::Long, 500);
    page.main(said::title(), "give-up");
    page
}

/// Gives it up.
pub fn act(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    if verb != "give-up" {
        return Err(UNKNOWN.into());
    }
    let why = act.need("give-up-why", AskJob::GiveUpWhy)?;
    let clear = act.need("give-up-clear", AskJob::GiveUpClear)?;
    act.keep(Some(job), Fact::GivenUp { why, clear })?;
    act.say = Some(said::done());
    act.go = Some(Route::Job(job));
    Ok(())
}
