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
use crate::text::{self, AskLock, Gone};

/// All locks of the job, and a form to fit a further one.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new("Locks and keys");
    let route = |lock: &Lock| go(Route::Lock(job.id(), lock.stamp.id));
    let mut titles = Titles::default();

    for lock in &job.locks {
        if let Some(forced) = forced::untold(lock) {
            page.caution(Tone::Must, forced::must_tell(look, lock, forced));
            let title = titles.unique(format!("Tell {} about {}", look.name(lock.owner), lock.label));
            page.button(title, route(lock));
        }
    }

    page.heading("On");
    if job.locks_on().next().is_none() && job.aside_locks().next().is_none() {
        let held = job.known.iter().any(|k| !k.held.is_empty());
        let caution = text::in_terms(if held { "" } else { held::NO_CLEARANCE });
        page.para(format!("No lock of this job is on. {caution}").trim());
    }
    for lock in job.locks_on() {
        let mut lines = vec![
            format!("Key: {}.", key_place(look, job, lock)),
            format!("Fitted {}. {}.", look.by(&lock.stamp), means_word(job, lock)),
        ];
        if lock.since != lock.stamp {
            lines.push(format!("With {} since {}.", look.name(lock.owner), look.when(&lock.since)));
        }
        if let Some((_, to)) = lock.offered {
            lines.push(format!("Offered to {}, who has not taken it.", look.name(to)));
        }
        if lock.forced.is_some() {
            lines.push("A forced removal has begun.".into());
        }
        let place = text::place(job, lock.on);
        page.row(titles.unique(format!("{} on {place}: {}", look.name(lock.owner), lock.label)), lines, route(lock));
    }
    beside(&mut page, look, job);
    super::aside::locks(&mut page, look, job);
    if job.locks.iter().any(|l| !l.is_on()) {
        page.heading("Off");
    }
    for lock in job.locks.iter().filter(|l| !l.is_on()) {
        let place = text::place(job, lock.on);
        let title = titles.unique(format!("Off {place}: {}, {}", look.name(lock.owner), lock.label));
        page.row(title, vec![off_line(look, lock)], route(lock));
    }
    super::aside::answered_locks(&mut page, look, job);

    if job.points.is_empty() && job.boxes.is_empty() {
        page.para("There is no point of isolation yet, so there is nothing to put a lock on.");
        return to(page, "Add a point of isolation", Route::Step(job.id(), Step::Points));
    }
    if job.handed.is_some() {
        return to(page, "Steps of this job", Route::Job(job.id()));
    }
    if job.finished.is_some() {
        return to(page, "Locks and signs off", Route::Step(job.id(), Step::Unlock));
    }
    let waiting: Vec<EntryId> =
        job.points.iter().flat_map(|point| uncovered(point, &job.people(), &job.locks)).collect();
    fit::form(&mut page, look, job, None, &waiting);
    if page.main.is_none() {
        return to(page, "Steps of this job", Route::Job(job.id()));
    }
    page
}

/// Locks of other jobs at this job's points.
fn beside(page: &mut Page, look: &Look, job: &Job) {
    let known = || job.known.iter().flat_map(|k| &k.held);
    if known().next().is_none() {
        return;
    }
    page.heading("On the same points for other jobs");
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
        let hint = "Leave it empty to sign without: the record says \"no PIN\".";
        let label = format!("PIN of {}", look.name(person));
        page.field("pin", &label, hint, String::new(), EntryKind::Number, 12);
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

fn to(mut page: Page, label: &str, route: Route) -> Page {
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
        if *count == 1 { title } else { format!("{title} ({count})") }
    }
}

fn means_word(job: &Job, lock: &Lock) -> String {
    match (&lock.means, text::goes_through(job, lock)) {
        (Means::Padlock, None) => "Padlock through the device".into(),
        (Means::Hasp, None) => "Padlock on a hasp".into(),
        (Means::Other(what), _) => format!("Not a lock: {what}"),
        (_, Some(places)) => format!("Padlock of a cable or bar, also through {places}"),
    }
}

fn box_label(job: &Job, id: EntryId) -> String {
    job.boxes.iter().find(|b| b.stamp.id == id).map_or_else(|| "a lock box".into(), |b| b.label.clone())
}

pub(super) fn key_place(look: &Look, job: &Job, lock: &Lock) -> String {
    match lock.key {
        KeyAt::Owner => look.name(lock.owner),
        KeyAt::Box(id) => format!("in {}", box_label(job, id)),
    }
}

fn off_line(look: &Look, lock: &Lock) -> String {
    match (lock.off, &lock.forced) {
        (Some(Off::Cut(stamp)), _) => format!("Cut by its owner, who had no key: {}.", look.by(&stamp)),
        (Some(Off::Owner(stamp)), _) => format!("Taken off by its owner: {}.", look.by(&stamp)),
        (Some(Off::Forced(stamp)), Some(forced)) => {
            let authority = look.name(forced.authority);
            format!("Taken off {} under the authority of {authority}, the owner being absent.", look.when(&stamp))
        }
        (Some(Off::Forced(stamp)), None) => format!("Taken off by force: {}.", look.by(&stamp)),
        (None, _) => "Still on.".into(),
    }
}
