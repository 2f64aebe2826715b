//! Neutral to earth: what the earthing arrangement and the poles that open predict, and what was read.
//!
//! Engineering inference, no source: where the neutral stays connected it is bonded to earth at the source (TN-S) or at the origin
//! (TN-C-S) and reads as continuity; where it is opened it must not.

use super::super::{Case, Earthing, GivenValue, Role};

/// Each neutral that does not read as predicted, as a sentence.
pub(super) fn unexpected(case: &Case) -> Vec<String> {
    // Whether this instrument shows continuity at all is known only if it once did.
    let shows = case.readings.iter().any(|g| g.value == GivenValue::Continuity);
    let mut said = Vec::new();
    if case.poles_opened.is_empty() || !shows {
        return said;
    }
    let role = |name: &String| case.conductor(name).map(|c| c.role);
    for given in case.readings.iter().filter(|g| !g.dc) {
        let [a, b] = &given.pair;
        let (neutral, earth) = match (role(a), role(b)) {
            (Some(Role::Neutral), Some(Role::Protective)) => (a, b),
            (Some(Role::Protective), Some(Role::Neutral)) => (b, a),
            _ => continue,
        };
        let opened = case.poles_opened.contains(neutral);
        match (case.earthing, opened, given.value) {
            (Earthing::TnS | Earthing::TnCS | Earthing::TnC, true, GivenValue::Continuity) => said.push(format!(
                "{neutral} is opened, and still joined to {earth}: a second bond, or a neutral borrowed from another circuit."
            )),
            (Earthing::TnS | Earthing::TnCS, false, GivenValue::None) => said.push(format!(
                "{neutral} is not opened, and not joined to {earth}: one of the two is broken between here and their bond."
            )),
            (Earthing::It, _, GivenValue::Continuity) => said.push(format!(
                "{neutral} is joined to {earth} on a supply that is not earthed: a first fault, or not an IT supply."
            )),
            (Earthing::Tt, true, GivenValue::Continuity) => said.push(format!(
                "{neutral} is opened, and still joined to {earth}: a fault between them behind the isolator."
            )),
            _ => {}
        }
    }
    said.dedup();
    said
}
