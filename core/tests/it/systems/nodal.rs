//! Some of it live: poles open, one pole closed, another source back. What the circuit shows is handed to the judge as an instrument of
//! figures would read it, and is never "proved dead" where anything is there. And the limits, from the same circuits.

use stillbar_core::job::Job;
use stillbar_core::prove::judge::{Verdict, judge};
use stillbar_core::prove::limit::Bound;
use stillbar_core::prove::{Case, Earthing, Given, GivenValue, Impedance, ReferenceProof, System, plan_case};

use super::Office;
use super::circuit::Circuit;
use super::live::{NOMINAL, answer_of};
use super::plants::{Plant, Site, plants, work};

/// Instruments: one that loads nothing, and one of low impedance on good insulation, which pulls down what only floats (IEC 61243-3 calls
/// less than 100 kilohm low, from memory). In ohms, with the insulation of each conductor.
const INSTRUMENTS: [(f64, f64); 3] = [(1e9, 1e6), (10e3, 1e6), (10e3, 1e8)];

/// The earthings of a system, as far as they make a difference here.
fn earthings(system: System) -> &'static [Earthing] {
    match system {
        System::Pen => &[Earthing::TnC],
        _ => &[Earthing::TnS, Earthing::Tt, Earthing::It, Earthing::Unknown],
    }
}

/// Every place of work: each system, each plant that it may be, each of these earthings. `every`: by all its published voltages, or by the
/// first.
fn each(every: bool, only: &[Earthing], mut with: impl FnMut(&Job, &Plant, System, Earthing)) {
    let first = |k: usize| k == 0 || NOMINAL[k - 1].0 != NOMINAL[k].0;
    for (_, (system, volts, _)) in NOMINAL.iter().enumerate().filter(|(k, _)| every || first(*k)) {
        let office = Office::open();
        for earthing in earthings(*system).iter().filter(|e| only.contains(e)) {
            for plant in plants(*system, *volts) {
                let answer = answer_of(*system, plant.marked);
                with(&office.job(*system, *volts, *earthing, answer), &plant, *system, *earthing);
            }
        }
    }
}

/// Where a fault to earth may lie: nowhere, or on a conductor of a source that is not tied to it.
fn faults(plant: &Plant, earthing: Earthing) -> Vec<Option<&'static str>> {
    let adrift = earthing == Earthing::It || plant.earthed.is_none();
    let on = plant.poles.iter().map(|pole| Some(*pole)).filter(|_| adrift);
    std::iter::once(None).chain(on).collect()
}

/// A whole proof with what the circuit shows, in whole volts, on every pair of the job's plan and in the range that the plan asks for.
/// Beside it the greatest voltage that really stands between any two.
fn proof(job: &Job, plant: &Plant, circuit: &Circuit, instrument: f64) -> (Case, f64) {
    let mut case = job.case();
    (case.proved_before, case.proved_after) = (Some(true), Some(true));
    case.reference_proved = ReferenceProof::Continuity;
    // The points open whatever may be opened, as far as anybody knows: a pole that stayed closed is what has to show.
    let may = case.conductors.iter().filter(|c| !c.role.is_reference()).map(|c| c.name.clone());
    case.poles_opened = Some(may.collect());
    // The indicator is one of figures, which begin at nothing.
    case.indicator.dc_levels_mv = Some(vec![1_000]);
    case.indicator.levels_mv = vec![1_000];
    let mut greatest = 0.0;
    let mut readings = Vec::new();
    for test in plan_case(&case).tests {
        let shown = circuit.read(&test.first, &test.then, instrument).round();
        greatest = f64::max(greatest, shown);
        let mut given = |volts: f64, dc: bool| {
            let value = GivenValue::Volts((volts * 1000.0) as u32);
            let pair = [test.first.clone(), test.then.clone()];
            readings.push(Given { pair, value, impedance: Impedance::Unknown, dc });
        };
        // The range for alternating voltage shows no direct voltage, and the other way round.
        given(if plant.direct { 0.0 } else { shown }, false);
        if test.dc {
            given(if plant.direct { shown } else { 0.0 }, true);
        }
    }
    case.readings = readings;
    (case, greatest)
}

