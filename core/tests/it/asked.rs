//! Questions of the procedure and temporary earths, from docs/questions.md.

use stillbar_core::job::asked::{ALL, Does, Lifts, Words};
use stillbar_core::journal::Fact;
use stillbar_core::screens::as_text;
use stillbar_core::supply::Position;
use stillbar_core::text;

use crate::desk::*;
use crate::restoring::{find, keep};

/// Every question and answer has its messages, and each needs just the words that it says it needs.
#[test]
fn every_question_and_answer_is_worded() {
    for question in ALL {
        let code = question.code;
        assert_ne!(text::question(code, "Q1"), code);
        assert_ne!(text::asked_of(code, "Q1"), code);
        for answer in question.answers {
            assert_ne!(text::answer_to(code, answer.code), answer.code, "{code}");
            let asks = text::answer_words(code, answer.code).is_some();
            assert_eq!(asks, answer.words != Words::None, "{code} {}", answer.code);
            let reads = text::answer_read(code, answer.code).is_some();
            assert_eq!(reads, answer.reads.is_some(), "{code} {}", answer.code);
            // What it stops as, and what it lifts, are answers of this question that stop.
            let over = answer.reads.map(|reads| reads.over);
            let lifts = if let Lifts::These(codes) = answer.lifts { codes } else { &[] };
            for stop in over.iter().chain(lifts) {
                assert_eq!(question.answer(stop).map(|a| a.does), Some(Does::Stops), "{code} {}: {stop}", answer.code);
            }
        }
        assert!(question.answers.iter().any(|a| a.does != Does::Stops), "nobody could go on after {code}");
        // The page tells of it.
        let page = include_str!("../../../docs/questions.md");
        assert!(page.contains(&format!("`{code}`")), "docs/questions.md does not tell of {code}");
        for answer in question.answers {
            assert!(
                page.contains(&format!("`{}`", answer.code)),
                "docs/questions.md does not tell of {code} {}",
                answer.code
            );
        }
    }
}

/// An answer that needs words asks for them, keeps nothing without them, and stands on the step and in the time line.
#[test]
fn an_answer_asks_for_its_words() {
    let before = ISOLATE.find("tap Seen live").unwrap();
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, &ISOLATE[..before]]);
    let kept = field.entries().unwrap().len();
    device.play(
        &field,
        "tap Could not be shown\nsee Why not\ntap Save: Could not be shown\nsee Say how, what or where\nunseen Q4 feeder switch is open",
    );
    assert_eq!(field.entries().unwrap().len(), kept);
    // Nor does a phone with another screen open it before that.
    let point = find(&field, |f| matches!(f, Fact::PointAdded { label, .. } if label == "Q4 feeder switch"));
    let (seen, found) = ("Handle at 0".into(), Position::Closed);
    let opened = Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() };
    assert!(keep(&field, opened).unwrap_err().contains("Answer this first"));
    device.play(
        &field,
        "tap Could not be shown\nfill Why not = The hall has been dark since May\ntap Save: Could not be shown\n\
         see Right switch, Q4 feeder switch: Could not be shown\nsee The hall has been dark since May",
    );
    // Not all was shown: that stands at the top of every screen of the job.
    assert!(field.screen().standing.unwrap().deviations.iter().any(|d| d.contains("Could not be shown")));
}

/// It starts although it was blocked: nothing goes on until somebody who knows of it has tried again.
#[test]
fn what_starts_stops_everything() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let job = field.screen().route.split("/step").next().unwrap().to_owned();
    field.act(None, format!("go {job}/step/open-up"), vec![]);
    assert!(as_text(&field.screen()).contains("Tried to start: Nothing started"));
    let started = Fact::Answered {
        question: "tried-to-start".into(),
        answer: "it-started".into(),
        of: None,
        point: None,
        words: String::new(),
        who: String::new(),
        read: None,
    };
    keep(&field, started).unwrap();
    field.act(None, format!("go {job}/step/work"), vec![]);
    device.play(&field, "see [Treat as live]\nsee It started\nunseen Begin work");
    field.act(None, format!("go {job}/step/open-up"), vec![]);
    device.play(&field, "see It started. Treat as live\ntap Nothing started\nsee [Treat as live] The proof is void");
    device.play(&field, &PROVE[PROVE.find("choose Proved on").unwrap()..]);
}

