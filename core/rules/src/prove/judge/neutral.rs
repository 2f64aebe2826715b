//! Neutral to earth: what the earthing arrangement and the poles that open predict, and what was read.
//!
//! Engineering inference, no source: where the neutral stays connected it is bonded to earth at the source (TN-S) or at the origin
//! (TN-C-S) and reads as continuity; where it is opened it must not. A finding is a remark. It makes nothing dead and nothing live.

use super::super::{Case, Earthing, GivenValue, Role};

/// A neutral that does not read to earth as predicted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unexpected {
    /// The neutral.
    pub neutral: String,
    /// The protective conductor.
    pub earth: String,
    /// What is odd.
    pub what: Oddity,
}

/// What is odd about a neutral and earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Oddity {
    /// TN: opened, and still joined to earth.
    Joined,
    /// TT: opened, and still joined to earth.
    JoinedInTt,
    /// IT: joined to earth.
    JoinedInIt,
    /// TN: not opened, and no continuity to earth, by an indicator that showed continuity elsewhere.
    NotJoined,
    /// The same by an indicator of which nobody knows whether it shows continuity.
    NoContinuity,
}

/// Each neutral that does not read as predicted. Says nothing where it is not said what the points open.
pub fn unexpected(case: &Case) -> Vec<Unexpected> {
    // Whether this instrument shows continuity at all is known only if it once did.
    let shows = case.readings.iter().any(|g| g.value == GivenValue::Continuity);
    let role = |name: &String| case.conductor(name).map(|c| c.role);
    let mut found: Vec<Unexpected> = Vec::new();
    for given in case.readings.iter().filter(|g| !g.dc) {
        let [a, b] = &given.pair;
        let (neutral, earth) = match (role(a), role(b)) {
            (Some(Role::Neutral), Some(Role::Protective)) => (a, b),
            (Some(Role::Protective), Some(Role::Neutral)) => (b, a),
            _ => continue,
        };
        let Some(opened) = case.opens(neutral) else { continue };
        let what = match (case.earthing, opened, given.value) {
            (Earthing::TnS | Earthing::TnCS | Earthing::TnC, true, GivenValue::Continuity) => Oddity::Joined,
            (Earthing::TnS | Earthing::TnCS, false, GivenValue::None) if shows => Oddity::NotJoined,
            (Earthing::TnS | Earthing::TnCS, false, GivenValue::None) => Oddity::NoContinuity,
            (Earthing::It, _, GivenValue::Continuity) => Oddity::JoinedInIt,
            (Earthing::Tt, true, GivenValue::Continuity) => Oddity::JoinedInTt,
            _ => continue,
        };
        let odd = Unexpected { neutral: neutral.clone(), earth: earth.clone(), what };
        if !found.contains(&odd) {
            found.push(odd);
        }
    }
    found
}
