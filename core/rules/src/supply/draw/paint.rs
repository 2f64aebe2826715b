//! From places to shapes: lines first, then symbols, then texts.

use super::place::{line_x, port_x};
use super::symbol::{self, Along, LONG};
use super::text::{NAME, SMALL, short, width};
use super::tree::{
    Item, NodeBody, SYMBOL, Sideways, TreePlan, link_lines, list_texts, name_lines, note_lines, padlock, row,
};
use super::{DrawnScene, Label};
use crate::supply::model::{LinkKind, NodeKind};
use stillbar_values::drawing::{Drawing, Ink, Shape};

/// How thick the line of an uncovered path is, under the line itself.
const PATH: f32 = 8.0;
/// Between two lines of small text.
const LINE: f32 = 13.0;
/// Around the work zone.
const FRAME: f32 = 6.0;

/// Paints what has its place.
pub fn paint(scene: &DrawnScene, plan: &TreePlan, (width, height): (f32, f32)) -> Drawing {
    let mut paint = Paint { scene, plan, paths: Vec::new(), lines: Vec::new(), over: Vec::new() };
    for (i, item) in plan.items.iter().enumerate() {
        match &item.body {
            NodeBody::Node(node) => paint.node(i, *node),
            NodeBody::List(loads) => paint.list(i, loads),
            NodeBody::Column | NodeBody::TieOut(_) | NodeBody::TieIn => {}
        }
        if let Some(parent) = item.parent {
            paint.hang(i, parent);
        }
    }
    for side in &plan.sideways {
        paint.sideways(side);
    }
    if scene.is_part() {
        let all = scene.network.nodes().len();
        let text = (scene.label)(Label::Part { drawn: scene.nodes.len(), all });
        paint.over.push(Shape::Text { x: width / 2.0, y: height - 8.0, size: SMALL, text, ink: Ink::Quiet });
    }
    let Paint { paths, lines, over, .. } = paint;
    Drawing { width, height, shapes: paths.into_iter().chain(lines).chain(over).collect() }
}

struct Paint<'a> {
    scene: &'a DrawnScene<'a>,
    plan: &'a TreePlan,
    /// Below everything.
    paths: Vec<Shape>,
    lines: Vec<Shape>,
    over: Vec<Shape>,
}

