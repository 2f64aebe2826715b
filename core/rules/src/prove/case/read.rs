//! From the tree to a [`Case`]: each field by itself, then what contradicts what.

use super::at::{At, Fields};
use super::fault::{CaseError, CaseFault, Needed, Unit};
use super::node::Node;
use super::{
    Case, Equipment, Given, GivenValue, Holder, Impedance, Indicator, MAX_READINGS, Nominal, ReferenceProof, Stored,
};
use crate::json::quoted;
use crate::prove::limit::{Bound, Limits};
use crate::prove::{Conductor, Earthing, Order, Role};
use stillbar_values::conductors::{MAX, NAME};

const FIELDS: [&str; 17] = [
    "conductors",
    "earthing",
    "nominal_volts",
    "hertz",
    "poles_opened",
    "order",
    "own_order",
    "indicator",
    "dead_limit_volts",
    "dead_limit_dc_volts",
    "stored_energy",
    "equipment",
    "readings",
    "proved_before",
    "proved_after",
    "reference_proved",
    "note",
];

/// The longest free text, such as what holds a charge, in characters.
const TEXT: usize = 80;
/// The longest time on a label, in seconds: a week, as on the screens.
const LONGEST_S: u32 = 7 * 24 * 3600;
/// Where low voltage ends: 1000 V AC and 1500 V DC (IEC 61243-3).
const LOW_VOLTAGE_AC_MV: u32 = 1_000_000;
const LOW_VOLTAGE_DC_MV: u32 = 1_500_000;

pub(super) fn case(text: &str) -> Result<Case, CaseError> {
    let node = Node::parse(text)?;
    let fields = At::root(&node).fields(&FIELDS)?;
    if let Some(note) = fields.get("note") {
        note.text(1000)?;
    }
    let mut case = Case::of(conductors(&fields.need(Needed::Conductors)?)?);
    if let Some(at) = fields.get("earthing") {
        let choices: Vec<_> = Earthing::ALL.map(|e| (e.name(), e)).to_vec();
        case.earthing = at.choice(&choices)?;
        earthing_fits(&case, &at)?;
    }
    case.nominal = nominal(&fields)?;
    if let Some(at) = fields.get("poles_opened") {
        case.poles_opened = Some(poles(&case, &at)?);
    }
    if let Some(at) = fields.get("own_order") {
        if let Some(order) = fields.get("order") {
            return Err(order.error(CaseFault::TwoOrders));
        }
        case.own_order = Some(own_order(&case, &at)?);
    } else if let Some(at) = fields.get("order") {
        case.order = at.choice(&Order::ALL.map(|o| (o.name(), o)))?;
    }
    if let Some(at) = fields.get("indicator") {
        case.indicator = indicator(&at)?;
    }
    if let Some(at) = fields.get("dead_limit_volts") {
        case.dead_limit_mv = dead_limit(&case, &at, false)?;
    }
    if let Some(at) = fields.get("dead_limit_dc_volts") {
        case.dead_limit_dc_mv = dead_limit(&case, &at, true)?;
    }
    if let Some(at) = fields.get("stored_energy") {
        case.stored_energy = at.items(MAX)?.iter().map(|item| stored(&case, item)).collect::<Result<_, _>>()?;
    }
    if let Some(at) = fields.get("equipment") {
        case.equipment = equipment(&at)?;
    }
    if let Some(at) = fields.get("readings") {
        case.readings = at.items(MAX_READINGS)?.iter().map(|item| given(&case, item)).collect::<Result<_, _>>()?;
    }
    case.proved_before = fields.get("proved_before").map(|at| at.flag()).transpose()?;
    case.proved_after = fields.get("proved_after").map(|at| at.flag()).transpose()?;
    if let Some(at) = fields.get("reference_proved") {
        case.reference_proved = at.choice(&[
            ("no", ReferenceProof::No),
            ("known-line", ReferenceProof::KnownLine),
            ("second-earth", ReferenceProof::SecondEarth),
            ("continuity", ReferenceProof::Continuity),
            ("failed", ReferenceProof::Failed),
        ])?;
    }
    Ok(case)
}

