//! What a job accepts now. Everything that is kept passes here, whatever screen it came from.
//!
//! A [`Refusal`] says what is wrong; its sentence, which says what to do instead, is made where it is shown.

mod locks;
mod proof;
mod restore;
mod supply;

use super::Job;
use super::age::Moment;
use super::asked::{Does, Question, Words};
use super::limits;
use super::refusal::{AloneRefusal, PlanRefusal, Refusal, WithdrawRefusal};
use super::steps::{Stage, Step};
use crate::journal::fact::{Duty, Limit, On, SourceKind};
use crate::journal::{Entry, EntryId, Fact};
use crate::names::{alike, says_something};
use crate::point::LockRow;
use crate::point::PointKind;
use crate::prove::limit::{Bound, bound};
use crate::prove::{Conductor, Supply, System, conductors};
use crate::site::Across;
use crate::supply::{Cut, Held};
use crate::world::World;

/// Low voltage ends here between conductors, in millivolts: 1000 V AC (IEC 60038).
const MAX_BETWEEN: u32 = 1_000_000;
/// And here with direct voltage: 1500 V DC (IEC 60038).
const MAX_DIRECT: u32 = 1_500_000;
/// Most conductors that a control supply brings to the point of work.
const MAX_TERMINALS: usize = 12;
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
    /// What jobs share.
    pub across: &'a Across,
    /// Now.
    pub now: Moment,
}

pub(super) type GateVerdict = Result<(), Refusal>;

fn no<T>(why: impl Into<Refusal>) -> Result<T, Refusal> {
    Err(why.into())
}

/// A reason is at least a word of letters.
fn reason(why: &str) -> GateVerdict {
    if says_something(why) { Ok(()) } else { no(Refusal::NoReason) }
}

/// Whether a company's limit may stand on a job whose sources have this bound.
fn limit_of(limit: &Limit, bound: Bound) -> GateVerdict {
    if !says_something(&limit.rule) {
        return no(AloneRefusal::LimitUnruled);
    }
    match bound.refuses(limits::of(limit)) {
        Some(error) => no(AloneRefusal::LimitTooHigh(error)),
        None => Ok(()),
    }
}

/// Whether a supply has conductors and a voltage that the app is for.
fn low_voltage(system: System, nominal: u32, own: &[Conductor]) -> GateVerdict {
    if system == System::Own {
        let named = |c: &Conductor| !c.name.trim().is_empty() && c.name.chars().count() <= conductors::NAME;
        let twice = |(at, c): (usize, &Conductor)| own[..at].iter().any(|other| alike(&other.name, &c.name));
        if own.len() < 2 || own.len() > conductors::MAX || !own.iter().all(named) || own.iter().enumerate().any(twice) {
            return no(AloneRefusal::OwnConductors);
        }
    } else if !own.is_empty() {
        return no(AloneRefusal::OwnConductors);
    }
    let supply = Supply { own: own.to_vec(), ..Supply::of(system, nominal) };
    let (most, bound) = (supply.most(), if supply.is_direct() { MAX_DIRECT } else { MAX_BETWEEN });
    if nominal == 0 || most > bound {
        return no(AloneRefusal::NotLowVoltage { volts: u64::from(most / 1000), most: bound / 1000 });
    }
    Ok(())
}

/// Whether what was found of a control supply says what has to be tested.
fn control(job: &Job, kind: SourceKind, terminals: &[String], millivolts: Option<u32>) -> GateVerdict {
    if kind != SourceKind::Control {
        return if terminals.is_empty() { Ok(()) } else { no(PlanRefusal::OnlyControl) };
    }
    if terminals.is_empty() {
        return no(PlanRefusal::NoTerminals);
    }
    let fits = |t: &String| !t.trim().is_empty() && t.chars().count() <= conductors::NAME;
    let all = job.conductors();
    match terminals.iter().find(|t| !fits(t) || all.iter().any(|c| alike(&c.name, t))) {
        Some(name) => no(PlanRefusal::TerminalName { name: name.clone() }),
        None if terminals.len() > MAX_TERMINALS => no(PlanRefusal::TerminalsMost { most: MAX_TERMINALS }),
        None if all.len() + terminals.len() > conductors::MAX => no(PlanRefusal::ConductorsMost),
        None if millivolts == Some(0) => no(PlanRefusal::NoControlVoltage),
        None => Ok(()),
    }
}

