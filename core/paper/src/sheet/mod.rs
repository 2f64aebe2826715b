//! Tags and caution signs to print: PDF on common label grids of A4 and Letter.
//!
//! Promises: what cannot be printed whole is refused or shortened with a mark, never clipped; the count is bounded. Start at
//! [`print()`] and [`Grid`].

mod paper;
mod sign;

use paper::{BLACK, Paper, Rgb};
use stillbar_media::tag::{QUIET, Symbol};
use stillbar_values::TagId;

/// Most tags in one file.
pub const MAX_TAGS: usize = 2400;
/// Longest name of a site or point, in characters.
pub const MAX_NAME: usize = 120;

/// A grid of labels on a page; lengths in millimetres. The sizes are those that sheets of labels commonly have, from memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// As it is called on the command line.
    pub name: &'static str,
    /// Width and height of the page.
    pub page: (f32, f32),
    /// Columns and rows.
    pub cells: (usize, usize),
    /// Width and height of a label.
    pub label: (f32, f32),
    /// From the page's left and top edge to the first label.
    pub margin: (f32, f32),
    /// From the left edge of a label to that of the next, and from the top edge to the next.
    pub pitch: (f32, f32),
}

const A4: (f32, f32) = (210.0, 297.0);
const LETTER: (f32, f32) = (215.9, 279.4);

impl Grid {
    /// All.
    pub const ALL: [Grid; 5] = [
        Grid { name: "a4-3x8", page: A4, cells: (3, 8), label: (70.0, 37.0), margin: (0.0, 0.5), pitch: (70.0, 37.0) },
        Grid {
            name: "a4-3x7",
            page: A4,
            cells: (3, 7),
            label: (63.5, 38.1),
            margin: (7.2, 15.15),
            pitch: (66.0, 38.1),
        },
        Grid {
            name: "a4-2x7",
            page: A4,
            cells: (2, 7),
            label: (99.1, 38.1),
            margin: (4.65, 15.15),
            pitch: (101.6, 38.1),
        },
        Grid {
            name: "letter-3x10",
            page: LETTER,
            cells: (3, 10),
            label: (66.675, 25.4),
            margin: (4.7625, 12.7),
            pitch: (69.85, 25.4),
        },
        Grid {
            name: "letter-2x5",
            page: LETTER,
            cells: (2, 5),
            label: (101.6, 50.8),
            margin: (3.96875, 12.7),
            pitch: (106.3625, 50.8),
        },
    ];

    /// The grid of this name.
    pub fn named(name: &str) -> Option<Grid> {
        Grid::ALL.into_iter().find(|g| g.name == name)
    }

    /// Labels on a page.
    pub fn count(&self) -> usize {
        self.cells.0 * self.cells.1
    }

    /// The left and top edge of the label of this number on its page.
    fn corner(&self, number: usize) -> (f32, f32) {
        let (column, row) = (number % self.cells.0, number / self.cells.0);
        (self.margin.0 + column as f32 * self.pitch.0, self.margin.1 + row as f32 * self.pitch.1)
    }
}

/// One tag to print, with what is written beside it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// The tag.
    pub tag: TagId,
    /// The site; may be empty.
    pub site: String,
    /// The point; may be empty.
    pub point: String,
}

/// What is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetKind {
    /// Labels on a grid.
    Tags,
    /// Caution signs, four to a page of the grid's paper.
    Signs,
}

/// Why nothing is printed; each is a sentence that says what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SheetError {
    /// Nothing to print, or too much.
    #[error("Between 1 and {MAX_TAGS} tags go into one file; this would be {0}.")]
    Count(usize),
    /// A text that is too long.
    #[error("\"{0}…\" is too long for a label: write at most {MAX_NAME} characters.")]
    Long(String),
    /// A character that the font has not.
    #[error("The font has no {1:?}, which is in \"{0}\": write it with other letters.")]
    Letter(String, char),
    /// The PDF could not be made.
    #[error("The PDF could not be made ({0}).")]
    Pdf(String),
}

/// The PDF, as bytes.
pub fn print(labels: &[Label], grid: &Grid, kind: SheetKind) -> Result<Vec<u8>, SheetError> {
    if labels.is_empty() || labels.len() > MAX_TAGS {
        return Err(SheetError::Count(labels.len()));
    }
    let mut paper = Paper::new()?;
    for text in labels.iter().flat_map(|l| [&l.site, &l.point]) {
        if text.chars().count() > MAX_NAME {
            return Err(SheetError::Long(text.chars().take(20).collect()));
        }
        if let Some(missing) = paper.missing(text) {
            return Err(SheetError::Letter(text.clone(), missing));
        }
    }
    let on_page = if kind == SheetKind::Tags { grid.count() } else { sign::ON_PAGE };
    for page in labels.chunks(on_page) {
        paper.page(grid.page, |ink| {
            for (number, label) in page.iter().enumerate() {
                match kind {
                    SheetKind::Tags => draw(ink, label, grid, number),
                    SheetKind::Signs => sign::draw(ink, label, grid.page, number),
                }
            }
        })?;
    }
    paper.finish()
}

/// Room that stays free about the print on a label: printers shift a sheet by a millimetre or so.
const SLACK: f32 = 2.0;

fn draw(ink: &mut paper::Ink, label: &Label, grid: &Grid, number: usize) {
    let (left, top) = grid.corner(number);
    let (wide, high) = grid.label;
    let side = (high - 2.0 * SLACK).min(wide / 2.0);
    symbol(ink, label.tag, (left + SLACK, top + (high - side) / 2.0), side);
    let x = left + SLACK + side + 1.0;
    let room = wide - side - 2.0 * SLACK - 1.0;
    let lines = in_two(label.tag);
    let size = ink.fitting(&lines[0], room, 4.2);
    let mut y = top + SLACK + size;
    for line in &lines {
        ink.text((x, y), size, line, BLACK);
        y += 1.15 * size;
    }
    y += 0.6;
    for text in [&label.point, &label.site] {
        let bottom = top + high - SLACK;
        y = ink.block((x, y), room, bottom, 3.0, text);
    }
}

/// The id in clear, in two lines of the same length.
fn in_two(tag: TagId) -> [String; 2] {
    let id = tag.spaced();
    let (first, second) = id.split_at(id.len() / 2);
    [first.trim().to_owned(), second.trim().to_owned()]
}

/// The symbol with its quiet zone in a square of `side`.
fn symbol(ink: &mut paper::Ink, tag: TagId, (left, top): (f32, f32), side: f32) {
    let symbol = Symbol::of(tag);
    let module = side / (symbol.width + 2 * QUIET) as f32;
    let at = |k: usize| (k + QUIET) as f32 * module;
    for (x, y, run) in symbol.runs() {
        ink.rect((left + at(x), top + at(y)), (run as f32 * module, module), BLACK);
    }
}

/// ISO 3864 red and blue: RAL 3001 and 5005, approximate on paper.
const RED: Rgb = [0x9B, 0x24, 0x23];
const BLUE: Rgb = [0x00, 0x53, 0x87];
