//! Every system, through the screens: opened, planned, isolated, proved dead, worked on, restored with what its circuit shows, and handed back
//! without anybody being asked about a reading; its record holds. A set of one's own: `own.rs`.

use std::collections::BTreeSet;

use stillbar_core::prove::{Earthing, System};
use stillbar_core::screens::as_text;

use super::story::*;
use crate::desk::*;

const LIVE_LINE: &str = "PE to a line that is known to be live shows the full voltage";

/// The whole story. `earth_by_line`: whether a known live line may show that PE is earth. `back`: the pairs that are read with the supply
/// back, each in the order of its letters.
fn whole(story: &Story, earth_by_line: bool, back: &[(&str, &str)]) {
    let name = format!("{:?} {} V {}", story.system, story.volts, story.earthing.name());
    let phone = story.opened_up();
    let screen = as_text(&phone.field().screen());
    assert_eq!(screen.contains(LIVE_LINE), earth_by_line, "{name}: {screen}");
    // What a live line shows to earth is a figure of this system, as its circuit has it.
    if let Some(says) = screen.lines().find_map(|line| line.strip_prefix("A live line shows to earth: About ")) {
        let figures: Vec<f64> = says.trim_end_matches(" V").split(" or ").map(|volts| volts.parse().unwrap()).collect();
        let earth = if story.system == System::Pen { "PEN" } else { "PE" };
        let lines = story.plant.poles.iter().filter(|pole| !matches!(**pole, "N" | "M" | "PEN"));
        let shown: Vec<f64> = lines.map(|line| story.shows(line, earth)).collect();
        for volts in figures {
            assert!(
                shown.iter().any(|of_line| (of_line - volts).abs() <= 0.01 * volts),
                "{name}: {volts} V, {shown:?}"
            );
        }
    } else {
        assert!(!earth_by_line, "{name}: {screen}");
    }
    reference_and_pairs(&phone, &story.plant.conductors());
    assert!(phone.proved(), "{name}");
    phone.play(&format!("{}\n{}", story.work(), until(RESTORE, "read L1 – N")));
    let read = presence(&phone, |a, b| story.shows(a, b));
    let wanted: BTreeSet<_> = back.iter().map(|(a, b)| (a.min(b).to_string(), a.max(b).to_string())).collect();
    let as_promised = if story.known { read == wanted } else { read.is_superset(&wanted) };
    assert!(as_promised, "{name}: read with the supply back {read:?}");
    assert_eq!(findings(&phone), Vec::<String>::new(), "{name}");
    if story.plant.direct {
        let polarity =
            "tap As marked\nfill What was read, with its sign = L+ above L- at the terminals\ntap Save: As marked";
        phone.play(polarity);
    }
    phone.play(&format!("{}\nsee [Handed back]", hand_back(story.turns())));
    record_holds(&phone, story.system);
}

/// Lines to each other.
const BETWEEN: [(&str, &str); 3] = [("L1", "L2"), ("L2", "L3"), ("L3", "L1")];

fn to(other: &'static str) -> Vec<(&'static str, &'static str)> {
    ["L1", "L2", "L3"].map(|line| (line, other)).into_iter().chain(BETWEEN).collect()
}

#[test]
fn one_phase() {
    for (earthing, by_line) in [(Earthing::TnCS, true), (Earthing::Tt, true), (Earthing::It, false)] {
        whole(&Story::of(System::OnePhase, 230.0, earthing, 0), by_line, &[("L", "N")]);
    }
}

#[test]
fn three_phases_and_a_neutral() {
    for (earthing, by_line) in [(Earthing::TnS, true), (Earthing::Tt, true), (Earthing::Unknown, false)] {
        whole(&Story::of(System::ThreePhaseNeutral, 230.0, earthing, 0), by_line, &to("N"));
    }
}

/// Earthed at its star point, which is not at the board.
#[test]
fn three_phases_without_a_neutral() {
    whole(&Story::of(System::ThreeWire, 400.0, Earthing::TnS, 0), true, &to("PE"));
}

#[test]
fn a_board_with_a_pen() {
    whole(&Story::of(System::Pen, 230.0, Earthing::TnC, 0), true, &to("PEN"));
}

#[test]
fn two_lines_without_neutral() {
    let back = [("L1", "PE"), ("L2", "PE"), ("L1", "L2")];
    whole(&Story::of(System::TwoLines, 230.0, Earthing::TnS, 0), true, &back);
    whole(&Story::of(System::TwoLines, 230.0, Earthing::It, 0), false, &[("L1", "L2")]);
}

