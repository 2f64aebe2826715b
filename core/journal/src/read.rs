//! Reading what stands in an entry, whatever version wrote it.
//!
//! Every version keeps the keys of the envelope that stand in [`Body`], with their types. It may add keys to the envelope, fields to a fact,
//! values to a field, and kinds of facts: then what can be read is read, and [`Newer`] says that there is more.

use ciborium::Value;

use super::cbor::{self, CborError};
use super::entry::VERSION;
use super::{Body, EntryError, Fact, personal};

/// What this version cannot read of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Newer {
    /// Something beside what it knows: a field, a key of the envelope.
    Beside,
    /// What is recorded: the fact is [`Fact::Newer`].
    Fact,
}

/// The body in `bytes`, how many of them are its own, and what of it cannot be read.
pub(super) fn body(bytes: &[u8]) -> Result<(Body, usize, Option<Newer>), EntryError> {
    // Most entries commit to nothing and hold nothing new: they are read in one go. What is written again the same holds nothing else.
    if let Ok(body) = cbor::decode::<Body>(bytes)
        && body.version == VERSION
    {
        return Ok((body, bytes.len(), None));
    }
    let mut rest = bytes;
    let mut value = cbor::item(&mut rest)?;
    let length = bytes.len() - rest.len();
    let openings = if rest.is_empty() { None } else { Some(cbor::item(&mut rest)?) };
    if !rest.is_empty() {
        return Err(CborError::NotCanonical.into());
    }
    personal::reveal(&mut value, openings)?;
    let (body, newer) = understood(value)?;
    Ok((body, length, newer))
}

/// As much of a body as this version understands.
fn understood(mut value: Value) -> Result<(Body, Option<Newer>), CborError> {
    let unreadable = |e: ciborium::value::Error| CborError::Unreadable(e.to_string());
    if let Ok(body) = value.deserialized::<Body>() {
        let all = body.version == VERSION && cbor::encode(&body)? == cbor::encode(&value)?;
        return Ok((body, (!all).then_some(Newer::Beside)));
    }
    // A new way of signing on says nothing here, and nobody signed on is the more cautious reading.
    if let Some(map) = value.as_map_mut() {
        map.retain(|(key, _)| key.as_text() != Some("signed_on"));
    }
    if let Ok(body) = value.deserialized::<Body>() {
        return Ok((body, Some(Newer::Beside)));
    }
    let (kind, content) = fact(&mut value).ok_or_else(|| CborError::Unreadable("it has no fact".into()))?;
    let unread = Fact::Newer { kind: kind.clone(), payload: cbor::encode(content)? };
    // Any fact will do: what is read is the envelope around it.
    let stand_in = Fact::WorkStopped {};
    put_fact(&mut value, cbor::value(&stand_in)?);
    let body = value.deserialized::<Body>().map_err(unreadable)?;
    Ok((Body { fact: unread, ..body }, Some(Newer::Fact)))
}

/// The kind and the content of a body's fact.
pub(super) fn fact(body: &mut Value) -> Option<(&mut String, &mut Value)> {
    let fact = body.as_map_mut()?.iter_mut().find(|(key, _)| key.as_text() == Some("fact"));
    match fact?.1.as_map_mut()?.as_mut_slice() {
        [(Value::Text(kind), content)] => Some((kind, content)),
        _ => None,
    }
}

fn put_fact(body: &mut Value, fact: Value) {
    if let Some(map) = body.as_map_mut()
        && let Some((_, old)) = map.iter_mut().find(|(key, _)| key.as_text() == Some("fact"))
    {
        *old = fact;
    }
}
