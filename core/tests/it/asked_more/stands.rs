//! Answers that stand: nothing waits for more, and whoever reads the job sees that not all was shown.

use stillbar_core::journal::fact::Duty;
use stillbar_core::prove::{RuleSet, System};
use stillbar_core::text;

use super::bench::*;
use crate::holes::by_hand::TOMAS;

const SAID: &str = "Said by Joel at the desk";

/// It is on the banner and on page one of the record, with what was said.
fn is_told(bench: &Bench, question: &str, answer: &str) {
    let button = text::answer_to(question, answer);
    for (where_, told) in [("banner", bench.banner()), ("record", bench.page_one())] {
        assert!(told.contains(&button) && told.contains(SAID), "{question} {answer} is not on the {where_}: {told}");
    }
}

#[test]
fn a_voltage_gone_under_load_stands_on_the_banner() {
    let bench = Bench::stopping(Case::house_socket(), Stage::Uncovered, &["coupled"], &[]);
    bench.meets();
    bench.keeps(answered("coupled", "gone-under-load", SAID));
    assert!(!bench.is_asked("coupled"));
    bench.on_to(Stage::Proved);
    assert!(bench.proved(), "{}", bench.banner());
    is_told(&bench, "coupled", "gone-under-load");
    bench.on_to(Stage::HandedBack);
    is_told(&bench, "coupled", "gone-under-load");
}

#[test]
fn shorts_that_are_left_on_stand_on_the_banner() {
    let case = Case { system: System::ThreePhaseNeutral, ..Case::house_socket() };
    let bench = Bench::stopping(case, Stage::Back, &["shorts-off"], &[("current-transformers", "shorted")]);
    bench.keeps(answered("shorts-off", "left-on", SAID));
    is_told(&bench, "shorts-off", "left-on");
    bench.on_to(Stage::HandedBack);
    is_told(&bench, "shorts-off", "left-on");
}

#[test]
fn what_is_missing_stands_on_the_banner() {
    let case = Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() };
    let bench = Bench::stopping(case, Stage::Back, &["counted-back"], &[]);
    bench.keeps(answered("counted-back", "missing", SAID));
    is_told(&bench, "counted-back", "missing");
    bench.on_to(Stage::HandedBack);
    is_told(&bench, "counted-back", "missing");
}

#[test]
fn a_line_at_earth_that_nobody_knows_stands_on_the_banner() {
    let case = Case { system: System::ThreeWire, volts: 480, rules: Some(RuleSet::Us), ..Case::house_socket() };
    let bench = Bench::new(case, &[], &[]);
    bench.keeps(answered("line-at-earth", "not-known", SAID));
    is_told(&bench, "line-at-earth", "not-known");
    bench.on_to(Stage::Proved);
    assert!(bench.proved(), "{}", bench.banner());
    is_told(&bench, "line-at-earth", "not-known");
}
