//! What a test is expected to show, if the pair is dead and if it is not.
//!
//! An expectation helps to notice what is odd. It never turns a reading into "dead".

use super::volts::{Between, between, whole};
use crate::prove::{Case, Conductor, Earthing, Role};

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
        let direct = |c: &Conductor| matches!(c.role, Role::DcPlus | Role::DcMinus);
        self.everything_dc || direct(first) || direct(then)
    }

    pub(super) fn dead(&self, first: &Conductor, then: &Conductor) -> String {
        use Role::{Line, MidPoint, Neutral, Pen, Protective};
        let unknown = self.case.earthing == Earthing::Unknown;
        match (first.role, then.role) {
            (Protective, Neutral) if !unknown => {
                return neutral_to_earth(self.case.earthing, self.case.opens(&then.name)).into();
            }
            _ => {}
        }
        match (first.role, then.role) {
            (Protective, Neutral | Pen | MidPoint) | (Protective, Protective) => {
                "no indication; continuity if the two are joined at the source or the origin"
            }
            (Neutral | Pen | MidPoint, Neutral | Pen | MidPoint) => {
                "no indication; continuity if the two are joined at the source or the origin"
            }
            (Protective, Line) => "no indication; continuity points to an earth fault, a filter or a surge arrester",
            (Protective, _) => "no indication; continuity points to an earth fault, a filter or a pole that is earthed",
            (_, Line) => "no indication; continuity if a load or winding joins them",
            _ => "no indication; continuity if a load, a winding or a converter joins them",
        }
        .into()
    }

    pub(super) fn not_dead(&self, first: &Conductor, then: &Conductor) -> String {
        let middle = |c: &Conductor| c.role.danger() < 2;
        match between(self.case, first, then) {
            between if middle(first) && middle(then) => {
                let most = match between {
                    Between::UpTo(mv) => format!("{} V", whole(mv)),
                    _ => "the voltage of a line".into(),
                };
                format!(
                    "from a few volts (a shared or borrowed path that carries current) up to {most} where one of the two is broken"
                )
            }
            Between::About(mv) => {
                format!("about {} V; anything below that if one of the two is cut off and floats", whole(mv))
            }
            Between::UpTo(mv) => format!("anything up to {} V; none may show although both are live", whole(mv)),
            Between::Either(a, b) => {
                format!(
                    "about {} V between two phases, {} V with a mid-point; anything below that if one is cut off and floats",
                    whole(a),
                    whole(b)
                )
            }
            Between::Unsaid => "the voltage of the supply; its nominal voltage was not given".into(),
        }
    }
}

/// What N to PE shows when isolated. Engineering inference, no source: to be checked by a reader of BS 7671 or IEC 60364.
fn neutral_to_earth(earthing: Earthing, opened: Option<bool>) -> &'static str {
    use Earthing::{It, TnC, TnCS, TnS, Tt};
    match (earthing, opened) {
        (TnS, Some(false)) => {
            "no indication, at most a few volts; low resistance through the bond at the source, high resistance points to a broken N or PE"
        }
        (TnCS, Some(false)) => {
            "no indication, at most a few volts; very low resistance through the bond at the origin: continuity is normal"
        }
        (TnS | TnCS, Some(true)) => {
            "no indication, or an induced one; open circuit: continuity points to a borrowed neutral or a second bond"
        }
        (TnS | TnCS, None) => {
            "no indication, at most a few volts; continuity where N is not opened, open circuit where it is: find out which"
        }
        (Tt, Some(false)) => {
            "some volts can stand; tens to hundreds of ohms through the electrodes. N has to be opened in TT: it is not"
        }
        (Tt, Some(true)) => "no indication, or an induced one; open circuit",
        (Tt, None) => {
            "no indication, or an induced one, where N is opened; N has to be opened in TT: find out whether it is"
        }
        (It, _) => "no indication, or an induced one; high resistance. A first fault can hide",
        (TnC | Earthing::Unknown, _) => "no indication; continuity if the two are joined at the source or the origin",
    }
}