/// All points open: nothing stands between any two, and only then it is proved dead.
#[test]
fn with_every_pole_open_nothing_is_there() {
    each(true, &Earthing::ALL, |job, plant, system, earthing| {
        for fault in faults(plant, earthing) {
            let circuit = plant.circuit(Site { fault, ..Site::of(earthing) }, &[]);
            for (a, b) in plant.pairs() {
                let shown = circuit.between(a, b);
                assert!(shown < 1.0, "{system:?} {earthing:?}: {a} – {b} {shown}");
            }
            let (case, greatest) = proof(job, plant, &circuit, INSTRUMENTS[0].0);
            let said = judge(&case);
            assert_eq!((greatest, said.verdict), (0.0, Verdict::ProvedDead), "{system:?} {earthing:?} {:?}", said.why);
        }
    });
}

fn never_dead(job: &Job, plant: &Plant, circuit: &Circuit, instrument: f64, what: &str) -> Option<String> {
    let (case, greatest) = proof(job, plant, circuit, instrument);
    let said = judge(&case);
    let volts: Vec<_> = case.readings.iter().filter(|g| g.value != GivenValue::Volts(0)).collect();
    let wrong = greatest > 0.0 && said.verdict == Verdict::ProvedDead;
    wrong.then(|| format!("{what}: {greatest} V stand there, and it is proved dead; read {volts:?}"))
}

/// The mid-point of direct voltage alone: it is in a test of its own below.
fn is_mid(closed: &[&str]) -> bool {
    closed == ["M"]
}

/// Each pole left closed, the others open.
fn one_closed(of_mid: bool) -> usize {
    let (mut wrong, mut showed) = (Vec::new(), 0);
    each(false, &[Earthing::TnS, Earthing::TnC, Earthing::Tt, Earthing::It], |job, plant, system, earthing| {
        for fault in faults(plant, earthing) {
            for pole in plant.poles.iter().filter(|pole| **pole != "PEN" && is_mid(&[**pole]) == of_mid) {
                for (instrument, leak) in INSTRUMENTS {
                    let circuit = plant.circuit(Site { fault, leak, ..Site::of(earthing) }, &[pole]);
                    let what = format!("{system:?} {earthing:?} fault {fault:?}, {pole} closed, {instrument:.0} ohms");
                    showed += usize::from(proof(job, plant, &circuit, instrument).1 > 0.0);
                    wrong.extend(never_dead(job, plant, &circuit, instrument, &what));
                }
            }
        }
    });
    assert!(wrong.is_empty(), "{} times:\n{}", wrong.len(), wrong.join("\n"));
    showed
}

#[test]
fn a_pole_that_stayed_closed_is_never_proved_dead() {
    let showed = one_closed(false);
    assert!(showed > 300, "only {showed} of them show anything");
}

