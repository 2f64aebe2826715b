//! The potentials as a drawing: earth in the middle of a cross, each conductor a dot at its volts.

use super::{Cause, Judgement};
use stillbar_values::drawing::{Drawing, Ink, Shape};

const SIZE: f32 = 360.0;
/// Room for two lines of text about a dot.
const EDGE: f32 = 60.0;
/// Conductors closer than this, in the drawing's units, share one dot and one label.
const TOUCH: f32 = 16.0;

/// What the middle of the cross stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Middle {
    /// Earth.
    Earth,
    /// The middle of the supply, where earth is not what it should be.
    Supply,
}

/// Conductors that share one dot.
#[derive(Debug, Clone, PartialEq)]
pub struct Dot {
    /// Their names.
    pub names: Vec<String>,
    /// Whole volts from the middle of the cross.
    pub volts: f64,
}

/// Draws the potentials of a judgement and tells the same; nothing where it has none. `middle` is what the middle of the cross is called,
/// which [`middle`] tells.
pub fn drawing(judgement: &Judgement, middle: &str) -> Option<(Drawing, Vec<Dot>)> {
    let spots = judgement.potentials.as_ref()?;
    let (low_x, high_x) = ends(spots.iter().map(|s| s.x as f32));
    let (low_y, high_y) = ends(spots.iter().map(|s| s.y as f32));
    let reach = (high_x - low_x).max(high_y - low_y).max(1.0);
    let scale = (SIZE - 2.0 * EDGE) / reach;
    // As high as it has to be: most faults lie on one line.
    let height = (high_y - low_y) * scale + 2.0 * EDGE;
    let at = |x: f32, y: f32| {
        let (dx, dy) = (x - (low_x + high_x) / 2.0, y - (low_y + high_y) / 2.0);
        (SIZE / 2.0 + dx * scale, height / 2.0 - dy * scale)
    };

    let mut heaps: Vec<(f32, f32, Vec<&str>)> = Vec::new();
    for s in spots {
        let (x, y) = at(s.x as f32, s.y as f32);
        match heaps.iter_mut().find(|h| (h.0 - x).hypot(h.1 - y) < TOUCH) {
            Some(heap) => heap.2.push(&s.name),
            None => heaps.push((x, y, vec![&s.name])),
        }
    }
    let volts = |name: &str| spots.iter().find(|s| s.name == name).map_or(0.0, |s| s.x.hypot(s.y));
    let (x0, y0) = at(0.0, 0.0);
    let cross = |x, y| Shape::Line { x1: x0 - x, y1: y0 - y, x2: x0 + x, y2: y0 + y, thick: 1.0, ink: Ink::Quiet };
    let mut shapes = vec![cross(24.0, 0.0), cross(0.0, 24.0)];
    for (x, y, _) in &heaps {
        shapes.push(Shape::Line { x1: x0, y1: y0, x2: *x, y2: *y, thick: 2.0, ink: Ink::Ink });
    }
    for (x, y, names) in &heaps {
        shapes.push(Shape::Circle { x: *x, y: *y, r: 7.0, thick: 3.0, filled: true, ink: Ink::Ink });
        // Away from the middle, so that a label does not lie on its own line.
        let above = *y <= height / 2.0;
        let name = names.join(" ");
        let size = if name.chars().count() > 14 { 12.0 } else { 18.0 };
        let x = x.clamp(EDGE, SIZE - EDGE);
        shapes.push(Shape::Text { x, y: if above { y - 34.0 } else { y + 28.0 }, size, text: name, ink: Ink::Ink });
        let volts = format!("{:.0} V", volts(names[0]));
        shapes.push(Shape::Text {
            x,
            y: if above { y - 14.0 } else { y + 48.0 },
            size: 15.0,
            text: volts,
            ink: Ink::Ink,
        });
    }
    if !heaps.iter().any(|(x, y, _)| (x - x0).hypot(y - y0) < TOUCH) {
        shapes.push(Shape::Circle { x: x0, y: y0, r: 7.0, thick: 2.0, filled: false, ink: Ink::Quiet });
        shapes.push(Shape::Text { x: x0, y: y0 + 28.0, size: 14.0, text: middle.into(), ink: Ink::Quiet });
    }
    let named = |names: Vec<&str>| names.into_iter().map(str::to_owned).collect();
    let dots = heaps.into_iter().map(|(_, _, names)| Dot { volts: volts(names[0]).round(), names: named(names) });
    let dots = dots.collect();
    Some((Drawing { width: SIZE, height, shapes }, dots))
}

/// What the middle of the cross stands for.
pub fn middle(judgement: &Judgement) -> Middle {
    match judgement.diagnoses.first().map(|d| d.cause) {
        Some(Cause::BrokenReference | Cause::FloatingSupply) => Middle::Supply,
        _ => Middle::Earth,
    }
}

/// The least and the greatest, with the origin between them.
fn ends(values: impl Iterator<Item = f32>) -> (f32, f32) {
    values.fold((0.0, 0.0), |(low, high): (f32, f32), v| (low.min(v), high.max(v)))
}
