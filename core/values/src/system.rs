//! Which conductors there are, and how the installation is earthed.

use serde::{Deserialize, Serialize};

/// Which conductors a dead test is about, and what stands between them while they are live: [`crate::Supply`] has that as a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// L, N, PE: three tests. Named by line to neutral.
    OnePhase,
    /// L1, L2, L3, N, PE: ten tests. Named by line to neutral.
    ThreePhaseNeutral,
    /// L1, L2, L3, PE: six tests. Named by line to line.
    ThreeWire,
    /// L1, L2, L3 and a PEN: six tests. Named by line to PEN.
    Pen,
    /// Two lines of a supply without neutral, and PE. Named by line to line.
    TwoLines,
    /// Tools at 110 V: two poles, the middle of the winding at earth. Named by pole to pole.
    SiteTransformer,
    /// The same with three lines, the star point at earth. Named by line to line.
    SiteTransformerThree,
    /// Two lines, each the same voltage to the neutral in the middle of the winding. Named by line to neutral.
    SplitPhase,
    /// Three lines in delta, the middle of one side is the neutral: the line across from it stands higher. Named by line to line.
    HighLeg,
    /// Three lines in delta, one of them at earth. Named by line to line.
    CornerGrounded,
    /// L+, L-, PE. Named by pole to pole.
    DcTwoWire,
    /// L+, M, L-, PE. Named by pole to pole.
    DcThreeWire,
    /// Conductors that whoever opened the job listed, with their roles and supplies. Named by the highest voltage between any two.
    Own,
}

/// How the installation is earthed (IEC 60364-1).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Earthing {
    /// Separate neutral and protective conductor.
    #[serde(rename = "TN-S")]
    TnS,
    /// Combined up to the origin.
    #[serde(rename = "TN-C-S")]
    TnCS,
    /// Own electrode.
    #[serde(rename = "TT")]
    Tt,
    /// Combined all the way: a PEN conductor, no separate neutral.
    #[serde(rename = "TN-C")]
    TnC,
    /// Isolated or through an impedance.
    #[serde(rename = "IT")]
    It,
    /// Nobody here knows yet.
    #[serde(rename = "unknown")]
    Unknown,
}

impl System {
    /// All, as offered.
    pub const ALL: [System; 13] = [
        System::ThreePhaseNeutral,
        System::OnePhase,
        System::ThreeWire,
        System::Pen,
        System::TwoLines,
        System::SiteTransformer,
        System::SiteTransformerThree,
        System::SplitPhase,
        System::HighLeg,
        System::CornerGrounded,
        System::DcTwoWire,
        System::DcThreeWire,
        System::Own,
    ];

    /// The voltage that it is named by most often, in volts, for where no rule set has one. Sources as in [`crate::Supply`]; 48 V and 220 V
    /// of direct voltage are common practice, no source. Nobody knows one of a set of one's own.
    pub fn usual_volts(self) -> Option<u32> {
        match self {
            System::OnePhase | System::ThreePhaseNeutral | System::Pen | System::TwoLines => Some(230),
            System::ThreeWire => Some(400),
            System::SiteTransformer | System::SiteTransformerThree => Some(110),
            System::SplitPhase => Some(120),
            System::HighLeg => Some(240),
            System::CornerGrounded => Some(480),
            System::DcTwoWire => Some(48),
            System::DcThreeWire => Some(220),
            System::Own => None,
        }
    }
}

impl Earthing {
    /// All, as offered.
    pub const ALL: [Earthing; 6] =
        [Earthing::TnCS, Earthing::TnS, Earthing::TnC, Earthing::Tt, Earthing::It, Earthing::Unknown];

    /// As written in files: the standard's letters.
    pub fn name(self) -> &'static str {
        match self {
            Earthing::TnS => "TN-S",
            Earthing::TnCS => "TN-C-S",
            Earthing::TnC => "TN-C",
            Earthing::Tt => "TT",
            Earthing::It => "IT",
            Earthing::Unknown => "unknown",
        }
    }
}