/// Another source of the same system, a generator or a second battery, comes back while the normal supply is off: whole or by one pole,
/// tied to earth or adrift.
fn set_comes_back(of_mid: bool) {
    let mut wrong = Vec::new();
    each(false, &[Earthing::TnS, Earthing::TnC, Earthing::It], |job, plant, system, earthing| {
        // Of three lines that differ only by name the first is enough here.
        if plant.marked.is_some_and(|marked| matches!(marked, "L2" | "L3")) {
            return;
        }
        // A set of its own may be tied to earth or not, whatever the grid is.
        let owns = [earthing, Earthing::It];
        for own in owns.into_iter().skip(usize::from(earthing == Earthing::It)) {
            for fault in faults(plant, own) {
                for (instrument, leak) in [INSTRUMENTS[0], INSTRUMENTS[2]] {
                    let (grid, set) = (Site { leak, ..Site::of(earthing) }, Site { fault, leak, ..Site::of(own) });
                    let ways = plant.poles.iter().map(|p| vec![*p]).chain([plant.poles.clone()]);
                    for closed in ways.filter(|closed| is_mid(closed) == of_mid) {
                        let mut circuit = work(plant, grid);
                        plant.joins(&mut circuit, "grid ", grid, &[], 0.0);
                        plant.joins(&mut circuit, "set ", set, &closed, 37.0);
                        let what = format!("{system:?} {earthing:?}, the set {own:?} by {closed:?}, fault {fault:?}");
                        wrong.extend(never_dead(job, plant, &circuit, instrument, &what));
                        if closed.len() == plant.poles.len() {
                            let (case, greatest) = proof(job, plant, &circuit, instrument);
                            assert!(greatest > 40.0 && judge(&case).verdict == Verdict::TreatAsLive, "{what}");
                        }
                    }
                }
            }
        }
    });
    assert!(wrong.is_empty(), "{} times:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn another_source_that_comes_back_is_never_proved_dead() {
    set_comes_back(false);
}

/// Of a battery that is not tied to earth, with the first fault on a pole, the mid-point stands at half of the voltage to PE. It is direct
/// voltage, which the range for alternating voltage does not show; and an instrument of low impedance pulls every other pair of it down.
#[test]
fn a_mid_point_that_stayed_closed_is_never_proved_dead() {
    one_closed(true);
    set_comes_back(true);
}

/// What an indicator has to show at the latest: half of the lowest voltage of a line to the earthed point, at most 50 V AC and 120 V DC.
/// The limits may be stricter than that, never wider, and the greatest voltage between two is what "low voltage" is held against.
#[test]
fn the_limits_follow_from_the_circuit() {
    let office = Office::open();
    for (system, volts, _) in NOMINAL {
        for plant in plants(*system, *volts) {
            let earthing = if *system == System::Pen { Earthing::TnC } else { Earthing::TnS };
            let job = office.job(*system, *volts, earthing, answer_of(*system, plant.marked));
            let circuit = plant.live(Site::of(earthing));
            let earth = if *system == System::Pen { "PEN" } else { "PE" };
            let lines = plant.poles.iter().filter(|p| !matches!(**p, "N" | "M" | "PEN"));
            // The line or pole at earth shows nothing while it is live: no limit can follow from that.
            let lowest = lines.map(|l| circuit.between(l, earth)).filter(|v| *v > 1.0).fold(f64::INFINITY, f64::min);
            let least = f64::min(lowest / 2.0, if plant.direct { 120.0 } else { 50.0 });
            for bound in [job.bound(), Bound::of(&job.case())] {
                let at = f64::from(bound.at(plant.direct)) / 1000.0;
                assert!(at <= least * 1.001, "{system:?} {volts} V: {at} V, and half of the lowest is {least:.2} V");
                assert!(at >= least * 0.49, "{system:?} {volts} V: {at} V is far below {least:.2} V");
            }
            let pairs = plant.pairs();
            let greatest = pairs.iter().map(|(a, b)| circuit.between(a, b)).fold(0.0, f64::max);
            let most = f64::from(job.supply().most()) / 1000.0;
            assert!(
                (most - greatest).abs() <= greatest * 0.005,
                "{system:?}: most {most} V, and {greatest} V stand there"
            );
            assert_eq!(job.supply().is_direct(), plant.direct, "{system:?}");
        }
    }
    // As docs/systems.md says in figures.
    let at = |system, volts| job_bound(&office, system, volts);
    assert_eq!(at(System::SiteTransformer, 110.0), (27.5, 120.0));
    // Half of 63.5 (BS 7671 411.8, an excerpt).
    assert!((at(System::SiteTransformerThree, 110.0).0 - 31.75).abs() < 0.01);
    assert_eq!(at(System::ThreePhaseNeutral, 230.0), (50.0, 120.0));
    // 24 V to earth on each pole where neither is tied to it, and half of that.
    assert_eq!(at(System::DcTwoWire, 48.0).1, 12.0);
    assert_eq!(at(System::DcTwoWire, 750.0).1, 120.0);
}

fn job_bound(office: &Office, system: System, volts: f64) -> (f64, f64) {
    let bound = office.job(system, volts, Earthing::TnS, None).bound();
    (f64::from(bound.ac_mv) / 1000.0, f64::from(bound.dc_mv) / 1000.0)
}
