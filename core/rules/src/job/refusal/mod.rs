//! Why the gate refuses something: what is wrong, with the values that a sentence needs, and no sentence. The room for text makes one.
//!
//! A topic a file. Labels are as people typed them; a person, point or lock is named by the entry that brought it.

mod alone;
mod earth;
mod locks;
mod network;
mod plan;
mod proof;
mod restore;
mod switching;
mod withdraw;

pub use alone::AloneRefusal;
pub use earth::EarthRefusal;
pub use locks::LockRefusal;
pub use network::NetworkRefusal;
pub use plan::PlanRefusal;
pub use proof::ProofRefusal;
pub use restore::{RestoreRefusal, Unsaid};
pub use switching::SwitchRefusal;
pub use withdraw::WithdrawRefusal;

use super::Blocker;
use super::asked::{Open, Quantity};
use super::steps::StepOf;
use crate::journal::EntryId;

/// Why something is not taken in.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// Nobody said who has the device in hand.
    NobodyActs,
    /// The reason says nothing.
    NoReason,
    /// The job is handed back.
    HandedBack,
    /// The isolation was given up: the scope has to change first.
    GivenUp,
    /// The work is finished: the scope has to change first.
    Finished,
    /// Whoever acts takes no part in the job.
    NotOnJob {
        /// Who.
        person: EntryId,
    },
    /// A step before it is not passed.
    First {
        /// The step.
        step: StepOf,
        /// What it lacks first.
        lack: Option<Box<Blocker>>,
    },
    /// The job has no such step.
    NoSuchStep,
    /// A question has to be answered first.
    Question(Open),
    /// The job has no such question, or the question no such answer.
    NoSuchQuestion,
    /// The answer is not so by what is recorded.
    AnswerCountsNot,
    /// The answer needs to be told in words.
    AnswerUnsaid,
    /// The answer needs a reading of this.
    AnswerUnread(Quantity),
    /// The job has no such point.
    NoSuchPoint,
    /// Something that belongs to no job.
    Alone(AloneRefusal),
    /// What is planned.
    Plan(PlanRefusal),
    /// An entry that is to be withdrawn.
    Withdraw(WithdrawRefusal),
    /// Temporary earths.
    Earth(EarthRefusal),
    /// Locks and keys.
    Lock(LockRefusal),
    /// The proof and the work.
    Proof(ProofRefusal),
    /// What is switched, opened and closed.
    Switch(SwitchRefusal),
    /// Restoring.
    Restore(RestoreRefusal),
    /// The supply network.
    Network(NetworkRefusal),
}

macro_rules! from {
    ($($topic:ident: $refusal:ident),*) => {
        $(impl From<$refusal> for Refusal {
            fn from(why: $refusal) -> Refusal {
                Refusal::$topic(why)
            }
        })*
    };
}

from!(
    Alone: AloneRefusal,
    Plan: PlanRefusal,
    Withdraw: WithdrawRefusal,
    Lock: LockRefusal,
    Proof: ProofRefusal,
    Switch: SwitchRefusal,
    Restore: RestoreRefusal,
    Network: NetworkRefusal
);
