//! Words of the trade that differ from country to country: the same catalogue, said in the words of a rule set. Language is another matter.
//!
//! Only what the program says is put into other words, never what people typed: words are exchanged in the catalogue itself, before any value
//! is put in. Words: NFPA 70E, NEC article 100 and 29 CFR 1910.147 and .333 for North America, from memory; nobody licensed has checked them.

use std::cell::Cell;
use std::sync::LazyLock;

use stillbar_values::RuleSet;

use crate::languages::each_text;

/// Whose words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Terms {
    /// Those of the catalogue as it is written: earth, isolator, caution sign.
    #[default]
    British,
    /// Those of the United States and Canada: ground, disconnect, danger tag.
    American,
    /// Those of Australia and New Zealand: danger tag, switchboard.
    Australasian,
}

/// What is said in the catalogue, and there.
type Exchanged = Vec<(&'static str, &'static str)>;

static AMERICAN: LazyLock<Exchanged> = LazyLock::new(|| pairs(include_str!("en/north-america.terms")));
static AUSTRALASIAN: LazyLock<Exchanged> = LazyLock::new(|| pairs(include_str!("en/australasia.terms")));

fn pairs(lines: &'static str) -> Exchanged {
    lines.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once(" = ")).collect()
}

thread_local! {
    static SPOKEN: Cell<Terms> = const { Cell::new(Terms::British) };
}

impl Terms {
    /// The words of a rule set.
    pub fn of(rules: Option<RuleSet>) -> Terms {
        match rules {
            Some(RuleSet::Us | RuleSet::Ca) => Terms::American,
            Some(RuleSet::Au | RuleSet::Nz) => Terms::Australasian,
            _ => Terms::British,
        }
    }

    fn exchanged(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Terms::British => &[],
            Terms::American => &AMERICAN,
            Terms::Australasian => &AUSTRALASIAN,
        }
    }

    /// Those in which this thread speaks now.
    pub(crate) fn now() -> Terms {
        SPOKEN.get()
    }
}

/// While it lives, this thread speaks in the words of a rule set.
#[must_use]
#[derive(Debug)]
pub struct Speaking(Terms);

impl Speaking {
    /// From now on, in the words of these rules.
    pub fn of(rules: Option<RuleSet>) -> Speaking {
        Speaking(SPOKEN.replace(Terms::of(rules)))
    }
}

impl Drop for Speaking {
    fn drop(&mut self) {
        SPOKEN.set(self.0);
    }
}

/// A sentence of the program's own in the words that are spoken now.
pub fn in_terms(said: &'static str) -> String {
    exchanged(said, Terms::now())
}

/// The catalogue in other words.
pub(crate) fn reworded(catalogue: &str, terms: Terms) -> String {
    each_text(catalogue, |text| exchanged(text, terms))
}

/// Words and phrases exchanged, each as a whole.
fn exchanged(said: &str, terms: Terms) -> String {
    let words = terms.exchanged();
    let mut out = String::with_capacity(said.len() + 16);
    let mut rest = said;
    let mut before = ' ';
    while let Some(first) = rest.chars().next() {
        let found = (!of_word(before)).then(|| words.iter().find(|(from, _)| begins_with(rest, from))).flatten();
        let Some((from, to)) = found else {
            out.push(first);
            (before, rest) = (first, &rest[first.len_utf8()..]);
            continue;
        };
        let mut to = to.chars();
        if first.is_uppercase() && to.as_str().chars().next().is_some_and(char::is_lowercase) {
            out.extend(to.next().into_iter().flat_map(char::to_uppercase));
        }
        out.push_str(to.as_str());
        (before, rest) = ('x', &rest[from.len()..]);
    }
    out
}

/// Whether a text begins with this phrase, as whole words and without regard to capitals.
fn begins_with(text: &str, phrase: &str) -> bool {
    let here = text.get(..phrase.len()).is_some_and(|here| here.eq_ignore_ascii_case(phrase));
    here && !text[phrase.len()..].starts_with(of_word)
}

fn of_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_' || c == '$'
}
