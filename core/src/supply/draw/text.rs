//! How much room texts take. The core has no fonts of the shells, so widths are guessed on the wide side.

/// The size of names.
pub const NAME: f32 = 14.0;
/// The size of everything else.
pub const SMALL: f32 = 12.0;

/// About how wide a text is: a character of a common sans serif is at most this share of its size on average.
pub fn width(text: &str, size: f32) -> f32 {
    text.chars().count() as f32 * size * 0.6
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
