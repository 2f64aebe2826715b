//! Our JSON, read part by part: no tree of a large file is built.

use std::borrow::Cow;
use std::cell::RefCell;
use std::fmt;
use std::marker::PhantomData;

use serde::Serialize;
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};

use super::cells::{Fault, into_link, into_node, link_needs, node_needs, unknown};
use super::value::{AnyValue, Value};
use super::{FileError, LINK_FIELDS, NODE_FIELDS, Read, Remarks};
use crate::json::{TWICE, fault, quoted};
use crate::supply::model::{Link, Node};
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
    /// Fewer than 32.
    const FIELDS: &'static [&'static str];
    fn put(
        &mut self,
        field: &'static str,
        value: &Value,
        remarks: &mut Remarks,
        at: &dyn Fn() -> String,
    ) -> Result<(), Fault>;
    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault>;
}

impl Part for Node {
    const FIELDS: &'static [&'static str] = &NODE_FIELDS;

    fn put(
        &mut self,
        field: &'static str,
        value: &Value,
        remarks: &mut Remarks,
        at: &dyn Fn() -> String,
    ) -> Result<(), Fault> {
        into_node(self, field, value, remarks, at)
    }

    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), Fault> {
        node_needs(seen)
    }
}

impl Part for Link {
    const FIELDS: &'static [&'static str] = &LINK_FIELDS;

    fn put(
        &mut self,
        field: &'static str,
        value: &Value,
        remarks: &mut Remarks,
        at: &dyn Fn() -> String,
    ) -> Result<(), Fault> {
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
        // A bit for each field that was there.
        let mut seen = 0u32;
        let place = || format!("{}[{}]", self.list.name, self.index);
        let fail = |(field, say): Fault| -> A::Error {
            let place = if field.is_empty() { place() } else { format!("{}.{field}", place()) };
            self.list.fail(place, say)
        };
        while let Some(Key(key)) = entries.next_key::<Key>()? {
            let Some(at) = P::FIELDS.iter().position(|field| *field == key) else {
                return Err(fail(unknown(&key, P::FIELDS)));
            };
            if seen >> at & 1 == 1 {
                return Err(A::Error::custom(format!("{TWICE}{}", quoted(&key))));
            }
            seen |= 1 << at;
            let value = entries.next_value_seed(AnyValue(PhantomData))?;
            // A fault is noted in the same state, so its borrow has to be over.
            let put = part.put(P::FIELDS[at], &value, &mut self.list.state.borrow_mut().remarks, &place);
            put.map_err(fail)?;
        }
        let there = |field: &str| P::FIELDS.iter().position(|f| *f == field).is_some_and(|at| seen >> at & 1 == 1);
        P::needs(there).map_err(fail)?;
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
