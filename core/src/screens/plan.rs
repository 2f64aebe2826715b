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
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{About, Duty};
use crate::journal::{EntryId, Fact};
use crate::text::screens::again as said_again;
use crate::text::screens::job as said_job;
use crate::text::screens::plan as said;
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
        Step::RotationFound => rotation::act(act, job, verb, arg),
        _ => act_circuits(act, job, verb, arg),
    }
}

/// Whether the step after `step` may begin.
pub(super) fn passed(job: &Job, step: Step) -> bool {
    job.steps().iter().any(|s| s.step == step && s.passed())
}

/// The step's own action leads while the step lacks something; after that the way on leads, and more can still be added.
pub(super) fn lead(page: &mut Page, job: &Job, step: Step, label: String, action: &str) {
    if passed(job, step) {
        page.button(label, action);
        next(page, job);
    } else {
        page.main(label, action);
    }
}

/// The same where one is the rule and several are not rare: saying that it is the only one goes on at once, and leads.
pub(super) fn lead_only(page: &mut Page, job: &Job, step: Step, labels: [String; 2], action: &str) {
    let [label, only] = labels;
    page.button(label, action);
    if passed(job, step) {
        next(page, job);
    } else {
        page.main(only, format!("{action} {ONLY}"));
    }
}
/// What an action says that has no other after it.
pub(super) const ONLY: &str = "only";

fn permit(page: &mut Page, look: &Look, job: &Job) {
    match &job.permit {
        Some((stamp, Ok(reference))) => {
            page.fact(said::permit(), said_job::noted(reference, look.by(stamp)));
        }
        Some((stamp, Err(why))) => {
            page.fact(said::permit_none(), said_job::noted(why, look.by(stamp)));
        }
        None => {}
    }
    page.para(said::permit_says());
    page.entry("reference", &said::permit_reference(), &said::permit_reference_hint(), look.draft("reference"));
    lead(page, job, Step::Permit, said::permit_save(), "permit");
    page.entry("why-none", &said::permit_why_none(), &said::permit_why_none_hint(), look.draft("why-none"));
    page.button(said::permit_save_none(), "no-permit");
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
        let (duty, when) = (said::duty(worker.duty), look.when(&worker.joined));
        let card = look.world.people.get(&worker.person).map(|p| p.qualification.as_str()).unwrap_or_default();
        let (name, card_none) = (look.name(worker.person), card.is_empty());
        page.fact(&name, if card_none { said::worker(duty, when) } else { said::worker_card(duty, when, card) });
        page.toned(said::worker_leaves(name), format!("leave {}", worker.person), Tone::Quiet);
    }
    page.para(said::people_locks());
    let here = job.people();
    let mut people = look.people(&here);
    people.extend(here.iter().map(|p| (p.to_string(), said::person_here(look.name(*p)))));
    page.choice("person", &said::person(), people, look.draft("person"));
    let duties = options(&[Duty::Working, Duty::Learning, Duty::InCharge], said::duty);
    page.choice("duty", &said::duty_field(), duties, look.draft("duty"));
    lead(page, job, Step::People, said::person_save(), "join");
    page.button(said::person_new(), go(Route::People));
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
        page.fact(told.who.clone(), said_job::noted(&told.how, look.by(&told.stamp)));
    }
    page.para(said::told_says());
    for (who, how) in again::told(look) {
        if !job.told.iter().any(|told| told.about == About::Isolating && told.who == who) {
            page.button(said_again::told_again(&who, &how), format!("again {who}\t{how}"));
        }
    }
    page.entry("who", &said::told_who(), &said::told_who_hint(), look.draft("who"));
    page.entry("how", &said::told_how(), &said::told_how_hint(), look.draft("how"));
    for (way, label) in [(IN_PERSON, said::told_in_person()), (BY_TELEPHONE, said::told_by_telephone())] {
        page.button(label, format!("told {way}"));
    }
    lead(page, job, Step::Told, said::told_save(), "told");
}

