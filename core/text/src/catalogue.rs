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

use super::terms::{Terms, reworded};

/// Every message, in English.
const ENGLISH: &str = concat!(
    include_str!("en/again.ftl"),
    include_str!("en/ask.ftl"),
    include_str!("en/ask-device.ftl"),
    include_str!("en/ask-isolate.ftl"),
    include_str!("en/ask-job.ftl"),
    include_str!("en/ask-lock.ftl"),
    include_str!("en/ask-plan.ftl"),
    include_str!("en/ask-prove.ftl"),
    include_str!("en/ask-restore.ftl"),
    include_str!("en/ask-supply.ftl"),
    include_str!("en/asked.ftl"),
    include_str!("en/blockers.ftl"),
    include_str!("en/case.ftl"),
    include_str!("en/company.ftl"),
    include_str!("en/conditions.ftl"),
    include_str!("en/dead-test.ftl"),
    include_str!("en/energised.ftl"),
    include_str!("en/entries.ftl"),
    include_str!("en/gone.ftl"),
    include_str!("en/judge.ftl"),
    include_str!("en/drawing.ftl"),
    include_str!("en/files.ftl"),
    include_str!("en/locks.ftl"),
    include_str!("en/network.ftl"),
    include_str!("en/plan.ftl"),
    include_str!("en/proof.ftl"),
    include_str!("en/restore.ftl"),
    include_str!("en/rule-sets.ftl"),
    include_str!("en/screen-app.ftl"),
    include_str!("en/screen-aside.ftl"),
    include_str!("en/screen-command.ftl"),
    include_str!("en/screen-give-up.ftl"),
    include_str!("en/screen-locks.ftl"),
    include_str!("en/screen-near.ftl"),
    include_str!("en/screen-office.ftl"),
    include_str!("en/screen-pin.ftl"),
    include_str!("en/screen-plan.ftl"),
    include_str!("en/screen-record.ftl"),
    include_str!("en/screen-restore.ftl"),
    include_str!("en/screen-ruled.ftl"),
    include_str!("en/screen-supply.ftl"),
    include_str!("en/screen-tags.ftl"),
    include_str!("en/standing.ftl"),
    include_str!("en/steps.ftl"),
    include_str!("en/supply.ftl"),
    include_str!("en/times.ftl"),
    include_str!("en/void.ftl"),
    include_str!("en/words.ftl"),
);

/// Where each message of [`ENGLISH`] begins and ends, in bytes.
static PLACES: [(usize, usize); COUNT] = places();
const COUNT: usize = count();

/// A number for each id, in the same order: the compiler looks for every message that is said, and comparing letters took it half a minute.
static NUMBERS: [u64; COUNT] = numbers();

static BUNDLE: LazyLock<FluentBundle<FluentResource>> = LazyLock::new(|| bundle(ENGLISH.to_owned()));
/// The same in the words of other countries, each made only where somebody works by its rules.
static AMERICAN: LazyLock<FluentBundle<FluentResource>> = LazyLock::new(|| bundle(reworded(ENGLISH, Terms::American)));
static AUSTRALASIAN: LazyLock<FluentBundle<FluentResource>> =
    LazyLock::new(|| bundle(reworded(ENGLISH, Terms::Australasian)));

fn bundle(catalogue: String) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new_concurrent("en".parse().into_iter().collect());
    // Nothing here is written from right to left yet; marks around every value would show up in what is exported.
    bundle.set_use_isolating(false);
    let resource = FluentResource::try_new(catalogue).unwrap_or_else(|(whole, _)| whole);
    // What stands twice is refused; a test finds it.
    let _ = bundle.add_resource(resource);
    bundle
}

thread_local! {
    static DISTORTED: Cell<bool> = const { Cell::new(false) };
}

/// The message of this id with these values; the id itself should there be none.
pub(super) fn format<const N: usize>(id: &str, values: [(&'static str, FluentValue<'_>); N]) -> String {
    if DISTORTED.get() {
        return distort(id, &values);
    }
    let bundle: &FluentBundle<FluentResource> = match Terms::now() {
        Terms::British => &BUNDLE,
        Terms::American => &AMERICAN,
        Terms::Australasian => &AUSTRALASIAN,
    };
    let Some(pattern) = bundle.get_message(id).and_then(|message| message.value()) else { return id.to_owned() };
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
    let other = reworded(ENGLISH, terms);
    let messages = |text: &str| {
        let begins = |line: &str| line.starts_with(|c: char| c.is_ascii_lowercase());
        let mut all: Vec<(String, String)> = Vec::new();
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            match line.split_once('=').filter(|_| begins(line)) {
                Some((id, said)) => all.push((id.trim().to_owned(), said.to_owned())),
                None => all.iter_mut().next_back().into_iter().for_each(|(_, said)| *said = format!("{said}\n{line}")),
            }
        }
        all
    };
    [messages(ENGLISH), messages(&other)]
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
