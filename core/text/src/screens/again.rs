//! What stands where an earlier job's words are offered again.

use crate::catalogue::say;
use stillbar_rules::job::Job;

says! {
    said_before(label) => "said-before",
    like_heading => "like-heading",
    like(title) => "like",
    like_what(title) => "like-what",
    like_none => "like-none",
    like_change => "like-change",
    taken_along => "taken-along",
    like_opened(name) => "like-opened",
    told_again(who, how) => "told-again",
    barrier_again(what, at) => "barrier-again",
    this_shift => "this-shift",
    checked_this_shift(name, at) => "checked-this-shift",
    looked_over_again => "looked-over-again",
}

/// What can be taken along of an earlier job, as an answer.
#[derive(Debug, Clone, Copy)]
pub enum TakenAlong<'a> {
    /// That no permit is asked for, and why.
    NoPermit(&'a str),
    /// A person and their duty.
    Person {
        /// Their name.
        name: &'a str,
        /// What they do, in words.
        duty: &'a str,
    },
    /// A point of isolation of the normal supply.
    Point {
        /// What is written on it.
        label: &'a str,
        /// Where it is.
        at: &'a str,
    },
    /// A circuit to be switched off.
    Circuit {
        /// What is written on it.
        label: &'a str,
        /// What it serves.
        serves: &'a str,
    },
    /// That there is nothing to switch off first, and why.
    NoCircuits(&'a str),
}

/// What is taken along, as an answer.
pub fn taken(what: TakenAlong) -> String {
    match what {
        TakenAlong::NoPermit(why) => say!("taken-no-permit", why = why),
        TakenAlong::Person { name, duty } => say!("taken-person", name = name, duty = duty),
        TakenAlong::Point { label, at } => say!("taken-point", label = label, at = at),
        TakenAlong::Circuit { label, serves } => say!("taken-circuit", label = label, serves = serves),
        TakenAlong::NoCircuits(why) => say!("taken-no-circuits", why = why),
    }
}

/// The equipment and the place of a job, in a line.
pub fn where_of(job: &Job) -> String {
    say!("where-of", equipment = job.equipment.as_str(), place = job.place.as_str())
}
