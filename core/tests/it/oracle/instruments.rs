//! Instruments: which can prove anything on a job, and which have failed since they last worked.

use stillbar_core::journal::fact::{InstrumentKind, LightsFrom, ProvedOn};
use stillbar_core::journal::{Entry, EntryId, Fact};

use super::known::tick;
use super::promise::Ask;
use super::runs::{Run, SHIFT, asks_for_dc, bound};

/// "No indication' on an instrument that lights at or before 50 V AC and 120 V DC"; "an instrument whose lowest indication comes later than
/// that same bound proves nothing on this job". Nobody said: it proves nothing.
pub fn can_prove(ask: &Ask, run: &Run) -> Result<(), String> {
    let lights = match ask.known.get(run.indicator).map(|e| &e.body.fact) {
        Some(Fact::InstrumentNoted { kind: InstrumentKind::Indicator, lights_from, .. }) => *lights_from,
        _ => return Err("this is no indicator".into()),
    };
    let Some(LightsFrom { ac, dc }) = lights else { return Err("nobody said where the indicator lights".into()) };
    let bound = bound(ask);
    if ac > bound.0 || dc.is_some_and(|dc| dc > bound.1) || (dc.is_none() && asks_for_dc(ask)) {
        return Err("the indicator lights too late for this job".into());
    }
    Ok(())
}

/// An indicator that lights at direct voltage as well, by itself (EN 61243-3).
pub fn lights_at_dc(ask: &Ask, run: &Run) -> bool {
    matches!(
        ask.known.get(run.indicator).map(|e| &e.body.fact),
        Some(Fact::InstrumentNoted { lights_from: Some(LightsFrom { dc: Some(_), .. }), .. })
    )
}

/// "One that failed cannot be used until it was checked again, and a failure found in any job ends every proof since it last worked."
/// "A check counts for one shift."
pub fn checked(ask: &Ask, run: &Run) -> Result<(), String> {
    let known = ask.known;
    let checks: Vec<&Entry> = good_checks(ask, run.indicator).into_iter().filter(|k| counts(ask, run, k)).collect();
    if checks.is_empty() && !ask.passed_over("instrument") {
        return Err("the indicator was not checked in this shift".into());
    }
    for failed in failures(ask, run.indicator) {
        let known_to = |check: &Entry| {
            let knowing = match &check.body.fact {
                Fact::InstrumentChecked { knowing, .. } => knowing.contains(&failed.id),
                _ => false,
            };
            knowing || known.knew(check, failed)
        };
        if !checks.iter().any(|k| known_to(k)) && !is_taken_back(ask, run, failed) {
            return Err(format!(
                "the indicator failed ({}), and was not checked by anybody who knew it",
                failed.id.short()
            ));
        }
    }
    for proof in &run.proofs {
        if let Fact::IndicatorProved { on: ProvedOn::ProvingUnit(unit), .. } = &proof.body.fact {
            let good = good_checks(ask, *unit);
            let failed = failures(ask, *unit)
                .into_iter()
                .find(|f| !good.iter().any(|k| k.order() > f.order()) && !is_taken_back(ask, run, f));
            if let Some(failed) = failed {
                return Err(format!("the proving unit failed ({})", failed.id.short()));
            }
        }
    }
    Ok(())
}

fn good_checks<'a>(ask: &Ask<'_, 'a>, of: EntryId) -> Vec<&'a Entry> {
    let all = ask.known.entries.iter().copied().filter(|e| match e.body.fact {
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, .. } => {
            ask.known.same_instrument(instrument, of) && leads_sound && tips_sound && body_sound
        }
        _ => false,
    });
    all.filter(|e| !ask.known.is_withdrawn(e.id)).collect()
}

/// In any job: parts that were not sound, or a proof at which it did not respond.
fn failures<'a>(ask: &Ask<'_, 'a>, of: EntryId) -> Vec<&'a Entry> {
    let all = ask.known.entries.iter().copied().filter(|e| match e.body.fact {
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, .. } => {
            ask.known.same_instrument(instrument, of) && !(leads_sound && tips_sound && body_sound)
        }
        Fact::IndicatorProved { indicator, works: false, .. } => ask.known.same_instrument(indicator, of),
        _ => false,
    });
    all.collect()
}

/// A check that whoever began the run had, of the same shift.
fn counts(ask: &Ask, run: &Run, check: &Entry) -> bool {
    let known = ask.known;
    let had = known.knew(run.begin, check) || (check.job() != Some(ask.job) && check.order() < run.begin.order());
    let of_this_shift = ask
        .entries()
        .all(|s| !matches!(s.body.fact, Fact::ShiftTaken { .. }) || !known.knew(s, check) || !known.knew(run.begin, s));
    had && of_this_shift && known.longest(check, tick(run.begin)).is_some_and(|ms| ms <= SHIFT)
}

/// "Withdrawing what is firm (a failed check)" is possible with a reason; what it ended stays ended.
fn is_taken_back(ask: &Ask, run: &Run, failed: &Entry) -> bool {
    matches!(failed.body.fact, Fact::InstrumentChecked { .. })
        && ask
            .known
            .withdrawal(failed.id)
            .is_some_and(|w| ask.known.knew(run.begin, w) || w.order() < run.begin.order())
}
