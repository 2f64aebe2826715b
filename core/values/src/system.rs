//! Which conductors there are, and how the installation is earthed.

use serde::{Deserialize, Serialize};

use crate::conductors::Conductor;

/// Which conductors a dead test is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// L, N, PE: three tests.
    OnePhase,
    /// L1, L2, L3, N, PE: ten tests.
    ThreePhaseNeutral,
    /// L1, L2, L3, PE: six tests.
    ThreeWire,
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
    pub const ALL: [System; 3] = [System::ThreePhaseNeutral, System::ThreeWire, System::OnePhase];

    /// Its conductors, in the order of the terminals.
    pub fn conductors(self) -> Vec<Conductor> {
        let names: &[&str] = match self {
            System::OnePhase => &["L", "N", "PE"],
            System::ThreePhaseNeutral => &["L1", "L2", "L3", "N", "PE"],
            System::ThreeWire => &["L1", "L2", "L3", "PE"],
        };
        names.iter().filter_map(|name| Conductor::named(name)).collect()
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
