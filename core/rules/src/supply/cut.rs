//! What the network says to one job: is its work zone cut by the locks that are on, by the points that are planned, and what a person
//! has said about the ways that are left.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::{Check, Held, Network, Position, States, Uncut, check};
use crate::job::Job;
use crate::journal::EntryId;
use crate::journal::fact::On;
use crate::point::LockRow;

/// A job beside the network of its site.
#[derive(Debug, Clone)]
pub struct Cut {
    /// The network.
    pub network: Arc<Network>,
    /// Where links were last seen.
    pub states: States,
    /// The links that the job's points are, whether they are open yet or not.
    pub planned: Vec<String>,
    /// The links that are locked now: by this job, and by others at the same site.
    pub locked: Vec<String>,
    /// Locks of other jobs at links of this job: the link and the lock.
    pub shared: Vec<(String, LockRow)>,
    /// With the planned points locked.
    pub plan: Option<Check>,
    /// With what is locked now.
    pub now: Option<Check>,
}

impl Cut {
    /// Holds `job` against the network of its site. `locks`: every lock that is on, of all jobs.
    pub fn of(job: &Job, network: Arc<Network>, states: &States, locks: &[LockRow]) -> Cut {
        let mine: BTreeSet<&String> = job.points.iter().filter_map(|p| p.switch.as_ref()).collect();
        let mut locked: BTreeSet<String> = own_locks(job).into_iter().collect();
        let mut shared = Vec::new();
        for lock in locks.iter().filter(|l| l.on && l.site == job.site && l.job != job.id()) {
            let Some(switch) = &lock.switch else { continue };
            // A lock of another counts where this job has opened the same point: two jobs that share a point share its locks.
            locked.insert(switch.clone());
            if mine.contains(switch) {
                shared.push((switch.clone(), lock.clone()));
            }
        }
        let planned: Vec<String> = mine.into_iter().cloned().collect();
        let locked: Vec<String> = locked.into_iter().collect();
        let zone = &job.zone;
        let held = |locks: &[String]| if zone.is_empty() { None } else { check(&network, zone, locks).ok() };
        let all: Vec<String> = planned.iter().chain(&locked).cloned().collect::<BTreeSet<_>>().into_iter().collect();
        let (plan, now) = (held(&all), held(&locked));
        Cut { states: states.clone(), planned, plan, now, locked, shared, network }
    }

    /// What keeps the zone from being cut and no person has answered for: a key and the finding each.
    pub fn unanswered(&self, job: &Job, answer: &Option<Check>) -> Vec<(String, Uncut)> {
        let Some(check) = answer else {
            // The zone is named and not in the network any more: nothing is shown.
            let gone = (job.zone.join(" "), Uncut::ZoneGone { zone: job.zone.clone() });
            return if job.zone.is_empty() { Vec::new() } else { vec![gone] };
        };
        ways(check).into_iter().filter(|(key, _)| !job.differs.iter().any(|d| d.ways.contains(key))).collect()
    }

    /// Where links stand: the job's points as it left them, the others as they were last seen.
    pub fn standing(&self, job: &Job) -> States {
        let mut states = self.states.clone();
        for point in &job.points {
            if let Some(switch) = &point.switch {
                states.insert(switch.clone(), if point.opened.is_some() { Position::Open } else { Position::Closed });
            }
        }
        for locked in &self.locked {
            states.insert(locked.clone(), Position::Open);
        }
        states
    }

    /// The same as before the job: its own points stand as they normally do.
    pub fn standing_before(&self, job: &Job) -> States {
        let mut states = self.states.clone();
        for point in &job.points {
            if let Some(switch) = &point.switch {
                states.remove(switch);
            }
        }
        states
    }

    /// The first reason why work may not rest on the locks that are on; `None` if nothing stands against it.
    pub fn against(&self, job: &Job) -> Option<Box<Uncut>> {
        self.unanswered(job, &self.now).into_iter().next().map(|(_, why)| Box::new(why))
    }
}

/// The links on which a job has locks of its own.
pub fn own_locks(job: &Job) -> Vec<String> {
    let locked = |point: EntryId| job.locks_on().any(|l| l.on == On::Point(point));
    let points = job.points.iter().filter(|p| p.opened.is_some() && locked(p.stamp.id));
    points.filter_map(|p| p.switch.clone()).collect()
}

/// A job as [`super::touched`] and [`super::restore`] want it.
pub fn held(job: &Job, cut: &Cut) -> Held {
    let own = own_locks(job);
    let shared = cut.shared.iter().map(|(link, _)| link.clone()).filter(|link| !own.contains(link)).collect();
    Held { job: format!("{}, {}", job.title, job.place), zone: job.zone.clone(), own, shared }
}

/// The ways that are left and the parts that are not shown: a key that stays the same for the same way, and the finding.
pub fn ways(check: &Check) -> Vec<(String, Uncut)> {
    let paths = check.paths.iter().map(|p| (p.way.join(" "), Uncut::Way(p.clone())));
    paths.chain(check.not_shown.iter().map(|d| (d.id.clone(), Uncut::Doubt(d.why.clone())))).collect()
}
