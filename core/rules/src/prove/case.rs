//! The JSON input of `stillbar plan` and `stillbar judge`: one case, read whole or refused with one fault and its place.
//!
//! Everything after [`Case::from_json`] may rely on what it checked: two to 64 conductors with names of their own, pairs of two
//! different conductors that are in the list, voltages without a sign that fit in millivolts and are rounded up, limits below their bound,
//! no field twice and none that is not known. The format is in `docs/formats.md`.

pub(crate) mod at;
pub mod fault;
pub(crate) mod node;
mod read;

use fault::CaseError;

use super::conditions::known_line_proves;
use super::limit::{ELV_DC_MV, Limits};
use super::{Conductor, Earthing, Order, Supply, System};

/// The largest file, in bytes.
pub const MAX_BYTES: usize = 1 << 20;
/// The most readings of one case.
pub const MAX_READINGS: usize = 20_000;

/// Where an indicator without any step begins, in millivolts.
pub const SHOWS_NONE: u32 = u32::MAX;

/// A set of conductors to be proved dead, and what is known about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Case {
    /// The conductors at the point of work, in the order of the terminals.
    pub conductors: Vec<Conductor>,
    /// How the installation is earthed.
    pub earthing: Earthing,
    /// The nominal voltages, as far as they were given.
    pub nominal: Nominal,
    /// The supply as a table, where the system is known: it says more than the nominal voltages.
    pub supply: Option<Supply>,
    /// Names of the conductors that the points of isolation open, all points together. `None`: not said.
    pub poles_opened: Option<Vec<String>>,
    /// Which pairs come first.
    pub order: Order,
    /// The site's own order: every pair once. Goes before `order`.
    pub own_order: Option<Vec<[String; 2]>>,
    /// The indicator.
    pub indicator: Indicator,
    /// The greatest reading of alternating voltage that counts as dead, in millivolts; 0 unless the company set one.
    pub dead_limit_mv: u32,
    /// The same for direct voltage.
    pub dead_limit_dc_mv: u32,
    /// What may hold a charge.
    pub stored_energy: Vec<Stored>,
    /// What is connected.
    pub equipment: Equipment,
    /// The readings, in the order in which they were taken.
    pub readings: Vec<Given>,
    /// Whether the indicator worked before the readings. `None`: not said.
    pub proved_before: Option<bool>,
    /// Whether the indicator worked after the readings. `None`: not said.
    pub proved_after: Option<bool>,
    /// How it was shown that the reference really is earth.
    pub reference_proved: ReferenceProof,
}

/// Nominal voltages. Those not given are `None`; see [`Nominal::line_neutral`] and [`Nominal::line_line`] for what follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Nominal {
    /// Line to neutral, in millivolts.
    pub line_neutral_mv: Option<u32>,
    /// Line to line, in millivolts.
    pub line_line_mv: Option<u32>,
    /// Between the DC poles, in millivolts.
    pub dc_mv: Option<u32>,
    /// Of the control circuits, in millivolts.
    pub control_mv: Option<u32>,
    /// Frequency in hertz: 50 or 60 as a rule, 0 where there is DC only.
    pub hertz: Option<u16>,
}

/// What the indicator shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Indicator {
    /// Its steps in millivolts, rising: "lit to step i" means at least `levels_mv[i]` and less than the next.
    pub levels_mv: Vec<u32>,
    /// The steps for direct voltage, where they were said. See [`Indicator::lowest`] for what follows if they were not.
    pub dc_levels_mv: Option<Vec<u32>>,
    /// The load that it puts on the pair, where a reading does not say.
    pub impedance: Impedance,
}

/// The load that an indicator puts on what it tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Impedance {
    /// About what IEC 61243-3 calls low: below 100 kilohm. Pulls an interference voltage down.
    Low,
    /// 100 kilohm and above. Shows interference voltages too.
    High,
    /// Not said.
    #[default]
    Unknown,
}

/// What may hold a charge.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Holder {
    /// What somebody called it, such as "drive U1".
    Named(String),
    /// The drive, which nobody named.
    Drive,
    /// The UPS, which nobody named.
    Ups,
    /// The inverter of the modules, which nobody named.
    Inverter,
}

