//! Isolating: loads switched off in order, then each point opened, locked, signed and photographed by the person in front of it.

use super::Route;
use super::again;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go, id, spare};
use super::job::{lacking, next};
use super::locks::{fit, held};
use super::parts::{PhotoSeen, PhotoSlot, StepRow, StepState, Tone};
use super::plan::{in_words, passed};
use crate::app::NotDone;
use crate::app::shoot::WAITING;
use crate::job::steps::Step;
use crate::job::{Circuit, Job};
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::point::{Means, Point, uncovered};
use crate::supply::Position;
use crate::text::screens::isolate as said;
use crate::text::screens::locks as said_locks;
use crate::text::{self, AskIsolate, Gone};

/// Most points of other jobs that one is parted from in one act.
const MAX_PARTED: usize = 100;

/// What a step of the isolation shows.
pub fn view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(text::title(step, job));
    lacking(&mut page, look, job, step);
    match step {
        Step::Isolate(point) => match job.point(point) {
            Some(point) => at_point(&mut page, look, job, point),
            None => {
                page.caution(Tone::Warn, text::ask_first(&Gone::PointOfStep.into(), look.world));
            }
        },
        _ => shed(&mut page, look, job),
    }
    page
}

/// What is done on a step of the isolation.
pub fn act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), NotDone> {
    let now = act.job(job)?;
    let fact = match (step, verb) {
        (Step::Shed, "off") => {
            let seen = spare(act, "seen")?;
            Fact::CircuitOff { circuit: id(arg)?, seen }
        }
        (Step::Isolate(point), "open") => open(act, &now, point)?,
        (Step::Isolate(point), "fit" | "for") => {
            return if fit::act(act, job, Some(point), verb, arg)? { act.onward(job, step) } else { Ok(()) };
        }
        (Step::Isolate(point), "none-of-these") => {
            let apart = act.need("apart", AskIsolate::Apart)?;
            for known in act.app.beside_point(job, point).into_iter().take(MAX_PARTED) {
                let other = known.point;
                act.keep(Some(job), Fact::PointsParted { point, other, apart: apart.clone() })?;
            }
            return Ok(());
        }
        (Step::Isolate(point), "parted") => {
            let apart = act.need("apart", AskIsolate::Apart)?;
            Fact::PointsParted { point, other: id(arg)?, apart }
        }
        (Step::Isolate(point), "keep-photo") => {
            let why = act.need("photo-why", AskIsolate::PhotoWhy)?;
            act.keep_waiting(job, point, why)?;
            return act.onward(job, step);
        }
        (Step::Isolate(point), "sign") => Fact::SignPosted { point },
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact)?;
    act.onward(job, step)
}

fn shed(page: &mut Page, look: &Look, job: &Job) {
    if job.circuits.is_empty() {
        page.para(said::no_loads());
    }
    let mut left = job.circuits.iter().filter(|c| c.off.is_none());
    let now = left.next();
    for (i, circuit) in job.circuits.iter().enumerate() {
        circuit_row(page, look, i + 1, circuit, now.is_some_and(|n| n.stamp.id == circuit.stamp.id));
    }
    if let Some(circuit) = now {
        page.para(said::order());
        page.entry("seen", &said::seen(), &said::seen_hint(&circuit.label), look.draft("seen"));
        for other in left {
            page.toned(said::off_early(&other.label), format!("off {}", other.stamp.id), Tone::Quiet);
        }
    }
    match now {
        Some(circuit) if !passed(job, Step::Shed) => {
            page.main(said::off(&circuit.label), format!("off {}", circuit.stamp.id));
        }
        Some(circuit) => {
            page.button(said::off(&circuit.label), format!("off {}", circuit.stamp.id));
            next(page, job);
        }
        None => next(page, job),
    }
}

