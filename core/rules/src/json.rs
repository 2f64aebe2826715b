//! What all readers of JSON files say the same way.

/// How an error begins that a reader made because a field came twice.
pub const TWICE: &str = "twice: ";
/// An error that a reader made because an object has more fields than [`MAX_FIELDS`].
pub const CROWDED: &str = "crowded";
/// What the library says before the line of an error, and how it begins where lists go too deep.
const BEHIND: &str = " at line ";
const DEEP: &str = "recursion limit";
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

/// What a value in JSON is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JsonKind {
    /// Nothing: `null`.
    Null,
    /// True or false.
    Flag,
    /// A number.
    Number,
    /// A text.
    Text,
    /// A list.
    List,
    /// An object.
    Object,
}

/// What an error in JSON is; its line and column are the error's own.
pub fn broken(error: &serde_json::Error) -> Broken {
    let told = error.to_string();
    // The library tells no kinds apart here, only by what it says; the line and the column stand behind.
    let why = told.split(BEHIND).next().unwrap_or(&told);
    match why.strip_prefix(TWICE) {
        Some(key) => Broken::Twice(key.to_owned()),
        None if why == CROWDED => Broken::Crowded(MAX_FIELDS),
        None if why.starts_with(DEEP) => Broken::TooDeep,
        None => Broken::NotJson(why.to_owned()),
    }
}

/// A field name or a word as far as it fits in a sentence.
pub fn quoted(text: &str) -> String {
    let short: String = text.chars().take(24).map(|c| if c.is_control() { '?' } else { c }).collect();
    if text.chars().count() > 24 { format!("\"{short}…\"") } else { format!("\"{short}\"") }
}
