//! All live: what the circuit of a system shows on every pair is what the plan of a job of that system expects there.

use stillbar_core::prove::{Earthing, IfLive, System, plan_case};

use super::Office;
use super::plants::{Plant, Site, plants};

const TN: [Earthing; 3] = [Earthing::TnS, Earthing::TnCS, Earthing::Tt];

/// Pairs with their volts, as a table prints them.
type Printed = &'static [(&'static str, &'static str, f64)];

/// Nominal voltages as they are published, with pairs that the same tables print: IEC 60038 (230/400, 400/690); ANSI C84.1 (120/208,
/// 277/480, 347/600, 120/240, 240/120 with a high leg, 480 with a corner at earth), all of it from memory; BS 7671 411.8 for the site
/// transformers (an excerpt); NEK 400 for 230 V between lines (an excerpt); batteries and drives of 48 to 750 V from common practice.
pub const NOMINAL: &[(System, f64, Printed)] = &[
    (System::OnePhase, 230.0, &[("L", "N", 230.0), ("L", "PE", 230.0), ("N", "PE", 0.0)]),
    (System::OnePhase, 120.0, &[("L", "N", 120.0)]),
    (System::ThreePhaseNeutral, 230.0, &[("L1", "L2", 400.0), ("L3", "N", 230.0), ("L2", "PE", 230.0)]),
    (System::ThreePhaseNeutral, 400.0, &[("L1", "L2", 690.0), ("L3", "PE", 400.0)]),
    (System::ThreePhaseNeutral, 120.0, &[("L1", "L3", 208.0), ("L2", "N", 120.0)]),
    (System::ThreePhaseNeutral, 277.0, &[("L2", "L3", 480.0), ("L1", "PE", 277.0)]),
    (System::ThreePhaseNeutral, 347.0, &[("L2", "L3", 600.0), ("L1", "PE", 347.0)]),
    (System::ThreeWire, 400.0, &[("L1", "L2", 400.0)]),
    (System::ThreeWire, 690.0, &[("L3", "L1", 690.0)]),
    (System::ThreeWire, 230.0, &[("L2", "L3", 230.0)]),
    (System::Pen, 230.0, &[("L1", "L2", 400.0), ("L3", "PEN", 230.0)]),
    (System::TwoLines, 230.0, &[("L1", "L2", 230.0), ("L1", "PE", 133.0), ("L2", "PE", 133.0)]),
    (System::SiteTransformer, 110.0, &[("L1", "L2", 110.0), ("L1", "PE", 55.0), ("L2", "PE", 55.0)]),
    (System::SiteTransformerThree, 110.0, &[("L1", "L2", 110.0), ("L3", "PE", 63.5)]),
    (System::SplitPhase, 120.0, &[("L1", "L2", 240.0), ("L1", "N", 120.0), ("L2", "PE", 120.0), ("N", "PE", 0.0)]),
    (System::HighLeg, 240.0, &[("L1", "L2", 240.0), ("L2", "L3", 240.0)]),
    (System::CornerGrounded, 240.0, &[("L1", "L2", 240.0)]),
    (System::CornerGrounded, 480.0, &[("L1", "L3", 480.0)]),
    (System::CornerGrounded, 600.0, &[("L2", "L3", 600.0)]),
    (System::DcTwoWire, 48.0, &[("L+", "L-", 48.0)]),
    (System::DcTwoWire, 110.0, &[("L+", "L-", 110.0)]),
    (System::DcTwoWire, 220.0, &[("L+", "L-", 220.0)]),
    (System::DcTwoWire, 750.0, &[("L+", "L-", 750.0)]),
    (System::DcThreeWire, 220.0, &[("L+", "L-", 220.0), ("L+", "M", 110.0), ("L-", "PE", 110.0), ("M", "PE", 0.0)]),
    (System::DcThreeWire, 750.0, &[("L+", "L-", 750.0), ("M", "L-", 375.0)]),
];

/// What is answered of a plant's mark, before anything is opened.
pub fn answer_of(system: System, marked: Option<&str>) -> Option<(&'static str, &'static str)> {
    let line = |of: Option<&str>| match of {
        Some("L1") => "l1",
        Some("L2") => "l2",
        Some("L3") => "l3",
        _ => "not-known",
    };
    match system {
        System::HighLeg => Some(("high-line", line(marked))),
        System::CornerGrounded => Some(("grounded-line", line(marked))),
        System::DcTwoWire => Some(match marked {
            Some("L+") => ("earthed-pole", "plus"),
            Some("L-") => ("earthed-pole", "minus"),
            _ => ("earthed-pole", "none"),
        }),
        _ => None,
    }
}

