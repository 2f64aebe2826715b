//! Answers that stop: kept wherever the job is, the end of every proof, and lifted only by somebody who knew.

use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::prove::{Earthing, RuleSet, System};

use super::bench::*;
use crate::holes::by_hand::{MARA, TOMAS};

/// A question with an answer that stops and one that goes, and a job that calls for it.
struct Stop {
    question: &'static str,
    stops: &'static str,
    goes: &'static str,
    case: Case,
    /// Whether a voltage has to be met first.
    met: bool,
}

fn all() -> Vec<Stop> {
    let two = |case: Case| Case { mates: vec![(TOMAS, Duty::Working)], ..case };
    let house = || two(Case::house_socket());
    let of = |question, stops, goes, case| Stop { question, stops, goes, case, met: question == "coupled" };
    vec![
        of("interlocks", "bridged", "in-order", Case { others: vec![SourceKind::Generator], ..house() }),
        of("coupled", "stays-under-load", "other-cause", house()),
        of("charge-returned", "returned", "gone", Case { stored: true, ..house() }),
        of("current-transformers", "open", "none", Case { system: System::ThreePhaseNeutral, ..house() }),
    ]
}

impl Stop {
    fn bench(&self, stage: Stage, held: &[&'static str]) -> Bench {
        let bench = Bench::stopping(self.case.clone(), Stage::Uncovered, held, &[]);
        if self.met && stage > Stage::Uncovered {
            bench.meets();
        }
        bench.on_to(stage);
        bench
    }

    fn name(&self) -> String {
        format!("{} {}", self.question, self.stops)
    }
}

/// Whoever's turn it is: at every stage up to the work it is kept, whether it is asked at this moment or not.
#[test]
fn an_answer_that_stops_is_never_refused() {
    for stop in all() {
        for stage in [Stage::Opened, Stage::Planned, Stage::Isolated, Stage::Uncovered, Stage::Proved, Stage::AtWork] {
            let bench =
                if stage < Stage::Uncovered { Bench::at(stop.case.clone(), stage) } else { stop.bench(stage, &[]) };
            for who in [MARA, TOMAS] {
                let kept = bench.tries_as(who, answered(stop.question, stop.stops, ""));
                assert!(kept.is_ok(), "{} at {stage:?} by {who}: {kept:?}", stop.name());
            }
            assert!(!bench.proved());
        }
    }
}

/// Also where it comes twice, and once a thing is called a mistake that nothing else says.
#[test]
fn it_ends_every_proof_until_somebody_answers_otherwise() {
    for stop in all() {
        let bench = stop.bench(Stage::Proved, &[]);
        assert!(bench.proved(), "{}: {}", stop.name(), bench.banner());
        bench.keeps(answered(stop.question, stop.stops, ""));
        assert!(!bench.proved() && bench.banner().contains("reat as live"), "{}: {}", stop.name(), bench.banner());
        // A whole test does not help, nor does the work begin.
        let _ = bench.tests();
        assert!(!bench.proved(), "{}: a test without another answer", stop.name());
        assert!(bench.begins_work().is_err(), "{}", stop.name());
        bench.says_on(stop.question, stop.goes);
        assert!(!bench.proved(), "{}: every proof before it is over", stop.name());
        bench.tests().unwrap_or_else(|why| panic!("{}: {why}", stop.name()));
        assert!(bench.proved(), "{}: {}", stop.name(), bench.banner());
    }
}

/// What lapses an answer that goes does not lapse one that stops.
#[test]
fn whatever_changes_meanwhile_it_stays() {
    let changes: [Change; 4] = [
        ("another cover", Bench::takes_cover_off),
        ("another point opened", Bench::opens_another),
        ("another voltage", Bench::meets),
        ("another scope", |bench| {
            bench.changes_scope();
            // What is found again would ask for its point again, which is there.
            if bench.case.others.is_empty() {
                bench.looks();
            }
        }),
    ];
    for stop in all() {
        for (what, change) in changes {
            let bench = stop.bench(Stage::Proved, &[]);
            bench.keeps(answered(stop.question, stop.stops, ""));
            // That the gate lets nothing happen is as good.
            let _ = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| change(&bench)));
            let _ = bench.tests();
            assert!(!bench.proved(), "{} and then {what}: {}", stop.name(), bench.banner());
        }
    }
}

/// Answered on another phone that has not heard of anything since: the proof here ends as soon as this one hears of it.
#[test]
fn it_ends_the_proof_of_whoever_hears_of_it() {
    for (n, stop) in all().into_iter().enumerate() {
        let bench = stop.bench(Stage::Uncovered, &[]);
        if stop.met {
            bench.meets();
        }
        let other = bench.beside(20 + n as u64);
        let tomas = other.person(TOMAS);
        bench.on_to(Stage::Proved);
        assert!(bench.proved());
        other.field().keep(tomas, Some(bench.phone.job()), answered(stop.question, stop.stops, "")).unwrap();
        bench.phone.hear(&other);
        assert!(!bench.proved(), "{}: {}", stop.name(), bench.banner());
        other.hear(&bench.phone);
        assert!(!other.proved(), "{}", stop.name());
    }
}

