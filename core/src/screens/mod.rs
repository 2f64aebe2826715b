//! The screens: one file a screen or a family of them, each with what it shows (`view`) and what each action does (`act`).
//!
//! Promises: no shell decides anything, a screen never says more than the job shows, and every action goes through the gate.
//! Start at [`parts::Screen`]; [`Route`] lists where one can be.

pub mod build;
pub mod context;
pub mod parts;
mod route;

mod again;
mod aside;
mod asked;
mod company;
mod find;
mod give_up;
mod home;
mod isolate;
mod job;
mod language;
mod like;
mod locks;
mod near;
mod office;
mod pin;
mod plan;
mod prove;
mod record;
mod restore;
mod rules;
mod supply;
pub mod svg;
mod system;
mod tags;
mod text;
mod work;

pub(crate) use locks::fit::FOR_WHOM;
pub use route::Route;
pub(crate) use text::as_message;
pub use text::as_text;

use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::{Stage, Step};
use crate::journal::EntryId;
use crate::store::JobRow;
use build::Page;
use context::{Act, Look};

/// What `route` shows. `job` is the route's job, if it has one.
pub fn view(route: &Route, look: &Look, jobs: &[JobRow], job: Option<&Job>) -> Page {
    match (route, job) {
        (Route::Home, _) => home::view(look, jobs),
        (Route::People, _) => home::people(look),
        (Route::Pin(person), _) => pin::view(look, *person),
        (Route::NewJob, _) => home::new_job(look),
        (Route::Board, _) => home::board(look),
        (Route::Office, _) => office::view(look),
        (Route::Rules, _) => rules::view(look),
        (Route::Language, _) => language::view(look),
        (Route::Near, _) => near::view(look),
        (Route::Scan, _) => tags::scan(look),
        (Route::Tag(tag), _) => tags::view(look, *tag),
        (Route::PointTags(_, point), Some(job)) => tags::of_point(look, job, *point),
        (Route::Network(site), _) => supply::network(look, *site),
        (Route::NewNode(_), _) => supply::part::new_node(look),
        (Route::NewLink(_), _) => supply::part::new_link(look),
        (Route::Part(_, entry), _) => supply::part::view(look, *entry),
        (Route::Cut(_), Some(job)) => supply::cut::view(look, job),
        (Route::Job(_), Some(job)) => job::view(look, job),
        (Route::Step(_, step), Some(job)) => step_view(look, job, *step),
        (Route::Locks(_), Some(job)) => locks::view(look, job),
        (Route::Asides(_), Some(job)) => aside::view(look, job),
        (Route::Lock(_, lock), Some(job)) => locks::lock(look, job, *lock),
        (Route::Change(_), Some(job)) => work::change(look, job),
        (Route::GiveUp(_), Some(job)) => give_up::view(look, job),
        (Route::Shift(_), Some(job)) => work::shift(look, job),
        (Route::TimeLine(_), Some(job)) => job::time_line(look, job),
        (Route::Record(_), Some(job)) => record::view(look, job),
        (Route::Deviate(_, step), Some(job)) => job::deviate(look, job, *step),
        _ => Page::new(crate::text::screens::app::no_job()),
    }
}

/// Does what `verb` says on `route`; the error is why not.
pub fn act(route: &Route, act: &mut Act, verb: &str, arg: &str) -> Result<(), NotDone> {
    match route {
        Route::Home | Route::People | Route::NewJob | Route::Board => home::act(act, verb, arg),
        Route::Pin(person) => pin::act(act, *person, verb),
        Route::Office => office::act(act, verb),
        Route::Rules => rules::act(act, verb),
        Route::Language => language::act(act, verb, arg),
        Route::Near => near::act(act, verb),
        Route::Scan | Route::Tag(_) => tags::act(act, verb, arg),
        Route::PointTags(job, point) => tags::act_point(act, *job, *point, verb, arg),
        Route::Network(site) => supply::act(act, *site, verb, arg),
        Route::NewNode(site) | Route::NewLink(site) => supply::part::act(act, *site, None, verb),
        Route::Part(site, entry) => supply::part::act(act, *site, Some(*entry), verb),
        Route::Cut(job) => supply::cut::act(act, *job, verb, arg),
        Route::Job(job) | Route::TimeLine(job) => job::act(act, *job, None, verb, arg),
        Route::Record(job) => record::act(act, *job, verb, arg),
        Route::Deviate(job, step) => job::act(act, *job, Some(*step), verb, arg),
        Route::Step(job, step) => step_act(act, *job, *step, verb, arg),
        Route::Locks(job) => locks::act(act, *job, None, verb, arg),
        Route::Asides(job) => aside::act(act, *job, verb, arg),
        Route::Lock(job, lock) => locks::act(act, *job, Some(*lock), verb, arg),
        Route::GiveUp(job) => give_up::act(act, *job, verb),
        Route::Change(job) | Route::Shift(job) => work::act(act, *job, verb, arg),
    }
}

fn step_view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = match step.stage() {
        Stage::Plan => plan::view(look, job, step),
        Stage::Isolate => isolate::view(look, job, step),
        Stage::Prove => prove::view(look, job, step),
        Stage::Work => work::view(look, job),
        Stage::Restore => restore::view(look, job, step),
    };
    // While a question is open its answers lead: a thumb that goes to the foot of the screen would only be refused.
    // People at work whose proof has ended stop first.
    if !job.at_work() && job.questions(Some(step)).iter().any(|(.., open)| open.stopped.is_none()) {
        page.main_below();
    }
    job::still_to_do(&mut page);
    job::way_past(&mut page, job, step);
    page
}

fn step_act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        asked::ANSWER | asked::AGAIN | asked::NOTHING => return asked::act(act, job, Some(step), verb, arg),
        asked::SAY => return asked::say(act, arg),
        _ => {}
    }
    match step.stage() {
        Stage::Plan => plan::act(act, job, step, verb, arg),
        Stage::Isolate => isolate::act(act, job, step, verb, arg),
        Stage::Prove => prove::act(act, job, step, verb, arg),
        Stage::Work => work::act(act, job, verb, arg),
        Stage::Restore => restore::act(act, job, step, verb, arg),
    }
}
