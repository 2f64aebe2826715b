//! What is wrong with a supply that is back is found, also where it is only wrong for this system. The readings are those of circuits with
//! the fault in them.

use stillbar_core::prove::{Earthing, System};

use super::circuit::{C, Circuit, EARTH};
use super::plants::{Site, plants};
use super::story::*;

/// The job is played up to the readings; these are read; it is found and holds up the hand-back. What is said.
fn found(story: &Story, shows: impl Fn(&str, &str) -> f64) -> String {
    let phone = story.supplied();
    presence(&phone, shows);
    let said = findings(&phone);
    assert!(!said.is_empty(), "{:?} {} V: nothing was found", story.system, story.volts);
    let on = phone.device.try_play(phone.field(), &hand_back(story.turns()));
    assert!(on.is_err(), "handed back with {said:?}");
    said.join("\n")
}

fn whole_volts(volts: f64) -> f64 {
    volts.round()
}

/// Another line is high than was shown before: a load of 120 V is on 208 V now.
#[test]
fn a_high_leg_on_another_line() {
    for (asked, now) in [(1, 2), (1, 0), (0, 1), (2, 1)] {
        let story = Story::of(System::HighLeg, 240.0, Earthing::TnCS, asked);
        let other = plants(System::HighLeg, 240.0).swap_remove(now).live(Site::of(Earthing::TnCS));
        let said = found(&story, |a, b| whole_volts(other.between(a, b)));
        let lines = [story.plant.marked.unwrap(), ["L1", "L2", "L3"][now]];
        assert!(lines.iter().all(|line| said.contains(line)), "{lines:?}: {said}");
    }
}

/// Where nobody knew which line is high, each may be it, and no more: to N a line shows 120 or 208. The readings: a star of 240 V
/// between lines; a neutral that is lost; one that is changed with a line; a line that is missing.
#[test]
fn no_high_leg_where_one_should_be() {
    let story = Story { known: false, ..Story::of(System::HighLeg, 240.0, Earthing::TnCS, 1) };
    for to_n in [[139.0, 139.0, 139.0], [165.0, 208.0, 75.0], [120.0, 240.0, 120.0], [0.0, 208.0, 120.0]] {
        let line = |a: &str| ["L1", "L2", "L3"].iter().position(|line| *line == a).unwrap();
        found(&story, |a, b| if b == "N" { to_n[line(a)] } else { 240.0 });
    }
}

/// The neutral is lost: the loads on both sides divide 240 V as they like, here into 165 and 75.
#[test]
fn the_middle_of_a_split_phase_is_lost() {
    let mut circuit = Circuit::default();
    circuit.source("L1", "middle", 0.1, C(120.0, 0.0));
    circuit.source("middle", "L2", 0.1, C(120.0, 0.0));
    circuit.resistance("middle", EARTH, 0.01);
    circuit.resistance("L1", "N", 1650.0);
    circuit.resistance("N", "L2", 750.0);
    let shows = |a: &str, b: &str| whole_volts(circuit.between(a, b));
    assert_eq!((shows("L1", "N"), shows("L2", "N"), shows("L1", "L2")), (165.0, 75.0, 240.0));
    let story = Story::of(System::SplitPhase, 120.0, Earthing::TnCS, 0);
    let said = found(&story, shows);
    assert!(said.contains("165.0 V") && said.contains("75.0 V"), "{said}");
}

/// Both lines came back on the same leg: each is right to N, there is nothing between them, and N carries the sum of both.
#[test]
fn both_lines_of_a_split_phase_on_one_leg() {
    let story = Story::of(System::SplitPhase, 120.0, Earthing::TnCS, 0);
    let said = found(&story, |a, b| if a == "N" || b == "N" { 120.0 } else { 0.0 });
    assert!(said.contains("L1") && said.contains("L2"), "{said}");
}

/// One pole did not come back. With a load on, the lost pole stands at the other one.
#[test]
fn one_pole_of_direct_voltage_is_missing() {
    for (which, lost) in [(0, "L-"), (0, "L+"), (1, "L-"), (1, "L+"), (2, "L-"), (2, "L+")] {
        let story = Story::of(System::DcTwoWire, 220.0, Earthing::TnS, which);
        let site = Site::of(Earthing::TnS);
        let kept: Vec<&str> = story.plant.poles.iter().copied().filter(|p| *p != lost).collect();
        for load in [50.0, 1e9] {
            let mut circuit = story.plant.circuit(Site { leak: 1e8, ..site }, &kept);
            circuit.resistance("L+", "L-", load);
            // An instrument of low impedance, so that insulation alone does not look like a pole.
            let said = found(&story, |a, b| whole_volts(circuit.read(a, b, 10e3)));
            assert!(said.contains("missing"), "{lost} of {:?}: {said}", story.plant.marked);
        }
    }
}

/// The other pole is at earth than was shown before.
#[test]
fn the_other_pole_is_at_earth() {
    for (asked, now) in [(0, 1), (1, 0)] {
        let story = Story::of(System::DcTwoWire, 220.0, Earthing::TnS, asked);
        let other = plants(System::DcTwoWire, 220.0).swap_remove(now).live(Site::of(Earthing::TnS));
        found(&story, |a, b| whole_volts(other.between(a, b)));
    }
}

