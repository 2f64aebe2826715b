//! From entries to a job.

mod locks;
mod open;
mod proof;
mod reasons;
mod supply;
mod tags;
mod undone;

use std::collections::BTreeSet;

use reasons::says_nothing;

use super::{
    Answered, Checked, Circuit, Deviation, Differs, Elsewhere, Ended, Fault, Heard, Job, Photo, Source, Stored, Told,
    Voided, Worker,
};
use crate::job::asked::Subject;
use crate::journal::fact::{Duty, On};
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::point::{LockBox, Point};
use crate::prove::Taken;
use crate::supply::Position;

impl Job {
    /// The job that `entries` tell of, or `None` if none of them opens one. Order of arrival does not matter: entries are
    /// read in the journal's total order.
    pub fn fold(entries: &[Entry]) -> Option<Job> {
        let mut sorted: Vec<&Entry> = entries.iter().collect();
        sorted.sort_by_key(|e| (e.order(), e.id));
        sorted.dedup_by_key(|e| e.id);
        let opened = sorted.iter().position(|e| matches!(e.body.fact, Fact::JobOpened { .. }))?;
        let mut job = Job::opened(sorted[opened])?;
        let counts = |e: &&Entry| e.body.practice == job.practice;
        let withdrawn: BTreeSet<EntryId> = sorted
            .iter()
            .filter(|e| counts(e))
            .filter_map(|e| match e.body.fact {
                Fact::Withdrawn { entry, .. } if !locked_meanwhile(&sorted, e, entry) => Some(entry),
                _ => None,
            })
            .collect();
        for entry in &sorted {
            job.take(entry, !withdrawn.contains(&entry.id));
        }
        sorted.retain(|e| e.body.practice == job.practice);
        job.undone = undone::undone(&sorted, &withdrawn);
        Some(job)
    }

    /// One more entry at the end of the order. Not for a withdrawal, which reaches back: fold again for that.
    pub fn extend(&mut self, entry: &Entry) {
        self.take(entry, true);
        if entry.body.practice != self.practice {
            return;
        }
        self.undone.retain(|undone| !undone::answers(undone, entry));
    }

    fn take(&mut self, entry: &Entry, stands: bool) {
        self.heard.note(entry);
        // Practice says nothing of a real board, and what is written of a real one is no practice.
        if entry.newer.is_some() || entry.body.practice != self.practice {
            self.newer.push(entry.stamp());
        }
        if entry.body.practice != self.practice {
            return;
        }
        self.note_void(entry);
        self.note_trouble(entry);
        // Whoever takes it back has heard of them all the same.
        if let Fact::CompanyHeard { rules } = &entry.body.fact {
            self.hear_company(entry.stamp(), rules);
        }
        if stands {
            self.apply(entry);
        }
    }

