//! What the plan of a dead test demands and a case does not show.
//!
//! One function, [`unmet`], for the app and for `stillbar judge`: while it lists anything, nothing is proved dead, whatever was read.
//! It does not look at indications. The rules for the neutral and for a known live line stand here too, so that a plan asks for what a
//! proof needs.

use super::limit::{Bound, LimitError};
use super::{Case, Conductor, Earthing, GivenValue, Holder, ReferenceProof, Role, Stored, plan};

/// Something that is demanded and not shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unmet {
    /// The indicator was not shown to work before the readings.
    IndicatorBefore,
    /// The indicator was not shown to work after the readings.
    IndicatorAfter,
    /// The indicator begins to show a voltage too late for what the plan's sources put on a conductor, so that "none" shows nothing.
    LightsLate {
        /// Direct voltage, or alternating.
        dc: bool,
        /// Where it begins, in millivolts; [`super::SHOWS_NONE`] if it has no step for it.
        lowest_mv: u32,
        /// Where it has to begin at the latest, in millivolts.
        bound_mv: u32,
        /// Whether anybody said where it begins.
        said: bool,
    },
    /// The limit for dead is not below its bound.
    LimitTooHigh(LimitError),
    /// No conductor of the list is earth.
    NoEarth,
    /// The conductor that the others are held against was not shown to be earth.
    EarthNotProved,
    /// It was shown by a known live line, on a supply whose lines may show nothing to earth.
    KnownLine {
        /// How the supply is earthed.
        earthing: Earthing,
    },
    /// No point of isolation opens this line, pole or control conductor.
    LineClosed(String),
    /// No point of isolation opens this neutral or mid-point, and the system asks for it.
    NeutralClosed {
        /// Which.
        conductor: String,
        /// How the supply is earthed.
        earthing: Earthing,
    },
    /// A pair has no reading of alternating, or of direct voltage.
    PairNotRead {
        /// Which, in the order of the terminals.
        pair: [String; 2],
        /// Direct voltage, or alternating.
        dc: bool,
    },
    /// The time on the label of something that holds a charge was not waited.
    NotWaited {
        /// What.
        what: Holder,
        /// The time on its label.
        label_seconds: u32,
        /// How long was waited, if it was said.
        waited_seconds: Option<u32>,
    },
    /// No direct voltage was read at something that may hold a charge.
    ChargeNotRead {
        /// What.
        what: Holder,
        /// Between which conductors of the list; `None`: at its own terminals.
        at: Option<[String; 2]>,
    },
}

/// All that the plan of this case demands and the case does not show. Empty: whether it is proved dead is up to its readings.
pub fn unmet(case: &Case) -> Vec<Unmet> {
    let mut unmet = Vec::new();
    if case.proved_before != Some(true) {
        unmet.push(Unmet::IndicatorBefore);
    }
    if case.proved_after != Some(true) {
        unmet.push(Unmet::IndicatorAfter);
    }
    let bound = Bound::of(case);
    unmet.extend([false, true].into_iter().filter_map(|dc| late(case, bound, dc)));
    unmet.extend(bound.refuses(case.limits()).map(Unmet::LimitTooHigh));
    unmet.extend(earth(case));
    unmet.extend(left_closed(case).into_iter().map(|c| match c.role.danger() {
        2.. => Unmet::LineClosed(c.name.clone()),
        _ => Unmet::NeutralClosed { conductor: c.name.clone(), earthing: case.earthing },
    }));
    let read = PairsRead::of(case);
    unmet.extend(pairs(case, &read));
    for stored in plan::holders(case) {
        unmet.extend(charge(stored, &read));
    }
    unmet
}

/// Whether a known live line that shows its full voltage shows that a conductor is earth. Where no line is tied to earth, or nobody
/// knows, it shows nothing (IEC 60364-1: in IT no live part is).
pub fn known_line_proves(earthing: Earthing) -> bool {
    !matches!(earthing, Earthing::It | Earthing::Unknown)
}

/// Whether a neutral or mid-point has to be opened as well: it is not reliably at earth in TT and IT, and where nobody knows the
/// arrangement (IEC 60364-4-46 leaves it closed in TN; to open it wherever that is not known is our rule, no source).
pub fn neutral_has_to_open(earthing: Earthing) -> bool {
    matches!(earthing, Earthing::Tt | Earthing::It | Earthing::Unknown)
}

/// The conductors that the points of isolation leave closed and should not; none where nobody said what they open. A protective or PEN
/// conductor never has to be opened.
pub fn left_closed(case: &Case) -> Vec<&Conductor> {
    let has_to = |c: &Conductor| match c.role {
        Role::Protective | Role::Pen => false,
        Role::Neutral | Role::MidPoint => neutral_has_to_open(case.earthing),
        Role::Line if case.supply.as_ref().and_then(|s| s.grounded()) == Some(c.name.as_str()) => false,
        Role::Line | Role::DcPlus | Role::DcMinus | Role::Control => true,
    };
    let closed = |c: &&Conductor| has_to(c) && case.opens(&c.name) == Some(false) && !discharges(case, c);
    case.conductors.iter().filter(closed).collect()
}

