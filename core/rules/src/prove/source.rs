//! The drawing of a system: its source, its terminals by name, where it is tied to earth, and what two of them show to each other.
//!
//! How it is earthed is drawn as IEC 60364-1 tells the arrangements apart (from memory): tied to the same earth as the protective conductor in
//! TN, to an earth of its own in TT, to none in IT. Where nobody knows, nothing is tied, and "?" stands there.
//!
//! Where an end of a winding lies follows from [`Supply::spot`], and a figure is what the plan of a job of this system expects: the drawing
//! cannot say otherwise than they. What is told apart here is only what the source is wound as. Start at [`source`].

use super::plan::if_live;
use super::{Case, Conductor, Earthing, IfLive, Role, Supply, System};
use stillbar_values::drawing::{Drawing, Ink, Shape};

/// What is written between two terminals, for whoever words it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawnVolts {
    /// About so many millivolts.
    About(u32),
    /// Anything from nothing to so many millivolts.
    UpTo(u32),
    /// One of two, the lower first, in millivolts.
    Either(u32, u32),
}

/// A place in the drawing.
type DrawnAt = (f32, f32);

/// Small enough for two side by side on a phone, at about one pixel a unit.
const WIDTH: f32 = 169.0;
const HEIGHT: f32 = 122.0;
/// The first terminal, and the last one.
const TOP: f32 = 14.0;
const BOTTOM: f32 = 101.0;
/// From the last terminal that the source reaches to the next: of several below it, of one, and of one below three lines, whose windings need
/// as much across as down.
const NEAR: f32 = 21.75;
const FAR: f32 = 28.0;
const FARTHER: f32 = 36.0;
/// The wire that leads to earth, the left of what is wound, and the terminals.
const EARTH: f32 = 9.0;
const LEFT: f32 = 20.0;
const MIDDLE: f32 = 38.0;
const TERMINALS: f32 = 70.0;
const NAMES: f32 = 93.0;
const BRACKETS: f32 = 113.0;
const FIGURES: f32 = 141.5;
/// Heights of letters.
const NAME: f32 = 15.0;
const FIGURE: f32 = 14.0;
const WIRE: f32 = 2.0;
/// Terminals of a set of one's own that have room.
const MOST: usize = 5;

/// From the earth of the source to that of the protective conductor, where they are two (TT).
const APART: f32 = 28.0;

/// Draws a supply that is earthed in this way; `words` says a voltage in the fewest letters, in one line or two.
pub fn source(supply: &Supply, earthing: Earthing, words: impl Fn(DrawnVolts) -> Vec<String>) -> Drawing {
    let conductors = supply.conductors();
    let rows = rows(&conductors);
    let mut shapes = Vec::new();
    if let Some(place) = placed(supply, &conductors, &rows) {
        let seen = DrawnSource { supply, earthing, conductors: &conductors, rows: &rows, place: &place };
        let earth = seen.windings(&mut shapes);
        seen.terminals(&mut shapes, earth);
        seen.earth(&mut shapes, earth);
        seen.brackets(&mut shapes, words);
    } else {
        own(&mut shapes, &conductors);
    }
    Drawing { width: WIDTH, height: HEIGHT, shapes }
}

/// A supply with the places of its ends and terminals.
struct DrawnSource<'a> {
    supply: &'a Supply,
    earthing: Earthing,
    conductors: &'a [Conductor],
    rows: &'a [f32],
    place: &'a dyn Fn((f64, f64)) -> DrawnAt,
}

