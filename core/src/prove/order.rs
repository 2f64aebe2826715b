//! What a site prefers among the orders that are equally good: which pairs of a dead test come first.
//!
//! Common practice, no source: documents differ, so a job says which one its site wants. How a preference is weighed against
//! the moves of the probes is told in `plan`.

use serde::{Deserialize, Serialize};

/// Which pairs come first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Order {
    /// All line-neutral, neutral-PE, all line-PE, all line-line.
    #[default]
    LeastDangerousFirst,
    /// All line-line, all line-neutral, all line-PE, neutral-PE.
    LineLineFirst,
    /// All with the protective conductor, then with the neutral, then all line-line.
    EarthFirst,
}

impl Order {
    /// All, as offered.
    pub const ALL: [Order; 3] = [Order::LeastDangerousFirst, Order::LineLineFirst, Order::EarthFirst];

    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Order::LeastDangerousFirst => "Least dangerous first (line to line at the end)",
            Order::LineLineFirst => "Line to line first",
            Order::EarthFirst => "Earth first (all to the protective conductor, then the others)",
        }
    }

    /// As written on the command line and in files.
    pub fn name(self) -> &'static str {
        match self {
            Order::LeastDangerousFirst => "least-dangerous-first",
            Order::LineLineFirst => "line-line-first",
            Order::EarthFirst => "earth-first",
        }
    }

    /// When the pairs come whose less dangerous conductor has this `danger`; see [`super::Role::danger`].
    pub(super) fn turn(self, danger: u8) -> u8 {
        match (self, danger) {
            // Neutral to the lines, then everything to PE, then line to line.
            (Order::LeastDangerousFirst, 0) => 1,
            (Order::LeastDangerousFirst, 1) => 0,
            (Order::LeastDangerousFirst | Order::EarthFirst, danger) => danger,
            (Order::LineLineFirst, danger) => u8::MAX - danger,
        }
    }

    /// When the other probe goes to a conductor of this `danger`, while a less dangerous one is held.
    pub(super) fn other_turn(self, danger: u8) -> u8 {
        if self == Order::LineLineFirst { u8::MAX - danger } else { danger }
    }
}
