//! JSON as a tree that keeps every field, so that a field given twice is refused instead of the last one winning.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use super::MAX_BYTES;
use super::fault::{CaseError, CaseFault, Place};
use crate::json::{self, CROWDED, JsonKind, MAX_FIELDS, TWICE, quoted};

/// One value.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Node {
    Null,
    Flag(bool),
    Number(f64),
    Text(String),
    List(Vec<Node>),
    Map(Vec<(String, Node)>),
}

impl Node {
    /// Reads `text`; an error has the line and the column.
    pub(crate) fn parse(text: &str) -> Result<Node, CaseError> {
        let whole = |what| Err(CaseError { place: Place::Whole, what });
        if text.len() > MAX_BYTES {
            return whole(CaseFault::TooLarge(MAX_BYTES));
        }
        // Some editors put a byte order mark in front.
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        if text.trim().is_empty() {
            return whole(CaseFault::Empty);
        }
        serde_json::from_str(text).map_err(|error| CaseError {
            place: Place::At { line: error.line(), column: error.column() },
            what: CaseFault::Broken(json::broken(&error)),
        })
    }

    /// What it is.
    pub(crate) fn kind(&self) -> JsonKind {
        match self {
            Node::Null => JsonKind::Null,
            Node::Flag(_) => JsonKind::Flag,
            Node::Number(_) => JsonKind::Number,
            Node::Text(_) => JsonKind::Text,
            Node::List(_) => JsonKind::List,
            Node::Map(_) => JsonKind::Object,
        }
    }
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Node, D::Error> {
        from.deserialize_any(TreeSeed)
    }
}

struct TreeSeed;

impl<'de> Visitor<'de> for TreeSeed {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("value")
    }

    fn visit_unit<E>(self) -> Result<Node, E> {
        Ok(Node::Null)
    }

    fn visit_bool<E>(self, flag: bool) -> Result<Node, E> {
        Ok(Node::Flag(flag))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Node, E> {
        Ok(Node::Number(number as f64))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Node, E> {
        Ok(Node::Number(number as f64))
    }

    fn visit_f64<E>(self, number: f64) -> Result<Node, E> {
        Ok(Node::Number(number))
    }

    fn visit_str<E>(self, text: &str) -> Result<Node, E> {
        Ok(Node::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Node, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Node::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Node, A::Error> {
        let mut map: Vec<(String, Node)> = Vec::new();
        while let Some(key) = entries.next_key::<String>()? {
            if map.len() == MAX_FIELDS {
                return Err(de::Error::custom(CROWDED));
            }
            if map.iter().any(|(known, _)| *known == key) {
                return Err(de::Error::custom(format!("{TWICE}{}", quoted(&key))));
            }
            let value = entries.next_value()?;
            map.push((key, value));
        }
        Ok(Node::Map(map))
    }
}
