//! Nine questions of docs/questions.md, written from the page by a hand that has not seen how the app asks them: where each is asked and
//! nowhere else, what waits for it, what an answer that stops or stands does, how long an answer counts, and which words it needs.

pub mod bench;
mod counts;
mod labels;
mod own;
mod read;
mod released;
mod stages;
mod stands;
mod stops;
mod waits;
mod words;

use std::collections::BTreeSet;

use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::prove::{Earthing, RuleSet, System};

use crate::holes::by_hand::{IDA, TOMAS};
use bench::*;

/// The title of the step that the page names.
fn step(name: &str) -> &'static str {
    match name {
        "told-each-other" => "Told",
        "instrument-fit" => "Instruments",
        "right-board" | "labels" | "starts-itself" => "Isolate",
        "tried-to-start" | "interlocks" | "coupled" => "OpenUp",
        "charge-returned" | "temporary-earths" | "live-beside" | "current-transformers" | "released-by" => "Work",
        "left-inside" => "CoversBack",
        "polarity-back" => "Presence",
        "rcd" | "shorts-off" | "controls-back" | "counted-back" => "HandBack",
        "high-line" | "grounded-line" | "line-at-earth" | "earthed-pole" => "Points",
        other => unreachable!("{other} is not on the page"),
    }
}

/// What the page asks of such a job from its beginning to the hand-back, where nothing goes wrong, every source is blocked, and whatever
/// has secondaries has them left closed.
fn by_the_page(case: &Case) -> BTreeSet<&'static str> {
    let others = |kinds: &[SourceKind]| case.others.iter().any(|o| kinds.contains(o));
    let three = matches!(case.system, System::ThreePhaseNeutral | System::ThreeWire | System::CornerGrounded);
    let found = !case.others.is_empty();
    let all = [
        ("told-each-other", case.permit),
        ("instrument-fit", true),
        ("right-board", true),
        ("starts-itself", found),
        ("tried-to-start", found),
        ("interlocks", others(&[SourceKind::Generator, SourceKind::Ups, SourceKind::SecondFeeder])),
        ("charge-returned", case.stored),
        ("temporary-earths", found || case.stored),
        ("live-beside", case.cover),
        ("current-transformers", case.cover && three),
        ("released-by", case.permit),
        ("left-inside", case.cover),
        ("polarity-back", matches!(case.system, System::DcTwoWire | System::DcThreeWire)),
        ("rcd", true),
        ("controls-back", found),
        ("counted-back", !case.mates.is_empty()),
        ("earthed-pole", case.system == System::DcTwoWire),
        ("line-at-earth", case.system == System::ThreeWire && matches!(case.rules, Some(RuleSet::Us | RuleSet::Ca))),
    ];
    all.into_iter().filter(|(_, asked)| *asked).map(|(code, _)| code).collect()
}

/// The whole job, with what was asked in it.
fn asked_in(case: &Case) -> BTreeSet<(String, String)> {
    let bench = Bench::at(case.clone(), Stage::HandedBack);
    let asked = bench.asked.borrow();
    asked.iter().map(|(code, step)| (code.clone(), format!("{step:?}").split('(').next().unwrap().to_owned())).collect()
}

/// A job asks what the page says, on the step that the page says, and nothing else.
fn asks_as_the_page(case: &Case, what: &str) {
    let wanted: BTreeSet<(String, String)> =
        by_the_page(case).into_iter().map(|code| (code.to_owned(), step(code).to_owned())).collect();
    assert_eq!(asked_in(case), wanted, "{what}");
}

/// One phase, one person, no permit: five questions from the beginning to the hand-back, and none of the nine.
#[test]
fn a_house_socket_sees_few_of_them() {
    let asked = asked_in(&Case::house_socket());
    let codes: BTreeSet<&str> = asked.iter().map(|(code, _)| code.as_str()).collect();
    assert_eq!(codes, BTreeSet::from(["instrument-fit", "right-board", "live-beside", "left-inside", "rcd"]));
    asks_as_the_page(&Case::house_socket(), "a house socket");
    let no_cover = Case { cover: false, ..Case::house_socket() };
    assert_eq!(asked_in(&no_cover).len(), 3);
    asks_as_the_page(&no_cover, "a house socket without a cover");
}

/// Each thing that a question is asked of, by itself.
#[test]
fn each_is_asked_where_the_page_says() {
    let house = Case::house_socket;
    let three = || Case { system: System::ThreePhaseNeutral, ..house() };
    asks_as_the_page(&Case { permit: true, ..house() }, "a permit");
    asks_as_the_page(&Case { stored: true, ..house() }, "stored energy");
    asks_as_the_page(&Case { mates: vec![(TOMAS, Duty::Working)], ..house() }, "two people");
    asks_as_the_page(&Case { mates: vec![(IDA, Duty::Learning)], ..house() }, "somebody who learns");
    asks_as_the_page(&three(), "three lines");
    asks_as_the_page(&Case { cover: false, ..three() }, "three lines, no cover off");
    asks_as_the_page(&Case { system: System::SplitPhase, volts: 120, ..house() }, "two lines and a neutral");
    asks_as_the_page(&Case { permit: true, stored: true, ..Case::board() }, "all of it");
}

