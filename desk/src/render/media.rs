//! Photos and signatures.

use maud::{Markup, html};
use stillbar_core::parts::PhotoSlot;
use stillbar_core::text::screens::shell as said;

use super::{described, sign};
use crate::server::SMALL;

/// The value of a signature that was typed begins so; a drawn one is all figures.
const TYPED: &str = "typed:";

pub fn photo(id: &str, slot: &PhotoSlot) -> Markup {
    let input = format!("{id}:input");
    let hint = described(id, &slot.hint);
    html! {
        div #(id) .photo {
            // Without an action there is nothing to take: the photos are only shown.
            @if slot.action.is_empty() {
                p .label { (slot.label) }
            } @else {
                input .unseen #(input) type="file" accept="image/*" capture="environment" data-photo=(slot.action) aria-describedby=[&hint];
                label .shutter for=(input) { (sign::camera()) span { (slot.label) } }
            }
            @if let Some(hint) = &hint { p .hint #(hint) { (slot.hint) } }
            @if !slot.taken.is_empty() {
                ul .taken {
                    @for seen in &slot.taken {
                        li { img src={ "/photo/" (seen.sha256) (SMALL) } alt=(seen.label) loading="lazy" decoding="async"; }
                    }
                }
            }
        }
    }
}

pub fn mark(id: &str, field: &str, label: &str, value: &str) -> Markup {
    let typed = value.strip_prefix(TYPED);
    let strokes = if typed.is_some() { "" } else { value };
    let input = format!("{id}:typed");
    html! {
        div #(id) .signature data-mark {
            p .label { (label) }
            input type="hidden" data-field=(field) data-strokes=(strokes) value=(value);
            canvas width="1000" height="400" role="img" aria-label=(label) {}
            button id={ (id) ":clear" } .button.quiet type="button" data-clear aria-label=(said::clear_of(label)) { (said::clear()) }
            label for=(input) { (said::type_name()) }
            input #(input) .words type="text" maxlength="120" data-typed=(TYPED) value=(typed.unwrap_or_default());
        }
    }
}
