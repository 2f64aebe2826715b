//! Outside any job: the jobs, who has the device in hand, a new job, and every lock that this device knows to be on.

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::like;
use super::locks::held;
use super::parts::{EntryKind, StepRow, StepState, Tone};
use super::rules;
use super::system;
use crate::app::NotDone;
use crate::job::ProofState;
use crate::job::steps::Step;
use crate::journal::fact::Duty;
use crate::journal::{EntryId, Fact};
use crate::prove::judge::energised::Tolerance;
use crate::prove::{Order, RuleSet, parse_volts};
use crate::store::{JobRow, LockRow};
use crate::text::times;
use crate::text::{self, AskDevice, AskFirst, AskJob, Gone};

/// Sites whose supply is one tap away; of more, a job leads there.
const MAX_SITES: usize = 12;

/// All jobs.
pub fn view(look: &Look, jobs: &[JobRow]) -> Page {
    let mut page = Page::new("Jobs");
    super::language::caution(&mut page, look);
    if look.acting.is_none() {
        page.caution(Tone::Must, "Nobody is signed on. Tap your name first: everything is saved in a person's name.");
    }
    if look.forgot {
        page.caution(
            Tone::Forbid,
            text::in_terms(
                "Its journal was put back from a copy, or another device uses its key. What others hold of it comes back by itself. Nothing \
                 is saved until it goes on under a new key; then prove dead again.",
            ),
        );
    }
    if look.exchange.aside_full {
        page.caution(
            Tone::Forbid,
            "So many entries are put aside that no more are kept: locks of others may be missing here. Go by the locks at the points, and \
             ask who sends them.",
        );
    }
    if look.exchange.clock_may_be_right {
        page.caution(
            Tone::Warn,
            "The clocks of phones contradict each other. Compare this phone's with a third one. If it is wrong, set it.",
        );
        page.button("This phone's clock is right", "clock-right");
    }
    page.heading("Open jobs");
    let (done, open): (Vec<&JobRow>, Vec<&JobRow>) = jobs.iter().partition(|j| j.done);
    if open.is_empty() {
        page.para("No job is open on this device.");
    }
    for job in open {
        let lines = vec![job.place.clone(), turn(job), text::proof_state(job.proof)];
        let (title, action) = (job_title(job, jobs), go(Route::Job(job.id)));
        let (state, word) =
            if job.proof == ProofState::Stop { (StepState::Stop, "stop") } else { (StepState::Open, "") };
        page.step(StepRow { number: String::new(), title, state, word: word.into(), lines, action });
    }
    page.heading("This device");
    if let Some(person) = look.acting {
        let lines = vec!["Everything is saved in this name. Tap to change it.".into()];
        page.row(format!("Signed on: {}", look.name(person)), lines, go(Route::People));
    }
    let owed = look.locks.iter().filter(|l| l.owed).count();
    let lines = match owed {
        0 => vec![],
        1 => vec!["1 owner is not told yet that their lock was forced off.".into()],
        _ => vec![format!("{owed} owners are not told yet that their locks were forced off.")],
    };
    page.button("Scan a tag", "scan");
    page.row(format!("Locks on now: {}", look.locks.iter().filter(|l| l.on).count()), lines, go(Route::Board));
    page.row("Office", super::office::in_short(look), go(Route::Office));
    super::language::on_home(&mut page, look);
    page.row("Rules of your company and sites", vec![rules::in_short(look)], go(Route::Rules));
    for (site, name) in look.world.sites.iter().take(MAX_SITES) {
        page.row(format!("Supply of {name}"), vec![], go(Route::Network(*site)));
    }
    if !done.is_empty() {
        page.heading("Finished jobs");
    }
    for job in done {
        page.step(StepRow {
            number: String::new(),
            title: job_title(job, jobs),
            state: StepState::Done,
            word: "handed back".into(),
            lines: vec![job.place.clone()],
            action: go(Route::Job(job.id)),
        });
    }
    match look.acting {
        _ if look.forgot => page.main("Go on under a new key", "new-key"),
        Some(_) => page.main("New job", go(Route::NewJob)),
        None => page.button("New job", go(Route::NewJob)).main("Sign on", go(Route::People)),
    };
    page
}

