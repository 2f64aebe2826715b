//! Pages and ink: millimetres from the top left, one embedded font, plain shapes.

use krilla::Document;
use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder, Point, Rect};
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke};
use krilla::surface::Surface;
use krilla::text::{Font, TextDirection};

use super::SheetError;

/// DejaVu Sans Mono Bold: 0 and O, 1 and I differ in it, and every letter has the same width.
const FONT: &[u8] = include_bytes!("../../assets/fonts/DejaVuSansMono-Bold.ttf");
/// Width of a letter over the size of the font: 1233 of 2048 units, from the font's own table.
const ADVANCE: f32 = 1233.0 / 2048.0;
/// Points in a millimetre.
const POINTS: f32 = 72.0 / 25.4;
/// No text is printed smaller than this, in millimetres.
const SMALLEST: f32 = 1.8;

/// Red, green, blue.
pub(super) type Rgb = [u8; 3];
pub(super) const BLACK: Rgb = [0, 0, 0];
pub(super) const WHITE: Rgb = [255, 255, 255];

/// A document under way.
pub(super) struct Paper {
    document: Document,
    font: Font,
}

impl Paper {
    pub(super) fn new() -> Result<Paper, SheetError> {
        let font = Font::new(FONT.to_vec().into(), 0).ok_or_else(|| SheetError::Pdf("the font is damaged".into()))?;
        Ok(Paper { document: Document::new(), font })
    }

    /// The first character that the font has not.
    pub(super) fn missing(&self, text: &str) -> Option<char> {
        let face = ttf_parser::Face::parse(FONT, 0).ok()?;
        text.chars().find(|c| face.glyph_index(*c).is_none())
    }

    /// A page of this size with what `draw` puts on it.
    pub(super) fn page(&mut self, (wide, high): (f32, f32), draw: impl FnOnce(&mut Ink)) -> Result<(), SheetError> {
        let settings = PageSettings::from_wh(wide * POINTS, high * POINTS)
            .ok_or_else(|| SheetError::Pdf("the page has no size".into()))?;
        let mut page = self.document.start_page_with(settings);
        let mut surface = page.surface();
        draw(&mut Ink { surface: &mut surface, font: &self.font });
        surface.finish();
        page.finish();
        Ok(())
    }

    pub(super) fn finish(self) -> Result<Vec<u8>, SheetError> {
        self.document.finish().map_err(|e| SheetError::Pdf(format!("{e:?}")))
    }
}

/// What draws on a page.
pub(super) struct Ink<'a, 'b> {
    surface: &'a mut Surface<'b>,
    font: &'a Font,
}

impl Ink<'_, '_> {
    fn paint(&mut self, path: Option<Path>, colour: Rgb) {
        let Some(path) = path else { return };
        self.surface.set_stroke(None);
        self.surface.set_fill(Some(Fill {
            paint: ink(colour).into(),
            opacity: NormalizedF32::ONE,
            rule: FillRule::NonZero,
        }));
        self.surface.draw_path(&path);
    }

    pub(super) fn rect(&mut self, (left, top): (f32, f32), (wide, high): (f32, f32), colour: Rgb) {
        let rect = Rect::from_xywh(left * POINTS, top * POINTS, wide * POINTS, high * POINTS);
        let path = rect.and_then(|rect| {
            let mut path = PathBuilder::new();
            path.push_rect(rect);
            path.finish()
        });
        self.paint(path, colour);
    }

    pub(super) fn circle(&mut self, (x, y): (f32, f32), radius: f32, colour: Rgb) {
        // Sixty-four sides: no corner is seen on paper.
        let corner = |k: usize| {
            let angle = k as f32 / 64.0 * std::f32::consts::TAU;
            (x + radius * angle.cos(), y + radius * angle.sin())
        };
        self.polygon(&(0..64).map(corner).collect::<Vec<_>>(), colour);
    }

    pub(super) fn polygon(&mut self, corners: &[(f32, f32)], colour: Rgb) {
        let mut path = PathBuilder::new();
        for (k, (x, y)) in corners.iter().enumerate() {
            if k == 0 { path.move_to(x * POINTS, y * POINTS) } else { path.line_to(x * POINTS, y * POINTS) }
        }
        path.close();
        self.paint(path.finish(), colour);
    }

    pub(super) fn line(&mut self, from: (f32, f32), to: (f32, f32), thick: f32, colour: Rgb) {
        let mut path = PathBuilder::new();
        path.move_to(from.0 * POINTS, from.1 * POINTS);
        path.line_to(to.0 * POINTS, to.1 * POINTS);
        let Some(path) = path.finish() else { return };
        self.surface.set_fill(None);
        self.surface.set_stroke(Some(Stroke { paint: ink(colour).into(), width: thick * POINTS, ..Stroke::default() }));
        self.surface.draw_path(&path);
        self.surface.set_stroke(None);
    }

    /// One line of text, its left end and baseline at this point, `size` in millimetres.
    pub(super) fn text(&mut self, (x, y): (f32, f32), size: f32, text: &str, colour: Rgb) {
        self.surface.set_stroke(None);
        self.surface.set_fill(Some(Fill {
            paint: ink(colour).into(),
            opacity: NormalizedF32::ONE,
            rule: FillRule::NonZero,
        }));
        let at = Point::from_xy(x * POINTS, y * POINTS);
        self.surface.draw_text(at, self.font.clone(), size * POINTS, text, false, TextDirection::LeftToRight);
    }

    /// The size, at most `most`, at which `text` is no wider than `room`.
    pub(super) fn fitting(&self, text: &str, room: f32, most: f32) -> f32 {
        (room / (text.trim().chars().count().max(1) as f32 * ADVANCE)).min(most)
    }

    /// Text in lines of at most `room`, from `y` down to `bottom`; what does not fit ends in "…". The next free baseline comes back.
    pub(super) fn block(&mut self, (x, y): (f32, f32), room: f32, bottom: f32, size: f32, text: &str) -> f32 {
        let mut size = size;
        loop {
            let lines = wrap(text, (room / (size * ADVANCE)).floor().max(1.0) as usize);
            let fit = ((bottom - y) / (1.15 * size)).floor().max(0.0) as usize;
            if lines.len() > fit && size * 0.9 >= SMALLEST {
                size *= 0.9;
                continue;
            }
            let cut = lines.len() > fit;
            let mut at = y;
            for (k, line) in lines.iter().take(fit).enumerate() {
                at += 1.15 * size;
                let mut line = line.clone();
                if cut && k + 1 == fit {
                    line.pop();
                    line.push('…');
                }
                self.text((x, at), size, &line, BLACK);
            }
            return at;
        }
    }
}

fn ink([red, green, blue]: Rgb) -> rgb::Color {
    rgb::Color::new(red, green, blue)
}

/// Lines of at most `most` characters, broken at spaces where there are any.
fn wrap(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        let letters: Vec<char> = word.chars().collect();
        for piece in letters.chunks(most) {
            let piece: String = piece.iter().collect();
            let room = lines.last().map_or(0, |l| most.saturating_sub(l.chars().count() + 1));
            match lines.last_mut() {
                Some(line) if piece.chars().count() <= room && letters.len() <= most => {
                    line.push(' ');
                    line.push_str(&piece);
                }
                _ => lines.push(piece),
            }
        }
    }
    lines
}
