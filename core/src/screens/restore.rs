//! Restoring: covers back, people warned, locks off by their owners, points closed, supply read, circuits on, handed back.

mod close;
mod presence;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go, id, spare};
use super::locks::{held, put};
use super::parts::{EntryKind, StepRow, StepState, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{About, On};
use crate::journal::{EntryId, Fact};
use crate::point::{Lock, Off, may_remove};
use crate::text::{self, AskRestore};

/// One step of restoring.
pub fn view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(text::title(step, job));
    super::job::lacking(&mut page, look, job, step);
    // Once the step is passed the way on is the main button, and what can still be added stays below.
    if job.steps().iter().any(|s| s.step == step && s.passed()) {
        super::job::next(&mut page, job);
    }
    match step {
        Step::CoversBack => covers(look, job, &mut page),
        Step::Warn => warn(look, job, &mut page),
        Step::Unlock => unlock(look, job, &mut page),
        Step::Close => close::view(look, job, &mut page),
        Step::Presence => presence::view(look, job, &mut page),
        Step::CircuitsOn => circuits(look, job, &mut page),
        _ => hand_back(look, job, &mut page),
    }
    // Whoever cannot do anything here is shown the step whose turn it is.
    if page.main.is_none() {
        super::job::next(&mut page, job);
    }
    page
}

/// Does what a button of a restoring step says.
pub fn act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), NotDone> {
    if verb == "earth-off" {
        super::work::act_earth(act, job, verb, arg)?;
        return act.onward(job, step);
    }
    let fact = match (step, verb) {
        (Step::CoversBack, "back") => Fact::CoverBack { cover: id(arg)? },
        (Step::Warn, "told") => Fact::Told {
            who: act.need("who", AskRestore::WarnedWho)?,
            how: act.need("how", AskRestore::WarnedHow)?,
            about: About::Energising,
        },
        (Step::Unlock, "off") => {
            held::take_off(act, job, id(arg)?, None)?;
            return act.onward(job, step);
        }
        (Step::Unlock, "sign-off") => Fact::SignRemoved { point: id(arg)? },
        (Step::Close, "close") => Fact::PointClosed { point: id(arg)?, beside: None },
        (Step::Close, "beside") => {
            let why = act.need("beside", AskRestore::Beside)?;
            Fact::PointClosed { point: id(arg)?, beside: Some(why) }
        }
        (Step::Presence, _) => return presence::act(act, job, verb),
        (Step::CircuitsOn, "on") => Fact::CircuitOn { circuit: id(arg)? },
        (Step::HandBack, "hand-back") => {
            let to = act.need("to", AskRestore::BackTo)?;
            let mark = act.signature(&to)?;
            Fact::HandedBack { to, note: spare(act, "note")?, mark }
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact)?;
    // Several people may have to be warned; every other step is over when the last thing in it is done.
    if step == Step::Warn { Ok(()) } else { act.onward(job, step) }
}

fn row(page: &mut Page, title: &str, state: StepState, line: String) {
    let word = match state {
        StepState::Done => "done",
        StepState::Now => "now",
        StepState::Open => "open",
        _ => "later",
    };
    let (title, word) = (title.to_owned(), word.to_owned());
    page.step(StepRow { number: String::new(), title, state, word, lines: vec![line], action: String::new() });
}

fn next_or_open(page: &Page) -> StepState {
    if page.main.is_none() { StepState::Now } else { StepState::Open }
}

fn covers(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Must,
        text::in_terms(
            "Look once more before a cover closes: no tool, no loose strand, no temporary earth left inside.",
        ),
    );
    super::work::earths_in(page, look, job);
    if job.covers.is_empty() {
        page.para("No cover is recorded as taken off.");
    }
    // What came off last lies innermost and goes back first.
    for (i, (stamp, what, back)) in job.covers.iter().enumerate().rev() {
        let alike = job.covers[..i].iter().filter(|(_, other, _)| other == what).count();
        let title = if alike == 0 { what.clone() } else { format!("{what} ({})", alike + 1) };
        match back {
            Some(back) => row(page, &title, StepState::Done, format!("Back {}.", look.by(back))),
            None => {
                let state = next_or_open(page);
                row(page, &title, state, format!("Off since {}.", look.when(stamp)));
                put(page, format!("{title} is back"), format!("back {}", stamp.id));
            }
        }
    }
}

fn warn(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Must,
        "Warn everybody who could touch the installation or what it drives. Wait until they are clear.",
    );
    for told in job.told.iter().filter(|t| t.about == About::Energising) {
        page.fact(format!("Warned {}", look.by(&told.stamp)), format!("{}: {}", told.who, told.how));
    }
    page.heading("Somebody was warned");
    page.entry("who", "Who was warned", "A name, or everybody in a named place.", look.draft("who"));
    page.entry("how", "How they were warned", "In person, by telephone, over the site radio.", look.draft("how"));
    put(page, "Keep this warning", "told");
}

