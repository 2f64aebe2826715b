//! What the person answers: choices, fields, pads of readings.

use maud::{Markup, html};
use stillbar_core::parts::{Choice, Entry, EntryKind, Opt, Pad, PadRow};

use stillbar_core::text::screens::shell as said;

use super::drawing::picture;
use super::{described, sign, tone};

/// Longest answer, in characters, of which two stand side by side on a phone.
const SHORT: usize = 27;

/// Longest word of answers, in letters, of which three stand side by side on a phone; and the shortest of which not even two do.
const THREE: usize = 10;
const TWO: usize = 14;

/// Letters of the longest word that cannot be broken. Marks that turn the direction of writing take no room.
fn longest_word(options: &[Opt]) -> usize {
    let letters = |word: &str| word.chars().filter(|c| c.is_alphanumeric()).count();
    let parts = |c: char| c.is_whitespace() || c == '-' || c == '/';
    options.iter().flat_map(|o| o.label.split(parts)).map(letters).max().unwrap_or_default()
}

pub fn choice(id: &str, choice: &Choice) -> Markup {
    let kind = if choice.many { "checkbox" } else { "radio" };
    html! {
        fieldset #(id) .choice {
            legend { (choice.label) }
            // Several short answers share a line; a long one needs it for itself.
            @let word = longest_word(&choice.options);
            @let short = choice.options.len() > 3 && word < TWO && choice.options.iter().all(|o| o.label.chars().count() <= SHORT);
            div .tiles.stacked[!short].pictured[choice.options.iter().any(|o| o.drawing.is_some())].short[short].longer[word >= TWO] {
                @for (i, option) in choice.options.iter().enumerate() {
                    (tile(&format!("{id}:{i}"), kind, &choice.field, option, choice.chosen.contains(&option.value)))
                }
            }
        }
    }
}

/// The sign of a tile's tone and the mark of its being chosen are shapes, so that neither needs colour.
fn tile(id: &str, kind: &str, field: &str, option: &Opt, chosen: bool) -> Markup {
    html! {
        label .tile.(tone(option.tone)) for=(id) {
            input #(id) type=(kind) name=(field) value=(option.value) data-field=(field) checked[chosen];
            @if let Some(drawn) = &option.drawing { (picture(drawn)) }
            span .mark aria-hidden="true" {}
            span .name { (sign::of_button(option.tone)) (option.label) }
        }
    }
}

pub fn entry(id: &str, entry: &Entry) -> Markup {
    let limit = (entry.limit > 0).then_some(entry.limit);
    let input = format!("{id}:input");
    let hint = described(id, &entry.hint);
    // What a browser would offer to fill in is somebody else's.
    let fill_in = (entry.kind == EntryKind::Pin).then_some("one-time-code");
    let (kind, mode) = match entry.kind {
        EntryKind::Number => ("text", Some("decimal")),
        EntryKind::Telephone => ("tel", Some("tel")),
        EntryKind::Pin => ("password", Some("numeric")),
        EntryKind::Text | EntryKind::Long => ("text", None),
    };
    html! {
        div #(id) .entry {
            label for=(input) { (entry.label) }
            @if entry.kind == EntryKind::Long {
                // A line break right after the tag would be lost in parsing; this one is there to be.
                textarea #(input) data-field=(entry.field) rows="4" maxlength=[limit] aria-describedby=[&hint] { "\n" (entry.value) }
            } @else {
                input #(input) .(if mode.is_some() { "figures" } else { "words" }) type=(kind) inputmode=[mode] enterkeyhint="next"
                    data-field=(entry.field) maxlength=[limit] autocomplete=[fill_in] value=(entry.value) aria-describedby=[&hint];
            }
            @if let Some(hint) = &hint { p .hint #(hint) { (entry.hint) } }
        }
    }
}

pub fn pad(id: &str, pad: &Pad) -> Markup {
    html! {
        fieldset #(id) .pad data-done=[(!pad.done.is_empty()).then_some(&pad.done)] {
            legend { (pad.label) }
            @for (i, row) in pad.rows.iter().enumerate() { (pad_row(&format!("{id}:{i}"), row, pad)) }
        }
    }
}

fn pad_row(id: &str, row: &PadRow, pad: &Pad) -> Markup {
    let hint = described(id, &row.hint);
    let answered = pad.options.iter().any(|o| o.value == row.chosen);
    let (volts, clash) = (format!("{id}:volts"), format!("{id}:clash"));
    html! {
        fieldset #(id) .row data-row aria-describedby=[&hint] {
            legend { (row.label) }
            @if let Some(hint) = &hint { p .hint #(hint) { (row.hint) } }
            @if !pad.options.is_empty() {
                @let word = longest_word(&pad.options);
                div .tiles.long[word > THREE && word < TWO].longer[word >= TWO] {
                    @for (i, option) in pad.options.iter().enumerate() {
                        (tile(&format!("{id}:{i}"), "radio", &row.field, option, option.value == row.chosen))
                    }
                }
            }
            @if pad.volts {
                div .volts {
                    label for=(volts) { span .unseen { (row.label) " " } (said::volts()) }
                    input #(volts) .figures type="text" inputmode="decimal" maxlength="12" enterkeyhint="next" data-field=(row.field)
                        value=(if answered { "" } else { row.chosen.as_str() });
                }
                @if !pad.options.is_empty() {
                    p .hint #(clash) data-clash role="alert" hidden { (said::number_counts()) }
                }
            }
        }
    }
}
