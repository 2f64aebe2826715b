//! The verdict. Order of the cases: void, indication, something missing ([`conditions`]), proved.

use super::super::limit::current;
use super::super::{Case, GivenValue, Impedance, ReferenceProof, conditions, volts};
use super::Verdict;

/// Sentences about the same thing are not repeated for each pair beyond this many.
const NAMED: usize = 12;

/// What is proved, and why.
pub(super) fn verdict(case: &Case) -> (Verdict, Vec<String>) {
    let mut void = Vec::new();
    if case.proved_before == Some(false) {
        void.push(
            "The indicator did not work on its proof before the tests: no reading counts. Treat as live.".to_owned(),
        );
    }
    if case.proved_after == Some(false) {
        void.push(
            "The indicator failed its proof after the tests: no reading since the first proof counts. Treat as live."
                .into(),
        );
    }
    if !void.is_empty() {
        return (Verdict::Void, void);
    }
    let live = live(case);
    if !live.is_empty() {
        return (Verdict::TreatAsLive, live);
    }
    let unmet = conditions::unmet(case);
    if !unmet.is_empty() {
        return (Verdict::Incomplete, conditions::sentences(&unmet));
    }
    let count = case.conductors.len() * (case.conductors.len() - 1) / 2;
    let limits = [false, true].map(|dc| (case.limits().of(dc), current(dc)));
    let limits: Vec<String> =
        limits.iter().filter(|(mv, _)| *mv > 0).map(|(mv, kind)| format!("{} V {kind}", volts(*mv))).collect();
    let limit = match limits.is_empty() {
        true => "without any indication".to_owned(),
        false => format!("with no indicator lit and no number above {}", limits.join(" or ")),
    };
    let mut why = vec![format!("All {count} pairs were read {limit}, and the indicator worked before and after.")];
    why.push(format!("The reference was shown to be earth: {}.", reference(case.reference_proved)));
    if case.readings.iter().all(|g| g.impedance == Impedance::Low) {
        why.push("A low impedance pulls an interference voltage down only while it touches.".into());
    }
    (Verdict::ProvedDead, why)
}

/// Every indication, and a reference that failed.
fn live(case: &Case) -> Vec<String> {
    let mut why = Vec::new();
    if case.reference_proved == ReferenceProof::Failed {
        why.push("The proof of the reference failed: what rests on it is worth nothing.".to_owned());
    }
    let pairs = case.readings.iter().filter(|g| case.indicates(g)).map(|g| (between(&g.pair), g.value, g.dc));
    let charges = charges(case).map(|(what, value)| (what.to_owned(), value, true));
    let lit: Vec<_> = pairs.chain(charges).collect();
    for (place, value, is_dc) in lit.iter().take(NAMED) {
        let dc = if *is_dc { " DC" } else { "" };
        let limit = case.limits().of(*is_dc);
        why.push(match value {
            GivenValue::Volts(mv) if limit == 0 => format!("{place} read {} V{dc}.", volts(*mv)),
            GivenValue::Volts(mv) => format!("{place} read {} V{dc}; the limit is {} V.", volts(*mv), volts(limit)),
            GivenValue::Level(mv) => format!("{place} lit to {} V{dc}.", volts(*mv)),
            _ => format!("{place} lit the indicator{dc}."),
        });
    }
    if lit.len() > NAMED {
        why.push(format!("So did {} more readings.", lit.len() - NAMED));
    }
    why
}

/// Where DC was read, in words.
pub(super) fn direct(case: &Case) -> Option<String> {
    let pairs = case.readings.iter().filter(|g| g.dc && case.indicates(g)).map(|g| between(&g.pair));
    let places: Vec<String> = pairs.chain(charges(case).map(|(what, _)| what.to_owned())).take(NAMED).collect();
    (!places.is_empty()).then(|| places.join(", "))
}

/// What still holds a charge, as read at its own terminals.
fn charges(case: &Case) -> impl Iterator<Item = (&str, GivenValue)> {
    let limit = case.limits().dc_mv;
    let read = case.stored_energy.iter().filter_map(|s| Some((s.what.as_str(), s.read?)));
    read.filter(move |(_, value)| value.indicates(limit))
}

fn between([a, b]: &[String; 2]) -> String {
    format!("{a} – {b}")
}

fn reference(proof: ReferenceProof) -> &'static str {
    match proof {
        ReferenceProof::KnownLine => "a known live line read its full voltage to it",
        ReferenceProof::SecondEarth => "it was read against a second, independent earth",
        ReferenceProof::Continuity => "its path to the main earthing terminal was measured",
        ReferenceProof::Unsaid | ReferenceProof::No | ReferenceProof::Failed => "not shown",
    }
}
