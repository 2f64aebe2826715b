//! Outside any job: the jobs, who has the device in hand, a new job, and every lock that this device knows to be on.

use serde::Serialize;
use serde::de::DeserializeOwned;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::find::{self, Find};
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
use crate::text::screens::app;
use crate::text::screens::home as said;
use crate::text::screens::locks;
use crate::text::screens::near;
use crate::text::screens::office;
use crate::text::screens::pin;
use crate::text::screens::plan;
use crate::text::screens::ruled;
use crate::text::screens::supply;
use crate::text::screens::tags;
use crate::text::times;
use crate::text::{self, AskDevice, AskFirst, AskJob, Gone};

/// Sites whose supply is one tap away; of more, a job leads there.
const MAX_SITES: usize = 12;

/// All jobs.
pub fn view(look: &Look, jobs: &[JobRow]) -> Page {
    let mut page = Page::new(said::title());
    super::language::caution(&mut page, look);
    if look.acting.is_none() {
        page.caution(Tone::Must, said::sign_on_first());
    }
    if look.forgot {
        page.caution(Tone::Forbid, said::forgot());
        page.para(said::forgot_comes_back());
    }
    if look.exchange.aside_full {
        page.caution(Tone::Forbid, said::aside_full());
    }
    if look.exchange.clock_may_be_right {
        page.caution(Tone::Warn, said::clocks_differ());
        page.button(said::clock_right(), "clock-right");
    }
    page.para(text::defers(None));
    let find = Find::of(look, jobs.len());
    let found = jobs.iter().filter(|j| find.fits(&[&j.title, &j.place]));
    let (done, open): (Vec<&JobRow>, Vec<&JobRow>) = found.partition(|j| j.done);
    find.field(&mut page, look, done.len() + open.len());
    page.heading(said::open_jobs());
    if open.is_empty() {
        page.para(said::no_open_job());
    }
    for job in open {
        let lines = vec![job.place.clone(), turn(job), text::proof_state(job.proof)];
        let (title, action) = (job_title(job, jobs), go(Route::Job(job.id)));
        let (state, word) = match job.proof {
            ProofState::Stop => (StepState::Stop, app::word_stop()),
            _ => (StepState::Open, String::new()),
        };
        page.step(StepRow { number: String::new(), title, state, word, lines, action });
    }
    page.heading(said::this_phone());
    if let Some(person) = look.acting {
        page.row(said::signed_on(look.name(person)), vec![said::signed_on_tap()], go(Route::People));
    }
    let owed = look.locks.iter().filter(|l| l.owed).count();
    let lines = if owed == 0 { vec![] } else { vec![said::owed(owed)] };
    page.button(tags::scan_title(), "scan");
    page.row(said::locks_on(look.locks.iter().filter(|l| l.on).count()), lines, go(Route::Board));
    page.row(office::title(), super::office::in_short(look), go(Route::Office));
    super::language::on_home(&mut page, look);
    page.row(ruled::title(), vec![rules::in_short(look)], go(Route::Rules));
    for (site, name) in look.world.sites.iter().take(MAX_SITES) {
        page.row(supply::of(name), vec![], go(Route::Network(*site)));
    }
    if !done.is_empty() {
        page.heading(said::finished_jobs());
    }
    for job in done {
        page.step(StepRow {
            number: String::new(),
            title: job_title(job, jobs),
            state: StepState::Done,
            word: said::handed_back(),
            lines: vec![job.place.clone()],
            action: go(Route::Job(job.id)),
        });
    }
    match look.acting {
        _ if look.forgot => page.main(said::new_key(), "new-key"),
        Some(_) => page.main(said::new_job(), go(Route::NewJob)),
        None => page.button(said::new_job(), go(Route::NewJob)).main(pin::sign_on(), go(Route::People)),
    };
    page
}

/// Two jobs may have one title; a row has to be told apart by its label alone.
fn job_title(job: &JobRow, jobs: &[JobRow]) -> String {
    if jobs.iter().filter(|j| j.title == job.title).count() > 1 {
        said::one_of_a_name(&job.title, job.id.short())
    } else {
        job.title.clone()
    }
}

/// Who has the device in hand, and new people.
pub fn people(look: &Look) -> Page {
    let mut page = Page::new(said::people());
    if !look.world.people.is_empty() {
        page.para(said::people_tap());
    }
    let people = &look.world.people;
    let find = Find::of(look, people.len());
    let found: Vec<_> = people.iter().filter(|(_, p)| find.fits(&[&p.name, &p.qualification])).collect();
    find.field(&mut page, look, found.len());
    for (id, person) in found {
        let twice = people.values().filter(|p| p.name == person.name).count() > 1;
        let title = if twice { said::one_of_a_name(&person.name, id.short()) } else { person.name.clone() };
        let lines = [&person.qualification, &person.telephone].into_iter().filter(|l| !l.is_empty()).cloned();
        let anew = look.hands.all.get(id).and_then(|hand| hand.anew.as_ref());
        let anew = anew.map(|(ms, who)| said::pin_anew(times::when(*ms, look.zone, look.now), who));
        let lines = lines.chain(anew).collect();
        if look.acting == Some(*id) {
            let (number, state, word) = (String::new(), StepState::Now, said::is_signed_on());
            page.step(StepRow { number, title, state, word, lines, action: String::new() });
        } else {
            page.row(title, lines, format!("hold {id}"));
        }
    }
    page.heading(said::not_listed());
    page.entry("name", &said::name(), &said::name_hint(), look.draft("name"));
    page.entry("qualification", &said::qualification(), &said::qualification_hint(), look.draft("qualification"));
    let (label, hint) = (said::telephone(), said::telephone_hint());
    page.field("telephone", &label, &hint, look.draft("telephone"), EntryKind::Telephone, 40);
    page.main(said::add_person(), "person");
    page
}

