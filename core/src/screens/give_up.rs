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

/// What the button that leads here says.
pub const GIVE_UP: &str = "Give up this isolation";

/// Why, and that everybody is clear.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(GIVE_UP);
    if let Some((stamp, why)) = &job.given_up {
        page.fact("Given up", format!("{why} ({})", look.by(stamp)));
        next(&mut page, job);
        return page;
    }
    if job.finished.is_some() {
        page.para("The work is finished: restore the supply step by step.");
        next(&mut page, job);
        return page;
    }
    if job.at_work() {
        page.caution(Tone::Must, "Work is under way. Stop work first, and get everybody clear.");
        page.main("Stop work first", go(Route::Step(job.id(), Step::Work)));
        return page;
    }
    if job.points.iter().all(|p| p.opened.is_none()) {
        page.para("Nothing is open yet: there is nothing to give up.");
        next(&mut page, job);
        return page;
    }
    page.caution(Tone::Forbid, "Treat as live. Nothing is proved from now on, and nobody works here.");
    page.para("Then: covers back, people warned, locks off by their owners. Close only what was found on.");
    page.entry("give-up-why", "Why it is given up", "The cause was not found, no time left", look.draft("give-up-why"));
    let hint = "Counted people and tools, looked into the panel";
    let label = "How you saw that everybody is clear";
    page.field("give-up-clear", label, hint, look.draft("give-up-clear"), EntryKind::Long, 500);
    page.main(GIVE_UP, "give-up");
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
    act.say = Some("The isolation is given up. Treat as live. Covers back, locks off, then close what was on.".into());
    act.go = Some(Route::Job(job));
    Ok(())
}
