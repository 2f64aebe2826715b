//! What a plan asks for beside the pairs: that the reference is earth, that charges are gone, that direct voltage is looked for.

use super::Test;
use crate::prove::conditions::{discharges, left_closed};
use crate::prove::limit::Bound;
use crate::prove::{Case, Conductor, Earthing, Holder, Role, Stored};

/// How to show that what the conductors are held against is earth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReferenceTest {
    /// The conductor, or `None` where the list has none.
    pub conductor: Option<String>,
    /// What to do: one of these is enough.
    pub ways: Vec<EarthWay>,
}

/// A way to show that a conductor is earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EarthWay {
    /// Put one in the list first.
    List,
    /// Read the full voltage from it to a known live line.
    KnownLine,
    /// Measure a low resistance to the main earthing terminal.
    MainTerminal,
    /// Measure a low resistance to metalwork that is bonded elsewhere.
    Bonded,
}

/// Something that has to discharge. Only a reading of its direct voltage ends the wait, never the time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wait {
    /// What holds the charge.
    pub what: Holder,
    /// How long to wait before the covers come off, in seconds; `None` where no label said it yet.
    pub wait_seconds: Option<u32>,
    /// Between which conductors of the list its DC voltage is read; `None`: at its own terminals.
    pub read_at: Option<[String; 2]>,
}

/// A DC test.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DcTest {
    /// Why it is needed.
    pub why: Vec<DcReason>,
    /// The pairs that are read in the DC range too.
    pub pairs: Vec<[String; 2]>,
}

/// Why a DC test is needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DcReason {
    /// A drive is connected.
    Drive,
    /// A UPS is connected.
    Ups,
    /// Photovoltaic modules are connected.
    Pv,
    /// Something holds a charge.
    Stored,
    /// There are DC conductors.
    Conductors,
}

/// What a case itself says is dangerous or missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanWarning {
    /// No conductor of the list is earth.
    NoReference,
    /// The points leave these lines, poles or control conductors closed.
    LinesClosed(Vec<String>),
    /// The points leave these neutrals or mid-points closed, in an arrangement that asks for them to be opened.
    NeutralsClosed(Vec<String>, Earthing),
    /// No point opens these: they have to discharge.
    Charged(Vec<String>),
    /// The supply is not earthed.
    It,
    /// Several supplies meet: their names.
    Supplies(Vec<String>),
    /// There are control circuits.
    Control,
    /// Modules are live in light.
    Pv,
    /// A UPS feeds with its supply off.
    Ups,
    /// A generator starts by itself.
    Generator,
    /// The indicator begins to show too late.
    LightsLate {
        /// Where it begins, in millivolts.
        lowest_mv: u32,
        /// Where it has to begin at the latest, in millivolts.
        bound_mv: u32,
    },
}

/// Where the expectations of a plan come from, and what it does not know.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Note {
    /// The indicator is proved before and after.
    ProveIndicator,
    /// Danger by role and the order of the pairs have no source.
    CommonPractice,
    /// What N to PE should read has no source.
    NeutralInferred,
    /// The earthing arrangement was not given.
    EarthingUnsaid,
    /// What the isolator opens was not given.
    PolesUnsaid,
    /// The site's own order needs so many moves more than the best.
    MoreMoves(usize),
}

pub(super) fn reference(case: &Case) -> ReferenceTest {
    let of = |role| case.conductors.iter().find(|c| c.role == role);
    let conductor = of(Role::Protective).or(of(Role::Pen)).map(|c| c.name.clone());
    let ways = match (&conductor, case.known_line_proves()) {
        (None, _) => vec![EarthWay::List],
        (Some(_), true) => vec![EarthWay::KnownLine, EarthWay::MainTerminal, EarthWay::Bonded],
        (Some(_), false) => vec![EarthWay::MainTerminal, EarthWay::Bonded],
    };
    ReferenceTest { conductor, ways }
}

pub(super) fn waits(case: &Case) -> Vec<Wait> {
    let wait = |stored: Stored| Wait { what: stored.what, wait_seconds: stored.label_seconds, read_at: stored.read_at };
    holders(case).into_iter().map(wait).collect()
}

