//! The job's latest dead test as the judge takes it.

use super::Job;
use crate::prove::{Case, Given, GivenValue, Impedance, Reading, ReferenceProof, System, Taken};

impl Job {
    /// The latest run's readings with all that the job says of conductors, earthing and poles.
    pub fn case(&self) -> Case {
        let mut case = Case::of(self.conductors());
        case.earthing = self.earthing;
        case.order = self.order;
        case.dead_limit_mv = self.dead_limit;
        match self.system {
            System::ThreeWire => case.nominal.line_line_mv = Some(self.nominal),
            System::OnePhase | System::ThreePhaseNeutral => case.nominal.line_neutral_mv = Some(self.nominal),
        }
        case.poles_opened =
            Some(self.conductors().into_iter().map(|c| c.name).filter(|name| self.opens(name)).collect());
        if let Some(run) = self.run() {
            case.readings = run.readings.iter().map(given).collect();
            case.proved_before = Some(true);
            case.proved_after = run.after.as_ref().map(|(_, _, works)| *works);
            case.reference_proved = match &run.reference {
                None => ReferenceProof::No,
                Some((_, _, false)) => ReferenceProof::Failed,
                // The job keeps how it was shown in words; for the judge it counts that it was.
                Some((_, _, true)) => ReferenceProof::Continuity,
            };
        }
        case
    }
}

fn given(taken: &Taken) -> Given {
    let value = match taken.reading {
        Reading::None => GivenValue::None,
        Reading::Continuity => GivenValue::Continuity,
        Reading::Lit(None) => GivenValue::Lit,
        Reading::Lit(Some(volts)) => GivenValue::Level(u32::from(volts) * 1000),
        Reading::Millivolts(mv) => GivenValue::Volts(mv),
    };
    Given { pair: [taken.first.clone(), taken.then.clone()], value, impedance: Impedance::Unknown, dc: false }
}