/// Something that may hold a charge.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stored {
    /// What.
    pub what: Holder,
    /// The discharge time on its label in seconds, if it has one.
    pub label_seconds: Option<u32>,
    /// How long was waited from switching off until covers came off, in seconds. `None`: not said.
    pub waited_seconds: Option<u32>,
    /// Between which conductors its DC voltage is read, if they are in the list.
    pub read_at: Option<[String; 2]>,
    /// What was read in the DC range at its own terminals, if those are not in the list. `None`: not read.
    pub read: Option<GivenValue>,
}

/// What is connected and can feed or hold voltage by itself. Any of these asks for a DC test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Equipment {
    /// A drive (frequency converter).
    pub drive: bool,
    /// An uninterruptible supply or a battery.
    pub ups: bool,
    /// Photovoltaic modules.
    pub pv: bool,
    /// A standby generator.
    pub generator: bool,
}

/// One reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Given {
    /// Between which two conductors, as given.
    pub pair: [String; 2],
    /// What was read.
    pub value: GivenValue,
    /// With which load on the pair; the indicator's where the reading does not say.
    pub impedance: Impedance,
    /// A reading in the DC range.
    pub dc: bool,
}

/// What an instrument said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GivenValue {
    /// A number, in millivolts.
    Volts(u32),
    /// Lit to this step of the indicator, in millivolts; one of [`Indicator::levels_mv`].
    Level(u32),
    /// Lit, and nobody read how far.
    Lit,
    /// No indication.
    None,
    /// A low-resistance path, and no voltage indicated.
    Continuity,
}

/// How it was shown that the protective conductor really is earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ReferenceProof {
    /// Not said.
    #[default]
    Unsaid,
    /// Not done.
    No,
    /// Read against a known live line of another supply before or after: the full voltage to earth appeared.
    KnownLine,
    /// Read against a second earth that does not depend on the first one: a driven electrode, a building's steel.
    SecondEarth,
    /// A loop or continuity measurement to the main earthing terminal.
    Continuity,
    /// Tried, and it failed: all that rests on this reference is worth nothing.
    Failed,
}

impl Case {
    /// A case of these conductors and nothing else known.
    pub fn of(conductors: Vec<Conductor>) -> Case {
        Case {
            conductors,
            earthing: Earthing::Unknown,
            nominal: Nominal::default(),
            supply: None,
            poles_opened: None,
            order: Order::default(),
            own_order: None,
            indicator: Indicator::default(),
            dead_limit_mv: 0,
            dead_limit_dc_mv: 0,
            stored_energy: Vec::new(),
            equipment: Equipment::default(),
            readings: Vec::new(),
            proved_before: None,
            proved_after: None,
            reference_proved: ReferenceProof::Unsaid,
        }
    }

    /// A case of this supply, of which nothing was tested.
    pub fn of_supply(supply: Supply, earthing: Earthing) -> Case {
        let nominal = Nominal::of(&supply);
        let conductors = supply.conductors();
        Case { earthing, nominal, supply: Some(supply), ..Case::of(conductors) }
    }

    /// Reads a case. Bounded: 1 MiB, 64 conductors, 20,000 readings.
    pub fn from_json(text: &str) -> Result<Case, CaseError> {
        read::case(text)
    }

    /// Whether something connected can hold or make direct voltage.
    pub fn can_hold_dc(&self) -> bool {
        self.equipment.asks_for_dc() || !self.stored_energy.is_empty()
    }

    /// The limits for dead.
    pub fn limits(&self) -> Limits {
        Limits { ac_mv: self.dead_limit_mv, dc_mv: self.dead_limit_dc_mv }
    }

    /// Whether a known live line that shows its full voltage shows that a conductor is earth: see [`known_line_proves`].
    pub fn known_line_proves(&self) -> bool {
        known_line_proves(self.earthing) && self.supply.as_ref().is_none_or(Supply::line_shows_earth)
    }

    /// Whether the points open this conductor; `None` where nobody said what they open.
    pub fn opens(&self, name: &str) -> Option<bool> {
        self.poles_opened.as_ref().map(|poles| poles.iter().any(|p| p == name))
    }

    /// Whether this reading is an indication of voltage, by the limit of its kind.
    pub fn indicates(&self, given: &Given) -> bool {
        given.value.indicates(self.limits().of(given.dc))
    }

    /// The conductor of this name.
    pub fn conductor(&self, name: &str) -> Option<&Conductor> {
        self.conductors.iter().find(|c| c.name == name)
    }