/// The mid-point of a battery is lost, and the loads divide its voltage.
#[test]
fn the_mid_point_of_direct_voltage_is_lost() {
    let story = Story::of(System::DcThreeWire, 220.0, Earthing::TnS, 0);
    let mut circuit = story.plant.circuit(Site::of(Earthing::TnS), &["L+", "L-"]);
    circuit.resistance("L+", "M", 160.0);
    circuit.resistance("M", "L-", 60.0);
    let said = found(&story, |a, b| whole_volts(circuit.between(a, b)));
    assert!(said.contains("160.0 V") && said.contains("60.0 V"), "{said}");
}

/// A neutral that stands 45 V off the middle of its lines is as lost as one of three lines, and destroys what hangs on it: nobody accepts
/// it. Common practice, no source.
#[test]
fn nobody_accepts_a_lost_middle() {
    for (system, volts, pairs) in [
        (System::SplitPhase, 120.0, [("L1", "N", 165.0), ("L2", "N", 75.0), ("L1", "L2", 240.0)]),
        (System::DcThreeWire, 220.0, [("L+", "M", 160.0), ("L-", "M", 60.0), ("L+", "L-", 220.0)]),
    ] {
        let shows =
            |a: &str, b: &str| pairs.iter().find(|(c, d, _)| (*c, *d) == (a, b) || (*d, *c) == (a, b)).unwrap().2;
        let said = found(&Story::of(system, volts, Earthing::TnS, 0), shows);
        assert!(said.contains("missing"), "{said}");
    }
}

/// 55-0-55 whose middle has come off earth, and one pole is at earth by a fault: 110 and 0. With that nobody is protected at 55 V.
#[test]
fn a_site_transformer_with_its_middle_off() {
    let story = Story::of(System::SiteTransformer, 110.0, Earthing::TnS, 0);
    for (fault, good) in [("L2", "L1"), ("L1", "L2")] {
        let site = Site { fault: Some(fault), ..Site::of(Earthing::It) };
        let circuit = story.plant.live(site);
        let shows = |a: &str, b: &str| whole_volts(circuit.between(a, b));
        assert_eq!((shows(good, "PE"), shows(fault, "PE"), shows("L1", "L2")), (110.0, 0.0, 110.0));
        found(&story, shows);
    }
}

/// The star point of a site transformer of three lines has come off earth, and one line is at earth: 110, 110 and 0 for 63.5.
#[test]
fn a_site_transformer_of_three_lines_with_its_star_off() {
    let story = Story::of(System::SiteTransformerThree, 110.0, Earthing::TnS, 0);
    let circuit = story.plant.live(Site { fault: Some("L3"), ..Site::of(Earthing::It) });
    found(&story, |a, b| whole_volts(circuit.between(a, b)));
}

/// The corner at earth is another one than was shown before, or earth is lost there and the lines float.
#[test]
fn a_corner_that_moved() {
    let story = Story::of(System::CornerGrounded, 480.0, Earthing::TnS, 1);
    let other = plants(System::CornerGrounded, 480.0).swap_remove(0).live(Site::of(Earthing::TnS));
    found(&story, |a, b| whole_volts(other.between(a, b)));
    let adrift = story.plant.live(Site::of(Earthing::It));
    assert_eq!(adrift.between("L1", "PE").round(), 277.0);
    found(&story, |a, b| whole_volts(adrift.between(a, b)));
}

/// A PEN that broke upstream: the lines share out what is between them as the loads have it.
#[test]
fn a_pen_that_broke() {
    let story = Story::of(System::Pen, 230.0, Earthing::TnC, 0);
    let mut circuit = Circuit::default();
    for (k, line) in ["L1", "L2", "L3"].iter().enumerate() {
        circuit.source(line, EARTH, 0.1, C::at(230.0, -120.0 * k as f64));
        circuit.resistance(line, "PEN", [20.0, 60.0, 200.0][k]);
    }
    let said = found(&story, |a, b| whole_volts(circuit.between(a, b)));
    assert!(said.contains("missing"), "{said}");
}

/// Each line lost in turn, of every system: its readings are next to nothing, and somebody is asked.
#[test]
fn a_line_that_did_not_come_back() {
    let each = [
        (System::Pen, 230.0, Earthing::TnC, 0),
        (System::TwoLines, 230.0, Earthing::TnS, 0),
        (System::SiteTransformer, 110.0, Earthing::TnS, 0),
        (System::SiteTransformerThree, 110.0, Earthing::TnS, 0),
        (System::SplitPhase, 120.0, Earthing::TnCS, 0),
        (System::HighLeg, 240.0, Earthing::TnCS, 1),
        (System::CornerGrounded, 480.0, Earthing::TnS, 1),
        (System::DcThreeWire, 220.0, Earthing::TnS, 0),
        (System::TwoLines, 230.0, Earthing::It, 0),
    ];
    for (system, volts, earthing, which) in each {
        let story = Story::of(system, volts, earthing, which);
        let lines: Vec<&str> = story.plant.poles.iter().copied().filter(|p| !matches!(*p, "N" | "M" | "PEN")).collect();
        for lost in &lines {
            let kept: Vec<&str> = story.plant.poles.iter().copied().filter(|p| p != lost).collect();
            let mut circuit = story.plant.circuit(Site::of(earthing), &kept);
            // Its own load holds it at what that load is on.
            let at = story.plant.poles.iter().find(|p| matches!(**p, "N" | "M" | "PEN")).unwrap_or(&kept[0]);
            circuit.resistance(lost, at, 100.0);
            let said = found(&story, |a, b| whole_volts(circuit.between(a, b)));
            assert!(said.contains(lost), "{system:?}, {lost} lost: {said}");
        }
    }
}
