//! The steps of the plan: what has to be known and agreed before anybody goes to a point.

mod instruments;
mod points;
mod rotation;
pub(super) mod sources;
mod stored;

pub(super) use points::in_words;

use super::Route;
use super::again;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, distinct, go, id, options, picked};
use super::job::{lacking, next};
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{About, Duty};
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskDevice, AskPlan};

/// What a step of the plan shows.
pub fn view(look: &Look, job: &Job, step: Step) -> Page {
    let mut page = Page::new(text::title(step, job));
    lacking(&mut page, look, job, step);
    match step {
        Step::Permit => permit(&mut page, look, job),
        Step::People => people(&mut page, look, job),
        Step::Told => told(&mut page, look, job),
        Step::Barriers => barriers(&mut page, look, job),
        Step::Sources => sources::view(&mut page, look, job),
        Step::Stored => stored::view(&mut page, look, job),
        Step::Points => points::view(&mut page, look, job),
        Step::Instruments => instruments::view(&mut page, look, job),
        Step::RotationFound => rotation::view(&mut page, look, job),
        _ => circuits(&mut page, look, job),
    }
    page
}

/// What is done on a step of the plan.
pub fn act(act: &mut Act, job: EntryId, step: Step, verb: &str, arg: &str) -> Result<(), NotDone> {
    match step {
        Step::Permit => act_permit(act, job, verb),
        Step::People => act_people(act, job, verb, arg),
        Step::Told => act_told(act, job, verb, arg),
        Step::Barriers => act_barriers(act, job, verb, arg),
        Step::Sources => sources::act(act, job, verb, arg),
        Step::Stored => stored::act(act, job, verb),
        Step::Points => points::act(act, job, verb, arg),
        Step::Instruments => instruments::act(act, job, verb, arg),
        Step::RotationFound => rotation::act(act, job, verb),
        _ => act_circuits(act, job, verb),
    }
}

/// Whether the step after `step` may begin.
pub(super) fn passed(job: &Job, step: Step) -> bool {
    job.steps().iter().any(|s| s.step == step && s.passed())
}

/// The step's own action leads while the step lacks something; after that the way on leads, and more can still be added.
pub(super) fn lead(page: &mut Page, job: &Job, step: Step, label: &str, action: &str) {
    if passed(job, step) {
        page.button(label, action);
        next(page, job);
    } else {
        page.main(label, action);
    }
}

fn permit(page: &mut Page, look: &Look, job: &Job) {
    match &job.permit {
        Some((stamp, Ok(reference))) => {
            page.fact("Permit", format!("{reference} ({})", look.by(stamp)));
        }
        Some((stamp, Err(why))) => {
            page.fact("No permit", format!("{why} ({})", look.by(stamp)));
        }
        None => {}
    }
    page.para("Only the reference is kept here. This app issues no permit and replaces none.");
    page.entry("reference", "Reference", "As written on the permit", look.draft("reference"));
    lead(page, job, Step::Permit, "Save the reference", "permit");
    let hint = "Such as: the site asks for none below 63 A";
    page.entry("why-none", "Or why there is no permit", hint, look.draft("why-none"));
    page.button("No permit: save the reason", "no-permit");
}

