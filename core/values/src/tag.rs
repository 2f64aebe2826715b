//! What a tag says: sixteen characters, three that mark it as ours, twelve at random, one that checks the rest.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// The characters that a tag may hold, in the order of their values; the check character may also be `*` (36).
const ALPHABET: &[u8; 36] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
/// What every tag begins with. All of it is in the alphanumeric set of QR codes (ISO/IEC 18004).
pub const MARK: &str = "STB";
/// Length of the text of a tag: the most that a symbol of 21 modules holds at level Q.
pub const LENGTH: usize = 16;
/// Characters at random: about 62 bits, so that two tags printed anywhere do not meet.
const RANDOM: usize = LENGTH - MARK.len() - 1;

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

impl TagId {
    /// How many random bytes [`TagId::from_random`] takes.
    pub const RANDOM_BYTES: usize = 2 * RANDOM;

    /// A tag from random bytes; two bytes a character keep the bias below one in a thousand.
    pub fn from_random(bytes: [u8; Self::RANDOM_BYTES]) -> TagId {
        let mut text = [0; LENGTH];
        text[..MARK.len()].copy_from_slice(MARK.as_bytes());
        for (to, pair) in text[MARK.len()..].iter_mut().zip(bytes.chunks_exact(2)) {
            *to = ALPHABET[usize::from(u16::from_be_bytes([pair[0], pair[1]])) % ALPHABET.len()];
        }
        text[LENGTH - 1] = check(&text[..LENGTH - 1]).unwrap_or(b'*');
        TagId(text)
    }

    /// The text in the symbol.
    pub fn as_str(&self) -> &str {
        // Only characters of the alphabet and `*` get in.
        str::from_utf8(&self.0).unwrap_or_default()
    }

    /// In groups of four, as printed beside the symbol.
    pub fn spaced(&self) -> String {
        self.0.chunks(4).map(String::from_utf8_lossy).collect::<Vec<_>>().join(" ")
    }
}

impl FromStr for TagId {
    type Err = TagError;

    /// Takes what a reader found, or what a person typed from the print: any case, spaces and hyphens between.
    fn from_str(text: &str) -> Result<TagId, TagError> {
        // Longer is nothing of ours, whatever is in it.
        if text.len() > 4 * LENGTH {
            return Err(TagError::Foreign);
        }
        let typed = text.bytes().filter(|b| !b" -".contains(b)).map(|b| b.to_ascii_uppercase());
        let bytes: [u8; LENGTH] = typed.collect::<Vec<u8>>().try_into().map_err(|_| TagError::Foreign)?;
        if !bytes.starts_with(MARK.as_bytes()) {
            return Err(TagError::Foreign);
        }
        match check(&bytes[..LENGTH - 1]) {
            Some(wanted) if wanted == bytes[LENGTH - 1] => Ok(TagId(bytes)),
            _ => Err(TagError::Check),
        }
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
            _ => Err(serde::de::Error::custom("not the text of a tag")),
        }
    }
}

impl fmt::Display for TagId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// The check character of ISO 7064 MOD 37-2; `None` if a character is not in the alphabet.
pub fn check(text: &[u8]) -> Option<u8> {
    let mut sum = 0;
    for byte in text {
        let value = ALPHABET.iter().position(|c| c == byte)?;
        sum = (sum + value) * 2 % 37;
    }
    let value = (37 + 1 - sum) % 37;
    Some(if value == 36 { b'*' } else { ALPHABET[value] })
}
