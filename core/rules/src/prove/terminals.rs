//! The drawing of a group: the terminals, the probe that is held, and where the other one goes, in order.

use super::{Conductor, Role, Test};
use stillbar_values::drawing::{Drawing, Ink, Shape};

/// Width of the drawing in its own units; the terminals share it.
const WIDTH: f32 = 360.0;
const HEIGHT: f32 = 176.0;

/// What the drawing of a group shows, for whoever words it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldConductor {
    /// The conductor whose probe stays on.
    pub on: String,
    /// Where the other probe goes, in order.
    pub stops: Vec<String>,
}

/// Draws `tests` (one group, with one held probe) over `conductors`, and tells the same. `hold` marks the probe that is held. Nothing is
/// held where there is no test.
pub fn terminals(conductors: &[Conductor], tests: &[&Test], hold: &str) -> (Drawing, Option<HeldConductor>) {
    let mut shapes = Vec::new();
    let step = WIDTH / conductors.len().max(1) as f32;
    let x = |name: &str| conductors.iter().position(|c| c.name == name).map(|i| step * (i as f32 + 0.5));
    let size = (step * 0.36).clamp(9.0, 26.0);
    let rail = 102.0;

    shapes.push(Shape::Line { x1: 6.0, y1: rail, x2: WIDTH - 6.0, y2: rail, thick: 3.0, ink: Ink::Quiet });
    for conductor in conductors {
        let Some(cx) = x(&conductor.name) else { continue };
        let half = (step * 0.34).min(26.0);
        wire(&mut shapes, conductor, cx, rail + 24.0);
        shapes.push(Shape::Box {
            x: cx - half,
            y: rail - 24.0,
            w: 2.0 * half,
            h: 48.0,
            thick: 3.0,
            filled: false,
            ink: Ink::Ink,
        });
        shapes.push(Shape::Circle { x: cx, y: rail, r: half.min(10.0), thick: 3.0, filled: false, ink: Ink::Ink });
        shapes.push(Shape::Text { x: cx, y: HEIGHT - 6.0, size, text: conductor.name.clone(), ink: Ink::Ink });
    }

    let Some(held) = tests.first().map(|t| t.first.clone()) else {
        return (Drawing { width: WIDTH, height: HEIGHT, shapes }, None);
    };
    // The held probe is filled and has a flat grip; the moving one is an outline with numbers: told apart without colour.
    if let Some(cx) = x(&held) {
        shapes.push(Shape::Line { x1: cx, y1: rail - 4.0, x2: cx, y2: 48.0, thick: 4.0, ink: Ink::Ink });
        shapes.push(Shape::Box { x: cx - 9.0, y: 20.0, w: 18.0, h: 32.0, thick: 3.0, filled: true, ink: Ink::Ink });
        shapes.push(Shape::Text {
            x: cx.clamp(30.0, WIDTH - 30.0),
            y: 15.0,
            size: 17.0,
            text: hold.into(),
            ink: Ink::Ink,
        });
    }
    for (i, test) in tests.iter().enumerate() {
        let Some(cx) = x(&test.then) else { continue };
        shapes.push(Shape::Line { x1: cx, y1: rail - 4.0, x2: cx, y2: 56.0, thick: 3.0, ink: Ink::Ink });
        shapes.push(Shape::Circle { x: cx, y: 36.0, r: 19.0, thick: 3.0, filled: false, ink: Ink::Ink });
        shapes.push(Shape::Text { x: cx, y: 44.0, size: 23.0, text: (i + 1).to_string(), ink: Ink::Ink });
    }
    let stops = tests.iter().map(|t| t.then.clone()).collect();
    (Drawing { width: WIDTH, height: HEIGHT, shapes }, Some(HeldConductor { on: held, stops }))
}

/// A wire's end in its IEC 60445 colour: it shows which designation is meant, never what a wire found on site is.
fn wire(shapes: &mut Vec<Shape>, conductor: &Conductor, x: f32, y: f32) {
    let mut band = |dx: f32, w: f32, ink: Ink| {
        shapes.push(Shape::Box { x: x + dx, y, w, h: 20.0, thick: 0.0, filled: true, ink });
    };
    match (conductor.role, conductor.name.as_str()) {
        (Role::Protective | Role::Pen, _) => {
            band(-6.0, 6.0, Ink::Green);
            band(0.0, 6.0, Ink::Yellow);
        }
        (Role::Neutral | Role::MidPoint, _) => band(-6.0, 12.0, Ink::Blue),
        (Role::Line, "L2") => band(-6.0, 12.0, Ink::Black),
        (Role::Line, "L3") => band(-6.0, 12.0, Ink::Grey),
        (Role::Line, _) => band(-6.0, 12.0, Ink::Brown),
        // Red and white for DC would read as a prohibition here, and control circuits have no colour of their own.
        (Role::DcPlus | Role::DcMinus | Role::Control, _) => {}
    }
}
