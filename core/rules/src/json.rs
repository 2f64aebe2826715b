//! What all readers of JSON files say the same way.

/// How an error begins that a reader made because a field came twice.
pub const TWICE: &str = "twice: ";

/// The place of an error in JSON, and what to do about it, in a sentence.
pub fn fault(error: &serde_json::Error) -> (String, String) {
    let place = format!("line {}, column {}", error.line(), error.column());
    let told = error.to_string();
    let why = told.split(" at line ").next().unwrap_or(&told);
    let say = match why.strip_prefix(TWICE) {
        Some(key) => format!("the field {key} is there twice; keep the one that is true."),
        None if why.starts_with("recursion limit") => "lists inside lists go too deep; keep to the format.".into(),
        None => format!("this is not JSON ({why}); correct it here."),
    };
    (place, say)
}

/// A field name or a word as far as it fits in a sentence.
pub fn quoted(text: &str) -> String {
    let short: String = text.chars().take(24).map(|c| if c.is_control() { '?' } else { c }).collect();
    if text.chars().count() > 24 { format!("\"{short}…\"") } else { format!("\"{short}\"") }
}
