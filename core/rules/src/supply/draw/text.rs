//! How much room texts take. The core has no fonts of the shells, so widths are guessed on the wide side.

/// The size of names.
pub const NAME: f32 = 14.0;
/// The size of everything else.
pub const SMALL: f32 = 12.0;

/// About how wide a text is: the widths of DejaVu Sans in bold, in four sorts of characters. Most phones' fonts stay within them.
pub fn width(text: &str, size: f32) -> f32 {
    let share = |c: char| match c {
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '!' | '|' | ' ' => 0.36,
        'f' | 'r' | 't' | 'J' | '(' | ')' | '[' | ']' | '-' | '/' => 0.45,
        'm' | 'w' | 'M' | 'W' | '%' | '@' | '…' => 1.0,
        c if c.is_uppercase() || !c.is_ascii() => 0.78,
        _ => 0.68,
    };
    text.chars().map(share).sum::<f32>() * size
}

/// A text in at most two lines of at most `most` characters; what does not fit ends in an ellipsis.
pub fn wrap(text: &str, most: usize) -> Vec<String> {
    if text.chars().count() <= most {
        return vec![text.to_owned()];
    }
    // At the last space that lets the first line fit.
    let mut first = String::new();
    let mut rest = text;
    for (at, space) in text.match_indices(' ') {
        if text[..at].chars().count() > most {
            break;
        }
        first = text[..at].to_owned();
        rest = &text[at + space.len()..];
    }
    if first.is_empty() {
        return vec![short(text, most)];
    }
    vec![first, short(rest, most)]
}

/// A text in at most `most` characters.
pub fn short(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let kept: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", kept.trim_end())
}
