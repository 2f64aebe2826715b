//! What the jobs of a site share: points of isolation, sources, instruments' failures, as told by the entries of all jobs.
//!
//! A point of isolation is a thing of the site. Each job lists it for itself; two entries are the same point where they have the same tag,
//! the same link of the network, or a like label at a like place, until somebody who stood there says that they are two. Start at
//! [`Across::extend`] and [`Across::beside`].

mod groups;
mod instruments;

use std::collections::{BTreeMap, BTreeSet};

use crate::TagId;
use crate::job::known::{Known, Rules, SiteKind, SiteSource, ToldBy};
use crate::journal::fact::{Duty, SourceRef};
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::names::{alike, looks};
use crate::point::LockRow;
use crate::supply::Position;

use groups::Groups;
use instruments::Instruments;

/// What all jobs on this device tell of what they share, by site.
#[derive(Debug, Clone, Default)]
pub struct Across {
    jobs: BTreeMap<EntryId, JobThere>,
    points: Vec<PointThere>,
    parted: BTreeSet<(EntryId, EntryId)>,
    sources: Vec<SourceThere>,
    instruments: Instruments,
    /// Who works under supervision: the person and the job.
    learners: BTreeSet<(EntryId, EntryId)>,
    failures: Vec<(EntryId, EntryId, Stamp)>,
    checks: Vec<(EntryId, EntryId, Stamp, Vec<EntryId>)>,
    rules: BTreeMap<EntryId, Rules>,
    withdrawn: BTreeSet<EntryId>,
    groups: Groups,
    /// What a newer version wrote and this one cannot read: the job, if it belongs to one, and its site.
    newer: Vec<(Option<EntryId>, Option<EntryId>)>,
}

/// A job, as far as others have to know it.
#[derive(Debug, Clone)]
struct JobThere {
    site: Option<EntryId>,
    title: String,
    done: bool,
}

/// A point in one job.
#[derive(Debug, Clone)]
pub struct PointThere {
    /// The entry that added it.
    pub id: EntryId,
    /// Its job.
    pub job: EntryId,
    /// The site.
    pub site: Option<EntryId>,
    /// Its label and its place, as they were written.
    pub label: String,
    /// Where it is.
    pub at: String,
    looks: ([String; 2], [String; 2]),
    switch: Option<String>,
    same_as: Option<EntryId>,
    tags: BTreeSet<TagId>,
    closings: Vec<Stamp>,
    /// How it was found when it was opened last and not closed since.
    found: Option<Position>,
}

/// A point that another job knows, as it is offered and named on screens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownPoint {
    /// The entry that added it.
    pub point: EntryId,
    /// The job that did.
    pub job: EntryId,
    /// That job's title; `None` where the job is not known here.
    pub title: Option<String>,
    /// Its label.
    pub label: String,
    /// Where it is.
    pub at: String,
}

/// A padlock is known by its owner and its label: where it is on now, in any job.
pub fn padlocks<'a>(locks: &'a [LockRow], owner: EntryId, label: &str) -> Vec<&'a LockRow> {
    locks.iter().filter(|l| l.on && l.owner == owner && alike(&l.label, label)).collect()
}

/// A source, or stored energy, that a job found.
#[derive(Debug, Clone)]
struct SourceThere {
    id: EntryId,
    job: EntryId,
    kind: SiteKind,
    what: String,
    at: String,
}

/// Whether an entry tells of what jobs share: such entries are read at the start. What cannot be read may.
pub fn is_shared(fact: &Fact) -> bool {
    matches!(
        fact,
        Fact::Newer { .. }
            | Fact::JobOpened { .. }
            | Fact::HandedBack { .. }
            | Fact::PointAdded { .. }
            | Fact::PointDrawn { .. }
            | Fact::PointsParted { .. }
            | Fact::TagBound { .. }
            | Fact::TagGone { .. }
            | Fact::PointOpened { .. }
            | Fact::PointClosed { .. }
            | Fact::SourceAnswered { found: Some(_), .. }
            | Fact::StoredAnswered { found: Some(_), .. }
            | Fact::IndicatorProved { works: false, .. }
            | Fact::InstrumentChecked { .. }
            | Fact::WorkerJoined { .. }
            | Fact::SiteRuled { .. }
            | Fact::Withdrawn { .. }
    )
}

