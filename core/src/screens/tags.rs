//! Tags: scanning one, what this device knows of it, and the tags of a point.

use super::Route;
use super::build::Page;
use super::context::{Act, Look, TagKnown};
use super::home::{UNKNOWN, go, id};
use super::locks::{held, key_place};
use super::parts::{PhotoSeen, PhotoSlot, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::names::alike;
use crate::point::{Lock, Point};
use crate::site::KnownPoint;
use crate::tag::TagId;
use crate::text::times;
use crate::text::{self, AskDevice, AskFirst, AskIsolate, Gone};

/// Most jobs that are listed beside those that know the tag.
const MAX_JOBS: usize = 20;

/// Scan, or type.
pub fn scan(look: &Look) -> Page {
    let mut page = Page::new("Scan a tag");
    page.para("The tag says whose lock is on, who holds the key, and since when.");
    typed(&mut page, look);
    page.button("Look it up", "look");
    page.main("Scan with the camera", "scan");
    page
}

fn typed(page: &mut Page, look: &Look) {
    page.entry("tag", "Or the tag as printed", "16 characters, in groups of four", look.draft("tag"));
}

fn given(act: &Act) -> Result<TagId, NotDone> {
    let text = act.need("tag", AskDevice::Tag)?;
    Ok(text.parse().map_err(AskFirst::TagText)?)
}

/// What is done on the two screens outside a job.
pub fn act(act: &mut Act, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "look" => {
            act.go = Some(Route::Tag(given(act)?));
            Ok(())
        }
        "ring" => act.ring(id(arg)?),
        _ => Err(UNKNOWN.into()),
    }
}

/// What this device knows of `tag`.
pub fn view(look: &Look, tag: TagId) -> Page {
    let mut page = Page::new(format!("Tag {}", tag.spaced()));
    let TagKnown { places, points, jobs } = look.tag;
    let Some(latest) = places.iter().find(|p| p.gone.is_none()).or(places.first()) else {
        page.caution(
            Tone::Warn,
            format!("This device knows nothing of this tag. {}", text::in_terms(held::NO_CLEARANCE)),
        );
        as_known(&mut page, look);
        page.main("Scan another tag", "scan");
        return page;
    };
    page.fact("Hangs at", format!("{}, {}", latest.label, latest.place));
    if let Some(why) = &latest.gone {
        page.caution(Tone::Warn, format!("This tag was given up: {why}. Do not go by it: look at the point itself."));
    }
    let mut on = 0;
    for job in jobs {
        for point in job.points.iter().filter(|p| points.iter().any(|there| there.point == p.stamp.id)) {
            for lock in job.locks_at(point.stamp.id) {
                on += 1;
                lock_on(&mut page, look, job, point, lock);
            }
            on += super::aside::at_point(&mut page, look, job, point.stamp.id);
        }
    }
    if on == 0 {
        page.caution(
            Tone::Warn,
            format!("This device knows of no lock on this point, for any job. {}", text::in_terms(held::NO_CLEARANCE)),
        );
    }
    pictures(&mut page, look, jobs, points);
    page.heading("Jobs");
    for place in places {
        let here = if place.label == latest.label { String::new() } else { format!(" at {}", place.label) };
        let lines = vec![format!("Tag hung{here} {}", times::when(place.since_ms, place.zone, look.now))];
        page.row(format!("{} ({})", place.job_title, place.job.short()), lines, go(Route::Job(place.job)));
    }
    let elsewhere = |p: &&KnownPoint| places.iter().all(|place| place.job != p.job);
    for point in points.iter().filter(elsewhere).take(MAX_JOBS) {
        let lines = vec![format!("The same point, as far as is known: {}, {}", point.label, point.at)];
        page.row(
            format!("{} ({})", text::job_title(point.title.as_deref()), point.job.short()),
            lines,
            go(Route::Job(point.job)),
        );
    }
    as_known(&mut page, look);
    page.main("Scan another tag", "scan");
    page
}

