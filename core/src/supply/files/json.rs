//! Our JSON, read part by part: no tree of a large file is built.

use std::borrow::Cow;
use std::cell::RefCell;
use std::fmt;
use std::marker::PhantomData;

use serde::Serialize;
use serde::de::{DeserializeSeed, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};

use super::cells::{Cell, Fault, into_link, into_node, link_needs, node_needs, unknown};
use super::{FileError, Read, Remarks};
use crate::json::{TWICE, fault, quoted};
use crate::supply::model::{Link, MAX_CONDUCTORS, Node};
use crate::supply::network::{MAX_PARTS, Network};

/// The network as JSON, one part a line.
pub fn to_json(network: &Network) -> String {
    fn lines<T: Serialize>(parts: &[T]) -> String {
        // Plain records of texts: they can always be written.
        let lines: Vec<String> = parts.iter().filter_map(|part| serde_json::to_string(part).ok()).collect();
        if lines.is_empty() { "[]".into() } else { format!("[\n  {}\n]", lines.join(",\n  ")) }
    }
    format!("{{\"nodes\":{},\n\"links\":{}}}\n", lines(network.described()), lines(network.links()))
}

pub fn read(text: &str) -> Result<Read, FileError> {
    let state = RefCell::new(State::default());
    let mut json = serde_json::Deserializer::from_str(text);
    let done = File(&state).deserialize(&mut json).and_then(|()| json.end());
    let State { nodes, links, remarks, fault: own } = state.into_inner();
    if let Err(error) = done {
        // Our own reason says more than the reader's.
        let (place, say) = own.unwrap_or_else(|| fault(&error));
        return Err(FileError::new(place, say));
    }
    let (Some(nodes), Some(links)) = (nodes, links) else {
        let say = "the fields \"nodes\" and \"links\" must both be there; write [] where there are none yet.";
        return Err(FileError::new("", say));
    };
    Ok(super::network(nodes, links, remarks)?)
}

#[derive(Default)]
struct State {
    nodes: Option<Vec<Node>>,
    links: Option<Vec<Link>>,
    remarks: Remarks,
    /// The place and the sentence of the first fault.
    fault: Option<(String, String)>,
}

/// One value of a part.
enum Value<'a> {
    Null,
    Flag(bool),
    Number(f64),
    Text(Cow<'a, str>),
    List(Vec<Value<'a>>),
    Object,
}

impl Value<'_> {
    fn wants(&self, what: &str) -> String {
        let kind = match self {
            Value::Null => "null",
            Value::Flag(_) => "true or false",
            Value::Number(_) => "a number",
            Value::Text(_) => "a text",
            Value::List(_) => "a list",
            Value::Object => "an object in braces",
        };
        format!("{what} belongs here, not {kind}.")
    }
}

impl Cell for Value<'_> {
    fn text(&self) -> Result<String, String> {
        match self {
            Value::Text(text) if text.is_empty() => {
                Err("a text needs at least one character; leave it out if it is not known.".into())
            }
            Value::Text(text) => Ok(text.as_ref().to_owned()),
            _ => Err(self.wants("A text in quotation marks")),
        }
    }

    fn flag(&self) -> Result<bool, String> {
        match self {
            Value::Flag(flag) => Ok(*flag),
            _ => Err(self.wants("true or false")),
        }
    }

    fn list(&self, most: usize) -> Result<Vec<String>, String> {
        let Value::List(list) = self else { return Err(self.wants("A list in square brackets")) };
        if list.len() > most {
            return Err(format!("this list has {} items and at most {most} are taken; shorten it.", list.len()));
        }
        list.iter().map(Cell::text).collect()
    }

    fn count(&self) -> Option<f64> {
        match self {
            Value::Number(number) => Some(*number),
            _ => None,
        }
    }
}

struct AnyValue<'a>(PhantomData<&'a ()>);

impl<'de> DeserializeSeed<'de> for AnyValue<'de> {
    type Value = Value<'de>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Value<'de>, D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for AnyValue<'de> {
    type Value = Value<'de>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a value")
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

/// The whole file.
struct File<'s>(&'s RefCell<State>);

impl<'de> DeserializeSeed<'de> for File<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        let state = self.0;
        from.deserialize_any(self).inspect_err(|error| {
            // What is no object at all gets no further than this.
            let told = error.to_string();
            if told.starts_with("invalid type") {
                let say = "An object in braces belongs here, with \"nodes\" and \"links\".";
                state.borrow_mut().fault.get_or_insert((String::new(), say.into()));
            }
        })
    }
}

impl<'de> Visitor<'de> for File<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<(), A::Error> {
        while let Some(Key(key)) = entries.next_key::<Key>()? {
            let again = match key.as_ref() {
                "nodes" => self.0.borrow().nodes.is_some(),
                "links" => self.0.borrow().links.is_some(),
                other => {
                    self.0.borrow_mut().fault = Some((String::new(), unknown(other, &["nodes", "links"]).1));
                    return Err(A::Error::custom("field"));
                }
            };
            if again {
                return Err(A::Error::custom(format!("{TWICE}{}", quoted(&key))));
            }
            if key == "nodes" {
                let list = entries.next_value_seed(Parts::<Node>::of("nodes", self.0))?;
                self.0.borrow_mut().nodes = Some(list);
            } else {
                let list = entries.next_value_seed(Parts::<Link>::of("links", self.0))?;
                self.0.borrow_mut().links = Some(list);
            }
        }
        Ok(())
    }
}