/// What the circuit shows on a pair, whichever of these plants it is, and wherever the first fault of an unearthed one lies.
fn shown(plants: &[Plant], earthing: Earthing, a: &str, b: &str) -> Vec<f64> {
    let mut all = Vec::new();
    for plant in plants {
        let site = Site::of(earthing);
        all.push(plant.live(site).between(a, b));
        if plant.earthed.is_none() || matches!(earthing, Earthing::It | Earthing::Unknown) {
            let adrift = Site::of(Earthing::It);
            let faults = plant.poles.iter().map(|fault| Site { fault: Some(fault), ..adrift });
            all.extend(faults.chain([adrift]).map(|site| plant.live(site).between(a, b)));
        }
    }
    all
}

fn near(shown: f64, millivolts: u32) -> bool {
    let volts = f64::from(millivolts) / 1000.0;
    // Within 1 %; next to nothing is nothing.
    (shown - volts).abs() <= 0.01 * volts.max(shown) || (shown < 1.0 && volts < 1.0)
}

/// Whether the expectation covers what is shown, and promises no more than what the system has.
fn covers(expected: IfLive, shown: f64, greatest: f64) -> bool {
    let up_to = |mv: u32| {
        let volts = f64::from(mv) / 1000.0;
        shown <= volts * 1.01 + 0.5 && volts <= greatest * 1.01
    };
    match expected {
        IfLive::About(mv) => near(shown, mv),
        IfLive::Either { phases, middle } => near(shown, phases) || near(shown, middle),
        IfLive::UpTo(mv) | IfLive::Middles(Some(mv)) => up_to(mv),
        // "From a few volts up to the voltage of a line".
        IfLive::Middles(None) => shown <= greatest,
        IfLive::Unsaid => false,
    }
}

/// Every pair of the plan, against the circuits that it may be.
fn agrees(
    office: &Office,
    system: System,
    volts: f64,
    earthing: Earthing,
    plants: &[Plant],
    answer: Answer,
) -> Vec<String> {
    let job = office.job(system, volts, earthing, answer);
    let plan = plan_case(&job.case());
    let pairs = plants[0].pairs();
    assert_eq!(plan.tests.len(), pairs.len(), "{system:?}");
    let greatest = pairs.iter().flat_map(|(a, b)| shown(plants, earthing, a, b)).fold(0.0, f64::max);
    // One phase may be of three that are not earthed: with the first fault on another of them its line stands at the full voltage between
    // lines (plane geometry).
    let greatest = if system == System::OnePhase { greatest * 3f64.sqrt() } else { greatest };
    let mut wrong = Vec::new();
    for test in &plan.tests {
        let [a, b] = [&test.first, &test.then].map(String::as_str);
        for shown in shown(plants, earthing, a, b) {
            if !covers(test.expect_not_dead, shown, greatest) {
                let (expects, name) = (test.expect_not_dead, earthing.name());
                wrong.push(format!("{system:?} {volts} V {name} {answer:?}: {a} – {b} {shown:.1} V, {expects:?}"));
            }
        }
    }
    wrong
}

type Answer = Option<(&'static str, &'static str)>;