    /// What this entry ends. Read for withdrawn entries too: a proof that ended stays ended, whatever is said later.
    fn note_void(&mut self, entry: &Entry) {
        let why = match &entry.body.fact {
            Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => {
                Ended::LockOff { place: self.lock(*lock).and_then(|l| self.lock_label(l.on)) }
            }
            Fact::StoredAnswered { found: Some(found), .. } => Ended::StoredFound { what: found.what.clone() },
            Fact::SourceAnswered { found: Some(found), .. } => Ended::SourceFound { what: found.what.clone() },
            Fact::PointAdded { label, .. } => Ended::PointAdded { label: label.clone() },
            // Open all along, as far as this job knew: whoever opened it again knew of a closing for another job.
            Fact::PointOpened { point, knowing, .. } => match self.point(*point) {
                // Whoever tested knew of an opening that is not known here, or of none.
                Some(p) if p.opened.is_none() && !self.runs.is_empty() => Ended::PointOpened { label: p.label.clone() },
                Some(p) if p.opened.is_some() && knowing.iter().any(|closing| !p.knowing.contains(closing)) => {
                    Ended::ClosedBetween { label: p.label.clone() }
                }
                _ => return,
            },
            Fact::PointClosed { point, .. } => {
                Ended::PointClosed { label: self.point(*point).map(|p| p.label.clone()) }
            }
            Fact::ScopeChanged { .. } => Ended::Scope,
            // Who names it for the first time changes nothing yet; what the network then shows may.
            Fact::ZoneNoted { .. } if self.zone_named.is_some() => Ended::Zone,
            Fact::ShiftTaken { .. } => Ended::Shift,
            // What the network showed had ended the proof at once; an answer does not bring it back.
            Fact::CutDiffers { .. } => Ended::WayAnswered,
            Fact::WorkLeft { .. } => Ended::WorkLeft,
            // All were told to keep clear: whoever goes on begins again.
            Fact::WorkFinished { .. } => Ended::WorkFinished,
            Fact::WorkStopped {} => Ended::WorkStopped,
            Fact::GivenUp { .. } => Ended::GivenUp,
            Fact::CoverOff { what } => Ended::CoverOff { what: what.clone() },
            Fact::LimitSet { .. } => Ended::Limit,
            Fact::CompanyHeard { rules } if self.is_tightened_by(rules) => Ended::CompanyLimit,
            Fact::NeutralParted { what } => Ended::NeutralParted { what: what.clone() },
            Fact::Withdrawn { .. } => Ended::Withdrawn,
            Fact::SystemCorrected { .. } => Ended::SystemCorrected,
            Fact::EarthRemoved { earth } => match self.earth_over(*earth) {
                Some(label) => Ended::EarthOff { label },
                None => return,
            },
            Fact::StaysLive { what, .. } => Ended::StaysLive { what: what.clone() },
            Fact::Answered { .. } => {
                match self.stopping(entry.stamp(), &entry.body.fact).or_else(|| self.lifted_by(&entry.body.fact)) {
                    // What was tested under an answer that stops was tested before it was put right.
                    Some((question, answer)) => {
                        let about = self.called(&Subject::of(&entry.body.fact)).unwrap_or_default();
                        Ended::Answered { question, answer, about }
                    }
                    None => return,
                }
            }
            _ => return,
        };
        self.voided.push(Voided { stamp: entry.stamp(), why });
    }

    /// What is written on what a lock is on; `None` if that is not known here.
    pub fn lock_label(&self, on: On) -> Option<String> {
        match on {
            On::Point(id) => self.point(id).map(|p| p.label.clone()),
            On::Box(id) => self.boxes.iter().find(|b| b.stamp.id == id).map(|b| b.label.clone()),
        }
    }