impl DrawnSource<'_> {
    /// Where the source has this conductor.
    fn end(&self, conductor: &Conductor) -> Option<DrawnAt> {
        self.supply.spot(&conductor.name).map(self.place)
    }

    /// What the table takes as the point at earth: neutral, star point, the middle of a winding, or the line or pole that is at earth.
    fn middle(&self) -> DrawnAt {
        (self.place)((0.0, 0.0))
    }

    /// What a pair shows, as the plan has it: `a` above `b`. The plan is asked with the less dangerous of the two first.
    fn live(&self, a: &Conductor, b: &Conductor) -> DrawnVolts {
        let case = Case::of_supply(self.supply.clone(), self.earthing);
        drawn(if b.role.danger() < a.role.danger() { if_live(&case, b, a) } else { if_live(&case, a, b) })
    }

    /// Draws the source. Where the wire to earth goes down.
    fn windings(&self, shapes: &mut Vec<Shape>) -> f32 {
        let middle = self.middle();
        let lines: Vec<DrawnAt> =
            self.conductors.iter().filter(|c| c.role.is_line()).filter_map(|c| self.end(c)).collect();
        match self.supply.system {
            System::HighLeg | System::CornerGrounded => {
                for (k, end) in lines.iter().enumerate() {
                    wind(shapes, *end, lines[(k + 1) % lines.len()], Ink::Ink);
                }
            }
            System::OnePhase | System::SplitPhase | System::SiteTransformer => {
                lines.iter().for_each(|end| wind(shapes, *end, middle, Ink::Ink));
            }
            System::DcTwoWire => lines.windows(2).for_each(|ends| plates(shapes, ends[0], ends[1])),
            System::DcThreeWire => {
                lines.windows(2).for_each(|ends| {
                    plates(shapes, ends[0], middle);
                    plates(shapes, middle, ends[1]);
                });
            }
            System::ThreePhaseNeutral | System::ThreeWire | System::Pen | System::SiteTransformerThree => {
                lines.iter().for_each(|end| wind(shapes, middle, *end, Ink::Ink));
            }
            System::TwoLines => {
                // The third winding, whose line does not come here, lies where the wire to earth goes elsewhere.
                let across = |end: &DrawnAt| (end.0 - middle.0, end.1 - middle.1);
                let sum = lines.iter().map(across).fold((0.0, 0.0), |sum, end| (sum.0 + end.0, sum.1 + end.1));
                wind(shapes, middle, (middle.0 - sum.0, middle.1 - sum.1), Ink::Quiet);
                lines.iter().for_each(|end| wind(shapes, middle, *end, Ink::Ink));
                return middle.0;
            }
            System::Own => {}
        }
        EARTH
    }

    /// Each terminal with its name, and the wire to it. `earth`: where the wire to earth goes down.
    fn terminals(&self, shapes: &mut Vec<Shape>, earth: f32) {
        let to = TERMINALS - 4.0;
        for (conductor, y) in self.conductors.iter().zip(self.rows) {
            match (conductor.role, self.end(conductor)) {
                (Role::Protective, _) => wire(shapes, (self.of_protective(earth), *y), (to, *y), Ink::Ink),
                // From the middle of the source to the left, where no line leads, and down to its row.
                (Role::Neutral | Role::Pen, Some(end)) if end.1 + 1.0 < *y => {
                    wire(shapes, end, (earth, end.1), Ink::Ink);
                    wire(shapes, (earth, end.1), (earth, *y), Ink::Ink);
                    wire(shapes, (earth, *y), (to, *y), Ink::Ink);
                    dot(shapes, end);
                }
                (_, Some(end)) => wire(shapes, end, (to, *y), Ink::Ink),
                (_, None) => {}
            }
            terminal(shapes, *y);
            // A longer name keeps clear of the terminal and of the figures.
            let size = if conductor.name.chars().count() > 2 { FIGURE } else { NAME };
            shapes.push(text(NAMES, *y + 5.3, size, conductor.name.clone()));
        }
    }

    /// Where the protective conductor goes to earth. `earth`: where the wire to the earth of the source goes down.
    fn of_protective(&self, earth: f32) -> f32 {
        // Right of the source's, so that no wire to it crosses that one, and clear of the terminals.
        if self.earthing == Earthing::Tt { (earth + APART).min(TERMINALS - 12.0) } else { earth }
    }

    /// Nobody knows what of the source is tied to earth, or whether anything is.
    fn unknown(shapes: &mut Vec<Shape>, (x, last): DrawnAt) {
        wire(shapes, (x, last - 17.0), (x, last), Ink::Quiet);
        shapes.push(text(x + 10.0, last - 7.0, FIGURE, "?".into()));
    }

    /// The sign of earth at the last terminal, and what of the source is tied to it or to an earth of its own.
    fn earth(&self, shapes: &mut Vec<Shape>, earth: f32) {
        let Some((at_earth, last)) = self.conductors.iter().zip(self.rows).find(|(c, _)| c.role.is_reference()) else {
            return;
        };
        if at_earth.role == Role::Pen {
            match self.earthing {
                // The neutral of an unearthed source is no PEN: that is for the case to say, and no earth is drawn.
                Earthing::It => {}
                Earthing::Unknown => shapes.push(text(earth + 6.0, last + 16.0, FIGURE, "?".into())),
                _ => {
                    ground(shapes, (earth, *last));
                    dot(shapes, (earth, *last));
                }
            }
            return;
        }
        ground(shapes, (self.of_protective(earth), *last));
        let line = self.conductors.iter().find(|c| c.role.is_line());
        let tied = line.is_some_and(|line| !matches!(self.live(line, at_earth), DrawnVolts::UpTo(_)));
        let neutral = self.conductors.iter().zip(self.rows).find(|(c, _)| c.role == Role::Neutral);
        match neutral {
            _ if self.earthing == Earthing::It => return,
            _ if self.earthing == Earthing::Unknown => return Self::unknown(shapes, (earth, *last)),
            // A line is at earth, and nobody has shown which; or the star point or a corner is.
            _ if !tied && matches!(self.supply.system, System::CornerGrounded | System::ThreeWire) => {
                let from = self.middle();
                wire(shapes, from, (earth, from.1), Ink::Quiet);
                wire(shapes, (earth, from.1), (earth, *last), Ink::Quiet);
                shapes.push(text(earth + 10.0, last - 7.0, FIGURE, "?".into()));
            }
            _ if !tied => Self::unknown(shapes, (earth, *last)),
            Some((neutral, y)) => {
                // One that is level with its end has no wire to the left yet.
                if let Some(end) = self.end(neutral).filter(|end| (end.1 - y).abs() < 1.0) {
                    wire(shapes, end, (earth, *y), Ink::Ink);
                }
                wire(shapes, (earth, *y), (earth, *last), Ink::Ink);
                dot(shapes, (earth, *y));
            }
            None => {
                let middle = self.middle();
                // From the corner next to the terminals below the windings: across one it would look like its tap.
                let beside = self.supply.system == System::CornerGrounded && middle.0 > MIDDLE;
                let down = if beside { last - 15.0 } else { middle.1 };
                wire(shapes, middle, (middle.0, down), Ink::Ink);
                wire(shapes, (middle.0, down), (earth, down), Ink::Ink);
                wire(shapes, (earth, down), (earth, *last), Ink::Ink);
                dot(shapes, middle);
            }
        }
        if self.earthing == Earthing::Tt {
            ground(shapes, (earth, *last));
        } else {
            dot(shapes, (earth, *last));
        }
    }

    /// What stands between the first line and the next one, and between the last line and the terminal below it.
    fn brackets(&self, shapes: &mut Vec<Shape>, words: impl Fn(DrawnVolts) -> Vec<String>) {
        let lines: Vec<usize> = (0..self.conductors.len()).filter(|k| self.conductors[*k].role.is_line()).collect();
        let between = lines.get(..2).map(|pair| (pair[0], pair[1]));
        let below = lines.last().map(|last| (*last, last + 1)).filter(|(_, next)| *next < self.conductors.len());
        for (a, b) in between.into_iter().chain(below) {
            let volts = self.live(&self.conductors[a], &self.conductors[b]);
            bracket(shapes, self.rows[a] + 2.0, self.rows[b] - 2.0, words(volts));
        }
    }
}

