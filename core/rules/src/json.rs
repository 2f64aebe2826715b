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

/// Why a text is no JSON that can be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum JsonFault {
    /// Lists inside lists go too deep.
    TooDeep,
    /// It is no JSON.
    Unreadable {
        /// What its reader says.
        why: String,
    },
}

impl From<&serde_json::Error> for JsonFault {
    fn from(error: &serde_json::Error) -> JsonFault {
        let told = error.to_string();
        let why = told.split(" at line ").next().unwrap_or(&told);
        // The reader has no other name for this error than its words; what is taken for the other one is refused as well.
        if why.starts_with("recursion limit") {
            JsonFault::TooDeep
        } else {
            JsonFault::Unreadable { why: why.to_owned() }
        }
    }
}
