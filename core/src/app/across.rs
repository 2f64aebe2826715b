//! What the screens say of the points and padlocks that jobs share: see [`crate::site`].

use std::collections::BTreeSet;

use super::NotDone;
use super::session::Session;
use crate::job::Job;
use crate::job::steps::{Stage, Step};
use crate::journal::{EntryId, Fact};
use crate::names::alike;
use crate::screens::Route;
use crate::screens::context::SiteKnown;
use crate::site::{KnownPoint, padlocks};
use crate::store::LockRow;

/// Most points of other jobs that are offered: more would not be read, and what is typed is looked up among all of them.
const MAX_POINTS: usize = 24;
/// Most points of other jobs that are named as the same as one of this job.
const MAX_ALIKE: usize = 6;
/// Most jobs whose words are offered again, and most that are looked through for them.
const MAX_BEFORE: usize = 3;
const MAX_LOOKED_AT: usize = 12;
/// Most sites whose rules are listed.
const MAX_SITES: usize = 40;

impl Session {
    /// What other jobs tell of the points on the screen that is shown.
    pub(super) fn site_known(&mut self, job: Option<&Job>) -> SiteKnown {
        let mut known = SiteKnown { before: self.jobs_before(job), ..SiteKnown::default() };
        match (self.route, job) {
            (Route::Rules, _) => {
                let sites = self.world.sites.keys().take(MAX_SITES);
                known.rules = sites.filter_map(|site| Some((*site, self.across.rules_of(*site)?))).collect();
            }
            (Route::Step(id, Step::Points), Some(job)) => {
                let points: Vec<_> = self.across.points_of(job.site, id, MAX_POINTS).into_iter().cloned().collect();
                known.points = points.iter().map(|p| self.across.named(p)).collect();
                known.typed = self.typed_point(job);
                for point in &job.points {
                    let beside = self.across.beside_point(id, point.stamp.id).into_iter().next();
                    known.alike.extend(beside.map(|p| (point.stamp.id, p)));
                }
            }
            (Route::Step(id, Step::Isolate(point)), Some(_)) => {
                let beside = self.across.beside_point(id, point).into_iter().take(MAX_ALIKE);
                known.alike = beside.map(|p| (point, p)).collect();
            }
            (Route::Lock(id, lock), Some(_)) => known.padlock = self.padlock_beside(id, lock).unwrap_or_default(),
            _ => {}
        }
        known
    }

    /// The latest jobs whose words are worth offering again on the screen that is shown.
    fn jobs_before(&mut self, job: Option<&Job>) -> Vec<Job> {
        match (self.route, job) {
            (Route::NewJob, _) => {}
            (Route::Step(_, step), Some(_)) if matches!(step.stage(), Stage::Plan | Stage::Isolate | Stage::Prove) => {}
            _ => return Vec::new(),
        }
        // An instrument goes from site to site.
        let anywhere = matches!(self.route, Route::Step(_, Step::Instruments));
        // A list that cannot be read is no reason to show nothing.
        let latest = self.store.latest_jobs(MAX_LOOKED_AT).unwrap_or_default();
        let mut before = Vec::new();
        for id in latest.into_iter().filter(|id| job.is_none_or(|job| job.id() != *id)) {
            let Ok(earlier) = self.job(id) else { continue };
            // Words of a practice board are of no use at a real one.
            if job.is_none_or(|job| (anywhere || job.site == earlier.site) && job.practice == earlier.practice) {
                before.push(earlier.clone());
            }
            if before.len() == MAX_BEFORE {
                break;
            }
        }
        before
    }

    /// The known point that the form for a new one is about: the one that was chosen, or the one whose label and place were typed.
    fn typed_point(&self, job: &Job) -> Option<KnownPoint> {
        let there = |p: &&crate::site::PointThere| p.job != job.id();
        if let Ok(chosen) = self.draft("same-as").parse::<EntryId>() {
            return self.point_known(job, chosen);
        }
        let (label, at) = (self.draft("label"), self.draft("at"));
        if label.trim().is_empty() || at.trim().is_empty() {
            return None;
        }
        let like = self.across.like(job.site, &label, &at);
        like.into_iter().filter(there).find(|p| alike(&p.at, &at)).map(|p| self.across.named(p))
    }

    /// A point of another job at this job's site.
    pub(crate) fn point_known(&self, job: &Job, point: EntryId) -> Option<KnownPoint> {
        let found = self.across.point(point).filter(|p| p.site == job.site && p.job != job.id())?;
        Some(self.across.named(found))
    }

    /// The points of other jobs that are, or may be, this one; latest first.
    pub(crate) fn beside_point(&mut self, job: EntryId, point: EntryId) -> Vec<KnownPoint> {
        self.across.beside_point(job, point)
    }

    /// Where else the padlock of this lock is on, in other jobs: one cable or bar goes through all, and it comes off all.
    pub(crate) fn padlock_beside(&mut self, job: EntryId, lock: EntryId) -> Result<Vec<LockRow>, NotDone> {
        let Some(own) = self.job(job)?.lock(lock).cloned() else { return Ok(Vec::new()) };
        // Handed over in one job it may have another owner there; its label tells, and that one cable goes through both.
        let rows: Vec<LockRow> = self.locks.iter().filter(|l| l.on && alike(&l.label, &own.label)).cloned().collect();
        let mut ties = Vec::new();
        for row in &rows {
            let through = self.job(row.job)?.lock(row.fit).and_then(|l| l.through);
            ties.extend(through.map(|through| (row.fit, through)));
        }
        let mut one = BTreeSet::from([lock]);
        loop {
            let more = ties.iter().flat_map(|(a, b)| [(a, b), (b, a)]).filter(|(a, _)| one.contains(a));
            let more: Vec<EntryId> = more.map(|(_, b)| *b).filter(|b| !one.contains(b)).collect();
            if more.is_empty() {
                break;
            }
            one.extend(more);
        }
        Ok(rows.into_iter().filter(|l| l.job != job && one.contains(&l.fit)).collect())
    }

    /// The locks that came off in the act under way: what is asked next in the same act must not find them on.
    pub(super) fn note_off(&mut self, job: EntryId, fact: &Fact) {
        if !matches!(fact, Fact::LockRemoved { .. } | Fact::LockForced { .. }) {
            return;
        }
        let on: BTreeSet<EntryId> =
            self.job(job).map(|j| j.locks_on().map(|l| l.stamp.id).collect()).unwrap_or_default();
        self.locks.iter_mut().filter(|l| l.job == job).for_each(|l| l.on &= on.contains(&l.fit));
    }

    /// The points, in any job, that are or may be the one at which this tag hangs or hung.
    pub(super) fn points_of_tag(&mut self, places: &[crate::store::TagRow]) -> Vec<KnownPoint> {
        let mut seen = BTreeSet::new();
        let mut all = Vec::new();
        for place in places {
            let same: Vec<_> = self.across.same(place.point).into_iter().cloned().collect();
            all.extend(same.iter().filter(|p| seen.insert(p.id)).map(|p| self.across.named(p)));
        }
        all
    }

    /// Whether two points, of any jobs, are or may be one.
    pub(crate) fn may_be_one(&mut self, one: EntryId, other: EntryId) -> bool {
        self.across.same(one).iter().any(|p| p.id == other)
    }

    /// Whose padlock of this label is on, and where.
    pub(crate) fn padlocks(&self, owner: EntryId, label: &str) -> Vec<LockRow> {
        padlocks(&self.locks, owner, label).into_iter().cloned().collect()
    }
}
