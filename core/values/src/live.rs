//! What a supply that is meant to be live is held against.

use serde::{Deserialize, Serialize};

/// Which tolerance of the supply voltage the site works to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tolerance {
    /// IEC 60038: 10 % either way.
    #[default]
    Iec60038,
    /// United Kingdom, 230 V: +10 %, -6 % (UKSI 1994/3021).
    Uk,
    /// ANSI C84.1 Range A, service voltage: 5 % either way.
    AnsiC841A,
}

/// Which way the lines turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rotation {
    /// L1, L2, L3.
    Clockwise,
    /// L1, L3, L2.
    Anticlockwise,
    /// Nothing that turns is connected.
    NotNeeded,
}

impl Tolerance {
    /// All, the usual one first.
    pub const ALL: [Tolerance; 3] = [Tolerance::Iec60038, Tolerance::Uk, Tolerance::AnsiC841A];

    /// Whether it is the one that counts where none was chosen.
    pub fn is_usual(&self) -> bool {
        *self == Tolerance::default()
    }

    /// The least and the greatest voltage that a nominal one allows.
    pub fn band(self, nominal: f64) -> (f64, f64) {
        let (less, more) = match self {
            Tolerance::Iec60038 => (0.10, 0.10),
            Tolerance::Uk => (0.06, 0.10),
            Tolerance::AnsiC841A => (0.05, 0.05),
        };
        (nominal * (1.0 - less), nominal * (1.0 + more))
    }
}

impl Rotation {
    /// All, with what a choice is called in a form.
    pub const ALL: [(Rotation, &'static str); 3] = [
        (Rotation::Clockwise, "clockwise"),
        (Rotation::Anticlockwise, "anticlockwise"),
        (Rotation::NotNeeded, "not-needed"),
    ];

    /// Whether it says a direction.
    pub fn is_direction(self) -> bool {
        self != Rotation::NotNeeded
    }
}
