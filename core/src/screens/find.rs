//! Long lists are narrowed by words: jobs, locks, people. What is left out is counted, so that nobody takes a part for the whole.

use super::build::Page;
use super::context::{Act, Look};
use super::parts::Tone;
use crate::app::NotDone;
use crate::text::screens::find as said;

/// What was looked for; its field.
const FIND: &str = "find";
/// Shorter lists are read faster than a word is typed.
const LONG: usize = 8;

/// A list that is being looked through.
pub(super) struct Find {
    words: Vec<String>,
    all: usize,
}

impl Find {
    /// The words that were typed on this screen, for a list of so many rows.
    pub fn of(look: &Look, all: usize) -> Find {
        let words = look.draft(FIND).split_whitespace().map(str::to_lowercase).collect();
        Find { words, all }
    }

    /// Whether one of the texts has each of the words, in capitals or not.
    pub fn fits(&self, texts: &[&str]) -> bool {
        let texts: Vec<String> = texts.iter().map(|text| text.to_lowercase()).collect();
        self.words.iter().all(|word| texts.iter().any(|text| text.contains(word)))
    }

    /// The field, above a long list; once something was looked for, how much of the list is shown.
    pub fn field(&self, page: &mut Page, look: &Look, shown: usize) {
        if self.all <= LONG && self.words.is_empty() {
            return;
        }
        page.entry(FIND, &said::words(), &said::words_hint(), look.draft(FIND));
        page.toned(said::look(), "find", Tone::Quiet);
        if !self.words.is_empty() {
            page.caution(Tone::Warn, said::shown(shown, self.all));
            page.toned(said::all(), "find all", Tone::Quiet);
        }
    }
}

/// `find`, by what stands in the field, or `find all`.
pub(super) fn act(act: &mut Act, arg: &str) -> Result<(), NotDone> {
    let words = if arg == "all" { String::new() } else { act.given(FIND) };
    act.note(FIND, &words);
    Ok(())
}
