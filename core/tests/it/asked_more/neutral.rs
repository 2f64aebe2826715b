//! A neutral that no point opens, where it can come off earth.

use stillbar_core::prove::{Earthing, System};

use super::bench::*;

/// Planned as far as its points.
fn pointed(case: Case) -> Bench {
    let bench = Bench::new(case, &[], &[]);
    bench.plans_points();
    bench
}

/// Asked on *Open up*, on TT, IT and where the earthing is not known, if no point opens a neutral.
#[test]
fn it_is_asked_where_it_can_come_off_earth() {
    for (system, volts) in [(System::OnePhase, 230), (System::ThreePhaseNeutral, 230), (System::SplitPhase, 120)] {
        for earthing in Earthing::ALL.into_iter().filter(|e| *e != Earthing::TnC) {
            for neutral in [false, true] {
                let off_earth = matches!(earthing, Earthing::Tt | Earthing::It | Earthing::Unknown);
                let bench = pointed(Case { system, volts, earthing, neutral, ..Case::house_socket() });
                let asked = bench.asked_on("neutral-closed").map(|step| format!("{step:?}"));
                let wanted = (off_earth && !neutral).then(|| "OpenUp".to_owned());
                assert_eq!(asked, wanted, "{system:?} {earthing:?}, opened: {neutral}");
            }
        }
    }
}
