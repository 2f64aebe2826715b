//! Who lets the work start, and what a voltage that was coupled asks for.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::Duty;

use super::bench::*;
use crate::holes::by_hand::{IDA, JOEL, MARA, TOMAS};

fn bench() -> Bench {
    let mates = vec![(TOMAS, Duty::Working), (IDA, Duty::Learning)];
    let case = Case { permit: true, mates, ..Case::house_socket() };
    let bench = Bench::stopping(case, Stage::Proved, &["released-by"], &[]);
    bench.answers(Step::Work);
    bench
}

fn signed(bench: &Bench) -> Fact {
    Fact::RunSigned { run: bench.run.borrow().unwrap(), mark: "S".into() }
}

/// "Another" is an answer once somebody who did not begin the test signed it, who takes part and does not learn.
#[test]
fn another_lets_the_work_start_once_they_signed() {
    let bench = bench();
    for who in [None, Some(MARA), Some(IDA), Some(JOEL)] {
        if let Some(who) = who {
            let _ = bench.tries_as(who, signed(&bench));
        }
        let said = bench.tries(answered("released-by", "another", ""));
        assert!(said.is_err(), "another, signed by {who:?}");
        assert!(bench.is_asked("released-by") && bench.begins_work().is_err(), "signed by {who:?}");
    }
    bench.tries_as(TOMAS, signed(&bench)).unwrap();
    bench.keeps(answered("released-by", "another", ""));
    assert!(!bench.is_asked("released-by"));
    bench.begins_work().unwrap();
}

/// Nor does it come from another phone without that: what would not count by what is recorded here does not count.
#[test]
fn another_from_elsewhere_needs_the_signature_too() {
    for (n, who) in [None, Some(MARA), Some(IDA), Some(JOEL)].into_iter().enumerate() {
        let bench = bench();
        if let Some(who) = who {
            bench.ungated(70 + n as u8, who, signed(&bench));
        }
        bench.ungated(80 + n as u8, TOMAS, answered("released-by", "another", ""));
        assert!(bench.begins_work().is_err(), "work began, signed by {who:?}");
    }
}

/// A signature under the test before says nothing of this one.
#[test]
fn a_signature_is_of_one_test() {
    let bench = bench();
    bench.tries_as(TOMAS, signed(&bench)).unwrap();
    bench.keeps(answered("released-by", "another", ""));
    bench.tests().unwrap();
    assert!(bench.proved() && bench.is_asked("released-by"));
    assert!(bench.tries(answered("released-by", "another", "")).is_err());
    assert!(bench.begins_work().is_err());
    bench.tries_as(TOMAS, signed(&bench)).unwrap();
    bench.keeps(answered("released-by", "another", ""));
    bench.begins_work().unwrap();
}

/// The signature of whoever has left the job meanwhile was given while they were on it, and of whoever was never on it is none.
#[test]
fn the_tester_does_not_sign_for_another() {
    let bench = bench();
    // Tomas tests, and signs his own.
    let tested = bench.tests_as(TOMAS);
    assert!(tested.is_ok(), "{tested:?}");
    let _ = bench.tries_as(TOMAS, signed(&bench));
    assert!(bench.tries(answered("released-by", "another", "")).is_err());
    bench.tries_as(MARA, signed(&bench)).unwrap();
    bench.keeps(answered("released-by", "another", ""));
    bench.begins_work().unwrap();
}

/// A voltage that went under load was coupled: temporary earths are asked for, before the work. Another cause asks for none.
#[test]
fn a_voltage_that_was_coupled_asks_for_temporary_earths() {
    for (answer, asks) in [("gone-under-load", true), ("other-cause", false)] {
        let bench = Bench::stopping(Case::house_socket(), Stage::Uncovered, &["temporary-earths"], &[]);
        bench.meets();
        bench.says_on("coupled", answer);
        bench.on_to(Stage::Proved);
        bench.answers(Step::Work);
        assert_eq!(bench.is_asked("temporary-earths"), asks, "{answer}");
        assert_eq!(bench.begins_work().is_err(), asks, "{answer}");
        if asks {
            assert!(bench.says("temporary-earths", "fitted").is_err(), "none is listed");
            bench.keeps(Fact::EarthFitted { label: "E1".into(), at: "Busbar".into() });
            bench.says_on("temporary-earths", "fitted");
            bench.begins_work().unwrap();
        }
    }
}
