//! Questions of the procedure, their answers, and what was answered.

use super::catalogue::say;
use super::words::measured;
use stillbar_rules::job::asked::{GivenAnswer, Open, Quantity};
use stillbar_rules::prove::Measured;

/// A question, as it is asked. `of`: what the point or source is called that it is asked of.
pub fn question(code: &str, of: &str) -> String {
    match code {
        "line-at-earth" => say!("asked-line-at-earth"),
        "high-line" => say!("asked-high-line"),
        "grounded-line" => say!("asked-grounded-line"),
        "earthed-pole" => say!("asked-earthed-pole"),
        "told-each-other" => say!("asked-told-each-other"),
        "instrument-fit" => say!("asked-instrument-fit"),
        "right-board" => say!("asked-right-board", of = of),
        "labels" => say!("asked-labels", of = of),
        "starts-itself" => say!("asked-starts-itself", of = of),
        "tried-to-start" => say!("asked-tried-to-start"),
        "neutral-current" => say!("asked-neutral-current"),
        "live-beside" => say!("asked-live-beside"),
        "left-inside" => say!("asked-left-inside"),
        "temporary-earths" => say!("asked-temporary-earths"),
        "rcd" => say!("asked-rcd"),
        "controls-back" => say!("asked-controls-back", of = of),
        "charge-returned" => say!("asked-charge-returned"),
        "coupled" => say!("asked-coupled"),
        "current-transformers" => say!("asked-current-transformers"),
        "shorts-off" => say!("asked-shorts-off"),
        "interlocks" => say!("asked-interlocks"),
        "polarity-back" => say!("asked-polarity-back"),
        "counted-back" => say!("asked-counted-back"),
        "released-by" => say!("asked-released-by"),
        "company-isolate" | "company-work" | "company-restore" => say!("asked-company", of = of),
        unknown => unknown.to_owned(),
    }
}

/// What a question is about, before its answer.
pub fn asked_of(code: &str, of: &str) -> String {
    match code {
        "line-at-earth" => say!("asked-line-at-earth-short"),
        "high-line" => say!("asked-high-line-short"),
        "grounded-line" => say!("asked-grounded-line-short"),
        "earthed-pole" => say!("asked-earthed-pole-short"),
        "told-each-other" => say!("asked-told-each-other-short"),
        "instrument-fit" => say!("asked-instrument-fit-short"),
        "right-board" => say!("asked-right-board-short", of = of),
        "labels" => say!("asked-labels-short", of = of),
        "starts-itself" => say!("asked-starts-itself-short", of = of),
        "tried-to-start" => say!("asked-tried-to-start-short"),
        "neutral-current" => say!("asked-neutral-current-short"),
        "live-beside" => say!("asked-live-beside-short"),
        "left-inside" => say!("asked-left-inside-short"),
        "temporary-earths" => say!("asked-temporary-earths-short"),
        "rcd" => say!("asked-rcd-short"),
        "controls-back" => say!("asked-controls-back-short", of = of),
        "charge-returned" => say!("asked-charge-returned-short"),
        "coupled" => say!("asked-coupled-short"),
        "current-transformers" => say!("asked-current-transformers-short"),
        "shorts-off" => say!("asked-shorts-off-short"),
        "interlocks" => say!("asked-interlocks-short"),
        "polarity-back" => say!("asked-polarity-back-short"),
        "counted-back" => say!("asked-counted-back-short"),
        "released-by" => say!("asked-released-by-short"),
        "company-isolate" | "company-work" | "company-restore" => say!("asked-company-short", of = of),
        unknown => unknown.to_owned(),
    }
}

