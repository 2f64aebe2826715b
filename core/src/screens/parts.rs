//! What a screen is made of: the whole contract between the core and its shells.
//!
//! A shell draws these parts in order, sends an action back as it stands, and knows nothing else of the job. Everything
//! here is a plain record or enum, so that Kotlin, Swift and the desk get the same thing. Start at [`Screen`].

#![allow(missing_docs, reason = "a variant's comment explains its fields together")]

use serde::{Deserialize, Serialize};

pub use stillbar_text::Standing;
pub use stillbar_values::Tone;
pub use stillbar_values::drawing::{Drawing, Ink, Shape};

/// One whole screen: draw it from top to bottom.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Screen {
    /// Where this screen is, such as `/job/3f2a/permit`; changes exactly when the person is somewhere else.
    pub route: String,
    /// Counts what happened; a shell sends it back with an action, so that a second tap on an old screen does nothing.
    pub turn: u64,
    /// Who has the device in hand, as a mark that means nothing to a shell; empty for nobody.
    pub hand: String,
    /// The language of all that follows, as a tag (BCP 47): a screen reader has to know.
    pub language: String,
    /// That language runs from right to left.
    pub mirrored: bool,
    /// The screen's one title.
    pub title: String,
    /// The job and the place, or empty outside a job.
    pub context: String,
    /// What stands proved, or that nothing does; on every screen of a job.
    pub standing: Option<Standing>,
    /// What just happened, or why it did not. Read out at once by a screen reader.
    pub notice: Option<Notice>,
    /// The body, in reading order.
    pub blocks: Vec<Block>,
    /// The one thing to do next, drawn at the bottom within reach of a thumb.
    pub main: Option<Button>,
    /// The way back up, absent on the first screen.
    pub up: Option<Button>,
}

/// What just happened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Notice {
    /// `Plain` for "kept", `Forbid` or `Warn` for a refusal.
    pub tone: Tone,
    /// One or two sentences.
    pub text: String,
}

/// A part of a screen. Every block has an `id` that is stable and unique on its screen.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "block", rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(uniffi::Enum))]
pub enum Block {
    /// A heading below the title.
    Heading { id: String, text: String },
    /// Running text.
    Paragraph { id: String, text: String },
    /// A caution; `tone` is `Warn`, `Forbid` or `Must`.
    Caution { id: String, tone: Tone, text: String },
    /// A label and its value.
    Fact { id: String, label: String, value: String },
    /// A step of the job, or any row that has a state and opens something.
    Step { id: String, step: StepRow },
    /// Pick one (or several) of a few. The value sent is the chosen option's `value`; several are joined by newlines.
    Choice { id: String, choice: Choice },
    /// A field to type in.
    Entry { id: String, entry: Entry },
    /// Several readings at once, one row each.
    Pad { id: String, pad: Pad },
    /// Take or choose a photo, and see those taken.
    Photo { id: String, photo: PhotoSlot },
    /// A drawing; `label` says in words all that it shows.
    Drawing { id: String, label: String, drawing: Drawing },
    /// A table; every row has as many cells as `head`.
    Table { id: String, caption: String, head: Vec<String>, rows: Vec<Row> },
    /// A button in the body.
    Button { id: String, button: Button },
    /// A place to draw a signature. The value sent is strokes: `x,y x,y;x,y …`, whole numbers 0 to 1000 across and 0 to
    /// 400 down, strokes parted by `;`.
    Mark { id: String, field: String, label: String, value: String },
}

/// A row of a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Row {
    /// The cells, in the order of the table's head.
    pub cells: Vec<String>,
}

/// A step with its state.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct StepRow {
    /// Its place in the sequence, or empty.
    pub number: String,
    /// What is done in it.
    pub title: String,
    /// Drawn by shape; `word` says the same.
    pub state: StepState,
    /// "done", "now", "later" …; empty for a row that is no step, such as one of a list or of the time line, which then has no shape either:
    /// an empty box beside it would look like something left to do.
    pub word: String,
    /// What it still lacks, or what it holds, in sentences; may be empty.
    pub lines: Vec<String>,
    /// The action that opens it, or empty if it cannot be opened yet.
    pub action: String,
}

/// The state of a step; derived from the journal, never ticked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(uniffi::Enum))]
pub enum StepState {
    /// The journal holds all that proves it.
    Done,
    /// This is the next thing to do.
    Now,
    /// Can be opened, but is not the next thing.
    Open,
    /// Its turn has not come.
    Later,
    /// Passed over by a named person with a reason.
    Deviated,
    /// Something is wrong here.
    Stop,
}

/// A choice among a few.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Choice {
    /// The name under which the value is sent.
    pub field: String,
    /// The question.
    pub label: String,
    /// The answers.
    pub options: Vec<Opt>,
    /// The values chosen so far.
    pub chosen: Vec<String>,
    /// Whether several may be chosen.
    pub many: bool,
}

