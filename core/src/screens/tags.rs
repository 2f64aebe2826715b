//! Tags: scanning one, what this device knows of it, and the tags of a point.

use super::Route;
use super::build::Page;
use super::context::{Act, Look, TagKnown};
use super::home::{UNKNOWN, go, id};
use super::locks::key_place;
use super::parts::{PhotoSeen, PhotoSlot, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::names::alike;
use crate::point::{Lock, Point};
use crate::site::KnownPoint;
use crate::tag::TagId;
use crate::text::screens::locks::no_clearance;
use crate::text::screens::tags as said;
use crate::text::times;
use crate::text::{self, AskDevice, AskFirst, AskIsolate, Gone};

/// Most jobs that are listed beside those that know the tag.
const MAX_JOBS: usize = 20;

/// Scan, or type.
pub fn scan(look: &Look) -> Page {
    let mut page = Page::new(said::scan_title());
    page.para(said::scan_what());
    typed(&mut page, look);
    page.button(said::look_up(), "look");
    page.main(said::scan(), "scan");
    page
}

fn typed(page: &mut Page, look: &Look) {
    page.entry("tag", &said::typed(), &said::typed_hint(), look.draft("tag"));
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
    let mut page = Page::new(said::title(tag.spaced()));
    let TagKnown { places, points, jobs } = look.tag;
    let Some(latest) = places.iter().find(|p| p.gone.is_none()).or(places.first()) else {
        page.caution(Tone::Warn, said::unknown(no_clearance()));
        as_known(&mut page, look);
        page.main(said::scan_another(), "scan");
        return page;
    };
    page.fact(said::hangs_at(), said::place(&latest.label, &latest.place));
    if let Some(why) = &latest.gone {
        page.caution(Tone::Warn, said::given_up(why));
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
        page.caution(Tone::Warn, said::no_lock(no_clearance()));
    }
    pictures(&mut page, look, jobs, points);
    page.heading(said::jobs());
    for place in places {
        let since = times::when(place.since_ms, place.zone, look.now);
        let hung = if place.label == latest.label { said::hung(since) } else { said::hung_at(&place.label, since) };
        let lines = vec![hung];
        page.row(said::job(&place.job_title, place.job.short()), lines, go(Route::Job(place.job)));
    }
    let elsewhere = |p: &&KnownPoint| places.iter().all(|place| place.job != p.job);
    for point in points.iter().filter(elsewhere).take(MAX_JOBS) {
        let lines = vec![said::same_point(&point.label, &point.at)];
        page.row(
            said::job(text::job_title(point.title.as_deref()), point.job.short()),
            lines,
            go(Route::Job(point.job)),
        );
    }
    as_known(&mut page, look);
    page.main(said::scan_another(), "scan");
    page
}

/// How old the knowledge on a screen of locks is.
pub(super) fn as_known(page: &mut Page, look: &Look) {
    let now = times::when(look.now, look.zone, look.now);
    page.para(match look.office {
        Some(at) => said::as_known(now, times::when(at, look.zone, look.now)),
        None => said::as_known_alone(now),
    });
}

fn lock_on(page: &mut Page, look: &Look, job: &Job, point: &Point, lock: &Lock) {
    let owner = look.name(lock.owner);
    page.heading(said::lock_on(&owner, &point.label));
    page.fact(said::key_holder(), key_place(look, job, lock));
    page.fact(said::since(), look.when(&lock.since));
    page.fact(said::of_job(), said::of_job_is(&job.title, &job.place));
    page.row(said::lock(&lock.label), vec![said::about_lock()], go(Route::Lock(job.id(), lock.stamp.id)));
    let telephone = look.world.telephone(lock.owner);
    if telephone.is_empty() {
        page.fact(said::telephone(), said::telephone_none());
    } else {
        page.fact(said::telephone(), telephone);
        page.button(said::ring(owner), format!("ring {}", lock.owner));
    }
}

fn pictures(page: &mut Page, look: &Look, jobs: &[Job], points: &[KnownPoint]) {
    let mut taken = Vec::new();
    for job in jobs {
        for photo in job.photos.iter().filter(|p| points.iter().any(|there| there.point == p.of)) {
            let label = said::photo(&job.title, look.by(&photo.stamp));
            taken.push(PhotoSeen { sha256: photo.sha256.clone(), label });
        }
    }
    if !taken.is_empty() {
        let hint = String::new();
        page.photo(PhotoSlot { label: said::pictures(), hint, action: String::new(), taken });
    }
}

/// On the step of a point: its tag in a row, and the way to it.
pub fn at_point(page: &mut Page, look: &Look, job: &Job, point: &Point) {
    let tags: Vec<_> = point.tags_now().collect();
    let lines = match tags[..] {
        [] => vec![said::none_yet()],
        _ => tags
            .iter()
            .map(|t| match &t.read {
                Some(read) => said::read_by(t.tag.spaced(), look.by(read)),
                None => said::not_read(t.tag.spaced()),
            })
            .collect(),
    };
    page.row(said::of_point(&point.label), lines, go(Route::PointTags(job.id(), point.stamp.id)));
}

/// The tags of a point.
pub fn of_point(look: &Look, job: &Job, point: EntryId) -> Page {
    let Some(point) = job.point(point) else { return Page::new(said::no_point()) };
    let at = &point.label;
    let mut page = Page::new(said::of_point(at));
    let pending = |field: &str| look.draft(field).parse::<TagId>().ok();
    if let Some(tag) = pending("elsewhere") {
        page.caution(Tone::Forbid, said::known_elsewhere(tag.spaced(), look.draft("known-as"), at));
        page.entry("why", &said::moved_why(), &said::moved_why_hint(), look.draft("why"));
        page.button(said::hangs_here_now(at), format!("move {tag}"));
    } else if let Some(tag) = pending("blank") {
        page.para(said::blank(tag.spaced()));
        page.main(said::hangs_here(at), format!("bind {tag}"));
    }
    let tags: Vec<_> = point.tags_now().collect();
    if tags.is_empty() && page.main.is_none() {
        page.para(said::stick());
    }
    for hung in &tags {
        page.fact(said::title(hung.tag.spaced()), said::hangs_since(look.by(&hung.stamp)));
        if let Some(read) = &hung.read {
            page.fact(said::read(), look.by(read));
        }
    }
    typed(&mut page, look);
    page.button(said::use_this(), "typed");
    if !tags.is_empty() {
        page.entry("lost", &said::lost(), &said::lost_hint(), look.draft("lost"));
        for hung in &tags {
            page.toned(said::gone(hung.tag.spaced()), format!("gone {}", hung.tag), Tone::Quiet);
        }
    }
    let scan = format!("scan {}", point.stamp.id);
    if page.main.is_none() {
        page.main(said::scan_here(), scan);
    } else {
        page.button(said::scan_another(), scan);
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
            act.say = Some(said::was_given_up());
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
    act.say = Some(said::this_is(label));
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
            act.say = Some(said::is_blank());
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
                (true, true) => said::place(&known.label, &known.place),
                (true, false) => said::at_other_site(&known.label),
            };
            act.note("elsewhere", tag.as_str());
            act.note("known-as", &said::place(&known.label, &known.place));
            act.alarm = true;
            act.say = Some(said::belongs(there, label));
            Ok(())
        }
    }
}
