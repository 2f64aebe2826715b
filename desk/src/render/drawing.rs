//! Drawings as inline SVG. Inks are classes, so that paper and ink swap with the theme and conductor colours stay.

use maud::{Markup, html};
use stillbar_core::parts::{Drawing, Ink, Shape};

/// Wider than this a drawing's letters are too small to read on a phone: it can be made larger, and moved about.
const WIDE: f32 = 400.0;

/// A drawing on a page; `label` says what it shows.
pub fn drawing(id: &str, label: &str, drawn: &Drawing) -> Markup {
    let (w, h) = (length(drawn.width), length(drawn.height));
    html! {
        figure .drawing {
            // What scrolls can be reached by the keyboard.
            div .sheet[drawn.width > WIDE] tabindex=[(drawn.width > WIDE).then_some("0")] {
                svg #(id) role="img" aria-label=(label) viewBox={ "0 0 " (w) " " (h) } {
                    (shapes(drawn))
                }
            }
            @if drawn.width > WIDE {
                div .zoom {
                    button .button.quiet type="button" data-zoom="-1" { "Smaller" }
                    button .button.quiet type="button" data-zoom="1" { "Larger" }
                }
            }
        }
    }
}

/// What is inside the SVG.
pub fn shapes(drawn: &Drawing) -> Markup {
    html! {
        @for shape in &drawn.shapes {
            // A dark conductor on dark paper, or the other way round, is told from it by a rim.
            @if rimmed(ink_of(shape)) { (paint(shape, "rim", 1.0 + drawn.width.abs() / 200.0)) }
            (paint(shape, ink(ink_of(shape)), 0.0))
        }
    }
}

/// One shape in the ink of this class, `wider` than it is by so much.
fn paint(shape: &Shape, class: &str, wider: f32) -> Markup {
    html! {
        @match shape {
            Shape::Line { x1, y1, x2, y2, thick, .. } => {
                line .stroke.(class) x1=(at(*x1)) y1=(at(*y1)) x2=(at(*x2)) y2=(at(*y2)) stroke-width=(length(thick + wider)) {}
            }
            Shape::Circle { x, y, r, thick, filled, .. } => {
                circle .(way(*filled)).(class) cx=(at(*x)) cy=(at(*y))
                    r=(length(if *filled { r + wider / 2.0 } else { *r })) stroke-width=(length(thick + wider)) {}
            }
            Shape::Box { x, y, w, h, thick, filled, .. } => {
                @let out = if *filled { wider / 2.0 } else { 0.0 };
                rect .(way(*filled)).(class) x=(at(x - out)) y=(at(y - out)) width=(length(w + out * 2.0))
                    height=(length(h + out * 2.0)) stroke-width=(length(thick + wider)) {}
            }
            Shape::Text { x, y, size, text, .. } => {
                @if wider > 0.0 {
                    text .stroke.(class) x=(at(*x)) y=(at(*y)) font-size=(length(*size)) stroke-width=(length(wider)) aria-hidden="true" { (text) }
                } @else {
                    text .fill.(class) x=(at(*x)) y=(at(*y)) font-size=(length(*size)) { (text) }
                }
            }
        }
    }
}

fn way(filled: bool) -> &'static str {
    if filled { "fill" } else { "stroke" }
}

/// SVG knows no NaN and no infinity; a shape that has one is drawn at 0.
fn at(number: f32) -> f32 {
    if number.is_finite() { number } else { 0.0 }
}

/// Nor a length below 0.
fn length(number: f32) -> f32 {
    at(number).max(0.0)
}

fn ink_of(shape: &Shape) -> Ink {
    match shape {
        Shape::Line { ink, .. } | Shape::Circle { ink, .. } | Shape::Box { ink, .. } | Shape::Text { ink, .. } => *ink,
    }
}

/// Yellow has none: it is painted into green, which has one.
fn rimmed(ink: Ink) -> bool {
    matches!(ink, Ink::Brown | Ink::Black | Ink::Grey | Ink::Blue | Ink::Green)
}

fn ink(ink: Ink) -> &'static str {
    match ink {
        Ink::Ink => "ink",
        Ink::Paper => "paper",
        Ink::Quiet => "faint",
        Ink::Warn => "warn",
        Ink::Forbid => "forbid",
        Ink::Must => "must",
        Ink::Brown => "brown",
        Ink::Black => "black",
        Ink::Grey => "grey",
        Ink::Blue => "blue",
        Ink::Green => "green",
        Ink::Yellow => "yellow",
        Ink::Dark => "dark",
        Ink::Light => "light",
    }
}
