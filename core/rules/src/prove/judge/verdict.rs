//! The verdict. Order of the cases: void, indication, something missing ([`conditions`]), proved.

use super::super::{Case, GivenValue, Holder, Impedance, ReferenceProof, conditions};
use super::{ReadAt, Reason, Verdict};

/// What is proved, and why.
pub(super) fn verdict(case: &Case) -> (Verdict, Vec<Reason>) {
    let failed = [(case.proved_before, Reason::FailedBefore), (case.proved_after, Reason::FailedAfter)];
    let void: Vec<Reason> = failed.into_iter().filter(|(works, _)| *works == Some(false)).map(|(_, why)| why).collect();
    if !void.is_empty() {
        return (Verdict::Void, void);
    }
    let live = live(case);
    if !live.is_empty() {
        return (Verdict::TreatAsLive, live);
    }
    let unmet = conditions::unmet(case);
    if !unmet.is_empty() {
        return (Verdict::Incomplete, unmet.into_iter().map(Reason::Unmet).collect());
    }
    let pairs = case.conductors.len() * (case.conductors.len() - 1) / 2;
    let mut why = vec![Reason::AllRead { pairs, limits: case.limits() }, Reason::Reference(case.reference_proved)];
    if case.readings.iter().all(|g| g.impedance == Impedance::Low) {
        why.push(Reason::LowImpedance);
    }
    (Verdict::ProvedDead, why)
}

/// Every indication, and a reference that failed.
fn live(case: &Case) -> Vec<Reason> {
    let failed = (case.reference_proved == ReferenceProof::Failed).then_some(Reason::ReferenceFailed);
    let pairs =
        case.readings.iter().filter(|g| case.indicates(g)).map(|g| (ReadAt::Pair(g.pair.clone()), g.value, g.dc));
    let charges = charges(case).map(|(what, value)| (ReadAt::Holder(what.clone()), value, true));
    let lit = pairs.chain(charges);
    let lit = lit.map(|(at, value, dc)| Reason::Lit { at, value, dc, limit_mv: case.limits().of(dc) });
    failed.into_iter().chain(lit).collect()
}

/// Where DC was read.
pub(super) fn direct(case: &Case) -> Vec<ReadAt> {
    let pairs = case.readings.iter().filter(|g| g.dc && case.indicates(g)).map(|g| ReadAt::Pair(g.pair.clone()));
    pairs.chain(charges(case).map(|(what, _)| ReadAt::Holder(what.clone()))).collect()
}

/// What still holds a charge, as read at its own terminals.
fn charges(case: &Case) -> impl Iterator<Item = (&Holder, GivenValue)> {
    let limit = case.limits().dc_mv;
    let read = case.stored_energy.iter().filter_map(|s| Some((&s.what, s.read?)));
    read.filter(move |(_, value)| value.indicates(limit))
}