/// Two answer at once, without hearing of each other, and one stops: it is stopped, whichever is heard first. Whoever knew lifts it.
#[test]
fn only_who_knew_of_it_lifts_it() {
    for (n, stop) in all().into_iter().enumerate() {
        for stops_here in [false, true] {
            let of_work = matches!(stop.question, "charge-returned" | "current-transformers");
            let bench = stop.bench(if of_work { Stage::Proved } else { Stage::Uncovered }, &[stop.question]);
            if stop.met {
                bench.meets();
            }
            let other = bench.beside(40 + n as u64);
            let (here, there) = if stops_here { (stop.stops, stop.goes) } else { (stop.goes, stop.stops) };
            // The clock of who lifts without knowing is later: it does not matter.
            other.device.pass(120_000);
            let kept = [
                bench.says(stop.question, here),
                other
                    .field()
                    .keep(other.person(TOMAS), Some(bench.phone.job()), answered(stop.question, there, WORDS))
                    .map_err(|why| why.to_string()),
            ];
            for (answer, kept) in [here, there].into_iter().zip(kept) {
                assert!(kept.is_ok(), "{} {answer}: {kept:?}", stop.question);
            }
            bench.phone.hear(&other);
            let _ = bench.tests();
            assert!(!bench.proved(), "{}, stopped here: {stops_here}: {}", stop.name(), bench.banner());
            other.hear(&bench.phone);
            assert!(!other.proved());
            bench.says_on(stop.question, stop.goes);
            bench.tests().unwrap_or_else(|why| panic!("{}: {why}", stop.name()));
            assert!(bench.proved(), "{}: {}", stop.name(), bench.banner());
        }
    }
}

/// Poles that came back the wrong way round: nothing is handed back until somebody who knows says that they are as they are marked.
#[test]
fn reversed_poles_keep_the_hand_back() {
    let case = Case {
        system: System::DcTwoWire,
        volts: 220,
        earthing: Earthing::TnS,
        mates: vec![(TOMAS, Duty::Working)],
        ..Case::house_socket()
    };
    let bench = Bench::stopping(case, Stage::Back, &["polarity-back"], &[]);
    let other = bench.beside(60);
    bench.says_on("polarity-back", "as-marked");
    bench.answers(stillbar_core::job::steps::Step::HandBack);
    let reversed = answered("polarity-back", "reversed", "");
    other.field().keep(other.person(TOMAS), Some(bench.phone.job()), reversed.clone()).unwrap();
    bench.phone.hear(&other);
    assert!(bench.hands_back().is_err(), "handed back although the other phone says reversed");
    bench.says_on("polarity-back", "as-marked");
    bench.keeps(reversed);
    assert!(bench.hands_back().is_err());
    assert!(bench.banner().contains("reat as live"), "{}", bench.banner());
    bench.says_on("polarity-back", "as-marked");
    bench.hands_back().unwrap();
}

/// One of three lines is at earth: only a correction of the conductors, and the word of somebody that it was made, goes on.
#[test]
fn a_line_at_earth_stops_until_the_conductors_are_corrected() {
    for rules in [RuleSet::Us, RuleSet::Ca] {
        let case = Case {
            system: System::ThreeWire,
            volts: 480,
            earthing: Earthing::TnS,
            rules: Some(rules),
            mates: vec![(TOMAS, Duty::Working)],
            ..Case::house_socket()
        };
        for stage in [Stage::Opened, Stage::Planned, Stage::Isolated, Stage::Uncovered, Stage::Proved, Stage::AtWork] {
            let bench = Bench::at(case.clone(), stage);
            let kept = bench.tries(answered("line-at-earth", "one-is", ""));
            assert!(kept.is_ok(), "{stage:?}: {kept:?}");
            assert!(!bench.proved());
        }
        let bench = Bench::at(case, Stage::Proved);
        bench.keeps(answered("line-at-earth", "one-is", ""));
        for lifts in ["none", "not-known", "corrected"] {
            let _ = bench.says("line-at-earth", lifts);
            let _ = bench.tests();
            assert!(!bench.proved(), "{lifts} lifts it without a correction");
        }
        bench.keeps(corrected(System::CornerGrounded, 480));
        let _ = bench.tests();
        assert!(!bench.proved(), "nobody said corrected");
        bench.says_on("line-at-earth", "corrected");
        bench.says_on("grounded-line", "l1");
        bench.tests().unwrap();
        assert!(bench.proved(), "{}", bench.banner());
    }
}

/// A correction to something else is none.
#[test]
fn a_line_at_earth_is_not_corrected_to_something_else() {
    let case = Case { system: System::ThreeWire, volts: 480, rules: Some(RuleSet::Us), ..Case::house_socket() };
    let bench = Bench::at(case, Stage::Proved);
    bench.keeps(answered("line-at-earth", "one-is", ""));
    bench.keeps(corrected(System::ThreeWire, 400));
    let _ = bench.says("line-at-earth", "corrected");
    let _ = bench.tests();
    assert!(!bench.proved(), "{}", bench.banner());
}
