//! Reading what stands in an entry, whatever version wrote it.
//!
//! Every version keeps the keys of the envelope that stand in [`Body`], with their types. It may add keys to the envelope, fields to a fact,
//! values to a field, and kinds of facts: then what can be read is read, and [`Newer`] says that there is more. A job, a point or a lock is
//! there also if one of its fields has a value that is not known here ([`stand_in`]): a lock that is left out could be taken for none.

use ciborium::Value;
use stillbar_values::{Earthing, Means, Order, PointKind, System, Tolerance};

use super::cbor::{self, CborError};
use super::entry::VERSION;
use super::fact::{KeyAt, On};
use super::{Body, EntryError, EntryId, Fact, personal};

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
    let (kind, content) = fact(&mut value).ok_or(CborError::NoFact)?;
    let (kind, content) = (std::mem::take(kind), std::mem::replace(content, Value::Null));
    let (read, newer) = match in_part(&kind, &content)? {
        Some(read) => (read, Newer::Beside),
        None => (Fact::Newer { kind, payload: cbor::encode(&content)? }, Newer::Fact),
    };
    // Any fact will do: what is read is the envelope around it.
    if let Some((kind, content)) = fact(&mut value) {
        (*kind, *content) = (Fact::WorkStopped {}.kind(), Value::Map(Vec::new()));
    }
    let body = value.deserialized::<Body>().map_err(unreadable)?;
    Ok((Body { fact: read, ..body }, Some(newer)))
}

/// What stands in where a field of a fact has a value that is not known here, and the fields for which nothing can.
fn stand_in(kind: &str) -> Option<(Fact, &'static [&'static str])> {
    let text = String::new;
    Some(match kind {
        // Nothing stands proved in a job that is not read in full, whatever its conductors are.
        "job-opened" => {
            let fact = Fact::JobOpened {
                title: text(),
                place: text(),
                equipment: text(),
                scope: text(),
                system: System::ThreePhaseNeutral,
                earthing: Earthing::Unknown,
                order: Order::default(),
                nominal_millivolts: 230_000,
                own: Vec::new(),
                rules: None,
                limit: None,
                tolerance: Tolerance::default(),
                company: None,
            };
            (fact, &[])
        }
        "point-added" => {
            let fact = Fact::PointAdded {
                label: text(),
                at: text(),
                kind: PointKind::ControlDevice,
                lockable: false,
                poles: Vec::new(),
                cuts: None,
                switch: None,
                stays_open: false,
                same_as: None,
            };
            (fact, &["label", "at"])
        }
        "lock-fitted" => {
            let (on, owner) = (On::Point(EntryId::NONE), EntryId::NONE);
            let fact =
                Fact::LockFitted { on, owner, label: text(), key: KeyAt::Owner, means: Means::Padlock, through: None };
            (fact, &["on", "owner", "label"])
        }
        _ => return None,
    })
}

/// A fact of which some fields are read and others stood in for; `None` where that cannot be.
fn in_part(kind: &str, content: &Value) -> Result<Option<Fact>, CborError> {
    let (Some((mut read, needs)), Value::Map(fields)) = (stand_in(kind), content) else { return Ok(None) };
    for (key, told) in fields {
        let mut tried = cbor::value(&read)?;
        let Some(of_kind) = tried.as_map_mut().and_then(|fact| fact.first_mut()?.1.as_map_mut()) else {
            return Ok(None);
        };
        of_kind.retain(|(known, _)| known != key);
        of_kind.push((key.clone(), told.clone()));
        match tried.deserialized::<Fact>() {
            Ok(fact) => read = fact,
            Err(_) if key.as_text().is_some_and(|key| needs.contains(&key)) => return Ok(None),
            Err(_) => {}
        }
    }
    let given = |need: &&str| fields.iter().any(|(key, _)| key.as_text() == Some(need));
    Ok(needs.iter().all(given).then_some(read))
}

/// The kind and the content of a body's fact.
pub(super) fn fact(body: &mut Value) -> Option<(&mut String, &mut Value)> {
    let fact = body.as_map_mut()?.iter_mut().find(|(key, _)| key.as_text() == Some("fact"));
    match fact?.1.as_map_mut()?.as_mut_slice() {
        [(Value::Text(kind), content)] => Some((kind, content)),
        _ => None,
    }
}