impl Across {
    /// Takes in an entry. They come in the journal's order, but for those of one act, which come last.
    pub fn extend(&mut self, entry: &Entry) {
        let (id, stamp) = (entry.id, entry.stamp());
        if matches!(entry.body.fact, Fact::Newer { .. }) {
            self.newer.push((entry.body.job, entry.body.site));
            return;
        }
        if let (Fact::SiteRuled { between_proofs, proof_holds }, Some(site)) = (&entry.body.fact, entry.body.site) {
            let (between_proofs, proof_holds) = (*between_proofs, *proof_holds);
            self.rules.insert(site, Rules { between_proofs, proof_holds }.within());
            return;
        }
        if let Fact::InstrumentNoted { name, serial, .. } = &entry.body.fact {
            self.instruments.note(id, name, serial);
        }
        let Some(job) = entry.job() else { return };
        match &entry.body.fact {
            Fact::JobOpened { title, .. } => {
                self.jobs.insert(id, JobThere { site: entry.body.site, title: title.clone(), done: false });
            }
            Fact::HandedBack { .. } => {
                if let Some(job) = self.jobs.get_mut(&job) {
                    job.done = true;
                }
            }
            Fact::PointAdded { label, at, switch, same_as, .. } => {
                self.points.push(PointThere {
                    id,
                    job,
                    site: entry.body.site,
                    looks: (looks(label), looks(at)),
                    label: label.clone(),
                    at: at.clone(),
                    switch: switch.clone(),
                    same_as: *same_as,
                    tags: BTreeSet::new(),
                    closings: Vec::new(),
                    found: None,
                });
                self.groups.forget();
            }
            Fact::PointDrawn { point, switch, .. } => self.at(*point, |p| p.switch = Some(switch.clone())),
            Fact::PointsParted { point, other, .. } => {
                self.parted.insert((*point.min(other), *point.max(other)));
                self.groups.forget();
            }
            Fact::TagBound { tag, point, .. } => self.at(*point, |p| _ = p.tags.insert(*tag)),
            // A tag that hung at both once shows nothing any more; what else they have in common does.
            Fact::TagGone { tag, point, .. } => self.at(*point, |p| _ = p.tags.remove(tag)),
            Fact::PointOpened { point, found, .. } => self.at(*point, |p| {
                let on = p.found == Some(Position::Closed) || *found == Position::Closed;
                p.found = Some(if on { Position::Closed } else { Position::Open });
            }),
            Fact::PointClosed { point, .. } => self.at(*point, |p| {
                p.closings.push(stamp);
                p.found = None;
            }),
            Fact::SourceAnswered { kind, found: Some(found), .. } => {
                let (what, at) = (found.what.clone(), found.at.clone());
                self.sources.push(SourceThere { id, job, kind: SiteKind::Source(*kind), what, at });
            }
            Fact::StoredAnswered { found: Some(found), seconds, kind, label, .. } => {
                let (what, at) = (found.what.clone(), found.at.clone());
                // Before there was a kind, the wait was that of the label.
                let label = if kind.is_none() { label.or(Some(*seconds)) } else { *label };
                self.sources.push(SourceThere { id, job, kind: SiteKind::Stored(*seconds, *kind, label), what, at });
            }
            Fact::IndicatorProved { indicator, works: false, .. } => self.failures.push((job, *indicator, stamp)),
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, knowing, .. } => {
                if *leads_sound && *tips_sound && *body_sound && *in_date {
                    self.checks.push((job, *instrument, stamp, knowing.clone()));
                } else {
                    self.failures.push((job, *instrument, stamp));
                }
            }
            Fact::WorkerJoined { person, duty } => {
                if *duty == Duty::Learning {
                    self.learners.insert((*person, job));
                } else {
                    self.learners.remove(&(*person, job));
                }
            }
            Fact::Withdrawn { entry, .. } => _ = self.withdrawn.insert(*entry),
            _ => {}
        }
    }

    fn at(&mut self, point: EntryId, change: impl FnOnce(&mut PointThere)) {
        if let Some(point) = self.points.iter_mut().rev().find(|p| p.id == point) {
            change(point);
        }
        self.groups.forget();
    }

    /// The points, in any job, that are or may be the same as this one, itself among them.
    pub fn same(&mut self, point: EntryId) -> Vec<&PointThere> {
        let Across { groups, points, parted, .. } = self;
        groups.of(points, parted, point).into_iter().map(|i| &points[i]).collect()
    }

    /// Points of a site, known from other jobs, that have a like label; the one at a like place first.
    pub fn like(&self, site: Option<EntryId>, label: &str, at: &str) -> Vec<&PointThere> {
        let here =
            self.points.iter().filter(|p| p.site == site && alike(&p.label, label) && !self.withdrawn.contains(&p.id));
        let mut found: Vec<&PointThere> = here.collect();
        found.sort_by_key(|p| !alike(&p.at, at));
        found
    }

    /// The points of a site that are known, one for each group, latest first, but for those of `without`; at most so many.
    pub fn points_of(&mut self, site: Option<EntryId>, without: EntryId, most: usize) -> Vec<&PointThere> {
        let mut seen = BTreeSet::new();
        let mut chosen = Vec::new();
        for i in (0..self.points.len()).rev() {
            let p = &self.points[i];
            if chosen.len() == most {
                break;
            }
            if p.site != site || self.withdrawn.contains(&p.id) || seen.contains(&i) {
                continue;
            }
            let group = self.groups.of(&self.points, &self.parted, p.id);
            if !group.iter().any(|k| self.points[*k].job == without) {
                chosen.push(i);
            }
            seen.extend(group);
        }
        chosen.into_iter().map(|i| &self.points[i]).collect()
    }

    /// A point as screens name it.
    pub fn named(&self, p: &PointThere) -> KnownPoint {
        let title = self.jobs.get(&p.job).map(|j| j.title.clone());
        KnownPoint { point: p.id, job: p.job, title, label: p.label.clone(), at: p.at.clone() }
    }

    /// The points of other jobs that are, or may be, this one of `job`; latest first.
    pub fn beside_point(&mut self, job: EntryId, point: EntryId) -> Vec<KnownPoint> {
        let same: Vec<PointThere> = self.same(point).into_iter().filter(|p| p.job != job).cloned().collect();
        same.iter().rev().filter(|p| !self.withdrawn.contains(&p.id)).map(|p| self.named(p)).collect()
    }

    /// What a site allows, where somebody has set it.
    pub fn rules_of(&self, site: EntryId) -> Option<Rules> {
        self.rules.get(&site).copied()
    }

    /// The latest closings of points in other jobs that are or may be this one: what an opening has to say that it knew of.
    pub fn closings_of(&mut self, point: EntryId) -> Vec<EntryId> {
        /// Most that are said: what lies further back is of another day.
        const MAX: usize = 40;
        let mut all: Vec<Stamp> =
            self.same(point).into_iter().filter(|p| p.id != point).flat_map(|p| p.closings.clone()).collect();
        all.sort_by_key(|c| std::cmp::Reverse(c.clock));
        all.into_iter().take(MAX).map(|c| c.id).collect()
    }

    /// What is known of an instrument's failures in any job, under any of its entries, each answered by a check or not.
    pub fn failures_of(&self, instrument: EntryId) -> Vec<EntryId> {
        let failures = self.failures.iter().filter(|(_, failed, _)| self.is_one(*failed, instrument));
        failures.map(|(.., stamp)| stamp.id).collect()
    }

    /// Whether two entries are about one instrument: by its name and serial number.
    pub fn is_one(&self, instrument: EntryId, other: EntryId) -> bool {
        self.instruments.first_of(instrument) == self.instruments.first_of(other)
    }

    /// Whether a lock of any job is on at a point that is or may be this one.
    pub fn locks_at<'a>(&mut self, point: EntryId, locks: &'a [LockRow]) -> Vec<&'a LockRow> {
        let same: BTreeSet<EntryId> = self.same(point).iter().map(|p| p.id).collect();
        locks.iter().filter(|l| l.on && l.point.is_some_and(|p| same.contains(&p) || p == point)).collect()
    }

    /// Fills in what other jobs tell to `job`: its points, its site. `locks`: every lock that is on, of all jobs.
    pub fn beside(&mut self, job: EntryId, site: Option<EntryId>, locks: &[LockRow], known: &mut Known) {
        known.rules = site.and_then(|site| self.rules.get(&site)).copied().unwrap_or_default();
        let own: Vec<EntryId> = self.points.iter().filter(|p| p.job == job).map(|p| p.id).collect();
        for point in own {
            let same = self.groups.of(&self.points, &self.parted, point);
            let others = same.iter().map(|i| &self.points[*i]).filter(|p| p.job != job);
            for other in others {
                let title = self.jobs.get(&other.job).map(|j| j.title.clone());
                known.closings.extend(other.closings.iter().map(|c| (point, *c, title.clone())));
                if other.found == Some(Position::Closed) {
                    known.found_on.insert(point);
                }
                let there = locks.iter().filter(|l| l.on && l.point == Some(other.id));
                known.held.extend(there.map(|l| (point, l.clone())));
            }
        }
        known.newer = self.newer.iter().any(|(of, at)| *of != Some(job) && (at.is_none() || *at == site));
        let there = |other: &EntryId| *other != job && self.jobs.get(other).is_some_and(|j| j.site == site);
        // A source that somebody found is there also when that job is handed back.
        let sources = self.sources.iter().filter(|s| there(&s.job) && !self.withdrawn.contains(&s.id));
        known.sources.extend(sources.map(|s| SiteSource {
            source: SourceRef::Found(s.id),
            kind: s.kind,
            what: s.what.clone(),
            at: s.at.clone(),
            told_by: ToldBy::Job(self.jobs.get(&s.job).map_or_else(String::new, |j| j.title.clone())),
        }));
        known.twins.clone_from(self.instruments.twins());
        let failures = self.failures.iter().filter(|(other, ..)| *other != job);
        known.failures.extend(failures.map(|(_, instrument, stamp)| (*instrument, *stamp)));
        let checks = self.checks.iter().filter(|(other, ..)| *other != job);
        known.checks.extend(checks.map(|(_, instrument, stamp, knew)| (*instrument, *stamp, knew.clone())));
    }

    /// Whether somebody works under supervision in a job that is not handed back, or did before they left it.
    pub fn learns(&self, person: EntryId) -> bool {
        self.learners.iter().any(|(learner, job)| *learner == person && !self.is_done(*job))
    }

    /// A point of any job.
    pub fn point(&self, id: EntryId) -> Option<&PointThere> {
        self.points.iter().rev().find(|p| p.id == id)
    }

    /// Whether a point is known at a site.
    pub fn knows(&self, point: EntryId, site: Option<EntryId>) -> bool {
        self.points.iter().any(|p| p.id == point && p.site == site)
    }

    /// Whether a job is handed back.
    pub fn is_done(&self, job: EntryId) -> bool {
        self.jobs.get(&job).is_some_and(|j| j.done)
    }
}
