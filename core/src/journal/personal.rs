//! What names or marks a person: not in the signed body but beside it, so that it can be withheld and the entry still holds.
//!
//! In the body such a field is the SHA-256 of 16 random bytes and the text; behind the body stand the openings, salt and text by the
//! field's name. Without the salt nobody can try names until one fits. Whoever has an entry may take openings away, and cannot put
//! others in their place.

use ciborium::Value;
use sha2::{Digest, Sha256};

use super::EntryError;
use super::cbor::{self, CborError};

/// What stands in the place of a text whose opening is not here.
pub const WITHHELD: &str = "(withheld)";
/// Bytes of salt: as many as a random key needs today (common practice, no source).
const SALT: usize = 16;

/// The fields, by the fact that has them.
const FIELDS: [(&str, &[&str]); 8] = [
    ("person-noted", &["name", "qualification", "telephone"]),
    ("told", &["who"]),
    ("handed-back", &["to", "mark"]),
    ("key-taken", &["mark"]),
    ("shift-taken", &["mark"]),
    ("lock-forced", &["mark"]),
    ("run-signed", &["mark"]),
    ("supply-answered", &["who"]),
];

/// Puts commitments in the place of the texts in `body`; what opens them comes back as a CBOR item, or nothing if there were none.
pub(super) fn commit(body: &mut Value, random: &dyn Fn(u32) -> Vec<u8>) -> Result<Vec<u8>, EntryError> {
    let mut openings = Vec::new();
    for (name, field) in fields(body) {
        if let Value::Text(text) = field {
            let salt = random(SALT as u32);
            if salt.len() != SALT {
                return Err(EntryError::Salt);
            }
            let hash = hash(&salt, text);
            openings.push((Value::Text(name), Value::Array(vec![Value::Bytes(salt), Value::Text(text.clone())])));
            *field = Value::Bytes(hash);
        }
    }
    if openings.is_empty() { Ok(Vec::new()) } else { Ok(cbor::encode(&Value::Map(openings))?) }
}

/// The commitments that stood in a body, by field, so that they can be put back.
pub(super) struct Committed(Vec<(String, Vec<u8>)>);

/// Puts the texts back into `body` where `openings` has them, and [`WITHHELD`] where not. `openings`: the CBOR item behind the body, if
/// there is one.
pub(super) fn reveal(body: &mut Value, openings: Option<Value>) -> Result<Committed, EntryError> {
    let mut opened = match openings {
        None => Vec::new(),
        Some(Value::Map(pairs)) if !pairs.is_empty() => pairs,
        Some(_) => return Err(CborError::NotCanonical.into()),
    };
    let mut committed = Vec::new();
    for (name, field) in fields(body) {
        let Value::Bytes(hashed) = field else { continue };
        let hashed = std::mem::take(hashed);
        *field = match opened.iter().position(|(key, _)| key.as_text() == Some(&name)) {
            None => Value::Text(WITHHELD.into()),
            Some(at) => {
                let (salt, text) = pair(opened.swap_remove(at).1).ok_or(CborError::NotCanonical)?;
                if hash(&salt, &text) != hashed {
                    return Err(EntryError::Opening(name));
                }
                Value::Text(text)
            }
        };
        committed.push((name, hashed));
    }
    // An opening of nothing could carry anything.
    if opened.is_empty() { Ok(Committed(committed)) } else { Err(CborError::NotCanonical.into()) }
}

impl Committed {
    /// Puts the commitments back in the place of the texts.
    pub(super) fn put_back(self, body: &mut Value) {
        for (name, hashed) in self.0 {
            if let Some((_, field)) = fields(body).into_iter().find(|(n, _)| *n == name) {
                *field = Value::Bytes(hashed);
            }
        }
    }
}

/// The openings that `keep` is true for, as a CBOR item, or nothing if none is left.
pub(super) fn keeping(openings: &[u8], keep: &dyn Fn(&str) -> bool) -> Result<Vec<u8>, CborError> {
    let mut pairs = cbor::item(&mut &openings[..])?.into_map().map_err(|_| CborError::NotCanonical)?;
    pairs.retain(|(name, _)| name.as_text().is_some_and(keep));
    if pairs.is_empty() { Ok(Vec::new()) } else { cbor::encode(&Value::Map(pairs)) }
}

/// Whether a text stands in one of the fields.
pub(super) fn shown(body: &mut Value) -> bool {
    fields(body).into_iter().any(|(_, field)| field.as_text().is_some_and(|text| text != WITHHELD && !text.is_empty()))
}

fn pair(opening: Value) -> Option<(Vec<u8>, String)> {
    let [salt, text]: [Value; 2] = opening.into_array().ok()?.try_into().ok()?;
    Some((salt.into_bytes().ok().filter(|s| s.len() == SALT)?, text.into_text().ok()?))
}

fn hash(salt: &[u8], text: &str) -> Vec<u8> {
    Sha256::new().chain_update(salt).chain_update(text).finalize().to_vec()
}

/// The fields of a body's fact that name or mark a person.
fn fields(body: &mut Value) -> Vec<(String, &mut Value)> {
    let fact = body.as_map_mut().and_then(|map| map.iter_mut().find(|(key, _)| key.as_text() == Some("fact")));
    let Some((kind, content)) = fact.and_then(|(_, fact)| fact.as_map_mut()?.first_mut()) else { return Vec::new() };
    let names = FIELDS.iter().find(|(fact, _)| kind.as_text() == Some(fact)).map_or(&[][..], |(_, names)| names);
    let Some(content) = content.as_map_mut() else { return Vec::new() };
    let named = content.iter_mut().filter_map(|(key, value)| Some((key.as_text()?.to_owned(), value)));
    named.filter(|(name, _)| names.contains(&name.as_str())).collect()
}