/// How old the knowledge on a screen of locks is.
pub(super) fn as_known(page: &mut Page, look: &Look) {
    let now = times::when(look.now, look.zone, look.now);
    let office = match look.office {
        Some(at) => format!("Office last reached {}", times::when(at, look.zone, look.now)),
        None => "It has not been in touch with an office".into(),
    };
    page.para(format!("As known to this device at {now}. {office}; other devices may know of more locks."));
}

fn lock_on(page: &mut Page, look: &Look, job: &Job, point: &Point, lock: &Lock) {
    let owner = look.name(lock.owner);
    page.heading(format!("Lock of {owner} on {}", point.label));
    page.fact("Key holder", key_place(look, job, lock));
    page.fact("Since", look.when(&lock.since));
    page.fact("Job", format!("{}, {}", job.title, job.place));
    page.row(
        format!("Lock {}", lock.label),
        vec!["All about this lock".into()],
        go(Route::Lock(job.id(), lock.stamp.id)),
    );
    let telephone = look.world.telephone(lock.owner);
    if telephone.is_empty() {
        page.fact("Telephone", "not given");
    } else {
        page.fact("Telephone", telephone);
        page.button(format!("Ring {owner}"), format!("ring {}", lock.owner));
    }
}

fn pictures(page: &mut Page, look: &Look, jobs: &[Job], points: &[KnownPoint]) {
    let mut taken = Vec::new();
    for job in jobs {
        for photo in job.photos.iter().filter(|p| points.iter().any(|there| there.point == p.of)) {
            let label = format!("{}, photo of {}", job.title, look.by(&photo.stamp));
            taken.push(PhotoSeen { sha256: photo.sha256.clone(), label });
        }
    }
    if !taken.is_empty() {
        let hint = String::new();
        page.photo(PhotoSlot { label: "Pictures".into(), hint, action: String::new(), taken });
    }
}

/// On the step of a point: its tag in a row, and the way to it.
pub fn at_point(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let tags: Vec<_> = point.tags_now().collect();
    let lines = match tags[..] {
        [] => vec!["No tag yet".into()],
        _ => tags
            .iter()
            .map(|t| match &t.read {
                Some(read) => format!("{}, read {}", t.tag.spaced(), look.by(read)),
                None => format!("{}, not read in this job", t.tag.spaced()),
            })
            .collect(),
    };
    page.row(format!("Tag of {}", point.label), lines, go(Route::PointTags(job.id(), point.stamp.id)));
}

/// The tags of a point.
pub fn of_point(look: &Look, job: &Job, point: EntryId) -> Page {
    let Some(point) = job.point(point) else { return Page::new("This point is not in this job") };
    let at = &point.label;
    let mut page = Page::new(format!("Tag of {at}"));
    let pending = |field: &str| look.draft(field).parse::<TagId>().ok();
    if let Some(tag) = pending("elsewhere") {
        page.caution(
            Tone::Forbid,
            format!(
                "Tag {} is known as that of {}, not of {at}. Look which switch you stand at.",
                tag.spaced(),
                look.draft("known-as")
            ),
        );
        page.entry("why", "If it really hangs here now: why", "Such as: the switch was replaced", look.draft("why"));
        page.button(format!("The tag hangs at {at} now"), format!("move {tag}"));
    } else if let Some(tag) = pending("blank") {
        page.para(format!("Tag {} is blank: this device knows of no place where it hangs.", tag.spaced()));
        page.main(format!("It hangs at {at}"), format!("bind {tag}"));
    }
    let tags: Vec<_> = point.tags_now().collect();
    if tags.is_empty() && page.main.is_none() {
        page.para("Stick a blank tag beside the switch, where it stays when a cover comes off, and scan it.");
    }
    for hung in &tags {
        page.fact(format!("Tag {}", hung.tag.spaced()), format!("hangs here since {}", look.by(&hung.stamp)));
        if let Some(read) = &hung.read {
            page.fact("Read", look.by(read));
        }
    }
    typed(&mut page, look);
    page.button("Use this tag", "typed");
    if !tags.is_empty() {
        page.entry("lost", "If a tag is gone: what became of it", "Lost, damaged, taken down", look.draft("lost"));
        for hung in &tags {
            page.toned(format!("Tag {} is gone", hung.tag.spaced()), format!("gone {}", hung.tag), Tone::Quiet);
        }
    }
    let scan = format!("scan {}", point.stamp.id);
    if page.main.is_none() {
        page.main("Scan the tag here", scan);
    } else {
        page.button("Scan another tag", scan);
    }
    page
}

