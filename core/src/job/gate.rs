//! What a job accepts now. Everything that is kept passes here, whatever screen it came from.
//!
//! A refusal is a sentence for the person that says what to do instead.

use super::Job;
use super::steps::Step;
use crate::journal::fact::{Duty, InstrumentKind, KeyAt, On, ProvedOn};
use crate::journal::{Entry, EntryId, Fact};
use crate::point::{Means, Off, PointKind, forced_lacks, gap, may_remove};
use crate::prove::{Role, Standing};
use crate::store::LockRow;
use crate::world::World;

/// What the gate looks at.
pub struct Gate<'a> {
    /// People and instruments.
    pub world: &'a World,
    /// Who has the device in hand.
    pub acting: Option<EntryId>,
    /// Locks of all jobs that are on, or forced off with the owner not told.
    pub locks: &'a [LockRow],
    /// The entry that a withdrawal names.
    pub named: Option<&'a Entry>,
}

type Verdict = Result<(), String>;

fn no<T>(why: impl Into<String>) -> Result<T, String> {
    Err(why.into())
}

impl Gate<'_> {
    /// Whether a fact that belongs to no job may be kept.
    pub fn alone(&self, fact: &Fact) -> Verdict {
        match fact {
            Fact::DeviceBegan { .. } | Fact::SiteNoted { .. } => Ok(()),
            Fact::PersonNoted { name, .. } if name.trim().is_empty() => no("Give the person's name."),
            Fact::PersonNoted { .. } => Ok(()),
            Fact::JobOpened { dead_limit_millivolts: limit, nominal_millivolts: nominal, .. }
                if *limit >= 50_000 || *limit > nominal / 2 =>
            {
                no(
                    "A limit for dead of 50 V or more, or of more than half the nominal voltage, is not accepted: 50 V bounds extra-low voltage, it does not say dead.",
                )
            }
            Fact::JobOpened { .. } | Fact::InstrumentNoted { .. } => self.person().map(|_| ()),
            _ => no("This belongs to a job: open the job first."),
        }
    }

    /// Whether `job` accepts `fact` now.
    pub fn inside(&self, job: &Job, fact: &Fact) -> Verdict {
        let person = self.person()?;
        if job.handed.is_some() && !matches!(fact, Fact::OwnerTold { .. } | Fact::OwnerSought { .. }) {
            return no("This job is handed back. Open a new job for anything more.");
        }
        self.hands_on(job, fact, person)?;
        // An indication is never refused, whenever and by whomever it is seen.
        let seen = matches!(fact, Fact::ReadingTaken { reading, .. } if reading.indicates(job.dead_limit));
        if let Some(step) = Step::of(fact)
            && !seen
        {
            self.turn(job, step)?;
        }
        self.plan(job, fact)?;
        self.locks(job, fact, person)?;
        self.proof(job, fact)?;
        self.switching(job, fact)
    }

    /// Who isolates, tests and works is on the job, and does it before the work is finished.
    fn hands_on(&self, job: &Job, fact: &Fact, person: EntryId) -> Verdict {
        let isolating = matches!(
            fact,
            Fact::CircuitOff { .. }
                | Fact::PointOpened { .. }
                | Fact::LockFitted { .. }
                | Fact::CoverOff { .. }
                | Fact::IndicatorProved { .. }
                | Fact::ReferenceProved { .. }
                | Fact::DischargeRead { .. }
                | Fact::ReadingTaken { .. }
                | Fact::WorkBegan { .. }
        );
        if isolating && job.finished.is_some() {
            return no("The work is finished. Change the scope of the job first; then isolate and prove dead again.");
        }
        let hands_on = isolating || matches!(fact, Fact::WorkFinished { .. } | Fact::PointClosed { .. });
        if hands_on && !job.people().contains(&person) {
            return no(format!(
                "{} is not on this job: put them on it under People on the job first.",
                self.name(person)
            ));
        }
        Ok(())
    }

    fn person(&self) -> Result<EntryId, String> {
        self.acting.ok_or_else(|| "Say first who has this device in hand.".into())
    }

    fn name(&self, id: EntryId) -> String {
        self.world.name(id)
    }

    /// A step's facts are accepted once everything before it is done or passed over.
    fn turn(&self, job: &Job, step: Step) -> Verdict {
        let name = |id| self.name(id);
        for state in job.steps(&name) {
            if state.step == step {
                return Ok(());
            }
            // Points may be isolated in any order: the person starts with the one in front of them.
            let either_order = matches!((state.step, step), (Step::Isolate(_), Step::Isolate(_)));
            if !state.passed() && !either_order {
                let lack = state.lacks.first().map_or("", |l| l.text.as_str());
                return no(format!("First: {}. {lack}", state.step.title(job)));
            }
        }
        no("This job has no such step.")
    }

    fn plan(&self, job: &Job, fact: &Fact) -> Verdict {
        match fact {
            Fact::WorkerJoined { person, duty: Duty::InCharge }
                if job.in_charge() != Some(*person) && job.locks_on().next().is_some() =>
            {
                no("Locks are on: change who answers for the isolation through a shift change.")
            }
            Fact::WorkerJoined { person, duty }
                if *duty != Duty::InCharge && job.in_charge() == Some(*person) && job.locks_on().next().is_some() =>
            {
                no("Locks are on, and this person answers for the isolation: that changes through a shift change.")
            }
            Fact::WorkerLeft { person } => self.leave(job, *person),
            Fact::PointAdded { kind: PointKind::ControlDevice, .. } => no(
                "A stop button, an interlock or a contactor is not a point of isolation: it can fail or be reset. Name the switch or \
                 the fuses that disconnect the supply.",
            ),
            Fact::PointAdded { label, poles, .. } => {
                if job.points.iter().any(|p| p.label == *label) {
                    return no(format!("A point named {label} is already in this job."));
                }
                if poles.is_empty() {
                    return no("Say which conductors this point opens.");
                }
                let protective =
                    job.conductors().into_iter().find(|c| c.role == Role::Protective && poles.contains(&c.name));
                match protective {
                    Some(pe) => no(format!(
                        "{} is the protective conductor: no point of isolation opens it. Unmark it.",
                        pe.name
                    )),
                    None => Ok(()),
                }
            }
            Fact::Deviated { step, why } => {
                if why.trim().chars().count() < 5 {
                    return no("Give the reason in words that another person will understand.");
                }
                let name = |id| self.name(id);
                let state = job.steps(&name).into_iter().find(|s| s.step.name() == *step);
                match state {
                    Some(state) if state.may_deviate() => self.turn_or_plan(job, state.step),
                    Some(state) if state.lacks.is_empty() => {
                        no("This step lacks nothing: there is nothing to pass over.")
                    }
                    _ => no("This cannot be passed over. Do it, or do not go on."),
                }
            }
            Fact::Withdrawn { entry, why } => self.withdraw(job, *entry, why),
            _ => Ok(()),
        }
    }

    fn turn_or_plan(&self, job: &Job, step: Step) -> Verdict {
        if step.stage() == "Plan" { Ok(()) } else { self.turn(job, step) }
    }

    fn leave(&self, job: &Job, person: EntryId) -> Verdict {
        if let Some(lock) = job.locks_on().find(|l| l.owner == person) {
            return no(format!(
                "{} still has a lock on {}. It comes off, or is handed over, before they leave.",
                self.name(person),
                job.lock_place(lock.on)
            ));
        }
        if job.in_charge() == Some(person) {
            return no(format!("{} answers for the isolation. Change the shift first.", self.name(person)));
        }
        Ok(())
    }

    fn withdraw(&self, job: &Job, entry: EntryId, why: &str) -> Verdict {
        if why.trim().is_empty() {
            return no("Say what was wrong with the entry.");
        }
        if job.withdrawn.iter().any(|(_, id, _)| *id == entry) {
            return no("This entry is already withdrawn.");
        }
        let Some(named) = self.named.filter(|e| e.body.job == Some(job.id())) else {
            return no("There is no such entry in this job.");
        };
        match &named.body.fact {
            Fact::PermitNoted { .. }
            | Fact::Told { .. }
            | Fact::BarrierPlaced { .. }
            | Fact::SourceAnswered { .. }
            | Fact::StoredAnswered { .. }
            | Fact::InstrumentChecked { .. }
            | Fact::NoCircuits { .. }
            | Fact::NoCovers { .. }
            | Fact::CoverOff { .. }
            | Fact::ReadingTaken { .. }
            | Fact::PresenceRead { .. }
            | Fact::RotationRead { .. }
            | Fact::PhotoTaken { .. }
            | Fact::Deviated { .. } => Ok(()),
            Fact::PointAdded { .. } if job.locks_on().any(|l| l.on == On::Point(entry)) => {
                no("A lock is on this point. The point cannot be withdrawn while it is.")
            }
            Fact::PointAdded { .. } => Ok(()),
            Fact::CircuitListed { .. } if job.circuits.iter().any(|c| c.stamp.id == entry && c.off.is_none()) => Ok(()),
            _ => no(
                "This entry tells of something that was done: it cannot be withdrawn. Record what is true now instead.",
            ),
        }
    }

    fn owed(&self, owner: EntryId) -> Verdict {
        match self.locks.iter().find(|l| l.owed && l.owner == owner) {
            Some(lock) => no(format!(
                "The lock of {} on {} was taken off in their absence. They have to be told, and that has to be recorded, before \
                 they resume.",
                self.name(owner),
                lock.place
            )),
            None => Ok(()),
        }
    }

    fn locks(&self, job: &Job, fact: &Fact, person: EntryId) -> Verdict {
        let find = |id: EntryId| job.lock(id).ok_or_else(|| "This job has no such lock.".to_owned());
        match fact {
            Fact::LockFitted { on, owner, label, key, means } => {
                self.owed(*owner)?;
                self.fit(job, *on, *owner, label, *key, means)
            }
            Fact::LockRemoved { lock } => match may_remove(find(*lock)?, person, &job.locks, |id| self.name(id)) {
                Some(why) => no(why),
                None => Ok(()),
            },
            Fact::KeyOffered { lock, to } => {
                let lock = find(*lock)?;
                match lock {
                    _ if !lock.is_on() => no("This lock is already off."),
                    _ if lock.owner != person => no(format!("Only {} may hand this lock over.", self.name(lock.owner))),
                    _ if matches!(lock.key, KeyAt::Box(id) if !job.locks_on().any(|l| l.on == On::Box(id) && l.owner == *to)) => {
                        no(
                            "The key is in a lock box. Only a person with a lock of their own on that box can take this lock over.",
                        )
                    }
                    _ if *to == lock.owner => no("It is theirs already."),
                    _ if !job.people().contains(to) => no("Put the person on the job first."),
                    _ => Ok(()),
                }
            }
            Fact::KeyTaken { offer, .. } => {
                match job.locks_on().filter_map(|l| l.offered).find(|(id, _)| id == offer) {
                    Some((_, to)) if to == person => self.owed(person),
                    Some((_, to)) => no(format!("{} has to confirm this.", self.name(to))),
                    None => no("This offer does not stand any more."),
                }
            }
            Fact::ShiftOffered { to, .. } => {
                if job.in_charge() != Some(person) {
                    return no("Only the person who answers for the isolation can hand over the shift.");
                }
                if *to == person || !job.people().contains(to) {
                    no("Choose another person on the job.")
                } else {
                    Ok(())
                }
            }
            Fact::ShiftTaken { offer, .. } => match &job.shift {
                Some((id, _, to, _)) if id == offer && *to == person => {
                    self.owed(person)?;
                    match gap(&job.points, person, &job.locks).first() {
                        Some(point) => no(format!(
                            "There would be a gap: {} has no lock of their own on {} yet.",
                            self.name(person),
                            point.label
                        )),
                        None => Ok(()),
                    }
                }
                Some((_, _, to, _)) => no(format!("{} has to confirm this.", self.name(*to))),
                None => no("This offer does not stand any more."),
            },
            Fact::ForcedBegun { lock, authority, why } => match find(*lock)? {
                l if !l.is_on() => no("This lock is already off."),
                l if l.owner == *authority => no("The authority has to be somebody other than the owner."),
                l if l.owner == person => no("This is your own lock: take it off yourself."),
                _ if why.trim().is_empty() => no("Say why it cannot wait for the owner."),
                _ => Ok(()),
            },
            Fact::OwnerNotOnSite { lock, .. } | Fact::OwnerSought { lock, .. } if find(*lock)?.forced.is_none() => {
                no("Name the authority first.")
            }
            Fact::LockForced { lock, .. } => {
                let lock = find(*lock)?;
                if !lock.is_on() {
                    return no("This lock is already off.");
                }
                if let Some(lack) = forced_lacks(lock.forced.as_ref()).first() {
                    return no(lack.clone());
                }
                match &lock.forced {
                    Some(forced) if forced.authority == person => Ok(()),
                    Some(forced) => no(format!("{} has to confirm this.", self.name(forced.authority))),
                    None => no("Name the authority first."),
                }
            }
            Fact::OwnerTold { lock, .. } if !matches!(find(*lock)?.off, Some(Off::Forced(_))) => {
                no("This lock was not taken off in the owner's absence.")
            }
            _ => Ok(()),
        }
    }

    fn fit(&self, job: &Job, on: On, owner: EntryId, label: &str, key: KeyAt, means: &Means) -> Verdict {
        if !job.people().contains(&owner) {
            return no(format!("{} is not on this job: put them on it first.", self.name(owner)));
        }
        if label.trim().is_empty() {
            return no("Write what is on the lock: its number or name tells it from every other.");
        }
        if let Some(other) = self.locks.iter().find(|l| l.on && l.label == label && !matches!(means, Means::Other(_))) {
            return no(format!(
                "A lock labelled {label} is on already: {}, {}. Two locks with one label cannot be told apart.",
                other.place,
                self.name(other.owner)
            ));
        }
        if let KeyAt::Box(id) = key
            && (!job.boxes.iter().any(|b| b.stamp.id == id) || on == On::Box(id))
        {
            return no("Choose a lock box of this job for the key.");
        }
        match on {
            On::Box(_) if key != KeyAt::Owner => no("The key of a personal lock on a box stays with its owner."),
            On::Box(_) if matches!(means, Means::Other(_)) => no("A lock box takes a lock and nothing else."),
            On::Box(id) if job.boxes.iter().any(|b| b.stamp.id == id) => Ok(()),
            On::Box(_) => no("This job has no such lock box."),
            On::Point(id) => {
                let point = job.point(id).ok_or("This job has no such point.")?;
                if point.opened.is_none() {
                    return no(format!("{} is not open: a lock on a closed point secures nothing.", point.label));
                }
                let mut there = job.locks_on().filter(|l| l.on == on);
                match means {
                    Means::Other(how) if point.lockable || how.trim().is_empty() => no(
                        "This point takes a lock: fit one. Anything else is for points that cannot be locked, and says how.",
                    ),
                    Means::Padlock | Means::Hasp if !point.lockable => {
                        no("This point takes no lock. Say by what other means it is secured.")
                    }
                    Means::Padlock if there.next().is_some() => {
                        no("A lock is on already. Only a hasp or a lock box takes several.")
                    }
                    Means::Hasp if there.any(|l| l.means == Means::Padlock) => no(
                        "The lock that is on goes straight through the device. Its owner has to move it to the hasp first: take it \
                         off and fit it again.",
                    ),
                    _ => Ok(()),
                }
            }
        }
    }

    fn fit_for_use(&self, job: &Job, id: EntryId, kind: InstrumentKind) -> Verdict {
        let known = self.world.instruments.get(&id).is_some_and(|i| i.kind == kind);
        let Some(checked) = job.instruments.iter().find(|c| c.instrument == id).filter(|_| known) else {
            return no("This instrument is not checked for this job: check it under Indicator and proving unit.");
        };
        match checked.faults.first() {
            Some(fault) => no(format!("Do not use {}: {fault}.", self.world.instrument(id))),
            None => Ok(()),
        }
    }

    fn proof(&self, job: &Job, fact: &Fact) -> Verdict {
        match fact {
            Fact::IndicatorProved { run, indicator, on, works } => {
                self.fit_for_use(job, *indicator, InstrumentKind::Indicator)?;
                if let ProvedOn::ProvingUnit(unit) = on {
                    self.fit_for_use(job, *unit, InstrumentKind::ProvingUnit)?;
                }
                let Some(run) = run else {
                    return if job.cause_known() {
                        Ok(())
                    } else {
                        no("A pair gave an indication. Say first what the cause was, and what was done about it.")
                    };
                };
                let Some(latest) = job.run().filter(|r| r.id() == *run && r.after.is_none()) else {
                    return no("This test is over. Prove the indicator and begin again.");
                };
                if latest.indicator != *indicator {
                    return no("Prove the same indicator that took the readings.");
                }
                match job.standing() {
                    Standing::UnderWay { missing: 0 } => Ok(()),
                    Standing::UnderWay { missing } if *works => {
                        no(format!("{missing} pairs are not tested yet. The second proof comes after them."))
                    }
                    Standing::UnderWay { .. } => Ok(()),
                    _ => no("This test is over. Prove the indicator and begin again."),
                }
            }
            Fact::ReadingTaken { run, first, then, reading } => {
                let seen = reading.indicates(job.dead_limit);
                let latest = job.run().filter(|r| r.id() == *run);
                if latest.is_none_or(|r| r.after.is_some() && !seen)
                    || !seen && !matches!(job.standing(), Standing::UnderWay { .. } | Standing::Indication { .. })
                {
                    return no("This test is over. Prove the indicator and begin again.");
                }
                let pair = |a: &str, b: &str| (a == first && b == then) || (a == then && b == first);
                if job.plan().iter().any(|t| pair(&t.first, &t.then)) {
                    Ok(())
                } else {
                    no(format!("{first} – {then} is not a pair of this test."))
                }
            }
            Fact::ReferenceProved { run, .. } | Fact::DischargeRead { run, .. }
                if job.run().is_none_or(|r| r.id() != *run || r.after.is_some()) =>
            {
                no("This test is over. Prove the indicator and begin again.")
            }
            Fact::DischargeRead { of, .. } if !job.direct().iter().any(|(id, ..)| id == of) => {
                no("This job has no such stored energy.")
            }
            Fact::WorkBegan { run } => {
                for person in job.people() {
                    self.owed(person)?;
                }
                match job.standing() {
                    _ if job.working() => no("Work is under way already."),
                    Standing::Proved { .. } if job.run().is_some_and(|r| r.id() == *run) => Ok(()),
                    _ => no("Treat as live: no proof stands, so work may not begin."),
                }
            }
            Fact::WorkLeft { .. } | Fact::WorkFinished { .. } if !job.working() => no("Work is not under way."),
            _ => Ok(()),
        }
    }

    fn switching(&self, job: &Job, fact: &Fact) -> Verdict {
        let point = |id: &EntryId| job.point(*id).ok_or_else(|| "This job has no such point.".to_owned());
        match fact {
            Fact::CircuitOff { circuit, .. } => match job.circuits.iter().find(|c| c.stamp.id == *circuit) {
                None => no("This job has no such circuit."),
                Some(c) if c.off.is_some() && c.on.is_none() => no(format!("{} is off already.", c.label)),
                Some(_) => Ok(()),
            },
            Fact::PointOpened { point: id, .. } if point(id)?.opened.is_some() => no("This point is open already."),
            Fact::SignPosted { point: id } => {
                let point = point(id)?;
                if job.locks_on().any(|l| l.on == On::Point(*id)) {
                    Ok(())
                } else {
                    no(format!("No lock is on {}: the lock comes before the sign.", point.label))
                }
            }
            Fact::SignRemoved { point: id } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no("A lock is still on this point: the sign comes down after it.")
            }
            Fact::PointClosed { point: id } if job.locks_on().any(|l| l.on == On::Point(*id)) => {
                no("A lock is still on this point.")
            }
            Fact::CircuitOn { circuit } => match job.circuits.iter().find(|c| c.off.is_some() && c.on.is_none()) {
                Some(next) if next.stamp.id == *circuit => Ok(()),
                Some(next) => no(format!("In order: {} comes next.", next.label)),
                None => no("Every circuit is on already."),
            },
            Fact::CoverBack { cover } => match job.covers.iter().find(|(s, ..)| s.id == *cover) {
                Some((_, _, None)) => Ok(()),
                Some(_) => no("This cover is back already."),
                None => no("This job has no such cover."),
            },
            Fact::PresenceRead { first, then, .. }
                if !job.presence_pairs().iter().any(|(a, b)| a == first && b == then) =>
            {
                no(format!("{first} – {then} is not a pair to read here."))
            }
            _ => Ok(()),
        }
    }
}
