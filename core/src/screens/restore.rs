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
use crate::text::screens::locks as said_locks;
use crate::text::screens::restore as said;
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
        StepState::Done => said::done(),
        StepState::Now => said::now(),
        StepState::Open => said::to_do(),
        _ => said::later(),
    };
    let title = title.to_owned();
    page.step(StepRow { number: String::new(), title, state, word, lines: vec![line], action: String::new() });
}

fn next_or_open(page: &Page) -> StepState {
    if page.main.is_none() { StepState::Now } else { StepState::Open }
}

fn covers(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Must, said::look_inside());
    super::work::earths_in(page, look, job);
    if job.covers.is_empty() {
        page.para(said::no_cover());
    }
    // What came off last lies innermost and goes back first.
    for (i, (stamp, what, back)) in job.covers.iter().enumerate().rev() {
        let alike = job.covers[..i].iter().filter(|(_, other, _)| other == what).count();
        let title = if alike == 0 { what.clone() } else { said_locks::again(what, alike + 1) };
        match back {
            Some(back) => row(page, &title, StepState::Done, said::cover_back_by(look.by(back))),
            None => {
                let state = next_or_open(page);
                row(page, &title, state, said::off_since(look.when(stamp)));
                put(page, said::cover_back(&title), format!("back {}", stamp.id));
            }
        }
    }
}

fn warn(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Must, said::warn_everybody());
    for told in job.told.iter().filter(|t| t.about == About::Energising) {
        page.fact(said::warned(look.by(&told.stamp)), said::warned_how(&told.who, &told.how));
    }
    page.heading(said::warn_somebody());
    page.entry("who", &said::warned_who(), &said::warned_who_hint(), look.draft("who"));
    page.entry("how", &said::how_warned(), &said::how_warned_hint(), look.draft("how"));
    put(page, said::save_warning(), "told");
}

fn unlock(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Must, said::own_lock());
    let finished = job.finished.is_some();
    if !finished {
        page.caution(Tone::Forbid, said::not_finished());
    }
    let mut others = false;
    for lock in job.locks_on() {
        let (owner, place) = (look.name(lock.owner), text::place(job, lock.on));
        let mine = look.acting == Some(lock.owner);
        let blocked = may_remove(lock, lock.owner, &job.locks);
        if finished && mine && blocked.is_none() && page.main.is_none() {
            let label = match twin(job, lock) {
                true => said::take_off_this(&place, &lock.label, &owner),
                false => said::take_off(&place, &owner),
            };
            page.main(label, format!("off {}", lock.stamp.id));
        }
        others |= !mine;
        let mut lines = vec![said::since(look.when(&lock.since))];
        lines.extend(blocked.map(|why| text::stays(&why, look.world)));
        let title = numbered(job, lock, said_locks::row(owner, place, &lock.label));
        page.row(title, lines, go(Route::Lock(job.id(), lock.stamp.id)));
    }
    signs(job, page);
    if finished && page.main.is_none() && others {
        page.para(said::locks_of_others());
        page.main(said::next_owner(), go(Route::People));
    }
}

/// Whether its owner has several at one place, so that the button has to say which.
fn twin(job: &Job, lock: &Lock) -> bool {
    job.locks_on().filter(|l| l.on == lock.on && l.owner == lock.owner).count() > 1
}

/// Tells locks apart that are alike in owner, place and label.
fn numbered(job: &Job, lock: &Lock, title: String) -> String {
    let alike = |l: &&Lock| l.on == lock.on && l.owner == lock.owner && l.label == lock.label;
    match job.locks_on().filter(alike).position(|l| l.stamp.id == lock.stamp.id) {
        None | Some(0) => title,
        Some(before) => said_locks::again(title, before + 1),
    }
}

fn signs(job: &Job, page: &mut Page) {
    for point in job.points.iter().filter(|p| p.sign.is_some()) {
        let id = point.stamp.id;
        if job.locks_on().any(|l| l.on == On::Point(id)) {
            page.para(said::sign_stays(&point.label));
            continue;
        }
        let (label, action) = (said::sign_off(&point.label), format!("sign-off {id}"));
        if page.main.is_none() && job.locks_on().next().is_none() {
            page.main(label, action);
        } else {
            page.button(label, action);
        }
    }
}

fn circuits(look: &Look, job: &Job, page: &mut Page) {
    page.caution(Tone::Must, said::one_at_a_time());
    if job.circuits.is_empty() {
        page.para(said::no_circuit());
    }
    let mut first = true;
    for circuit in &job.circuits {
        let title = said::circuit(&circuit.label, &circuit.serves);
        match (&circuit.off, &circuit.on) {
            (_, Some(on)) => row(page, &title, StepState::Done, said::circuit_on_by(look.by(on))),
            (None, None) => row(page, &title, StepState::Later, said::circuit_not_off()),
            (Some((off, _)), None) => {
                // In the listed order: only the first that is still off can be switched on.
                let state = if first { StepState::Now } else { StepState::Later };
                row(page, &title, state, said::off_since(look.when(off)));
                if first {
                    put(page, said::circuit_on(&circuit.label), format!("on {}", circuit.stamp.id));
                }
                first = false;
            }
        }
    }
}

fn hand_back(look: &Look, job: &Job, page: &mut Page) {
    if let Some((stamp, to, note, mark)) = &job.handed {
        page.fact(said::handed_back(), look.by(stamp));
        page.fact(said::taken_back_by(), to);
        if !note.is_empty() {
            page.fact(said::note(), note);
        }
        let drawn = if mark.is_empty() { said::signature_none() } else { said::signature_drawn() };
        page.fact(said::signature(), drawn);
        page.toned(said::record(), go(Route::Record(job.id())), Tone::Plain);
        page.main(said::steps(), go(Route::Job(job.id())));
        return;
    }
    for lock in &job.locks {
        if let (Some(Off::Forced(_)), Some(forced)) = (lock.off, &lock.forced)
            && forced.told.is_none()
        {
            page.caution(Tone::Must, said::tell_owner(look.name(lock.owner), &lock.label));
        }
    }
    close::still_open(look, job, page);
    page.entry("to", &said::to(), &said::to_hint(), look.draft("to"));
    page.field("note", &said::note_to_them(), &said::note_hint(), look.draft("note"), EntryKind::Long, 1000);
    page.para(said::give_phone());
    page.mark("mark", said::signature_of(), look.draft("mark"));
    page.main(said::hand_back(), "hand-back");
}