/// What is done on the screen of a point's tags.
pub fn act_point(act: &mut Act, job: EntryId, point: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let tag = || arg.parse::<TagId>().map_err(AskFirst::TagText);
    match verb {
        "typed" => {
            let tag = given(act)?;
            found(act, job, point, tag)
        }
        "found" => found(act, job, point, tag()?),
        "bind" => bind(act, job, point, tag()?, None),
        "move" => {
            let why = act.need("why", AskIsolate::TagMovedWhy)?;
            bind(act, job, point, tag()?, Some(why))
        }
        "gone" => {
            let why = act.need("lost", AskIsolate::TagGone)?;
            act.keep(Some(job), Fact::TagGone { tag: tag()?, point, why })?;
            act.say = Some("The tag is given up. Stick a new one and scan it.".into());
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}

fn bind(act: &mut Act, job: EntryId, point: EntryId, tag: TagId, why: Option<String>) -> Result<(), NotDone> {
    act.keep(Some(job), Fact::TagBound { tag, point, why })?;
    here(act, job, point, tag)
}

/// The tag was read at its point: kept, and back to the step.
fn here(act: &mut Act, job: EntryId, point: EntryId, tag: TagId) -> Result<(), NotDone> {
    act.keep(Some(job), Fact::TagRead { tag, point })?;
    let label = act.job(job)?.point(point).map(|p| p.label.clone()).unwrap_or_default();
    act.say = Some(format!("This is {label}, by its tag."));
    act.go = Some(Route::Step(job, Step::Isolate(point)));
    Ok(())
}

/// A tag was read on this screen: of this point, of the same point in another job, blank, or of another point.
fn found(act: &mut Act, job: EntryId, point: EntryId, tag: TagId) -> Result<(), NotDone> {
    let now = act.job(job)?;
    let at = now.point(point).ok_or(Gone::Point)?;
    if at.tags_now().any(|t| t.tag == tag) {
        return here(act, job, point, tag);
    }
    let (label, site) = (at.label.clone(), now.site);
    let places = act.places_of(tag)?;
    act.note("elsewhere", "");
    act.note("blank", "");
    match places.iter().find(|p| p.gone.is_none()).or(places.first()) {
        None => {
            act.note("blank", tag.as_str());
            act.say = Some("A blank tag. Say where it hangs.".into());
            Ok(())
        }
        Some(known) => {
            let same_site = act.job(known.job)?.site == site;
            let same_name = alike(&known.label, &label);
            // The latest place counts: the same switch, met in an earlier job.
            if act.app.may_be_one(known.point, point) && known.gone.is_none() {
                return bind(act, job, point, tag, None);
            }
            let there = match (same_name, same_site) {
                (false, _) => known.label.clone(),
                (true, true) => format!("{}, {}", known.label, known.place),
                (true, false) => format!("{} at another site", known.label),
            };
            act.note("elsewhere", tag.as_str());
            act.note("known-as", &format!("{}, {}", known.label, known.place));
            act.alarm = true;
            act.say = Some(format!("This tag belongs to {there}, not to {label}."));
            Ok(())
        }
    }
}
