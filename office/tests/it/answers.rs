//! The table of answers: every case has one, and docs/conflicts.md says what the code does.

use stillbar_office::exchange::answer::{
    Answer, ChainPlace, DeviceStanding, Ground, Offer, OfferShape, RULES, Time, Why, Writer, answer, say, table,
};

fn cases() -> Vec<Offer> {
    let mut all = Vec::new();
    for shape in [OfferShape::Entry, OfferShape::Foreign] {
        for writer in [Writer::Named, Writer::Stranger, Writer::Other] {
            for place in [
                ChainPlace::Next,
                ChainPlace::Here,
                ChainPlace::HereAside,
                ChainPlace::Fork,
                ChainPlace::OnFork,
                ChainPlace::Gap,
            ] {
                for standing in [DeviceStanding::Trusted, DeviceStanding::Held, DeviceStanding::Withdrawn] {
                    for time in [Time::Near, Time::Ahead] {
                        for ground in [Ground::None, Ground::Begins, Ground::Own, Ground::Foreign] {
                            all.push(Offer { shape, writer, place, standing, time, ground });
                        }
                    }
                }
            }
        }
    }
    all
}

#[test]
fn every_case_has_one_answer_and_every_row_is_needed() {
    let mut used = [0; RULES.len()];
    for case in cases() {
        let row = RULES.iter().position(|r| r.fits(&case)).unwrap_or_else(|| panic!("no row for {case:?}"));
        used[row] += 1;
    }
    assert!(used.iter().all(|n| *n > 0), "a row that no case reaches: {used:?}");
}

/// What must hold whatever the rows are called.
#[test]
fn only_the_next_entry_of_a_trusted_device_is_accepted() {
    for case in cases() {
        let said = answer(&case);
        let whole = case.shape == OfferShape::Entry && case.writer != Writer::Other;
        let taken = matches!(said, Answer::Accepted | Answer::Aside(_));
        assert_eq!(taken, whole && case.place == ChainPlace::Next, "the chain grows by the next entry only: {case:?}");
        let trusted = case.writer == Writer::Named
            && case.standing == DeviceStanding::Trusted
            && case.time == Time::Near
            && case.ground != Ground::Foreign;
        assert_eq!(said == Answer::Accepted, taken && trusted, "{case:?}");
        if whole && case.place == ChainPlace::Here {
            assert_eq!(said, Answer::Duplicate, "what is here stays, whatever became of its device: {case:?}");
        }
    }
}

#[test]
fn every_reason_has_a_word_of_its_own_and_a_sentence() {
    for why in Why::ALL {
        assert_eq!(Why::named(why.word()), *why);
        assert!(!why.word().is_empty() && say(*why).ends_with('.'));
    }
}

#[test]
fn the_documentation_has_this_table() {
    let doc = include_str!("../../../docs/conflicts.md");
    assert!(doc.contains(&table()), "docs/conflicts.md does not hold this table; put it there:\n{}", table());
}
