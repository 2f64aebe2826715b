//! What is read with an instrument for an answer: a figure with its unit, nothing rounded, and more than counts as nothing stops.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{Duty, Limit};
use stillbar_core::prove::{Measured, parse_amps};

use super::bench::*;
use crate::desk::*;
use crate::holes::by_hand::TOMAS;

fn house() -> Case {
    Case { mates: vec![(TOMAS, Duty::Working)], ..Case::house_socket() }
}

/// The question, the answer that is read, the one that it is with more, a job that asks for it, what is nothing, and what is more.
type Read = (&'static str, &'static str, &'static str, Case, Measured, Vec<Measured>);

/// Each answer that is read with an instrument, as the page has it.
fn read() -> Vec<Read> {
    use Measured::{Milliamps, Millivolts, NoIndication};
    let stored = || Case { stored: true, ..house() };
    vec![
        (
            "neutral-current",
            "none",
            "current",
            house(),
            Milliamps(0),
            vec![Milliamps(1), Milliamps(7000), Millivolts(0)],
        ),
        (
            "coupled",
            "gone-under-load",
            "stays-under-load",
            house(),
            NoIndication,
            vec![Millivolts(1), Millivolts(64_000)],
        ),
        (
            "charge-returned",
            "gone",
            "returned",
            stored(),
            Millivolts(0),
            vec![Millivolts(1), Millivolts(90_000), Milliamps(0)],
        ),
    ]
}

fn bench(question: &'static str, case: Case, stage: Stage) -> Bench {
    let bench = Bench::stopping(case, if question == "coupled" { Stage::Uncovered } else { stage }, &[question], &[]);
    if question == "coupled" {
        bench.meets();
    }
    bench
}

/// Without a figure the answer is refused, whatever is said with it.
#[test]
fn an_answer_that_is_read_asks_for_its_figure() {
    for (question, answer, _, case, nothing, _) in read() {
        let bench = bench(question, case, Stage::Proved);
        let why = bench.tries(answered_with(question, answer, WORDS, None)).unwrap_err();
        assert!(why.contains("Type the"), "{question}: {why}");
        bench.keeps(answered_with(question, answer, WORDS, Some(nothing)));
        assert!(!bench.is_asked(question), "{question}");
    }
}

/// Whatever it was called: it is the answer that stops, on this phone, and from one that asks no gate.
#[test]
fn more_than_nothing_stops_whatever_it_is_called() {
    for (question, answer, stop, case, nothing, more) in read() {
        for (n, more) in more.into_iter().enumerate() {
            for gated in [true, false] {
                let bench = bench(question, case.clone(), Stage::Proved);
                let fact = answered_with(question, answer, WORDS, Some(more));
                if gated {
                    bench.keeps(fact);
                } else {
                    bench.ungated(120 + n as u8, TOMAS, fact);
                }
                assert!(!bench.proved(), "{question} with {more:?}: {}", bench.banner());
                let _ = bench.tests();
                assert!(!bench.proved(), "{question} with {more:?}: a test without another answer");
                let stopped =
                    bench.folded().questions(None).into_iter().chain(
                        bench.folded().sequence().into_iter().flat_map(|step| bench.folded().questions(Some(step))),
                    );
                let stops: Vec<_> = stopped.filter_map(|(q, _, open)| Some((q.code, open.stopped?))).collect();
                assert!(stops.contains(&(question, stop)), "{question} with {more:?}: {stops:?}");
                // Read again with nothing, by somebody who knew: it goes on, and every proof before it is over.
                bench.keeps(answered_with(question, answer, WORDS, Some(nothing)));
                bench.answers(Step::OpenUp);
                bench.tests().unwrap_or_else(|why| panic!("{question} with {more:?}: {why}"));
                assert!(bench.proved(), "{question} with {more:?}: {}", bench.banner());
            }
        }
    }
}

/// A figure that was read is told with its unit, beside what was said.
#[test]
fn what_was_read_stands_on_the_record() {
    let bench = bench("coupled", house(), Stage::Proved);
    bench.keeps(answered_with("coupled", "gone-under-load", WORDS, Some(Measured::Millivolts(0))));
    bench.on_to(Stage::Proved);
    assert!(bench.banner().contains("0 V") || bench.page_one().contains("0 V"), "{}", bench.page_one());
    let with = bench_of_current(Measured::Milliamps(40));
    let line = with.phone.entries().into_iter().rfind(|e| matches!(e.body.fact, Fact::Answered { .. })).unwrap();
    assert!(matches!(line.body.fact, Fact::Answered { read: Some(Measured::Milliamps(40)), .. }));
}

fn bench_of_current(read: Measured) -> Bench {
    let bench = Bench::at(house(), Stage::Proved);
    bench.keeps(answered_with("neutral-current", "none", WORDS, Some(read)));
    bench
}

/// The company's limit for figures is the one of the dead test: up to it nothing is left, above it a voltage is.
#[test]
fn a_limit_of_the_job_is_the_limit_here() {
    let limit = Limit { ac: 6_000, dc: 9_000, rule: "House rule 7".into() };
    let bench = Bench::stopping(Case { stored: true, ..house() }, Stage::Planned, &["charge-returned", "coupled"], &[]);
    bench.keeps(Fact::LimitSet { limit: Some(limit) });
    bench.on_to(Stage::Proved);
    bench.keeps(answered_with("charge-returned", "gone", WORDS, Some(Measured::Millivolts(9_000))));
    assert!(bench.proved() && !bench.is_asked("charge-returned"), "{}", bench.banner());
    bench.keeps(answered_with("charge-returned", "gone", WORDS, Some(Measured::Millivolts(9_001))));
    assert!(!bench.proved());
    // Of a voltage that may be either, the lower limit counts.
    for (mv, stands) in [(6_000, true), (6_001, false)] {
        let limit = Limit { ac: 6_000, dc: 9_000, rule: "House rule 7".into() };
        let bench = Bench::stopping(house(), Stage::Planned, &["coupled"], &[]);
        bench.keeps(Fact::LimitSet { limit: Some(limit) });
        bench.on_to(Stage::Uncovered);
        bench.meets();
        bench.keeps(answered_with("coupled", "gone-under-load", WORDS, Some(Measured::Millivolts(mv))));
        assert_eq!(bench.begins().is_ok(), stands, "{mv} mV");
    }
}

/// As people type it at the clamp: nothing is rounded away, nothing is guessed, and what is wrong is said.
#[test]
fn amperes_as_people_type_them() {
    for (text, ma) in [
        ("0", 0),
        ("0,00 A", 0),
        ("0.3", 300),
        ("12", 12_000),
        ("0.0004 a", 1),
        ("40 mA", 40),
        ("40mA", 40),
        ("0.2 mA", 1),
        ("1999 mA", 1999),
        ("4294967", 4_294_967_000),
    ] {
        assert_eq!(parse_amps(text), Ok(ma), "{text}");
    }
    for (text, says) in [
        ("1,000", "\"1,000\": 1 A, or 1000 A? Write 1 or 1000"),
        ("1.500 mA", "1.5 mA, or 1500 mA?"),
        ("1 000", "write one mark for the decimals"),
        ("4294968", "is more than 4294967 A"),
        ("", "is not a current"),
        ("3 V", "is not a current: write amperes as digits"),
        ("3 MA", "is not a current"),
        ("low", "is not a current"),
    ] {
        let why = parse_amps(text).unwrap_err().to_string();
        assert!(why.contains(says), "{text}: {why}");
    }
}

/// On the page: the figure is asked for, and one that is a current is kept as one, with an alarm, whatever was tapped.
#[test]
fn a_current_that_is_typed_under_no_current_is_kept_as_one() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let job = field.screen().route.split("/step").next().unwrap().to_owned();
    field.act(None, format!("go {job}/change"), vec![]);
    let kept = field.entries().unwrap().len();
    device.play(
        &field,
        "tap No current\nfill Which neutral, with which clamp = N of way 3, clamp 4\ntap Save this reading\n\
         see Type the current that the clamp shows\nfill Amperes on the clamp = 1,000\ntap Save this reading\nsee 1 A, or 1000 A",
    );
    assert_eq!(field.entries().unwrap().len(), kept);
    device.play(
        &field,
        "fill Amperes on the clamp = 0,04\ntap Save this reading\nsee 0.04 A is kept as: It carries current\nsee [Treat as live]",
    );
    let last = field.entries().unwrap().pop().unwrap();
    let Fact::Answered { answer, read, .. } = last.body.fact else { panic!("{:?}", last.body.fact) };
    assert_eq!((answer.as_str(), read), ("current", Some(Measured::Milliamps(40))));
    device.play(
        &field,
        "tap No current\nfill Which neutral, with which clamp = N of way 3, way 5 off\nfill Amperes on the clamp = 0.00\n\
         tap Save this reading\nsee Current in the neutral: No current: 0 A. N of way 3, way 5 off",
    );
}
