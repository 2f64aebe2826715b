//! Proving dead: which pairs, which probe first, and what stands proved.
//!
//! Promises: every pair of conductors is tested exactly once in a plan; a run that met an indication, or whose indicator failed
//! its second proof, is never "proved dead"; unknown comes out as treat as live. What the plan demands and a case does not show is
//! worked out in one place, for the app and the command line. Start at [`plan_case`], [`conditions::unmet`] and [`crate::job::Job::standing`].

mod case;
pub mod conditions;
pub(crate) mod conductors;
mod figures;
pub mod judge;
pub mod limit;
mod order;
mod plan;
mod run;
mod terminals;

pub use case::{
    Case, CaseError, Equipment, Given, GivenValue, Impedance, Indicator, MAX_BYTES, Nominal, ReferenceProof, Stored,
};
pub use conductors::{Conductor, ConductorError, Role, parse_conductors};
pub use figures::{ReadingError, parse_volts, volts};
pub use order::Order;
pub use plan::{DcTest, Plan, ReferenceTest, Test, Wait, fewest_moves, group, plan, plan_case};
pub use run::{Earth, Met, Proof, Reading, Run, Taken};
pub use terminals::terminals;

use serde::{Deserialize, Serialize};

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

    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            System::OnePhase => "One phase: L, N, PE",
            System::ThreePhaseNeutral => "Three phase with neutral: L1, L2, L3, N, PE",
            System::ThreeWire => "Three wire: L1, L2, L3, PE",
        }
    }

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

    /// The standard's letters.
    pub fn word(self) -> &'static str {
        match self {
            Earthing::TnS => "TN-S",
            Earthing::TnCS => "TN-C-S",
            Earthing::TnC => "TN-C",
            Earthing::Tt => "TT",
            Earthing::It => "IT",
            Earthing::Unknown => "Not known",
        }
    }
}
