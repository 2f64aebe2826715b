//! What an instrument says.

use serde::{Deserialize, Serialize};

/// What an instrument said between two conductors.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reading {
    /// No indication.
    None,
    /// A low-resistance path, and no voltage indicated.
    Continuity,
    /// Lit. The level in volts if it was read.
    Lit(Option<u16>),
    /// A number, in millivolts.
    Millivolts(u32),
}

impl Reading {
    /// Whether this counts as an indication of voltage. `dead_limit` in millivolts: the greatest number that counts as dead, that
    /// for AC or for DC as the reading is.
    pub fn indicates(self, dead_limit: u32) -> bool {
        match self {
            Reading::None | Reading::Continuity => false,
            Reading::Lit(_) => true,
            Reading::Millivolts(mv) => mv > dead_limit,
        }
    }
}

/// What was read for an answer of the procedure, beside the readings of the dead test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measured {
    /// A voltage indicator that showed nothing.
    NoIndication,
    /// A voltage, in millivolts.
    Millivolts(u32),
    /// A current, in milliamperes.
    Milliamps(u32),
}
