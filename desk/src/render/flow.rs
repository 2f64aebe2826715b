//! What is read or tapped in passing: lists of steps and facts, cautions, buttons.

use maud::{Markup, html};
use stillbar_core::parts::{Block, Button, StepRow, StepState, Tone};
use stillbar_core::text::screens::shell as said;

use super::{block, sign, tone};

/// All blocks in their order; neighbours that are steps or facts become one list, so that a screen reader counts them.
pub fn blocks(shown: &[Block]) -> Markup {
    html! {
        @for run in shown.chunk_by(|a, b| kind(a) == kind(b) && kind(a) != FlowKind::Single) {
            @match kind(&run[0]) {
                FlowKind::Step => ol .steps { @for one in run { (block(one)) } },
                FlowKind::Fact => dl .facts { @for one in run { (block(one)) } },
                FlowKind::Single => (block(&run[0])),
            }
        }
    }
}

/// Whether some of it is answered and some of it only known: a wide screen then has the two beside each other.
pub fn has_two_sides(shown: &[Block]) -> bool {
    let known = |b: &Block| matches!(b, Block::Fact { .. } | Block::Drawing { .. } | Block::Table { .. });
    let answered = |b: &Block| {
        use Block::{Choice, Entry, Mark, Pad, Photo};
        matches!(b, Choice { .. } | Entry { .. } | Pad { .. } | Photo { .. } | Mark { .. })
    };
    shown.iter().any(known) && shown.iter().any(answered)
}

#[derive(PartialEq, Clone, Copy)]
enum FlowKind {
    Step,
    Fact,
    Single,
}

fn kind(block: &Block) -> FlowKind {
    match block {
        Block::Step { .. } => FlowKind::Step,
        Block::Fact { .. } => FlowKind::Fact,
        _ => FlowKind::Single,
    }
}

pub fn caution(id: &str, kind: Tone, text: &str) -> Markup {
    let word = match kind {
        Tone::Warn => said::warning(),
        Tone::Forbid => said::stop(),
        Tone::Must => said::must(),
        Tone::Plain | Tone::Quiet => said::note(),
    };
    html! {
        div #(id) .caution.(tone(kind)) {
            (sign::of_tone(kind))
            p { strong .word { (word) } " " span .text { (text) } }
        }
    }
}

pub fn fact(id: &str, label: &str, value: &str) -> Markup {
    html! { div #(id) .fact { dt { (label) } dd { (value) } } }
}

pub fn step(id: &str, step: &StepRow) -> Markup {
    let (name, more) = (format!("{id}:name"), format!("{id}:more"));
    let inside = html! {
        @if !step.word.is_empty() { (sign::of_state(step.state)) }
        span .head #(name) {
            @if !step.number.is_empty() { span .number { (step.number) } " " }
            span .title { (step.title) } " "
            @if !step.word.is_empty() { span .word { (step.word) } }
        }
        @if !step.lines.is_empty() { span .lines #(more) { @for line in &step.lines { span { (line) " " } } } }
        @if !step.action.is_empty() { (sign::onward()) }
    };
    let state = match step.state {
        StepState::Done => "done",
        StepState::Now => "now",
        StepState::Open => "open",
        StepState::Later => "later",
        StepState::Deviated => "deviated",
        StepState::Stop => "stop",
    };
    let more = (!step.lines.is_empty()).then_some(more);
    let plain = step.word.is_empty();
    html! {
        li {
            @if step.action.is_empty() {
                div #(id) .step.(state).plain[plain] { (inside) }
            } @else {
                button #(id) .step.(state).plain[plain] type="button" data-action=(step.action)
                    aria-labelledby=(name) aria-describedby=[more] aria-current=[(state == "now").then_some("step")] { (inside) }
            }
        }
    }
}

pub fn button(id: &str, button: &Button) -> Markup {
    let inside = html! {
        button #(button.id) .button.(tone(button.tone)) type="button" data-action=(button.action) {
            (sign::of_button(button.tone)) span { (button.label) }
        }
    };
    // The block and its button may have one id between them.
    html! { @if button.id == id { (inside) } @else { div #(id) { (inside) } } }
}
