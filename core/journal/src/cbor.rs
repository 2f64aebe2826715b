//! Deterministic CBOR: RFC 8949 section 4.2.1, and no floating point at all.
//!
//! Shortest integers, definite lengths, map keys in the bytewise order of their encodings. Reading accepts exactly what
//! writing would have written, so one content has one hash.

use ciborium::Value;
use serde::Serialize;
use serde::de::DeserializeOwned;

/// How deep arrays and maps may nest; an entry needs six.
const DEPTH: usize = 24;

/// Why bytes are not an entry's CBOR.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CborError {
    /// The content cannot be written.
    #[error("this cannot be written as deterministic CBOR: {0}")]
    Unwritable(String),
    /// A map of the content has two entries of one key.
    #[error("this cannot be written as deterministic CBOR: a map has the same key twice")]
    SameKey,
    /// The content has a floating point number.
    #[error("this cannot be written as deterministic CBOR: a floating point number")]
    Float,
    /// The content has a tag of CBOR.
    #[error("this cannot be written as deterministic CBOR: a tag")]
    Tag,
    /// The bytes are not CBOR of the expected shape.
    #[error("these bytes are not a readable entry: {0}")]
    Unreadable(String),
    /// The bytes have no fact in them.
    #[error("these bytes are not a readable entry: it has no fact")]
    NoFact,
    /// The bytes have the right shape but not in the one deterministic encoding.
    #[error("these bytes are not in the deterministic encoding")]
    NotCanonical,
}

/// Writes `content` in the one deterministic encoding.
pub fn encode<T: Serialize>(content: &T) -> Result<Vec<u8>, CborError> {
    let mut out = Vec::with_capacity(256);
    write(&canonical(value(content)?)?, &mut out)?;
    Ok(out)
}

/// `content` as CBOR's own kinds of values.
pub(super) fn value<T: Serialize>(content: &T) -> Result<Value, CborError> {
    Value::serialized(content).map_err(|e| CborError::Unwritable(e.to_string()))
}

/// Reads one item from the front of `bytes`, which has to be in the one deterministic encoding, whatever it says.
pub(super) fn item(bytes: &mut &[u8]) -> Result<Value, CborError> {
    let all = *bytes;
    let value: Value = ciborium::de::from_reader_with_recursion_limit(&mut *bytes, DEPTH)
        .map_err(|e| CborError::Unreadable(e.to_string()))?;
    let mut spelled = Vec::with_capacity(all.len() - bytes.len());
    write(&canonical(value.clone())?, &mut spelled)?;
    if spelled == all[..all.len() - bytes.len()] { Ok(value) } else { Err(CborError::NotCanonical) }
}

/// Reads what [`encode`] wrote, and refuses every other spelling of it.
pub fn decode<T: Serialize + DeserializeOwned>(bytes: &[u8]) -> Result<T, CborError> {
    let content: T = ciborium::de::from_reader_with_recursion_limit(bytes, DEPTH)
        .map_err(|e| CborError::Unreadable(e.to_string()))?;
    if encode(&content)? == bytes { Ok(content) } else { Err(CborError::NotCanonical) }
}

fn write(value: &Value, out: &mut Vec<u8>) -> Result<(), CborError> {
    ciborium::into_writer(value, out).map_err(|e| CborError::Unwritable(e.to_string()))
}

fn canonical(value: Value) -> Result<Value, CborError> {
    Ok(match value {
        Value::Array(items) => Value::Array(items.into_iter().map(canonical).collect::<Result<_, _>>()?),
        Value::Map(pairs) => {
            let mut keyed = Vec::with_capacity(pairs.len());
            for (key, value) in pairs {
                let (key, mut bytes) = (canonical(key)?, Vec::new());
                write(&key, &mut bytes)?;
                keyed.push((bytes, key, canonical(value)?));
            }
            keyed.sort_by(|a, b| a.0.cmp(&b.0));
            if keyed.windows(2).any(|w| w[0].0 == w[1].0) {
                return Err(CborError::SameKey);
            }
            Value::Map(keyed.into_iter().map(|(_, key, value)| (key, value)).collect())
        }
        // Two platforms may spell a float differently; every quantity in the journal is a whole number of a small unit.
        Value::Float(_) => return Err(CborError::Float),
        Value::Tag(..) => return Err(CborError::Tag),
        plain => plain,
    })
}
