//! Cases for the plan of the dead test and the judge of readings: read or refused with a place; a case that is read has a plan, and its
//! readings a judgement that never calls a conductor dead that the worst reading does not.

#![no_main]

use libfuzzer_sys::fuzz_target;
use stillbar_core::prove::conditions::unmet;
use stillbar_core::prove::judge::{Verdict, judge};
use stillbar_core::prove::{Case, parse_conductors, parse_volts, plan_case};

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let _ = parse_conductors(text);
    let _ = parse_volts(text);
    if let Ok(case) = Case::from_json(text) {
        // The plan of many conductors is quick; the judge fits models, and a fuzzer learns nothing from the fortieth conductor.
        plan_case(&case);
        if case.conductors.len() <= 6 {
            let said = judge(&case);
            if said.verdict == Verdict::ProvedDead {
                assert!(unmet(&case).is_empty() && !case.readings.iter().any(|g| case.indicates(g)));
            }
        }
    }
});
