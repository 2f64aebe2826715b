//! What is known beside a job's own entries: the moment, the site's rules, and what other jobs, the network and other devices tell.
//!
//! A job is a fold over its own entries and never proves anything by itself: [`Job::standing`](super::Job::standing) holds it against this.

use std::collections::{BTreeMap, BTreeSet};

use super::age::{CLOCK_DOUBT_MS, Moment, moved, oldest};
use super::{Job, Summary};
use crate::journal::fact::{InstrumentKind, LightsFrom, On, SourceKind, SourceRef, StoredKind};
use crate::journal::{Entry, EntryId, Hlc, Stamp};
use crate::point::LockRow;
use crate::prove::Proof;
use crate::site::Across;
use crate::supply::{Cut, Drawn, Uncut};
use crate::world::World;

/// Most minutes between two proofs of the indicator. Our rule, no source.
pub const BETWEEN_PROOFS: u32 = 60;
/// Most minutes that a proof holds: a shift. Our rule, no source.
pub const PROOF_HOLDS: u32 = 12 * 60;

/// What is known beside a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    /// Now, by this device's clocks.
    pub now: Moment,
    /// What the site allows.
    pub rules: Rules,
    /// Locks of other jobs at points that are, or may be, points of this job: this job's point and the lock.
    pub held: Vec<(EntryId, LockRow)>,
    /// Closings of such points in other jobs: this job's point, the closing, and that job's title if it is known.
    pub closings: Vec<(EntryId, Stamp, Option<String>)>,
    /// Such points that were found on in another job and are open since: this job puts them back on.
    pub found_on: BTreeSet<EntryId>,
    /// Sources that other jobs found at this site, and those that the network shows while nobody has named the work zone.
    pub sources: Vec<SiteSource>,
    /// Failures of instruments in other jobs: the instrument and the entry that tells of it.
    pub failures: Vec<(EntryId, Stamp)>,
    /// Checks in other jobs that found an instrument sound: the instrument, when, and the failures that were known.
    pub checks: Vec<(EntryId, Stamp, Vec<EntryId>)>,
    /// Instruments that somebody noted more than once, and the entry that stands for all of them.
    pub twins: BTreeMap<EntryId, EntryId>,
    /// Proving units that are known.
    pub units: BTreeSet<EntryId>,
    /// The lowest indication of each instrument that says one.
    pub lights_from: BTreeMap<EntryId, LightsFrom>,
    /// Why work may not rest on the locks that are on, by the site's network.
    pub against: Option<Box<Uncut>>,
    /// Since when the site has a network, by the entry that drew it first.
    pub network_since: Option<Stamp>,
    /// Entries about this job that are kept aside.
    pub aside: Vec<Aside>,
    /// A newer version wrote something about this site or about everything that this one cannot read.
    pub newer: bool,
    /// This device has forgotten what it wrote: its journal was put back from a copy, or its key is used elsewhere.
    pub forgot: bool,
    /// Runs that began before this are not believed here: the device had forgotten what it wrote.
    pub not_before: Option<Hlc>,
    /// Entries that showed that their writer's clock was ahead of another's: the latest of each such device.
    pub ahead: Vec<Stamp>,
    /// Since when this device's clock is as it is, if it was set back.
    pub set_back: Option<Hlc>,
    /// When openings that other devices recorded came here, by this device's clocks.
    pub arrivals: BTreeMap<EntryId, Stamp>,
}

/// What a site allows at most.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rules {
    /// Minutes between two proofs of the indicator.
    pub between_proofs: u32,
    /// Minutes that a proof holds.
    pub proof_holds: u32,
}

impl Rules {
    /// No more than our own most, and not nothing.
    pub fn within(self) -> Rules {
        let (between_proofs, proof_holds) =
            (self.between_proofs.clamp(1, BETWEEN_PROOFS), self.proof_holds.clamp(1, PROOF_HOLDS));
        Rules { between_proofs, proof_holds }
    }
}

impl Default for Rules {
    fn default() -> Rules {
        Rules { between_proofs: BETWEEN_PROOFS, proof_holds: PROOF_HOLDS }
    }
}

/// What kind of thing another job found, or the network shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SiteKind {
    /// A source of this kind.
    Source(SourceKind),
    /// A source, and the network does not say of which kind.
    Unsaid,
    /// Stored energy, how long is waited for it in seconds, what it is, and the waiting time on its label.
    Stored(u32, Option<StoredKind>, Option<u32>),
}

/// A source that is known at the site beside the job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SiteSource {
    /// Which.
    pub source: SourceRef,
    /// Its kind.
    pub kind: SiteKind,
    /// What it is.
    pub what: String,
    /// Where it comes in.
    pub at: String,
    /// Who tells of it.
    pub told_by: ToldBy,
}

/// Who tells of a source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ToldBy {
    /// Another job, by its title; empty if that job is not known here.
    Job(String),
    /// The site's network.
    Network,
}

