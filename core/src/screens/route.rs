//! Where one can be, as a text that survives a restart.

use std::fmt;
use std::str::FromStr;

use crate::job::steps::Step;
use crate::journal::EntryId;
use crate::tag::TagId;

/// A place in the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Route {
    /// All jobs.
    Home,
    /// Who has the device in hand; new people.
    People,
    /// The PIN of who takes the device, or goes on after a pause.
    Pin(EntryId),
    /// A new job.
    NewJob,
    /// All locks that are on.
    Board,
    /// What the company and its sites have set.
    Rules,
    /// In which language this device speaks.
    Language,
    /// What is passed to a phone beside this one.
    Near,
    /// The office, and what is not there yet.
    Office,
    /// Scan a tag, or type it.
    Scan,
    /// What this device knows of a tag.
    Tag(TagId),
    /// The tags of a point of a job.
    PointTags(EntryId, EntryId),
    /// A site's supply network.
    Network(EntryId),
    /// A new source, board or load in it.
    NewNode(EntryId),
    /// A new switch or cable in it.
    NewLink(EntryId),
    /// A part of it as an entry noted it.
    Part(EntryId, EntryId),
    /// The site's network beside a job: is the work zone cut, and which points would cut it.
    Cut(EntryId),
    /// A job's steps.
    Job(EntryId),
    /// One step.
    Step(EntryId, Step),
    /// A job's locks and keys.
    Locks(EntryId),
    /// Entries about a job that are put aside.
    Asides(EntryId),
    /// One lock.
    Lock(EntryId, EntryId),
    /// Something changed: scope, a source, a neutral, a point.
    Change(EntryId),
    /// The isolation is given up.
    GiveUp(EntryId),
    /// Shift change.
    Shift(EntryId),
    /// Everything that happened.
    TimeLine(EntryId),
    /// The record of a job.
    Record(EntryId),
    /// Pass over what a step asks for.
    Deviate(EntryId, Step),
}

impl Route {
    /// One up from here.
    pub fn up(&self) -> Option<Route> {
        match *self {
            Route::Home => None,
            Route::People | Route::NewJob | Route::Board | Route::Rules | Route::Scan | Route::Tag(_) => {
                Some(Route::Home)
            }
            Route::Pin(_) => Some(Route::People),
            Route::Job(_) | Route::Network(_) | Route::Office | Route::Near | Route::Language => Some(Route::Home),
            Route::NewNode(site) | Route::NewLink(site) | Route::Part(site, _) => Some(Route::Network(site)),
            Route::Cut(job) => Some(Route::Job(job)),
            Route::PointTags(job, point) => Some(Route::Step(job, Step::Isolate(point))),
            Route::Step(job, _) | Route::Locks(job) | Route::Asides(job) | Route::Change(job) => Some(Route::Job(job)),
            Route::GiveUp(job) => Some(Route::Job(job)),
            Route::Shift(job) | Route::TimeLine(job) | Route::Record(job) => Some(Route::Job(job)),
            Route::Lock(job, _) => Some(Route::Locks(job)),
            Route::Deviate(job, step) => Some(Route::Step(job, step)),
        }
    }

    /// The job, if this is inside one.
    pub fn job(&self) -> Option<EntryId> {
        match *self {
            Route::Home | Route::People | Route::NewJob | Route::Board | Route::Scan | Route::Tag(_) => None,
            Route::Pin(_)
            | Route::Network(_)
            | Route::NewNode(_)
            | Route::NewLink(_)
            | Route::Part(..)
            | Route::Office
            | Route::Rules
            | Route::Language
            | Route::Near => None,
            Route::Job(job) | Route::Step(job, _) | Route::Locks(job) | Route::Lock(job, _) => Some(job),
            Route::PointTags(job, _) | Route::Asides(job) | Route::GiveUp(job) => Some(job),
            Route::Change(job) | Route::Shift(job) | Route::TimeLine(job) | Route::Deviate(job, _) => Some(job),
            Route::Cut(job) | Route::Record(job) => Some(job),
        }
    }

    /// The site, where its supply network is shown.
    pub fn site(&self) -> Option<EntryId> {
        match *self {
            Route::Network(site) | Route::NewNode(site) | Route::NewLink(site) | Route::Part(site, _) => Some(site),
            _ => None,
        }
    }
}