/// Whether it is a terminal of something that only holds a charge, such as the link of a drive: no point opens it, waiting and reading
/// show it dead. Behind a battery or modules a DC terminal is fed, not charged, and has to be opened.
pub(super) fn discharges(case: &Case, c: &Conductor) -> bool {
    let direct = matches!(c.role, Role::DcPlus | Role::DcMinus | Role::MidPoint);
    let fed = case.equipment.ups || case.equipment.pv || case.opens(&c.name) == Some(true);
    let held = || case.stored_energy.iter().filter_map(|s| s.read_at.as_ref()).any(|pair| pair.contains(&c.name));
    direct && !fed && held()
}

/// An indicator that comes too late, if anything that counts was read with its lamps.
fn late(case: &Case, bound: Bound, dc: bool) -> Option<Unmet> {
    let nothing = |value: GivenValue| matches!(value, GivenValue::None | GivenValue::Continuity);
    let of_pairs = case.readings.iter().any(|g| g.dc == dc && nothing(g.value));
    let of_charges = dc && case.stored_energy.iter().filter_map(|s| s.read).any(nothing);
    let lowest_mv = case.indicator.lowest(dc);
    let said = !dc || case.indicator.dc_levels_mv.is_some();
    let found = || Unmet::LightsLate { dc, lowest_mv, bound_mv: bound.at(dc), said };
    ((of_pairs || of_charges) && !bound.lit_by(dc, lowest_mv)).then(found)
}

fn earth(case: &Case) -> Option<Unmet> {
    if !case.conductors.iter().any(|c| c.role.is_reference()) {
        return Some(Unmet::NoEarth);
    }
    match case.reference_proved {
        ReferenceProof::Unsaid | ReferenceProof::No | ReferenceProof::Failed => Some(Unmet::EarthNotProved),
        ReferenceProof::KnownLine if case.known_line_proves() => None,
        ReferenceProof::KnownLine => Some(Unmet::KnownLine { earthing: case.earthing }),
        ReferenceProof::SecondEarth | ReferenceProof::Continuity => None,
    }
}

/// Which pairs have a reading, by places in the list of conductors. Filled in one pass over the readings, so that 20,000 of them and
/// 2,016 pairs stay cheap.
struct PairsRead<'a> {
    names: Vec<&'a str>,
    of: Vec<[bool; 2]>,
}

impl<'a> PairsRead<'a> {
    fn of(case: &'a Case) -> PairsRead<'a> {
        let names: Vec<&str> = case.conductors.iter().map(|c| c.name.as_str()).collect();
        let mut read = PairsRead { of: vec![[false; 2]; names.len() * names.len()], names };
        for given in &case.readings {
            if let Some(slot) = read.slot(&given.pair) {
                read.of[slot][usize::from(given.dc)] = true;
            }
        }
        read
    }

    fn slot(&self, pair: &[String; 2]) -> Option<usize> {
        let place = |name: &str| self.names.iter().position(|n| *n == name);
        let (i, j) = (place(&pair[0])?, place(&pair[1])?);
        Some(i.min(j) * self.names.len() + i.max(j))
    }

    fn has(&self, pair: &[String; 2], dc: bool) -> bool {
        self.slot(pair).is_some_and(|slot| self.of[slot][usize::from(dc)])
    }
}

fn pairs(case: &Case, read: &PairsRead) -> Vec<Unmet> {
    let asks = plan::asks_for_dc(case);
    let mut unmet = Vec::new();
    for (i, a) in case.conductors.iter().enumerate() {
        for b in &case.conductors[i + 1..] {
            let pair = [a.name.clone(), b.name.clone()];
            let wanted = [(false, !between_poles(a, b)), (true, asks(a, b))];
            for (dc, _) in wanted.into_iter().filter(|(dc, wanted)| *wanted && !read.has(&pair, *dc)) {
                unmet.push(Unmet::PairNotRead { pair: pair.clone(), dc });
            }
        }
    }
    unmet
}

/// Between the poles of a DC supply, and between a pole and its mid-point, only direct voltage is looked for.
fn between_poles(a: &Conductor, b: &Conductor) -> bool {
    let pole = |c: &Conductor| matches!(c.role, Role::DcPlus | Role::DcMinus);
    let middle = |c: &Conductor| c.role == Role::MidPoint;
    (pole(a) && (pole(b) || middle(b))) || (middle(a) && pole(b))
}

fn charge(stored: Stored, read: &PairsRead) -> Vec<Unmet> {
    let mut unmet = Vec::new();
    let waited_seconds = stored.waited_seconds;
    if let Some(label_seconds) = stored.label_seconds.filter(|label| waited_seconds.unwrap_or(0) < *label) {
        unmet.push(Unmet::NotWaited { what: stored.what.clone(), label_seconds, waited_seconds });
    }
    let was_read = match &stored.read_at {
        Some(pair) => read.has(pair, true),
        None => stored.read.is_some(),
    };
    if !was_read {
        unmet.push(Unmet::ChargeNotRead { what: stored.what, at: stored.read_at });
    }
    unmet
}
