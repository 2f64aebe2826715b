//! Locks and keys of a job: whose is on, fitting another (`fit.rs`), hand-over, the locks of other jobs at the same points (`held.rs`), and
//! the forced removal of an absent owner's lock (`forced.rs`).

pub(super) mod fit;
mod forced;
pub(super) mod held;
mod one;

pub use one::view as lock;

use std::collections::BTreeMap;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::go;
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::KeyAt;
use crate::journal::{EntryId, Fact};
use crate::point::{Lock, Means, Off, uncovered};
use crate::text::screens::locks as said;
use crate::text::{self, AskLock, Gone};

/// All locks of the job, and a form to fit a further one.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said::title());
    let route = |lock: &Lock| go(Route::Lock(job.id(), lock.stamp.id));
    let mut titles = Titles::default();

    for lock in &job.locks {
        if let Some(forced) = forced::untold(lock) {
            page.caution(Tone::Must, forced::must_tell(look, lock, forced));
            let title = titles.unique(said::tell(look.name(lock.owner), &lock.label));
            page.button(title, route(lock));
        }
    }

    page.heading(said::on());
    if job.locks_on().next().is_none() && job.aside_locks().next().is_none() {
        let held = job.known.iter().any(|k| !k.held.is_empty());
        page.para(if held { said::none_on() } else { said::none_on_here(said::no_clearance()) });
    }
    for lock in job.locks_on() {
        let mut lines =
            vec![said::key(key_place(look, job, lock)), said::fitted(look.by(&lock.stamp), means_word(job, lock))];
        if lock.since != lock.stamp {
            lines.push(said::with_since(look.name(lock.owner), look.when(&lock.since)));
        }
        if let Some((_, to)) = lock.offered {
            lines.push(said::offered(look.name(to)));
        }
        if lock.forced.is_some() {
            lines.push(said::removal_begun());
        }
        let place = text::place(job, lock.on);
        page.row(titles.unique(said::row(look.name(lock.owner), place, &lock.label)), lines, route(lock));
    }
    beside(&mut page, look, job);
    super::aside::locks(&mut page, look, job);
    if job.locks.iter().any(|l| !l.is_on()) {
        page.heading(said::off());
    }
    for lock in job.locks.iter().filter(|l| !l.is_on()) {
        let place = text::place(job, lock.on);
        let title = titles.unique(said::row_off(place, look.name(lock.owner), &lock.label));
        page.row(title, vec![off_line(look, lock)], route(lock));
    }
    super::aside::answered_locks(&mut page, look, job);

    if job.points.is_empty() && job.boxes.is_empty() {
        page.para(said::no_point());
        return to(page, said::add_point(), Route::Step(job.id(), Step::Points));
    }
    if job.handed.is_some() {
        return to(page, said::steps(), Route::Job(job.id()));
    }
    if job.finished.is_some() {
        return to(page, said::take_off(), Route::Step(job.id(), Step::Unlock));
    }
    let waiting: Vec<EntryId> =
        job.points.iter().flat_map(|point| uncovered(point, &job.people(), &job.locks)).collect();
    fit::form(&mut page, look, job, None, &waiting);
    if page.main.is_none() {
        return to(page, said::steps(), Route::Job(job.id()));
    }
    page
}

/// Locks of other jobs at this job's points.
fn beside(page: &mut Page, look: &Look, job: &Job) {
    let known = || job.known.iter().flat_map(|k| &k.held);
    if known().next().is_none() {
        return;
    }
    page.heading(said::beside());
    for point in job.points.iter().filter(|p| known().any(|(at, _)| *at == p.stamp.id)) {
        held::rows(page, look, job, point.stamp.id);
    }
}