fn circuit_row(page: &mut Page, look: &Look, number: usize, circuit: &Circuit, now: bool) {
    let mut lines = vec![circuit.serves.clone()];
    let (state, word) = match (&circuit.off, &circuit.on) {
        (Some((off, seen)), on) => {
            let seen = if seen.is_empty() { said::seen_plain() } else { seen.clone() };
            lines.push(said::seen_by(seen, look.by(off)));
            if let Some(on) = on {
                lines.push(said::on_again(look.by(on)));
            }
            (StepState::Done, if on.is_some() { said::word_again() } else { said::word_off() })
        }
        (None, _) if now => (StepState::Now, said::word_now()),
        (None, _) => (StepState::Later, said::word_later()),
    };
    let (number, title) = (number.to_string(), circuit.label.clone());
    page.step(StepRow { number, title, state, word, lines, action: String::new() });
}

fn at_point(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let done = passed(job, Step::Isolate(point.stamp.id));
    // After the work there is nothing more to isolate; what was done stays to be seen.
    if job.finished.is_none() {
        if let Some((closed, other)) = job.closed_beside(point.stamp.id) {
            let closed = said::closed_beside(&point.label, text::job_title(other), look.when(closed));
            page.caution(Tone::Forbid, closed);
            open_form(page, look, job, point);
        } else if point.opened.is_none() {
            // What is asked first leads; whoever has answered opens the point.
            if !job.asked_before_opening(point.stamp.id) {
                open_form(page, look, job, point);
            }
        } else {
            secure(page, look, job, point);
        }
    }
    if done {
        next(page, job);
    }
    known_of(page, look, job, point);
    if job.finished.is_none() {
        parting(page, look, point);
    }
}

/// What is recorded of the point; below what is done at it.
fn known_of(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    page.fact(said::point(), in_words(job, point));
    for (_, known) in &look.site.alike {
        let job = text::job_title(known.title.as_deref());
        page.fact(said::known(), said::known_of(&known.label, &known.at, job));
    }
    super::tags::at_point(page, look, job, point);
    if let Some(opened) = &point.opened {
        page.fact(said::opened(), look.by(opened));
    }
    if let Some(closed) = &point.closed {
        page.fact(said::closed(), look.by(closed));
    }
    locks_here(page, look, job, point);
    if let Some(sign) = &point.sign {
        page.fact(said::sign(), look.by(sign));
    }
}

/// Points of other jobs that look like this one count as this one, until somebody who stands here says that they are two.
fn parting(page: &mut Page, look: &Look, point: &Point) {
    if look.site.alike.is_empty() {
        return;
    }
    page.heading(said::another());
    page.para(said::hold_both(&point.label));
    page.entry("apart", &said::apart(), &said::apart_hint(), look.draft("apart"));
    for (_, known) in &look.site.alike {
        let label = said::two(&known.label, text::job_title(known.title.as_deref()));
        page.toned(label, format!("parted {}", known.point), Tone::Quiet);
    }
    if look.site.alike.len() > 1 {
        page.toned(said::none_of_these(), "none-of-these", Tone::Quiet);
    }
}

/// Loads that are on although the plan lists them to be switched off.
fn still_on(job: &Job) -> Vec<&str> {
    let on = job.circuits.iter().filter(|c| c.off.is_none() || c.on.is_some());
    on.map(|c| c.label.as_str()).collect()
}

fn open_form(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let on = still_on(job);
    if let Some(by) = point.stamp.by.filter(|by| look.acting != Some(*by)) {
        page.caution(Tone::Must, said::listed_by(look.name(by), &point.label, &point.at));
    }
    page.caution(Tone::Warn, said::proves_nothing());
    let held = held::says(look, job, point.stamp.id);
    if !held.is_empty() {
        page.caution(Tone::Must, said::open_already(&held));
    }
    if on.is_empty() {
        page.para(said::off_load());
    } else {
        page.caution(Tone::Warn, said::still_on(text::commas(on.iter().map(|&load| load.to_owned()))));
        let how = vec![("yes".into(), said::opened_off_load()), ("no".into(), said::opened_on_load())];
        page.choice("off-load", &said::how_opened(), how, look.draft("off-load"));
    }
    let mut found = vec![("on".into(), said::found_on()), ("off".into(), said::found_off())];
    if !held.is_empty() {
        found.reverse();
    }
    page.choice("found", &said::found(), found, look.draft("found"));
    let live = job.shown_live(point.stamp.id);
    let label = if live { said::saw_off() } else { said::shows_open() };
    page.entry_again(look, "seen", &label, &said::shows_open_hint(), again::seen(look));
    let load = if on.is_empty() { "off" } else { "any" };
    page.main(said::is_open(load, &point.label), "open");
}