/// Ways of telling that need no words of one's own.
const IN_PERSON: &str = "in-person";
const BY_TELEPHONE: &str = "by-telephone";

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
    let how = match arg {
        IN_PERSON => said::in_person(),
        BY_TELEPHONE => said::by_telephone(),
        _ => act.need("how", AskPlan::ToldHow)?,
    };
    act.keep(Some(job), Fact::Told { who, how, about: About::Isolating }).map(drop)
}

/// The two texts of something that was said before.
fn pair(arg: &str) -> Result<(String, String), NotDone> {
    let (first, then) = arg.split_once('\t').ok_or(UNKNOWN)?;
    Ok((Act::bounded(first, AskDevice::Shorter)?, Act::bounded(then, AskDevice::Shorter)?))
}

fn barriers(page: &mut Page, look: &Look, job: &Job) {
    for (stamp, what, at) in &job.barriers {
        page.fact(what.clone(), said_job::noted(at, look.by(stamp)));
    }
    page.caution(Tone::Warn, said::barriers_say());
    for (what, at) in again::barriers(look) {
        if !job.barriers.iter().any(|(_, stands, there)| *stands == what && *there == at) {
            page.button(said_again::barrier_again(&what, &at), format!("again {what}\t{at}"));
        }
    }
    page.entry("what", &said::barrier(), &said::barrier_hint(), look.draft("what"));
    page.entry("at", &said::barrier_at(), "", look.draft("at"));
    lead_only(page, job, Step::Barriers, [said::barrier_save(), said::barrier_only()], "barrier");
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
    act.keep(Some(job), Fact::BarrierPlaced { what, at })?;
    if arg == ONLY { act.onward(job, Step::Barriers) } else { Ok(()) }
}

fn circuits(page: &mut Page, look: &Look, job: &Job) {
    for (i, circuit) in job.circuits.iter().enumerate() {
        page.fact(said::circuit_number(i + 1, &circuit.label), circuit.serves.clone());
    }
    if let Some((stamp, why)) = &job.no_circuits {
        page.fact(said::circuits_none(), said_job::noted(why, look.by(stamp)));
    }
    page.para(said::circuits_order());
    page.entry("label", &said::circuit(), &said::circuit_hint(), look.draft("label"));
    page.entry("serves", &said::circuit_serves(), &said::circuit_serves_hint(), look.draft("serves"));
    lead_only(page, job, Step::Circuits, [said::circuit_save(), said::circuit_only()], "list");
    if job.circuits.is_empty() && job.no_circuits.is_none() {
        page.entry("why", &said::circuits_why_none(), &said::circuits_why_none_hint(), look.draft("why"));
        page.button(said::circuits_none(), "none");
    }
}

/// Most circuits that are listed at once: a board's row.
const MAX_ROW: u32 = 48;

/// The labels that are meant: "F1 to F6" is six of them, anything else is one.
fn row(typed: &str) -> Result<Vec<String>, NotDone> {
    let one = || Ok(vec![typed.to_owned()]);
    // As each language says it; a phone may be typed on in another than the one it speaks.
    let parted = [" to ", " bis ", " a "].iter().find_map(|word| typed.split_once(word));
    let Some((first, last)) = parted else { return one() };
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

fn act_circuits(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "list" => {
            let label = act.need("label", AskPlan::Circuit)?;
            let serves = act.need("serves", AskPlan::CircuitServes)?;
            let listed = act.job(job)?.circuits;
            for label in row(&label)? {
                distinct(listed.iter().map(|c| c.label.as_str()), &label)?;
                act.keep(Some(job), Fact::CircuitListed { label, serves: serves.clone() })?;
            }
            if arg == ONLY { act.onward(job, Step::Circuits) } else { Ok(()) }
        }
        "none" => {
            let why = act.need("why", AskPlan::CircuitsWhyNone)?;
            act.keep(Some(job), Fact::NoCircuits { why })?;
            act.onward(job, Step::Circuits)
        }
        _ => Err(UNKNOWN.into()),
    }
}
