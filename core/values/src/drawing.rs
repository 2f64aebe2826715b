//! Drawings: a short list of shapes that any canvas can paint.

#![allow(missing_docs, reason = "a variant's comment explains its fields together")]

use serde::{Deserialize, Serialize};

/// A drawing of lines, circles, boxes and texts in its own units; scale it to the width there is.
#[derive(Debug, Clone, PartialEq, Serialize, Default)]
pub struct Drawing {
    /// Width in the drawing's units.
    pub width: f32,
    /// Height in the drawing's units.
    pub height: f32,
    /// What to paint, first to last.
    pub shapes: Vec<Shape>,
}

/// One shape of a drawing; all lengths in the drawing's units, y downwards.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "shape", rename_all = "kebab-case")]
pub enum Shape {
    /// A straight line, round ends.
    Line { x1: f32, y1: f32, x2: f32, y2: f32, thick: f32, ink: Ink },
    /// A circle; `filled` or an outline of thickness `thick`.
    Circle { x: f32, y: f32, r: f32, thick: f32, filled: bool, ink: Ink },
    /// A box; `filled` or an outline of thickness `thick`.
    Box { x: f32, y: f32, w: f32, h: f32, thick: f32, filled: bool, ink: Ink },
    /// A text; `x`, `y` is the middle of its base line; `size` is its height.
    Text { x: f32, y: f32, size: f32, text: String, ink: Ink },
}

/// The inks of a drawing: paper and ink swap in a dark theme, conductor colours (IEC 60445) do not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ink {
    /// The text colour.
    Ink,
    /// The background.
    Paper,
    /// A fainter text colour.
    Quiet,
    /// ISO 3864 yellow.
    Warn,
    /// ISO 3864 red.
    Forbid,
    /// ISO 3864 blue.
    Must,
    /// IEC 60445 line conductors.
    Brown,
    /// IEC 60445 line conductors.
    Black,
    /// IEC 60445 line conductors.
    Grey,
    /// IEC 60445 neutral.
    Blue,
    /// IEC 60445 protective conductor, drawn with `Yellow`.
    Green,
    /// IEC 60445 protective conductor, drawn with `Green`.
    Yellow,
    /// Black in any theme, without a rim: the modules of a code.
    Dark,
    /// White in any theme: what a code stands on.
    Light,
}
