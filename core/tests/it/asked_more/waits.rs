//! "Before what": what does not go on before the question is answered.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::prove::{Earthing, RuleSet, System};

use super::bench::*;
use crate::holes::by_hand::TOMAS;

/// The work waits for each of these.
#[test]
fn the_work_waits_for_its_questions() {
    let house = Case::house_socket;
    for (question, answer, case) in [
        ("charge-returned", "gone", Case { stored: true, ..house() }),
        ("charge-returned", "shorted", Case { stored: true, ..house() }),
        ("current-transformers", "none", Case { system: System::ThreePhaseNeutral, ..house() }),
        ("current-transformers", "left-closed", Case { system: System::ThreePhaseNeutral, ..house() }),
        ("current-transformers", "shorted", Case { system: System::ThreePhaseNeutral, ..house() }),
        ("released-by", "tester", Case { permit: true, ..house() }),
    ] {
        let bench = Bench::stopping(case, Stage::Proved, &[question], &[]);
        bench.answers(Step::Work);
        assert!(bench.proved() && bench.is_asked(question), "{question}");
        assert!(bench.begins_work().is_err(), "work began, and {question} is not answered");
        // Nobody skips it: all but two of the page are firm.
        bench.skips("work");
        assert!(bench.begins_work().is_err(), "work began, and {question} is not answered");
        bench.says_on(question, answer);
        bench.begins_work().unwrap_or_else(|why| panic!("{question} {answer}: {why}"));
    }
}

/// The hand-back waits for each of these; what may be skipped is skipped by a named person with a reason.
#[test]
fn the_hand_back_waits_for_its_questions() {
    let two = || Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() };
    for (question, answer, case) in [
        (
            "polarity-back",
            "as-marked",
            Case { system: System::DcTwoWire, volts: 220, earthing: Earthing::TnS, ..two() },
        ),
        ("shorts-off", "off", Case { system: System::ThreePhaseNeutral, ..two() }),
        ("shorts-off", "left-on", Case { system: System::ThreePhaseNeutral, ..two() }),
        ("counted-back", "all", two()),
        ("counted-back", "missing", two()),
    ] {
        let says = [("current-transformers", "shorted")];
        let bench = Bench::stopping(case, Stage::Back, &[question], &says);
        // Readings of the presence and what is asked of them come before the rest.
        bench.answers(if question == "polarity-back" { Step::Presence } else { Step::HandBack });
        assert!(bench.is_asked(question), "{question}");
        assert!(bench.hands_back().is_err(), "handed back, and {question} is not answered");
        if question != "counted-back" {
            for step in ["presence", "hand-back"] {
                bench.skips(step);
            }
            assert!(bench.hands_back().is_err(), "{question} was skipped");
        }
        bench.says_on(question, answer);
        bench.answers(Step::HandBack);
        bench.hands_back().unwrap_or_else(|why| panic!("{question} {answer}: {why}"));
    }
}

#[test]
fn what_is_counted_back_may_be_skipped_with_a_reason() {
    let case = Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() };
    let bench = Bench::stopping(case, Stage::Back, &["counted-back"], &[]);
    bench.answers(Step::HandBack);
    assert!(bench.hands_back().is_err());
    let junk = Fact::Deviated { step: "hand-back".into(), why: "..".into() };
    assert!(bench.tries(junk).is_err() || bench.hands_back().is_err());
    let why = "Counted tomorrow by Joel".to_owned();
    bench.keeps(Fact::Deviated { step: "hand-back".into(), why: why.clone() });
    bench.hands_back().unwrap();
    assert!(bench.page_one().contains(&why), "{}", bench.page_one());
}

/// On *Open up*: the step lacks an answer, and nobody skips it.
#[test]
fn opening_up_lacks_its_answers() {
    let house = Case::house_socket;
    for (question, answer, case) in [
        ("interlocks", "none-fitted", Case { others: vec![SourceKind::Generator], ..house() }),
        ("interlocks", "in-order", Case { others: vec![SourceKind::SecondFeeder], ..house() }),
        ("coupled", "other-cause", house()),
        ("coupled", "gone-under-load", house()),
    ] {
        let bench = Bench::stopping(case, Stage::Uncovered, &[question], &[]);
        if question == "coupled" {
            bench.meets();
        }
        let lacks = |bench: &Bench| format!("{:?}", bench.folded().blockers(Step::OpenUp));
        assert!(bench.is_asked(question) && lacks(&bench).contains(question), "{question}: {}", lacks(&bench));
        bench.skips("open-up");
        let _ = bench.tests();
        assert!(!bench.proved(), "{question} was skipped");
        bench.says_on(question, answer);
        assert!(!lacks(&bench).contains(question), "{question}: {}", lacks(&bench));
        bench.tests().unwrap_or_else(|why| panic!("{question} {answer}: {why}"));
        assert!(bench.proved(), "{question} {answer}: {}", bench.banner());
    }
}

/// Before anything is opened it is asked whether a line is at earth.
#[test]
fn nothing_is_opened_before_a_line_at_earth_is_asked_for() {
    let case = Case { system: System::ThreeWire, volts: 480, rules: Some(RuleSet::Ca), ..Case::house_socket() };
    let bench = Bench::stopping(case, Stage::Opened, &["line-at-earth"], &[]);
    // The plan waits for it on the way.
    let _ = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| bench.on_to(Stage::Planned)));
    assert!(bench.is_asked("line-at-earth"));
    bench.skips("points");
    let point = bench.points()[0];
    let _ = bench.tries(answered_of("right-board", "seen-live", WORDS, Some(point)));
    let said = bench.opens(point);
    assert!(said.is_err(), "opened before anybody read the lines to PE");
}
