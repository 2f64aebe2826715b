//! What several looks at one picture found, and what of it is believed.

use super::{FoundTag, MAX_OTHER, MAX_OTHER_CHARS};
use crate::tag::{MARK, TagId};

/// Most texts that wait for a second reading; noise that reads as text must not fill the memory.
const MAX_WAITING: usize = 64;

/// Texts from all looks so far.
#[derive(Default)]
pub(super) struct Gathered {
    found: FoundTag,
    /// Foreign texts that were read once.
    waiting: Vec<String>,
}

impl Gathered {
    /// Takes the texts of one look.
    ///
    /// A tag carries its own check. A foreign text does not, and Reed-Solomon correction of a symbol that is mostly noise
    /// now and then ends at some other text; it is told when two looks read the same.
    pub fn add(&mut self, mut texts: Vec<String>) {
        texts.sort_unstable();
        texts.dedup();
        for text in texts {
            match text.parse::<TagId>() {
                // As printed only: what a person may type in small letters is no tag in a symbol.
                Ok(tag) if tag.as_str() == text => {
                    if !self.found.tags.contains(&tag) {
                        self.found.tags.push(tag);
                    }
                }
                _ if text.starts_with(MARK) || text.trim().is_empty() => {}
                _ => self.foreign(text.chars().take(MAX_OTHER_CHARS).collect()),
            }
        }
    }

    /// Whether another look is worth its time: nothing yet, or a text that one look alone has read.
    pub fn is_unsure(&self) -> bool {
        (self.found.tags.is_empty() && self.found.other.is_empty()) || !self.waiting.is_empty()
    }

    /// What is believed.
    pub fn into_found(self) -> FoundTag {
        self.found
    }

    fn foreign(&mut self, text: String) {
        if self.found.other.contains(&text) {
            return;
        }
        if let Some(at) = self.waiting.iter().position(|w| *w == text) {
            if self.found.other.len() < MAX_OTHER {
                self.found.other.push(self.waiting.swap_remove(at));
            }
        } else if self.waiting.len() < MAX_WAITING {
            self.waiting.push(text);
        }
    }
}
