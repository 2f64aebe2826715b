//! The voltage that stands between two conductors while nothing is isolated, by role, nominal voltages and earthing.

use crate::prove::{Case, Conductor, Earthing, Live, Role};

/// What stands between two conductors that are live.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Between {
    /// About so many millivolts.
    About(u32),
    /// Anything up to so many millivolts; nothing may show although the pair is live.
    UpTo(u32),
    /// One of two, in millivolts.
    Either(u32, u32),
    /// No nominal voltage says how much.
    Unsaid,
}

/// Between `a` and `b`, `a` the less dangerous one.
pub(super) fn between(case: &Case, a: &Conductor, b: &Conductor) -> Between {
    match case.supply.as_ref().and_then(|supply| supply.between(&a.name, &b.name, case.earthing)) {
        // Of a control supply or another one that the table does not have, its role tells.
        Some(Live::About(mv)) => return Between::About(mv),
        Some(Live::UpTo(mv)) => return Between::UpTo(mv),
        Some(Live::Either(one, other)) => return Between::Either(one, other),
        None => {}
    }
    let nominal = &case.nominal;
    let (phase, dc, control) = (nominal.line_neutral(), nominal.dc_mv, nominal.control_mv);
    let other_supply = matches!((&a.supply, &b.supply), (Some(x), Some(y)) if x != y);
    match (kind(a.role), kind(b.role)) {
        (ConductorKind::Line, ConductorKind::Line) if other_supply => Between::up_to(phase.map(|mv| 2 * mv)),
        (ConductorKind::Line, ConductorKind::Line) => lines(case, a),
        (ConductorKind::Earth, ConductorKind::Line) if case.earthing == Earthing::It => {
            Between::up_to(nominal.line_line())
        }
        (ConductorKind::Earth, ConductorKind::Line) => to_earth(case),
        // Two neutrals that are not joined drift apart.
        (ConductorKind::Middle, ConductorKind::Line) if other_supply => Between::up_to(phase.map(|mv| 2 * mv)),
        (ConductorKind::Middle, ConductorKind::Line) => Between::about(phase),
        (ConductorKind::Earth | ConductorKind::Middle, ConductorKind::Earth | ConductorKind::Middle) => {
            let of_dc = a.role == Role::MidPoint || b.role == Role::MidPoint;
            Between::up_to(phase.max(dc.filter(|_| of_dc).map(|mv| mv / 2)))
        }
        (ConductorKind::Dc, ConductorKind::Dc) if other_supply => Between::up_to(dc.map(|mv| 2 * mv)),
        (ConductorKind::Dc, ConductorKind::Dc) if a.role == b.role => Between::up_to(dc),
        (ConductorKind::Dc, ConductorKind::Dc) => Between::about(dc),
        (ConductorKind::Middle, ConductorKind::Dc) if a.role == Role::MidPoint => Between::about(dc.map(|mv| mv / 2)),
        (ConductorKind::Earth, ConductorKind::Dc) => Between::up_to(dc),
        (ConductorKind::Control, ConductorKind::Control) => Between::up_to(control.or(nominal.line_line())),
        (ConductorKind::Earth | ConductorKind::Middle, ConductorKind::Control) => {
            Between::up_to(control.or(nominal.line_line()))
        }
        // Two sources that have nothing to do with each other: at worst their voltages add.
        _ => Between::up_to(sum([a.role, b.role].map(|role| amount(case, role)))),
    }
}

enum ConductorKind {
    Earth,
    Middle,
    Line,
    Dc,
    Control,
}

fn kind(role: Role) -> ConductorKind {
    match role {
        Role::Protective => ConductorKind::Earth,
        Role::Pen | Role::Neutral | Role::MidPoint => ConductorKind::Middle,
        Role::Line => ConductorKind::Line,
        Role::DcPlus | Role::DcMinus => ConductorKind::Dc,
        Role::Control => ConductorKind::Control,
    }
}

fn lines(case: &Case, of: &Conductor) -> Between {
    let lines = case.conductors.iter().filter(|c| c.role == Role::Line && c.supply == of.supply).count();
    match (case.nominal.line_line_mv, case.nominal.line_neutral_mv) {
        (Some(mv), _) => Between::About(mv),
        // Two lines alone are two of three phases, or the two ends of a winding with a mid-point.
        (None, Some(mv)) if lines == 2 => Between::Either(case.nominal.line_line().unwrap_or(2 * mv), 2 * mv),
        _ => Between::about(case.nominal.line_line()),
    }
}

fn to_earth(case: &Case) -> Between {
    let star = case.conductors.iter().any(|c| kind_is_middle(c.role)) || case.nominal.line_neutral_mv.is_some();
    match case.nominal.line_line_mv {
        // Three wires: the supply may be earthed at the star point or at a corner, where one line shows nothing.
        Some(mv) if !star => Between::UpTo(mv),
        _ => Between::about(case.nominal.line_neutral()),
    }
}

fn kind_is_middle(role: Role) -> bool {
    matches!(kind(role), ConductorKind::Middle)
}

/// The greatest voltage to earth that a conductor of this role has.
fn amount(case: &Case, role: Role) -> Option<u32> {
    match kind(role) {
        ConductorKind::Line => case.nominal.line_neutral(),
        ConductorKind::Dc => case.nominal.dc_mv,
        ConductorKind::Control => case.nominal.control_mv.or(case.nominal.line_line()),
        ConductorKind::Earth | ConductorKind::Middle => Some(0),
    }
}

fn sum(parts: [Option<u32>; 2]) -> Option<u32> {
    let [a, b] = parts;
    Some(a? + b?)
}

impl Between {
    fn about(mv: Option<u32>) -> Between {
        mv.map_or(Between::Unsaid, Between::About)
    }

    fn up_to(mv: Option<u32>) -> Between {
        mv.map_or(Between::Unsaid, Between::UpTo)
    }
}
