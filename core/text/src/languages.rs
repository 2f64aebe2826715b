//! Languages: the catalogue in one of them, picked by what a device asks for. Which rules hold is another matter: see [`crate::terms`].
//!
//! Two are made of the English by a rule and are nobody's language: a longer one and one that runs from right to left. They show where a
//! screen has no room for another language; they go by the names that phones have for such (`en-XA`, `ar-XB`).

use std::cell::Cell;

/// A language in which everything can be said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Language {
    /// The one in which messages are written, in the words of each rule set.
    #[default]
    English,
    /// A draft.
    German,
    /// A draft.
    Spanish,
    /// English, about 40 % longer, with marks on its vowels.
    Lengthened,
    /// English, each word from right to left.
    Mirrored,
}

/// All of them.
pub const ALL: [Language; 5] =
    [Language::English, Language::German, Language::Spanish, Language::Lengthened, Language::Mirrored];
/// Those that people speak, as they are offered.
pub const OFFERED: [Language; 3] = [Language::English, Language::German, Language::Spanish];

impl Language {
    /// Its tag (BCP 47).
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::German => "de",
            Language::Spanish => "es",
            Language::Lengthened => "en-XA",
            Language::Mirrored => "ar-XB",
        }
    }

    /// What it calls itself.
    pub fn own_name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::German => "Deutsch",
            Language::Spanish => "Español",
            Language::Lengthened => "Éengliísh",
            Language::Mirrored => "\u{202e}English\u{202c}",
        }
    }

    /// The language of this tag; of one that names a country or a script too, the language alone. `None` where there is none.
    pub fn of_tag(tag: &str) -> Option<Language> {
        let known = |tag: &str| ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(tag));
        let plain = tag.trim().replace('_', "-");
        known(&plain).or_else(|| plain.split('-').next().and_then(known))
    }

    /// The first of these tags that is known, in the order in which a person prefers them; English where none is.
    pub fn of_tags<'a>(tags: impl IntoIterator<Item = &'a str>) -> Language {
        tags.into_iter().find_map(Language::of_tag).unwrap_or_default()
    }

    /// Whether no licensed electrician has checked its messages: it says so wherever it is used.
    pub fn draft(self) -> bool {
        matches!(self, Language::German | Language::Spanish)
    }

    /// Whether it is read from right to left.
    pub fn mirrored(self) -> bool {
        self == Language::Mirrored
    }

    /// What stands before the tenths of a figure.
    pub(crate) fn decimal_mark(self) -> char {
        match self {
            Language::German | Language::Spanish => ',',
            Language::English | Language::Lengthened | Language::Mirrored => '.',
        }
    }

    /// The one that this thread speaks now.
    pub fn now() -> Language {
        SPOKEN.get()
    }
}

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// While it lives, this thread speaks this language.
#[must_use]
#[derive(Debug)]
pub struct Spoken(Language);

impl Spoken {
    /// From now on.
    pub fn of(language: Language) -> Spoken {
        Spoken(SPOKEN.replace(language))
    }
}

impl Drop for Spoken {
    fn drop(&mut self) {
        SPOKEN.set(self.0);
    }
}

/// The catalogue with every vowel twice, once with a mark: vowels are about four letters of ten in English.
pub(crate) fn lengthened(catalogue: &str) -> String {
    each_text(catalogue, |text| {
        text.chars().fold(String::with_capacity(text.len() * 2), |mut out, letter| {
            if let Some(at) = VOWELS.find(letter) {
                out.extend(MARKED.chars().nth(at));
            }
            out.push(letter);
            out
        })
    })
}
const VOWELS: &str = "aeiouAEIOU";
const MARKED: &str = "áéíóúÁÉÍÓÚ";

/// The catalogue with every word turned around on the screen, by Unicode's own marks for that (UAX 9).
pub(crate) fn mirrored(catalogue: &str) -> String {
    each_text(catalogue, |text| {
        let mut out = String::with_capacity(text.len() * 2);
        for word in text.split_inclusive(' ') {
            let (letters, blank) = word.split_at(word.trim_end().len());
            let plain = letters.chars().any(char::is_alphabetic);
            out.extend(plain.then_some("\u{200f}\u{202e}"));
            out.push_str(letters);
            out.extend(plain.then_some("\u{202c}\u{200f}"));
            out.push_str(blank);
        }
        out
    })
}

/// The catalogue with each of its texts changed. What stands at the left edge, in braces or in square brackets is a name and stays: ids,
/// values, cases.
pub(crate) fn each_text(catalogue: &str, mut change: impl FnMut(&str) -> String) -> String {
    let mut out = String::with_capacity(catalogue.len() + catalogue.len() / 16);
    for line in catalogue.split_inclusive('\n') {
        if line.starts_with('#') {
            out.push_str(line);
            continue;
        }
        let begins = line.starts_with(|c: char| c.is_ascii_lowercase()).then(|| line.find('=')).flatten();
        let (name, mut said) = line.split_at(begins.map_or(0, |at| at + 1));
        out.push_str(name);
        // `{ $value }`, `{ $n ->` and `[case]` stay as they are.
        while let Some(at) = said.find(['{', '[']) {
            let closing = if said.as_bytes().get(at) == Some(&b'[') { ']' } else { '}' };
            let end = said[at..].find(closing).map_or(said.len(), |len| at + len + 1);
            out.push_str(&change(&said[..at]));
            out.push_str(&said[at..end]);
            said = &said[end..];
        }
        out.push_str(&change(said));
    }
    out
}
