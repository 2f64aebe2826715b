//! What is wrong with a case in a file, and where.

use super::catalogue::say;
use super::lists::commas;
use super::words::{figure, limit, volts};
use stillbar_rules::json::{self, Broken, JsonKind};
use stillbar_rules::prove::Role;
use stillbar_rules::prove::fault::{CaseError, CaseFault, Needed, Place, Unit, Wanted};
use stillbar_values::figures;

/// Why a case cannot be used, in a sentence; with the place before it, unless it is about the file as a whole.
pub fn case(error: &CaseError) -> String {
    let says = fault(&error.what);
    match &error.place {
        Place::Whole => says,
        Place::Path(path) => say!("case-placed", place = path, says = says),
        Place::At { line, column } => {
            let place = say!("case-at", line = *line, column = *column);
            say!("case-placed", place = place, says = says)
        }
    }
}

fn fault(what: &CaseFault) -> String {
    match what {
        CaseFault::TooLarge(most) => say!("case-too-large", most = *most),
        CaseFault::Empty => say!("case-empty"),
        CaseFault::Broken(why) => broken(why),
        CaseFault::Wants(wanted, is) => wants(wanted, kind(*is)),
        CaseFault::UnknownField { field, known } => say!("case-unknown-field", field = field, known = words(known)),
        CaseFault::Missing(Needed::Conductors) => say!("case-needs-conductors"),
        CaseFault::Missing(Needed::Name) => say!("case-needs-name"),
        CaseFault::Missing(Needed::What) => say!("case-needs-what"),
        CaseFault::Missing(Needed::Pair) => say!("case-needs-pair"),
        CaseFault::TooMany { count, most } => say!("case-too-many", count = *count, most = *most),
        CaseFault::NotSeen => say!("case-not-seen"),
        CaseFault::TooLong { count, most } => say!("case-too-long", count = *count, most = *most),
        CaseFault::NotOneOf { text, choices } => say!("case-not-one-of", word = text, choices = words(choices)),
        CaseFault::Negative(volts) => say!("case-negative", volts = figure(volts.to_string())),
        CaseFault::TooHigh => say!("case-too-high", most = figures::MAX),
        CaseFault::NotWhole(Unit::Seconds, least, most) => say!("case-not-seconds", least = *least, most = *most),
        CaseFault::NotWhole(Unit::Minutes, least, most) => say!("case-not-minutes", least = *least, most = *most),
        CaseFault::NotWhole(Unit::Hertz, least, most) => say!("case-not-hertz", least = *least, most = *most),
        CaseFault::ReadElsewhere => say!("case-read-elsewhere"),
        CaseFault::EquipmentTwice => say!("case-equipment-twice"),
        CaseFault::NothingRead => say!("case-nothing-read"),
        CaseFault::ReadTwice => say!("case-read-twice"),
        CaseFault::TwoOrders => say!("case-two-orders"),
        CaseFault::FewConductors => say!("case-few-conductors"),
        CaseFault::NameTwice { name, at } => say!("case-name-twice", name = name, at = *at),
        CaseFault::RoleOfName { name, usual, role } => {
            say!("case-role-of-name", name = name, usual = usual.name(), role = role.name())
        }
        CaseFault::RoleUnsaid(name) => say!("case-role-unsaid", name = name, roles = words(&Role::ALL.map(Role::name))),
        CaseFault::NeutralInTnC(neutral) => say!("case-neutral-in-tn-c", neutral = neutral),
        CaseFault::PenElsewhere(earthing, pen) => say!("case-pen-elsewhere", earthing = earthing.name(), pen = pen),
        CaseFault::NominalTooLow => say!("case-nominal-too-low"),
        CaseFault::NotLowVoltage => say!("case-not-low-voltage"),
        CaseFault::NominalsApart { line_line_mv, line_neutral_mv } => {
            say!("case-nominals-apart", line_line = volts(*line_line_mv), line_neutral = volts(*line_neutral_mv))
        }
        CaseFault::NotListed(name) => say!("case-not-listed", name = name),
        CaseFault::NotAPair => say!("case-not-a-pair"),
        CaseFault::PairOfOne(name) => say!("case-pair-of-one", name = name),
        CaseFault::PoleTwice(name) => say!("case-pole-twice", name = name),
        CaseFault::PoleProtective(name) => say!("case-pole-protective", name = name),
        CaseFault::PairTwice([first, then]) => say!("case-pair-twice", first = first, then = then),
        CaseFault::PairMissing([first, then]) => say!("case-pair-missing", first = first, then = then),
        CaseFault::LevelsUnordered => say!("case-levels-unordered"),
        CaseFault::NoLevels => say!("case-no-levels"),
        CaseFault::Limit(error) => say!("case-limit", limit = limit(error)),
        CaseFault::NoSuchStep(steps) => say!("case-no-such-step", steps = commas(steps.iter().map(|mv| volts(*mv)))),
    }
}

/// What is wrong with a text that is no JSON, and where, in a sentence.
pub fn json(error: &serde_json::Error) -> String {
    let place = say!("case-at", line = error.line(), column = error.column());
    say!("case-placed", place = place, says = broken(&json::broken(error)))
}

pub(super) fn broken(why: &Broken) -> String {
    match why {
        Broken::Twice(field) => say!("case-twice", field = field),
        Broken::Crowded(most) => say!("case-crowded", most = *most),
        Broken::TooDeep => say!("case-too-deep"),
        Broken::NotJson(why) => say!("case-not-json", why = why),
    }
}

fn wants(wanted: &Wanted, is: String) -> String {
    match wanted {
        Wanted::Object => say!("case-wants-object", is = is),
        Wanted::List => say!("case-wants-list", is = is),
        Wanted::Text => say!("case-wants-text", is = is),
        Wanted::OneOf(choices) => say!("case-wants-one-of", choices = words(choices), is = is),
        Wanted::Volts => say!("case-wants-volts", is = is),
        Wanted::Flag => say!("case-wants-flag", is = is),
    }
}

/// What a value in JSON is, inside a sentence.
pub(super) fn kind(kind: JsonKind) -> String {
    match kind {
        JsonKind::Null => say!("kind-null"),
        JsonKind::Flag => say!("kind-flag"),
        JsonKind::Number => say!("kind-number"),
        JsonKind::Text => say!("kind-text"),
        JsonKind::List => say!("kind-list"),
        JsonKind::Object => say!("kind-object"),
    }
}

/// Words of the format, one after the other.
fn words(list: &[&str]) -> String {
    commas(list.iter().map(|word| (*word).to_owned()))
}
