//! What a job accepts now. Everything that is kept passes here, whatever screen it came from.
//!
//! A [`Refusal`] says what is wrong; its sentence, which says what to do instead, is made where it is shown.

mod locks;
mod plan;
mod proof;
mod restore;
mod supply;

use super::Job;
use super::age::Moment;
use super::asked::{Does, Question, Subject, Words};
use super::limits;
use super::refusal::{AloneRefusal, Refusal};
use super::steps::{Stage, Step};
use crate::journal::fact::Limit;
use crate::journal::{Entry, EntryId, Fact};
use crate::names::{alike, says_something};
use crate::point::LockRow;
use crate::prove::limit::{Bound, bound};
use crate::prove::{Conductor, Supply, System, conductors};
use crate::site::Across;
use crate::supply::{Cut, Held};
use crate::world::World;

/// Low voltage ends here between conductors, in millivolts: 1000 V AC (IEC 60038).
const MAX_BETWEEN: u32 = 1_000_000;
/// And here with direct voltage: 1500 V DC (IEC 60038).
const MAX_DIRECT: u32 = 1_500_000;

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
        let Fact::Answered { question, answer, words, who, read, .. } = fact else {
            return job.question_before(fact).map_or(Ok(()), |open| no(Refusal::Question(open)));
        };
        let Some(question) = Question::of(question) else { return no(Refusal::NoSuchQuestion) };
        let Some(answer) = question.answer(answer) else { return no(Refusal::NoSuchQuestion) };
        // What stops is never refused, asked for or not.
        if job.would_be(question, answer.code, *read).is_some_and(|a| a.does == Does::Stops) {
            return Ok(());
        }
        let of = Subject::of(fact);
        let Some(asked) = job.asked(question, &of) else { return no(Refusal::NoSuchQuestion) };
        if !question.offered(job, &of).any(|offered| offered.code == answer.code) {
            return no(Refusal::NoSuchQuestion);
        }
        let said = match answer.words {
            Words::None => true,
            Words::How => says_something(words),
            Words::Who => says_something(who),
        };
        if !said {
            return no(Refusal::AnswerUnsaid);
        }
        match (&answer.reads, read) {
            (Some(reads), None) => return no(Refusal::AnswerUnread(reads.quantity)),
            (None, Some(_)) => return no(Refusal::NoSuchQuestion),
            _ => {}
        }
        if !job.would_count(question, fact) {
            return no(Refusal::AnswerCountsNot);
        }
        match asked.step {
            // Under what stops nothing is proved, so the turn of the work never comes: whoever answers otherwise waits for none.
            Some(step) if !job.is_stopped(question, &of) => self.turn_or_plan(job, step),
            _ => Ok(()),
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
                let lack = state.blockers.first().cloned().map(Box::new);
                return no(Refusal::First { step: state.step.of_job(job), lack });
            }
        }
        no(Refusal::NoSuchStep)
    }

    fn turn_or_plan(&self, job: &Job, step: Step) -> GateVerdict {
        if step.stage() == Stage::Plan { Ok(()) } else { self.turn(job, step) }
    }
}
