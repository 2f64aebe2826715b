//! The fonts: what they have, and how wide it is.

use crate::record::write_error::WriteError;
use ttf_parser::Face;

/// DejaVu Sans, regular and bold, and the bold monospaced one that tags have: every letter of the alphabets of Europe, and many signs.
const FILES: [&[u8]; 3] = [
    include_bytes!("../../../assets/fonts/DejaVuSans.ttf"),
    include_bytes!("../../../assets/fonts/DejaVuSans-Bold.ttf"),
    include_bytes!("../../../assets/fonts/DejaVuSansMono-Bold.ttf"),
];

/// What stands for a letter that the fonts have not.
const LACKING: char = '\u{fffd}';

/// A font.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Face3 {
    Plain,
    Bold,
    Mono,
}

/// The fonts.
pub(super) struct Fonts(Vec<Face<'static>>);

impl Fonts {
    pub fn new() -> Result<Fonts, WriteError> {
        let read = |file: &&'static [u8]| Face::parse(file, 0);
        Ok(Fonts(FILES.iter().map(read).collect::<Result<_, _>>()?))
    }

    /// The file of a font.
    pub fn file(face: Face3) -> &'static [u8] {
        FILES[face as usize]
    }

    /// The text as it can be printed: no line ends, nothing invisible, and a mark in the place of what no font has.
    pub fn clean(&self, text: &str) -> String {
        let printable = |c: char| match c {
            c if c.is_control() => Some(' '),
            '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' => None,
            '\u{fe00}'..='\u{fe0f}' | '\u{feff}' => None,
            '\u{e000}'..='\u{f8ff}' | '\u{f0000}'.. => Some(LACKING),
            c if self.0.iter().all(|face| face.glyph_index(c).is_some()) => Some(c),
            _ => Some(LACKING),
        };
        text.chars().filter_map(printable).collect()
    }

    /// How wide a text is at a size of 1.
    pub fn width(&self, face: Face3, text: &str) -> f32 {
        let font = &self.0[face as usize];
        let units = f32::from(font.units_per_em());
        let advance = |c: char| font.glyph_index(c).and_then(|glyph| font.glyph_hor_advance(glyph)).unwrap_or(0);
        text.chars().map(|c| f32::from(advance(c)) / units).sum()
    }

    /// The text in lines that are no wider than `room` at this size, broken at spaces, or inside a word that is wider by itself. A line that
    /// goes on keeps its space at the end: whoever reads the text and not the page needs it.
    pub fn wrap(&self, face: Face3, size: f32, room: f32, text: &str) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut line = String::new();
        let mut used = 0.0;
        let space = self.width(face, " ") * size;
        for word in self.clean(text).split_whitespace() {
            let wide = self.width(face, word) * size;
            if !line.is_empty() && used + space + wide > room {
                line.push(' ');
                lines.push(std::mem::take(&mut line));
                used = 0.0;
            }
            if !line.is_empty() {
                line.push(' ');
                used += space;
            }
            if wide <= room {
                line.push_str(word);
                used += wide;
                continue;
            }
            for letter in word.chars() {
                let wide = self.width(face, letter.encode_utf8(&mut [0; 4])) * size;
                if used + wide > room && !line.is_empty() {
                    lines.push(std::mem::take(&mut line));
                    used = 0.0;
                }
                line.push(letter);
                used += wide;
            }
        }
        if !line.is_empty() || lines.is_empty() {
            lines.push(line);
        }
        lines
    }
}