/// An answer.
pub fn answer_to(question: &str, answer: &str) -> String {
    match (question, answer) {
        ("line-at-earth", "none") => say!("asked-line-at-earth-none"),
        ("line-at-earth", "not-known") => say!("asked-line-at-earth-not-known"),
        ("line-at-earth", "one-is") => say!("asked-line-at-earth-one-is"),
        ("line-at-earth", "corrected") => say!("asked-line-at-earth-corrected"),
        ("high-line", "l1") => say!("asked-high-line-l1"),
        ("high-line", "l2") => say!("asked-high-line-l2"),
        ("high-line", "l3") => say!("asked-high-line-l3"),
        ("high-line", "not-known") => say!("asked-high-line-not-known"),
        ("grounded-line", "l1") => say!("asked-grounded-line-l1"),
        ("grounded-line", "l2") => say!("asked-grounded-line-l2"),
        ("grounded-line", "l3") => say!("asked-grounded-line-l3"),
        ("grounded-line", "not-known") => say!("asked-grounded-line-not-known"),
        ("earthed-pole", "plus") => say!("asked-earthed-pole-plus"),
        ("earthed-pole", "minus") => say!("asked-earthed-pole-minus"),
        ("earthed-pole", "none") => say!("asked-earthed-pole-none"),
        ("earthed-pole", "not-known") => say!("asked-earthed-pole-not-known"),
        ("told-each-other", "told") => say!("asked-told-each-other-told"),
        ("told-each-other", "one-employer") => say!("asked-told-each-other-one-employer"),
        ("instrument-fit", "fits") => say!("asked-instrument-fit-fits"),
        ("instrument-fit", "does-not-fit") => say!("asked-instrument-fit-does-not-fit"),
        ("right-board", "seen-live") => say!("asked-right-board-seen-live"),
        ("right-board", "traced") => say!("asked-right-board-traced"),
        ("right-board", "not-shown") => say!("asked-right-board-not-shown"),
        ("labels", "in-photo") => say!("asked-labels-in-photo"),
        ("labels", "not-shown") => say!("asked-labels-not-shown"),
        ("labels", "do-not-match") => say!("asked-labels-do-not-match"),
        ("starts-itself", "blocked") => say!("asked-starts-itself-blocked"),
        ("starts-itself", "cannot") => say!("asked-starts-itself-cannot"),
        ("starts-itself", "not-blocked") => say!("asked-starts-itself-not-blocked"),
        ("tried-to-start", "nothing-moved") => say!("asked-tried-to-start-nothing-moved"),
        ("tried-to-start", "not-tried") => say!("asked-tried-to-start-not-tried"),
        ("tried-to-start", "it-started") => say!("asked-tried-to-start-it-started"),
        ("neutral-current", "none") => say!("asked-neutral-current-none"),
        ("neutral-current", "current") => say!("asked-neutral-current-current"),
        ("live-beside", "none") => say!("asked-live-beside-none"),
        ("live-beside", "screened") => say!("asked-live-beside-screened"),
        ("live-beside", "not-screened") => say!("asked-live-beside-not-screened"),
        ("left-inside", "nothing") => say!("asked-left-inside-nothing"),
        ("left-inside", "something") => say!("asked-left-inside-something"),
        ("temporary-earths", "fitted") => say!("asked-temporary-earths-fitted"),
        ("temporary-earths", "not-asked") => say!("asked-temporary-earths-not-asked"),
        ("rcd", "measured") => say!("asked-rcd-measured"),
        ("rcd", "button") => say!("asked-rcd-button"),
        ("rcd", "none-fitted") => say!("asked-rcd-none-fitted"),
        ("rcd", "not-tested") => say!("asked-rcd-not-tested"),
        ("controls-back", "automatic") => say!("asked-controls-back-automatic"),
        ("controls-back", "left-blocked") => say!("asked-controls-back-left-blocked"),
        ("charge-returned", "gone") => say!("asked-charge-returned-gone"),
        ("charge-returned", "shorted") => say!("asked-charge-returned-shorted"),
        ("charge-returned", "returned") => say!("asked-charge-returned-returned"),
        ("coupled", "other-cause") => say!("asked-coupled-other-cause"),
        ("coupled", "gone-under-load") => say!("asked-coupled-gone-under-load"),
        ("coupled", "stays-under-load") => say!("asked-coupled-stays-under-load"),
        ("current-transformers", "none") => say!("asked-current-transformers-none"),
        ("current-transformers", "left-closed") => say!("asked-current-transformers-left-closed"),
        ("current-transformers", "shorted") => say!("asked-current-transformers-shorted"),
        ("current-transformers", "open") => say!("asked-current-transformers-open"),
        ("shorts-off", "off") => say!("asked-shorts-off-off"),
        ("shorts-off", "left-on") => say!("asked-shorts-off-left-on"),
        ("interlocks", "none-fitted") => say!("asked-interlocks-none-fitted"),
        ("interlocks", "in-order") => say!("asked-interlocks-in-order"),
        ("interlocks", "bridged") => say!("asked-interlocks-bridged"),
        ("polarity-back", "as-marked") => say!("asked-polarity-back-as-marked"),
        ("polarity-back", "reversed") => say!("asked-polarity-back-reversed"),
        ("counted-back", "all") => say!("asked-counted-back-all"),
        ("counted-back", "missing") => say!("asked-counted-back-missing"),
        ("released-by", "tester") => say!("asked-released-by-tester"),
        ("released-by", "another") => say!("asked-released-by-another"),
        ("company-isolate" | "company-work" | "company-restore", "done") => say!("asked-company-done"),
        ("company-isolate" | "company-work" | "company-restore", "does-not-apply") => {
            say!("asked-company-does-not-apply")
        }
        ("company-isolate" | "company-work" | "company-restore", "not-as-it-should-be") => {
            say!("asked-company-not-as-it-should-be")
        }
        (_, unknown) => unknown.to_owned(),
    }
}

