//! The verdict, from the readings alone. Order of the cases: void, indication, missing, proved.

use super::super::{Case, GivenValue, Impedance, ReferenceProof, Role, volts};
use super::Verdict;

/// Sentences about the same thing are not repeated for each pair beyond this many.
const NAMED: usize = 12;

/// A file may say nothing of the reference; then the verdict holds on a condition, which is said first. In the app the proof of the
/// reference is a step of its own, and the condition cannot arise.
const UNSAID: &str = "Only if the reference was shown to be earth, which is not said here: if it is broken, live conductors can read zero on every pair. \
                      Do the reference test of the plan and say how (reference_proved).";

/// Whether this counts as an indication of voltage.
pub(super) fn indicates(case: &Case, value: GivenValue) -> bool {
    match value {
        GivenValue::Volts(mv) => mv > case.dead_limit_mv,
        GivenValue::Level(_) | GivenValue::Lit => true,
        GivenValue::None | GivenValue::Continuity => false,
    }
}

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
    let missing = missing(case);
    if !missing.is_empty() {
        return (Verdict::Incomplete, missing);
    }
    let count = case.conductors.len() * (case.conductors.len() - 1) / 2;
    let limit = match case.dead_limit_mv {
        0 => "without any indication".to_owned(),
        mv => format!("with no indicator lit and no number above {} V", volts(mv)),
    };
    let mut why = vec![format!("All {count} pairs were read {limit}, and the indicator worked before and after.")];
    if case.reference_proved == ReferenceProof::Unsaid {
        why.insert(0, UNSAID.to_owned());
    } else {
        why.push(format!("The reference was shown to be earth: {}.", reference(case.reference_proved)));
    }
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
    let lit: Vec<_> = case.readings.iter().filter(|g| indicates(case, g.value)).collect();
    for given in lit.iter().take(NAMED) {
        let [a, b] = &given.pair;
        let dc = if given.dc { " DC" } else { "" };
        why.push(match given.value {
            GivenValue::Volts(mv) if case.dead_limit_mv == 0 => format!("{a} – {b} read {} V{dc}.", volts(mv)),
            GivenValue::Volts(mv) => {
                format!("{a} – {b} read {} V{dc}; the limit is {} V.", volts(mv), volts(case.dead_limit_mv))
            }
            GivenValue::Level(mv) => format!("{a} – {b} lit to {} V{dc}.", volts(mv)),
            _ => format!("{a} – {b} lit the indicator{dc}."),
        });
    }
    if lit.len() > NAMED {
        why.push(format!("So did {} more readings.", lit.len() - NAMED));
    }
    why
}

/// What a proof lacks.
fn missing(case: &Case) -> Vec<String> {
    let mut why = Vec::new();
    if case.proved_before.is_none() {
        why.push("It is not said that the indicator was proved before the tests.".to_owned());
    }
    if case.proved_after.is_none() {
        why.push("It is not said that the indicator was proved after the tests.".into());
    }
    let is = |k: usize, role: Role| case.conductors[k].role == role;
    let index = |name: &str| case.conductors.iter().position(|c| c.name == name);
    let n = case.conductors.len();
    // One pass over the readings, so that 20,000 of them and 2,016 pairs stay cheap.
    let mut read = vec![[false; 2]; n * n];
    for given in &case.readings {
        if let (Some(i), Some(j)) = (index(&given.pair[0]), index(&given.pair[1])) {
            read[i.min(j) * n + i.max(j)][usize::from(given.dc)] = true;
        }
    }
    let mut pairs: Vec<String> = Vec::new();
    for i in 0..n {
        for j in i + 1..n {
            let [ac, dc] = read[i * n + j];
            let (a, b) = (&case.conductors[i].name, &case.conductors[j].name);
            let poles = [i, j].iter().all(|k| is(*k, Role::DcPlus) || is(*k, Role::DcMinus) || is(*k, Role::MidPoint))
                && [i, j].iter().any(|k| !is(*k, Role::MidPoint));
            if poles && !dc {
                pairs.push(format!("{a} – {b} (DC)"));
            } else if !poles && !ac {
                pairs.push(format!("{a} – {b}"));
            }
        }
    }
    if !pairs.is_empty() {
        let more = if pairs.len() > NAMED { format!(" and {} more", pairs.len() - NAMED) } else { String::new() };
        pairs.truncate(NAMED);
        why.push(format!("Not read yet: {}{more}.", pairs.join(", ")));
    }
    for stored in &case.stored_energy {
        let Some([a, b]) = &stored.read_at else { continue };
        let taken = |(i, j): (usize, usize)| read[i.min(j) * n + i.max(j)][1];
        if !index(a).zip(index(b)).is_some_and(taken) {
            why.push(format!("No DC reading of {a} – {b} at {}: time alone proves nothing.", stored.what));
        }
    }
    if case.can_hold_dc() && !case.readings.iter().any(|g| g.dc) {
        why.push("There is equipment that can hold or make DC, and no DC reading was given.".into());
    }
    if !case.conductors.iter().any(|c| c.role.is_reference()) {
        why.push("There is no protective conductor among the conductors: nothing was read to earth.".into());
    }
    if case.reference_proved == ReferenceProof::No {
        why.push(
            "The reference was not shown to be earth: if it is broken, live conductors can read zero on every pair."
                .into(),
        );
    }
    why
}

/// Where DC was read, in words.
pub(super) fn direct(case: &Case) -> Option<String> {
    let pairs: Vec<String> = case
        .readings
        .iter()
        .filter(|g| g.dc && indicates(case, g.value))
        .map(|g| format!("{} – {}", g.pair[0], g.pair[1]))
        .take(NAMED)
        .collect();
    (!pairs.is_empty()).then(|| pairs.join(", "))
}

fn reference(proof: ReferenceProof) -> &'static str {
    match proof {
        ReferenceProof::KnownLine => "a known live line read its full voltage to it",
        ReferenceProof::SecondEarth => "it was read against a second, independent earth",
        ReferenceProof::Continuity => "its path to the main earthing terminal was measured",
        ReferenceProof::Unsaid | ReferenceProof::No | ReferenceProof::Failed => "not shown",
    }
}
