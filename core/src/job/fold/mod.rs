//! From entries to a job.

mod locks;
mod tags;

use std::collections::BTreeSet;

use super::{Checked, Circuit, Deviation, Differs, Heard, Job, Photo, Source, Stored, Told, WorkTurn, Worker};
use crate::journal::fact::{Duty, On};
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::point::{LockBox, Point};
use crate::prove::{Run, Taken, Voided};

impl Job {
    /// The job that `entries` tell of, or `None` if none of them opens one. Order of arrival does not matter: entries are
    /// read in the journal's total order.
    pub fn fold(entries: &[Entry]) -> Option<Job> {
        let mut sorted: Vec<&Entry> = entries.iter().collect();
        sorted.sort_by_key(|e| (e.order(), e.id));
        sorted.dedup_by_key(|e| e.id);
        let withdrawn: BTreeSet<EntryId> = sorted
            .iter()
            .filter_map(|e| match e.body.fact {
                Fact::Withdrawn { entry, .. } if !locked_meanwhile(&sorted, e, entry) => Some(entry),
                _ => None,
            })
            .collect();
        let opened = sorted.iter().position(|e| matches!(e.body.fact, Fact::JobOpened { .. }))?;
        let mut job = Job::opened(sorted[opened])?;
        for entry in sorted {
            job.heard.note(entry);
            job.note_void(entry);
            if !withdrawn.contains(&entry.id) {
                job.apply(entry);
            }
        }
        Some(job)
    }

    /// One more entry at the end of the order. Not for a withdrawal, which reaches back: fold again for that.
    pub fn extend(&mut self, entry: &Entry) {
        self.heard.note(entry);
        self.note_void(entry);
        self.apply(entry);
    }

    fn opened(entry: &Entry) -> Option<Job> {
        let Fact::JobOpened {
            title,
            place,
            equipment,
            scope,
            system,
            earthing,
            order,
            nominal_millivolts,
            dead_limit_millivolts,
            tolerance,
        } = &entry.body.fact
        else {
            return None;
        };
        Some(Job {
            stamp: entry.stamp(),
            site: entry.body.site,
            title: title.clone(),
            place: place.clone(),
            equipment: equipment.clone(),
            scope: scope.clone(),
            system: *system,
            earthing: *earthing,
            order: *order,
            nominal: *nominal_millivolts,
            dead_limit: *dead_limit_millivolts,
            tolerance: *tolerance,
            zone: Vec::new(),
            differs: Vec::new(),
            permit: None,
            workers: Vec::new(),
            told: Vec::new(),
            barriers: Vec::new(),
            sources: Vec::new(),
            stored: Vec::new(),
            points: Vec::new(),
            boxes: Vec::new(),
            locks: Vec::new(),
            circuits: Vec::new(),
            no_circuits: None,
            instruments: Vec::new(),
            photos: Vec::new(),
            covers: Vec::new(),
            no_covers: None,
            runs: Vec::new(),
            voided: Vec::new(),
            causes: Vec::new(),
            work: Vec::new(),
            finished: None,
            presence: Vec::new(),
            rotation: None,
            shift: None,
            handed: None,
            deviations: Vec::new(),
            round: entry.body.clock,
            heard: Heard::default(),
            withdrawn: Vec::new(),
        })
    }