/// What has to be said with an answer; nothing with one that says all.
pub fn answer_words(question: &str, answer: &str) -> Option<String> {
    Some(match (question, answer) {
        ("line-at-earth", "none") => say!("asked-line-at-earth-none-words"),
        ("line-at-earth", "not-known") => say!("asked-line-at-earth-not-known-words"),
        ("high-line", "l1") => say!("asked-high-line-l1-words"),
        ("high-line", "l2") => say!("asked-high-line-l2-words"),
        ("high-line", "l3") => say!("asked-high-line-l3-words"),
        ("high-line", "not-known") => say!("asked-high-line-not-known-words"),
        ("grounded-line", "l1") => say!("asked-grounded-line-l1-words"),
        ("grounded-line", "l2") => say!("asked-grounded-line-l2-words"),
        ("grounded-line", "l3") => say!("asked-grounded-line-l3-words"),
        ("grounded-line", "not-known") => say!("asked-grounded-line-not-known-words"),
        ("earthed-pole", "plus") => say!("asked-earthed-pole-plus-words"),
        ("earthed-pole", "minus") => say!("asked-earthed-pole-minus-words"),
        ("earthed-pole", "none") => say!("asked-earthed-pole-none-words"),
        ("earthed-pole", "not-known") => say!("asked-earthed-pole-not-known-words"),
        ("told-each-other", "told") => say!("asked-told-each-other-told-words"),
        ("right-board", "seen-live") => say!("asked-right-board-seen-live-words"),
        ("right-board", "traced") => say!("asked-right-board-traced-words"),
        ("right-board", "not-shown") => say!("asked-right-board-not-shown-words"),
        ("labels", "not-shown") => say!("asked-labels-not-shown-words"),
        ("starts-itself", "blocked") => say!("asked-starts-itself-blocked-words"),
        ("starts-itself", "cannot") => say!("asked-starts-itself-cannot-words"),
        ("tried-to-start", "not-tried") => say!("asked-tried-to-start-not-tried-words"),
        ("neutral-current", "none") => say!("asked-neutral-current-none-words"),
        ("live-beside", "screened") => say!("asked-live-beside-screened-words"),
        ("temporary-earths", "not-asked") => say!("asked-temporary-earths-not-asked-words"),
        ("rcd", "measured") => say!("asked-rcd-measured-words"),
        ("rcd", "not-tested") => say!("asked-rcd-not-tested-words"),
        ("controls-back", "automatic") => say!("asked-controls-back-automatic-words"),
        ("controls-back", "left-blocked") => say!("asked-controls-back-left-blocked-words"),
        ("charge-returned", "gone") => say!("asked-charge-returned-gone-words"),
        ("charge-returned", "shorted") => say!("asked-charge-returned-shorted-words"),
        ("coupled", "other-cause") => say!("asked-coupled-other-cause-words"),
        ("coupled", "gone-under-load") => say!("asked-coupled-gone-under-load-words"),
        ("current-transformers", "shorted") => say!("asked-current-transformers-shorted-words"),
        ("shorts-off", "off") => say!("asked-shorts-off-off-words"),
        ("shorts-off", "left-on") => say!("asked-shorts-off-left-on-words"),
        ("interlocks", "in-order") => say!("asked-interlocks-in-order-words"),
        ("polarity-back", "as-marked") => say!("asked-polarity-back-as-marked-words"),
        ("counted-back", "missing") => say!("asked-counted-back-missing-words"),
        ("company-isolate" | "company-work" | "company-restore", "does-not-apply") => {
            say!("asked-company-does-not-apply-words")
        }
        _ => return None,
    })
}

