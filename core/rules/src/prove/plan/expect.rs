//! What a test is expected to show, if the pair is dead and if it is not.
//!
//! An expectation helps to notice what is odd. It never turns a reading into "dead".

use super::volts::{Between, between};
use crate::prove::{Case, Conductor, Earthing, Role};

/// What a pair shows if it is dead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IfDead {
    /// Two that may be joined at the source or the origin.
    PerhapsJoined,
    /// A line to earth.
    LineToEarth,
    /// A pole or a control conductor to earth.
    OtherToEarth,
    /// Something to a line: a load or a winding may join them.
    ToLine,
    /// Something to a pole or a control conductor: a load, a winding or a converter may join them.
    ToOther,
    /// N to PE in TN-S, N not opened: joined at the source.
    BondAtSource,
    /// N to PE in TN-C-S, N not opened: joined at the origin.
    BondAtOrigin,
    /// N to PE in TN, N opened.
    OpenInTn,
    /// N to PE in TN, and nobody said whether N is opened.
    UnsaidInTn,
    /// N to PE in TT, N not opened, though it has to be.
    ClosedInTt,
    /// N to PE in TT, N opened.
    OpenInTt,
    /// N to PE in TT, and nobody said whether N is opened, as it has to be.
    UnsaidInTt,
    /// N to PE in IT.
    NeutralInIt,
}

/// What a pair shows if it is not dead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IfLive {
    /// Two that are both at earth or in the middle: from a few volts up to so many millivolts where one of the two is broken, or up to the
    /// voltage of a line.
    Middles(Option<u32>),
    /// About so many millivolts, or less where one of the two is cut off.
    About(u32),
    /// Anything up to so many millivolts, or nothing.
    UpTo(u32),
    /// One of two, or less where one of the two is cut off.
    Either {
        /// Millivolts between two phases.
        phases: u32,
        /// Millivolts across a winding with a mid-point.
        middle: u32,
    },
    /// The voltage of the supply, which nobody gave.
    Unsaid,
}

/// A case, seen for its expectations.
pub(super) struct View<'a> {
    case: &'a Case,
    everything_dc: bool,
}

impl<'a> View<'a> {
    pub(super) fn of(case: &'a Case) -> View<'a> {
        // A drive, a UPS or modules put direct voltage on any conductor when they fail; elsewhere DC conductors are enough.
        View { case, everything_dc: case.can_hold_dc() }
    }

    /// Whether the pair is read in the DC range too.
    pub(super) fn dc(&self, first: &Conductor, then: &Conductor) -> bool {
        let pole = |c: &Conductor| matches!(c.role, Role::DcPlus | Role::DcMinus);
        // What is left of a DC supply stands on its middle as well.
        let middle = |c: &Conductor| c.role == Role::MidPoint && self.case.conductors.iter().any(pole);
        let direct = |c: &Conductor| pole(c) || middle(c);
        self.everything_dc || direct(first) || direct(then)
    }

    pub(super) fn dead(&self, first: &Conductor, then: &Conductor) -> IfDead {
        use Role::{Line, MidPoint, Neutral, Pen, Protective};
        match (first.role, then.role) {
            (Protective, Neutral) => neutral_to_earth(self.case.earthing, self.case.opens(&then.name)),
            (Protective, Pen | MidPoint | Protective) => IfDead::PerhapsJoined,
            (Neutral | Pen | MidPoint, Neutral | Pen | MidPoint) => IfDead::PerhapsJoined,
            (Protective, Line) => IfDead::LineToEarth,
            (Protective, _) => IfDead::OtherToEarth,
            (_, Line) => IfDead::ToLine,
            _ => IfDead::ToOther,
        }
    }

    pub(super) fn not_dead(&self, first: &Conductor, then: &Conductor) -> IfLive {
        let middle = |c: &Conductor| c.role.danger() < 2;
        match between(self.case, first, then) {
            Between::UpTo(mv) if middle(first) && middle(then) => IfLive::Middles(Some(mv)),
            _ if middle(first) && middle(then) => IfLive::Middles(None),
            Between::About(mv) => IfLive::About(mv),
            Between::UpTo(mv) => IfLive::UpTo(mv),
            Between::Either(phases, middle) => IfLive::Either { phases, middle },
            Between::Unsaid => IfLive::Unsaid,
        }
    }
}

/// What N to PE shows when isolated. Engineering inference, no source: to be checked by a reader of BS 7671 or IEC 60364.
fn neutral_to_earth(earthing: Earthing, opened: Option<bool>) -> IfDead {
    use Earthing::{It, TnC, TnCS, TnS, Tt, Unknown};
    match (earthing, opened) {
        (TnS, Some(false)) => IfDead::BondAtSource,
        (TnCS, Some(false)) => IfDead::BondAtOrigin,
        (TnS | TnCS, Some(true)) => IfDead::OpenInTn,
        (TnS | TnCS, None) => IfDead::UnsaidInTn,
        (Tt, Some(false)) => IfDead::ClosedInTt,
        (Tt, Some(true)) => IfDead::OpenInTt,
        (Tt, None) => IfDead::UnsaidInTt,
        (It, _) => IfDead::NeutralInIt,
        (TnC | Unknown, _) => IfDead::PerhapsJoined,
    }
}
