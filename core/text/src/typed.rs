//! What is wrong with something that was typed: inside a sentence, without a full stop.

use stillbar_values::figures::{MAX, ReadingError};
use stillbar_values::tag::{LENGTH, MARK, TagError};

use super::catalogue::say;
use super::words::{QUOTED, figure, quoted};

/// Why a typed figure is not one.
pub fn reading_error(error: &ReadingError) -> String {
    let typed = |text: &str| quoted(text, QUOTED);
    match error {
        ReadingError::NotVolts(text) => say!("typed-not-volts", typed = typed(text)),
        ReadingError::NotAmps(text) => say!("typed-not-amps", typed = typed(text)),
        ReadingError::OneOrThousand { typed: text, one, write_one, thousand, unit } => say!(
            "typed-one-or-thousand",
            typed = typed(text),
            one = figure(one.clone()),
            write = figure(write_one.clone()),
            thousand = thousand,
            unit = unit.sign()
        ),
        ReadingError::EitherWay { typed: text, value } => {
            say!("typed-either-way", typed = typed(text), value = figure(value.clone()))
        }
        ReadingError::Grouped(text) => say!("typed-grouped", typed = typed(text)),
        ReadingError::TooHigh(text, unit) => {
            say!("typed-too-high", typed = typed(text), most = MAX, unit = unit.sign())
        }
    }
}

/// Why a text is not a tag.
pub fn tag_error(error: &TagError) -> String {
    match error {
        TagError::Foreign => say!("typed-no-tag", length = LENGTH, mark = MARK),
        TagError::Check => say!("typed-tag-check"),
    }
}