/// Proved dead first, then earthed; listed with place and person; none is left in when a cover or a supply comes back.
#[test]
fn temporary_earths_are_in_after_the_proof_and_out_before_a_cover_is_back() {
    let earth = |label: &str| Fact::EarthFitted { label: label.into(), at: "Busbar, below Q4".into() };
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    assert!(keep(&field, earth("E1")).unwrap_err().contains("prove dead first"), "{:?}", keep(&field, earth("E1")));
    device.play(&field, PROVE);
    device.play(
        &field,
        "fill Number on the earth = E1\nfill Where it is fitted = Busbar, below Q4\ntap This earth is in\nsee Earth E1: Busbar, below Q4\n\
         see [Proved dead]\nfill Number on the earth = e 1\nfill Where it is fitted = Elsewhere\ntap This earth is in\nsee is in already\n\
         tap Fitted, as listed\ntap Nothing within reach\ntap None in there\ntap Whoever tested lets it start\ntap Begin work\nwait 40\nfill How you saw that people, tools and earths are clear = Counted\ntap Work is finished",
    );
    // Finished is not restored: it is still in.
    device.play(
        &field,
        "see Temporary earth E1 is still in: Busbar, below Q4\ntap Nothing: all counted out\ntap Front plate of DB4 is back\n\
         see Take it off first\ntap Earth E1 is off\ntap Front plate of DB4 is back\nunseen E1 is still in",
    );
}

/// "Fitted" is no answer while none is listed.
#[test]
fn fitted_is_said_of_an_earth_that_is_listed() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let kept = field.entries().unwrap().len();
    device.play(&field, "tap Fitted, as listed\nsee this is not so yet\nsee Not asked for");
    assert_eq!(field.entries().unwrap().len(), kept);
}

/// An earth that comes off under people at work ends the proof.
#[test]
fn an_earth_that_comes_off_ends_the_proof() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    device.play(
        &field,
        "fill Number on the earth = E1\nfill Where it is fitted = Busbar\ntap This earth is in\ntap Fitted, as listed\ntap Nothing within reach\ntap None in there\ntap Whoever tested lets it start\n\
         tap Begin work\ntap Earth E1 is off\nsee [Treat as live] The proof is void. Temporary earth E1 came off.\nsee Stop work",
    );
}

/// Whoever lets the work start signs on their own hand of the device; the tester is told to hand it on, and cannot say that another signed.
#[test]
fn another_than_the_tester_lets_the_work_start() {
    let hold = |from: &str, to: &str| {
        format!(
            "tap The job\ntap All jobs\ntap Signed on: {from}\ntap {to}\ntap Go on without PIN\ntap Replace the outgoing breaker of washer 4\n"
        )
    };
    let lock = |at: &str, label: &str| {
        format!(
            "tap Next: Isolate {at}\nfill What is written on the lock = {label}\nchoose How it is locked = Padlock on a hasp\ntap Save lock, fitted by \
             Tomas Brandt\n"
        )
    };
    let joins = include_str!("../../journeys/tomas-joins.journey");
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, joins]);
    device.play(&field, &hold("Mara Lind", "Tomas Brandt"));
    device.play(
        &field,
        &format!("{}tap The job\n{}", lock("Q4 feeder switch", "TB 1"), lock("Q9 changeover switch", "TB 2")),
    );
    device.play(&field, &hold("Tomas Brandt", "Mara Lind"));
    device.play(&field, &format!("tap Next: Covers off: treat as live\n{PROVE}"));
    let until_asked = BEGIN.find("tap Whoever tested").unwrap();
    device.play(&field, &BEGIN[..until_asked]);
    device.play(
        &field,
        "unseen Sign as\ntap Another person, who signed\nsee By what is recorded this is not so yet\ntap Give the phone to who lets work start\n\
         tap Tomas Brandt\ntap Go on without PIN\ntap Replace the outgoing breaker of washer 4",
    );
    device.play(
        &field,
        "tap Next: Work\nsign Tomas Brandt lets the work start = Tomas Brandt\ntap Sign as Tomas Brandt\nsee Another person, who signed\n\
         unseen Sign as\nsee [Proved dead]\ntap Begin work\nsee Work is finished",
    );
}