/// Where two supplies can meet: a generator, a UPS, a second feeder; no PV, battery or control supply.
#[test]
fn interlocks_are_asked_where_two_supplies_can_meet() {
    for kind in [SourceKind::Generator, SourceKind::Ups, SourceKind::SecondFeeder, SourceKind::Pv, SourceKind::Battery]
    {
        let case = Case { others: vec![kind], ..Case::house_socket() };
        let asked = Bench::at(case, Stage::Isolated);
        let meets = !matches!(kind, SourceKind::Pv | SourceKind::Battery);
        assert_eq!(asked.is_asked("interlocks"), meets, "{kind:?}");
    }
    asks_as_the_page(&Case { others: vec![SourceKind::Ups], ..Case::house_socket() }, "a UPS");
}

/// Where the neutral can come off earth and is opened by a point, nothing of it is asked.
#[test]
fn a_neutral_that_is_opened_is_not_asked_about() {
    for earthing in Earthing::ALL.into_iter().filter(|e| *e != Earthing::TnC) {
        let what = format!("{earthing:?}");
        asks_as_the_page(&Case { earthing, neutral: true, ..Case::house_socket() }, &what);
        // There is none to be closed.
        let case = Case { system: System::ThreeWire, volts: 400, earthing, ..Case::house_socket() };
        asks_as_the_page(&case, &what);
    }
}

/// Whether a line is at earth is asked under the rules of two countries, of three lines without a neutral.
#[test]
fn a_line_at_earth_is_asked_for_in_two_countries() {
    for rules in [None, Some(RuleSet::Us), Some(RuleSet::Ca), Some(RuleSet::Uk), Some(RuleSet::De), Some(RuleSet::Own)]
    {
        let of = |system, volts| Case { rules, system, volts, ..Case::house_socket() };
        asks_as_the_page(&of(System::ThreeWire, 480), &format!("{rules:?}, three lines"));
        asks_as_the_page(&of(System::ThreePhaseNeutral, 277), &format!("{rules:?}, three lines with a neutral"));
        asks_as_the_page(&of(System::SplitPhase, 120), &format!("{rules:?}, split phase"));
    }
}

/// Polarity is asked of direct voltage, all of it.
#[test]
fn polarity_is_asked_of_direct_voltage() {
    let of = |system| Case { system, volts: 220, earthing: Earthing::TnS, ..Case::house_socket() };
    asks_as_the_page(&of(System::DcTwoWire), "two poles");
    asks_as_the_page(&of(System::DcThreeWire), "two poles and a mid-point");
}

/// What is asked once something came to be is not asked before.
#[test]
fn nothing_is_asked_before_its_time() {
    let bench = Bench::at(Case::board(), Stage::Isolated);
    for code in ["current-transformers", "live-beside", "coupled", "shorts-off"] {
        assert!(!bench.is_asked(code), "{code}");
    }
    bench.on_to(Stage::Uncovered);
    assert!(bench.is_asked("current-transformers"));
    assert!(!bench.is_asked("coupled"));
    bench.keeps(bench::met());
    assert!(!bench.is_asked("coupled"), "the cause is not noted");
    bench.meets();
    assert!(!bench.is_asked("coupled"), "the cause of one is not noted");
    bench.notes_causes();
    assert_eq!(bench.asked_on("coupled").map(|s| format!("{s:?}")).as_deref(), Some("OpenUp"));
}

/// Once the work is over, nothing of an earlier step is asked any more.
#[test]
fn after_the_work_only_what_is_of_restoring_is_asked() {
    let bench = Bench::stopping(Case::board(), Stage::AtWork, &[], &[]);
    bench.on_to(Stage::Finished);
    let restoring = ["left-inside", "polarity-back", "rcd", "shorts-off", "controls-back", "counted-back"];
    for (_, code, _) in bench.asks() {
        assert!(restoring.contains(&code.as_str()), "{code}");
    }
}

/// Shorts are asked back where somebody put some on.
#[test]
fn shorts_are_asked_back_where_some_were_put_on() {
    for (answer, asked) in [("none", false), ("left-closed", false), ("shorted", true)] {
        let case = Case { system: System::ThreePhaseNeutral, ..Case::house_socket() };
        let bench = Bench::stopping(case, Stage::Back, &[], &[("current-transformers", answer)]);
        assert_eq!(bench.is_asked("shorts-off"), asked, "{answer}");
        if asked {
            assert_eq!(format!("{:?}", bench.asked_on("shorts-off").unwrap()), "HandBack");
        }
        bench.on_to(Stage::HandedBack);
    }
}
