//! What is drawn: each block with its label and id, everything escaped, no id twice.

use std::collections::HashSet;

use stillbar_core::parts::*;
use stillbar_desk::render;

use crate::{proving, samples};

/// The ids of a piece of HTML.
fn ids(html: &str) -> Vec<&str> {
    html.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

/// Fails unless all of `parts` are in `html`.
pub fn has(html: &str, parts: &[&str]) {
    for part in parts {
        assert!(html.contains(part), "{part:?} is not in\n{html}");
    }
}

#[test]
fn samples_hold_every_kind_of_block() {
    let mut kinds = HashSet::new();
    for (_, shown) in samples::all() {
        for block in &shown.blocks {
            let json = serde_json::to_value(block).expect("a block is JSON");
            kinds.insert(json["block"].as_str().expect("it names its kind").to_owned());
        }
    }
    let all = [
        "heading",
        "paragraph",
        "caution",
        "fact",
        "step",
        "choice",
        "entry",
        "pad",
        "photo",
        "drawing",
        "table",
        "button",
        "mark",
    ];
    assert_eq!(kinds, all.map(String::from).into());
}

#[test]
fn every_block_is_drawn_under_its_id() {
    for (name, shown) in samples::all() {
        let html = render::screen(&shown);
        let found: HashSet<_> = ids(&html).into_iter().collect();
        for block in &shown.blocks {
            let json = serde_json::to_value(block).expect("a block is JSON");
            let id = json["id"].as_str().expect("a block has an id");
            assert!(found.contains(id), "{name}: {id} is not drawn");
        }
    }
}

#[test]
fn no_id_is_there_twice_and_every_reference_has_its_target() {
    for (name, shown) in samples::all() {
        let html = render::page(&shown, 1);
        let all = ids(&html);
        let found: HashSet<_> = all.iter().copied().collect();
        assert_eq!(found.len(), all.len(), "{name}: {all:?}");
        for attribute in [" for=\"", " aria-describedby=\"", " aria-labelledby=\""] {
            for target in html.split(attribute).skip(1).filter_map(|rest| rest.split('"').next()) {
                assert!(found.contains(target), "{name}: {attribute}{target} points nowhere");
            }
        }
    }
}

#[test]
fn nothing_given_becomes_markup() {
    const EVIL: &str = "\"><script>alert('x')</script>&";
    let text = || EVIL.to_owned();
    let small = Drawing {
        width: 9.0,
        height: 9.0,
        shapes: vec![Shape::Text { x: 0.0, y: 0.0, size: 9.0, text: text(), ink: Ink::Ink }],
    };
    let opt = Opt { value: text(), label: text(), tone: Tone::Plain, drawing: Some(small) };
    let choice = Choice { field: text(), label: text(), options: vec![opt.clone()], chosen: vec![text()], many: true };
    let entry = |kind| Entry { field: text(), label: text(), hint: text(), value: text(), kind, limit: 9 };
    let row = PadRow { field: text(), label: text(), hint: text(), chosen: text() };
    let seen = PhotoSeen { sha256: text(), label: text() };
    let letters = Shape::Text { x: 0.0, y: 0.0, size: 9.0, text: text(), ink: Ink::Black };
    let button = Button { id: text(), label: text(), action: text(), tone: Tone::Forbid };
    let step = StepRow {
        number: text(),
        title: text(),
        state: StepState::Now,
        word: text(),
        lines: vec![text()],
        action: text(),
    };
    let id = text;
    let blocks = vec![
        Block::Heading { id: id(), text: text() },
        Block::Paragraph { id: id(), text: text() },
        Block::Caution { id: id(), tone: Tone::Must, text: text() },
        Block::Fact { id: id(), label: text(), value: text() },
        Block::Step { id: id(), step },
        Block::Choice { id: id(), choice },
        Block::Entry { id: id(), entry: entry(EntryKind::Text) },
        Block::Entry { id: id(), entry: entry(EntryKind::Long) },
        Block::Entry { id: id(), entry: entry(EntryKind::Pin) },
        Block::Pad {
            id: id(),
            pad: Pad { label: text(), rows: vec![row], options: vec![opt], volts: true, done: text() },
        },
        Block::Photo { id: id(), photo: PhotoSlot { label: text(), hint: text(), action: text(), taken: vec![seen] } },
        Block::Drawing { id: id(), label: text(), drawing: Drawing { width: 9.0, height: 9.0, shapes: vec![letters] } },
        Block::Table { id: id(), caption: text(), head: vec![text()], rows: vec![Row { cells: vec![text(), text()] }] },
        Block::Button { id: "other".into(), button: button.clone() },
        Block::Mark { id: id(), field: text(), label: text(), value: text() },
    ];
    let mut screen = samples::screen(EVIL, EVIL, blocks);
    screen.context = text();
    screen.standing = Some(Standing { tone: Tone::Warn, word: text(), text: text(), deviations: vec![text()] });
    screen.notice = Some(Notice { tone: Tone::Warn, text: text() });
    screen.main = Some(button.clone());
    screen.up = Some(button);

    let page = render::page(&screen, 1);
    assert_eq!(page.matches("<script").count(), 5, "only the page's own scripts");
    assert!(!page.contains("alert('x')</script>"));
    assert!(page.matches("&lt;script&gt;").count() > 40, "everything is still there as text");
}

/// The label is the name of the answer; its drawing is inside the same button and no screen reader's business.
#[test]
fn an_answer_has_its_drawing_inside() {
    let text = Shape::Text { x: 9.0, y: 9.0, size: 9.0, text: "400 V".into(), ink: Ink::Ink };
    let drawing = Drawing { width: 160.0, height: 110.0, shapes: vec![text] };
    let pen = Opt { value: "pen".into(), label: "With PEN".into(), tone: Tone::Plain, drawing: Some(drawing) };
    let shown = |options: Vec<Opt>| {
        let choice =
            Choice { field: "s".into(), label: "Which".into(), options, chosen: vec!["pen".into()], many: false };
        render::screen(&samples::screen("/", "A screen", vec![Block::Choice { id: "c".into(), choice }]))
    };
    let html = shown(vec![pen.clone()]);
    let tile = &html[html.find("<label class=\"tile").unwrap()..html.find("</label>").unwrap()];
    has(
        tile,
        &["<span class=\"picture\" aria-hidden=\"true\"><svg viewBox=\"0 0 160 110\">", ">400 V</text>", "With PEN"],
    );
    assert!(html.contains("pictured"));
    let plain = shown(vec![Opt { drawing: None, ..pen }]);
    assert!(!plain.contains("pictured") && !plain.contains("<svg viewBox=\"0 0 160"));
}

#[test]
fn nothing_inline_that_the_policy_would_forbid() {
    for (name, shown) in samples::all() {
        let page = render::page(&shown, 1);
        for inline in [" style=", " onclick=", " onload=", "<style", "javascript:"] {
            assert!(!page.contains(inline), "{name}: {inline}");
        }
    }
}

#[test]
fn the_frame_of_a_screen() {
    let html = render::page(&proving::volts(), 1);
    has(
        &html,
        &[
            "lang=\"en\"",
            "data-turn=\"7\"",
            "data-route=\"/job/1/prove/volts\"",
            "tabindex=\"-1\"",
            "role=\"alert\"",
            "data-standing",
            "<main",
            "data-action=\"do:up\"",
        ],
    );
    assert_eq!(html.matches("<h1").count(), 1);
    assert!(!html.contains("type=\"submit\""), "Enter in a field would send the form by such a button");
    has(&render::screen(&samples::form()), &["role=\"status\""]);
}

#[test]
fn no_word_of_the_shell_claims_safety() {
    for (name, shown) in samples::all() {
        assert!(!render::page(&shown, 1).to_lowercase().contains("safe"), "{name}");
    }
}

/// Nobody beside reads a PIN along, and no browser keeps it.
#[test]
fn a_pin_is_not_shown_as_it_is_typed() {
    let pin = Entry {
        field: "pin".into(),
        label: "PIN".into(),
        hint: String::new(),
        value: String::new(),
        kind: EntryKind::Pin,
        limit: 8,
    };
    let blocks = vec![Block::Entry { id: "entry-pin".into(), entry: pin }];
    has(
        &render::screen(&samples::screen("PIN", "PIN", blocks)),
        &["type=\"password\"", "inputmode=\"numeric\"", "autocomplete=\"one-time-code\"", "maxlength=\"8\""],
    );
}