impl Gate<'_> {
    /// Whether a fact that belongs to no job may be kept.
    pub fn alone(&self, fact: &Fact) -> GateVerdict {
        match fact {
            Fact::DeviceBegan { .. } | Fact::SiteNoted { .. } => Ok(()),
            Fact::PersonNoted { name, .. } if name.trim().is_empty() => no(AloneRefusal::NoName),
            // Once names look alike nobody can tell whose lock it is.
            Fact::PersonNoted { name, corrects, .. } => {
                let others = self.world.people.iter().filter(|(id, _)| Some(**id) != *corrects);
                match others.map(|(_, p)| &p.name).find(|other| alike(other, name)) {
                    Some(other) => no(AloneRefusal::NameAlike { name: name.clone(), other: other.clone() }),
                    None => Ok(()),
                }
            }
            Fact::LimitRuled { limit } => {
                self.person()?;
                limit_of(limit, bound([]))
            }
            Fact::JobOpened { limit, system, nominal_millivolts: nominal, own, rules, .. } => {
                self.person()?;
                low_voltage(*system, *nominal, own)?;
                limit.as_ref().map_or(Ok(()), |limit| {
                    limit_of(limit, limits::bound_under(*rules, [limits::supply(*system, *nominal)]))
                })
            }
            Fact::InstrumentNoted { .. } => self.person().map(|_| ()),
            _ => no(AloneRefusal::NoJobOpen),
        }
    }

    /// Whether `job` accepts `fact` now.
    pub fn inside(&self, job: &Job, fact: &Fact) -> GateVerdict {
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
                | Fact::AsideAnswered { .. }
        );
        if job.handed.is_some() && !last {
            return no(Refusal::HandedBack);
        }
        // An indication is never refused, whenever and by whomever it is seen.
        let seen = match fact {
            Fact::ReadingTaken { reading, dc, .. } => job.shows_voltage(*reading, *dc),
            Fact::VoltageMet { .. } => return Ok(()),
            _ => false,
        };
        if !seen {
            self.hands_on(job, fact, person)?;
            if let Some(step) = Step::of(fact) {
                self.turn(job, step)?;
            }
        }
        job.earth_gate(fact)?;
        self.question(job, fact)?;
        self.plan(job, fact)?;
        self.locks(job, fact, person)?;
        self.proof(job, fact)?;
        self.switching(job, fact)?;
        self.restore(job, fact)?;
        self.supply(job, fact)
    }

    /// Who isolates, tests and works is on the job, and does it before the work is finished.
    fn hands_on(&self, job: &Job, fact: &Fact, person: EntryId) -> GateVerdict {
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
        if isolating && job.given_up.is_some() {
            return no(Refusal::GivenUp);
        }
        if isolating && job.finished.is_some() {
            return no(Refusal::Finished);
        }
        let hands_on = isolating
            || matches!(
                fact,
                Fact::WorkFinished { .. }
                    | Fact::GivenUp { .. }
                    | Fact::PointClosed { .. }
                    | Fact::SupplyAnswered { .. }
                    | Fact::CauseNoted { .. }
                    | Fact::RunSigned { .. }
                    | Fact::Deviated { .. }
                    | Fact::Withdrawn { .. }
                    | Fact::PointsParted { .. }
                    | Fact::SourceElsewhere { .. }
                    | Fact::LimitSet { .. }
                    | Fact::AsideAnswered { .. }
                    | Fact::Answered { .. }
                    | Fact::SystemCorrected { .. }
                    | Fact::StaysLive { .. }
                    | Fact::EarthFitted { .. }
                    | Fact::EarthRemoved { .. }
            );
        if hands_on && !job.people().contains(&person) {
            return no(Refusal::NotOnJob { person });
        }
        Ok(())
    }

    /// Answers to what is asked, and what is done only after an answer.
    fn question(&self, job: &Job, fact: &Fact) -> GateVerdict {
        let Fact::Answered { question, answer, of, words, who } = fact else {
            return job.question_before(fact).map_or(Ok(()), |open| no(Refusal::Question(open)));
        };
        let Some(question) = Question::of(question) else { return no(Refusal::NoSuchQuestion) };
        let Some(answer) = question.answer(answer) else { return no(Refusal::NoSuchQuestion) };
        // What stops is never refused, asked for or not.
        if answer.does == Does::Stops {
            return Ok(());
        }
        let Some(asked) = job.asked(question, *of) else { return no(Refusal::NoSuchQuestion) };
        let said = match answer.words {
            Words::None => true,
            Words::How => says_something(words),
            Words::Who => says_something(who),
        };
        if !said {
            return no(Refusal::AnswerUnsaid);
        }
        match asked.step {
            Some(step) => self.turn_or_plan(job, step),
            None => Ok(()),
        }
    }

    fn person(&self) -> Result<EntryId, Refusal> {
        self.acting.ok_or(Refusal::NobodyActs)
    }

    /// A step's facts are accepted once everything before it is done or passed over.
    fn turn(&self, job: &Job, step: Step) -> GateVerdict {
        for state in job.steps() {
            // An isolation that was given up is restored from wherever it stood.
            if job.given_up.is_some() && state.step < Step::CoversBack {
                continue;
            }
            if state.step == step {
                return Ok(());
            }
            // Points may be isolated in any order: the person starts with the one in front of them.
            let either_order = matches!((state.step, step), (Step::Isolate(_), Step::Isolate(_)));
            if !state.passed() && !either_order {
                let lack = state.lacks.first().cloned().map(Box::new);
                return no(Refusal::First { step: state.step.of_job(job), lack });
            }
        }
        no(Refusal::NoSuchStep)
    }

    fn plan(&self, job: &Job, fact: &Fact) -> GateVerdict {
        match fact {
            Fact::WorkerJoined { person, duty: Duty::InCharge }
                if job.in_charge() != Some(*person) && job.locks_on().next().is_some() =>
            {
                no(PlanRefusal::ChargeWithLocks)
            }
            Fact::WorkerJoined { person, duty }
                if *duty != Duty::InCharge && job.in_charge() == Some(*person) && job.locks_on().next().is_some() =>
            {
                no(PlanRefusal::ChargeLeftWithLocks)
            }
            Fact::WorkerLeft { person } => self.leave(job, *person),
            Fact::PointAdded { kind: PointKind::ControlDevice, .. } => no(PlanRefusal::ControlDevice),
            Fact::PointAdded { label, at, poles, same_as, .. } => {
                if let Some(other) = job.points.iter().find(|p| alike(&p.label, label) && alike(&p.at, at)) {
                    return no(PlanRefusal::PointAlike { label: other.label.clone() });
                }
                if same_as.is_some_and(|id| !self.across.knows(id, job.site)) {
                    return no(PlanRefusal::PointNotOfSite);
                }
                if poles.is_empty() {
                    return no(PlanRefusal::NoPoles);
                }
                let protective =
                    job.conductors().into_iter().find(|c| c.role.is_reference() && poles.contains(&c.name));
                match protective {
                    Some(pe) => no(PlanRefusal::OpensProtective { conductor: pe.name }),
                    None => Ok(()),
                }
            }
            Fact::TagBound { tag, point, .. } | Fact::TagGone { tag, point, .. } | Fact::TagRead { tag, point } => {
                let Some(at) = job.point(*point) else { return no(PlanRefusal::NoPointForTag) };
                let hangs = at.tags_now().any(|t| t.tag == *tag);
                let label = || at.label.clone();
                match &fact {
                    Fact::TagBound { .. } if hangs => no(PlanRefusal::TagHangs { at: label() }),
                    Fact::TagBound { .. } if at.tags.len() >= MAX_TAGS => {
                        no(PlanRefusal::TagsMost { at: label(), most: MAX_TAGS })
                    }
                    Fact::TagGone { why, .. } if why.trim().is_empty() => no(PlanRefusal::TagGoneUnsaid),
                    Fact::TagGone { .. } | Fact::TagRead { .. } if !hangs => {
                        no(PlanRefusal::TagNotThere { at: label() })
                    }
                    _ => Ok(()),
                }
            }
            Fact::Deviated { step, why } => {
                if why.trim().chars().count() < 5 {
                    return no(Refusal::NoReason);
                }
                reason(why)?;
                let state = job.steps().into_iter().find(|s| s.step.name() == *step);
                match state {
                    Some(state) if state.may_deviate() => self.turn_or_plan(job, state.step),
                    Some(state) if state.lacks.is_empty() => no(PlanRefusal::NothingToPass),
                    _ => no(PlanRefusal::CannotPass),
                }
            }
            Fact::Withdrawn { entry, why } => self.withdraw(job, *entry, why),
            Fact::LimitSet { limit } => {
                if job.in_charge() != Some(self.person()?) {
                    return no(PlanRefusal::LimitNotInCharge);
                }
                limit.as_ref().map_or(Ok(()), |limit| limit_of(limit, job.bound()))
            }
            Fact::SourceAnswered { found: None, looked, .. } | Fact::StoredAnswered { found: None, looked, .. }
                if !says_something(looked) =>
            {
                no(PlanRefusal::LookedUnsaid)
            }
            Fact::SourceAnswered { kind, found: Some(_), terminals, millivolts, .. } => {
                control(job, *kind, terminals, *millivolts)
            }
            Fact::SystemCorrected { system, nominal_millivolts, own, why, .. } => {
                reason(why)?;
                low_voltage(*system, *nominal_millivolts, own)
            }
            Fact::StaysLive { what, at, screened, conductors } => {
                if ![what, at, screened].into_iter().all(|said| says_something(said)) {
                    return no(PlanRefusal::StaysLiveUnsaid);
                }
                match conductors.iter().find(|name| !job.may_stay_live(name)) {
                    Some(name) => no(PlanRefusal::MayNotStayLive { conductor: name.clone() }),
                    None => Ok(()),
                }
            }
            Fact::SourceElsewhere { source, why } => {
                reason(why)?;
                if job.known.iter().any(|k| k.sources.iter().any(|s| s.source == *source)) {
                    Ok(())
                } else {
                    no(PlanRefusal::SourceNotKnown)
                }
            }
            Fact::PointsParted { point, other, apart } => {
                reason(apart)?;
                if job.point(*point).is_none() || !self.across.knows(*other, job.site) || point == other {
                    return no(PlanRefusal::NotTwoPoints);
                }
                Ok(())
            }
            Fact::AsideAnswered { entry, why } => {
                reason(why)?;
                if job.known.iter().any(|k| k.aside.iter().any(|a| a.entry == *entry)) {
                    Ok(())
                } else {
                    no(PlanRefusal::NotAside)
                }
            }
            Fact::PermitNoted { why_none: Some(why), .. }
            | Fact::NoCircuits { why }
            | Fact::NoCovers { why }
            | Fact::ScopeChanged { why, .. }
            | Fact::RotationFound { rotation: None, how: why } => reason(why),
            _ => Ok(()),
        }
    }

    fn turn_or_plan(&self, job: &Job, step: Step) -> GateVerdict {
        if step.stage() == Stage::Plan { Ok(()) } else { self.turn(job, step) }
    }

    fn leave(&self, job: &Job, person: EntryId) -> GateVerdict {
        if let Some(lock) = job.locks_on().find(|l| l.owner == person) {
            return no(PlanRefusal::LeavesLock { person, place: job.lock_label(lock.on) });
        }
        if job.in_charge() == Some(person) {
            return no(PlanRefusal::LeavesCharge { person });
        }
        Ok(())
    }

    fn withdraw(&self, job: &Job, entry: EntryId, why: &str) -> GateVerdict {
        reason(why)?;
        if job.withdrawn.iter().any(|(_, id, _)| *id == entry) {
            return no(WithdrawRefusal::Already);
        }
        let Some(named) = self.named.filter(|e| e.body.job == Some(job.id())) else {
            return no(WithdrawRefusal::NoSuchEntry);
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
            | Fact::PhotoTaken { .. }
            | Fact::StaysLive { .. }
            | Fact::Deviated { .. } => Ok(()),
            Fact::PresenceRead { .. } | Fact::RotationRead { .. }
                if job.supply_findings().iter().any(|f| f.of.contains(&entry)) =>
            {
                no(WithdrawRefusal::StandsOut)
            }
            Fact::PresenceRead { .. } | Fact::RotationRead { .. } => Ok(()),
            // A slip of the finger costs a test; a voltage that was there and is taken back may cost a life.
            Fact::ReadingTaken { .. } if job.troubles.iter().any(|t| t.stamp.id == entry) => {
                no(WithdrawRefusal::ShowedVoltage)
            }
            Fact::ReadingTaken { .. } => Ok(()),
            Fact::PointAdded { .. } if job.locks_on().any(|l| l.on == On::Point(entry)) => {
                no(WithdrawRefusal::PointLocked)
            }
            Fact::PointAdded { .. } => Ok(()),
            Fact::CircuitListed { .. } if job.circuits.iter().any(|c| c.stamp.id == entry && c.off.is_none()) => Ok(()),
            _ => no(WithdrawRefusal::Done),
        }
    }
}
