//! What a job accepts now. Everything that is kept passes here, whatever screen it came from.
//!
//! A refusal is a sentence for the person that says what to do instead.

mod locks;
mod proof;
mod supply;

use super::Job;
use super::steps::Step;
use crate::journal::fact::{Duty, On};
use crate::journal::{Entry, EntryId, Fact};
use crate::point::PointKind;
use crate::prove::Role;
use crate::store::LockRow;
use crate::supply::{Cut, Held};
use crate::world::World;

/// Most tags that a point has had in one job.
const MAX_TAGS: usize = 20;

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
    /// The job beside its site's supply network.
    pub cut: Option<&'a Cut>,
    /// What other jobs at the site hold locked.
    pub held: &'a [Held],
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
            _ => no("This belongs to a job or a site: open it first."),
        }
    }

    /// Whether `job` accepts `fact` now.
    pub fn inside(&self, job: &Job, fact: &Fact) -> Verdict {
        let person = self.person()?;
        // A lock that another device had on while this job was handed back still comes off by its owner.
        let last = matches!(
            fact,
            Fact::LockRemoved { .. }
                | Fact::ForcedBegun { .. }
                | Fact::OwnerNotOnSite { .. }
                | Fact::OwnerSought { .. }
                | Fact::LockForced { .. }
                | Fact::OwnerTold { .. }
        );
        if job.handed.is_some() && !last {
            return no("This job is handed back. Open a new job for anything more.");
        }
        // An indication is never refused, whenever and by whomever it is seen.
        let seen = matches!(fact, Fact::ReadingTaken { reading, .. } if reading.indicates(job.dead_limit));
        if !seen {
            self.hands_on(job, fact, person)?;
            if let Some(step) = Step::of(fact) {
                self.turn(job, step)?;
            }
        }
        self.plan(job, fact)?;
        self.locks(job, fact, person)?;
        self.proof(job, fact)?;
        self.switching(job, fact)?;
        self.supply(job, fact)
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
            Fact::TagBound { tag, point, .. } | Fact::TagGone { tag, point, .. } | Fact::TagRead { tag, point } => {
                let Some(at) = job.point(*point) else { return no("There is no such point in this job.") };
                let hangs = at.tags_now().any(|t| t.tag == *tag);
                match &fact {
                    Fact::TagBound { .. } if hangs => no(format!("This tag hangs at {} already.", at.label)),
                    Fact::TagBound { .. } if at.tags.len() >= MAX_TAGS => {
                        no(format!("{} had {MAX_TAGS} tags already. Add the point anew.", at.label))
                    }
                    Fact::TagGone { why, .. } if why.trim().is_empty() => no("Write what became of the tag."),
                    Fact::TagGone { .. } | Fact::TagRead { .. } if !hangs => {
                        no(format!("This tag does not hang at {}.", at.label))
                    }
                    _ => Ok(()),
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
            | Fact::PresenceRead { .. }
            | Fact::RotationRead { .. }
            | Fact::PhotoTaken { .. }
            | Fact::Deviated { .. } => Ok(()),
            // A slip of the finger costs a test; a voltage that was there and is taken back may cost a life.
            Fact::ReadingTaken { reading, .. } if reading.indicates(job.dead_limit) => {
                no("This reading showed a voltage: it stays. Write its cause, then prove the indicator and test again.")
            }
            Fact::ReadingTaken { .. } => Ok(()),
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
}
