//! What names or marks a person: not in the signed body but beside it, so that it can be withheld and the entry still holds.
//!
//! In the envelope stands, by the field's name, the SHA-256 of 16 random bytes and the text; behind the body stand the openings, salt and
//! text likewise. Without the salt nobody can try names until one fits. Whoever has an entry may take openings away, also where they do not
//! know its kind, and cannot put others in their place.

use ciborium::Value;
use sha2::{Digest, Sha256};

use super::cbor::{self, CborError};
use super::{EntryError, read};

/// What stands in the place of a text whose opening is not here.
pub const WITHHELD: &str = "(withheld)";
/// Bytes of salt: as many as a random key needs today (common practice, no source).
const SALT: usize = 16;

/// The fields, by the fact that has them.
const FIELDS: [(&str, &[&str]); 10] = [
    ("person-noted", &["name", "qualification", "telephone"]),
    ("told", &["who"]),
    ("handed-back", &["to", "mark"]),
    ("key-taken", &["mark"]),
    ("shift-taken", &["mark"]),
    ("lock-forced", &["mark"]),
    ("run-signed", &["mark"]),
    ("supply-answered", &["who"]),
    ("answered", &["who"]),
    ("company-ruled", &["call"]),
];

/// The key of the envelope under which the commitments stand, by the names of their fields.
const PERSONAL: &str = "personal";

/// Takes the texts that name or mark a person out of the fact of `body`, and puts commitments to them beside it; what opens them comes back
/// as a CBOR item, or nothing if there were none.
pub(super) fn commit(body: &mut Value, random: &dyn Fn(u32) -> Vec<u8>) -> Result<Vec<u8>, EntryError> {
    let Some((kind, content)) = read::fact(body) else { return Ok(Vec::new()) };
    let names = named(kind);
    let Some(content) = content.as_map_mut().filter(|_| !names.is_empty()) else { return Ok(Vec::new()) };
    let (mut openings, mut commitments) = (Vec::new(), Vec::new());
    for name in names {
        let text = content.iter().position(|(key, value)| key.as_text() == Some(name) && value.is_text());
        let Some(text) = text.and_then(|at| content.swap_remove(at).1.into_text().ok()) else { continue };
        let salt = random(SALT as u32);
        if salt.len() != SALT {
            return Err(EntryError::Salt);
        }
        commitments.push((Value::Text((*name).into()), Value::Bytes(hash(&salt, &text))));
        openings.push((Value::Text((*name).into()), Value::Array(vec![Value::Bytes(salt), Value::Text(text)])));
    }
    if openings.is_empty() {
        return Ok(Vec::new());
    }
    if let Some(map) = body.as_map_mut() {
        map.push((Value::Text(PERSONAL.into()), Value::Map(commitments)));
    }
    Ok(cbor::encode(&Value::Map(openings))?)
}

/// Puts the texts back into the fact of `body` where `openings` has them, and [`WITHHELD`] where not. `openings`: the CBOR item behind the
/// body, if there is one. Which fields these are, the body says itself: no kind of fact has to be known for it.
pub(super) fn reveal(body: &mut Value, openings: Option<Value>) -> Result<(), EntryError> {
    let no = || EntryError::from(CborError::NotCanonical);
    let mut opened = match openings {
        None => Vec::new(),
        Some(Value::Map(pairs)) if !pairs.is_empty() => pairs,
        Some(_) => return Err(no()),
    };
    let keys = body.as_map_mut().ok_or_else(no)?;
    let commitments = match keys.iter().position(|(key, _)| key.as_text() == Some(PERSONAL)) {
        None => Vec::new(),
        Some(at) => keys.remove(at).1.into_map().ok().filter(|map| !map.is_empty()).ok_or_else(no)?,
    };
    if !commitments.is_empty() {
        let content = read::fact(body).and_then(|(_, content)| content.as_map_mut()).ok_or_else(no)?;
        for (name, hashed) in commitments {
            let (Value::Text(name), Value::Bytes(hashed)) = (name, hashed) else { return Err(no()) };
            // A text in both places would leave open which of them was signed.
            if content.iter().any(|(key, _)| key.as_text() == Some(&name)) {
                return Err(no());
            }
            let text = match opened.iter().position(|(key, _)| key.as_text() == Some(&name)) {
                None => WITHHELD.into(),
                Some(at) => {
                    let (salt, text) = pair(opened.swap_remove(at).1).ok_or_else(no)?;
                    if hash(&salt, &text) != hashed {
                        return Err(EntryError::Opening(name));
                    }
                    text
                }
            };
            content.push((Value::Text(name), Value::Text(text)));
        }
    }
    // An opening of nothing could carry anything.
    if opened.is_empty() { Ok(()) } else { Err(no()) }
}

/// The openings that `keep` is true for, as a CBOR item, or nothing if none is left.
pub(super) fn keeping(openings: &[u8], keep: &dyn Fn(&str) -> bool) -> Result<Vec<u8>, CborError> {
    let mut pairs = cbor::item(&mut &openings[..])?.into_map().map_err(|_| CborError::NotCanonical)?;
    pairs.retain(|(name, _)| name.as_text().is_some_and(keep));
    if pairs.is_empty() { Ok(Vec::new()) } else { cbor::encode(&Value::Map(pairs)) }
}

/// Whether a text stands in one of the fields of `body`'s fact.
pub(super) fn shown(body: &mut Value) -> bool {
    let Some((kind, content)) = read::fact(body) else { return false };
    let names = named(kind);
    let says = |value: &Value| value.as_text().is_some_and(|text| text != WITHHELD && !text.is_empty());
    content.as_map().is_some_and(|map| {
        map.iter().any(|(key, value)| key.as_text().is_some_and(|key| names.contains(&key)) && says(value))
    })
}

fn pair(opening: Value) -> Option<(Vec<u8>, String)> {
    let [salt, text]: [Value; 2] = opening.into_array().ok()?.try_into().ok()?;
    Some((salt.into_bytes().ok().filter(|s| s.len() == SALT)?, text.into_text().ok()?))
}

fn hash(salt: &[u8], text: &str) -> Vec<u8> {
    Sha256::new().chain_update(salt).chain_update(text).finalize().to_vec()
}

/// The fields of a kind of fact that name or mark a person.
fn named(kind: &str) -> &'static [&'static str] {
    FIELDS.iter().find(|(fact, _)| *fact == kind).map_or(&[], |(_, names)| names)
}
