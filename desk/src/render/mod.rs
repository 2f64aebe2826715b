//! Draws any [`Screen`] as HTML. Nothing here knows what a screen is about: a new one needs no change.
//!
//! Ids: a block keeps its own; what belongs to it gets that id and a suffix after `:`; the shell's own begin `shell-`.

mod ask;
pub mod drawing;
mod flow;
mod media;
mod sign;
mod table;

use maud::{DOCTYPE, Markup, html};
use stillbar_core::parts::{Block, Button, Notice, Screen, Standing, Tone};
use stillbar_core::text::languages::{Language, Spoken};
use stillbar_core::text::screens::shell as said;

use crate::body::MAX_PHOTO;

/// The whole page, with the screen in it; `changes` is what it is the state of.
pub fn page(shown: &Screen, changes: u64) -> String {
    let _spoken = spoken(shown);
    html! {
        (DOCTYPE)
        html lang=(shown.language) dir=[shown.mirrored.then_some("rtl")] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="dark light";
                title { (shown.title) " · Stillbar" }
                link rel="icon" href="/icon.svg" type="image/svg+xml";
                link rel="stylesheet" href="/style.css";
                // After it, so that what a person has set counts.
                link rel="stylesheet" href="/themes.css";
                script src="/contrast.js" {}
                script src="/camera.js" defer {}
                script src="/room.js" defer {}
                script src="/desk.js" defer {}
                script src="/watch.js" defer {}
            }
            body {
                noscript { p .notice.forbid { "Stillbar needs JavaScript. Allow it for this page and reload." } }
                div #shell-app data-most-photo=(MAX_PHOTO) data-changes=(changes) { (root(shown)) }
            }
        }
    }
    .into_string()
}

/// What is inside the app's root: the part of the page that changes.
pub fn screen(shown: &Screen) -> String {
    let _spoken = spoken(shown);
    root(shown).into_string()
}

/// What the shell says by itself is in the language of the screen.
fn spoken(shown: &Screen) -> Spoken {
    Spoken::of(Language::of_tag(&shown.language).unwrap_or_default())
}

fn root(shown: &Screen) -> Markup {
    html! {
        form .screen novalidate autocomplete="off" lang=(shown.language) dir=[shown.mirrored.then_some("rtl")] data-turn=(shown.turn) data-route=(shown.route) data-hand=(shown.hand) {
            header .top {
                @if let Some(up) = &shown.up { (up_button(up)) }
                p .plate { @if shown.context.is_empty() { "Stillbar" } @else { (shown.context) } }
                // Only on the first screen, where the place for the way up is free.
                @if shown.up.is_none() {
                    button #shell-contrast .button.up type="button" data-contrast-button aria-pressed="false" aria-label=(said::contrast()) { (sign::contrast()) }
                }
            }
            @if let Some(standing) = &shown.standing { (banner(standing)) }
            main .beside[flow::has_two_sides(&shown.blocks)] {
                h1 #shell-title tabindex="-1" aria-describedby=[shown.standing.as_ref().map(|_| "shell-word")] { (shown.title) }
                (flow::blocks(&shown.blocks))
            }
            footer .foot {
                @if let Some(notice) = &shown.notice { (note(notice)) }
                @if let Some(main) = &shown.main {
                    button id=(main.id) type="button" class={ "button main " (tone(main.tone)) } data-action=(main.action) {
                        (sign::of_button(main.tone)) span { (main.label) }
                    }
                }
            }
        }
    }
}

fn up_button(up: &Button) -> Markup {
    html! {
        button #(up.id) .button.up type="button" data-action=(up.action) data-up { (sign::back()) span { (up.label) } }
    }
}

/// Characters of what stands proved, in a word, that share a line of a phone with the text behind it.
const LONG: usize = 18;

/// Sticks to the top, in a line or two; a tap unfolds the whole of it. The deviations follow below it and scroll, so that many of them cannot fill a small screen.
fn banner(standing: &Standing) -> Markup {
    html! {
        section .standing.(tone(standing.tone)) data-standing aria-labelledby="shell-word" {
            button .fold type="button" data-unfold aria-expanded="false" {
                (sign::of_tone(standing.tone))
                span .told.long[standing.word.chars().count() > LONG] { span .word #shell-word { (standing.word) } " " span .text { (standing.text) } }
            }
        }
        @if !standing.deviations.is_empty() {
            ul .deviations data-standing aria-labelledby="shell-word" {
                @for deviation in &standing.deviations { li { (sign::deviation()) span { (deviation) } } }
            }
        }
    }
}

fn note(notice: &Notice) -> Markup {
    let role = if matches!(notice.tone, Tone::Forbid | Tone::Warn) { "alert" } else { "status" };
    html! {
        div #shell-notice .notice.(tone(notice.tone)) role=(role) { (sign::of_tone(notice.tone)) p { (notice.text) } }
    }
}

/// One block, other than those that [`flow`] puts in a list with their neighbours.
fn block(shown: &Block) -> Markup {
    match shown {
        Block::Heading { id, text } => html! { h2 #(id) { (text) } },
        Block::Paragraph { id, text } => html! { p #(id) .paragraph { (text) } },
        Block::Caution { id, tone, text } => flow::caution(id, *tone, text),
        Block::Fact { id, label, value } => flow::fact(id, label, value),
        Block::Step { id, step } => flow::step(id, step),
        Block::Choice { id, choice } => ask::choice(id, choice),
        Block::Entry { id, entry } => ask::entry(id, entry),
        Block::Pad { id, pad } => ask::pad(id, pad),
        Block::Photo { id, photo } => media::photo(id, photo),
        Block::Drawing { id, label, drawing } => drawing::drawing(id, label, drawing),
        Block::Table { id, caption, head, rows } => table::table(id, caption, head, rows),
        Block::Button { id, button } => flow::button(id, button),
        Block::Mark { id, field, label, value } => media::mark(id, field, label, value),
    }
}

fn tone(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "plain",
        Tone::Quiet => "quiet",
        Tone::Warn => "warn",
        Tone::Forbid => "forbid",
        Tone::Must => "must",
    }
}

/// For `aria-describedby`: the id of a hint if there is one.
fn described(id: &str, hint: &str) -> Option<String> {
    (!hint.is_empty()).then(|| format!("{id}:hint"))
}