/// What has to be read for an answer; nothing for one that is read with no instrument.
pub fn answer_read(question: &str, answer: &str) -> Option<String> {
    Some(match (question, answer) {
        ("neutral-current", "none") => say!("asked-neutral-current-none-read"),
        ("coupled", "gone-under-load") => say!("asked-coupled-gone-under-load-read"),
        ("charge-returned", "gone") => say!("asked-charge-returned-gone-read"),
        _ => return None,
    })
}

/// What stands in the field for a reading before anything is typed.
pub fn as_shown() -> String {
    say!("asked-as-shown")
}

/// The button that saves what was read; the other one, where an indicator shows no figure.
pub fn save_reading(nothing: bool) -> String {
    if nothing { say!("asked-save-nothing") } else { say!("asked-save-reading") }
}

/// That a reading is an answer that stops, whatever it was saved as.
pub fn read_over(read: Measured, question: &str, answer: &str) -> String {
    say!("asked-over", read = measured(read), answer = answer_to(question, answer))
}

/// What has to be read before an answer is one.
pub(super) fn unread(quantity: Quantity) -> String {
    match quantity {
        Quantity::Current => say!("asked-unread-current"),
        Quantity::Voltage | Quantity::DirectVoltage => say!("asked-unread-voltage"),
    }
}

/// The button that saves an answer with what was said.
pub fn save_answer(answer: &str) -> String {
    say!("asked-save", answer = answer)
}

/// What is said once an answer is chosen that needs words.
pub fn say_it() -> String {
    say!("asked-words")
}

/// An answer that was given.
pub fn given(given: &GivenAnswer, of: &str) -> String {
    told(&given.question, &given.answer, of, &said_with(given.read, given.said()))
}

/// An answer with what was read or said.
pub fn answer_with(answer: &str, with: &str) -> String {
    say!("asked-answer-with", answer = answer, with = with)
}

/// What was read for an answer, and what was said with it; either may be missing.
pub fn said_with(read: Option<Measured>, words: &str) -> String {
    match read.map(measured) {
        None => words.to_owned(),
        Some(read) if words.is_empty() => read,
        Some(read) => say!("asked-read-said", read = read, words = words),
    }
}

/// An answer with what it is about and what was said with it.
pub(super) fn told(question: &str, answer: &str, of: &str, words: &str) -> String {
    let none = if words.is_empty() { "none" } else { words };
    say!("asked-told", asked = asked_of(question, of), answer = answer_to(question, answer), words = none)
}

/// What an open question lacks.
pub(super) fn lacking(open: &Open) -> String {
    let of = open.about.as_deref().unwrap_or_default();
    match open.stopped {
        Some(answer) => {
            say!("asked-stopped", asked = asked_of(open.question, of), answer = answer_to(open.question, answer))
        }
        None => say!("asked-lacks", asked = asked_of(open.question, of)),
    }
}

/// What has to be answered before something is done.
pub(super) fn first(open: &Open) -> String {
    match open.stopped {
        Some(_) => lacking(open),
        None => say!("asked-first", asked = question(open.question, open.about.as_deref().unwrap_or_default())),
    }
}

/// What is said as a rule with an answer, where nobody has said anything before; empty where that differs from place to place.
pub fn usual_words(question: &str, answer: &str) -> Vec<String> {
    match (question, answer) {
        ("right-board", "seen-live") => vec![say!("usual-lamp"), say!("usual-load"), say!("usual-tester")],
        _ => Vec::new(),
    }
}
