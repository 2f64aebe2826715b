//! The catalogue of messages, and what checks that code and catalogue go together.
//!
//! Messages are in Fluent (the format of projectfluent.org, syntax 1.0), a file a topic. That a message exists and takes exactly the values
//! that it is given is found by the compiler: [`takes`] reads the catalogue in a `const`. A test finds those that nothing uses.
//!
//! `# life-critical`, a line of its own right above a message, marks one that a life rests on: somebody who takes it for something else may touch
//! what is live. Whoever checks or translates reads these first; `docs/life-critical.md` lists them.

use std::cell::Cell;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

use super::languages::{self, Language};
use super::terms::{Terms, reworded};

/// Every message of a language, by the name of its folder.
macro_rules! messages {
    ($language:literal) => {
        concat!(
            include_str!(concat!($language, "/again.ftl")),
            include_str!(concat!($language, "/ask.ftl")),
            include_str!(concat!($language, "/ask-device.ftl")),
            include_str!(concat!($language, "/ask-isolate.ftl")),
            include_str!(concat!($language, "/ask-job.ftl")),
            include_str!(concat!($language, "/ask-lock.ftl")),
            include_str!(concat!($language, "/ask-plan.ftl")),
            include_str!(concat!($language, "/ask-prove.ftl")),
            include_str!(concat!($language, "/ask-restore.ftl")),
            include_str!(concat!($language, "/ask-supply.ftl")),
            include_str!(concat!($language, "/asked.ftl")),
            include_str!(concat!($language, "/blockers.ftl")),
            include_str!(concat!($language, "/case.ftl")),
            include_str!(concat!($language, "/company.ftl")),
            include_str!(concat!($language, "/conditions.ftl")),
            include_str!(concat!($language, "/dead-test.ftl")),
            include_str!(concat!($language, "/drawing.ftl")),
            include_str!(concat!($language, "/energised.ftl")),
            include_str!(concat!($language, "/entries.ftl")),
            include_str!(concat!($language, "/files.ftl")),
            include_str!(concat!($language, "/gone.ftl")),
            include_str!(concat!($language, "/judge.ftl")),
            include_str!(concat!($language, "/locks.ftl")),
            include_str!(concat!($language, "/network.ftl")),
            include_str!(concat!($language, "/plan.ftl")),
            include_str!(concat!($language, "/proof.ftl")),
            include_str!(concat!($language, "/restore.ftl")),
            include_str!(concat!($language, "/rule-sets.ftl")),
            include_str!(concat!($language, "/screen-app.ftl")),
            include_str!(concat!($language, "/screen-aside.ftl")),
            include_str!(concat!($language, "/screen-command.ftl")),
            include_str!(concat!($language, "/screen-find.ftl")),
            include_str!(concat!($language, "/screen-give-up.ftl")),
            include_str!(concat!($language, "/screen-home.ftl")),
            include_str!(concat!($language, "/screen-isolate.ftl")),
            include_str!(concat!($language, "/screen-job.ftl")),
            include_str!(concat!($language, "/screen-language.ftl")),
            include_str!(concat!($language, "/screen-locks.ftl")),
            include_str!(concat!($language, "/screen-near.ftl")),
            include_str!(concat!($language, "/screen-office.ftl")),
            include_str!(concat!($language, "/screen-pin.ftl")),
            include_str!(concat!($language, "/screen-plan.ftl")),
            include_str!(concat!($language, "/screen-prove.ftl")),
            include_str!(concat!($language, "/screen-record.ftl")),
            include_str!(concat!($language, "/screen-restore.ftl")),
            include_str!(concat!($language, "/screen-ruled.ftl")),
            include_str!(concat!($language, "/screen-shell.ftl")),
            include_str!(concat!($language, "/screen-supply.ftl")),
            include_str!(concat!($language, "/screen-system.ftl")),
            include_str!(concat!($language, "/screen-tags.ftl")),
            include_str!(concat!($language, "/screen-work.ftl")),
            include_str!(concat!($language, "/standing.ftl")),
            include_str!(concat!($language, "/steps.ftl")),
            include_str!(concat!($language, "/supply.ftl")),
            include_str!(concat!($language, "/times.ftl")),
            include_str!(concat!($language, "/typed.ftl")),
            include_str!(concat!($language, "/void.ftl")),
            include_str!(concat!($language, "/words.ftl")),
        )
    };
}

/// Every message, in English.
const ENGLISH: &str = messages!("en");
/// Drafts that nobody licensed has checked.
const GERMAN: &str = messages!("de");
const SPANISH: &str = messages!("es");

/// Where each message of [`ENGLISH`] begins and ends, in bytes.
static PLACES: [(usize, usize); COUNT] = places();
const COUNT: usize = count();