impl Paint<'_> {
    fn line(&mut self, link: Option<usize>, (x1, y1): (f32, f32), (x2, y2): (f32, f32)) {
        if link.is_some_and(|link| self.scene.path_links.contains(&link)) {
            self.paths.push(Shape::Line { x1, y1, x2, y2, thick: PATH, ink: Ink::Forbid });
        }
        self.lines.push(Shape::Line { x1, y1, x2, y2, thick: 2.0, ink: Ink::Ink });
    }

    /// A text whose left end is at `x`.
    fn left(&mut self, x: f32, y: f32, size: f32, text: &str, ink: Ink) {
        self.over.push(Shape::Text { x: x + width(text, size) / 2.0, y, size, text: text.to_owned(), ink });
    }

    /// From what an item hangs on down to it. Lists and mere lines have no symbol here.
    fn hang(&mut self, i: usize, parent: usize) {
        let (item, above) = (&self.plan.items[i], &self.plan.items[parent]);
        let x = line_x(self.plan, i);
        let from = above.at.1 + above.own.1;
        match &item.body {
            NodeBody::Node(_) => {
                let link = item.via;
                match link {
                    Some(link) => self.down(link, x, from, item.at.1),
                    None => self.line(None, (x, from), (x, item.at.1)),
                }
            }
            NodeBody::List(loads) => {
                let on_path = loads.iter().map(|l| l.0).find(|l| self.scene.path_links.contains(l));
                self.line(on_path, (x, from), (x, item.at.1));
            }
            NodeBody::Column | NodeBody::TieOut(_) | NodeBody::TieIn => {}
        }
    }

    /// A link straight down, its symbol right above the lower end.
    fn down(&mut self, link: usize, x: f32, from: f32, to: f32) {
        if self.scene.network.links()[link].kind == LinkKind::Cable {
            self.line(Some(link), (x, from), (x, to));
            return;
        }
        let symbol = to - SYMBOL + 14.0;
        self.line(Some(link), (x, from), (x, symbol));
        self.line(Some(link), (x, symbol + LONG), (x, to));
        self.symbol(link, Along { x, y: symbol, right: false });
        let lines = link_lines(self.scene, link);
        let top = symbol + LONG / 2.0 - LINE * lines.len() as f32 / 2.0 + 10.0;
        self.link_texts(link, &lines, x + 13.0, top);
    }

    fn symbol(&mut self, link: usize, along: Along) {
        if self.scene.path_links.contains(&link) {
            let (x2, y2) = if along.right { (along.x + LONG, along.y) } else { (along.x, along.y + LONG) };
            self.paths.push(Shape::Line { x1: along.x, y1: along.y, x2, y2, thick: PATH, ink: Ink::Forbid });
        }
        symbol::link(self.scene, link, along, &mut self.over);
    }

    fn link_texts(&mut self, link: usize, lines: &[(String, bool)], x: f32, y: f32) {
        for (i, (text, warns)) in lines.iter().enumerate() {
            let y = y + LINE * i as f32;
            let mut x = x;
            if i == 1 && self.scene.locked[link] {
                symbol::padlock(x, y, &mut self.over);
                x += padlock(self.scene, link);
            }
            self.left(x, y, SMALL, text, if *warns { Ink::Forbid } else { Ink::Ink });
        }
    }

    /// From a node's column down to its lane, along it, and down into the other node, or up to the other end of a tie.
    fn sideways(&mut self, side: &Sideways) {
        let Sideways { link, from, to, y, .. } = *side;
        let first = side.columns.first().map_or(from, |c| *c);
        let parent = self.plan.items[first].parent.unwrap_or(first);
        let above = &self.plan.items[parent];
        let mut at = (line_x(self.plan, first), above.at.1 + above.own.1);
        for &column in &side.columns {
            let x = line_x(self.plan, column);
            if (x - at.0).abs() > 0.5 {
                // Columns of one link stand below each other but for the rounding of their blocks.
                let next = (x, at.1);
                self.line(Some(link), at, next);
                at = next;
            }
        }
        let out = &self.plan.items[from];
        if let NodeBody::TieOut(_) = out.body {
            self.down(link, at.0, at.1, at.1 + SYMBOL);
            at.1 += SYMBOL;
        }
        self.line(Some(link), at, (at.0, y));
        let end = &self.plan.items[to];
        if let NodeBody::TieIn = end.body {
            let x = line_x(self.plan, to);
            let parent = end.parent.map(|p| &self.plan.items[p]);
            self.line(Some(link), (at.0, y), (x, y));
            self.line(Some(link), (x, y), (x, parent.map_or(y, |p| p.at.1 + p.own.1)));
        } else {
            let x = port_x(self.plan, to, link);
            self.line(Some(link), (at.0, y), (x, y));
            let top = end.at.1;
            self.down(link, x, y, top);
        }
    }

    fn node(&mut self, i: usize, node: usize) {
        let item = &self.plan.items[i];
        let part = &self.scene.network.nodes()[node];
        let ((x, y), (w, h)) = (item.at, item.own);
        let bottom = y + h;
        let lines = name_lines(part);
        let notes = note_lines(self.scene, node);
        let (left, right) = self.bar(i);
        let mut middle = x + w / 2.0;
        if part.kind == NodeKind::Source {
            // Above its symbol, as far as there is room.
            let small = notes.iter().map(|(note, _)| width(note, SMALL));
            let half = lines.iter().map(|line| width(line, NAME)).chain(small).fold(0.0, f32::max) / 2.0;
            let (low, high) = (item.block.0 + half, item.block.0 + item.block.1 - half);
            middle = if low < high { stem(item, left, right).clamp(low, high) } else { middle };
        }
        for (n, text) in lines.iter().enumerate() {
            let y = y + 19.0 + 17.0 * n as f32;
            self.over.push(Shape::Text { x: middle, y, size: NAME, text: text.clone(), ink: Ink::Ink });
        }
        let under = y + 17.0 + 17.0 * lines.len() as f32;
        self.notes(&notes, middle, under, None);
        if part.kind == NodeKind::Source {
            let stem = stem(item, left, right);
            let r = 15.0;
            symbol::source(part.sort, stem, bottom - 23.0, r, &mut self.over);
            self.line(None, (stem, bottom - 8.0), (stem, bottom));
            self.lines.push(bar(left.min(stem), right.max(stem), bottom, 2.0));
        } else {
            let (thick, ink) = if part.kind == NodeKind::Unknown { (4.0, Ink::Warn) } else { (1.5, Ink::Ink) };
            self.lines.push(Shape::Box { x, y, w, h, thick, filled: true, ink: Ink::Paper });
            self.lines.push(Shape::Box { x, y, w, h, thick, filled: false, ink });
            let thick = if part.kind == NodeKind::Board { 6.0 } else { 2.0 };
            self.lines.push(bar(left.min(x), right.max(x + w), bottom, thick));
        }
        if self.scene.path_nodes.contains(&node) && right > left {
            self.path_bar(i, bottom);
        }
        if self.scene.zone.contains(&node) {
            self.frame(x, y, w, h);
        }
    }

    /// The part of a node's bar that uncovered paths use.
    fn path_bar(&mut self, i: usize, y: f32) {
        let item = &self.plan.items[i];
        let mut xs: Vec<f32> = item.below.iter().filter(|b| self.on_path(**b)).map(|b| line_x(self.plan, *b)).collect();
        xs.extend(item.via.filter(|link| self.scene.path_links.contains(link)).map(|_| line_x(self.plan, i)));
        let (left, right) = xs.iter().fold((f32::MAX, f32::MIN), |(a, b), x| (a.min(*x), b.max(*x)));
        if right > left {
            self.paths.push(Shape::Line { x1: left, y1: y, x2: right, y2: y, thick: PATH + 4.0, ink: Ink::Forbid });
        }
    }

    fn on_path(&self, item: usize) -> bool {
        let on = |link: &usize| self.scene.path_links.contains(link);
        match &self.plan.items[item].body {
            NodeBody::Node(_) => self.plan.items[item].via.as_ref().is_some_and(on),
            NodeBody::List(loads) => loads.iter().any(|l| on(&l.0)),
            NodeBody::TieOut(link) => on(link),
            NodeBody::Column | NodeBody::TieIn => {
                self.plan.sideways.iter().any(|s| (s.columns.contains(&item) || s.to == item) && on(&s.link))
            }
        }
    }

    /// From where to where what hangs below a node reaches.
    fn bar(&self, i: usize) -> (f32, f32) {
        let xs = self.plan.items[i].below.iter().map(|b| line_x(self.plan, *b));
        xs.fold((f32::MAX, f32::MIN), |(a, b), x| (a.min(x), b.max(x)))
    }

    fn frame(&mut self, x: f32, y: f32, w: f32, h: f32) {
        let (x, y, w, h) = (x - FRAME, y - FRAME, w + 2.0 * FRAME, h + 2.0 * FRAME);
        self.lines.push(Shape::Box { x, y, w, h, thick: 4.0, filled: false, ink: Ink::Ink });
    }

    /// Small lines below a name: centred on `x`, or from `left` on.
    fn notes(&mut self, notes: &[(String, bool)], x: f32, y: f32, left: Option<f32>) {
        for (n, (text, warns)) in notes.iter().enumerate() {
            let y = y + 15.0 * n as f32;
            let ink = if *warns { Ink::Forbid } else { Ink::Ink };
            match left {
                Some(x) => self.left(x, y, SMALL, text, ink),
                None => self.over.push(Shape::Text { x, y, size: SMALL, text: text.clone(), ink }),
            }
        }
    }

    fn list(&mut self, i: usize, loads: &[(usize, usize)]) {
        let item = &self.plan.items[i];
        let riser = line_x(self.plan, i);
        let switch = loads.iter().map(|load| list_texts(self.scene, *load).0).fold(0.0, f32::max);
        let mut top = item.at.1;
        let mut last = top;
        let mut deepest = None;
        for &(link, node) in loads {
            let high = row(self.scene, (link, node));
            let y = top + 24.0;
            if self.scene.path_links.contains(&link) {
                deepest = Some((link, y));
            }
            let end = riser + switch + 8.0;
            if self.scene.network.links()[link].kind == LinkKind::Cable {
                self.line(Some(link), (riser, y), (end, y));
            } else {
                let from = riser + 8.0;
                self.line(Some(link), (riser, y), (from, y));
                self.line(Some(link), (from + LONG, y), (end, y));
                self.symbol(link, Along { x: from, y, right: true });
                let lines = link_lines(self.scene, link);
                self.left(riser + 6.0, y - 14.0, SMALL, &lines[0].0, Ink::Ink);
                let rest: Vec<_> = [(String::new(), false)].into_iter().chain(lines[1..].iter().cloned()).collect();
                self.link_texts(link, &rest, riser + 6.0, y + 20.0 - LINE);
            }
            self.arrow(end, y);
            self.load(node, end + 8.0, y, high);
            (last, top) = (y, top + high);
        }
        self.line(None, (riser, item.at.1), (riser, last));
        if let Some((link, y)) = deepest {
            self.line(Some(link), (riser, item.at.1), (riser, y));
        }
    }

    fn arrow(&mut self, x: f32, y: f32) {
        for dy in [-5.0, 5.0] {
            self.over.push(Shape::Line { x1: x, y1: y, x2: x - 7.0, y2: y + dy, thick: 2.0, ink: Ink::Ink });
        }
    }

    fn load(&mut self, node: usize, x: f32, y: f32, high: f32) {
        let part = &self.scene.network.nodes()[node];
        let lines = name_lines(part);
        let notes = note_lines(self.scene, node);
        let count = lines.len() + notes.len();
        let first = y + 5.0 - 8.0 * (count as f32 - 1.0);
        for (n, text) in lines.iter().enumerate() {
            self.left(x, first + 16.0 * n as f32, NAME, &short(text, 40), Ink::Ink);
        }
        self.notes(&notes, 0.0, first + 16.0 * lines.len() as f32, Some(x));
        let wide = list_texts(self.scene, (self.scene.network.around(node)[0].link as usize, node)).1;
        let (top, h) = (y - 22.0, high - 8.0);
        if part.kind == NodeKind::Unknown {
            self.lines.push(Shape::Box { x: x - 4.0, y: top, w: wide, h, thick: 4.0, filled: false, ink: Ink::Warn });
        }
        if self.scene.zone.contains(&node) {
            self.frame(x, top + 4.0, wide - 6.0, h - 8.0);
        }
    }
}

/// Where a source's symbol stands: above the one line that leaves it, or in the middle.
fn stem(item: &Item, left: f32, right: f32) -> f32 {
    let middle = item.at.0 + item.own.0 / 2.0;
    if right < left { middle } else { middle.clamp(left, right) }
}

fn bar(x1: f32, x2: f32, y: f32, thick: f32) -> Shape {
    Shape::Line { x1, y1: y, x2, y2: y, thick, ink: Ink::Ink }
}
