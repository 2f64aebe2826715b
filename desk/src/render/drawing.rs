//! Drawings on a page; the core writes the shapes.

use maud::{Markup, PreEscaped, html};
use stillbar_core::parts::Drawing;
use stillbar_core::svg::{length, shapes};
use stillbar_core::text::screens::shell as said;

/// Wider than this a drawing's letters are too small to read on a phone: it can be made larger, and moved about.
const WIDE: f32 = 400.0;

/// A drawing inside a button, whose label says what is to be read.
pub fn picture(drawn: &Drawing) -> Markup {
    html! {
        span .picture aria-hidden="true" {
            svg viewBox={ "0 0 " (length(drawn.width)) " " (length(drawn.height)) } { (PreEscaped(shapes(drawn))) }
        }
    }
}

/// A drawing on a page; `label` says what it shows.
pub fn drawing(id: &str, label: &str, drawn: &Drawing) -> Markup {
    let (w, h) = (length(drawn.width), length(drawn.height));
    html! {
        figure .drawing {
            // What scrolls can be reached by the keyboard.
            div .sheet[drawn.width > WIDE] tabindex=[(drawn.width > WIDE).then_some("0")] {
                svg #(id) role="img" aria-label=(label) viewBox={ "0 0 " (w) " " (h) } {
                    (PreEscaped(shapes(drawn)))
                }
            }
            @if drawn.width > WIDE {
                div .zoom {
                    button .button.quiet type="button" data-zoom="-1" { (said::smaller()) }
                    button .button.quiet type="button" data-zoom="1" { (said::larger()) }
                }
            }
        }
    }
}
