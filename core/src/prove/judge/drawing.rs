//! The potentials as a drawing: earth in the middle of a cross, each conductor a dot at its volts.

use super::Judgement;
use crate::screens::parts::{Drawing, Ink, Shape};

const SIZE: f32 = 360.0;
const EDGE: f32 = 54.0;
/// Conductors closer than this, in the drawing's units, share one dot and one label.
const TOUCH: f32 = 16.0;

/// Draws the potentials of a judgement and says the same in words; nothing where it has none.
pub fn drawing(judgement: &Judgement) -> Option<(Drawing, String)> {
    let spots = judgement.potentials.as_ref()?;
    let (low_x, high_x) = ends(spots.iter().map(|s| s.x as f32));
    let (low_y, high_y) = ends(spots.iter().map(|s| s.y as f32));
    let reach = (high_x - low_x).max(high_y - low_y).max(1.0);
    let scale = (SIZE - 2.0 * EDGE) / reach;
    let at = |x: f32, y: f32| {
        let (dx, dy) = (x - (low_x + high_x) / 2.0, y - (low_y + high_y) / 2.0);
        (SIZE / 2.0 + dx * scale, SIZE / 2.0 - dy * scale)
    };

    let mut heaps: Vec<(f32, f32, Vec<&str>)> = Vec::new();
    for s in spots {
        let (x, y) = at(s.x as f32, s.y as f32);
        match heaps.iter_mut().find(|h| (h.0 - x).hypot(h.1 - y) < TOUCH) {
            Some(heap) => heap.2.push(&s.name),
            None => heaps.push((x, y, vec![&s.name])),
        }
    }
    let (x0, y0) = at(0.0, 0.0);
    let mut shapes = vec![
        Shape::Line { x1: 8.0, y1: y0, x2: SIZE - 8.0, y2: y0, thick: 1.0, ink: Ink::Quiet },
        Shape::Line { x1: x0, y1: 8.0, x2: x0, y2: SIZE - 8.0, thick: 1.0, ink: Ink::Quiet },
    ];
    for (x, y, _) in &heaps {
        shapes.push(Shape::Line { x1: x0, y1: y0, x2: *x, y2: *y, thick: 2.0, ink: Ink::Ink });
    }
    for (x, y, names) in &heaps {
        shapes.push(Shape::Circle { x: *x, y: *y, r: 7.0, thick: 3.0, filled: true, ink: Ink::Ink });
        // Away from the middle, so that a label does not lie on its own line.
        let above = *y <= SIZE / 2.0;
        let text = names.join(" ");
        shapes.push(Shape::Text {
            x: x.clamp(EDGE, SIZE - EDGE),
            y: if above { y - 14.0 } else { y + 28.0 },
            size: if text.chars().count() > 14 { 12.0 } else { 18.0 },
            text,
            ink: Ink::Ink,
        });
    }
    let words: Vec<String> = heaps
        .iter()
        .map(|(_, _, names)| {
            let first = spots.iter().find(|s| s.name == names[0]);
            let volts = first.map_or(0.0, |s| s.x.hypot(s.y)).round();
            let list = names.join(", ");
            let is = if names.len() == 1 { "is" } else { "are" };
            format!("{list} {is} {volts} V from the origin")
        })
        .collect();
    let label = format!("Potentials that fit the readings: {}. Directions are relative only.", words.join("; "));
    Some((Drawing { width: SIZE, height: SIZE, shapes }, label))
}

/// The least and the greatest, with the origin between them.
fn ends(values: impl Iterator<Item = f32>) -> (f32, f32) {
    values.fold((0.0, 0.0), |(low, high): (f32, f32), v| (low.min(v), high.max(v)))
}
