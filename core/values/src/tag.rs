//! What a tag says: sixteen characters, three that mark it as ours, twelve at random, one that checks the rest.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// What stands behind the mark: no two that an eye or a finger takes for each other, so neither `I`, `L` nor `O`, and no `U` beside `V`.
const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// The characters of ISO 7064 MOD 37-2 in the order of their values. A tag's check character is never one that is not in [`ALPHABET`].
const CHECKED: &[u8; 37] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
/// What every tag begins with. All of it is in the alphanumeric set of QR codes (ISO/IEC 18004).
pub const MARK: &str = "STB";
/// Length of the text of a tag: the most that a symbol of 21 modules holds at level Q.
pub const LENGTH: usize = 16;
/// Characters at random: nearly 60 bits, so that two tags printed anywhere do not meet.
const RANDOM: usize = LENGTH - MARK.len() - 1;

/// What keyboards put between groups: hyphens, dashes and the minus sign.
const DASHES: [char; 7] = ['-', '\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}', '\u{2014}', '\u{2212}'];

/// The id of a tag: valid by construction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct TagId([u8; LENGTH]);

/// Why a text is not a tag.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TagError {
    /// Not ours at all.
    #[error("this is not a Stillbar tag: a tag has {LENGTH} characters and begins with {MARK}")]
    Foreign,
    /// Ours, and misread or mistyped.
    #[error("the check character does not fit: read or type the tag again")]
    Check,
}

/// A text that stands for a tag and is not spelt as it is printed.
#[derive(Debug, thiserror::Error)]
#[error("not the text of a tag")]
struct NotPrinted;

impl TagId {
    /// How many random bytes [`TagId::from_random`] takes.
    pub const RANDOM_BYTES: usize = RANDOM;

    /// A tag from random bytes, of which five bits each count.
    pub fn from_random(bytes: [u8; Self::RANDOM_BYTES]) -> TagId {
        let mut text = [0; LENGTH];
        text[..MARK.len()].copy_from_slice(MARK.as_bytes());
        for (to, byte) in text[MARK.len()..].iter_mut().zip(bytes) {
            *to = ALPHABET[usize::from(byte) % ALPHABET.len()];
        }
        // Five of the 37 check characters are not for tags: the last character at random then gives way to the next that has another.
        let last = bytes[RANDOM - 1];
        for step in 0..ALPHABET.len() {
            text[LENGTH - 2] = ALPHABET[(usize::from(last) + step) % ALPHABET.len()];
            text[LENGTH - 1] = check(&text[..LENGTH - 1]).unwrap_or(b'*');
            if ALPHABET.contains(&text[LENGTH - 1]) {
                break;
            }
        }
        TagId(text)
    }

    /// The text in the symbol.
    pub fn as_str(&self) -> &str {
        // Only characters of the alphabet get in.
        str::from_utf8(&self.0).unwrap_or_default()
    }

    /// In groups of four, as printed beside the symbol.
    pub fn spaced(&self) -> String {
        self.0.chunks(4).map(String::from_utf8_lossy).collect::<Vec<_>>().join(" ")
    }
}

impl FromStr for TagId {
    type Err = TagError;

    /// Takes what a reader found, or what a person typed from the print: any case, spaces and dashes between, O for 0, I and L for 1.
    fn from_str(text: &str) -> Result<TagId, TagError> {
        // Longer is nothing of ours, whatever is in it.
        if text.len() > 4 * LENGTH {
            return Err(TagError::Foreign);
        }
        let typed = text.chars().filter(|c| !c.is_whitespace() && !DASHES.contains(c)).map(meant);
        let bytes = typed.collect::<Option<Vec<u8>>>().ok_or(TagError::Foreign)?;
        let bytes: [u8; LENGTH] = bytes.try_into().map_err(|_| TagError::Foreign)?;
        if !bytes.starts_with(MARK.as_bytes()) {
            return Err(TagError::Foreign);
        }
        match check(&bytes[..LENGTH - 1]) {
            Some(wanted) if wanted == bytes[LENGTH - 1] && bytes.iter().all(|b| ALPHABET.contains(b)) => {
                Ok(TagId(bytes))
            }
            _ => Err(TagError::Check),
        }
    }
}

/// What is meant by a character that somebody typed from the print; `None` where it is none of ASCII.
fn meant(typed: char) -> Option<u8> {
    match u8::try_from(typed.to_ascii_uppercase()).ok()? {
        b'O' => Some(b'0'),
        b'I' | b'L' => Some(b'1'),
        other => Some(other).filter(u8::is_ascii),
    }
}

/// In the journal a tag is its text.
impl Serialize for TagId {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.as_str())
    }
}

/// Only the text as it is printed: one tag has one encoding.
impl<'de> Deserialize<'de> for TagId {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<TagId, D::Error> {
        let text = String::deserialize(from)?;
        match text.parse::<TagId>() {
            Ok(tag) if tag.as_str() == text => Ok(tag),
            _ => Err(serde::de::Error::custom(NotPrinted)),
        }
    }
}

impl fmt::Display for TagId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// The check character of ISO 7064 MOD 37-2; `None` if a character has no value in it.
pub fn check(text: &[u8]) -> Option<u8> {
    let mut sum = 0;
    for byte in text {
        let value = CHECKED[..36].iter().position(|c| c == byte)?;
        sum = (sum + value) * 2 % 37;
    }
    Some(CHECKED[(37 + 1 - sum) % 37])
}
