//! What all readers of JSON files say the same way.

/// How an error begins that a reader made because a field came twice.
pub const TWICE: &str = "twice: ";
/// An error that a reader made because an object has more fields than [`MAX_FIELDS`].
pub const CROWDED: &str = "crowded";
/// No object of a format has more than a few fields: with this bound the search for twins stays short too.
pub const MAX_FIELDS: usize = 64;

/// Why a text is no JSON that can be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Broken {
    /// This field is there twice; its name cut short, as [`quoted`] does.
    Twice(String),
    /// An object has more than so many fields.
    Crowded(usize),
    /// Lists inside lists go too deep.
    TooDeep,
    /// It is no JSON. Why, in the words of the library that reads it.
    NotJson(String),
}

/// What an error in JSON is; its line and column are the error's own.
pub fn broken(error: &serde_json::Error) -> Broken {
    let told = error.to_string();
    // The library tells no kinds apart here, only by what it says; the line and the column stand behind.
    let why = told.split(" at line ").next().unwrap_or(&told);
    match why.strip_prefix(TWICE) {
        Some(key) => Broken::Twice(key.to_owned()),
        None if why == CROWDED => Broken::Crowded(MAX_FIELDS),
        None if why.starts_with("recursion limit") => Broken::TooDeep,
        None => Broken::NotJson(why.to_owned()),
    }
}

/// The place of an error in JSON, and what to do about it, in a sentence: for the readers of networks, which still say sentences.
pub fn fault(error: &serde_json::Error) -> (String, String) {
    let place = format!("line {}, column {}", error.line(), error.column());
    let say = match broken(error) {
        Broken::Twice(key) => format!("the field {key} is there twice; keep the one that is true."),
        Broken::TooDeep => "lists inside lists go too deep; keep to the format.".into(),
        Broken::Crowded(most) => format!("this is not JSON (an object has more than {most} fields); correct it here."),
        Broken::NotJson(why) => format!("this is not JSON ({why}); correct it here."),
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
