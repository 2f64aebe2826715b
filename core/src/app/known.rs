//! What this device knows beside a job's own entries: see [`Known`].

use std::collections::BTreeMap;
use std::sync::Arc;

use super::NotDone;
use super::session::Session;
use crate::job::known::{SiteKind, SiteSource, ToldBy};
use crate::job::{Job, Known, age::Moment};
use crate::journal::fact::{SourceKind, SourceRef};
use crate::journal::{EntryId, Fact, Hlc, Stamp};
use crate::store::LockRow;
use crate::supply::{NodeKind, SourceSort};

/// The note that this device has forgotten what it wrote; [`Session::forgot`] while it runs.
pub(crate) const FORGOT: &str = "forgot";
/// The journal's moment before which no proof is believed here, as "ms count".
pub(crate) const NOT_BEFORE: &str = "not-before";
/// The note that another witness has another time.
pub(crate) const CLOCK_DOUBT: &str = "clock-doubt";

impl Session {
    /// Now, by all clocks of this device.
    pub(crate) fn moment(&self) -> Moment {
        let wall = self.platform.now_ms();
        let last = self.clock.last();
        let clock = if last.0 >= wall { last } else { Hlc(wall, 0) };
        let doubt = self.clock_says().is_some() || self.went_back(wall);
        Moment { device: self.key.device(), running: self.platform.running(), wall, clock, doubt }
    }

    /// The job, held against what is known beside it.
    pub(crate) fn look_at(&mut self, id: EntryId) -> Result<Job, NotDone> {
        let mut job = self.job(id)?.clone();
        let known = self.known_of(&job);
        job.known = Some(Arc::new(known));
        Ok(job)
    }

    /// See [`super::Field::known_locks`].
    pub(super) fn known_locks(&mut self) -> Vec<LockRow> {
        let on: Vec<LockRow> = self.locks.iter().filter(|l| l.on).cloned().collect();
        [on, self.aside_locks()].concat()
    }

    fn known_of(&mut self, job: &Job) -> Known {
        let mut known = Known::at(self.moment());
        let locks = [self.locks.clone(), self.aside_locks()].concat();
        self.across.beside(job.id(), job.site, &locks, &mut known);
        known.know_instruments(&self.world);
        if let Some(cut) = self.cut(job) {
            known.against = cut.against(job);
        }
        if let Some(drawn) = job.site.and_then(|site| self.sites.get(&site)).filter(|d| !d.is_empty()) {
            known.network_since = drawn.since();
            if job.zone_named.is_none() {
                let grid = drawn.nodes().iter().find(|n| n.part.sort == SourceSort::Grid).map(|n| n.part.id.clone());
                let sources = drawn.nodes().iter().filter(|n| n.part.kind == NodeKind::Source);
                // One supply of the distributor is the normal one that the job is about.
                known.sources.extend(sources.filter(|n| Some(&n.part.id) != grid.as_ref()).map(|n| {
                    let what = if n.part.label.is_empty() { &n.part.id } else { &n.part.label };
                    SiteSource {
                        source: SourceRef::Drawn(n.part.id.clone()),
                        kind: kind_of(n.part.sort),
                        what: what.clone(),
                        at: n.part.place.clone(),
                        told_by: ToldBy::Network,
                    }
                }));
            }
        }
        known.forgot = self.forgot;
        known.ahead = self.ahead();
        known.set_back = self.set_back();
        known.aside = self.asides_of(job);
        known.arrivals = self.arrivals_of(job);
        known.not_before = self.store.local_moment(NOT_BEFORE).ok().flatten();
        known
    }

    /// When openings that other devices recorded came here.
    fn arrivals_of(&self, job: &Job) -> BTreeMap<EntryId, Stamp> {
        let device = self.key.device();
        let opened = job.points.iter().filter_map(|p| p.opened.as_ref()).filter(|opened| opened.device != device);
        let arrived = opened.filter_map(|opened| {
            let (wall, running) = self.store.arrival(opened.id).ok().flatten()?;
            Some((opened.id, Stamp { id: opened.id, device, wall, running, clock: Hlc(wall, 0), ..Stamp::NONE }))
        });
        arrived.collect()
    }

    /// Fills in what whoever acts knew of other jobs: an entry has to say it, because no clock can.
    pub(super) fn say_known(&mut self, fact: &mut Fact) {
        match fact {
            Fact::InstrumentChecked { instrument, knowing, .. } => *knowing = self.across.failures_of(*instrument),
            Fact::PointOpened { point, knowing, .. } => *knowing = self.across.closings_of(*point),
            // Whatever screen a job is opened from, it is done by the rules that hold at its site.
            Fact::JobOpened { limit, company, system, nominal_millivolts, rules, .. } => {
                if let Some(held) = self.site.and_then(|site| self.world.company.get(&site)) {
                    *limit = held.opens_with(limit.as_ref(), *rules, *system, *nominal_millivolts);
                    *company = Some(Box::new((*held.rules).clone()));
                }
            }
            _ => {}
        }
    }
}

fn kind_of(sort: SourceSort) -> SiteKind {
    SiteKind::Source(match sort {
        SourceSort::Generator => SourceKind::Generator,
        SourceSort::Ups => SourceKind::Ups,
        SourceSort::Pv => SourceKind::Pv,
        SourceSort::Battery => SourceKind::Battery,
        SourceSort::SecondFeeder => SourceKind::SecondFeeder,
        SourceSort::Control => SourceKind::Control,
        SourceSort::Grid | SourceSort::Unsaid => return SiteKind::Unsaid,
    })
}