/// Two jobs may have one title; a row has to be told apart by its label alone.
fn job_title(job: &JobRow, jobs: &[JobRow]) -> String {
    if jobs.iter().filter(|j| j.title == job.title).count() > 1 {
        format!("{} ({})", job.title, job.id.short())
    } else {
        job.title.clone()
    }
}

/// Who has the device in hand, and new people.
pub fn people(look: &Look) -> Page {
    let mut page = Page::new("Who is signed on");
    if !look.world.people.is_empty() {
        page.para("Tap your name when you take the device. From then on everything is saved in your name.");
    }
    let people = &look.world.people;
    for (id, person) in people {
        let twice = people.values().filter(|p| p.name == person.name).count() > 1;
        let title = if twice { format!("{} ({})", person.name, id.short()) } else { person.name.clone() };
        let lines = [&person.qualification, &person.telephone].into_iter().filter(|l| !l.is_empty()).cloned();
        let anew = look.hands.all.get(id).and_then(|hand| hand.anew.as_ref());
        let anew =
            anew.map(|(ms, who)| format!("PIN set anew {}, witness: {who}", times::when(*ms, look.zone, look.now)));
        let lines = lines.chain(anew).collect();
        if look.acting == Some(*id) {
            let (number, state, word) = (String::new(), StepState::Now, "has the device".into());
            page.step(StepRow { number, title, state, word, lines, action: String::new() });
        } else {
            page.row(title, lines, format!("hold {id}"));
        }
    }
    page.heading("Somebody who is not listed");
    page.entry("name", "Name", "First name and surname", look.draft("name"));
    let hint = "As it stands on the card or certificate. This app does not judge it.";
    page.entry("qualification", "Qualification", hint, look.draft("qualification"));
    let hint = "Where they can be reached about their lock";
    page.field("telephone", "Telephone", hint, look.draft("telephone"), EntryKind::Telephone, 40);
    page.main("Add this person", "person");
    page
}

/// The choice of what the picked rules have.
const RULED: &str = "as-ruled";

/// A new job.
pub fn new_job(look: &Look) -> Page {
    let mut page = Page::new("New job");
    if look.acting.is_none() {
        page.caution(Tone::Must, "Nobody is signed on. Tap your name before you open a job.");
        page.button("Who is signed on", go(Route::People));
    }
    if like::view(&mut page, look) {
        rules::at_set_up(&mut page, look);
        page.main("Open this job", "open-job");
        return page;
    }
    what(&mut page, look);
    let known: Vec<&str> = look.world.sites.values().take(5).map(String::as_str).collect();
    let hint = if known.is_empty() { String::new() } else { format!("Known here: {}", known.join("; ")) };
    page.entry("site", "Site", &hint, look.draft("site"));
    page.entry("place", "Place on the site", "Building, floor, room", look.draft("place"));
    page.entry("equipment", "Equipment to isolate", "As it is labelled", look.draft("equipment"));
    let hint = "What is worked on, and where it ends. Anything beyond it needs a new look at the isolation.";
    page.field("scope", "Scope of the work", hint, look.draft("scope"), EntryKind::Long, 600);
    let rules = system::rules_above(look);
    let named = |rules: RuleSet| text::rule_set(rules).name;
    let usual = rules.as_ref().map_or_else(String::new, word_of);
    page.choice("rules", "Rules of", options(&RuleSet::ALL, named), look.draft_or("rules", &usual));
    page.para(text::defers(rules));
    system::form(&mut page, look, None);
    // By default what the rules have that are picked above, whichever they are by the time the job is opened.
    let ruled = || std::iter::once((RULED.to_owned(), text::as_ruled()));
    let orders = ruled().chain(options(&Order::ALL, text::order)).collect();
    page.choice("order", &text::in_terms("Order of the dead test"), orders, look.draft_or("order", RULED));
    page.para("Orders differ between documents. Take the one that your site wants.");
    rules::at_set_up(&mut page, look);
    let tolerances = ruled().chain(options(&Tolerance::ALL, text::tolerance)).collect();
    page.choice("tolerance", "Tolerance of the supply", tolerances, look.draft_or("tolerance", RULED));
    page.main("Open this job", "open-job");
    page
}

