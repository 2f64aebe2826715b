//! Types of the crates below as Kotlin and Swift see them: told again field by field, and held to the originals by the compiler.

use stillbar_journal::Running;
use stillbar_store::OpenError;
use stillbar_text::Standing;
use stillbar_values::Tone;
use stillbar_values::drawing::{Drawing, Ink, Shape};

/// See the original.
#[uniffi::remote(Record)]
pub struct Running {
    pub start: u64,
    pub ms: u64,
}

/// See the original.
#[uniffi::remote(Record)]
pub struct Drawing {
    pub width: f32,
    pub height: f32,
    pub shapes: Vec<Shape>,
}

/// See the original.
#[uniffi::remote(Enum)]
pub enum Shape {
    Line { x1: f32, y1: f32, x2: f32, y2: f32, thick: f32, ink: Ink },
    Circle { x: f32, y: f32, r: f32, thick: f32, filled: bool, ink: Ink },
    Box { x: f32, y: f32, w: f32, h: f32, thick: f32, filled: bool, ink: Ink },
    Text { x: f32, y: f32, size: f32, text: String, ink: Ink },
}

/// See the original.
#[uniffi::remote(Enum)]
pub enum Ink {
    Ink,
    Paper,
    Quiet,
    Warn,
    Forbid,
    Must,
    Brown,
    Black,
    Grey,
    Blue,
    Green,
    Yellow,
    Dark,
    Light,
}

/// See the original.
#[uniffi::remote(Enum)]
pub enum Tone {
    Plain,
    Quiet,
    Warn,
    Forbid,
    Must,
}

/// See the original.
#[uniffi::remote(Record)]
pub struct Standing {
    pub tone: Tone,
    pub word: String,
    pub text: String,
    pub deviations: Vec<String>,
}

/// See the original.
#[uniffi::remote(Error)]
pub enum OpenError {
    InUse { what: String },
    Damaged { what: String },
    Newer { what: String },
    ReadOnly { what: String },
    DiskFull { what: String },
    Secret { what: String },
    Other { what: String },
}
