//! Proving dead: which pairs, which probe first, what was done, what a plan demands, and what a wrong reading means.
//!
//! Promises: every pair of conductors is tested exactly once in a plan; a run that met an indication, or whose indicator failed its second
//! proof, is never "proved dead"; unknown comes out as treat as live. What the plan demands and a case does not show is worked out in one
//! place, for the app and the command line. Start at [`plan_case`], [`conditions::unmet`] and [`Run`].

mod case;
pub mod conditions;
pub mod judge;
pub mod limit;
mod order;
mod plan;
mod run;
mod source;
mod terminals;

pub use case::fault::{self, CaseError};
pub use case::{
    Case, Equipment, Given, GivenValue, Holder, Impedance, Indicator, MAX_BYTES, Nominal, ReferenceProof, SHOWS_NONE,
    Stored,
};
pub(crate) use case::{at, node};
pub use plan::{
    DcReason, DcTest, EarthWay, IfDead, IfLive, Note, Plan, PlanWarning, ReferenceTest, Test, Wait, WhyFirst,
    fewest_moves, group, plan, plan_case,
};
pub use run::{Earth, Met, Proof, Run, Taken};
pub use source::{DrawnVolts, source};
pub use stillbar_values::conductors::{self, Conductor, ConductorError, Role, parse_conductors};
pub use stillbar_values::figures::{ReadingError, parse_amps, parse_volts, volts};
pub use stillbar_values::{Earthing, Live, Measured, Order, Reading, RuleSet, Supply, System};
pub use terminals::{HeldConductor, terminals};