fn conductors(list: &At) -> Result<Vec<Conductor>, CaseError> {
    let items = list.items(MAX)?;
    if items.len() < 2 {
        return Err(list.error(CaseFault::FewConductors));
    }
    let mut found: Vec<Conductor> = Vec::with_capacity(items.len());
    for item in items {
        let fields = item.fields(&["name", "role", "supply"])?;
        let at = fields.need(Needed::Name)?;
        let name = at.text(NAME)?;
        if let Some(i) = found.iter().position(|c| c.name == name) {
            return Err(at.error(CaseFault::NameTwice { name: quoted(name), at: i }));
        }
        let usual = Conductor::named(name).map(|c| c.role);
        let role = match fields.get("role") {
            Some(at) => {
                let role = at.choice(&Role::ALL.map(|r| (r.name(), r)))?;
                if let Some(usual) = usual.filter(|usual| !agree(*usual, role)) {
                    return Err(at.error(CaseFault::RoleOfName { name: name.into(), usual, role }));
                }
                role
            }
            None => usual.ok_or_else(|| item.error(CaseFault::RoleUnsaid(quoted(name))))?,
        };
        let supply = fields.get("supply").map(|at| at.text(TEXT).map(str::to_owned)).transpose()?;
        found.push(Conductor { name: name.into(), role, supply, colour: None });
    }
    Ok(found)
}

/// Whether a conductor with a name for `usual` may have `role`: N and M both name what is in the middle.
fn agree(usual: Role, role: Role) -> bool {
    let middle = |r| matches!(r, Role::Neutral | Role::MidPoint);
    usual == role || (middle(usual) && middle(role))
}

fn earthing_fits(case: &Case, at: &At) -> Result<(), CaseError> {
    let of = |role| case.conductors.iter().find(|c| c.role == role);
    // Where several supplies meet, the arrangement is that of the one that feeds the point of work; the others may differ.
    if supplies(&case.conductors) > 1 {
        return Ok(());
    }
    match (case.earthing, of(Role::Neutral), of(Role::Pen)) {
        (Earthing::TnC, Some(n), _) => Err(at.error(CaseFault::NeutralInTnC(n.name.clone()))),
        (Earthing::TnS | Earthing::Tt | Earthing::It, _, Some(pen)) => {
            Err(at.error(CaseFault::PenElsewhere(case.earthing, pen.name.clone())))
        }
        _ => Ok(()),
    }
}

/// How many supplies the conductors name.
pub(super) fn supplies(conductors: &[Conductor]) -> usize {
    let mut named: Vec<&str> = conductors.iter().filter_map(|c| c.supply.as_deref()).collect();
    named.sort_unstable();
    named.dedup();
    named.len()
}

fn nominal(fields: &Fields) -> Result<Nominal, CaseError> {
    let mut nominal = Nominal::default();
    if let Some(at) = fields.get("hertz") {
        nominal.hertz = Some(at.whole(0, 1000, Unit::Hertz)? as u16);
    }
    let Some(at) = fields.get("nominal_volts") else { return Ok(nominal) };
    let given = at.fields(&["line_neutral", "line_line", "dc", "control"])?;
    let read = |name: &str| -> Result<Option<u32>, CaseError> {
        let Some(at) = given.get(name) else { return Ok(None) };
        let mv = at.volts_set()?;
        if mv < 1000 {
            return Err(at.error(CaseFault::NominalTooLow));
        }
        Ok(Some(mv))
    };
    nominal.line_neutral_mv = read("line_neutral")?;
    nominal.line_line_mv = read("line_line")?;
    nominal.dc_mv = read("dc")?;
    nominal.control_mv = read("control")?;
    let above = |mv: Option<u32>, most| mv.is_some_and(|mv| mv > most);
    if above(nominal.line_line(), LOW_VOLTAGE_AC_MV)
        || above(nominal.line_neutral_mv.max(nominal.control_mv), LOW_VOLTAGE_AC_MV)
        || above(nominal.dc_mv, LOW_VOLTAGE_DC_MV)
    {
        return Err(at.error(CaseFault::NotLowVoltage));
    }
    if let (Some(ln), Some(ll)) = (nominal.line_neutral_mv, nominal.line_line_mv) {
        // The square root of three for three phases, two for a mid-point; 2 % for the rounding of nominal values.
        let ratio = f64::from(ll) / f64::from(ln);
        if [3f64.sqrt(), 2.0].iter().all(|known| (ratio / known - 1.0).abs() > 0.02) {
            return Err(at.error(CaseFault::NominalsApart { line_line_mv: ll, line_neutral_mv: ln }));
        }
    }
    Ok(nominal)
}