/// The choice of what the picked rules have.
const RULED: &str = "as-ruled";

/// A new job.
pub fn new_job(look: &Look) -> Page {
    let mut page = Page::new(said::new_job());
    if look.acting.is_none() {
        page.caution(Tone::Must, said::sign_on_before_job());
        page.button(said::people(), go(Route::People));
    }
    if like::view(&mut page, look) {
        page.para(text::defers(system::rules_above(look)));
        rules::at_set_up(&mut page, look);
        page.main(said::open_job(), "open-job");
        return page;
    }
    what(&mut page, look);
    let known: Vec<&str> = look.world.sites.values().take(5).map(String::as_str).collect();
    let known = text::semicolons(known.into_iter().map(str::to_owned));
    let hint = if known.is_empty() { String::new() } else { said::known_sites(known) };
    page.entry("site", &plan::site(), &hint, look.draft("site"));
    page.entry("place", &said::place(), &said::place_hint(), look.draft("place"));
    page.entry("equipment", &said::equipment(), &plan::as_labelled(), look.draft("equipment"));
    let (label, hint) = (plan::scope_of_work(), said::scope_hint());
    page.field("scope", &label, &hint, look.draft("scope"), EntryKind::Long, 600);
    let rules = system::rules_above(look);
    let named = |rules: RuleSet| text::rule_set(rules).name;
    let usual = rules.as_ref().map_or_else(String::new, word_of);
    page.choice("rules", &said::rules_of(), options(&RuleSet::ALL, named), look.draft_or("rules", &usual));
    page.para(text::defers(rules));
    system::form(&mut page, look, None);
    // By default what the rules have that are picked above, whichever they are by the time the job is opened.
    let ruled = || std::iter::once((RULED.to_owned(), text::as_ruled()));
    let orders = ruled().chain(options(&Order::ALL, text::order)).collect();
    page.choice("order", &said::order(), orders, look.draft_or("order", RULED));
    page.para(said::order_of_site());
    rules::at_set_up(&mut page, look);
    let tolerances = ruled().chain(options(&Tolerance::ALL, text::tolerance)).collect();
    page.choice("tolerance", &said::tolerance(), tolerances, look.draft_or("tolerance", RULED));
    page.main(said::open_job(), "open-job");
    page
}

/// What the job is.
pub(super) fn what(page: &mut Page, look: &Look) {
    page.entry("title", &said::what(), &said::what_hint(), look.draft("title"));
}

/// Every lock that is on, of all jobs.
pub fn board(look: &Look) -> Page {
    let mut page = Page::new(said::board());
    page.caution(Tone::Warn, said::board_knows(locks::no_clearance()));
    super::tags::as_known(&mut page, look);
    let find = Find::of(look, look.locks.iter().filter(|l| l.on).count());
    let (on, off): (Vec<&LockRow>, Vec<&LockRow>) = look.locks.iter().partition(|l| l.on);
    let fits = |l: &&LockRow| find.fits(&[&l.label, &look.name(l.owner), &l.place, &l.job_title]);
    let on: Vec<&LockRow> = on.into_iter().filter(fits).collect();
    find.field(&mut page, look, on.len());
    if on.is_empty() {
        page.para(said::board_none());
    }
    for lock in on {
        held::row(&mut page, look, lock);
    }
    let owed: Vec<&LockRow> = off.into_iter().filter(|l| l.owed).collect();
    if !owed.is_empty() {
        page.heading(said::board_owed());
        page.caution(Tone::Must, said::board_tell());
    }
    for lock in owed {
        held::row(&mut page, look, lock);
    }
    page.row(near::title(), vec![said::board_near()], go(Route::Near));
    page.toned(app::share(), "share", Tone::Quiet);
    page.main(app::back_to_jobs(), go(Route::Home));
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
            act.say = Some(said::new_key_done());
            Ok(())
        }
        "clock-right" => {
            act.acting()?;
            act.app.say_clock_right()?;
            act.say = Some(said::clock_right_done());
            Ok(())
        }
        "find" => find::act(act, arg),
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
    act.say = Some(said::person_added(name));
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
    act.say = Some(pin::signed_on(act.world().name(person)));
    act.go = Some(Route::Home);
    Ok(())
}

fn open_job(act: &mut Act) -> Result<(), NotDone> {
    let acting = act.acting()?;
    let title = line(act, "title", AskJob::Title)?;
    let site = line(act, "site", AskJob::Site)?;
    let place = line(act, "place", AskJob::Place)?;
    let equipment = line(act, "equipment", AskJob::Equipment)?;
    // The job itself, where nobody narrows it down.
    let scope = Some(act.given("scope")).filter(|scope| !scope.is_empty()).unwrap_or_else(|| title.clone());
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
        act.say = Some(said::opened(name));
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
    said::turn(text::stage(next.step.stage()), text::step(next))
}
