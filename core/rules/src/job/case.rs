//! The job's dead tests as the judge and the conditions take them: one set of conditions for the app and for `stillbar judge`.

use super::Job;
use super::age::{Moment, shortest};
use crate::journal::fact::{EarthProof, SourceKind};
use crate::prove::judge::neutral::{Unexpected, unexpected};
use crate::prove::{
    Case, Equipment, Given, GivenValue, Holder, Impedance, Indicator, Nominal, Reading, ReferenceProof, Run, Stored,
    Taken,
};

impl Job {
    /// The latest run's readings with all that the job says of conductors, earthing and poles: for finding out what is behind them.
    pub fn case(&self) -> Case {
        self.run().map_or_else(|| self.case_without(), |run| self.case_with(run, &|_| true))
    }

    /// What the latest run's readings of neutral to earth show that nobody would expect. Remarks: they make nothing
    /// dead and nothing live.
    pub fn remarks(&self) -> Vec<Unexpected> {
        unexpected(&self.case())
    }

    /// A run with those of its readings that count: between good proofs of the indicator that are near enough. `pending`: what waits for
    /// the next proof counts too, if that would still be in time now.
    pub(super) fn case_of(&self, run: &Run, pending: Option<&Moment>) -> Case {
        self.case_with(run, &|taken| self.counts(run, taken, pending))
    }

    fn case_with(&self, run: &Run, counts: &dyn Fn(&Taken) -> bool) -> Case {
        let mut case = self.case_without();
        let lights = self.known.as_ref().and_then(|known| known.lights_from.get(&run.indicator));
        if let Some(from) = lights {
            let dc_levels_mv = Some(from.dc.into_iter().collect());
            case.indicator = Indicator { levels_mv: vec![from.ac], dc_levels_mv, impedance: Impedance::Unknown };
        }
        for taken in run.readings.iter().filter(|t| counts(t)) {
            case.readings.push(given(taken));
            // An instrument that shows both says nothing of either when it stays dark.
            let dark = matches!(taken.reading, Reading::None | Reading::Continuity);
            if dark && !taken.dc && lights.is_some_and(|from| from.dc.is_some()) {
                case.readings.push(Given { dc: true, ..given(taken) });
            }
        }
        case.proved_before = run.proofs.first().map(|proof| proof.works);
        case.proved_after = run.after().map(|proof| proof.works);
        case.reference_proved = match run.reference() {
            None => ReferenceProof::No,
            Some(earth) if !earth.holds => ReferenceProof::Failed,
            Some(_) if !run.reference_holds() => ReferenceProof::No,
            Some(earth) => match earth.way {
                EarthProof::LiveLine => ReferenceProof::KnownLine,
                EarthProof::Bonded => ReferenceProof::SecondEarth,
                EarthProof::MainTerminal | EarthProof::Other => ReferenceProof::Continuity,
            },
        };
        let opened = self.points.iter().filter_map(|p| p.opened.as_ref()).max_by_key(|stamp| stamp.clock);
        case.stored_energy = self
            .direct()
            .into_iter()
            .map(|(id, what, seconds)| {
                let read = run.discharge.iter().rev().find(|(_, of, _)| *of == id);
                let waited = opened.zip(read).map(|(opened, (stamp, ..))| shortest(opened, &Moment::of(stamp)) / 1000);
                Stored {
                    what: Holder::Named(what),
                    label_seconds: (seconds > 0).then_some(seconds),
                    waited_seconds: waited.map(|s| u32::try_from(s).unwrap_or(u32::MAX)),
                    read_at: None,
                    read: read.map(|(_, _, reading)| value(*reading)),
                }
            })
            .collect();
        case
    }

    fn case_without(&self) -> Case {
        let mut case = Case::of(self.conductors());
        let limits = self.limits();
        (case.earthing, case.order) = (self.earthing, self.order);
        (case.dead_limit_mv, case.dead_limit_dc_mv) = (limits.ac_mv, limits.dc_mv);
        case.nominal = Nominal::of(&self.supply());
        case.supply = Some(self.supply());
        case.nominal.control_mv = self.found().filter(|s| !s.terminals.is_empty()).filter_map(|s| s.millivolts).min();
        let opened = self.conductors().into_iter().filter(|c| self.opens_it(c));
        case.poles_opened = Some(opened.map(|c| c.name).collect());
        let has = |kinds: &[SourceKind]| self.found().any(|s| kinds.contains(&s.kind));
        case.equipment = Equipment {
            drive: self.stored.iter().any(|s| s.found.is_some()),
            ups: has(&[SourceKind::Ups, SourceKind::Battery]),
            pv: has(&[SourceKind::Pv]),
            generator: has(&[SourceKind::Generator]),
        };
        case
    }
}

fn given(taken: &Taken) -> Given {
    let pair = [taken.first.clone(), taken.then.clone()];
    Given { pair, value: value(taken.reading), impedance: Impedance::Unknown, dc: taken.dc }
}

fn value(reading: Reading) -> GivenValue {
    match reading {
        Reading::None => GivenValue::None,
        Reading::Continuity => GivenValue::Continuity,
        Reading::Lit(None) => GivenValue::Lit,
        Reading::Lit(Some(volts)) => GivenValue::Level(u32::from(volts) * 1000),
        Reading::Millivolts(mv) => GivenValue::Volts(mv),
    }
}
