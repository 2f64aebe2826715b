//! From top to bottom: headings, facts, tables, pictures, and where a page ends. What comes out is a list of things to paint for each page,
//! and the tree of tags that says what they are.

use super::text::{Face3, Fonts};
use crate::record::write_error::WriteError;

/// A4, and what stays free at its edges, in millimetres.
pub(super) const PAGE: (f32, f32) = (210.0, 297.0);
pub(super) const LEFT: f32 = 19.0;
pub(super) const TOP: f32 = 18.0;
pub(super) const BOTTOM: f32 = 277.0;
/// How wide the text is.
pub(super) const ROOM: f32 = PAGE.0 - 2.0 * LEFT;

/// Sizes of letters, in millimetres.
pub(super) const BODY: f32 = 3.1;
pub(super) const SMALL: f32 = 2.7;
pub(super) const LEADING: f32 = 1.4;

/// Red, green, blue.
pub(super) type PdfColour = [u8; 3];
pub(super) const BLACK: PdfColour = [0, 0, 0];
pub(super) const GREY: PdfColour = [0x50, 0x50, 0x50];
pub(super) const RULE: PdfColour = [0xb4, 0xb4, 0xb4];
/// ISO 3864: RAL 1003 and RAL 3001, approximate on paper.
pub(super) const YELLOW: PdfColour = [0xf9, 0xa8, 0x00];
pub(super) const RED: PdfColour = [0x9b, 0x24, 0x23];

/// A place or a size, in millimetres from the top left.
pub(super) type PagePoint = (f32, f32);

/// Something to paint. `leaf` is its place in the tree of tags; what has none is decoration.
pub(super) enum Op {
    Text {
        at: PagePoint,
        size: f32,
        face: Face3,
        colour: PdfColour,
        text: String,
        leaf: Option<usize>,
    },
    Rect {
        at: PagePoint,
        size: PagePoint,
        colour: PdfColour,
    },
    Picture {
        at: PagePoint,
        size: PagePoint,
        jpeg: Vec<u8>,
        leaf: usize,
    },
    /// Rectangles and lines that are one figure.
    Figure {
        rects: Vec<(PagePoint, PagePoint)>,
        strokes: Vec<Vec<PagePoint>>,
        leaf: usize,
    },
}

/// What something is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum BlockKind {
    Section,
    Heading(u16, String),
    Paragraph,
    Table,
    Row,
    /// A cell that names its column, or its row.
    Head(bool),
    Cell,
    /// With what it shows, in words.
    Figure(String),
}

/// A node of the tree.
pub(super) struct Tag {
    pub kind: BlockKind,
    pub inside: Vec<FlowInside>,
}

/// What is in a node.
pub(super) enum FlowInside {
    Tag(usize),
    Leaf(usize),
}

/// A column of a table: its head, and its share of the width in millimetres.
pub(super) type Column<'a> = (&'a str, f32);

/// A document under way.
pub(super) struct PageFlow {
    pub fonts: Fonts,
    pub pages: Vec<Vec<Op>>,
    pub tags: Vec<Tag>,
    pub leaves: usize,
    /// Sections: what they are called, and where they begin.
    pub marks: Vec<(String, usize, f32)>,
    pub(super) y: f32,
    open: Vec<usize>,
}

impl PageFlow {
    pub fn new() -> Result<PageFlow, WriteError> {
        let root = Tag { kind: BlockKind::Section, inside: Vec::new() };
        let (tags, open) = (vec![root], vec![0]);
        Ok(PageFlow { fonts: Fonts::new()?, pages: vec![Vec::new()], tags, leaves: 0, marks: Vec::new(), open, y: TOP })
    }

    pub fn clean(&self, text: &str) -> String {
        self.fonts.clean(text)
    }

    pub fn new_page(&mut self) {
        self.pages.push(Vec::new());
        self.y = TOP;
    }

    /// Goes on to the next page if less than `high` is left of this one.
    pub fn need(&mut self, high: f32) {
        if self.y + high > BOTTOM && self.y > TOP {
            self.new_page();
        }
    }

    pub fn gap(&mut self, high: f32) {
        self.y = (self.y + high).min(BOTTOM);
    }

    pub fn open(&mut self, kind: BlockKind) {
        let node = self.tags.len();
        self.tags.push(Tag { kind, inside: Vec::new() });
        if let Some(parent) = self.open.last() {
            self.tags[*parent].inside.push(FlowInside::Tag(node));
        }
        self.open.push(node);
    }