/// One answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Opt {
    /// What is sent.
    pub value: String,
    /// What is shown.
    pub label: String,
    /// `Forbid` or `Warn` for an answer that stops the work.
    pub tone: Tone,
    /// What the answer is about, drawn inside its button, above or beside the label. The label says all that is needed to choose: no screen
    /// reader reads the drawing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "bindings", uniffi(default = None))]
    pub drawing: Option<Drawing>,
}

/// A field to type in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Entry {
    /// The name under which the value is sent.
    pub field: String,
    /// What to type.
    pub label: String,
    /// An example or a reason, shown under the label.
    pub hint: String,
    /// What is in it now.
    pub value: String,
    /// Which keyboard to bring up.
    pub kind: EntryKind,
    /// Most characters it takes.
    pub limit: u32,
}

/// Which keyboard a field wants.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(uniffi::Enum))]
pub enum EntryKind {
    /// One line.
    Text,
    /// Several lines.
    Long,
    /// Digits and a decimal point.
    Number,
    /// A telephone number.
    Telephone,
    /// The digits of a PIN: nobody beside reads along, and no keyboard remembers it.
    Pin,
}

/// Readings of one group: one row a pair, the same answers for each row.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Pad {
    /// What is being read, such as "Held on N".
    pub label: String,
    /// One row a pair, in the order to take them.
    pub rows: Vec<PadRow>,
    /// The answers; empty if the rows take volts only.
    pub options: Vec<Opt>,
    /// Whether each row has a field for volts (sent as `field` too; a number wins over an answer).
    pub volts: bool,
    /// Rows are answered one after the other: once the last has its answer, or one is given in the tone of `Forbid`, a shell may do this by
    /// itself, with the form as it stands. Empty where a person decides when they are done; the same is a button in any case.
    pub done: String,
}

/// One pair of a pad.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct PadRow {
    /// The name under which the value is sent.
    pub field: String,
    /// The pair, such as "N – L1".
    pub label: String,
    /// Where each probe goes, in words.
    pub hint: String,
    /// The answer so far, or empty; never filled in beforehand.
    pub chosen: String,
}

/// A place for photos.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct PhotoSlot {
    /// What to photograph.
    pub label: String,
    /// What must be seen in it.
    pub hint: String,
    /// Send this, and run the errand that comes back.
    pub action: String,
    /// Photos already kept.
    pub taken: Vec<PhotoSeen>,
}

/// A photo already kept; its bytes come from `Field::photo`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct PhotoSeen {
    /// SHA-256 of the file, 64 hex digits.
    pub sha256: String,
    /// What it shows, in words, for a screen reader.
    pub label: String,
}

/// A button.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Button {
    /// Stable on its screen.
    pub id: String,
    /// What it does.
    pub label: String,
    /// What to send; opaque to a shell.
    pub action: String,
    /// `Plain`, `Quiet`, or `Forbid` for one that stops or undoes.
    pub tone: Tone,
}

/// A value that a person gave.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "bindings", derive(uniffi::Record))]
pub struct Filled {
    /// The name of the field.
    pub field: String,
    /// What was given, as text.
    pub value: String,
}

/// What only the device can do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "errand", rename_all = "kebab-case")]
#[cfg_attr(feature = "bindings", derive(uniffi::Enum))]
pub enum Errand {
    /// Take or choose a photo; answer with [`Outcome::Photo`] or [`Outcome::Refused`] under `token`.
    TakePhoto { token: String, hint: String },
    /// Show the camera's picture until a tag is found: send frames as [`Outcome::Frame`] under `token` for as long as the answer holds
    /// this errand again; [`Outcome::Refused`] if there is no camera.
    ScanTag { token: String, hint: String },
    /// Ring this number. No answer is expected.
    Ring { number: String },
    /// Offer this text to whatever the device sends messages with. No answer is expected.
    Share { title: String, text: String },
    /// Offer the file at `path`, which is whole and is not written to again, to whatever the device sends files with. It is called `name`.
    /// No answer is expected.
    ShareFile { title: String, name: String, media_type: String, path: String },
    /// Let the hand feel that something is wrong, or was found: eyes may be on the switch. No answer is expected.
    Buzz,
}

/// How an errand ended.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "bindings", derive(uniffi::Enum))]
pub enum Outcome {
    /// The photo's file, as the camera or the person gave it, with the media type if known.
    Photo { media_type: String, bytes: Vec<u8> },
    /// A frame of the camera: `width` times `height` bytes of brightness, row by row from the top left.
    Frame { width: u32, height: u32, luma: Vec<u8> },
    /// The person or the device refused; `why` is shown.
    Refused { why: String },
}