/// What the job is.
pub(super) fn what(page: &mut Page, look: &Look) {
    page.entry("title", "What the job is", "Such as: replace contactor K3", look.draft("title"));
}

/// Every lock that is on, of all jobs.
pub fn board(look: &Look) -> Page {
    let mut page = Page::new("Locks on now");
    page.caution(Tone::Warn, format!("This is what this device knows. {}", text::in_terms(held::NO_CLEARANCE)));
    super::tags::as_known(&mut page, look);
    let (on, off): (Vec<&LockRow>, Vec<&LockRow>) = look.locks.iter().partition(|l| l.on);
    if on.is_empty() {
        page.para("This device knows of no lock that is on.");
    }
    for lock in on {
        held::row(&mut page, look, lock);
    }
    let owed: Vec<&LockRow> = off.into_iter().filter(|l| l.owed).collect();
    if !owed.is_empty() {
        page.heading("Forced off, owner not told");
        page.caution(Tone::Must, "Tell each owner before they resume work.");
    }
    for lock in owed {
        held::row(&mut page, look, lock);
    }
    page.row("Pass locks to a phone beside you", vec!["By codes, with no signal.".into()], go(Route::Near));
    page.toned("Share this as a message", "share", Tone::Quiet);
    page.main("Back to the jobs", go(Route::Home));
    page
}

/// What is done outside a job.
pub fn act(act: &mut Act, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "hold" => {
            let person = id(arg)?;
            take(act, person)
        }
        "new-key" => {
            act.app.renew()?;
            act.say = Some(text::in_terms("This phone goes on under a new key. Prove dead again before any work."));
            Ok(())
        }
        "clock-right" => {
            act.acting()?;
            act.app.say_clock_right()?;
            act.say = Some(
                "This phone's clock counts. What the other phone proved is not believed here until its clock is set."
                    .into(),
            );
            Ok(())
        }
        "person" => add_person(act),
        "open-job" => open_job(act),
        "like" | "like-change" | "like-none" => like::act(act, verb, arg),
        "ask-limit" => rules::ask(act),
        _ => Err(UNKNOWN.into()),
    }
}

/// What a screen answers to an action that is not its own.
pub(super) const UNKNOWN: Gone = Gone::Action;

fn add_person(act: &mut Act) -> Result<(), NotDone> {
    let name = act.need("name", AskDevice::Name)?;
    let (qualification, telephone) = (spare(act, "qualification")?, spare(act, "telephone")?);
    // People are told apart by name, on every lock and every line of the record.
    distinct(act.world().people.values().map(|p| p.name.as_str()), &name)?;
    let fact = Fact::PersonNoted { name: name.clone(), qualification, telephone, corrects: None };
    let person = act.keep(None, fact)?;
    act.say = Some(format!("{name} is known to this device now."));
    if act.app.acting.is_none() {
        take(act, person)?;
    }
    Ok(())
}

/// Takes the device into this person's hand, or asks for their PIN first.
fn take(act: &mut Act, person: EntryId) -> Result<(), NotDone> {
    if act.app.asks_of(person) {
        act.go = Some(Route::Pin(person));
        return Ok(());
    }
    act.app.hold(person, None)?;
    act.say = Some(format!("{} is signed on.", act.world().name(person)));
    act.go = Some(Route::Home);
    Ok(())
}