fn unlock(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Must,
        "Each person takes off their own lock, with their own hand. From the first lock off, treat as live.",
    );
    let finished = job.finished.is_some();
    if !finished {
        page.caution(
            Tone::Forbid,
            "The work is not finished. The first lock that comes off ends the proof: leave the locks on.",
        );
    }
    let mut others = false;
    for lock in job.locks_on() {
        let (owner, place) = (look.name(lock.owner), text::place(job, lock.on));
        let mine = look.acting == Some(lock.owner);
        let blocked = may_remove(lock, lock.owner, &job.locks);
        if finished && mine && blocked.is_none() && page.main.is_none() {
            page.main(
                format!("Take my lock off {place}{}, as {owner}", twin(job, lock)),
                format!("off {}", lock.stamp.id),
            );
        }
        others |= !mine;
        let mut lines = vec![format!("Since {}.", look.when(&lock.since))];
        lines.extend(blocked.map(|why| text::stays(&why, look.world)));
        let title = format!("{owner} on {place}: {}{}", lock.label, number(job, lock));
        page.row(title, lines, go(Route::Lock(job.id(), lock.stamp.id)));
    }
    signs(job, page);
    if finished && page.main.is_none() && others {
        page.para("The locks that are still on belong to others. Hand the device to the owner of the next one.");
        page.main("Somebody else has the device", go(Route::People));
    }
}

/// Names the lock where its owner has several at one place, so that the button says which.
fn twin(job: &Job, lock: &Lock) -> String {
    let alike = job.locks_on().filter(|l| l.on == lock.on && l.owner == lock.owner).count();
    if alike > 1 { format!(": {}", lock.label) } else { String::new() }
}

/// Tells locks apart that are alike in owner, place and label.
fn number(job: &Job, lock: &Lock) -> String {
    let alike = |l: &&Lock| l.on == lock.on && l.owner == lock.owner && l.label == lock.label;
    match job.locks_on().filter(alike).position(|l| l.stamp.id == lock.stamp.id) {
        None | Some(0) => String::new(),
        Some(before) => format!(" ({})", before + 1),
    }
}

fn signs(job: &Job, page: &mut Page) {
    for point in job.points.iter().filter(|p| p.sign.is_some()) {
        let id = point.stamp.id;
        if job.locks_on().any(|l| l.on == On::Point(id)) {
            page.para(format!("{} {} stays as long as a lock is on it.", text::in_terms("The sign at"), point.label));
            continue;
        }
        let (label, action) =
            (format!("{} {} is down", text::in_terms("The sign at"), point.label), format!("sign-off {id}"));
        if page.main.is_none() && job.locks_on().next().is_none() {
            page.main(label, action);
        } else {
            page.button(label, action);
        }
    }
}

fn circuits(look: &Look, job: &Job, page: &mut Page) {
    page.caution(
        Tone::Must,
        "One circuit at a time, in this order. Watch what each one starts before you switch on the next.",
    );
    if job.circuits.is_empty() {
        page.para("No circuit is listed for this job.");
    }
    let mut first = true;
    for circuit in &job.circuits {
        let title = format!("{}: {}", circuit.label, circuit.serves);
        match (&circuit.off, &circuit.on) {
            (_, Some(on)) => row(page, &title, StepState::Done, format!("On {}.", look.by(on))),
            (None, None) => row(page, &title, StepState::Later, "It was not switched off.".into()),
            (Some((off, _)), None) => {
                // In the listed order: only the first that is still off can be switched on.
                let state = if first { StepState::Now } else { StepState::Later };
                row(page, &title, state, format!("Off since {}.", look.when(off)));
                if first {
                    put(page, format!("{} is on", circuit.label), format!("on {}", circuit.stamp.id));
                }
                first = false;
            }
        }
    }
}

fn hand_back(look: &Look, job: &Job, page: &mut Page) {
    if let Some((stamp, to, note, mark)) = &job.handed {
        page.fact("Handed back", look.by(stamp));
        page.fact("Taken back by", to);
        if !note.is_empty() {
            page.fact("Note", note);
        }
        page.fact("Signature", if mark.is_empty() { "none" } else { "drawn, kept with this entry" });
        page.toned("Record of this job", go(Route::Record(job.id())), Tone::Plain);
        page.main("Steps of this job", go(Route::Job(job.id())));
        return;
    }
    for lock in &job.locks {
        if let (Some(Off::Forced(_)), Some(forced)) = (lock.off, &lock.forced)
            && forced.told.is_none()
        {
            let owner = look.name(lock.owner);
            page.caution(
                Tone::Must,
                format!("{owner} does not know yet that their lock {} was taken off. Tell them.", lock.label),
            );
        }
    }
    close::still_open(look, job, page);
    page.entry("to", "Who takes the installation back", "Name and what they answer for.", look.draft("to"));
    let hint = "What was done, what is different, what they have to watch. May stay empty.";
    page.field("note", "Note to them", hint, look.draft("note"), EntryKind::Long, 1000);
    page.para("Give the device to the person who takes the installation back. They sign below.");
    page.mark("mark", "Signature of the person who takes it back", look.draft("mark"));
    page.main("Hand back", "hand-back");
}