fn drawn(live: IfLive) -> DrawnVolts {
    match live {
        IfLive::About(mv) => DrawnVolts::About(mv),
        IfLive::Either { phases, middle } => DrawnVolts::Either(phases.min(middle), phases.max(middle)),
        IfLive::UpTo(mv) | IfLive::Middles(Some(mv)) => DrawnVolts::UpTo(mv),
        IfLive::Middles(None) | IfLive::Unsaid => DrawnVolts::UpTo(0),
    }
}

/// How far down each terminal is: those that the source reaches share what the others leave.
fn rows(conductors: &[Conductor]) -> Vec<f32> {
    let lines = conductors.iter().filter(|c| c.role.is_line()).count();
    // One line alone has its other end in the neutral.
    let ends = if lines == 1 { 2 } else { conductors.iter().rposition(|c| c.role.is_line()).map_or(1, |k| k + 1) };
    let below = conductors.len().saturating_sub(ends);
    let gap = match (below, lines) {
        (2.., _) => NEAR,
        (_, 3..) => FARTHER,
        _ => FAR,
    };
    let room = BOTTOM - TOP - gap * below as f32;
    let step = room / ends.saturating_sub(1).max(1) as f32;
    let row = |k: usize| match k.checked_sub(ends) {
        None => TOP + step * k as f32,
        Some(k) => TOP + room + gap * (k + 1) as f32,
    };
    (0..conductors.len()).map(row).collect()
}