/// A number for each id, in the same order: the compiler looks for every message that is said, and comparing letters took it half a minute.
static NUMBERS: [u64; COUNT] = numbers();

/// In English as it is written, and in the words of other countries, each made only where somebody works by its rules.
static BUNDLE: LazyLock<Bundle> = LazyLock::new(|| bundle("en", ENGLISH.to_owned()));
static AMERICAN: LazyLock<Bundle> = LazyLock::new(|| bundle("en", reworded(ENGLISH, Terms::American)));
static AUSTRALASIAN: LazyLock<Bundle> = LazyLock::new(|| bundle("en", reworded(ENGLISH, Terms::Australasian)));
/// In other languages, each made only where it is spoken.
static GERMAN_BUNDLE: LazyLock<Bundle> = LazyLock::new(|| bundle("de", GERMAN.to_owned()));
static SPANISH_BUNDLE: LazyLock<Bundle> = LazyLock::new(|| bundle("es", SPANISH.to_owned()));
static LENGTHENED: LazyLock<Bundle> = LazyLock::new(|| bundle("en", languages::lengthened(ENGLISH)));
static MIRRORED: LazyLock<Bundle> = LazyLock::new(|| bundle("en", languages::mirrored(ENGLISH)));

type Bundle = FluentBundle<FluentResource>;

/// The messages of this catalogue, with the plural forms of this language.
fn bundle(language: &str, catalogue: String) -> Bundle {
    let mut bundle = FluentBundle::new_concurrent(language.parse().into_iter().collect());
    // No marks around values: they would show up in what is exported, and each shell says which way its page runs.
    bundle.set_use_isolating(false);
    let resource = FluentResource::try_new(catalogue).unwrap_or_else(|(whole, _)| whole);
    // What stands twice is refused; a test finds it.
    let _ = bundle.add_resource(resource);
    bundle
}

/// In which messages are said now.
fn spoken() -> &'static Bundle {
    match (Language::now(), Terms::now()) {
        (Language::English, Terms::British) => &BUNDLE,
        (Language::English, Terms::American) => &AMERICAN,
        (Language::English, Terms::Australasian) => &AUSTRALASIAN,
        (Language::German, _) => &GERMAN_BUNDLE,
        (Language::Spanish, _) => &SPANISH_BUNDLE,
        (Language::Lengthened, _) => &LENGTHENED,
        (Language::Mirrored, _) => &MIRRORED,
    }
}

thread_local! {
    static DISTORTED: Cell<bool> = const { Cell::new(false) };
}

/// The message of this id with these values; the id itself should there be none.
pub(super) fn format<const N: usize>(id: &str, values: [(&'static str, FluentValue<'_>); N]) -> String {
    if DISTORTED.get() {
        return distort(id, &values);
    }
    // What a draft does not have is said in English: a test finds it, and a person must not meet an id.
    let said = |bundle: &'static Bundle| Some((bundle, bundle.get_message(id)?.value()?));
    let Some((bundle, pattern)) = said(spoken()).or_else(|| said(&BUNDLE)) else { return id.to_owned() };
    let args = FluentArgs::from_iter(values);
    bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
}

fn distort(id: &str, values: &[(&'static str, FluentValue<'_>)]) -> String {
    let value = |value: &FluentValue| match value {
        FluentValue::String(text) => text.to_string(),
        FluentValue::Number(number) => number.as_string().into_owned(),
        _ => String::new(),
    };
    let said: String = values.iter().map(|(name, v)| format!(" {name}={}", value(v))).collect();
    format!("‹{id}{said}›")
}

/// While it lives, this thread says every message in other words: nothing but what is shown may change.
#[doc(hidden)]
pub struct Distorted(bool);

impl Distorted {
    /// From now on.
    pub fn new() -> Distorted {
        Distorted(DISTORTED.replace(true))
    }
}

impl Default for Distorted {
    fn default() -> Distorted {
        Distorted::new()
    }
}

impl Drop for Distorted {
    fn drop(&mut self) {
        DISTORTED.set(self.0);
    }
}

/// Every message as it is written, id and source: as it stands in the catalogue, and in these words.
#[doc(hidden)]
pub fn catalogues(terms: Terms) -> [Vec<(String, String)>; 2] {
    [written(ENGLISH), written(&reworded(ENGLISH, terms))]
}

/// Every message as it is written in this language, id and source.
#[doc(hidden)]
pub fn catalogue_in(language: Language) -> Vec<(String, String)> {
    match language {
        Language::English => written(ENGLISH),
        Language::German => written(GERMAN),
        Language::Spanish => written(SPANISH),
        Language::Lengthened => written(&languages::lengthened(ENGLISH)),
        Language::Mirrored => written(&languages::mirrored(ENGLISH)),
    }
}

