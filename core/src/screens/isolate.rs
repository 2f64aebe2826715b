//! Isolating: circuits shed in order, then each point opened, locked, signed and photographed by the person in front of it.

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
            let seen = if seen.is_empty() { "Seen to go off".to_owned() } else { seen };
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
        page.para("No circuit is listed to shed.");
    }
    let mut left = job.circuits.iter().filter(|c| c.off.is_none());
    let now = left.next();
    for (i, circuit) in job.circuits.iter().enumerate() {
        circuit_row(page, look, i + 1, circuit, now.is_some_and(|n| n.stamp.id == circuit.stamp.id));
    }
    if let Some(circuit) = now {
        page.para("Switch off in this order. Go and look, or have somebody look: what it serves really goes off.");
        let hint = format!("{}: what was seen to go off, and by whom. May stay empty.", circuit.label);
        page.entry("seen", "What was seen", &hint, look.draft("seen"));
        for other in left {
            let label = format!("Out of order: {} is off and was seen to go off", other.label);
            page.toned(label, format!("off {}", other.stamp.id), Tone::Quiet);
        }
    }
    match now {
        Some(circuit) if !passed(job, Step::Shed) => {
            page.main(format!("{} is off and was seen to go off", circuit.label), format!("off {}", circuit.stamp.id));
        }
        Some(circuit) => {
            page.button(
                format!("{} is off and was seen to go off", circuit.label),
                format!("off {}", circuit.stamp.id),
            );
            next(page, job);
        }
        None => next(page, job),
    }
}

fn circuit_row(page: &mut Page, look: &Look, number: usize, circuit: &Circuit, now: bool) {
    let mut lines = vec![circuit.serves.clone()];
    let (state, word) = match (&circuit.off, &circuit.on) {
        (Some((off, seen)), on) => {
            lines.push(format!("{seen} ({})", look.by(off)));
            if let Some(on) = on {
                lines.push(format!("On again: {}", look.by(on)));
            }
            (StepState::Done, if on.is_some() { "was shed, on again" } else { "off" })
        }
        (None, _) if now => (StepState::Now, "switch off now"),
        (None, _) => (StepState::Later, "not off yet"),
    };
    let (number, title, word) = (number.to_string(), circuit.label.clone(), word.to_owned());
    page.step(StepRow { number, title, state, word, lines, action: String::new() });
}

