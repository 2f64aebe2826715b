//! Screens that hold every kind of part in every state. Their words are for looking at; the core's are elsewhere.

use stillbar_core::parts::*;
use stillbar_core::screens::build::answer;

use crate::proving::{readings, volts};

/// A button that sends its own id.
pub fn button(id: &str, label: &str, tone: Tone) -> Button {
    Button { id: id.into(), label: label.into(), action: format!("do:{id}"), tone }
}

/// A screen of these blocks, with all that can stand around them.
pub fn screen(route: &str, title: &str, blocks: Vec<Block>) -> Screen {
    Screen {
        language: "en".into(),
        mirrored: false,
        route: route.into(),
        turn: 7,
        hand: "a person".into(),
        title: title.into(),
        context: "Pump house 2 · board P2-DB1 · way 7".into(),
        standing: Some(Standing {
            tone: Tone::Warn,
            word: "Treat as live".into(),
            text: "Two of ten tests are missing: L1 – L3, L2 – L3.".into(),
            deviations: vec![],
        }),
        notice: None,
        blocks,
        main: Some(button("go", "Next: hold on L1", Tone::Plain)),
        up: Some(button("up", "Job", Tone::Quiet)),
    }
}

/// Answers that are their own values, in lower case.
pub fn options(list: &[(&str, Tone)]) -> Vec<Opt> {
    list.iter().map(|(label, tone)| answer(label.to_lowercase(), *label, *tone)).collect()
}

fn step(number: &str, title: &str, state: StepState, word: &str, lines: &[&str]) -> Block {
    let opens = !matches!(state, StepState::Later);
    Block::Step {
        id: format!("step-{number}"),
        step: StepRow {
            number: number.into(),
            title: title.into(),
            state,
            word: word.into(),
            lines: lines.iter().map(|l| (*l).into()).collect(),
            action: if opens { format!("open:{number}") } else { String::new() },
        },
    }
}

/// Steps in each of their states, with deviations above.
pub fn steps() -> Screen {
    let mut shown = screen(
        "/job/1",
        "Replace the motor of pump 2",
        vec![
            Block::Heading { id: "h-steps".into(), text: "Steps".into() },
            step("1", "Permit and people", StepState::Done, "held", &["Permit WP-118, two people."]),
            step("2", "Points of isolation", StepState::Deviated, "deviated", &["No lock fits way 7."]),
            step("3", "Indicator before", StepState::Open, "open", &[]),
            step(
                "4",
                "Prove dead at the terminals",
                StepState::Now,
                "now",
                &["L1 – L3 is missing.", "L2 – L3 is missing."],
            ),
            step("5", "Indicator after", StepState::Stop, "stop", &["The proving unit gave no indication."]),
            step("6", "Hand back", StepState::Later, "later", &["Its turn comes when all locks are off."]),
        ],
    );
    if let Some(standing) = &mut shown.standing {
        standing.deviations = vec![
            "No lock fits way 7: fuse carrier removed and kept by A. Okafor, 09:12.".into(),
            "The caution sign is handwritten.".into(),
        ];
    }
    shown.main = None;
    shown
}