fn act_permit(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    if !act.given("reference").is_empty() && !act.given("why-none").is_empty() {
        return Err(AskPlan::PermitOrNone.into());
    }
    let fact = match verb {
        "permit" => {
            let reference = act.need("reference", AskPlan::PermitReference)?;
            Fact::PermitNoted { reference: Some(reference), why_none: None }
        }
        "no-permit" => {
            let why = act.need("why-none", AskPlan::PermitWhyNone)?;
            Fact::PermitNoted { reference: None, why_none: Some(why) }
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact)?;
    act.onward(job, Step::Permit)
}

fn people(page: &mut Page, look: &Look, job: &Job) {
    for worker in job.present() {
        let since = format!("{}, since {}", text::screens::plan::duty(worker.duty), look.when(&worker.joined));
        let card = look.world.people.get(&worker.person).map(|p| p.qualification.as_str()).unwrap_or_default();
        let text = if card.is_empty() { format!("{since}.") } else { format!("{since}. {card}.") };
        page.fact(look.name(worker.person), text);
        let label = format!("{} leaves the job", look.name(worker.person));
        page.toned(label, format!("leave {}", worker.person), Tone::Quiet);
    }
    page.para("Each of them fits a lock of their own at every point, or at the box that holds its key.");
    let here = job.people();
    let mut people = look.people(&here);
    people.extend(here.iter().map(|p| (p.to_string(), format!("{} (on the job already)", look.name(*p)))));
    page.choice("person", "Person", people, look.draft("person"));
    let duties = options(&[Duty::Working, Duty::Learning, Duty::InCharge], text::screens::plan::duty);
    page.choice("duty", "Duty", duties, look.draft("duty"));
    lead(page, job, Step::People, "Save person and duty", "join");
    page.button("Add somebody who is not listed", go(Route::People));
}

fn act_people(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "join" => {
            let person = act.need_id("person", AskPlan::Person)?;
            let duty = picked(act, "duty", AskPlan::Duty)?;
            Fact::WorkerJoined { person, duty }
        }
        "leave" => Fact::WorkerLeft { person: id(arg)? },
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}

fn told(page: &mut Page, look: &Look, job: &Job) {
    for told in job.told.iter().filter(|t| t.about == About::Isolating) {
        page.fact(told.who.clone(), format!("{} ({})", told.how, look.by(&told.stamp)));
    }
    page.para("Tell everybody who loses the supply, and everybody who could switch it on again.");
    for (who, how) in again::told(look) {
        if !job.told.iter().any(|told| told.about == About::Isolating && told.who == who) {
            page.button(text::screens::again::told_again(&who, &how), format!("again {who}\t{how}"));
        }
    }
    page.entry("who", "Who was told", "Name, or the group of people", look.draft("who"));
    page.entry("how", "How", "In person, by telephone, by a notice at the door", look.draft("how"));
    lead(page, job, Step::Told, "Save who was told", "told");
}

fn act_told(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    if verb == "again" {
        let (who, how) = pair(arg)?;
        act.keep(Some(job), Fact::Told { who, how, about: About::Isolating })?;
        return act.onward(job, Step::Told);
    }
    if verb != "told" {
        return Err(UNKNOWN.into());
    }
    let who = act.need("who", AskPlan::ToldWho)?;
    let how = act.need("how", AskPlan::ToldHow)?;
    act.keep(Some(job), Fact::Told { who, how, about: About::Isolating }).map(drop)
}

/// The two texts of something that was said before.
fn pair(arg: &str) -> Result<(String, String), NotDone> {
    let (first, then) = arg.split_once('\t').ok_or(UNKNOWN)?;
    Ok((Act::bounded(first, AskDevice::Shorter)?, Act::bounded(then, AskDevice::Shorter)?))
}

fn barriers(page: &mut Page, look: &Look, job: &Job) {
    for (stamp, what, at) in &job.barriers {
        page.fact(what.clone(), format!("{at} ({})", look.by(stamp)));
    }
    page.caution(Tone::Warn, "Adjacent parts stay live. Screen them off and sign them as your local rules ask.");
    for (what, at) in again::barriers(look) {
        if !job.barriers.iter().any(|(_, stands, there)| *stands == what && *there == at) {
            page.button(text::screens::again::barrier_again(&what, &at), format!("again {what}\t{at}"));
        }
    }
    page.entry("what", "Barrier or sign", "Such as: chain barrier; danger sign", look.draft("what"));
    page.entry("at", "Where it stands or hangs", "", look.draft("at"));
    lead(page, job, Step::Barriers, "Save this barrier or sign", "barrier");
}

fn act_barriers(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    if verb == "again" {
        let (what, at) = pair(arg)?;
        act.keep(Some(job), Fact::BarrierPlaced { what, at })?;
        return act.onward(job, Step::Barriers);
    }
    if verb != "barrier" {
        return Err(UNKNOWN.into());
    }
    let what = act.need("what", AskPlan::Barrier)?;
    let at = act.need("at", AskPlan::BarrierAt)?;
    act.keep(Some(job), Fact::BarrierPlaced { what, at }).map(drop)
}

fn circuits(page: &mut Page, look: &Look, job: &Job) {
    for (i, circuit) in job.circuits.iter().enumerate() {
        page.fact(format!("{}. {}", i + 1, circuit.label), circuit.serves.clone());
    }
    if let Some((stamp, why)) = &job.no_circuits {
        page.fact("No circuit to shed", format!("{why} ({})", look.by(stamp)));
    }
    page.para("List them in the order in which they are switched off, so that the point is opened with no load on it.");
    page.entry(
        "label",
        "Circuit, as it is labelled",
        "Such as: L3 lighting, or several: F1 to F6",
        look.draft("label"),
    );
    page.entry("serves", "What it serves", "What must be seen to go off", look.draft("serves"));
    lead(page, job, Step::Circuits, "List this circuit", "list");
    if job.circuits.is_empty() && job.no_circuits.is_none() {
        let hint = "Such as: one motor only, stopped before";
        page.field("why", "Or why there is none to shed", hint, look.draft("why"), EntryKind::Text, 120);
        page.button("Nothing to switch off first", "none");
    }
}

/// Most circuits that are listed at once: a board's row.
const MAX_ROW: u32 = 48;

/// The labels that are meant: "F1 to F6" is six of them, anything else is one.
fn row(typed: &str) -> Result<Vec<String>, NotDone> {
    let one = || Ok(vec![typed.to_owned()]);
    let Some((first, last)) = typed.split_once(" to ") else { return one() };
    let parts = |label: &str| {
        let name = label.trim_end_matches(|c: char| c.is_ascii_digit());
        let number: Option<u32> = label[name.len()..].parse().ok();
        number.map(|number| (name.to_owned(), number))
    };
    let (Some((name, from)), Some((other, to))) = (parts(first.trim()), parts(last.trim())) else { return one() };
    // "F1 to 6" and "F1 to F6" are the same; "F1 to K6" is somebody's own name for one.
    if !(other.is_empty() || other == name) {
        return one();
    }
    if to <= from || to - from >= MAX_ROW {
        return Err(AskPlan::CircuitRow.into());
    }
    Ok((from..=to).map(|number| format!("{name}{number}")).collect())
}

fn act_circuits(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    match verb {
        "list" => {
            let label = act.need("label", AskPlan::Circuit)?;
            let serves = act.need("serves", AskPlan::CircuitServes)?;
            let listed = act.job(job)?.circuits;
            for label in row(&label)? {
                distinct(listed.iter().map(|c| c.label.as_str()), &label)?;
                act.keep(Some(job), Fact::CircuitListed { label, serves: serves.clone() })?;
            }
            Ok(())
        }
        "none" => {
            let why = act.need("why", AskPlan::CircuitsWhyNone)?;
            act.keep(Some(job), Fact::NoCircuits { why })?;
            act.onward(job, Step::Circuits)
        }
        _ => Err(UNKNOWN.into()),
    }
}
