//! Words that the page asks for: an answer without them is none, wherever it comes from.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::prove::{Earthing, RuleSet, System};

use super::bench::*;
use crate::holes::by_hand::{JUNK, MARA, TOMAS};

/// A question, the answer, a job that asks it, and how far that is.
fn needed() -> Vec<(&'static str, &'static str, Case, Stage)> {
    let two = || Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() };
    let three = || Case { system: System::ThreePhaseNeutral, ..two() };
    let direct = || Case { system: System::DcTwoWire, volts: 220, earthing: Earthing::TnS, ..two() };
    vec![
        ("interlocks", "in-order", Case { others: vec![SourceKind::Generator], ..two() }, Stage::Isolated),
        ("coupled", "other-cause", two(), Stage::Uncovered),
        ("coupled", "gone-under-load", two(), Stage::Uncovered),
        ("charge-returned", "gone", Case { stored: true, ..two() }, Stage::Proved),
        ("charge-returned", "shorted", Case { stored: true, ..two() }, Stage::Proved),
        ("current-transformers", "shorted", three(), Stage::Proved),
        ("polarity-back", "as-marked", direct(), Stage::Back),
        ("shorts-off", "off", three(), Stage::Back),
        ("shorts-off", "left-on", three(), Stage::Back),
        ("counted-back", "missing", two(), Stage::Back),
        (
            "line-at-earth",
            "none",
            Case { system: System::ThreeWire, volts: 480, rules: Some(RuleSet::Us), ..two() },
            Stage::Opened,
        ),
    ]
}

fn bench(question: &'static str, case: Case, stage: Stage) -> Bench {
    let shorted = [("current-transformers", "shorted")];
    let says: &[_] = if question == "shorts-off" { &shorted } else { &[] };
    let bench = Bench::stopping(case, stage, &[question], says);
    if question == "coupled" {
        bench.meets();
    }
    if stage == Stage::Opened {
        bench.looks();
    }
    bench
}

#[test]
fn words_that_are_needed_are_asked_for() {
    for (question, answer, case, stage) in needed() {
        let bench = bench(question, case, stage);
        assert!(bench.is_asked(question), "{question}");
        for words in JUNK.into_iter().chain([""]) {
            assert!(bench.tries(answered(question, answer, words)).is_err(), "{question} {answer} with {words:?}");
        }
        assert!(bench.is_asked(question));
        bench.says_on(question, answer);
        assert!(!bench.is_asked(question), "{question} {answer}");
    }
}

/// The same from a phone that asks no gate.
#[test]
fn an_answer_without_words_is_none_wherever_it_comes_from() {
    for (n, (question, answer, case, stage)) in needed().into_iter().enumerate() {
        for words in ["", "..."] {
            let bench = bench(question, case.clone(), stage);
            bench.ungated(100 + n as u8, TOMAS, answered(question, answer, words));
            assert!(bench.is_asked(question), "{question} {answer} with {words:?}");
        }
        // The phone is heard: with words it is an answer.
        let bench = bench(question, case, stage);
        bench.ungated(200 + n as u8, TOMAS, answered(question, answer, WORDS));
        assert!(!bench.is_asked(question), "{question} {answer}");
    }
}

/// Nor does it lift what was stopped.
#[test]
fn an_answer_without_words_lifts_nothing() {
    for (question, stops, goes, case) in [
        ("interlocks", "bridged", "in-order", Case { others: vec![SourceKind::Generator], ..Case::house_socket() }),
        ("charge-returned", "returned", "gone", Case { stored: true, ..Case::house_socket() }),
    ] {
        let bench = Bench::at(case, Stage::Proved);
        bench.keeps(answered(question, stops, ""));
        bench.ungated(90, MARA, answered(question, goes, "-"));
        let _ = bench.tests();
        assert!(!bench.proved(), "{question}");
    }
}

/// The others need none.
#[test]
fn no_words_are_asked_for_where_the_page_asks_for_none() {
    let two = || Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() };
    let three = || Case { system: System::ThreePhaseNeutral, ..two() };
    for (question, answer, case, stage) in [
        ("interlocks", "none-fitted", Case { others: vec![SourceKind::Ups], ..two() }, Stage::Isolated),
        ("current-transformers", "none", three(), Stage::Proved),
        ("current-transformers", "left-closed", three(), Stage::Proved),
        ("released-by", "tester", Case { permit: true, ..two() }, Stage::Proved),
        ("counted-back", "all", two(), Stage::Back),
    ] {
        let bench = bench(question, case, stage);
        bench.answers(Step::OpenUp);
        bench.keeps(answered(question, answer, ""));
        assert!(!bench.is_asked(question), "{question} {answer}");
    }
}
