//! Locks and keys of a job: whose is on, fitting another, hand-over, and the forced removal of an absent owner's lock.

mod forced;

use std::collections::BTreeMap;

use super::Route;
use super::build::Page;
use super::cx::{Act, Look};
use super::home::{UNKNOWN, go};
use super::parts::Tone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{KeyAt, On};
use crate::journal::{EntryId, Fact};
use crate::point::{Lock, Means, Off, may_remove};

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
        page.para("No lock of this job is on.");
    }
    for lock in job.locks_on() {
        let mut lines = vec![
            format!("Key: {}.", key_place(look, job, lock)),
            format!("Fitted {}. {}.", look.by(&lock.stamp), means_word(&lock.means)),
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
        let place = job.lock_place(lock.on);
        page.row(titles.unique(format!("{} on {place}: {}", look.name(lock.owner), lock.label)), lines, route(lock));
    }
    super::aside::locks(&mut page, look, job);
    if job.locks.iter().any(|l| !l.is_on()) {
        page.heading("Off");
    }
    for lock in job.locks.iter().filter(|l| !l.is_on()) {
        let place = job.lock_place(lock.on);
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
    fit_form(look, job, &mut page);
    page.main("Keep this lock", "fit");
    page
}

/// One lock: whose, hand-over, and how it comes off.
pub fn one(look: &Look, job: &Job, lock: EntryId) -> Page {
    let Some(lock) = job.lock(lock) else {
        let mut page = Page::new("This lock is not on this device");
        page.para("Look for it in the list of this job's locks.");
        return to(page, "All locks of this job", Route::Locks(job.id()));
    };
    let owner = look.name(lock.owner);
    let mut page = Page::new(format!("Lock of {owner}"));
    if let Some(forced) = forced::untold(lock) {
        page.caution(Tone::Must, forced::must_tell(look, lock, forced));
    }
    page.fact("Lock", &lock.label);
    page.fact("On", job.lock_place(lock.on));
    page.fact("Secured by", means_word(&lock.means));
    page.fact("Key holder", key_place(look, job, lock));
    page.fact("Fitted", look.by(&lock.stamp));
    page.fact("Theirs since", look.when(&lock.since));
    let telephone = look.world.telephone(lock.owner);
    page.fact("Telephone", if telephone.is_empty() { "not given" } else { telephone });
    if lock.off.is_some() {
        page.fact("Off", off_line(look, lock));
    }

    let ring = format!("Ring {owner}");
    let rings = !telephone.is_empty() && look.acting != Some(lock.owner);
    let own = look.acting == Some(lock.owner);
    if lock.is_on() {
        if own {
            own_lock(look, job, lock, &mut page);
        }
        // A screen has one place to sign: once a forced removal may be signed, an unanswered offer steps back.
        if !forced::ready(lock) {
            hand_over(look, job, lock, own, &mut page);
        }
    }
    if !own || lock.forced.is_some() {
        forced::show(look, lock, &mut page);
    }
    if rings {
        put(&mut page, ring, "ring");
    }
    if page.main.is_none() {
        return to(page, "All locks of this job", Route::Locks(job.id()));
    }
    page
}

/// Does what a button on the locks' screens says; `lock` is the lock whose screen it is.
pub fn act(act: &mut Act, job: EntryId, lock: Option<EntryId>, verb: &str, _arg: &str) -> Result<(), String> {
    let Some(lock) = lock else {
        return if verb == "fit" { fit(act, job) } else { Err(UNKNOWN.into()) };
    };
    let now = act.job(job)?.lock(lock).cloned().ok_or("This lock is not on this device.")?;
    let fact = match verb {
        "ring" => return act.ring(now.owner),
        "take" => return take(act, job, &now),
        "force-off" => return forced::sign(act, job, &now),
        "remove" => Fact::LockRemoved { lock, cut: None },
        "cut" => Fact::LockRemoved { lock, cut: Some(act.need("cut-why", "Write why there was no key.")?) },
        "offer" => Fact::KeyOffered { lock, to: act.need_id("offer-to", "Choose who takes the lock and the key.")? },
        _ => forced::fact(act, lock, verb)?,
    };
    act.keep(Some(job), fact)?;
    if verb == "remove" {
        act.go = Some(Route::Locks(job));
    }
    Ok(())
}

/// Keeps a fact that `person` signs: the device goes into their hands first, and back if the fact is refused, because then
/// nothing was signed.
pub(super) fn keep_as(act: &mut Act, job: EntryId, person: EntryId, fact: Fact) -> Result<(), String> {
    let before = act.acting()?;
    act.app.hold(person)?;
    if let Err(why) = act.keep(Some(job), fact) {
        act.app.hold(before)?;
        return Err(why);
    }
    Ok(())
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

fn means_word(means: &Means) -> String {
    match means {
        Means::Padlock => "Padlock through the device".into(),
        Means::Hasp => "Padlock on a hasp".into(),
        Means::Other(what) => format!("Not a lock: {what}"),
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

fn fit_form(look: &Look, job: &Job, page: &mut Page) {
    page.heading("Fit a further lock");
    page.para("Each person fits their own lock and keeps its only key. Write on it whose it is.");
    let acting = look.acting.filter(|a| job.people().contains(a)).map(|a| a.to_string()).unwrap_or_default();
    page.choice("owner", "Whose lock", people(look, job, &[]), look.draft_or("owner", &acting));
    let points = job.points.iter().map(|p| (format!("point {}", p.stamp.id), p.label.clone()));
    let boxes = || job.boxes.iter().map(|b| (format!("box {}", b.stamp.id), b.label.clone()));
    page.choice("on", "It is on", points.chain(boxes()).collect(), look.draft("on"));
    page.entry("label", "Written on the lock", "Its number or name, such as ML 3.", look.draft("label"));
    let means = [
        ("padlock", "Padlock through the device"),
        ("hasp", "Padlock on a hasp"),
        ("other", "Not a lock: another means"),
    ];
    let means = means.map(|(value, word)| (value.to_owned(), word.to_owned())).into();
    page.choice("means", "How it secures", means, look.draft("means"));
    page.entry(
        "means-other",
        "Which other means",
        "Only if it is not a lock, such as fuse links kept on the person.",
        look.draft("means-other"),
    );
    let key = std::iter::once(("owner".to_owned(), "With the owner".to_owned()));
    let key = key.chain(boxes().map(|(value, label)| (value, format!("In {label}")))).collect();
    page.choice("key", "Where its key is", key, look.draft("key"));
}

fn fit(act: &mut Act, job: EntryId) -> Result<(), String> {
    let owner = act.need_id("owner", "Choose whose lock it is.")?;
    let ask = "Choose what the lock is on.";
    let on = act.need("on", ask)?;
    let on = match on.split_once(' ') {
        Some(("point", id)) => On::Point(id.parse().map_err(|_| ask)?),
        Some(("box", id)) => On::Box(id.parse().map_err(|_| ask)?),
        _ => return Err(ask.into()),
    };
    let label = act.need("label", "Write what is written on the lock.")?;
    let ask = "Choose how it secures.";
    let means = match act.need("means", ask)?.as_str() {
        "padlock" => Means::Padlock,
        "hasp" => Means::Hasp,
        "other" => Means::Other(act.need("means-other", "Write which other means secures the point.")?),
        _ => return Err(ask.into()),
    };
    let ask = "Choose where the key is.";
    let key = act.need("key", ask)?;
    let key = match key.split_once(' ') {
        None if key == "owner" => KeyAt::Owner,
        Some(("box", id)) => KeyAt::Box(id.parse().map_err(|_| ask)?),
        _ => return Err(ask.into()),
    };
    act.keep(Some(job), Fact::LockFitted { on, owner, label, key, means, through: None })?;
    Ok(())
}

fn own_lock(look: &Look, job: &Job, lock: &Lock, page: &mut Page) {
    page.heading("Take it off");
    if let Some(why_not) = may_remove(lock, lock.owner, &job.locks, |id| look.name(id)) {
        page.para(why_not);
        return;
    }
    if job.finished.is_some() {
        page.para("The work is finished. Take it off with your own hand, then record it.");
        page.main("Take my lock off", "remove");
    } else {
        page.caution(
            Tone::Warn,
            "The work is not finished. Taking this lock off ends the proof at once: from then on treat everything as live. \
             Get everybody clear first.",
        );
        page.toned("Take my lock off", "remove", Tone::Forbid);
    }
}

fn hand_over(look: &Look, job: &Job, lock: &Lock, own: bool, page: &mut Page) {
    let mut others = vec![lock.owner];
    if let Some((_, to)) = lock.offered {
        let name = look.name(to);
        page.heading("Hand-over");
        page.caution(
            Tone::Must,
            format!(
                "Give the device to {name}; {name} signs below. Until then lock and key stay with {}.",
                look.name(lock.owner)
            ),
        );
        page.mark("mark", format!("{name} signs for lock and key"), look.draft("mark"));
        put(page, format!("{name} takes lock and key"), "take");
        others.push(to);
    } else if own {
        page.heading("Hand over lock and key");
    }
    // Only who holds the key can offer it.
    let people = people(look, job, &others);
    if !own {
        return;
    }
    let again = lock.offered.is_some();
    if people.is_empty() {
        if !again {
            page.para("Nobody else is on this job. Add the person to the job first, then hand over.");
        }
        return;
    }
    page.choice("offer-to", if again { "Or offer it to" } else { "To whom" }, people, look.draft("offer-to"));
    let label = if again { "Offer it to this person instead" } else { "Offer lock and key" };
    put(page, label, "offer");
}

fn take(act: &mut Act, job: EntryId, lock: &Lock) -> Result<(), String> {
    let (offer, to) = lock.offered.ok_or("This lock is not on offer. Its holder offers it first.")?;
    let name = act.world().name(to);
    let mark = act.signature(&name)?;
    keep_as(act, job, to, Fact::KeyTaken { offer, mark })?;
    act.say = Some(format!("Kept. Lock and key are with {name}, and so is this device."));
    Ok(())
}