/// A name that has to be in the list of conductors.
fn known<'a>(case: &Case, at: &At<'a>) -> Result<&'a str, CaseError> {
    let name = at.text(NAME)?;
    match case.conductor(name) {
        Some(_) => Ok(name),
        None => Err(at.error(CaseFault::NotListed(quoted(name)))),
    }
}

fn pair(case: &Case, at: &At) -> Result<[String; 2], CaseError> {
    let items = at.items(2)?;
    let [a, b] = items.as_slice() else { return Err(at.error(CaseFault::NotAPair)) };
    let (first, second) = (known(case, a)?, known(case, b)?);
    if first == second {
        return Err(at.error(CaseFault::PairOfOne(quoted(first))));
    }
    Ok([first.into(), second.into()])
}

fn poles(case: &Case, at: &At) -> Result<Vec<String>, CaseError> {
    let mut found: Vec<String> = Vec::new();
    for item in at.items(MAX)? {
        let name = known(case, &item)?;
        if found.iter().any(|f| f == name) {
            return Err(item.error(CaseFault::PoleTwice(quoted(name))));
        }
        if case.conductor(name).is_some_and(|c| c.role.is_reference()) {
            return Err(item.error(CaseFault::PoleProtective(name.into())));
        }
        found.push(name.into());
    }
    Ok(found)
}

fn own_order(case: &Case, at: &At) -> Result<Vec<[String; 2]>, CaseError> {
    let names = &case.conductors;
    let place = |name: &str| names.iter().position(|c| c.name == name).unwrap_or(0);
    let mut seen = vec![false; names.len() * names.len()];
    let mut order = Vec::new();
    for item in at.items(names.len() * (names.len() - 1) / 2 + 1)? {
        let pair = pair(case, &item)?;
        let (a, b) = (place(&pair[0]), place(&pair[1]));
        let slot = &mut seen[a.min(b) * names.len() + a.max(b)];
        if std::mem::replace(slot, true) {
            return Err(item.error(CaseFault::PairTwice(pair)));
        }
        order.push(pair);
    }
    for a in 0..names.len() {
        for b in a + 1..names.len() {
            if !seen[a * names.len() + b] {
                return Err(at.error(CaseFault::PairMissing([names[a].name.clone(), names[b].name.clone()])));
            }
        }
    }
    Ok(order)
}

fn impedance(fields: &Fields) -> Result<Option<Impedance>, CaseError> {
    let choices = [("low", Impedance::Low), ("high", Impedance::High), ("unknown", Impedance::Unknown)];
    fields.get("impedance").map(|at| at.choice(&choices)).transpose()
}

fn indicator(at: &At) -> Result<Indicator, CaseError> {
    let fields = at.fields(&["levels_volts", "dc_levels_volts", "impedance"])?;
    let mut indicator = Indicator { impedance: impedance(&fields)?.unwrap_or_default(), ..Indicator::default() };
    if let Some(at) = fields.get("levels_volts") {
        indicator.levels_mv = levels(&at)?;
    }
    indicator.dc_levels_mv = fields.get("dc_levels_volts").map(|at| levels(&at)).transpose()?;
    Ok(indicator)
}

