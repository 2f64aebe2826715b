//! A screen as text: what journeys compare, and what a screen reader would say in order.

use std::fmt::Write;

use super::parts::{Block, Button, Screen};
use crate::text::screens::app as said;

/// Most characters that are shared as text; a journal may be longer, and the record is for that.
const MAX_SHARED: usize = 100_000;

/// What a screen tells, for a message to another person: no buttons, no fields, no marks of their own.
pub fn as_message(screen: &Screen, now: &str) -> String {
    let mut out = format!("{}\n", screen.title);
    let mut line = |text: &str| {
        if !text.is_empty() {
            let _ = writeln!(out, "{text}");
        }
    };
    line(&screen.context);
    if let Some(standing) = &screen.standing {
        line(&format!("{}. {}", standing.word, standing.text));
        standing.deviations.iter().for_each(|d| line(d));
    }
    line(&said::as_known(now));
    for block in &screen.blocks {
        match block {
            Block::Heading { text, .. } => line(&format!("\n{text}")),
            Block::Caution { text, .. } => line(text),
            Block::Fact { label, value, .. } => line(&format!("{label}: {value}")),
            Block::Step { step, .. } => {
                line(&format!("\n{}", format!("{} {}", step.number, step.title).trim_start()));
                line(&step.word);
                step.lines.iter().for_each(|l| line(l));
            }
            _ => {}
        }
    }
    if let Some((cut, _)) = out.char_indices().nth(MAX_SHARED) {
        out.truncate(cut);
        out.push_str(&format!("\n{}\n", said::cut_short()));
    }
    out
}

/// `screen` as lines of text, without ids, turns or anything else that differs from run to run.
#[cfg_attr(feature = "bindings", uniffi::export)]
pub fn as_text(screen: &Screen) -> String {
    let mut out = format!("# {}\n", screen.title);
    let mut line = |text: String| {
        let _ = writeln!(out, "{text}");
    };
    if !screen.context.is_empty() {
        line(format!("({})", screen.context));
    }
    if let Some(standing) = &screen.standing {
        line(format!("[{}] {}", standing.word, standing.text));
        standing.deviations.iter().for_each(|d| line(format!("[deviation] {d}")));
    }
    if let Some(notice) = &screen.notice {
        line(format!("! {}", notice.text));
    }
    for block in &screen.blocks {
        match block {
            Block::Heading { text, .. } => line(format!("## {text}")),
            Block::Paragraph { text, .. } => line(text.clone()),
            Block::Caution { tone, text, .. } => line(format!("{tone:?}: {text}")),
            Block::Fact { label, value, .. } => line(format!("{label}: {value}")),
            Block::Step { step, .. } => {
                line(format!("- {} {} [{}]", step.number, step.title, step.word));
                step.lines.iter().for_each(|l| line(format!("    {l}")));
            }
            Block::Choice { choice, .. } => {
                let options: Vec<String> = choice
                    .options
                    .iter()
                    .map(|o| if choice.chosen.contains(&o.value) { format!("({})", o.label) } else { o.label.clone() })
                    .collect();
                line(format!("? {}: {}", choice.label, options.join(" | ")));
            }
            Block::Entry { entry, .. } => line(format!("_ {}: {}", entry.label, entry.value)),
            Block::Pad { pad, .. } => {
                line(format!("= {}", pad.label));
                pad.rows.iter().for_each(|r| line(format!("    {}: {}", r.label, r.chosen)));
            }
            Block::Photo { photo, .. } => line(format!("@ {} ({} kept)", photo.label, photo.taken.len())),
            Block::Drawing { label, .. } => line(format!("drawing: {label}")),
            Block::Table { caption, rows, .. } => {
                line(format!("table: {caption}"));
                rows.iter().for_each(|r| line(format!("    {}", r.cells.join(" | "))));
            }
            Block::Button { button, .. } => line(button_text(button)),
            Block::Mark { label, .. } => line(format!("sign: {label}")),
        }
    }
    if let Some(main) = &screen.main {
        line(format!(">> {}", main.label));
    }
    out
}

fn button_text(button: &Button) -> String {
    format!("> {}", button.label)
}