/// Carries the table's spots into the drawing: each line to the height of its terminal, everything else as it stands to them.
fn placed(supply: &Supply, conductors: &[Conductor], rows: &[f32]) -> Option<impl Fn((f64, f64)) -> DrawnAt + use<>> {
    let ends: Vec<((f64, f64), f32)> = conductors
        .iter()
        .zip(rows)
        .filter(|(c, _)| c.role.is_line() || (c.role == Role::Neutral && supply.system == System::OnePhase))
        .filter_map(|(c, y)| Some((supply.spot(&c.name)?, *y)))
        .collect();
    let (one, two) = (ends.first()?, ends.get(1)?);
    let three = ends.get(2);
    // Two directions of the table and of the drawing: from the first end to the second, and to the third or square to the first.
    let along = (two.0.0 - one.0.0, two.0.1 - one.0.1);
    let size = f64::from(two.1 - one.1) / along.0.hypot(along.1);
    let (from, there, other, here) = match three {
        // Equal sides: the middle one points to the terminals.
        Some(three) => {
            let out = (three.1 - one.1) * 0.866_025_4;
            let across = (three.0.0 - one.0.0, three.0.1 - one.0.1);
            ((LEFT, one.1), (out, two.1 - one.1), across, (0.0, three.1 - one.1))
        }
        None => {
            // What lies beside the two comes to their left.
            let square = (-along.1, along.0);
            let side = (-one.0.0) * square.0 + (-one.0.1) * square.1;
            let square = if side < 0.0 { (-square.0, -square.1) } else { square };
            let x = if side.abs() > 1e-6 { MIDDLE + 20.0 } else { MIDDLE };
            let left = square.0.hypot(square.1) * size;
            ((x, one.1), (0.0, two.1 - one.1), square, (-left as f32, 0.0))
        }
    };
    let (start, area) = (one.0, along.0 * other.1 - along.1 * other.0);
    Some(move |spot: (f64, f64)| {
        let (x, y) = (spot.0 - start.0, spot.1 - start.1);
        let a = ((x * other.1 - y * other.0) / area) as f32;
        let b = ((along.0 * y - along.1 * x) / area) as f32;
        (from.0 + a * there.0 + b * here.0, from.1 + a * there.1 + b * here.1)
    })
}

/// A set of one's own: nobody knows its source.
fn own(shapes: &mut Vec<Shape>, conductors: &[Conductor]) {
    let mut names: Vec<String> = conductors.iter().map(|c| c.name.clone()).collect();
    if names.is_empty() {
        names = vec!["?".into(); 3];
    }
    if names.len() > MOST {
        names.truncate(MOST - 1);
        names.push("…".into());
    }
    let step = (BOTTOM + 7.0 - TOP) / (names.len().max(2) - 1) as f32;
    shapes.push(Shape::Box {
        x: 3.0,
        y: TOP - 8.0,
        w: 44.0,
        h: BOTTOM - TOP + 23.0,
        thick: WIRE,
        filled: false,
        ink: Ink::Ink,
    });
    shapes.push(text(25.0, HEIGHT / 2.0 + 10.0, 28.0, "?".into()));
    for (k, name) in names.into_iter().enumerate() {
        let y = TOP + step * k as f32;
        wire(shapes, (47.0, y), (TERMINALS - 4.0, y), Ink::Ink);
        terminal(shapes, y);
        // A letter is about 0.7 of its height wide at most.
        let room = WIDTH - TERMINALS - 8.0;
        let size = (room / (0.7 * name.chars().count().max(1) as f32)).min(NAME);
        let wide = 0.7 * size * name.chars().count() as f32;
        shapes.push(text(TERMINALS + 8.0 + (wide / 2.0).max(14.0).min(room / 2.0), y + 5.3, size, name));
    }
}