#[test]
fn a_site_transformer() {
    let back = [("L1", "PE"), ("L2", "PE"), ("L1", "L2")];
    whole(&Story::of(System::SiteTransformer, 110.0, Earthing::TnS, 0), true, &back);
    whole(&Story::of(System::SiteTransformerThree, 110.0, Earthing::TnS, 0), true, &to("PE"));
}

#[test]
fn split_phase() {
    let back = [("L1", "N"), ("L2", "N"), ("L1", "L2")];
    whole(&Story::of(System::SplitPhase, 120.0, Earthing::TnCS, 0), true, &back);
    whole(&Story::of(System::SplitPhase, 120.0, Earthing::Tt, 0), true, &back);
}

/// Whichever line is the high one.
#[test]
fn a_high_leg() {
    for which in 0..3 {
        whole(&Story::of(System::HighLeg, 240.0, Earthing::TnCS, which), true, &to("N"));
    }
}

/// Nobody could read which line is high: whichever it is, nothing that is as it should be is asked about.
#[test]
fn a_high_leg_that_nobody_knows() {
    for which in 0..3 {
        let story = Story { known: false, ..Story::of(System::HighLeg, 240.0, Earthing::TnCS, which) };
        whole(&story, true, &to("N"));
    }
}

/// Whichever line is at earth; and where that line is a solid link, which nothing opens.
#[test]
fn a_corner_at_earth() {
    for which in 0..3 {
        whole(&Story::of(System::CornerGrounded, 480.0, Earthing::TnS, which), true, &to("PE"));
        let mut link = Story::of(System::CornerGrounded, 480.0, Earthing::TnS, which);
        let at_earth = link.plant.marked.unwrap();
        link.opens.retain(|pole| pole != at_earth);
        whole(&link, true, &to("PE"));
    }
}

#[test]
fn a_corner_that_nobody_knows() {
    for which in 0..3 {
        let story = Story { known: false, ..Story::of(System::CornerGrounded, 480.0, Earthing::TnS, which) };
        whole(&story, false, &BETWEEN);
    }
}

/// "Or to PE where a system without them is earthed": it is, whoever knows where, and only the reading to PE shows it.
#[test]
fn a_corner_that_nobody_knows_is_read_to_earth() {
    for which in 0..3 {
        let story = Story { known: false, ..Story::of(System::CornerGrounded, 480.0, Earthing::TnS, which) };
        whole(&story, false, &to("PE"));
    }
}

/// A solid link is let be only once somebody has shown that it is at earth.
#[test]
fn a_line_that_may_be_at_earth_is_opened() {
    let mut link = Story { known: false, ..Story::of(System::CornerGrounded, 480.0, Earthing::TnS, 1) };
    link.opens.retain(|pole| pole != "L2");
    let (_folder, device, field) = begun(&[PEOPLE, &link.plan()]);
    device.play(&field, "tap The job\ntap Points of isolation\nsee L2");
    let shown = as_text(&field.screen());
    let told = shown.lines().any(|line| line.contains("L2") && line.to_lowercase().contains("open"));
    assert!(told, "{shown}");
    let tried =
        device.try_play(&field, &format!("tap Next: Indicator and proving unit\n{}{ISOLATE}{PROVE}", link.circuits()));
    assert!(tried.is_err(), "proved dead with L2 closed");
}

/// Battery and motor supplies: a pole at earth, or neither. The lines are read to PE only where one of them is at earth.
#[test]
fn two_poles() {
    for volts in [48.0, 110.0, 220.0, 750.0] {
        for which in 0..3 {
            let story = Story::of(System::DcTwoWire, volts, Earthing::TnS, which);
            let earthed = story.plant.marked.is_some();
            let mut back = vec![("L+", "L-")];
            if earthed {
                back.extend([("L+", "PE"), ("L-", "PE")]);
            }
            whole(&story, earthed, &back);
        }
    }
    whole(&Story::of(System::DcTwoWire, 220.0, Earthing::It, 2), false, &[("L+", "L-")]);
}

#[test]
fn two_poles_and_a_mid_point() {
    let back = [("L+", "M"), ("L-", "M"), ("L+", "L-")];
    for volts in [220.0, 750.0] {
        whole(&Story::of(System::DcThreeWire, volts, Earthing::TnS, 0), true, &back);
    }
    whole(&Story::of(System::DcThreeWire, 220.0, Earthing::It, 0), false, &back);
}

/// Lines of a supply without earth are read to each other only: to PE they show anything.
#[test]
fn an_unearthed_supply() {
    whole(&Story::of(System::ThreeWire, 400.0, Earthing::It, 0), false, &BETWEEN);
    whole(&Story::of(System::ThreeWire, 400.0, Earthing::Unknown, 0), false, &BETWEEN);
    whole(&Story::of(System::SiteTransformer, 110.0, Earthing::It, 0), false, &[("L1", "L2")]);
}