    pub fn close(&mut self) {
        self.open.pop();
    }

    pub fn leaf(&mut self) -> usize {
        let leaf = self.leaves;
        self.leaves += 1;
        if let Some(parent) = self.open.last() {
            self.tags[*parent].inside.push(FlowInside::Leaf(leaf));
        }
        leaf
    }

    /// The foot of every page, when it is known how many there are.
    pub fn feet(&mut self, says: &str) {
        let count = self.pages.len();
        let says = self.clean(says);
        for (i, page) in self.pages.iter_mut().enumerate() {
            let y = PAGE.1 - 11.0;
            let right = format!("{} of {count}", i + 1);
            let wide = self.fonts.width(Face3::Plain, &right) * 2.5;
            for (x, text) in [(LEFT, says.clone()), (LEFT + ROOM - wide, right)] {
                page.push(Op::Text { at: (x, y), size: 2.5, face: Face3::Plain, colour: GREY, text, leaf: None });
            }
        }
    }

    pub fn paint(&mut self, op: Op) {
        if let Some(page) = self.pages.last_mut() {
            page.push(op);
        }
    }

    pub fn words(&mut self, at: PagePoint, size: f32, face: Face3, colour: PdfColour, text: &str) {
        if text.trim().is_empty() {
            return;
        }
        let leaf = Some(self.leaf());
        self.paint(Op::Text { at, size, face, colour, text: text.to_owned(), leaf });
    }

    /// A section, from its heading to the next. `high`: what has to fit under the heading on the same page, in millimetres.
    pub fn section(&mut self, title: &str, high: f32) {
        while self.open.len() > 1 {
            self.close();
        }
        self.open(BlockKind::Section);
        self.gap(5.0);
        self.need(12.0 + high);
        self.marks.push((title.to_owned(), self.pages.len() - 1, self.y));
        self.heading(2, title, 4.6);
        self.gap(1.2);
    }

    pub fn heading(&mut self, level: u16, text: &str, size: f32) {
        let clean = self.clean(text);
        self.open(BlockKind::Heading(level, clean.clone()));
        self.lines(LEFT, ROOM, size, Face3::Bold, BLACK, &clean);
        self.close();
    }

    /// A heading that leaves room for something at the right.
    pub fn title(&mut self, text: &str, room: f32) {
        let clean = self.clean(text);
        self.open(BlockKind::Heading(1, clean.clone()));
        self.lines(LEFT, room, 6.6, Face3::Bold, BLACK, &clean);
        self.close();
    }

    pub fn para(&mut self, text: &str) {
        self.styled(text, BODY, Face3::Plain, BLACK, ROOM);
    }

    pub fn small(&mut self, text: &str) {
        self.styled(text, SMALL, Face3::Plain, GREY, ROOM);
    }

    pub fn styled(&mut self, text: &str, size: f32, face: Face3, colour: PdfColour, room: f32) {
        self.open(BlockKind::Paragraph);
        self.lines(LEFT, room, size, face, colour, text);
        self.close();
        self.gap(0.8);
    }

    fn lines(&mut self, x: f32, room: f32, size: f32, face: Face3, colour: PdfColour, text: &str) {
        for line in self.fonts.wrap(face, size, room, text) {
            self.need(size * LEADING);
            self.y += size * LEADING;
            self.words((x, self.y - 0.3 * size), size, face, colour, &line);
        }
    }

    /// A box with a bar of a colour at its left: what nobody may pass over.
    pub fn boxed(&mut self, colour: PdfColour, word: &str, text: &[String]) {
        const INSET: f32 = 6.0;
        let room = ROOM - INSET - 2.0;
        let count: usize = text.iter().map(|t| self.fonts.wrap(Face3::Plain, BODY, room, t).len()).sum();
        let head = if word.is_empty() { 0.0 } else { 5.2 * LEADING };
        let high = head + count as f32 * BODY * LEADING + text.len() as f32 * 0.8 + 3.4;
        self.need(high.min(BOTTOM - TOP));
        let top = self.y;
        self.y += 1.2;
        if !word.is_empty() {
            self.open(BlockKind::Paragraph);
            self.lines(LEFT + INSET, room, 5.2, Face3::Bold, BLACK, word);
            self.close();
        }
        let page = self.pages.len();
        for line in text {
            self.open(BlockKind::Paragraph);
            self.lines(LEFT + INSET, room, BODY, Face3::Plain, BLACK, line);
            self.close();
            self.gap(0.8);
        }
        self.gap(1.4);
        // A box that goes on over a page has its bar on the page where it ends.
        let from = if page == self.pages.len() { top } else { TOP };
        let end = self.y;
        self.paint(Op::Rect { at: (LEFT, from), size: (2.6, end - from), colour });
        self.gap(2.0);
    }

