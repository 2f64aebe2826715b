//! How each kind of block is drawn.

use stillbar_core::parts::*;
use stillbar_desk::render;

use crate::proving::pad;
use crate::render::has;
use crate::samples;

fn drawn(block: Block) -> String {
    render::screen(&samples::screen("/x", "Title", vec![block]))
}

#[test]
fn a_step_opens_only_with_an_action() {
    let html = render::screen(&samples::steps());
    has(
        &html,
        &[
            "<button class=\"step now\" id=\"step-4\"",
            "<div class=\"step later\" id=\"step-6\"",
            "aria-current=\"step\"",
        ],
    );
    assert_eq!(html.matches("aria-current").count(), 1);
}

#[test]
fn a_choice_is_a_group_of_its_kind() {
    let html = render::screen(&samples::form());
    assert_eq!(html.matches("type=\"radio\"").count(), 3);
    assert_eq!(html.matches("type=\"checkbox\"").count(), 3);
    has(&html, &["value=\"outdoors\" data-field=\"where\" checked", "value=\"solar\" data-field=\"sources\" checked"]);
    assert_eq!(html.matches(" checked").count(), 2);
}

#[test]
fn an_entry_asks_for_its_keyboard() {
    let html = render::screen(&samples::form());
    has(
        &html,
        &[
            "inputmode=\"decimal\"",
            "type=\"tel\"",
            "maxlength=\"60\"",
            "<textarea",
            ">\nFirst line\nsecond line</textarea>",
        ],
    );
    has(&html, &["aria-describedby=\"device:hint\"", "<label for=\"device:input\">Device</label>"]);
    assert!(!html.contains("poles:hint"), "no hint, no reference to one");
}

#[test]
fn a_reading_is_an_answer_or_volts_and_never_filled_in_beforehand() {
    let answers = drawn(pad(false));
    assert_eq!(answers.matches("type=\"radio\"").count(), 9);
    assert_eq!(answers.matches(" checked").count(), 2, "the third row has no answer yet");
    assert!(!answers.contains("Volts"));
    let volts = drawn(pad(true));
    has(&volts, &["value=\"231\"", "Volts</label>"]);
    assert_eq!(volts.matches(" checked").count(), 1, "a number is no answer of the list");
}

#[test]
fn a_drawing_that_is_not_finite_is_still_svg() {
    let shapes = vec![
        Shape::Line { x1: f32::NAN, y1: 0.0, x2: f32::INFINITY, y2: 9.0, thick: -1.0, ink: Ink::Black },
        Shape::Circle { x: 1.0, y: 1.0, r: f32::NEG_INFINITY, thick: 1.0, filled: true, ink: Ink::Green },
    ];
    let html = drawn(Block::Drawing {
        id: "d".into(),
        label: "Said in words".into(),
        drawing: Drawing { width: f32::NAN, height: 9.0, shapes },
    });
    has(&html, &["aria-label=\"Said in words\"", "viewBox=\"0 0 0 9\""]);
    let svg = html.split("<figure").nth(1).and_then(|rest| rest.split("</figure").next()).expect("it is drawn");
    for word in ["NaN", "inf", "=\"-"] {
        assert!(!svg.contains(word), "{word} in {svg}");
    }
}

#[test]
fn a_table_names_its_rows_and_columns() {
    let html = render::screen(&samples::reading());
    has(
        &html,
        &["<caption>Readings</caption>", "scope=\"col\"", "scope=\"row\"", "data-name=\"Reading\">No indication"],
    );
    has(&html, &["<table class=\"many\" id=\"t1\"", "<table class=\"few\" id=\"t2\""]);
}

#[test]
fn a_signature_is_drawn_or_typed() {
    let mark = |value: &str| {
        drawn(Block::Mark { id: "m".into(), field: "m".into(), label: "Signature".into(), value: value.into() })
    };
    has(&mark("1,2 3,4"), &["data-strokes=\"1,2 3,4\" value=\"1,2 3,4\"", "or type your full name"]);
    has(
        &mark("typed:Ann <B>"),
        &["data-strokes=\"\" value=\"typed:Ann &lt;B&gt;\"", "data-typed=\"typed:\" value=\"Ann &lt;B&gt;\""],
    );
}