impl fmt::Display for Route {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Route::Home => f.write_str("/"),
            Route::People => f.write_str("/people"),
            Route::Pin(person) => write!(f, "/people/{person}/pin"),
            Route::NewJob => f.write_str("/new"),
            Route::Board => f.write_str("/locks"),
            Route::Rules => f.write_str("/rules"),
            Route::Language => f.write_str("/language"),
            Route::Near => f.write_str("/near"),
            Route::Office => f.write_str("/office"),
            Route::Scan => f.write_str("/scan"),
            Route::Tag(tag) => write!(f, "/tag/{tag}"),
            Route::PointTags(job, point) => write!(f, "/job/{job}/tags/{point}"),
            Route::Network(site) => write!(f, "/site/{site}/network"),
            Route::NewNode(site) => write!(f, "/site/{site}/new-node"),
            Route::NewLink(site) => write!(f, "/site/{site}/new-link"),
            Route::Part(site, entry) => write!(f, "/site/{site}/part/{entry}"),
            Route::Cut(job) => write!(f, "/job/{job}/supply"),
            Route::Job(job) => write!(f, "/job/{job}"),
            Route::Step(job, step) => write!(f, "/job/{job}/step/{}", step.name()),
            Route::Locks(job) => write!(f, "/job/{job}/locks"),
            Route::Asides(job) => write!(f, "/job/{job}/aside"),
            Route::Lock(job, lock) => write!(f, "/job/{job}/lock/{lock}"),
            Route::Change(job) => write!(f, "/job/{job}/change"),
            Route::GiveUp(job) => write!(f, "/job/{job}/give-up"),
            Route::Shift(job) => write!(f, "/job/{job}/shift"),
            Route::TimeLine(job) => write!(f, "/job/{job}/time-line"),
            Route::Record(job) => write!(f, "/job/{job}/record"),
            Route::Deviate(job, step) => write!(f, "/job/{job}/deviate/{}", step.name()),
        }
    }
}

impl FromStr for Route {
    type Err = ();
    fn from_str(text: &str) -> Result<Route, ()> {
        let parts: Vec<&str> = text.split('/').skip(1).collect();
        let id = |text: &str| text.parse::<EntryId>().map_err(|_| ());
        Ok(match parts.as_slice() {
            [""] => Route::Home,
            ["people"] => Route::People,
            ["people", person, "pin"] => Route::Pin(id(person)?),
            ["new"] => Route::NewJob,
            ["locks"] => Route::Board,
            ["rules"] => Route::Rules,
            ["language"] => Route::Language,
            ["near"] => Route::Near,
            ["office"] => Route::Office,
            ["scan"] => Route::Scan,
            ["tag", tag] => Route::Tag(tag.parse().map_err(|_| ())?),
            ["job", job, "tags", point] => Route::PointTags(id(job)?, id(point)?),
            ["site", site, "network"] => Route::Network(id(site)?),
            ["site", site, "new-node"] => Route::NewNode(id(site)?),
            ["site", site, "new-link"] => Route::NewLink(id(site)?),
            ["site", site, "part", entry] => Route::Part(id(site)?, id(entry)?),
            ["job", job, "supply"] => Route::Cut(id(job)?),
            ["job", job] => Route::Job(id(job)?),
            ["job", job, "step", step] => Route::Step(id(job)?, Step::named(step).ok_or(())?),
            ["job", job, "locks"] => Route::Locks(id(job)?),
            ["job", job, "aside"] => Route::Asides(id(job)?),
            ["job", job, "lock", lock] => Route::Lock(id(job)?, id(lock)?),
            ["job", job, "change"] => Route::Change(id(job)?),
            ["job", job, "give-up"] => Route::GiveUp(id(job)?),
            ["job", job, "shift"] => Route::Shift(id(job)?),
            ["job", job, "time-line"] => Route::TimeLine(id(job)?),
            ["job", job, "record"] => Route::Record(id(job)?),
            ["job", job, "deviate", step] => Route::Deviate(id(job)?, Step::named(step).ok_or(())?),
            _ => return Err(()),
        })
    }
}