/// What `nodes` and `links` hold.
trait Part: Default {
    fn put(&mut self, field: &str, value: &Value, remarks: &mut Remarks, at: &str) -> Result<(), Fault>;
    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault>;
}

impl Part for Node {
    fn put(&mut self, field: &str, value: &Value, remarks: &mut Remarks, at: &str) -> Result<(), Fault> {
        into_node(self, field, value, remarks, at)
    }

    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
        node_needs(seen)
    }
}

impl Part for Link {
    fn put(&mut self, field: &str, value: &Value, remarks: &mut Remarks, at: &str) -> Result<(), Fault> {
        into_link(self, field, value, remarks, at)
    }

    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
        link_needs(seen)
    }
}

/// A list of parts.
struct Parts<'s, P> {
    name: &'static str,
    state: &'s RefCell<State>,
    part: PhantomData<P>,
}

impl<'s, P> Parts<'s, P> {
    fn of(name: &'static str, state: &'s RefCell<State>) -> Parts<'s, P> {
        Parts { name, state, part: PhantomData }
    }

    fn fail<E: Error>(&self, place: String, say: String) -> E {
        self.state.borrow_mut().fault.get_or_insert((place, say));
        E::custom("part")
    }
}

impl<'de, P: Part> DeserializeSeed<'de> for Parts<'_, P> {
    type Value = Vec<P>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Vec<P>, D::Error> {
        let (name, state) = (self.name, self.state);
        from.deserialize_any(self).inspect_err(|error| {
            if error.to_string().starts_with("invalid type") {
                let say = "A list in square brackets belongs here.";
                state.borrow_mut().fault.get_or_insert((name.into(), say.into()));
            }
        })
    }
}

impl<'de, P: Part> Visitor<'de> for Parts<'_, P> {
    type Value = Vec<P>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a list")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Vec<P>, A::Error> {
        let mut parts = Vec::new();
        loop {
            let one = One { index: parts.len(), list: &self };
            let Some(part) = items.next_element_seed(one)? else { return Ok(parts) };
            if parts.len() == MAX_PARTS {
                let say = format!("at most {MAX_PARTS} are taken; leave out what is far from the work.");
                return Err(self.fail(self.name.into(), say));
            }
            parts.push(part);
        }
    }
}

/// One part of a list.
struct One<'p, 's, P> {
    index: usize,
    list: &'p Parts<'s, P>,
}

impl<'de, P: Part> DeserializeSeed<'de> for One<'_, '_, P> {
    type Value = P;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<P, D::Error> {
        let (index, list) = (self.index, self.list);
        from.deserialize_any(self).map_err(|error| {
            if error.to_string().starts_with("invalid type") {
                return list.fail(format!("{}[{index}]", list.name), "An object in braces belongs here.".into());
            }
            error
        })
    }
}

impl<'de, P: Part> Visitor<'de> for One<'_, '_, P> {
    type Value = P;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<P, A::Error> {
        let mut part = P::default();
        let mut seen: Vec<Cow<str>> = Vec::with_capacity(8);
        let place = || format!("{}[{}]", self.list.name, self.index);
        let fail = |(field, say): Fault| -> A::Error {
            let place = if field.is_empty() { place() } else { format!("{}.{field}", place()) };
            self.list.fail(place, say)
        };
        while let Some(key) = entries.next_key::<Key>()? {
            let Key(key) = key;
            if seen.contains(&key) {
                return Err(A::Error::custom(format!("{TWICE}{}", quoted(&key))));
            }
            let value = entries.next_value_seed(AnyValue(PhantomData))?;
            // The place costs time to write, and only kinds that are not known need it.
            let at = if key == "kind" { place() } else { String::new() };
            // A fault is noted in the same state, so its borrow has to be over.
            let put = part.put(&key, &value, &mut self.list.state.borrow_mut().remarks, &at);
            put.map_err(fail)?;
            seen.push(key);
        }
        P::needs(|field| seen.iter().any(|key| key == field)).map_err(fail)?;
        Ok(part)
    }
}

/// A key without a copy, where it needs none.
struct Key<'a>(Cow<'a, str>);

impl<'de> serde::Deserialize<'de> for Key<'de> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Key<'de>, D::Error> {
        struct Text;
        impl<'de> Visitor<'de> for Text {
            type Value = Key<'de>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a field")
            }

            fn visit_str<E>(self, text: &str) -> Result<Key<'de>, E> {
                Ok(Key(Cow::Owned(text.to_owned())))
            }

            fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Key<'de>, E> {
                Ok(Key(Cow::Borrowed(text)))
            }
        }
        from.deserialize_str(Text)
    }
}
