//! What an answer is: what has to be said and read with it, and what it does.

use super::reads::{Quantity, Reads};

/// One answer.
pub struct Answer {
    /// Its name in entries, tables and messages.
    pub code: &'static str,
    /// What has to be said with it.
    pub words: Words,
    /// What it does.
    pub does: Does,
    /// What is read for it, and what it is where more was read than counts as nothing.
    pub reads: Option<Reads>,
    /// Which stops it lifts.
    pub lifts: Lifts,
}

/// Which answers that stop an answer to the same question lifts, where it does not stop itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lifts {
    /// Every one.
    Every,
    /// These alone, by their codes.
    These(&'static [&'static str]),
}

/// What has to be said with an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Words {
    /// Nothing.
    None,
    /// How, what or why.
    How,
    /// Who: names, which can be withheld.
    Who,
}

/// What an answer does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Does {
    /// The question is answered.
    Goes,
    /// The same, and the answer stands beside what is proved: not all was shown.
    Stands,
    /// Nothing behind it goes on, and nothing stands proved, until it is answered otherwise.
    Stops,
}

impl Answer {
    /// Whether it lifts one that stops.
    pub(super) fn lifts(&self, stop: &Answer) -> bool {
        self.does != Does::Stops
            && match self.lifts {
                Lifts::Every => true,
                Lifts::These(codes) => codes.contains(&stop.code),
            }
    }

    /// The same, lifting these stops alone.
    pub(super) const fn lifting(self, codes: &'static [&'static str]) -> Answer {
        Answer { lifts: Lifts::These(codes), ..self }
    }

    /// The same with a reading: more than counts as nothing makes it the answer `over`.
    pub(super) const fn reading(self, quantity: Quantity, over: &'static str) -> Answer {
        Answer { reads: Some(Reads { quantity, over }), ..self }
    }
}

const fn answer(code: &'static str, words: Words, does: Does) -> Answer {
    Answer { code, words, does, reads: None, lifts: Lifts::Every }
}

/// Goes on, without words.
pub(super) const fn plain(code: &'static str) -> Answer {
    answer(code, Words::None, Does::Goes)
}

/// Goes on, with words.
pub(super) const fn said(code: &'static str) -> Answer {
    answer(code, Words::How, Does::Goes)
}

/// Goes on, with the names of people.
pub(super) const fn named(code: &'static str) -> Answer {
    answer(code, Words::Who, Does::Goes)
}

/// Goes on, with words, and stands beside what is proved.
pub(super) const fn stands(code: &'static str) -> Answer {
    answer(code, Words::How, Does::Stands)
}

/// Stops.
pub(super) const fn stops(code: &'static str) -> Answer {
    answer(code, Words::None, Does::Stops)
}