    /// Names and what they are, a row each.
    pub fn facts(&mut self, facts: &[(&str, String)], room: f32) {
        const NAMES: f32 = 34.0;
        self.open(BlockKind::Table);
        for (name, value) in facts.iter().filter(|(_, value)| !value.is_empty()) {
            let lines = self.fonts.wrap(Face3::Plain, BODY, room - NAMES, value);
            self.need((lines.len() as f32 * BODY * LEADING).min(40.0));
            self.open(BlockKind::Row);
            self.open(BlockKind::Head(true));
            let name = self.clean(name);
            self.words((LEFT, self.y + BODY * (LEADING - 0.3)), SMALL, Face3::Plain, GREY, &name);
            self.close();
            self.open(BlockKind::Cell);
            self.lines(LEFT + NAMES, room - NAMES, BODY, Face3::Plain, BLACK, value);
            self.close();
            self.close();
            self.gap(0.7);
        }
        self.close();
    }

    /// A table; its head comes again on every page.
    pub fn table(&mut self, columns: &[Column], rows: &[Vec<String>]) {
        self.open(BlockKind::Table);
        self.need(16.0);
        self.head(columns, true);
        for row in rows {
            let cells: Vec<Vec<String>> = columns
                .iter()
                .zip(row)
                // Every row has all its cells, for those who are read to.
                .map(|((_, wide), cell)| (wide, if cell.trim().is_empty() { "–" } else { cell.as_str() }))
                .map(|(wide, cell)| self.fonts.wrap(Face3::Plain, SMALL, wide - 2.0, cell))
                .collect();
            let count = cells.iter().map(Vec::len).max().unwrap_or(0);
            let step = SMALL * LEADING;
            if self.y + (count as f32 * step).min(60.0) + 1.6 > BOTTOM {
                self.new_page();
                self.head(columns, false);
            }
            self.open(BlockKind::Row);
            let row = self.open.last().copied().unwrap_or(0);
            let nodes: Vec<usize> = columns
                .iter()
                .map(|_| {
                    self.open(BlockKind::Cell);
                    let node = self.open.last().copied().unwrap_or(row);
                    self.close();
                    node
                })
                .collect();
            for k in 0..count {
                if self.y + step > BOTTOM {
                    self.new_page();
                    self.head(columns, false);
                }
                self.y += step;
                let mut x = LEFT;
                for (((_, wide), lines), node) in columns.iter().zip(&cells).zip(&nodes) {
                    if let Some(line) = lines.get(k) {
                        self.open.push(*node);
                        self.words((x, self.y - 0.3 * SMALL), SMALL, Face3::Plain, BLACK, line);
                        self.open.pop();
                    }
                    x += wide;
                }
            }
            self.close();
            self.y += 0.8;
            self.paint(Op::Rect { at: (LEFT, self.y), size: (ROOM, 0.12), colour: RULE });
            self.y += 0.6;
        }
        self.close();
        self.gap(2.0);
    }

    /// The head of a table. Where it comes again it is decoration: the tree of tags has it once.
    fn head(&mut self, columns: &[Column], tagged: bool) {
        self.y += SMALL * LEADING;
        let mut x = LEFT;
        if tagged {
            self.open(BlockKind::Row);
        }
        for (name, wide) in columns {
            let (at, text) = ((x, self.y - 0.3 * SMALL), (*name).to_owned());
            if tagged {
                self.open(BlockKind::Head(false));
                self.words(at, SMALL, Face3::Bold, BLACK, &text);
                self.close();
            } else {
                let (size, face, colour) = (SMALL, Face3::Bold, BLACK);
                self.paint(Op::Text { at, size, face, colour, text, leaf: None });
            }
            x += wide;
        }
        if tagged {
            self.close();
        }
        self.y += 0.7;
        self.paint(Op::Rect { at: (LEFT, self.y), size: (ROOM, 0.4), colour: BLACK });
        self.y += 0.7;
    }
}