    /// What this entry ends. Read for withdrawn entries too: a proof that ended stays ended, whatever is said later.
    fn note_void(&mut self, entry: &Entry) {
        let why = match &entry.body.fact {
            Fact::LockRemoved { lock } | Fact::LockForced { lock, .. } => {
                let at = self.lock(*lock).map(|l| self.lock_place(l.on)).unwrap_or_default();
                format!("A lock came off {at}.")
            }
            Fact::StoredAnswered { found: Some(found), .. } => format!("Stored energy was found: {}.", found.what),
            Fact::SourceAnswered { found: Some(found), .. } => format!("Another source was found: {}.", found.what),
            Fact::PointAdded { label, .. } => format!("A point of isolation was added: {label}."),
            Fact::PointClosed { point } => {
                format!("{} was closed.", self.point(*point).map_or("A point", |p| p.label.as_str()))
            }
            Fact::ScopeChanged { .. } => "The scope of the job changed.".into(),
            Fact::ZoneNoted { .. } => "The work zone in the supply network changed.".into(),
            Fact::ShiftTaken { .. } => "The shift changed.".into(),
            Fact::WorkLeft { .. } => "The work was left.".into(),
            Fact::NeutralParted { what } => format!("A neutral was parted: {what}."),
            Fact::Withdrawn { .. } => "An entry of this job was withdrawn.".into(),
            // What the indicator said is worth no more than the indicator: doubt about it reaches back over the whole run.
            Fact::IndicatorProved { run: None, works: false, .. } => {
                "An indicator did not respond as it should.".into()
            }
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. }
                if !(*leads_sound && *tips_sound && *body_sound && *in_date)
                    && self.run().is_some_and(|r| r.indicator == *instrument) =>
            {
                "The indicator of this test was found not fit for use.".into()
            }
            _ => return,
        };
        self.voided.push(Voided { stamp: entry.stamp(), why });
    }

    /// What a lock is on, in words.
    pub fn lock_place(&self, on: On) -> String {
        match on {
            On::Point(id) => self.point(id).map(|p| p.label.clone()),
            On::Box(id) => self.boxes.iter().find(|b| b.stamp.id == id).map(|b| b.label.clone()),
        }
        .unwrap_or_else(|| "a point that this device does not know".into())
    }

    fn apply(&mut self, entry: &Entry) {
        let stamp = entry.stamp();
        match &entry.body.fact {
            Fact::ScopeChanged { scope, .. } => {
                self.scope.clone_from(scope);
                self.finished = None;
                self.round = stamp.clock;
                // Circuits that came on again have to be shed again.
                for circuit in self.circuits.iter_mut().filter(|c| c.on.is_some()) {
                    (circuit.off, circuit.on) = (None, None);
                }
            }
            Fact::ZoneNoted { zone } => self.zone.clone_from(zone),
            Fact::CutDiffers { ways, why } => {
                self.differs.push(Differs { stamp, ways: ways.clone(), why: why.clone() });
            }
            Fact::PermitNoted { reference, why_none } => {
                let said = match reference {
                    Some(reference) => Ok(reference.clone()),
                    None => Err(why_none.clone().unwrap_or_default()),
                };
                self.permit = Some((stamp, said));
            }
            Fact::WorkerJoined { person, duty } => self.join(stamp, *person, *duty),
            Fact::WorkerLeft { person } => {
                if let Some(worker) = self.workers.iter_mut().find(|w| w.person == *person && w.left.is_none()) {
                    worker.left = Some(stamp);
                }
            }
            Fact::Told { who, how, about } => {
                self.told.push(Told { stamp, who: who.clone(), how: how.clone(), about: *about });
            }
            Fact::BarrierPlaced { what, at } => self.barriers.push((stamp, what.clone(), at.clone())),
            Fact::SourceAnswered { kind, found, looked } => {
                self.sources.push(Source { stamp, kind: *kind, found: found.clone(), looked: looked.clone() });
            }
            Fact::StoredAnswered { found, seconds, looked } => {
                let (found, seconds, looked) = (found.clone(), *seconds, looked.clone());
                self.stored.push(Stored { stamp, found, seconds, looked });
            }
            Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open } => {
                self.points.push(Point {
                    stamp,
                    label: label.clone(),
                    at: at.clone(),
                    kind: *kind,
                    lockable: *lockable,
                    poles: poles.clone(),
                    cuts: *cuts,
                    switch: switch.clone(),
                    stays_open: *stays_open,
                    opened: None,
                    closed: None,
                    closings: Vec::new(),
                    sign: None,
                    tags: Vec::new(),
                })
            }
            Fact::PointDrawn { point, switch, stays_open } => self.at_point(*point, |p| {
                (p.switch, p.stays_open) = (Some(switch.clone()), *stays_open);
            }),
            Fact::TagBound { .. } | Fact::TagGone { .. } | Fact::TagRead { .. } => self.tag(stamp, &entry.body.fact),
            Fact::BoxPlaced { label, at } => {
                self.boxes.push(LockBox { stamp, label: label.clone(), at: at.clone() });
            }
            Fact::CircuitListed { label, serves } => {
                let (label, serves) = (label.clone(), serves.clone());
                self.circuits.push(Circuit { stamp, label, serves, off: None, on: None });
            }
            Fact::NoCircuits { why } => self.no_circuits = Some((stamp, why.clone())),
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, note } => {
                let faults = [
                    (*leads_sound, "leads are damaged"),
                    (*tips_sound, "tips are not fit for use"),
                    (*body_sound, "case is damaged"),
                    (*in_date, "its check is out of date"),
                ];
                let faults = faults.iter().filter(|(sound, _)| !sound).map(|(_, fault)| *fault).collect();
                self.instruments.retain(|c| c.instrument != *instrument);
                self.instruments.push(Checked { stamp, instrument: *instrument, faults, note: note.clone() });
            }
            Fact::PhotoTaken { sha256, length, media, of, note, tags, doubts, copies } => {
                let (sha256, media, copies) = (sha256.clone(), media.clone(), copies.clone());
                let (note, tags, doubts) = (note.clone(), tags.clone(), doubts.clone());
                self.photos.push(Photo { stamp, sha256, length: *length, media, copies, of: *of, note, tags, doubts });
            }
            Fact::Deviated { step, why } => {
                self.deviations.push(Deviation { stamp, step: step.clone(), why: why.clone() });
            }
            Fact::Withdrawn { entry, why } => self.withdrawn.push((stamp, *entry, why.clone())),
            Fact::ShiftOffered { to, told } => {
                self.shift = stamp.by.map(|from| (stamp.id, from, *to, told.clone()));
            }
            Fact::ShiftTaken { offer, .. } => self.take_shift(stamp, *offer),
            _ => {
                self.apply_lock(entry, stamp);
                self.apply_proof(entry, stamp);
                self.apply_switching(entry, stamp);
            }
        }
    }

    fn join(&mut self, stamp: Stamp, person: EntryId, duty: Duty) {
        // One person answers for the isolation: who takes that on takes it from whoever had it.
        if duty == Duty::InCharge {
            for worker in self.workers.iter_mut().filter(|w| w.left.is_none() && w.duty == Duty::InCharge) {
                worker.duty = Duty::Working;
            }
        }
        match self.workers.iter_mut().find(|w| w.person == person && w.left.is_none()) {
            Some(worker) => worker.duty = duty,
            None => self.workers.push(Worker { person, duty, joined: stamp, left: None }),
        }
    }

    fn take_shift(&mut self, stamp: Stamp, offer: EntryId) {
        if let Some((id, _, to, _)) = self.shift.clone()
            && id == offer
        {
            self.shift = None;
            self.join(stamp, to, Duty::InCharge);
        }
    }

    fn apply_proof(&mut self, entry: &Entry, stamp: Stamp) {
        match &entry.body.fact {
            Fact::IndicatorProved { run: None, indicator, on, works: true } => self.runs.push(Run {
                // What ended the proofs on another device, unknown to this one, ends this one too.
                unseen: self.voided.iter().find(|v| !self.heard.saw(&stamp, &v.stamp)).map(|v| v.why.clone()),
                before: stamp,
                indicator: *indicator,
                on: *on,
                readings: Vec::new(),
                reference: None,
                discharge: Vec::new(),
                after: None,
            }),
            Fact::IndicatorProved { run: Some(run), indicator, on, works } => {
                // The first answer counts, but one that it failed counts whenever it comes; another indicator proves nothing.
                if let Some(run) = self.runs.iter_mut().find(|r| r.id() == *run)
                    && run.indicator == *indicator
                    && (run.after.is_none() || !works)
                {
                    run.after = Some((stamp, *on, *works));
                }
            }
            Fact::ReadingTaken { run, first, then, reading } => {
                if let Some(run) = self.runs.iter_mut().find(|r| r.id() == *run) {
                    let (first, then) = (first.clone(), then.clone());
                    run.readings.push(Taken { stamp, first, then, reading: *reading });
                }
            }
            Fact::ReferenceProved { run, how, holds } => {
                if let Some(run) = self.runs.iter_mut().find(|r| r.id() == *run)
                    && !matches!(run.reference, Some((_, _, false)))
                {
                    run.reference = Some((stamp, how.clone(), *holds));
                }
            }
            Fact::DischargeRead { run, of, reading } => {
                if let Some(run) = self.runs.iter_mut().find(|r| r.id() == *run) {
                    run.discharge.push((stamp, *of, *reading));
                }
            }
            Fact::CauseNoted { cause } => self.causes.push((stamp, cause.clone())),
            Fact::WorkBegan { run } => self.work.push((stamp, WorkTurn::Began(*run))),
            Fact::WorkLeft { why } => self.work.push((stamp, WorkTurn::Left(why.clone()))),
            Fact::WorkFinished { clear } => {
                self.finished = Some((stamp, clear.clone()));
                self.work.push((stamp, WorkTurn::Finished));
            }
            _ => {}
        }
    }

    fn apply_switching(&mut self, entry: &Entry, stamp: Stamp) {
        match &entry.body.fact {
            Fact::CircuitOff { circuit, seen } => self.circuit(*circuit, |c| {
                (c.off, c.on) = (Some((stamp, seen.clone())), None);
            }),
            Fact::CircuitOn { circuit } => self.circuit(*circuit, |c| c.on = Some(stamp)),
            Fact::PointOpened { point, .. } => self.open(*point, stamp),
            Fact::PointClosed { point } => self.at_point(*point, |p| {
                (p.opened, p.closed) = (None, Some(stamp));
                p.closings.push(stamp);
            }),
            Fact::SignPosted { point } => self.at_point(*point, |p| p.sign = Some(stamp)),
            Fact::SignRemoved { point } => self.at_point(*point, |p| p.sign = None),
            Fact::CoverOff { what } => self.covers.push((stamp, what.clone(), None)),
            Fact::NoCovers { why } => self.no_covers = Some((stamp, why.clone())),
            Fact::CoverBack { cover } => {
                if let Some(row) = self.covers.iter_mut().find(|(s, ..)| s.id == *cover) {
                    row.2 = Some(stamp);
                }
            }
            Fact::PresenceRead { first, then, reading } => {
                let (first, then) = (first.clone(), then.clone());
                self.presence.push(Taken { stamp, first, then, reading: *reading });
            }
            Fact::RotationRead { rotation, how } => self.rotation = Some((stamp, *rotation, how.clone())),
            Fact::HandedBack { to, note, mark } => {
                self.handed = Some((stamp, to.clone(), note.clone(), mark.clone()));
            }
            _ => {}
        }
    }

    /// A point is open if who opened it knew of every closing; if not, nobody knows how it stands.
    fn open(&mut self, point: EntryId, stamp: Stamp) {
        let heard = &self.heard;
        let Some(at) = self.points.iter_mut().find(|p| p.stamp.id == point) else { return };
        if at.closings.iter().all(|closing| heard.saw(&stamp, closing)) {
            (at.opened, at.closed) = (Some(stamp), None);
        } else {
            at.opened = None;
            let why = format!("{} was opened on one device and closed on another that did not know of it.", at.label);
            self.voided.push(Voided { stamp, why });
        }
    }

    fn circuit(&mut self, id: EntryId, change: impl FnOnce(&mut Circuit)) {
        if let Some(circuit) = self.circuits.iter_mut().find(|c| c.stamp.id == id) {
            change(circuit);
        }
    }

    fn at_point(&mut self, id: EntryId, change: impl FnOnce(&mut Point)) {
        if let Some(point) = self.points.iter_mut().find(|p| p.stamp.id == id) {
            change(point);
        }
    }
}

/// Whether a point that `withdrawal` takes back was locked on another device that the withdrawing one had not heard of: then it stays.
fn locked_meanwhile(sorted: &[&Entry], withdrawal: &Entry, point: EntryId) -> bool {
    let mut heard = Heard::default();
    for entry in sorted {
        if entry.body.device == withdrawal.body.device && entry.body.seq <= withdrawal.body.seq {
            heard.note(entry);
        }
    }
    let on = |e: &&&Entry| matches!(&e.body.fact, Fact::LockFitted { on, .. } if *on == On::Point(point));
    sorted.iter().filter(on).any(|lock| !heard.saw(&withdrawal.stamp(), &lock.stamp()))
}