fn open_job(act: &mut Act) -> Result<(), NotDone> {
    let acting = act.acting()?;
    let title = line(act, "title", AskJob::Title)?;
    let site = line(act, "site", AskJob::Site)?;
    let place = line(act, "place", AskJob::Place)?;
    let equipment = line(act, "equipment", AskJob::Equipment)?;
    let scope = act.need("scope", AskJob::Scope)?;
    let system = system::given(act)?;
    let rules = picked::<RuleSet>(act, "rules", AskJob::Rules)?;
    let figures = rules.figures();
    let of_rules = |field: &str| act.given(field) == RULED;
    let order = if of_rules("order") { figures.order } else { picked(act, "order", AskJob::Order)? };
    let tolerance =
        if of_rules("tolerance") { figures.tolerance } else { picked(act, "tolerance", AskJob::Tolerance)? };
    let known = act.world().sites_named(&site).next();
    let site = match known {
        Some(id) => id,
        None => act.keep(None, Fact::SiteNoted { name: site })?,
    };
    act.app.site = Some(site);
    let opened = Fact::JobOpened {
        title,
        place,
        equipment,
        scope,
        system: system.system,
        earthing: system.earthing,
        order,
        nominal_millivolts: system.nominal,
        own: system.own,
        rules: Some(rules),
        limit: act.world().limit.clone(),
        tolerance,
        // The rules of the site's company are put in where it is kept.
        company: None,
    };
    let job = act.keep(None, opened)?;
    act.keep(Some(job), Fact::WorkerJoined { person: acting, duty: Duty::InCharge })?;
    let name = act.world().name(acting);
    if like::carry(act, job)? {
        act.say = Some(text::screens::again::like_opened(&name));
        let now = act.job(job)?.current();
        act.go = Some(now.map_or(Route::Job(job), |step| Route::Step(job, step)));
    } else {
        act.say = Some(format!("Job opened. {name} is in charge of the isolation."));
        act.go = Some(Route::Step(job, Step::Permit));
    }
    Ok(())
}

/// A text that stands on one line of every screen of a job.
fn line(act: &Act, field: &str, ask: AskJob) -> Result<String, NotDone> {
    const MAX: usize = 120;
    let text = act.need(field, ask)?;
    if text.chars().count() > MAX {
        return Err(AskFirst::Longer { most: MAX, ask: Box::new(ask.into()) }.into());
    }
    Ok(text)
}

/// The volts given for `field`.
pub(super) fn volts(act: &Act, field: &str, ask: impl Into<AskFirst>) -> Result<u32, NotDone> {
    Ok(parse_volts(&act.need(field, ask)?).map_err(AskFirst::Volts)?)
}

/// The action that opens `route`.
pub(super) fn go(route: Route) -> String {
    format!("go {route}")
}

/// The id in an action's argument.
pub(super) fn id(arg: &str) -> Result<EntryId, NotDone> {
    arg.parse().map_err(|_| UNKNOWN.into())
}

/// The name in the file format of a value that is one word there.
pub(super) fn word_of<T: Serialize>(value: &T) -> String {
    serde_json::to_value(value).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

/// The value that goes by this one word in the file format.
pub(super) fn read_word<T: DeserializeOwned>(word: &str) -> Option<T> {
    serde_json::from_value(serde_json::Value::String(word.to_owned())).ok()
}

/// Every one of `all` as an option.
pub(super) fn options<T: Serialize + Copy, W: Into<String>>(all: &[T], word: fn(T) -> W) -> Vec<(String, String)> {
    all.iter().map(|value| (word_of(value), word(*value).into())).collect()
}

/// The value chosen in `field`; `ask` says what to choose if none was.
pub(super) fn picked<T: DeserializeOwned>(act: &Act, field: &str, ask: impl Into<AskFirst>) -> Result<T, NotDone> {
    let ask = ask.into();
    Ok(read_word(&act.need(field, ask.clone())?).ok_or(ask)?)
}

/// What was given for a field that may stay empty, within the bounds of every other.
pub(super) fn spare(act: &Act, field: &str) -> Result<String, NotDone> {
    if act.given(field).is_empty() { Ok(String::new()) } else { act.need(field, AskDevice::Shorter) }
}

/// Refuses a name that is taken: on the next screens things are told apart by their names alone.
pub(super) fn distinct<'a>(mut taken: impl Iterator<Item = &'a str>, name: &str) -> Result<(), NotDone> {
    if taken.any(|t| t.trim().to_lowercase() == name.to_lowercase()) {
        return Err(AskFirst::Listed { name: name.to_owned() }.into());
    }
    Ok(())
}

/// The stage and the step whose turn it is.
fn turn(job: &JobRow) -> String {
    let Some(next) = &job.next else { return text::stage_over() };
    format!("{}. Next: {}", text::stage(next.step.stage()), text::step(next))
}
