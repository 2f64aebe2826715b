//! People: who learns, who looks like another, and what a job is called.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{Duty, On};
use stillbar_core::point::Means;
use stillbar_core::screens::as_text;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

/// Who works under somebody's eye proves dead, and begins work alone.
#[test]
fn a_learners_test_is_signed_and_a_learner_does_not_begin_work() {
    let one = opened_up();
    joins(&one, IDA, Duty::Learning);
    for (place, label) in [("Q4 feeder switch", "IH 1"), ("Q9 changeover switch", "IH 2")] {
        keeps(&one, IDA, lock_of(&one, IDA, On::Point(point(&one, place)), label, Means::Hasp));
    }
    let run = proves(&one, IDA);
    assert!(!one.proved(), "{}", banner(&one));
    let signs = || Fact::RunSigned { run, mark: "typed".into() };
    for who in [IDA, JOEL] {
        assert!(tries(&one, who, signs()).is_err(), "{who} signs");
        assert!(!one.proved());
    }
    assert!(tries(&one, MARA, Fact::WorkBegan { run }).is_err(), "nobody has signed yet");
    keeps(&one, MARA, signs());
    assert!(one.proved(), "{}", banner(&one));
    assert!(tries(&one, IDA, Fact::WorkBegan { run }).is_err());
    answers(&one, MARA, Step::Work);
    keeps(&one, MARA, Fact::WorkBegan { run });
}

/// Blanks, blanks of no width, wide letters, look-alike letters: whoever they make is not told from Mara Lind.
#[test]
fn two_people_are_not_told_apart_by_blanks_or_look_alike_letters() {
    let one = Phone::begun(&[PEOPLE]);
    let person = |name: &str| Fact::PersonNoted {
        name: name.into(),
        qualification: "Electrician".into(),
        telephone: String::new(),
        corrects: None,
    };
    let notes = |name: &str| one.field().keep(one.person(MARA), None, person(name));
    for name in [
        "Mara  Lind",
        " Mara Lind ",
        "Mara\u{a0}Lind",
        "MaraLind",
        "Mara\u{200b} Lind",
        "M\u{430}ra Lind",
        "\u{41c}ara Lind",
        "\u{ff2d}ara Lind",
    ] {
        assert!(notes(name).is_err(), "{name:?}");
    }
    one.at("/people");
    one.play("fill Name = M\u{430}ra  Lind\ntap Add this person\nsee looks like Mara Lind");
    notes("Mara Lindh").unwrap();
}

/// A title of 1990 characters pushes what stands proved off every screen of the job.
#[test]
fn a_title_fits_above_the_banner() {
    let one = Phone::begun(&[PEOPLE]);
    let title = "x".repeat(1990);
    let plan = until(PLAN, "see Permit reference").replace(TITLE, &title);
    one.play(&plan);
    let shown = as_text(&one.field().screen());
    assert!(shown.contains("too long"), "{shown}");
    assert!(!one.entries().iter().any(|e| matches!(e.body.fact, Fact::JobOpened { .. })));
}
