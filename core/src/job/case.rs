//! The job's latest dead test as the judge takes it.

use super::Job;
use crate::journal::fact::EarthProof;
use crate::prove::{Case, Given, GivenValue, Impedance, Reading, ReferenceProof, System, Taken};

impl Job {
    /// The latest run's readings with all that the job says of conductors, earthing and poles.
    pub fn case(&self) -> Case {
        let mut case = Case::of(self.conductors());
        case.earthing = self.earthing;
        case.order = self.order;
        case.dead_limit_mv = self.limits().ac_mv;
        match self.system {
            System::ThreeWire => case.nominal.line_line_mv = Some(self.nominal),
            System::OnePhase | System::ThreePhaseNeutral => case.nominal.line_neutral_mv = Some(self.nominal),
        }
        case.poles_opened = self.conductors().into_iter().map(|c| c.name).filter(|name| self.opens(name)).collect();
        if let Some(run) = self.run() {
            case.readings = run.readings.iter().map(given).collect();
            case.proved_before = Some(true);
            case.proved_after = run.after().map(|proof| proof.works);
            case.reference_proved = match run.reference() {
                None => ReferenceProof::No,
                Some(earth) if !earth.holds => ReferenceProof::Failed,
                Some(earth) => match earth.way {
                    EarthProof::LiveLine => ReferenceProof::KnownLine,
                    EarthProof::Bonded => ReferenceProof::SecondEarth,
                    EarthProof::MainTerminal | EarthProof::Other => ReferenceProof::Continuity,
                },
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
    Given { pair: [taken.first.clone(), taken.then.clone()], value, impedance: Impedance::Unknown, dc: taken.dc }
}
