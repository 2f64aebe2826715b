//! Answers that need words. The gate refuses one that says nothing; here one that came all the same, from a phone with another gate or none,
//! answers nothing.

use crate::journal::Fact;
use crate::names::says_something;

/// Whether this answers something by its words, and they say nothing. A withdrawal is none of these: ignored, it would leave an answer standing.
pub(super) fn says_nothing(fact: &Fact) -> bool {
    let words = match fact {
        Fact::CauseNoted { cause, .. } => cause,
        Fact::SourceAnswered { found: None, looked, .. } | Fact::StoredAnswered { found: None, looked, .. } => looked,
        Fact::SourceElsewhere { why, .. }
        | Fact::CutDiffers { why, .. }
        | Fact::Deviated { why, .. }
        | Fact::AsideAnswered { why, .. } => why,
        _ => return false,
    };
    !says_something(words)
}
