//! Sample screens of a dead test: the drawing of the terminals and the pads.

use stillbar_core::parts::*;

use crate::samples::{button, options, screen};

/// The readings of a group that shares a held probe.
pub fn pad(volts: bool) -> Block {
    let row = |pair: &str, chosen: &str| PadRow {
        field: format!("reading {pair}"),
        label: format!("N – {pair}"),
        hint: format!("Held probe on N, other probe on {pair}"),
        chosen: chosen.into(),
    };
    let answers = [("No indication", Tone::Plain), ("Continuity", Tone::Warn), ("Lit", Tone::Forbid)];
    Block::Pad {
        id: "pad".into(),
        pad: Pad {
            label: "Held on N".into(),
            rows: vec![row("L1", "no indication"), row("L2", if volts { "231" } else { "lit" }), row("L3", "")],
            options: options(&answers),
            volts,
            done: String::new(),
        },
    }
}

fn terminals() -> Drawing {
    let mut shapes = vec![Shape::Box { x: 10.0, y: 60.0, w: 300.0, h: 70.0, thick: 3.0, filled: false, ink: Ink::Ink }];
    let set = [("L1", Ink::Brown), ("L2", Ink::Black), ("L3", Ink::Grey), ("N", Ink::Blue), ("PE", Ink::Green)];
    for (i, (name, ink)) in set.into_iter().enumerate() {
        let x = 40.0 + 60.0 * i as f32;
        shapes.push(Shape::Line { x1: x, y1: 10.0, x2: x, y2: 80.0, thick: 9.0, ink });
        if ink == Ink::Green {
            shapes.push(Shape::Line { x1: x, y1: 10.0, x2: x, y2: 80.0, thick: 3.0, ink: Ink::Yellow });
        }
        shapes.push(Shape::Circle { x, y: 92.0, r: 15.0, thick: 3.0, filled: true, ink: Ink::Paper });
        shapes.push(Shape::Circle { x, y: 92.0, r: 15.0, thick: 3.0, filled: false, ink: Ink::Ink });
        shapes.push(Shape::Text { x, y: 154.0, size: 20.0, text: name.into(), ink: Ink::Ink });
    }
    shapes.push(Shape::Line { x1: 220.0, y1: 92.0, x2: 250.0, y2: 185.0, thick: 5.0, ink: Ink::Ink });
    shapes.push(Shape::Text { x: 262.0, y: 205.0, size: 18.0, text: "held".into(), ink: Ink::Ink });
    shapes.push(Shape::Line { x1: 40.0, y1: 92.0, x2: 70.0, y2: 185.0, thick: 5.0, ink: Ink::Quiet });
    shapes.push(Shape::Text { x: 82.0, y: 205.0, size: 18.0, text: "moves".into(), ink: Ink::Quiet });
    Drawing { width: 320.0, height: 215.0, shapes }
}

/// The readings as answers.
pub fn readings() -> Screen {
    let drawing = Block::Drawing {
        id: "terminals".into(),
        label: "Terminals L1, L2, L3, N, PE. One probe is held on N; the other moves from L1 to L3.".into(),
        drawing: terminals(),
    };
    screen("/job/1/prove/n", "Dead test", vec![drawing, pad(false)])
}

/// The readings as answers or volts.
pub fn volts() -> Screen {
    let mut shown = screen("/job/1/prove/volts", "Dead test in volts", vec![pad(true)]);
    shown.standing = Some(Standing {
        tone: Tone::Forbid,
        word: "Stop".into(),
        text: "N – L2 showed 231 V at 10:42. Treat as live.".into(),
        deviations: vec![],
    });
    shown.notice =
        Some(Notice { tone: Tone::Forbid, text: "231 V between N and L2. Stop, and leave the covers on.".into() });
    shown.main = Some(button("stop", "What to do now", Tone::Forbid));
    shown
}