/// Fields, choices, a photo, a signature.
pub fn form() -> Screen {
    let entry = |id: &str, label: &str, hint: &str, value: &str, kind| Block::Entry {
        id: id.into(),
        entry: Entry { field: id.into(), label: label.into(), hint: hint.into(), value: value.into(), kind, limit: 60 },
    };
    let places = ["Plant room", "Board room on the ground floor", "Outdoors"].map(|l| (l, Tone::Plain));
    let found = [("Standby set", Tone::Warn), ("Solar", Tone::Warn), ("None found", Tone::Plain)];
    let mut shown = screen(
        "/job/1/form",
        "Point of isolation",
        vec![
            Block::Caution { id: "c1".into(), tone: Tone::Warn, text: "The incoming side stays live.".into() },
            Block::Caution {
                id: "c2".into(),
                tone: Tone::Forbid,
                text: "Do not use a stop button as a point of isolation.".into(),
            },
            Block::Caution { id: "c3".into(), tone: Tone::Must, text: "Keep the key on you.".into() },
            Block::Choice {
                id: "where".into(),
                choice: Choice {
                    field: "where".into(),
                    label: "Where is it?".into(),
                    options: options(&places),
                    chosen: vec!["outdoors".into()],
                    many: false,
                },
            },
            Block::Choice {
                id: "sources".into(),
                choice: Choice {
                    field: "sources".into(),
                    label: "Other sources".into(),
                    options: options(&found),
                    chosen: vec!["solar".into()],
                    many: true,
                },
            },
            entry("device", "Device", "As it is written on it, such as Q7", "Q7", EntryKind::Text),
            entry("poles", "Poles", "", "3", EntryKind::Number),
            entry("ring", "Telephone of the control room", "", "", EntryKind::Telephone),
            entry(
                "note",
                "Anything else",
                "What the next person must know",
                "First line\nsecond line",
                EntryKind::Long,
            ),
            Block::Photo {
                id: "photo".into(),
                photo: PhotoSlot {
                    label: "Photo of the lock".into(),
                    hint: "Lock, sign and device in one picture.".into(),
                    action: "photo:lock".into(),
                    taken: vec![PhotoSeen { sha256: "ab".repeat(32), label: "Lock 14 on Q7".into() }],
                },
            },
            Block::Mark {
                id: "mark".into(),
                field: "mark".into(),
                label: "Signature of A. Okafor".into(),
                value: "100,300 200,80 300,300;400,200 700,220".into(),
            },
        ],
    );
    shown.notice = Some(Notice { tone: Tone::Plain, text: "The point was kept.".into() });
    shown
}

/// Facts, tables, text and buttons.
pub fn reading() -> Screen {
    let fact =
        |id: &str, label: &str, value: &str| Block::Fact { id: id.into(), label: label.into(), value: value.into() };
    let table = |id: &str, caption: &str, head: &[&str], rows: &[&[&str]]| Block::Table {
        id: id.into(),
        caption: caption.into(),
        head: head.iter().map(|h| (*h).into()).collect(),
        rows: rows.iter().map(|r| Row { cells: r.iter().map(|c| (*c).into()).collect() }).collect(),
    };
    let mut shown = screen(
        "/job/1/proof",
        "What was proved",
        vec![
            Block::Paragraph {
                id: "p".into(),
                text: "The proof ends when a lock comes off, a source is added, or the place of work is left.".into(),
            },
            fact("f1", "Indicator", "Two-pole, serial 40-1182"),
            fact("f2", "Proved before", "10:31 on the proving unit"),
            fact("f3", "By", "A. Okafor"),
            table(
                "t1",
                "Readings",
                &["Pair", "First probe", "Then", "Reading", "At"],
                &[
                    &["N – L1", "N", "L1", "No indication", "10:33:04"],
                    &["N – L2", "N", "L2", "No indication", "10:33:09"],
                ],
            ),
            table("t2", "Locks", &["Lock", "Owner"], &[&["14", "A. Okafor"], &["22", "M. Lindqvist"]]),
            Block::Button { id: "export".into(), button: button("export", "Show the record", Tone::Plain) },
            Block::Button { id: "b2".into(), button: button("later", "Add a note", Tone::Quiet) },
            Block::Button { id: "b3".into(), button: button("end", "Take the lock off", Tone::Forbid) },
        ],
    );
    shown.standing = Some(Standing {
        tone: Tone::Plain,
        word: "Proved dead".into(),
        text: "10:36, ten tests at the motor terminals, A. Okafor, indicator 40-1182. Ends when a lock comes off."
            .into(),
        deviations: vec![],
    });
    shown.main = Some(button("work", "Begin the work", Tone::Plain));
    shown
}

/// The first screen: nothing around it.
pub fn first() -> Screen {
    let mut shown = screen(
        "/",
        "Jobs",
        vec![step("1", "Replace the motor of pump 2", StepState::Open, "open", &["Pump house 2", "Treat as live"])],
    );
    (shown.standing, shown.up, shown.context) = (None, None, String::new());
    shown.main = Some(button("new", "Plan a job", Tone::Plain));
    shown
}

/// All of them, by name.
pub fn all() -> Vec<(&'static str, Screen)> {
    vec![
        ("first", first()),
        ("steps", steps()),
        ("readings", readings()),
        ("volts", volts()),
        ("form", form()),
        ("reading", reading()),
    ]
}
