//! Our JSON, read part by part: no tree of a large file is built.

use std::borrow::Cow;
use std::cell::RefCell;
use std::fmt;
use std::marker::PhantomData;

use serde::Serialize;
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};

use super::cells::{CellFault, into_link, into_node, link_needs, node_needs};
use super::value::{AnyValue, Value};
use super::{FileError, FileFault, LINK_FIELDS, List, Many, NODE_FIELDS, Place, Read, Remarks};
use crate::json::broken;
use crate::supply::model::{Link, Node};
use crate::supply::network::{MAX_PARTS, Network};

/// The network as JSON, one part a line.
pub fn to_json(network: &Network) -> String {
    fn lines<T: Serialize>(parts: &[T]) -> String {
        // Plain records of texts: they can always be written.
        let lines: Vec<String> = parts.iter().filter_map(|part| serde_json::to_string(part).ok()).collect();
        if lines.is_empty() { "[]".into() } else { format!("[\n  {}\n]", lines.join(",\n  ")) }
    }
    ["{\"nodes\":", &lines(network.described()), ",\n\"links\":", &lines(network.links()), "}\n"].concat()
}

pub fn read(text: &str) -> Result<Read, FileError> {
    let state = RefCell::new(ReadState::default());
    let mut json = serde_json::Deserializer::from_str(text);
    let done = FileSeed(&state).deserialize(&mut json).and_then(|()| json.end());
    let ReadState { nodes, links, remarks, fault: own } = state.into_inner();
    if let Err(error) = done {
        // Our own reason says more than the reader's.
        let at = Place::At { line: error.line(), column: error.column() };
        let (place, why) = own.unwrap_or_else(|| (None, FileFault::Json(broken(&error))));
        return Err(FileError::new(place.unwrap_or(at), why));
    }
    let (Some(nodes), Some(links)) = (nodes, links) else {
        return Err(FileError::whole(FileFault::ListMissing));
    };
    Ok(super::network(nodes, links, remarks)?)
}

#[derive(Default)]
struct ReadState {
    nodes: Option<Vec<Node>>,
    links: Option<Vec<Link>>,
    remarks: Remarks,
    /// The first fault and its place; `None`: where the reader is.
    fault: Option<(Option<Place>, FileFault)>,
}

/// The fields of the whole file.
const LISTS: [&str; 2] = ["nodes", "links"];

impl ReadState {
    /// Notes the first fault; the reader only has to know that there is one.
    fn fail<E: Error>(&mut self, place: Option<Place>, why: FileFault) -> E {
        self.fault.get_or_insert((place, why));
        E::custom("refused")
    }
}

/// Refuses whatever is no object or no list, with this reason.
macro_rules! refuses {
    ($($visit:ident: $value:ty),*) => {
        $(fn $visit<E: Error>(self, _: $value) -> Result<Self::Value, E> {
            Err(self.refused())
        })*

        fn visit_unit<E: Error>(self) -> Result<Self::Value, E> {
            Err(self.refused())
        }
    };
}

/// The whole file.
struct FileSeed<'s>(&'s RefCell<ReadState>);

impl<'de> DeserializeSeed<'de> for FileSeed<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        from.deserialize_any(self)
    }
}

impl FileSeed<'_> {
    fn refused<E: Error>(&self) -> E {
        self.0.borrow_mut().fail(Some(Place::Whole), FileFault::NoNetwork)
    }
}

