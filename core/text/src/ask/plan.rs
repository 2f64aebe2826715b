//! What is asked while the plan is made.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked while the plan is made.
    AskPlan in Plan {
        PermitOrNone => "ask-plan-permit-or-none",
        PermitReference => "ask-plan-permit-reference",
        PermitWhyNone => "ask-plan-permit-why-none",
        Person => "ask-plan-person",
        Duty => "ask-plan-duty",
        ToldWho => "ask-plan-told-who",
        ToldHow => "ask-plan-told-how",
        Barrier => "ask-plan-barrier",
        BarrierAt => "ask-plan-barrier-at",
        Circuit => "ask-plan-circuit",
        CircuitServes => "ask-plan-circuit-serves",
        CircuitsWhyNone => "ask-plan-circuits-why-none",
        SourceElsewhere => "ask-plan-source-elsewhere",
        SourceKind => "ask-plan-source-kind",
        CircuitRow => "ask-plan-circuit-row",
        SourceKinds => "ask-plan-source-kinds",
        SourceFoundOrNone => "ask-plan-source-found-or-none",
        Looked => "ask-plan-looked",
        ControlTerminals => "ask-plan-control-terminals",
        ControlVolts => "ask-plan-control-volts",
        SourceWhat => "ask-plan-source-what",
        SourceAt => "ask-plan-source-at",
        StoredFoundOrNone => "ask-plan-stored-found-or-none",
        StoredStands => "ask-plan-stored-stands",
        StoredWhat => "ask-plan-stored-what",
        StoredAt => "ask-plan-stored-at",
        StoredMinutes => "ask-plan-stored-minutes",
        Box => "ask-plan-box",
        BoxAt => "ask-plan-box-at",
        Point => "ask-plan-point",
        PointAt => "ask-plan-point-at",
        PointKind => "ask-plan-point-kind",
        PointLockable => "ask-plan-point-lockable",
        PointPoles => "ask-plan-point-poles",
        PointCuts => "ask-plan-point-cuts",
        PointSwitch => "ask-plan-point-switch",
        LightsFromAc => "ask-plan-lights-from-ac",
        LightsFromDc => "ask-plan-lights-from-dc",
        InstrumentKind => "ask-plan-instrument-kind",
        InstrumentName => "ask-plan-instrument-name",
        InstrumentSerial => "ask-plan-instrument-serial",
        InstrumentListed => "ask-plan-instrument-listed",
        Instrument => "ask-plan-instrument",
        RotationWhere => "ask-plan-rotation-where",
        RotationWhyNot => "ask-plan-rotation-why-not",
    }
}

/// A part of an instrument that is looked over before use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InstrumentPart {
    /// The leads.
    Leads,
    /// The tips.
    Tips,
    /// The case.
    Case,
    /// The date of its check.
    Date,
}

impl InstrumentPart {
    pub(super) fn says(self) -> String {
        match self {
            InstrumentPart::Leads => say!("instrument-leads"),
            InstrumentPart::Tips => say!("instrument-tips"),
            InstrumentPart::Case => say!("instrument-case"),
            InstrumentPart::Date => say!("instrument-date"),
        }
    }
}
