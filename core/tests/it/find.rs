//! Long lists are narrowed by words, and say how much of them is left out.

use stillbar_core::parts::Filled;
use stillbar_core::screens::as_text;

use crate::desk::*;

/// So many people. Who comes first has the phone at once, and is on the first screen again.
fn crowd(count: usize) -> String {
    let then = |n: usize| if n == 1 { "tap Signed on: Person 1\n" } else { "" };
    (1..=count).fold("tap Sign on\n".into(), |all, n| all + &person(n) + then(n))
}

fn person(n: usize) -> String {
    format!("fill Name = Person {n} Åberg\nfill Qualification = Card {n}00\ntap Add this person\n")
}

#[test]
fn a_short_list_asks_nothing_and_a_long_one_is_narrowed() {
    let (_folder, device, field) = begun(&[&crowd(8)]);
    assert!(!as_text(&field.screen()).contains("Find in this list"));
    device.play(&field, &person(9));
    device.play(
        &field,
        "fill Find in this list = 7 åBERG\ntap Find\nsee 1 of 9 are shown here.\nsee Person 7\nunseen Person 8",
    );
    // Words of different lines are found together; what fits nothing leaves nothing.
    device.play(&field, "fill Find in this list = card 900\ntap Find\nsee 1 of 9\nsee Person 9");
    device
        .play(&field, "fill Find in this list = nobody\ntap Find\nsee 0 of 9\ntap Show all\nsee Person 8\nunseen of 9");
}

/// What was looked for is no entry, and stands for nobody else.
#[test]
fn looking_for_something_keeps_nothing() {
    let (_folder, _device, field) = begun(&[&crowd(9)]);
    let before = field.entries().unwrap().len();
    let words = vec![Filled { field: "find".into(), value: "7".repeat(5000) }];
    field.act(None, "find".into(), words);
    field.act(None, "find".into(), vec![Filled { field: "find".into(), value: "Person".into() }]);
    assert_eq!(field.entries().unwrap().len(), before);
    assert!(as_text(&field.screen()).contains("9 of 9"));
}