fn at_point(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let done = passed(job, Step::Isolate(point.stamp.id));
    // After the work there is nothing more to isolate; what was done stays to be seen.
    if job.finished.is_none() {
        if let Some((closed, other)) = job.closed_beside(point.stamp.id) {
            page.caution(
                Tone::Forbid,
                format!(
                    "{} was closed for another job, {}, {}. Treat as live. See that it is open, and say so.",
                    point.label,
                    text::job_title(other),
                    look.when(closed)
                ),
            );
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
    page.fact("Point", in_words(job, point));
    for (_, known) in &look.site.alike {
        page.fact(
            "Known at this site",
            format!("{}, {}, from {}", known.label, known.at, text::job_title(known.title.as_deref())),
        );
    }
    super::tags::at_point(page, look, job, point);
    if let Some(opened) = &point.opened {
        page.fact("Opened", look.by(opened));
    }
    if let Some(closed) = &point.closed {
        page.fact("Closed", look.by(closed));
    }
    locks_here(page, look, job, point);
    if let Some(sign) = &point.sign {
        page.fact("Caution sign", look.by(sign));
    }
}

/// Points of other jobs that look like this one count as this one, until somebody who stands here says that they are two.
fn parting(page: &mut Page, look: &Look, point: &Point) {
    if look.site.alike.is_empty() {
        return;
    }
    page.heading("If it is another switch");
    page.para(format!(
        "Every lock on either holds both. Say that they are two only while you stand at {}.",
        point.label
    ));
    page.entry("apart", "By what they are told apart", "Another bay, another number on the door", look.draft("apart"));
    for (_, known) in &look.site.alike {
        let label = format!("These are two: this, and {} of {}", known.label, text::job_title(known.title.as_deref()));
        page.toned(label, format!("parted {}", known.point), Tone::Quiet);
    }
    if look.site.alike.len() > 1 {
        page.toned("It is none of these: another switch", "none-of-these", Tone::Quiet);
    }
}

/// Circuits that are on although the plan lists them to be shed.
fn still_on(job: &Job) -> Vec<&str> {
    let on = job.circuits.iter().filter(|c| c.off.is_none() || c.on.is_some());
    on.map(|c| c.label.as_str()).collect()
}

fn open_form(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let on = still_on(job);
    if let Some(by) = point.stamp.by.filter(|by| look.acting != Some(*by)) {
        page.caution(
            Tone::Must,
            format!(
                "{} listed this point. Before you open it: see that this is {} at {}, and that it cuts off what the plan says.",
                look.name(by),
                point.label,
                point.at
            ),
        );
    }
    page.caution(Tone::Warn, "Treat as live. Opening proves nothing: dead is proved later, at the point of work.");
    let held = held::says(look, job, point.stamp.id);
    if !held.is_empty() {
        page.caution(Tone::Must, format!("Open already for {held}. Go there and see it."));
    }
    if on.is_empty() {
        page.para("Open it off load.");
    } else {
        let text = format!("Still on: {}. Breaking load can draw an arc. Shed the load first.", on.join(", "));
        page.caution(Tone::Warn, text);
        let how = [("yes", "Off load: no current flowed"), ("no", "On load: the device is made to break it")];
        let how = how.map(|(value, label)| (value.to_owned(), label.to_owned())).into();
        page.choice("off-load", "How was it opened?", how, look.draft("off-load"));
    }
    let mut found = [("on", "On: I switched it off"), ("off", "Off already")];
    if !held.is_empty() {
        found.reverse();
    }
    let found = found.map(|(value, label)| (value.to_owned(), label.to_owned())).into();
    page.choice("found", "How you found it", found, look.draft("found"));
    let live = job.shown_live(point.stamp.id);
    let label = if live { "What you saw go off" } else { "What shows that it is open" };
    page.entry_again(look, "seen", label, "Lamps, a display, the position of the blades", again::seen(look));
    let load = if on.is_empty() { ", off load" } else { "" };
    page.main(format!("{} is open{load}", point.label), "open");
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
        page.para(text::in_terms(held::NO_CLEARANCE));
        return;
    }
    page.heading("Locks on it now");
    super::aside::at_point(page, look, job, point.stamp.id);
    for lock in locks {
        let means = match &lock.means {
            Means::Padlock => "Padlock".to_owned(),
            Means::Hasp => "Padlock on a hasp".to_owned(),
            Means::Other(how) => format!("Not a lock: {how}"),
        };
        let key = match lock.key {
            KeyAt::Owner => "key with the owner".to_owned(),
            KeyAt::Box(id) => format!("key in {}", text::place(job, On::Box(id))),
        };
        let title = format!("{}: {} on {}", look.name(lock.owner), lock.label, text::place(job, lock.on));
        let lines = vec![format!("{means}, {key}"), format!("since {}", look.when(&lock.since))];
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
        let label = format!("{} {at}", text::in_terms("The caution sign hangs at"));
        if locks_lead {
            page.button(label, "sign");
        } else {
            page.main(label, "sign");
        }
    }
    let action = format!("photo {}", point.stamp.id);
    let seen = |p: &crate::job::Photo| PhotoSeen {
        sha256: p.sha256.to_string(),
        label: format!("{at}, photo of {}. {}", look.by(&p.stamp), p.note).trim().to_owned(),
    };
    let taken: Vec<PhotoSeen> = job.photos_of(point.stamp.id).map(seen).collect();
    if !locks_lead && point.sign.is_some() && job.photo_lack(point).is_some() {
        page.main("Take the photo now", action.clone());
    }
    waiting_photo(page, look, at);
    let label = format!("Photo of {at}");
    let tag = if point.tags_now().next().is_some() { ", the tag" } else { "" };
    let hint = format!(
        "To be read in it: the open position, the lock, the sign, the label of the point and of the equipment{tag}."
    );
    page.photo(PhotoSlot { label, hint, action, taken });
}

/// A photo that shows another point's tag waits here for a reason, or for a better one.
fn waiting_photo(page: &mut Page, look: &Look, at: &str) {
    let sha256 = look.draft(WAITING);
    if sha256.is_empty() {
        return;
    }
    page.caution(
        Tone::Forbid,
        format!("The last photo shows the tag of another point, not of {at}. It is not kept in the record yet."),
    );
    let taken = vec![PhotoSeen { sha256, label: "The photo that is not kept yet".into() }];
    page.photo(PhotoSlot { label: "Not kept yet".into(), hint: String::new(), action: String::new(), taken });
    page.entry("photo-why", "Why it is kept all the same", "It stays with the photo.", look.draft("photo-why"));
    page.button("Save it with this reason", "keep-photo");
}
