//! "Counts until": what ends an answer, and what does not.

use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::{Earthing, RuleSet, System};

use super::bench::*;
use crate::holes::by_hand::TOMAS;

const COVER: Change = ("another cover comes off", Bench::takes_cover_off);
const TEST: Change = ("a new test", |bench| {
    bench.begins().unwrap();
});
const SCOPE: Change = ("the scope changes", |bench| {
    bench.changes_scope();
    if bench.case.others.is_empty() {
        bench.looks();
    }
});
const POINT: Change = ("a point is opened", Bench::opens_another);
const VOLTAGE: Change = ("another voltage is met", Bench::meets);
const EARTH: Change = ("an earth is fitted", |bench| {
    bench.keeps(Fact::EarthFitted { label: "E1".into(), at: "Busbar".into() });
});
const ALL: [Change; 6] = [COVER, TEST, SCOPE, POINT, VOLTAGE, EARTH];

/// The question is answered, and asked again after just these changes.
fn counts_until(case: &Case, question: &'static str, until: &[Change]) {
    for (what, change) in ALL {
        let bench = Bench::at(case.clone(), Stage::Uncovered);
        if question == "coupled" {
            bench.meets();
        }
        bench.on_to(Stage::Proved);
        bench.answers(stillbar_core::job::steps::Step::Work);
        assert!(bench.asked.borrow().iter().any(|(code, _)| code == question), "{question} was never asked");
        assert!(!bench.is_asked(question), "{question} is answered");
        change(&bench);
        let lapses = until.iter().any(|(name, _)| *name == what);
        assert_eq!(bench.is_asked(question), lapses, "{question}, {what}");
    }
}

#[test]
fn interlocks_count_until_a_point_is_opened() {
    let case = Case { others: vec![SourceKind::Generator], ..Case::house_socket() };
    counts_until(&case, "interlocks", &[POINT]);
}

#[test]
fn a_voltage_under_load_counts_until_another_is_met() {
    counts_until(&Case::house_socket(), "coupled", &[VOLTAGE]);
}

#[test]
fn charge_counts_until_a_new_test_or_scope() {
    counts_until(&Case { stored: true, ..Case::house_socket() }, "charge-returned", &[TEST, SCOPE]);
}

#[test]
fn current_transformers_count_until_another_cover_or_scope() {
    let case = Case { system: System::ThreePhaseNeutral, ..Case::house_socket() };
    counts_until(&case, "current-transformers", &[COVER, SCOPE]);
}

#[test]
fn a_release_counts_until_a_new_test_or_scope() {
    counts_until(&Case { permit: true, ..Case::house_socket() }, "released-by", &[TEST, SCOPE]);
}

#[test]
fn a_line_at_earth_counts_as_long_as_the_conductors_are_these() {
    let case = Case { system: System::ThreeWire, volts: 480, rules: Some(RuleSet::Us), ..Case::house_socket() };
    counts_until(&case, "line-at-earth", &[]);
}

/// Of restoring: each counts until a point is closed or the scope changes.
#[test]
fn what_is_asked_at_the_hand_back_counts_until_a_point_is_closed() {
    let others = vec![SourceKind::Generator];
    let two = || Case {
        mates: vec![(TOMAS, Duty::Working)],
        others: others.clone(),
        others_on: true,
        ..Case::house_socket()
    };
    let cases = [
        ("polarity-back", Case { system: System::DcTwoWire, volts: 220, earthing: Earthing::TnS, ..two() }),
        ("shorts-off", Case { system: System::ThreePhaseNeutral, ..two() }),
        ("counted-back", two()),
    ];
    let says = [("current-transformers", "shorted")];
    for (question, case) in cases {
        for what in ["closed", "scope", "rotation"] {
            let bench = Bench::stopping(case.clone(), Stage::Back, &[], &says);
            bench.answers(stillbar_core::job::steps::Step::HandBack);
            assert!(bench.asked.borrow().iter().any(|(code, _)| code == question), "{question} was never asked");
            assert!(!bench.is_asked(question), "{question} is answered");
            let done = match what {
                "closed" => closes_another(&bench),
                "scope" => {
                    let (scope, why) = ("Breaker 5 too".into(), "Agreed with the client".into());
                    bench.tries(Fact::ScopeChanged { scope, why })
                }
                // A reading more takes nothing back.
                _ => bench.tries(Fact::Told {
                    who: "Joel Aras".into(),
                    how: "In person".into(),
                    about: stillbar_core::journal::fact::About::Energising,
                }),
            };
            // Where it cannot happen any more there is nothing to lapse for.
            if done.is_err() {
                assert_eq!(what, "scope", "{done:?}");
                continue;
            }
            assert_eq!(bench.is_asked(question), what != "rotation", "{question}, {what}: {done:?}");
        }
    }
}

/// The other supply goes on as well, beside the first.
fn closes_another(bench: &Bench) -> Result<EntryId, String> {
    let point = bench.points()[1];
    let beside = Some("The set runs in step with the mains, by its own relay".into());
    bench.tries(Fact::PointClosed { point, beside })
}