/// An entry about a job that is kept aside.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Aside {
    /// The entry.
    pub entry: EntryId,
    /// What it says.
    pub says: Box<Summary>,
    /// When and by whom, by its own word.
    pub stamp: Stamp,
    /// The lock that it says was fitted: label and owner.
    pub lock: Option<(String, EntryId)>,
    /// What that lock is on.
    pub on: Option<On>,
    /// Why it is kept aside.
    pub why: String,
}

impl Known {
    /// What a job's own entries tell, at this moment: of its instruments, that they light in time, because nothing else is known.
    pub fn alone(now: Moment, job: &Job) -> Known {
        let used = job.runs.iter().map(|r| (r.indicator, LightsFrom { ac: 0, dc: Some(0) }));
        let units = job.runs.iter().flat_map(|r| &r.proofs).filter_map(Proof::unit);
        Known { lights_from: used.collect(), units: units.collect(), ..Known::at(now) }
    }

    /// What the entries of a site tell beside `job`, for who looks from outside any device. `others`: entries that jobs share, and those of
    /// no job; any others change nothing.
    pub fn of_site<'a>(now: Moment, job: &super::Job, others: impl Iterator<Item = &'a Entry>, world: &World) -> Known {
        let mut across = Across::default();
        others.for_each(|entry| across.extend(entry));
        let mut known = Known::at(now);
        across.beside(job.id(), job.site, &[], &mut known);
        known.know_instruments(world);
        known
    }

    /// What the instruments of this world are.
    pub fn know_instruments(&mut self, world: &World) {
        self.lights_from = world.instruments.iter().filter_map(|(id, i)| Some((*id, i.lights_from?))).collect();
        let units = world.instruments.iter().filter(|(_, i)| i.kind == InstrumentKind::ProvingUnit);
        self.units = units.map(|(id, _)| *id).collect();
    }

    /// What the network of the job's site says to it, as far as it is drawn. Locks of other jobs at shared points are left out: without them
    /// less is shown as cut, never more.
    pub fn know_network(&mut self, job: &Job, drawn: &mut Drawn) {
        let network = drawn.network();
        let cut = (!drawn.is_empty()).then(|| Cut::of(job, network, drawn.states(), &[]));
        self.against = cut.and_then(|cut| cut.against(job));
        self.network_since = drawn.since();
    }

    /// Nothing known beside the job, at this moment.
    pub fn at(now: Moment) -> Known {
        Known {
            now,
            rules: Rules::default(),
            held: Vec::new(),
            closings: Vec::new(),
            found_on: BTreeSet::new(),
            sources: Vec::new(),
            failures: Vec::new(),
            checks: Vec::new(),
            twins: BTreeMap::new(),
            units: BTreeSet::new(),
            lights_from: BTreeMap::new(),
            against: None,
            network_since: None,
            aside: Vec::new(),
            newer: false,
            forgot: false,
            not_before: None,
            ahead: Vec::new(),
            set_back: None,
            arrivals: BTreeMap::new(),
        }
    }

    /// How old a proof is, in milliseconds, taken as the longer; `None` if no clock can be believed: then prove again.
    pub fn oldest(&self, from: &Stamp, to: &Moment) -> Option<i64> {
        let as_set = |a: &Stamp| moved(a, from).is_some_and(|ms| ms.abs() < CLOCK_DOUBT_MS);
        let wrong = |a: &Stamp| a.device == from.device && (from.seq <= a.seq || as_set(a));
        let doubt = from.device != to.device && self.ahead.iter().any(wrong)
            || self.set_back.is_some_and(|since| from.clock < since)
            || self.now.doubt && (from.device == self.now.device || to.device == self.now.device);
        oldest(from, &Moment { doubt: doubt || to.doubt, ..*to })
    }
}

impl Job {
    /// Whether two entries are about one instrument, as far as is known here.
    pub fn is_one_instrument(&self, one: EntryId, other: EntryId) -> bool {
        let first = |id: EntryId| self.known.as_ref().and_then(|k| k.twins.get(&id).copied()).unwrap_or(id);
        first(one) == first(other)
    }

    /// Entries about this job that are put aside, answered or not.
    pub fn asides(&self) -> &[Aside] {
        self.known.as_ref().map_or(&[], |known| &known.aside)
    }

    /// When somebody last looked at the spot about an entry that is put aside.
    pub fn aside_answer(&self, entry: EntryId) -> Option<&Stamp> {
        self.aside_answered.iter().rev().find(|(_, answered)| *answered == entry).map(|(stamp, _)| stamp)
    }

    /// The lock that is on at this point by the word of an entry that is put aside: label and owner.
    pub fn aside_at(&self, point: EntryId) -> Option<(&str, EntryId)> {
        let at = self.aside_locks().find(|a| a.on == Some(On::Point(point)))?;
        at.lock.as_ref().map(|(label, owner)| (label.as_str(), *owner))
    }

    /// Locks that are on by the word of an entry that is put aside and that nobody has answered.
    pub fn aside_locks(&self) -> impl Iterator<Item = &Aside> {
        self.asides().iter().filter(|a| a.lock.is_some() && self.aside_answer(a.entry).is_none())
    }
}