/// What has to discharge: what the case names, or else whatever holds the charge of the equipment that it names.
pub(super) fn holders(case: &Case) -> Vec<Stored> {
    if !case.stored_energy.is_empty() {
        return case.stored_energy.clone();
    }
    let kinds = [
        (case.equipment.drive, Holder::Drive),
        (case.equipment.ups, Holder::Ups),
        (case.equipment.pv, Holder::Inverter),
    ];
    let unsaid = |what| Stored { what, label_seconds: None, waited_seconds: None, read_at: None, read: None };
    kinds.into_iter().filter(|(there, _)| *there).map(|(_, what)| unsaid(what)).collect()
}

pub(super) fn dc_test(case: &Case, tests: &[Test]) -> Option<DcTest> {
    let equipment = case.equipment;
    let has_dc = case.conductors.iter().any(|c| matches!(c.role, Role::DcPlus | Role::DcMinus));
    let why: Vec<DcReason> = [
        (equipment.drive, DcReason::Drive),
        (equipment.ups, DcReason::Ups),
        (equipment.pv, DcReason::Pv),
        (!case.stored_energy.is_empty(), DcReason::Stored),
        (has_dc, DcReason::Conductors),
    ]
    .into_iter()
    .filter(|(there, _)| *there)
    .map(|(_, why)| why)
    .collect();
    let pairs = tests.iter().filter(|t| t.dc).map(|t| t.pair.clone()).collect();
    (!why.is_empty()).then_some(DcTest { why, pairs })
}

pub(super) fn warnings(case: &Case) -> Vec<PlanWarning> {
    let mut warnings = Vec::new();
    let mut warn = |there: bool, warning: PlanWarning| warnings.extend(there.then_some(warning));
    warn(!case.conductors.iter().any(|c| c.role.is_reference()), PlanWarning::NoReference);

    let (lines, neutrals): (Vec<_>, Vec<_>) = left_closed(case).into_iter().partition(|c| c.role.danger() > 1);
    let names = |of: Vec<&Conductor>| of.into_iter().map(|c| c.name.clone()).collect::<Vec<_>>();
    warn(!lines.is_empty(), PlanWarning::LinesClosed(names(lines)));
    warn(!neutrals.is_empty(), PlanWarning::NeutralsClosed(names(neutrals), case.earthing));
    let charged = names(case.conductors.iter().filter(|c| discharges(case, c)).collect());
    warn(!charged.is_empty(), PlanWarning::Charged(charged));
    warn(case.earthing == Earthing::It, PlanWarning::It);

    let mut supplies: Vec<String> = case.conductors.iter().filter_map(|c| c.supply.clone()).collect();
    supplies.sort_unstable();
    supplies.dedup();
    warn(supplies.len() > 1, PlanWarning::Supplies(supplies));
    warn(case.conductors.iter().any(|c| c.role == Role::Control), PlanWarning::Control);
    warn(case.equipment.pv, PlanWarning::Pv);
    warn(case.equipment.ups, PlanWarning::Ups);
    warn(case.equipment.generator, PlanWarning::Generator);

    let (lowest_mv, bound) = (case.indicator.lowest(false), Bound::of(case));
    warn(!bound.lit_by(false, lowest_mv), PlanWarning::LightsLate { lowest_mv, bound_mv: bound.ac_mv });
    warnings
}

pub(super) fn notes(case: &Case, over: usize) -> Vec<Note> {
    let both = [Role::Neutral, Role::Protective].iter().all(|role| case.conductors.iter().any(|c| c.role == *role));
    [
        (true, Note::ProveIndicator),
        (true, Note::CommonPractice),
        (both, Note::NeutralInferred),
        (case.earthing == Earthing::Unknown, Note::EarthingUnsaid),
        (case.poles_opened.is_none(), Note::PolesUnsaid),
        (over > 0, Note::MoreMoves(over)),
    ]
    .into_iter()
    .filter(|(there, _)| *there)
    .map(|(_, note)| note)
    .collect()
}
