//! Photos, the symbol of page one, and signatures, in the flow.

use super::flow::{BLACK, BOTTOM, BlockKind, GREY, LEADING, LEFT, Op, PageFlow, PagePoint, ROOM, SMALL, TOP};
use super::text::Face3;
use stillbar_media::tag::Symbol;

/// A photo as it stands on a page.
pub(super) struct ShownFigure {
    pub jpeg: Vec<u8>,
    /// Pixels across and down.
    pub size: (u32, u32),
    /// For whoever cannot see it.
    pub says: String,
    pub caption: Vec<String>,
}

impl PageFlow {
    /// Pictures two in a row, each over its caption.
    pub fn pictures(&mut self, pictures: &[ShownFigure]) {
        const BETWEEN: f32 = 6.0;
        let wide = (ROOM - BETWEEN) / 2.0;
        for pair in pictures.chunks(2) {
            let fitted = |(across, down): (u32, u32)| {
                let scale = (wide / across.max(1) as f32).min(78.0 / down.max(1) as f32);
                (across as f32 * scale, down as f32 * scale)
            };
            let high = pair.iter().map(|p| fitted(p.size).1).fold(0.0, f32::max);
            let captions: Vec<Vec<String>> = pair
                .iter()
                .map(|p| p.caption.iter().flat_map(|line| self.fonts.wrap(Face3::Plain, SMALL, wide, line)).collect())
                .collect();
            let lines = captions.iter().map(Vec::len).max().unwrap_or(0);
            let step = SMALL * LEADING;
            self.need(high + lines as f32 * step + 4.0);
            let top = self.y + 1.0;
            for (i, (shown, caption)) in pair.iter().zip(captions).enumerate() {
                let x = LEFT + i as f32 * (wide + BETWEEN);
                let says = self.clean(&shown.says);
                self.open(BlockKind::Figure(says));
                let leaf = self.leaf();
                self.paint(Op::Picture { at: (x, top), size: fitted(shown.size), jpeg: shown.jpeg.clone(), leaf });
                self.close();
                self.open(BlockKind::Paragraph);
                for (k, line) in caption.iter().enumerate() {
                    let y = top + high + (k + 1) as f32 * step;
                    self.words((x, y), SMALL, Face3::Plain, BLACK, line);
                }
                self.close();
            }
            self.y = (top + high + lines as f32 * step + 3.0).min(BOTTOM);
        }
    }

    /// A symbol at the top right, with lines in monospaced letters under it.
    pub fn symbol(&mut self, symbol: &Symbol, says: &str, under: &[String]) {
        const SIDE: f32 = 32.0;
        let (left, top) = (LEFT + ROOM - SIDE, TOP);
        let module = SIDE / symbol.width.max(1) as f32;
        let rect = |(x, y, run): (usize, usize, usize)| {
            ((left + x as f32 * module, top + y as f32 * module), (run as f32 * module, module))
        };
        let rects = symbol.runs().into_iter().map(rect).collect();
        self.open(BlockKind::Figure(says.to_owned()));
        let leaf = self.leaf();
        self.paint(Op::Figure { rects, strokes: Vec::new(), leaf });
        self.close();
        self.open(BlockKind::Paragraph);
        for (k, line) in under.iter().enumerate() {
            let size = SIDE / (self.fonts.width(Face3::Mono, line).max(1.0));
            let y = top + SIDE + 3.2 + k as f32 * 3.0;
            self.words((left, y), size.min(2.6), Face3::Mono, BLACK, line);
        }
        self.close();
    }

    /// A signature as it was drawn, 1000 by 400 units, on a line.
    pub fn strokes(&mut self, strokes: &[Vec<PagePoint>], says: &str) {
        const WIDE: f32 = 60.0;
        self.need(WIDE * 0.4 + 3.0);
        let scale = WIDE / 1000.0;
        let (left, top) = (LEFT, self.y + 1.0);
        let place = |(x, y): &PagePoint| (left + x * scale, top + y * scale);
        let strokes = strokes.iter().map(|line| line.iter().map(place).collect()).collect();
        let says = self.clean(says);
        self.open(BlockKind::Figure(says));
        let leaf = self.leaf();
        self.paint(Op::Figure { rects: Vec::new(), strokes, leaf });
        self.close();
        self.y = top + WIDE * 0.4;
        self.paint(Op::Rect { at: (left, self.y), size: (WIDE, 0.2), colour: GREY });
        self.gap(2.0);
    }
}
