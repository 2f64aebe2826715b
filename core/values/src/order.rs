//! What a site prefers among the orders that are equally good: which pairs of a dead test come first.
//!
//! Common practice, no source: documents differ, so a job says which one its site wants. How a preference is weighed against
//! the moves of the probes is the matter of the plan.

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

    /// As written on the command line and in files.
    pub fn name(self) -> &'static str {
        match self {
            Order::LeastDangerousFirst => "least-dangerous-first",
            Order::LineLineFirst => "line-line-first",
            Order::EarthFirst => "earth-first",
        }
    }
}
