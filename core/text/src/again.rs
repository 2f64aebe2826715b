//! What stands where an earlier job's words are offered again.

use super::catalogue::say;
use stillbar_rules::job::Job;

/// The label of what was said before in a field of this label.
pub fn said_before(label: &str) -> String {
    say!("said-before", label = label)
}

/// Above the jobs that a new one may be like.
pub fn like_heading() -> String {
    say!("like-heading")
}

/// The button that takes a job as the pattern of a new one.
pub fn like(title: &str) -> String {
    say!("like", title = title)
}

/// What is said above the short form.
pub fn like_what(title: &str) -> String {
    say!("like-what", title = title)
}

/// The button that lets the pattern go.
pub fn like_none() -> String {
    say!("like-none")
}

/// The button that opens the whole form with the pattern's values in it.
pub fn like_change() -> String {
    say!("like-change")
}

/// The question for what is taken along beside the place and the conductors.
pub fn taken_along() -> String {
    say!("taken-along")
}

/// That a job was opened from a pattern, by who answers for it.
pub fn like_opened(name: &str) -> String {
    say!("like-opened", name = name)
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

/// The button that says once more what was told to somebody in an earlier job.
pub fn told_again(who: &str, how: &str) -> String {
    say!("told-again", who = who, how = how)
}

/// The button for a barrier or sign that stands where it stood before.
pub fn barrier_again(what: &str, at: &str) -> String {
    say!("barrier-again", what = what, at = at)
}

/// The label of a check earlier in this shift.
pub fn this_shift() -> String {
    say!("this-shift")
}

/// That instruments were checked earlier in this shift.
pub fn checked_this_shift(name: &str, at: &str) -> String {
    say!("checked-this-shift", name = name, at = at)
}

/// The button that says that they were looked over again.
pub fn looked_over_again() -> String {
    say!("looked-over-again")
}
