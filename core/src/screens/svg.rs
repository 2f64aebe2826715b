//! Drawings as SVG, for shells that show a browser's pages. Inks are classes, so that paper and ink swap with the theme and the
//! colours of conductors stay.

use std::fmt::Write;

use super::parts::{Drawing, Ink, Shape};

/// The inks for paper, as [`file()`] writes them; a dark theme is for screens.
const INKS: &str = "\
svg{font-family:system-ui,'DejaVu Sans',sans-serif}\
text{text-anchor:middle;font-weight:700;stroke-linejoin:round}\
.stroke{fill:none;stroke-linecap:round}.fill{stroke:none}\
.stroke.ink{stroke:#111}.fill.ink{fill:#111}.stroke.paper{stroke:#fff}.fill.paper{fill:#fff}\
.stroke.faint{stroke:#555}.fill.faint{fill:#555}\
.stroke.warn{stroke:#f9a800}.fill.warn{fill:#f9a800}\
.stroke.forbid{stroke:#9b2423}.fill.forbid{fill:#9b2423}\
.stroke.must{stroke:#005387}.fill.must{fill:#005387}\
.stroke.rim{stroke:#fff}.fill.rim{fill:#fff}\
.stroke.brown{stroke:#6b3e1e}.fill.brown{fill:#6b3e1e}.stroke.black{stroke:#000}.fill.black{fill:#000}\
.stroke.grey{stroke:#8a8a8a}.fill.grey{fill:#8a8a8a}.stroke.blue{stroke:#2b6cc4}.fill.blue{fill:#2b6cc4}\
.stroke.green{stroke:#2e8b3d}.fill.green{fill:#2e8b3d}.stroke.yellow{stroke:#e8c800}.fill.yellow{fill:#e8c800}";

/// A file of its own, for paper, with what the drawing shows in words as its description.
pub fn file(drawn: &Drawing, label: &str) -> String {
    let (w, h) = (drawn.width.max(1.0), drawn.height.max(1.0));
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"{w}\" height=\"{h}\" viewBox=\"0 0 {w} {h}\"><desc>{}</desc>\
         <style>{INKS}</style><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>{}</svg>",
        escaped(label),
        shapes(drawn)
    )
}

/// What is inside the `svg` element; whoever shows it brings the inks.
pub fn shapes(drawn: &Drawing) -> String {
    let mut out = String::new();
    for shape in &drawn.shapes {
        // A dark conductor on dark paper, or the other way round, is told from it by a rim.
        if rimmed(ink_of(shape)) {
            paint(&mut out, shape, "rim", 1.0 + drawn.width.abs() / 200.0);
        }
        paint(&mut out, shape, ink(ink_of(shape)), 0.0);
    }
    out
}

/// A width or a height that a `viewBox` takes: SVG knows no NaN, no infinity and no length below 0.
pub fn length(number: f32) -> f32 {
    at(number).max(0.0)
}

/// One shape in the ink of this class, `wider` than it is by so much.
fn paint(out: &mut String, shape: &Shape, class: &str, wider: f32) {
    let _ = match shape {
        Shape::Line { x1, y1, x2, y2, thick, .. } => write!(
            out,
            "<line class=\"stroke {class}\" x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\" stroke-width=\"{}\"/>",
            at(*x1),
            at(*y1),
            at(*x2),
            at(*y2),
            length(thick + wider)
        ),
        Shape::Circle { x, y, r, thick, filled, .. } => write!(
            out,
            "<circle class=\"{} {class}\" cx=\"{}\" cy=\"{}\" r=\"{}\" stroke-width=\"{}\"/>",
            way(*filled),
            at(*x),
            at(*y),
            length(if *filled { r + wider / 2.0 } else { *r }),
            length(thick + wider)
        ),
        Shape::Box { x, y, w, h, thick, filled, .. } => {
            let beyond = if *filled { wider / 2.0 } else { 0.0 };
            write!(
                out,
                "<rect class=\"{} {class}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" stroke-width=\"{}\"/>",
                way(*filled),
                at(x - beyond),
                at(y - beyond),
                length(w + beyond * 2.0),
                length(h + beyond * 2.0),
                length(thick + wider)
            )
        }
        Shape::Text { x, y, size, text, .. } if wider > 0.0 => write!(
            out,
            "<text class=\"stroke {class}\" x=\"{}\" y=\"{}\" font-size=\"{}\" stroke-width=\"{}\" aria-hidden=\"true\">{}</text>",
            at(*x),
            at(*y),
            length(*size),
            length(wider),
            escaped(text)
        ),
        Shape::Text { x, y, size, text, .. } => write!(
            out,
            "<text class=\"fill {class}\" x=\"{}\" y=\"{}\" font-size=\"{}\">{}</text>",
            at(*x),
            at(*y),
            length(*size),
            escaped(text)
        ),
    };
}

/// Text inside an element. A character that XML 1.0 does not allow (section 2.2) becomes the sign for one that is missing.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(c),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(c),
        }
    }
    out
}

fn way(filled: bool) -> &'static str {
    if filled { "fill" } else { "stroke" }
}

/// SVG knows no NaN and no infinity; a shape that has one is drawn at 0.
fn at(number: f32) -> f32 {
    if number.is_finite() { number } else { 0.0 }
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
