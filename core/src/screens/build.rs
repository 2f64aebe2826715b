//! Small words for building a screen's blocks; every block gets a stable id.

use super::context::{Look, again};
use super::parts::*;
use crate::text;

/// An answer without a drawing.
pub fn answer(value: impl Into<String>, label: impl Into<String>, tone: Tone) -> Opt {
    Opt { value: value.into(), label: label.into(), tone, drawing: None }
}

/// A screen being built; the app adds route, turn, standing and notice.
#[derive(Debug, Default)]
pub struct Page {
    /// The title.
    pub title: String,
    /// What the step still waits for, to be shown below everything else.
    pub still_to_do: Vec<String>,
    /// The blocks.
    pub blocks: Vec<Block>,
    /// The main action.
    pub main: Option<Button>,
}

impl Page {
    /// A page with a title.
    pub fn new(title: impl Into<String>) -> Page {
        Page { title: title.into(), ..Page::default() }
    }

    fn id(&self, kind: &str) -> String {
        format!("{kind}-{}", self.blocks.len() + 1)
    }

    fn push(&mut self, block: Block) -> &mut Page {
        self.blocks.push(block);
        self
    }

    /// A heading.
    pub fn heading(&mut self, text: impl Into<String>) -> &mut Page {
        let id = self.id("heading");
        self.push(Block::Heading { id, text: text.into() })
    }

    /// Running text.
    pub fn para(&mut self, text: impl Into<String>) -> &mut Page {
        let id = self.id("text");
        self.push(Block::Paragraph { id, text: text.into() })
    }

    /// A caution.
    pub fn caution(&mut self, tone: Tone, text: impl Into<String>) -> &mut Page {
        let id = self.id("caution");
        self.push(Block::Caution { id, tone, text: text.into() })
    }

    /// A label and a value.
    pub fn fact(&mut self, label: impl Into<String>, value: impl Into<String>) -> &mut Page {
        let id = self.id("fact");
        self.push(Block::Fact { id, label: label.into(), value: value.into() })
    }

    /// A row with a state.
    pub fn step(&mut self, step: StepRow) -> &mut Page {
        let id = self.id("step");
        self.push(Block::Step { id, step })
    }

    /// A row that opens something.
    pub fn row(&mut self, title: impl Into<String>, lines: Vec<String>, action: impl Into<String>) -> &mut Page {
        let (title, action) = (title.into(), action.into());
        self.step(StepRow { number: String::new(), title, state: StepState::Open, word: String::new(), lines, action })
    }

    /// A choice of one; options are value and label.
    pub fn choice(&mut self, field: &str, label: &str, options: Vec<(String, String)>, chosen: String) -> &mut Page {
        let id = format!("choice-{field}");
        let options = options.into_iter().map(|(value, label)| answer(value, label, Tone::Plain)).collect();
        let chosen = if chosen.is_empty() { vec![] } else { vec![chosen] };
        let (field, label) = (field.into(), label.into());
        self.push(Block::Choice { id, choice: Choice { field, label, options, chosen, many: false } })
    }

    /// Puts a drawing into each button of the choice that was added last, where `of` has one for its value.
    pub fn drawn(&mut self, of: impl Fn(&str) -> Option<Drawing>) -> &mut Page {
        if let Some(Block::Choice { choice, .. }) = self.blocks.last_mut() {
            choice.options.iter_mut().for_each(|option| option.drawing = of(&option.value));
        }
        self
    }

    /// A choice of several.
    pub fn several(&mut self, field: &str, label: &str, options: Vec<(String, String)>, chosen: String) -> &mut Page {
        self.choice(field, label, options, String::new());
        if let Some(Block::Choice { choice, .. }) = self.blocks.last_mut() {
            choice.many = true;
            // What was tapped before and is no answer any more is not sent along.
            let offered = |value: &&str| choice.options.iter().any(|o| o.value == **value);
            choice.chosen = chosen.lines().filter(offered).map(str::to_owned).collect();
        }
        self
    }

    /// A one-line field.
    pub fn entry(&mut self, field: &str, label: &str, hint: &str, value: String) -> &mut Page {
        self.field(field, label, hint, value, EntryKind::Text, 120)
    }

    /// A one-line field, and above it what was said there before, to be tapped instead.
    pub fn entry_again(&mut self, look: &Look, field: &str, label: &str, hint: &str, before: Vec<String>) -> &mut Page {
        if !before.is_empty() {
            let tapped = again(field);
            let options = before.into_iter().map(|said| (said.clone(), said)).collect();
            self.choice(&tapped, &text::screens::again::said_before(label), options, look.draft(&tapped));
        }
        self.entry(field, label, hint, look.draft(field))
    }

    /// A field of any kind.
    pub fn field(
        &mut self,
        field: &str,
        label: &str,
        hint: &str,
        value: String,
        kind: EntryKind,
        limit: u32,
    ) -> &mut Page {
        let id = format!("entry-{field}");
        let (field, label, hint) = (field.into(), label.into(), hint.into());
        self.push(Block::Entry { id, entry: Entry { field, label, hint, value, kind, limit } })
    }

    /// A reading pad.
    pub fn pad(&mut self, pad: Pad) -> &mut Page {
        let id = self.id("pad");
        self.push(Block::Pad { id, pad })
    }

    /// A place for photos.
    pub fn photo(&mut self, photo: PhotoSlot) -> &mut Page {
        let id = self.id("photo");
        self.push(Block::Photo { id, photo })
    }

    /// A drawing with its words.
    pub fn drawing(&mut self, label: String, drawing: Drawing) -> &mut Page {
        let id = self.id("drawing");
        self.push(Block::Drawing { id, label, drawing })
    }

    /// A table.
    pub fn table(&mut self, caption: &str, head: &[&str], rows: Vec<Vec<String>>) -> &mut Page {
        let id = self.id("table");
        let head = head.iter().map(|h| (*h).to_owned()).collect();
        let rows = rows.into_iter().map(|cells| Row { cells }).collect();
        self.push(Block::Table { id, caption: caption.into(), head, rows })
    }

    /// A button in the body.
    pub fn button(&mut self, label: impl Into<String>, action: impl Into<String>) -> &mut Page {
        self.toned(label, action, Tone::Plain)
    }

    /// A button in the body with a tone.
    pub fn toned(&mut self, label: impl Into<String>, action: impl Into<String>, tone: Tone) -> &mut Page {
        let id = self.id("button");
        let button = Button { id: format!("{id}-b"), label: label.into(), action: action.into(), tone };
        self.push(Block::Button { id, button })
    }

    /// A place to sign.
    pub fn mark(&mut self, field: &str, label: impl Into<String>, value: String) -> &mut Page {
        let id = format!("mark-{field}");
        self.push(Block::Mark { id, field: field.into(), label: label.into(), value })
    }

    /// Puts the main action among the others, where it does not lead; a way on stays.
    pub fn main_below(&mut self) {
        if let Some(main) = self.main.take_if(|main| !main.action.starts_with("go ")) {
            self.button(main.label, main.action);
        }
    }

    /// The main action.
    pub fn main(&mut self, label: impl Into<String>, action: impl Into<String>) -> &mut Page {
        self.main = Some(Button { id: "main".into(), label: label.into(), action: action.into(), tone: Tone::Plain });
        self
    }
}
