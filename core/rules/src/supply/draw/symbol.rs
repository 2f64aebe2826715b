//! Symbols in the manner of IEC 60617, of our own drawing: a switch parts or bridges a line, a padlock hangs beside its word.

use super::DrawnScene;
use crate::supply::model::{LinkKind, SourceSort};
use stillbar_values::drawing::{Ink, Shape};

/// How long a symbol is along its line.
pub const LONG: f32 = 28.0;

/// Where a symbol begins and which way its line runs: down, or to the right.
#[derive(Clone, Copy)]
pub struct Along {
    pub x: f32,
    pub y: f32,
    pub right: bool,
}

impl Along {
    /// The point `u` along the line and `v` across it: to the right of a line down, above a line to the right.
    fn at(self, u: f32, v: f32) -> (f32, f32) {
        if self.right { (self.x + u, self.y - v) } else { (self.x + v, self.y + u) }
    }

    fn line(self, (u1, v1): (f32, f32), (u2, v2): (f32, f32), thick: f32) -> Shape {
        let ((x1, y1), (x2, y2)) = (self.at(u1, v1), self.at(u2, v2));
        Shape::Line { x1, y1, x2, y2, thick, ink: Ink::Ink }
    }

    fn circle(self, u: f32, r: f32, filled: bool) -> Shape {
        let (x, y) = self.at(u, 0.0);
        Shape::Circle { x, y, r, thick: 2.0, filled, ink: Ink::Ink }
    }

    /// A box from `u1` to `u2` along the line, `v` to either side.
    fn block(self, u1: f32, u2: f32, v: f32, filled: bool, ink: Ink) -> Shape {
        let ((xa, ya), (xb, yb)) = (self.at(u1, -v), self.at(u2, v));
        Shape::Box { x: xa.min(xb), y: ya.min(yb), w: (xb - xa).abs(), h: (yb - ya).abs(), thick: 2.0, filled, ink }
    }
}

/// The symbol of a link, [`LONG`] from where it begins.
pub fn link(scene: &DrawnScene, link: usize, along: Along, shapes: &mut Vec<Shape>) {
    let kind = scene.network.links()[link].kind;
    let closed = scene.closed[link];
    match kind {
        LinkKind::Cable => shapes.push(along.line((0.0, 0.0), (LONG, 0.0), 2.0)),
        LinkKind::Transformer => {
            shapes.push(along.line((0.0, 0.0), (LONG, 0.0), 2.0));
            for u in [9.0, 19.0] {
                shapes.push(Shape::Circle {
                    x: along.at(u, 0.0).0,
                    y: along.at(u, 0.0).1,
                    r: 9.0,
                    thick: 2.0,
                    filled: true,
                    ink: Ink::Paper,
                });
            }
            shapes.extend([9.0, 19.0].map(|u| along.circle(u, 9.0, false)));
        }
        LinkKind::Inverter => {
            shapes.push(along.line((0.0, 0.0), (LONG, 0.0), 2.0));
            shapes.push(along.block(3.0, 25.0, 11.0, true, Ink::Paper));
            shapes.push(along.block(3.0, 25.0, 11.0, false, Ink::Ink));
            shapes.push(along.line((25.0, -11.0), (3.0, 11.0), 2.0));
        }
        LinkKind::Unknown => {
            shapes.push(along.line((0.0, 0.0), (LONG, 0.0), 2.0));
            shapes.push(along.block(3.0, 25.0, 11.0, true, Ink::Paper));
            shapes.push(along.block(3.0, 25.0, 11.0, false, Ink::Warn));
            let (x, y) = along.at(14.0, 0.0);
            shapes.push(Shape::Text { x, y: y + 6.0, size: 16.0, text: "?".into(), ink: Ink::Ink });
        }
        LinkKind::Switch | LinkKind::Changeover | LinkKind::Tie | LinkKind::Inlet => {
            shapes.push(along.line((0.0, 0.0), (6.0, 0.0), 2.0));
            shapes.push(along.line((22.0, 0.0), (LONG, 0.0), 2.0));
            if closed {
                // A bar across the gap.
                shapes.push(along.block(4.0, 24.0, 4.0, true, Ink::Ink));
            } else {
                // The blade stands away from its contact, and from the texts.
                let away = if along.right { 9.0 } else { -11.0 };
                shapes.push(along.line((22.0, 0.0), (6.0, away), 3.0));
                shapes.push(along.line((6.0, -5.0), (6.0, 5.0), 2.0));
            }
            match kind {
                LinkKind::Inlet => shapes.extend([-4.0, 4.0].map(|v| along.line((-6.0, v), (1.0, v), 2.0))),
                LinkKind::Changeover => shapes.push(along.circle(24.0, 4.0, closed)),
                LinkKind::Tie => shapes.push(along.line((22.0, -5.0), (22.0, 5.0), 2.0)),
                _ => {}
            }
        }
    }
}

/// A padlock, ten wide and high; `x`, `y` is the left end of its lower edge.
pub fn padlock(x: f32, y: f32, shapes: &mut Vec<Shape>) {
    let ink = Ink::Ink;
    shapes.push(Shape::Box { x, y: y - 6.0, w: 10.0, h: 6.0, thick: 1.0, filled: true, ink });
    let side = |dx: f32| Shape::Line { x1: x + dx, y1: y - 6.0, x2: x + dx, y2: y - 9.0, thick: 1.5, ink };
    shapes.extend([side(2.5), side(7.5)]);
    shapes.push(Shape::Line { x1: x + 2.5, y1: y - 9.0, x2: x + 7.5, y2: y - 9.0, thick: 1.5, ink });
}

/// The symbol of a source: a circle with its letter.
pub fn source(sort: SourceSort, x: f32, y: f32, r: f32, shapes: &mut Vec<Shape>) {
    let ink = Ink::Ink;
    let text = |text: &str, size: f32| Shape::Text { x, y: y + size * 0.36, size, text: text.into(), ink };
    match sort {
        SourceSort::Battery => {
            // Long and short plates.
            for (dy, half, thick) in [(-6.0, 12.0, 2.0), (0.0, 6.0, 4.0), (6.0, 12.0, 2.0), (12.0, 6.0, 4.0)] {
                shapes.push(Shape::Line { x1: x - half, y1: y + dy, x2: x + half, y2: y + dy, thick, ink });
            }
        }
        SourceSort::Pv | SourceSort::Ups => {
            shapes.push(Shape::Box {
                x: x - r - 3.0,
                y: y - r,
                w: 2.0 * r + 6.0,
                h: 2.0 * r,
                thick: 2.0,
                filled: false,
                ink,
            });
            shapes.push(text(if sort == SourceSort::Pv { "PV" } else { "UPS" }, 13.0));
        }
        SourceSort::Generator => {
            shapes.push(Shape::Circle { x, y, r, thick: 2.0, filled: false, ink });
            shapes.push(text("G", 16.0));
        }
        SourceSort::Control => {
            shapes.push(Shape::Circle { x, y, r, thick: 2.0, filled: false, ink });
            shapes.push(text("C", 16.0));
        }
        SourceSort::Grid | SourceSort::SecondFeeder | SourceSort::Unsaid => {
            shapes.push(Shape::Circle { x, y, r, thick: 2.0, filled: false, ink });
            shapes.push(text("~", 20.0));
        }
    }
}
