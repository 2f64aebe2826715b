//! One value of our JSON, without a copy of its texts where none is needed.

use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

use serde::de::{DeserializeSeed, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};

use super::cells::Cell;
use super::{FileFault, Wanted};
use crate::json::JsonKind;
use crate::supply::model::MAX_CONDUCTORS;

/// One value of a part.
pub enum Value<'a> {
    Null,
    Flag(bool),
    Number(f64),
    Text(Cow<'a, str>),
    List(Vec<Value<'a>>),
    Object,
}

impl Value<'_> {
    fn wants(&self, wanted: Wanted) -> FileFault {
        let given = match self {
            Value::Null => JsonKind::Null,
            Value::Flag(_) => JsonKind::Flag,
            Value::Number(_) => JsonKind::Number,
            Value::Text(_) => JsonKind::Text,
            Value::List(_) => JsonKind::List,
            Value::Object => JsonKind::Object,
        };
        FileFault::Wants { wanted, given }
    }
}

impl Cell for Value<'_> {
    fn text(&self) -> Result<&str, FileFault> {
        match self {
            Value::Text(text) if text.is_empty() => Err(FileFault::TextEmpty),
            Value::Text(text) => Ok(text),
            _ => Err(self.wants(Wanted::Text)),
        }
    }

    fn flag(&self) -> Result<bool, FileFault> {
        match self {
            Value::Flag(flag) => Ok(*flag),
            _ => Err(self.wants(Wanted::Flag)),
        }
    }

    fn list(&self, most: usize) -> Result<Vec<String>, FileFault> {
        let Value::List(list) = self else { return Err(self.wants(Wanted::List)) };
        if list.len() > most {
            return Err(FileFault::ListTooLong { count: list.len(), most });
        }
        list.iter().map(|item| item.text().map(str::to_owned)).collect()
    }

    fn count(&self) -> Option<f64> {
        match self {
            Value::Number(number) => Some(*number),
            _ => None,
        }
    }
}

/// Reads any value.
pub struct AnyValue<'a>(pub PhantomData<&'a ()>);

impl<'de> DeserializeSeed<'de> for AnyValue<'de> {
    type Value = Value<'de>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Value<'de>, D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for AnyValue<'de> {
    type Value = Value<'de>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("value")
    }

    fn visit_unit<E>(self) -> Result<Value<'de>, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, flag: bool) -> Result<Value<'de>, E> {
        Ok(Value::Flag(flag))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Value<'de>, E> {
        Ok(Value::Number(number as f64))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Value<'de>, E> {
        Ok(Value::Number(number as f64))
    }

    fn visit_f64<E>(self, number: f64) -> Result<Value<'de>, E> {
        Ok(Value::Number(number))
    }

    fn visit_str<E>(self, text: &str) -> Result<Value<'de>, E> {
        Ok(Value::Text(Cow::Owned(text.to_owned())))
    }

    fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Value<'de>, E> {
        Ok(Value::Text(Cow::Borrowed(text)))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value<'de>, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(AnyValue(PhantomData))? {
            // Lists inside lists are in no format: what is in them does not matter.
            if list.len() <= MAX_CONDUCTORS {
                list.push(item);
            }
        }
        Ok(Value::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Value<'de>, A::Error> {
        while entries.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(Value::Object)
    }
}