fn none(wrong: Vec<String>) {
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The circuits themselves agree with the published tables, before the app is held against them.
#[test]
fn the_circuits_show_what_is_published() {
    for (system, volts, table) in NOMINAL {
        for plant in plants(*system, *volts) {
            for (a, b, says) in *table {
                let shown = plant.live(Site::of(Earthing::TnS)).between(a, b);
                let near = (shown - says).abs() <= says * 0.006 + 0.01;
                assert!(near, "{system:?} {volts} V: {a} – {b} {shown:.2} V, published {says} V");
            }
        }
    }
    // 240/120 with a high leg: 208 to neutral and to PE on that line, 120 on the others (ANSI C84.1, from memory; trade press).
    for plant in plants(System::HighLeg, 240.0) {
        for line in ["L1", "L2", "L3"] {
            let says = if plant.marked == Some(line) { 208.0 } else { 120.0 };
            for to in ["N", "PE"] {
                let shown = plant.live(Site::of(Earthing::TnS)).between(line, to);
                assert!((shown - says).abs() < 0.5, "high {:?}: {line} – {to} {shown:.2}", plant.marked);
            }
        }
    }
    // The line at earth shows nothing while it is live (trade press).
    for plant in plants(System::CornerGrounded, 480.0) {
        for line in ["L1", "L2", "L3"] {
            let says = if plant.marked == Some(line) { 0.0 } else { 480.0 };
            let shown = plant.live(Site::of(Earthing::TnS)).between(line, "PE");
            assert!((shown - says).abs() < 0.5, "corner {:?}: {line} – PE {shown:.2}", plant.marked);
        }
    }
}

#[test]
fn an_earthed_supply_shows_what_the_plan_expects() {
    let mut wrong = Vec::new();
    for (system, volts, _) in NOMINAL {
        let office = Office::open();
        let earthings = if *system == System::Pen { &[Earthing::TnC][..] } else { &TN[..] };
        for earthing in earthings {
            let all = plants(*system, *volts);
            let marks = all.iter().any(|p| p.marked.is_some());
            if !marks {
                // A supply of three wires may be any of its plants: nobody is asked which.
                wrong.extend(agrees(&office, *system, *volts, *earthing, &all, None));
                continue;
            }
            for plant in &all {
                let answer = answer_of(*system, plant.marked);
                wrong.extend(agrees(&office, *system, *volts, *earthing, std::slice::from_ref(plant), answer));
            }
            let question = answer_of(*system, None).unwrap().0;
            wrong.extend(agrees(&office, *system, *volts, *earthing, &all, Some((question, "not-known"))));
            // Before anybody has answered it is not known either.
            wrong.extend(agrees(&office, *system, *volts, *earthing, &all, None));
        }
    }
    none(wrong);
}

/// Every system but these, in these earthings, whichever line is marked.
fn adrift(earthings: &[Earthing], of: impl Fn(System) -> bool) {
    let mut wrong = Vec::new();
    for (system, volts, _) in NOMINAL.iter().filter(|(system, ..)| of(*system)) {
        let office = Office::open();
        let all = plants(*system, *volts);
        for earthing in earthings {
            let not_known = answer_of(*system, None).map(|(question, _)| (question, "not-known"));
            wrong.extend(agrees(&office, *system, *volts, *earthing, &all, not_known));
            // Of a high leg it is shown which line it is, whatever the earthing.
            for plant in all.iter().filter(|p| *system == System::HighLeg && p.marked.is_some()) {
                let answer = answer_of(*system, plant.marked);
                wrong.extend(agrees(&office, *system, *volts, *earthing, std::slice::from_ref(plant), answer));
            }
        }
    }
    none(wrong);
}

/// In IT a line shows anything from nothing to the full voltage between lines to PE.
#[test]
fn an_unearthed_supply_stays_within_what_the_plan_expects() {
    adrift(&[Earthing::It], |system| system != System::Pen);
}

/// Where nobody knows the arrangement it shows the same.
#[test]
fn an_earthing_that_nobody_knows_is_taken_for_the_worst() {
    let old = [System::OnePhase, System::ThreePhaseNeutral];
    adrift(&[Earthing::Unknown], |system| system != System::Pen && !old.contains(&system));
}

#[test]
fn an_earthing_that_nobody_knows_is_taken_for_the_worst_in_the_old_systems() {
    let old = [System::OnePhase, System::ThreePhaseNeutral];
    adrift(&[Earthing::Unknown], |system| old.contains(&system));
}

/// What the table gives a figure for is expected as that figure, not as "anything up to".
#[test]
fn what_is_certain_is_expected_as_a_figure() {
    let office = Office::open();
    for (system, volts, _) in NOMINAL {
        for plant in plants(*system, *volts) {
            let earthing = if *system == System::Pen { Earthing::TnC } else { Earthing::TnS };
            let floats = *system == System::DcTwoWire && plant.marked.is_none();
            let job = office.job(*system, *volts, earthing, answer_of(*system, plant.marked));
            for test in plan_case(&job.case()).tests {
                let middle = |name: &str| matches!(name, "N" | "PE" | "PEN" | "M");
                let [a, b] = [&test.first, &test.then].map(String::as_str);
                // Of a line at earth "none may show although both are live" says more than a figure of nothing.
                let at_earth = plant.marked.filter(|_| *system != System::HighLeg);
                let open = floats || *system == System::ThreeWire || at_earth.is_some_and(|m| m == a || m == b);
                let open = open && (a == "PE" || b == "PE");
                let figure = matches!(test.expect_not_dead, IfLive::About(_));
                if !(open || middle(a) && middle(b)) {
                    assert!(figure, "{system:?} {:?}: {a} – {b} {:?}", plant.marked, test.expect_not_dead);
                }
            }
        }
    }
}
