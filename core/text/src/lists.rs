//! Several things told one after the other.

use super::catalogue::say;

/// "a", "a and b", "a, b and c".
pub fn listed(mut items: Vec<String>) -> String {
    match (items.pop(), items.is_empty()) {
        (None, _) => String::new(),
        (Some(only), true) => only,
        (Some(last), false) => say!("list-and", first = commas(items), then = last),
    }
}

/// "a, b, c".
pub fn commas(items: impl IntoIterator<Item = String>) -> String {
    let joined = items.into_iter().reduce(|first, then| say!("list-comma", first = first, then = then));
    joined.unwrap_or_default()
}

/// "a and b and c".
pub fn ands(items: impl IntoIterator<Item = String>) -> String {
    let joined = items.into_iter().reduce(|first, then| say!("list-and", first = first, then = then));
    joined.unwrap_or_default()
}

/// "a; b; c".
pub fn semicolons(items: impl IntoIterator<Item = String>) -> String {
    let joined = items.into_iter().reduce(|first, then| say!("list-semicolon", first = first, then = then));
    joined.unwrap_or_default()
}

/// Two sentences, one after the other.
pub fn sentences(first: String, then: String) -> String {
    say!("sentences", first = first, then = then)
}
