//! Jobs held against the supply network of their site: what a job rests on, and whom a change touches.

use super::NotDone;
use super::session::Session;
use crate::job::{Job, ProofState};
use crate::journal::{EntryId, Fact};
use crate::screens::parts::{Notice, Tone};
use crate::store::JobRow;
use crate::supply::{Change, Cut, Drawn, Held, Position, held, own_locks, touched};
use crate::text;
use crate::text::screens::app as said;

impl Session {
    /// The job beside its site's network; `None` where nothing is drawn.
    pub(crate) fn cut(&mut self, job: &Job) -> Option<Cut> {
        let drawn = self.sites.get_mut(&job.site?).filter(|d| !d.is_empty())?;
        let network = drawn.network();
        Some(Cut::of(job, network, drawn.states(), &self.locks))
    }

    /// A site's network.
    pub(crate) fn drawn(&self, site: EntryId) -> Drawn {
        self.sites.get(&site).cloned().unwrap_or_default()
    }

    /// The open jobs of a site that have a work zone and a lock on, but for `without`.
    pub(super) fn held(&mut self, site: Option<EntryId>, without: Option<EntryId>) -> Result<Vec<Held>, NotDone> {
        let mut all = Vec::new();
        for job in self.at_site(site)? {
            if Some(job.id()) != without
                && job.locks_on().next().is_some()
                && let Some(cut) = self.cut(&job)
            {
                all.push(held(&job, &cut));
            }
        }
        Ok(all)
    }

    fn at_site(&mut self, site: Option<EntryId>) -> Result<Vec<Job>, NotDone> {
        let open = self.store.jobs()?.into_iter().filter(|row| !row.done);
        let mut jobs = Vec::new();
        for row in open {
            let job = self.job(row.id)?;
            if job.site == site && !job.zone.is_empty() {
                jobs.push(job.clone());
            }
        }
        Ok(jobs)
    }

    /// Notes whose work zone is no longer cut once `fact` is kept. The job that keeps it knows that by itself.
    pub(super) fn note_touched(&mut self, site: EntryId, by: Option<&Job>, fact: &Fact) -> Result<(), NotDone> {
        let Some(drawn) = self.sites.get_mut(&site).filter(|d| !d.is_empty()) else { return Ok(()) };
        let network = drawn.network();
        let link = |id: EntryId| by.and_then(|job| job.point(id)?.switch.clone());
        let comes_off = |lock: EntryId| {
            let (job, on) = (by?, by?.lock(lock)?.on);
            let last = !job.locks_on().any(|l| l.on == on && l.stamp.id != lock);
            job.switch_of(on).filter(|_| last).cloned()
        };
        // The job that acts is the first of the list; nobody in it if the site's network itself changes.
        let change = match fact {
            Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => {
                comes_off(*lock).map(|link| Change::LockRemoved { link, by: 0 })
            }
            Fact::PointClosed { point, .. } => link(*point).map(|link| Change::Closed { link }),
            Fact::LinkSeen { link, position: Position::Closed } => Some(Change::Closed { link: link.clone() }),
            Fact::NodeNoted { node } => Some(Change::Found { nodes: vec![node.clone()], links: Vec::new() }),
            Fact::LinkNoted { link } => Some(Change::Found { nodes: Vec::new(), links: vec![link.clone()] }),
            _ => None,
        };
        let Some(change) = change else { return Ok(()) };
        let acting = by.map(|job| Held { job: job.title.clone(), own: own_locks(job), ..Held::default() });
        let first = usize::from(acting.is_some());
        let mut all: Vec<Held> = acting.into_iter().collect();
        for job in self.at_site(Some(site))?.iter().filter(|job| by.is_none_or(|by| by.id() != job.id())) {
            all.extend(self.cut(job).map(|cut| held(job, &cut)));
        }
        let found = touched(&network, &all, &change)?;
        self.touched.extend(found.into_iter().filter(|t| t.job >= first).map(|t| text::touched(&t)));
        Ok(())
    }

    /// Says at the end of an act whom it touched.
    pub(super) fn tell_touched(&mut self) {
        let touched = std::mem::take(&mut self.touched);
        if touched.is_empty() {
            return;
        }
        let touches = said::touches_other_work(touched.into_iter().reduce(text::sentences).unwrap_or_default());
        let text = match self.notice.take() {
            Some(notice) => text::sentences(notice.text, touches),
            None => touches,
        };
        self.notice = Some(Notice { tone: Tone::Forbid, text });
    }

    /// A job in the list says no more than its own screens do.
    pub(super) fn hold_against_all(&mut self, rows: &mut [JobRow]) {
        /// Most jobs whose next step is worked out anew; of more, only what stands proved is.
        const MAX: usize = 24;
        for (n, row) in rows.iter_mut().filter(|row| !row.done).enumerate() {
            if n >= MAX && row.proof != ProofState::Proved {
                continue;
            }
            match self.look_at(row.id) {
                Ok(job) => {
                    // An indication is not taken back by what is known beside the job.
                    if row.proof == ProofState::Proved {
                        row.proof = ProofState::of(&job);
                    }
                    row.next = job.next_listed();
                }
                Err(_) => row.proof = if row.proof == ProofState::Stop { row.proof } else { ProofState::Live },
            }
        }
    }
}
