//! What comes between the proof and the work: who lets it start, and temporary earths.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::go;
use crate::app::NotDone;
use crate::job::{Job, Standing};
use crate::journal::{EntryId, Fact};
use crate::text::AskJob;
use crate::text::screens::job as said_job;
use crate::text::screens::work as said;

/// Where somebody else than the tester lets the work start: the place for their signature.
pub(in crate::screens) fn release(look: &Look, job: &Job, page: &mut Page) {
    if !job.asks_who_releases() {
        return;
    }
    let tester = job.run().and_then(|run| run.before.by);
    let may = |p: &EntryId| Some(*p) != tester && job.people().contains(p) && !job.learns(Some(*p));
    let Some(person) = look.acting.filter(may) else {
        if job.people().iter().any(may) {
            page.button(said::release_give_phone(), go(Route::People));
        }
        return;
    };
    let name = look.name(person);
    page.mark("mark", said::release(&name), look.draft("mark"));
    page.button(said::release_sign(name), "sign-run");
}

/// Signs for the release, which answers who lets the work start.
pub(in crate::screens) fn release_signed(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    super::super::prove::sign_run(act, job)?;
    let (question, answer) = ("released-by".to_owned(), "another".to_owned());
    let (words, who) = (String::new(), String::new());
    let answered = Fact::Answered { question, answer, of: None, point: None, words, who, read: None };
    act.keep(Some(job), answered).map(drop)
}

/// The temporary earths that are in, and a form for one more once dead is proved.
pub(in crate::screens) fn earths(page: &mut Page, look: &Look, job: &Job) {
    let proved = matches!(job.standing(), Standing::Proved { .. });
    if job.earths.is_empty() && !proved {
        return;
    }
    page.heading(said::earths());
    earths_in(page, look, job);
    if proved {
        page.entry("earth", &said::earth_number(), "", look.draft("earth"));
        page.entry("earth-at", &said::earth_at(), &said::earth_at_hint(), look.draft("earth-at"));
        page.button(said::earth_in(), "earth-in");
    }
}

/// Each earth that is in, with the button that takes it off the list.
pub(in crate::screens) fn earths_in(page: &mut Page, look: &Look, job: &Job) {
    for earth in job.earths_in() {
        page.fact(said::earth(&earth.label), said_job::noted(&earth.at, look.by(&earth.stamp)));
        page.button(said::earth_off(&earth.label), format!("earth-off {}", earth.stamp.id));
    }
}

/// Keeps that an earth is in, or off.
pub(in crate::screens) fn act_earth(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "earth-in" => {
            Fact::EarthFitted { label: act.need("earth", AskJob::Earth)?, at: act.need("earth-at", AskJob::Earth)? }
        }
        _ => Fact::EarthRemoved { earth: super::super::home::id(arg)? },
    };
    act.keep(Some(job), fact).map(drop)
}