/// Does what a button on the locks' screens says; `lock` is the lock whose screen it is.
pub fn act(act: &mut Act, job: EntryId, lock: Option<EntryId>, verb: &str, arg: &str) -> Result<(), NotDone> {
    let Some(lock) = lock else { return fit::act(act, job, None, verb, arg).map(drop) };
    let now = act.job(job)?.lock(lock).cloned().ok_or(Gone::Lock)?;
    let fact = match verb {
        "ring" => return act.ring(now.owner),
        "take" => return one::take(act, job, &now),
        "force-off" => return forced::sign(act, job, &now),
        "remove" => {
            act.go = Some(Route::Locks(job));
            return held::take_off(act, job, lock, None);
        }
        "cut" => {
            let why = act.need("cut-why", AskLock::CutWhy)?;
            return held::take_off(act, job, lock, Some(why));
        }
        "offer" => Fact::KeyOffered { lock, to: act.need_id("offer-to", AskLock::OfferTo)? },
        _ => forced::fact(act, lock, verb)?,
    };
    act.keep(Some(job), fact).map(drop)
}

/// Keeps a fact that `person` signs: the device goes into their hands first, and back if the fact is refused, because then
/// nothing was signed.
pub(super) fn keep_as(act: &mut Act, job: EntryId, person: EntryId, fact: Fact) -> Result<(), NotDone> {
    let (before, known) = (act.acting()?, act.app.hands.known);
    let how = act.app.signs(person, &act.given("pin"))?;
    act.app.hold(person, how)?;
    if let Err(why) = act.keep(Some(job), fact) {
        act.app.hold(before, known)?;
        return Err(why);
    }
    Ok(())
}

/// A place to sign for `person`, who types their PIN too where they have one here.
pub(super) fn sign_here(look: &Look, page: &mut Page, person: EntryId, label: String) {
    page.mark("mark", label, look.draft("mark"));
    let known = look.acting == Some(person) && look.hands.known.is_some();
    if look.hands.has_pin(person) && !known {
        let label = said::pin_of(look.name(person));
        page.field("pin", &label, &said::pin_hint(), String::new(), EntryKind::Number, 12);
    }
}

/// Those on the job as options, but for those in `without`.
pub(super) fn people(look: &Look, job: &Job, without: &[EntryId]) -> Vec<(String, String)> {
    let rest = job.people().into_iter().filter(|p| !without.contains(p));
    rest.map(|p| (p.to_string(), look.name(p))).collect()
}

/// The first that asks gets the main button, the others one in the body.
pub(super) fn put(page: &mut Page, label: impl Into<String>, action: impl Into<String>) {
    if page.main.is_none() {
        page.main(label, action);
    } else {
        page.button(label, action);
    }
}

fn to(mut page: Page, label: String, route: Route) -> Page {
    page.main(label, go(route));
    page
}

/// Rows are tapped by their titles, so two locks of one name get a number.
#[derive(Default)]
struct Titles(BTreeMap<String, usize>);

impl Titles {
    fn unique(&mut self, title: String) -> String {
        let count = self.0.entry(title.clone()).or_default();
        *count += 1;
        if *count == 1 { title } else { said::again(title, *count) }
    }
}

fn means_word(job: &Job, lock: &Lock) -> String {
    match (&lock.means, text::goes_through(job, lock)) {
        (Means::Padlock, None) => said::by_padlock(),
        (Means::Hasp, None) => said::by_hasp(),
        (Means::Other(what), _) => said::by_other(what),
        (_, Some(places)) => said::by_bar(places),
    }
}

fn box_label(job: &Job, id: EntryId) -> String {
    job.boxes.iter().find(|b| b.stamp.id == id).map_or_else(said::a_box, |b| b.label.clone())
}

pub(super) fn key_place(look: &Look, job: &Job, lock: &Lock) -> String {
    match lock.key {
        KeyAt::Owner => look.name(lock.owner),
        KeyAt::Box(id) => said::in_box(box_label(job, id)),
    }
}

fn off_line(look: &Look, lock: &Lock) -> String {
    match (lock.off, &lock.forced) {
        (Some(Off::Cut(stamp)), _) => said::cut(look.by(&stamp)),
        (Some(Off::Owner(stamp)), _) => said::taken_off(look.by(&stamp)),
        (Some(Off::Forced(stamp)), Some(forced)) => said::forced_off(look.when(&stamp), look.name(forced.authority)),
        (Some(Off::Forced(stamp)), None) => said::forced_off_unknown(look.by(&stamp)),
        (None, _) => said::still_on(),
    }
}