fn open(act: &Act, job: &Job, point: EntryId) -> Result<Fact, NotDone> {
    let ask = AskIsolate::OffLoad;
    let off_load = still_on(job).is_empty()
        || match act.need("off-load", ask)?.as_str() {
            "yes" => true,
            "no" => false,
            _ => return Err(ask.into()),
        };
    let ask = AskIsolate::Found;
    let found = match act.need("found", ask)?.as_str() {
        "on" => Position::Closed,
        "off" => Position::Open,
        _ => return Err(ask.into()),
    };
    let seen = act.need("seen", AskIsolate::Seen)?;
    Ok(Fact::PointOpened { point, off_load, seen, found, knowing: Vec::new() })
}

fn locks_here(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let locks = job.locks_at(point.stamp.id);
    let aside = job.aside_locks().any(|a| a.on == Some(On::Point(point.stamp.id)));
    if locks.is_empty() && !aside && held::beside(job, point.stamp.id).is_empty() {
        page.para(said_locks::no_clearance());
        return;
    }
    page.heading(said::locks());
    super::aside::at_point(page, look, job, point.stamp.id);
    for lock in locks {
        let means = match &lock.means {
            Means::Padlock => said::padlock(),
            Means::Hasp => said::hasp(),
            Means::Other(how) => said::no_lock(how),
        };
        let key = match lock.key {
            KeyAt::Owner => said::key_owner(),
            KeyAt::Box(id) => said::key_box(text::place(job, On::Box(id))),
        };
        let title = said::lock(look.name(lock.owner), &lock.label, text::place(job, lock.on));
        let lines = vec![said::lock_means(means, key), said::since(look.when(&lock.since))];
        page.row(title, lines, go(Route::Lock(job.id(), lock.stamp.id)));
    }
    held::rows(page, look, job, point.stamp.id);
}

/// The point is open: locks, then the sign, then the photo; the first that is missing leads.
fn secure(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let at = &point.label;
    let waiting = uncovered(point, &job.people(), &job.locks);
    let none = !job.locks_on().any(|l| l.on == On::Point(point.stamp.id));
    let locks_lead = none || !waiting.is_empty();
    fit::form(page, look, job, Some(point), &waiting);
    if point.sign.is_none() {
        let label = said::sign_hangs(at);
        if locks_lead {
            page.button(label, "sign");
        } else {
            page.main(label, "sign");
        }
    }
    let action = format!("photo {}", point.stamp.id);
    let seen = |p: &crate::job::Photo| PhotoSeen {
        sha256: p.sha256.to_string(),
        label: said::photo_of(at, look.by(&p.stamp), &p.note).trim().to_owned(),
    };
    let taken: Vec<PhotoSeen> = job.photos_of(point.stamp.id).map(seen).collect();
    if !locks_lead && point.sign.is_some() && job.photo_lack(point).is_some() {
        page.main(said::photo_now(), action.clone());
    }
    waiting_photo(page, look, at);
    let tag = if point.tags_now().next().is_some() { "yes" } else { "no" };
    let (label, hint) = (said::photo(at), said::photo_hint(tag));
    page.photo(PhotoSlot { label, hint, action, taken });
}

/// A photo that shows another point's tag waits here for a reason, or for a better one.
fn waiting_photo(page: &mut Page, look: &Look, at: &str) {
    let sha256 = look.draft(WAITING);
    if sha256.is_empty() {
        return;
    }
    page.caution(Tone::Forbid, said::photo_elsewhere(at));
    let taken = vec![PhotoSeen { sha256, label: said::photo_waits() }];
    page.photo(PhotoSlot { label: said::photo_unsaved(), hint: String::new(), action: String::new(), taken });
    page.entry("photo-why", &said::photo_why(), &said::photo_why_hint(), look.draft("photo-why"));
    page.button(said::photo_save(), "keep-photo");
}