fn levels(at: &At) -> Result<Vec<u32>, CaseError> {
    let mut levels: Vec<u32> = Vec::new();
    for item in at.items(32)? {
        let mv = item.volts()?;
        if mv == 0 || levels.last().is_some_and(|last| *last >= mv) {
            return Err(item.error(CaseFault::LevelsUnordered));
        }
        levels.push(mv);
    }
    if levels.is_empty() {
        return Err(at.error(CaseFault::NoLevels));
    }
    Ok(levels)
}

fn dead_limit(case: &Case, at: &At, dc: bool) -> Result<u32, CaseError> {
    let mv = at.volts_set()?;
    let limits = if dc { Limits { ac_mv: 0, dc_mv: mv } } else { Limits { ac_mv: mv, dc_mv: 0 } };
    match Bound::of(case).refuses(limits) {
        Some(error) => Err(at.error(CaseFault::Limit(error))),
        None => Ok(mv),
    }
}

fn stored(case: &Case, at: &At) -> Result<Stored, CaseError> {
    let fields = at.fields(&["what", "label_seconds", "waited_seconds", "read_at", "volts", "level"])?;
    let what = Holder::Named(fields.need(Needed::What)?.text(TEXT)?.to_owned());
    let seconds = |name| fields.get(name).map(|at| at.whole(0, LONGEST_S, Unit::Seconds)).transpose();
    let (label_seconds, waited_seconds) = (seconds("label_seconds")?, seconds("waited_seconds")?);
    let read_at = fields.get("read_at").map(|at| pair(case, &at)).transpose()?;
    let read = value(case, &fields, true)?;
    if read_at.is_some() && read.is_some() {
        return Err(at.error(CaseFault::ReadElsewhere));
    }
    Ok(Stored { what, label_seconds, waited_seconds, read_at, read })
}

fn equipment(at: &At) -> Result<Equipment, CaseError> {
    let mut found = Equipment::default();
    for item in at.items(4)? {
        let kinds = ["drive", "ups", "pv", "generator"].map(|name| (name, name));
        let flag = match item.choice(&kinds)? {
            "drive" => &mut found.drive,
            "ups" => &mut found.ups,
            "pv" => &mut found.pv,
            _ => &mut found.generator,
        };
        if std::mem::replace(flag, true) {
            return Err(item.error(CaseFault::EquipmentTwice));
        }
    }
    Ok(found)
}

fn given(case: &Case, at: &At) -> Result<Given, CaseError> {
    let fields = at.fields(&["pair", "volts", "level", "impedance", "dc"])?;
    let pair = pair(case, &fields.need(Needed::Pair)?)?;
    let dc = fields.get("dc").map(|at| at.flag()).transpose()?.unwrap_or(false);
    let value = value(case, &fields, dc)?.ok_or_else(|| at.error(CaseFault::NothingRead))?;
    let impedance = impedance(&fields)?.unwrap_or(case.indicator.impedance);
    Ok(Given { pair, value, impedance, dc })
}

/// What was read, if it is there.
fn value(case: &Case, fields: &Fields, dc: bool) -> Result<Option<GivenValue>, CaseError> {
    match (fields.get("volts"), fields.get("level")) {
        (Some(volts), None) => volts.volts().map(GivenValue::Volts).map(Some),
        (None, Some(at)) => level(case, &at, dc).map(Some),
        (Some(_), Some(at)) => Err(at.error(CaseFault::ReadTwice)),
        (None, None) => Ok(None),
    }
}

fn level(case: &Case, at: &At, dc: bool) -> Result<GivenValue, CaseError> {
    if let Node::Number(_) = at.node {
        let mv = at.volts()?;
        let levels = case.indicator.steps(dc);
        if !levels.contains(&mv) {
            return Err(at.error(CaseFault::NoSuchStep(levels.to_vec())));
        }
        return Ok(GivenValue::Level(mv));
    }
    at.choice(&[("none", GivenValue::None), ("continuity", GivenValue::Continuity), ("lit", GivenValue::Lit)])
}