impl<'de> Visitor<'de> for FileSeed<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("object")
    }

    refuses!(visit_bool: bool, visit_i64: i64, visit_u64: u64, visit_f64: f64, visit_str: &str);

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<(), A::Error> {
        Err(self.refused())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<(), A::Error> {
        while let Some(Key(key)) = entries.next_key::<Key>()? {
            let again = match key.as_ref() {
                "nodes" => self.0.borrow().nodes.is_some(),
                "links" => self.0.borrow().links.is_some(),
                other => {
                    let why = FileFault::FieldUnknown { field: other.to_owned(), known: &LISTS };
                    return Err(self.0.borrow_mut().fail(Some(Place::Whole), why));
                }
            };
            if again {
                return Err(self.0.borrow_mut().fail(None, FileFault::FieldTwice { field: key.into_owned() }));
            }
            if key == "nodes" {
                let list = entries.next_value_seed(Parts::<Node>::of(List::Nodes, self.0))?;
                self.0.borrow_mut().nodes = Some(list);
            } else {
                let list = entries.next_value_seed(Parts::<Link>::of(List::Links, self.0))?;
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
    fn put(&mut self, field: &'static str, value: &Value, remarks: &mut Remarks, at: &Place) -> Result<(), CellFault>;
    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), CellFault>;
}

impl Part for Node {
    const FIELDS: &'static [&'static str] = &NODE_FIELDS;

    fn put(&mut self, field: &'static str, value: &Value, remarks: &mut Remarks, at: &Place) -> Result<(), CellFault> {
        into_node(self, field, value, remarks, at)
    }

    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), CellFault> {
        node_needs(seen)
    }
}

impl Part for Link {
    const FIELDS: &'static [&'static str] = &LINK_FIELDS;

    fn put(&mut self, field: &'static str, value: &Value, remarks: &mut Remarks, at: &Place) -> Result<(), CellFault> {
        into_link(self, field, value, remarks, at)
    }

    fn needs(seen: impl Fn(&str) -> bool) -> Result<(), CellFault> {
        link_needs(seen)
    }
}

/// A list of parts.
struct Parts<'s, P> {
    list: List,
    state: &'s RefCell<ReadState>,
    part: PhantomData<P>,
}

impl<'s, P> Parts<'s, P> {
    fn of(list: List, state: &'s RefCell<ReadState>) -> Parts<'s, P> {
        Parts { list, state, part: PhantomData }
    }

    fn fail<E: Error>(&self, place: Place, why: FileFault) -> E {
        self.state.borrow_mut().fail(Some(place), why)
    }

    fn refused<E: Error>(&self) -> E {
        self.fail(Place::List(self.list), FileFault::NoList)
    }
}

impl<'de, P: Part> DeserializeSeed<'de> for Parts<'_, P> {
    type Value = Vec<P>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Vec<P>, D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de, P: Part> Visitor<'de> for Parts<'_, P> {
    type Value = Vec<P>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("list")
    }

    refuses!(visit_bool: bool, visit_i64: i64, visit_u64: u64, visit_f64: f64, visit_str: &str);

    fn visit_map<A: MapAccess<'de>>(self, _: A) -> Result<Vec<P>, A::Error> {
        Err(self.refused())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Vec<P>, A::Error> {
        let mut parts = Vec::new();
        loop {
            let one = One { index: parts.len(), list: &self };
            let Some(part) = items.next_element_seed(one)? else { return Ok(parts) };
            if parts.len() == MAX_PARTS {
                return Err(self.fail(Place::List(self.list), FileFault::TooMany(Many::Items)));
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
        from.deserialize_any(self)
    }
}

impl<P> One<'_, '_, P> {
    fn place(&self) -> Place {
        Place::Part(self.list.list, self.index, "")
    }

    fn refused<E: Error>(&self) -> E {
        self.list.fail(self.place(), FileFault::NoObject)
    }
}

impl<'de, P: Part> Visitor<'de> for One<'_, '_, P> {
    type Value = P;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("object")
    }

    refuses!(visit_bool: bool, visit_i64: i64, visit_u64: u64, visit_f64: f64, visit_str: &str);

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<P, A::Error> {
        Err(self.refused())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<P, A::Error> {
        let mut part = P::default();
        // A bit for each field that was there.
        let mut seen = 0u32;
        let place = self.place();
        let fail = |(field, why): CellFault| -> A::Error { self.list.fail(place.field(field), why) };
        while let Some(Key(key)) = entries.next_key::<Key>()? {
            let Some(at) = P::FIELDS.iter().position(|field| *field == key) else {
                return Err(fail(("", FileFault::FieldUnknown { field: key.into_owned(), known: P::FIELDS })));
            };
            if seen >> at & 1 == 1 {
                return Err(self.list.state.borrow_mut().fail(None, FileFault::FieldTwice { field: key.into_owned() }));
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
        struct TextSeed;
        impl<'de> Visitor<'de> for TextSeed {
            type Value = Key<'de>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("field")
            }

            fn visit_str<E>(self, text: &str) -> Result<Key<'de>, E> {
                Ok(Key(Cow::Owned(text.to_owned())))
            }

            fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Key<'de>, E> {
                Ok(Key(Cow::Borrowed(text)))
            }
        }
        from.deserialize_str(TextSeed)
    }
}
