//! The one way to keep a fact: through the gate, signed, into the journal, with all others of the act or not at all.

use super::session::{Session, draw};
use super::{FieldError, NotDone};
use crate::job::Job;
use crate::job::age::Moment;
use crate::job::gate::Gate;
use crate::journal::{Body, Entry, EntryId, Fact, VERSION};
use crate::store::Head;
use crate::supply::{Cut, Held};

impl Session {
    /// See [`super::Field::keep`].
    pub(super) fn keep_alone(&mut self, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, FieldError> {
        let before = self.acting.replace(by);
        self.hands.tool = true;
        let kept = match (&fact, self.site, job) {
            (
                Fact::NodeNoted { .. }
                | Fact::LinkNoted { .. }
                | Fact::PartGone { .. }
                | Fact::LinkSeen { .. }
                | Fact::SiteRuled { .. }
                | Fact::CompanyRuled { .. },
                Some(site),
                None,
            ) => self.keep_at(site, fact),
            _ => self.keep(job, fact),
        };
        let done = kept.and_then(|id| self.commit().map(|()| id));
        self.acting = before;
        self.hands.tool = false;
        match done {
            Ok(id) => {
                if self.world.sites.contains_key(&id) {
                    self.site = Some(id);
                }
                self.touched.clear();
                self.stirred += 1;
                Ok(id)
            }
            Err(why) => {
                let error = FieldError::of(why, &self.world);
                self.reload().map_err(|why| FieldError::of(why.into(), &self.world))?;
                Err(error)
            }
        }
    }

    /// Keeps a fact about a site's supply network, likewise.
    pub(crate) fn keep_at(&mut self, site: EntryId, fact: Fact) -> Result<EntryId, NotDone> {
        self.remembers()?;
        if self.stale {
            self.reload()?;
        }
        let drawn = self.sites.get(&site).cloned().unwrap_or_default();
        self.gate(None, None, &[], self.moment()).network(site, &drawn, &fact)?;
        self.note_touched(site, None, &fact)?;
        let ruled = matches!(fact, Fact::CompanyRuled { .. });
        let kept = self.seal(Some(site), None, fact)?;
        if ruled {
            self.take_up_everywhere()?;
        }
        Ok(kept)
    }

    /// Keeps a fact: through the gate, signed, into the job. On disk at the end of the act, with all others of the act.
    pub(crate) fn keep(&mut self, job: Option<EntryId>, mut fact: Fact) -> Result<EntryId, NotDone> {
        self.remembers()?;
        if self.stale {
            self.reload()?;
        }
        self.say_known(&mut fact);
        let named = match &fact {
            Fact::Withdrawn { entry, .. } => self.store.entry(*entry)?,
            _ => None,
        };
        job.map_or(Ok(()), |id| self.take_up_company(id))?;
        let current = job.map(|id| self.look_at(id)).transpose()?;
        let cut = current.as_ref().and_then(|job| self.cut(job));
        let held = match (&current, &fact) {
            (Some(job), Fact::PointClosed { .. }) => self.held(job.site, Some(job.id()))?,
            _ => Vec::new(),
        };
        let gate = self.gate(named.as_ref(), cut.as_ref(), &held, self.moment());
        match &current {
            None => gate.alone(&fact),
            Some(job) => gate.inside(job, &fact),
        }?;
        let site = match (&current, &fact) {
            (Some(job), _) => job.site,
            (None, Fact::JobOpened { .. }) => self.site,
            (None, _) => None,
        };
        if let Some(job) = &current
            && let Some(site) = job.site
        {
            self.note_touched(site, Some(job), &fact)?;
        }
        self.seal(site, job, fact)
    }

    fn gate<'a>(&'a self, named: Option<&'a Entry>, cut: Option<&'a Cut>, held: &'a [Held], now: Moment) -> Gate<'a> {
        let Session { world, acting, locks, across, .. } = self;
        Gate { world, acting: *acting, locks, named, cut, held, across, now }
    }

    /// Signs a fact that passed the gate, and takes it in.
    pub(super) fn seal(&mut self, site: Option<EntryId>, job: Option<EntryId>, fact: Fact) -> Result<EntryId, NotDone> {
        let wall = self.platform.now_ms();
        let reaches_back = matches!(fact, Fact::Withdrawn { .. });
        let mut clock = self.clock;
        let body = Body {
            version: VERSION,
            device: self.key.device(),
            seq: self.head.seq + 1,
            clock: clock.tick(wall),
            wall,
            zone: self.platform.offset_minutes(wall),
            running: self.platform.running(),
            prev: self.head.id,
            after: job.and_then(|id| self.jobs.get(&id)).and_then(|j| j.heard.last_of(self.key.device())),
            site,
            job,
            by: self.acting,
            signed_on: self.signed_on(),
            practice: false,
            seen: job.and_then(|id| self.jobs.get(&id)).map(|j| j.heard.to_say(self.key.device())).unwrap_or_default(),
            fact,
        };
        let entry = Entry::seal(body, &self.key, &|count| self.platform.random(count))?;
        self.note_written(&entry);
        self.clock = clock;
        self.head = Head { seq: entry.body.seq, id: entry.id };
        self.world.extend(&entry);
        draw(&mut self.sites, &entry);
        self.across.extend(&entry);
        let id = entry.id;
        if let Some(job) = job {
            match self.jobs.get_mut(&job) {
                Some(known) if !reaches_back => known.extend(&entry),
                _ => {
                    self.jobs.remove(&job);
                }
            }
        }
        let fact = entry.body.fact.clone();
        self.pending.push(entry);
        if let Some(job) = job {
            self.note_off(job, &fact);
        }
        Ok(id)
    }

    /// Writes what the act kept, in one transaction.
    pub(super) fn commit(&mut self) -> Result<(), NotDone> {
        if self.pending.is_empty() {
            return Ok(());
        }
        let mut ids: Vec<EntryId> = self.pending.iter().filter_map(Entry::job).collect();
        ids.sort_unstable();
        ids.dedup();
        let jobs = ids.into_iter().map(|id| self.job(id).cloned()).collect::<Result<Vec<Job>, NotDone>>()?;
        self.store.append(&self.pending, &jobs.iter().collect::<Vec<_>>())?;
        self.pending.clear();
        self.keep_head();
        // The act is on disk whatever happens now: what cannot be read again is read before the next act.
        self.stale = self.load_locks().is_err();
        Ok(())
    }
}