fn written(text: &str) -> Vec<(String, String)> {
    let begins = |line: &str| line.starts_with(|c: char| c.is_ascii_lowercase());
    let mut all: Vec<(String, String)> = Vec::new();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        match line.split_once('=').filter(|_| begins(line)) {
            Some((id, said)) => all.push((id.trim().to_owned(), said.to_owned())),
            None => all.iter_mut().next_back().into_iter().for_each(|(_, said)| *said = format!("{said}\n{line}")),
        }
    }
    all
}

/// Says a message of the catalogue: `say!("lock-off-already")`, `say!("point-not-open", at = label)`.
macro_rules! say {
    ($id:literal $(, $name:ident = $value:expr)* $(,)?) => {{
        const _: () = assert!(
            $crate::catalogue::takes($id, &[$(stringify!($name)),*]),
            concat!("the catalogue has no message ", $id, " that takes just these values")
        );
        $crate::catalogue::format($id, [$((stringify!($name), fluent_bundle::FluentValue::from($value))),*])
    }};
}
pub(super) use say;

/// Whether the catalogue has a message of this id that uses all of these values and no other.
pub(super) const fn takes(id: &str, names: &[&str]) -> bool {
    let (text, id) = (ENGLISH.as_bytes(), id.as_bytes());
    let number = number(id, 0);
    let mut n = 0;
    while n < COUNT {
        if NUMBERS[n] == number {
            let (from, to) = PLACES[n];
            if stands_at(text, from, id) && !is_of_name(text[from + id.len()]) {
                return uses_only(text, from, to, names) && uses_all(text, from, to, names);
            }
        }
        n += 1;
    }
    false
}

/// FNV-1a, 64 bits, of the name that stands here.
const fn number(text: &[u8], from: usize) -> u64 {
    let mut number = 0xcbf2_9ce4_8422_2325_u64;
    let mut at = from;
    while at < text.len() && is_of_name(text[at]) {
        number = (number ^ text[at] as u64).wrapping_mul(0x0100_0000_01b3);
        at += 1;
    }
    number
}

const fn numbers() -> [u64; COUNT] {
    let mut numbers = [0; COUNT];
    let mut n = 0;
    while n < COUNT {
        numbers[n] = number(ENGLISH.as_bytes(), PLACES[n].0);
        n += 1;
    }
    numbers
}

const fn uses_all(text: &[u8], from: usize, to: usize, names: &[&str]) -> bool {
    let mut n = 0;
    while n < names.len() {
        let name = names[n].as_bytes();
        let mut at = from;
        let mut used = false;
        while at < to && !used {
            used = text[at] == b'$' && stands_at(text, at + 1, name) && !is_of_name(text[at + 1 + name.len()]);
            at += 1;
        }
        if !used {
            return false;
        }
        n += 1;
    }
    true
}

const fn uses_only(text: &[u8], from: usize, to: usize, names: &[&str]) -> bool {
    let mut at = from;
    while at < to {
        if text[at] == b'$' {
            let mut known = false;
            let mut n = 0;
            while n < names.len() {
                let name = names[n].as_bytes();
                known = known || stands_at(text, at + 1, name) && !is_of_name(text[at + 1 + name.len()]);
                n += 1;
            }
            if !known {
                return false;
            }
        }
        at += 1;
    }
    true
}

const fn stands_at(text: &[u8], at: usize, word: &[u8]) -> bool {
    if at + word.len() >= text.len() {
        return false;
    }
    let mut n = 0;
    while n < word.len() {
        if text[at + n] != word[n] {
            return false;
        }
        n += 1;
    }
    true
}

const fn is_of_name(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_'
}

/// Whether a line begins here, and with it a message: its id stands at the left edge.
const fn begins(text: &[u8], at: usize) -> bool {
    (at == 0 || text[at - 1] == b'\n') && text[at].is_ascii_lowercase()
}

const fn count() -> usize {
    let text = ENGLISH.as_bytes();
    let (mut at, mut count) = (0, 0);
    while at < text.len() {
        if begins(text, at) {
            count += 1;
        }
        at += 1;
    }
    count
}

const fn places() -> [(usize, usize); COUNT] {
    let text = ENGLISH.as_bytes();
    let mut places = [(0, 0); COUNT];
    let (mut at, mut n) = (0, 0);
    while at < text.len() {
        // What stands at the left edge ends the message before it: another one, or a comment.
        if (at == 0 || text[at - 1] == b'\n') && !text[at].is_ascii_whitespace() && n > 0 && places[n - 1].1 == 0 {
            places[n - 1].1 = at;
        }
        if begins(text, at) {
            places[n].0 = at;
            n += 1;
        }
        at += 1;
    }
    if n > 0 && places[n - 1].1 == 0 {
        places[n - 1].1 = text.len();
    }
    places
}
