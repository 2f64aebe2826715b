//! Names as people tell them apart, and reasons that say something.
//!
//! Two labels are alike where a person could take one for the other: without regard to case, blanks, width and look-alike letters (Unicode
//! NFKC, UAX 15, and skeletons, UTS 39 section 4). Start at [`alike`].

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;
use unicode_security::skeleton;

/// What a name looks like in capitals and in small letters: names that are equal in one of the two could be confused. Not for showing.
///
/// ```
/// use stillbar_values::names::alike;
/// assert!(alike("ML  7", "ｍl7"));
/// assert!(alike("Мара", "Mapa")); // Cyrillic and Latin, alike in capitals
/// assert!(alike("νia", "via")); // Greek and Latin, alike in small letters
/// assert!(!alike("ML 7", "ML 8"));
/// ```
pub fn looks(name: &str) -> [String; 2] {
    [str::to_uppercase, str::to_lowercase].map(|fold| once(&once(name, fold), fold))
}

/// Folded, and every letter replaced by the one that it looks like. Twice, because a skeleton may have letters of the other case.
fn once(name: &str, fold: fn(&str) -> String) -> String {
    let wide = fold(&name.nfkc().collect::<String>());
    let bare = fold(&skeleton(&wide).nfkc().collect::<String>());
    bare.chars().filter(|c| !blank(*c)).collect()
}

/// Blanks, and what leaves no mark on paper.
fn blank(c: char) -> bool {
    c.is_whitespace()
        || c.is_control()
        || matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2064}' | '\u{feff}')
        || matches!(c, '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}' | '\u{180b}'..='\u{180f}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}')
}

/// Whether two names could be taken for one another.
pub fn alike(one: &str, other: &str) -> bool {
    looks(one).iter().zip(&looks(other)).any(|(a, b)| a == b)
}

/// Whether a reason says something: at least a word of letters. Dots, dashes and blanks do not; one letter is a word only where a script
/// writes words so.
pub fn says_something(reason: &str) -> bool {
    let mut letters = 0;
    for c in reason.nfkc() {
        if c.is_alphabetic() {
            // Ideographs and syllables: one can be a word.
            if matches!(u32::from(c), 0x1100..=0x11ff | 0x2e80..=0x9fff | 0xac00..=0xd7ff | 0xf900..=0xfaff | 0x2_0000..=0x3_ffff)
            {
                return true;
            }
            letters += 1;
            if letters == 2 {
                return true;
            }
        } else if !is_combining_mark(c) {
            letters = 0;
        }
    }
    false
}