    /// Between which millivolts a reading says the voltage was: at least the first, less than the second where there is one.
    ///
    /// "No indication" means below the lowest step, which is not zero.
    pub fn span(&self, value: GivenValue) -> (u32, Option<u32>) {
        let levels = &self.indicator.levels_mv;
        match value {
            GivenValue::Volts(mv) => (mv, Some(mv)),
            GivenValue::Level(mv) => (mv, levels.iter().copied().find(|l| *l > mv)),
            GivenValue::Lit => (levels.first().copied().unwrap_or(0), None),
            GivenValue::None | GivenValue::Continuity => (0, levels.first().copied()),
        }
    }
}

impl GivenValue {
    /// Whether it is an indication of voltage. `limit_mv`: the greatest figure that counts as dead, AC or DC as the reading is.
    pub fn indicates(self, limit_mv: u32) -> bool {
        match self {
            GivenValue::Volts(mv) => mv > limit_mv,
            GivenValue::Level(_) | GivenValue::Lit => true,
            GivenValue::None | GivenValue::Continuity => false,
        }
    }

    /// Whether it is a figure: lamps have a first step, figures begin at nothing.
    pub fn is_figure(self) -> bool {
        matches!(self, GivenValue::Volts(_))
    }
}

impl Indicator {
    /// Where it begins to show alternating or direct voltage, in millivolts. Where its steps for direct voltage were not said, it is
    /// taken to begin no earlier than EN 61243-3 asks for: at 120 V, and not before its first step for alternating voltage.
    pub fn lowest(&self, dc: bool) -> u32 {
        let first = |levels: &[u32]| levels.first().copied().unwrap_or(SHOWS_NONE);
        match (&self.dc_levels_mv, dc) {
            (_, false) => first(&self.levels_mv),
            (Some(levels), true) => first(levels),
            (None, true) => first(&self.levels_mv).max(ELV_DC_MV),
        }
    }

    /// The steps that a reading may name.
    pub fn steps(&self, dc: bool) -> &[u32] {
        self.dc_levels_mv.as_deref().filter(|_| dc).unwrap_or(&self.levels_mv)
    }
}

impl Nominal {
    /// The nominal voltages of a supply, as its system is named.
    pub fn of(supply: &Supply) -> Nominal {
        let (named, mut nominal) = (Some(supply.nominal), Nominal::default());
        match supply.system {
            System::OnePhase | System::ThreePhaseNeutral | System::Pen => nominal.line_neutral_mv = named,
            System::ThreeWire | System::TwoLines | System::SiteTransformerThree | System::CornerGrounded => {
                nominal.line_line_mv = named;
            }
            System::SplitPhase => {
                (nominal.line_neutral_mv, nominal.line_line_mv) = (named, Some(supply.nominal.saturating_mul(2)));
            }
            System::SiteTransformer | System::HighLeg => {
                (nominal.line_neutral_mv, nominal.line_line_mv) = (Some(supply.nominal / 2), named);
            }
            System::DcTwoWire | System::DcThreeWire => nominal.dc_mv = named,
            System::Own => (nominal.line_line_mv, nominal.dc_mv) = (named, named),
        }
        nominal
    }

    /// Line to neutral in millivolts: as given, or the line-to-line voltage over the square root of three.
    pub fn line_neutral(&self) -> Option<u32> {
        self.line_neutral_mv.or_else(|| self.line_line_mv.map(|mv| (f64::from(mv) / 3f64.sqrt()).round() as u32))
    }

    /// Line to line in millivolts: as given, or the line-to-neutral voltage times the square root of three.
    pub fn line_line(&self) -> Option<u32> {
        self.line_line_mv.or_else(|| self.line_neutral_mv.map(|mv| (f64::from(mv) * 3f64.sqrt()).round() as u32))
    }
}

impl Default for Indicator {
    /// The steps that two-pole indicators commonly have (common practice, no source).
    fn default() -> Indicator {
        let levels_mv = [12, 24, 50, 120, 230, 400, 690].map(|v| v * 1000).to_vec();
        Indicator { levels_mv, dc_levels_mv: None, impedance: Impedance::Unknown }
    }
}

impl Equipment {
    /// Whether a DC test is needed.
    pub fn asks_for_dc(self) -> bool {
        self.drive || self.ups || self.pv
    }
}
