//! Which language this device speaks: the one that a person chose in the app, else the first of the phone's that the app has.

use super::{NotDone, Session};
use crate::text::languages::Language;

/// Under this name the store keeps what a person chose.
pub(super) const CHOSEN: &str = "language";

/// See the module.
#[derive(Debug, Clone, Copy, Default)]
pub struct Chosen {
    /// By a person, in the app.
    pub chosen: Option<Language>,
    /// By the device.
    pub asked: Language,
}

impl Chosen {
    /// The one that is spoken.
    pub fn spoken(self) -> Language {
        self.chosen.unwrap_or(self.asked)
    }
}

impl Session {
    /// See [`super::Field::speak`].
    pub(super) fn speak(&mut self, tags: &[String]) {
        let before = self.language.spoken();
        self.language.asked = Language::of_tags(tags.iter().map(String::as_str));
        if self.language.spoken() != before {
            // What was said last is in the other language.
            self.notice = None;
            self.stirred += 1;
        }
    }

    /// A person chooses; `None` follows the device again.
    pub(crate) fn choose_language(&mut self, chosen: Option<Language>) -> Result<(), NotDone> {
        match chosen {
            Some(language) => self.store.keep_local(CHOSEN, language.tag())?,
            None => self.store.drop_local(CHOSEN)?,
        }
        self.language.chosen = chosen;
        Ok(())
    }
}
