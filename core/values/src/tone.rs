//! How serious something is.

use serde::Serialize;

/// How a thing is drawn. The four colours have their ISO 3864 meaning and no other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tone {
    /// Ordinary ink.
    Plain,
    /// Less important than its surroundings.
    Quiet,
    /// Yellow and black, triangle: a hazard.
    Warn,
    /// Red, barred circle: forbidden, or stop.
    Forbid,
    /// Blue, disc: a thing that must be done.
    Must,
}