    fn apply(&mut self, entry: &Entry) {
        if says_nothing(&entry.body.fact) {
            return;
        }
        let stamp = entry.stamp();
        if self.scopes.iter().any(|scope| !self.heard.saw(&stamp, scope)) {
            self.unaware.insert(stamp.id);
        }
        match &entry.body.fact {
            Fact::ScopeChanged { scope, .. } => {
                self.scopes.push(stamp);
                self.scope.clone_from(scope);
                (self.finished, self.given_up) = (None, None);
                // Circuits that came on again have to be shed again.
                for circuit in self.circuits.iter_mut().filter(|c| c.on.is_some()) {
                    (circuit.off, circuit.on) = (None, None);
                }
            }
            Fact::LimitSet { limit } => {
                self.set_limit(limit.as_ref(), entry.body.by);
                self.limit_set = Some(stamp);
            }
            Fact::ZoneNoted { zone } => {
                self.zone.clone_from(zone);
                self.zone_named.get_or_insert(stamp);
            }
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
            Fact::SourceAnswered { kind, found, looked, terminals, millivolts } => self.sources.push(Source {
                stamp,
                kind: *kind,
                found: found.clone(),
                looked: looked.clone(),
                terminals: terminals.clone(),
                millivolts: *millivolts,
            }),
            Fact::SourceElsewhere { source, why } => {
                self.elsewhere.push(Elsewhere { stamp, source: source.clone(), why: why.clone() });
            }
            Fact::StoredAnswered { found, seconds, looked, kind, label } => {
                let (found, looked) = (found.clone(), looked.clone());
                let mut stored = Stored { stamp, found, seconds: *seconds, looked, kind: *kind, label: *label };
                // Whoever wrote it, no wait is shorter than the label or the table asks.
                stored.seconds = stored.waits();
                self.stored.push(stored);
            }
            Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as } => {
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
                    same_as: *same_as,
                    opened: None,
                    found: None,
                    seen: String::new(),
                    knowing: Vec::new(),
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
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, note, knowing } => {
                let faults = [
                    (*leads_sound, Fault::Leads),
                    (*tips_sound, Fault::Tips),
                    (*body_sound, Fault::Case),
                    (*in_date, Fault::OutOfDate),
                ];
                let faults = faults.iter().filter(|(sound, _)| !sound).map(|(_, fault)| *fault).collect();
                let (note, knowing) = (note.clone(), knowing.clone());
                let check = Checked { stamp, instrument: *instrument, faults, note, knowing };
                self.instruments.retain(|c| c.instrument != *instrument);
                self.instruments.push(check.clone());
                self.checks.push(check);
            }
            Fact::PhotoTaken { sha256, length, media, of, note, tags, doubts, copies } => {
                let (sha256, media, copies) = (sha256.clone(), media.clone(), copies.clone());
                let (note, tags, doubts) = (note.clone(), tags.clone(), doubts.clone());
                self.photos.push(Photo { stamp, sha256, length: *length, media, copies, of: *of, note, tags, doubts });
            }
            Fact::Deviated { step, why } => {
                self.deviations.push(Deviation { stamp, step: step.clone(), why: why.clone() });
            }
            Fact::Answered { .. } => self.answer_given(stamp, &entry.body.fact),
            Fact::SystemCorrected { .. } | Fact::StaysLive { .. } => self.note_supply(stamp, &entry.body.fact),
            Fact::NeutralParted { .. } => self.neutrals_parted.push(stamp),
            Fact::EarthFitted { .. } | Fact::EarthRemoved { .. } => self.note_earth(stamp, &entry.body.fact),
            Fact::Withdrawn { entry, why } => self.withdrawn.push((stamp, *entry, why.clone())),
            Fact::AsideAnswered { entry, .. } => self.aside_answered.push((stamp, *entry)),
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
            (self.shift, self.shift_taken) = (None, Some(stamp));
            self.join(stamp, to, Duty::InCharge);
        }
    }

    fn apply_switching(&mut self, entry: &Entry, stamp: Stamp) {
        match &entry.body.fact {
            Fact::CircuitOff { circuit, seen } => self.circuit(*circuit, |c| {
                (c.off, c.on) = (Some((stamp, seen.clone())), None);
            }),
            Fact::CircuitOn { circuit } => self.circuit(*circuit, |c| c.on = Some(stamp)),
            Fact::PointOpened { point, found, seen, knowing, .. } => self.open(*point, stamp, (*found, seen), knowing),
            Fact::PointClosed { point, .. } => self.at_point(*point, |p| {
                (p.opened, p.closed, p.found) = (None, Some(stamp), None);
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
                self.presence.push(Taken::alone(stamp, first, then, *reading));
            }
            Fact::RotationFound { rotation, how } => self.rotation_found = Some((stamp, *rotation, how.clone())),
            Fact::RotationRead { rotation, how, guard } => {
                self.rotation = Some((stamp, *rotation, how.clone(), *guard));
            }
            Fact::SupplyAnswered { of, answer, who, how } => {
                let (of, who, how) = (of.clone(), who.clone(), how.clone());
                self.supply_answers.push(Answered { stamp, of, answer: *answer, who, how });
            }
            Fact::HandedBack { to, note, mark } => {
                self.handed = Some((stamp, to.clone(), note.clone(), mark.clone()));
            }
            _ => {}
        }
    }

    /// A point is open if who opened it knew of every closing; if not, nobody knows how it stands.
    fn open(&mut self, point: EntryId, stamp: Stamp, (found, seen): (Position, &str), knowing: &[EntryId]) {
        let heard = &self.heard;
        let Some(at) = self.points.iter_mut().find(|p| p.stamp.id == point) else { return };
        // Who found it on puts it back on: of two that opened it, one has seen it as it was.
        let before = at.found.filter(|_| at.opened.is_some());
        seen.clone_into(&mut at.seen);
        at.found = Some(if before == Some(Position::Closed) { Position::Closed } else { found });
        if at.closings.iter().all(|closing| heard.saw(&stamp, closing)) {
            (at.opened, at.closed) = (Some(stamp), None);
            at.knowing = knowing.to_vec();
        } else {
            at.opened = None;
            let why = Ended::OpenedAndClosed { label: at.label.clone() };
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
