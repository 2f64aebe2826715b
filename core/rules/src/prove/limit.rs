//! The limit for dead: up to which figure a reading counts as dead, how high that may be set, and which instrument lights in time.
//!
//! What counts by itself is "no indication" on an instrument that lights at or before 50 V AC and 120 V DC. A company may count figures as
//! dead up to limits of its own, AC and DC apart. Neither may hide a source of the plan, so both have to stay within the same [`Bound`].
//! Start at [`bound`], or at [`Bound::of`] for a case.

use super::{Case, Role, System};

/// Where extra-low voltage ends: EN 61243-3 has an indicator show these at the latest.
const ELV_AC_MV: u32 = 50_000;
pub(super) const ELV_DC_MV: u32 = 120_000;

/// Up to which figure a reading counts as dead, in millivolts. 0 each unless the company set more. Lamps know no limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Limits {
    /// For alternating voltage.
    pub ac_mv: u32,
    /// For direct voltage.
    pub dc_mv: u32,
}

/// A limit stays below this; an instrument lights here at the latest. In millivolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bound {
    /// For alternating voltage: 50 V, or half of the lowest voltage of a source if that is less.
    pub ac_mv: u32,
    /// For direct voltage: 120 V, or half of the lowest voltage of a source if that is less.
    pub dc_mv: u32,
}

/// What a source of the plan is, by the voltage that it is named by, in millivolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LimitSource {
    /// Alternating, line to neutral.
    LineNeutral(u32),
    /// Alternating, three lines without a neutral, line to line: each line has this over the square root of three, on IT too.
    LineLine(u32),
    /// Alternating, two lines, line to line: with its middle earthed each line has half of it.
    TwoLines(u32),
    /// Direct, between the poles: where neither pole is earthed each has half of it.
    Poles(u32),
    /// A control supply, between its terminals. It may be alternating or direct.
    Control(u32),
}

/// A limit at or above its bound.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LimitError {
    /// Which of the two limits.
    pub dc: bool,
    /// What it has to stay below, in millivolts.
    pub bound_mv: u32,
}

/// What limits have to stay below, and where an instrument has to light at the latest, with these sources. A source of 0 V is none.
///
/// ```
/// use stillbar_rules::prove::limit::{LimitSource, Limits, bound, lights_in_time};
/// let board = bound([LimitSource::LineNeutral(230_000)]);
/// assert_eq!((board.ac_mv, board.dc_mv), (50_000, 120_000));
/// assert!(board.refuses(Limits { ac_mv: 49_999, dc_mv: 0 }).is_none());
///
/// // Tools at 110 V with their middle earthed: 55 V on each line. An indicator that begins at 50 V shows nothing in time.
/// let tools = bound([LimitSource::TwoLines(110_000)]);
/// assert_eq!(tools.ac_mv, 27_500);
/// assert!(!lights_in_time(50_000, 120_000, tools) && lights_in_time(12_000, 120_000, tools));
///
/// // A control supply of 24 V beside the board, alternating or direct.
/// let both = bound([LimitSource::LineNeutral(230_000), LimitSource::Control(24_000)]);
/// assert_eq!((both.ac_mv, both.dc_mv), (12_000, 12_000));
/// ```
pub fn bound(sources: impl IntoIterator<Item = LimitSource>) -> Bound {
    let mut bound = Bound { ac_mv: ELV_AC_MV, dc_mv: ELV_DC_MV };
    for source in sources {
        let half = source.to_reference() / 2;
        if source.to_reference() == 0 {
            continue;
        }
        if source.alternates() {
            bound.ac_mv = bound.ac_mv.min(half);
        }
        if source.is_direct() {
            bound.dc_mv = bound.dc_mv.min(half);
        }
    }
    bound
}

/// Whether an instrument that begins to indicate there shows every source in time: not later than the bound. Each in millivolts.
pub fn lights_in_time(lowest_ac_mv: u32, lowest_dc_mv: u32, bound: Bound) -> bool {
    bound.lit_by(false, lowest_ac_mv) && bound.lit_by(true, lowest_dc_mv)
}

impl LimitSource {
    /// The lowest voltage that it puts between a line or pole and its reference, rounded down.
    pub fn to_reference(self) -> u32 {
        match self {
            LimitSource::LineNeutral(mv) | LimitSource::Control(mv) => mv,
            LimitSource::LineLine(mv) => (f64::from(mv) / 3f64.sqrt()) as u32,
            LimitSource::TwoLines(mv) | LimitSource::Poles(mv) => mv / 2,
        }
    }

    fn alternates(self) -> bool {
        !matches!(self, LimitSource::Poles(_))
    }

    fn is_direct(self) -> bool {
        matches!(self, LimitSource::Poles(_) | LimitSource::Control(_))
    }
}

impl Limits {
    /// The one for direct or for alternating voltage.
    pub fn of(self, dc: bool) -> u32 {
        if dc { self.dc_mv } else { self.ac_mv }
    }
}

impl Bound {
    /// The bound of a case, by its nominal voltages. What nobody named bounds nothing beyond EN 61243-3.
    pub fn of(case: &Case) -> Bound {
        bound(sources(case))
    }

    /// Why these limits cannot be set; `None` if they can. 0 always can.
    pub fn refuses(self, limits: Limits) -> Option<LimitError> {
        let too_high = |dc: &bool| limits.of(*dc) > 0 && limits.of(*dc) >= self.at(*dc);
        [false, true].into_iter().find(too_high).map(|dc| LimitError { dc, bound_mv: self.at(dc) })
    }

    /// Whether an instrument that begins to indicate at `lowest_mv` does so in time.
    pub fn lit_by(self, dc: bool, lowest_mv: u32) -> bool {
        lowest_mv <= self.at(dc)
    }

    /// The one for direct or for alternating voltage.
    pub fn at(self, dc: bool) -> u32 {
        if dc { self.dc_mv } else { self.ac_mv }
    }
}

/// What is taken for the lowest voltage of a set of one's own, of which nobody knows it: 24 V, the lowest control supply that is common. Our
/// rule, no source.
pub fn own_lowest(nominal_mv: u32) -> LimitSource {
    LimitSource::Control(nominal_mv.min(24_000))
}

/// The sources that the nominal voltages of a case name.
fn sources(case: &Case) -> Vec<LimitSource> {
    if let Some(own) = case.supply.as_ref().filter(|s| s.system == System::Own) {
        let control = case.nominal.control_mv.map(LimitSource::Control);
        return std::iter::once(own_lowest(own.nominal)).chain(control).collect();
    }
    let nominal = case.nominal;
    let lines_with =
        |name: &Option<String>| case.conductors.iter().filter(|c| c.role == Role::Line && c.supply == *name).count();
    let two = case.conductors.iter().any(|c| c.role == Role::Line && lines_with(&c.supply) == 2);
    let lines = match (nominal.line_neutral_mv, nominal.line_line_mv) {
        (Some(mv), _) => Some(LimitSource::LineNeutral(mv)),
        (None, Some(mv)) if two => Some(LimitSource::TwoLines(mv)),
        (None, Some(mv)) => Some(LimitSource::LineLine(mv)),
        (None, None) => None,
    };
    let others = [nominal.dc_mv.map(LimitSource::Poles), nominal.control_mv.map(LimitSource::Control)];
    lines.into_iter().chain(others.into_iter().flatten()).collect()
}