/// A winding from one place to another, as a row of turns.
fn wind(shapes: &mut Vec<Shape>, (x1, y1): DrawnAt, (x2, y2): DrawnAt, ink: Ink) {
    let far = (x2 - x1).hypot(y2 - y1);
    let turns = (far / 6.5).round().max(2.0);
    let r = far / turns / 2.0;
    for k in 0..turns as usize {
        let part = (k as f32 + 0.5) / turns;
        let (x, y) = (x1 + (x2 - x1) * part, y1 + (y2 - y1) * part);
        shapes.push(Shape::Circle { x, y, r, thick: WIRE, filled: false, ink });
    }
}

/// A battery between two places, one below the other: the long thin plate is the positive one (IEC 60617).
fn plates(shapes: &mut Vec<Shape>, (x, from): DrawnAt, (_, to): DrawnAt) {
    let middle = (from + to) / 2.0;
    wire(shapes, (x, from), (x, middle - 8.0), Ink::Ink);
    wire(shapes, (x, middle + 8.0), (x, to), Ink::Ink);
    for (dy, half, thick) in [(-8.0, 11.0, WIRE), (-3.0, 5.0, 4.0), (3.0, 11.0, WIRE), (8.0, 5.0, 4.0)] {
        let y = middle + dy;
        shapes.push(Shape::Line { x1: x - half, y1: y, x2: x + half, y2: y, thick, ink: Ink::Ink });
    }
}

/// The sign of earth below a place (IEC 60417-5017).
fn ground(shapes: &mut Vec<Shape>, (x, y): DrawnAt) {
    wire(shapes, (x, y), (x, y + 9.0), Ink::Ink);
    for (dy, half) in [(9.0, 7.0), (13.5, 4.5), (18.0, 1.5)] {
        wire(shapes, (x - half, y + dy), (x + half, y + dy), Ink::Ink);
    }
}

fn wire(shapes: &mut Vec<Shape>, (x1, y1): DrawnAt, (x2, y2): DrawnAt, ink: Ink) {
    shapes.push(Shape::Line { x1, y1, x2, y2, thick: WIRE, ink });
}

/// Where wires are joined.
fn dot(shapes: &mut Vec<Shape>, (x, y): DrawnAt) {
    shapes.push(Shape::Circle { x, y, r: 3.0, thick: 0.0, filled: true, ink: Ink::Ink });
}

fn text(x: f32, y: f32, size: f32, text: String) -> Shape {
    Shape::Text { x, y, size, text, ink: Ink::Ink }
}

fn terminal(shapes: &mut Vec<Shape>, y: f32) {
    shapes.push(Shape::Circle { x: TERMINALS, y, r: 4.0, thick: WIRE, filled: false, ink: Ink::Ink });
}

/// A bracket from one terminal to another with what stands between them.
fn bracket(shapes: &mut Vec<Shape>, upper: f32, lower: f32, lines: Vec<String>) {
    wire(shapes, (BRACKETS, upper), (BRACKETS, lower), Ink::Quiet);
    for y in [upper, lower] {
        wire(shapes, (BRACKETS - 3.0, y), (BRACKETS, y), Ink::Quiet);
    }
    let middle = (upper + lower) / 2.0 + 5.0 - lines.len().saturating_sub(1) as f32 * FIGURE / 2.0;
    for (k, line) in lines.into_iter().enumerate() {
        shapes.push(text(FIGURES, middle + FIGURE * k as f32, FIGURE, line));
    }
}
