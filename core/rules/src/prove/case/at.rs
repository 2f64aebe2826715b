//! A value together with its place in the file: every error of the reader begins with that place.

use super::fault::{CaseError, CaseFault, Needed, Place, Unit, Wanted};
use super::node::Node;
use crate::json::quoted;
use stillbar_values::figures;

/// A value and where it stands.
#[derive(Clone)]
pub(crate) struct At<'a> {
    pub(crate) node: &'a Node,
    path: String,
}

/// The fields of one object.
pub(crate) struct Fields<'a> {
    map: &'a [(String, Node)],
    path: String,
}

impl<'a> At<'a> {
    pub(crate) fn root(node: &'a Node) -> At<'a> {
        At { node, path: String::new() }
    }

    pub(crate) fn error(&self, what: CaseFault) -> CaseError {
        error(&self.path, what)
    }

    /// Its place, such as `points[2]`; empty for the whole file.
    pub(crate) fn path(&self) -> &str {
        &self.path
    }

    fn wants(&self, what: Wanted) -> CaseError {
        self.error(CaseFault::Wants(what, self.node.kind()))
    }

    /// Its fields; one that is not in `known` is refused.
    pub(crate) fn fields(&self, known: &[&'static str]) -> Result<Fields<'a>, CaseError> {
        let Node::Map(map) = self.node else { return Err(self.wants(Wanted::Object)) };
        match map.iter().find(|(key, _)| !known.contains(&key.as_str())) {
            Some((key, _)) => Err(self.error(CaseFault::UnknownField { field: quoted(key), known: known.to_vec() })),
            None => Ok(Fields { map, path: self.path.clone() }),
        }
    }

    /// Its items, at most `most`.
    pub(crate) fn items(&self, most: usize) -> Result<Vec<At<'a>>, CaseError> {
        let Node::List(list) = self.node else { return Err(self.wants(Wanted::List)) };
        if list.len() > most {
            return Err(self.error(CaseFault::TooMany { count: list.len(), most }));
        }
        Ok(list.iter().enumerate().map(|(i, node)| At { node, path: format!("{}[{i}]", self.path) }).collect())
    }

    /// A text of 1 to `most` characters, without white space around it.
    pub(crate) fn text(&self, most: usize) -> Result<&'a str, CaseError> {
        let Node::Text(text) = self.node else { return Err(self.wants(Wanted::Text)) };
        let count = text.chars().count();
        if text.trim().is_empty() || text.trim() != text || text.chars().any(char::is_control) {
            return Err(self.error(CaseFault::NotSeen));
        }
        if count > most {
            return Err(self.error(CaseFault::TooLong { count, most }));
        }
        Ok(text)
    }

    /// One of `choices` by name.
    pub(crate) fn choice<T: Copy>(&self, choices: &[(&'static str, T)]) -> Result<T, CaseError> {
        let names = || choices.iter().map(|(name, _)| *name).collect();
        let Node::Text(text) = self.node else { return Err(self.wants(Wanted::OneOf(names()))) };
        let found = choices.iter().find(|(name, _)| name == text).map(|(_, value)| *value);
        found.ok_or_else(|| self.error(CaseFault::NotOneOf { text: quoted(text), choices: names() }))
    }

    pub(crate) fn flag(&self) -> Result<bool, CaseError> {
        match self.node {
            Node::Flag(flag) => Ok(*flag),
            _ => Err(self.wants(Wanted::Flag)),
        }
    }

    /// A voltage that was read, as millivolts. What is finer is rounded up: nothing that was read becomes nothing.
    pub(crate) fn volts(&self) -> Result<u32, CaseError> {
        let (mv, rest) = self.millivolts()?;
        Ok(mv.saturating_add(u32::from(rest)))
    }

    /// A voltage that was set, as millivolts. What is finer is left out: a limit, or what bounds one, never grows.
    pub(crate) fn volts_set(&self) -> Result<u32, CaseError> {
        Ok(self.millivolts()?.0)
    }

    fn millivolts(&self) -> Result<(u32, bool), CaseError> {
        let Node::Number(volts) = self.node else { return Err(self.wants(Wanted::Volts)) };
        if *volts < 0.0 {
            return Err(self.error(CaseFault::Negative(*volts)));
        }
        figures::of_number(*volts).ok_or_else(|| self.error(CaseFault::TooHigh))
    }

    /// A whole number from `least` to `most`.
    pub(crate) fn whole(&self, least: u32, most: u32, unit: Unit) -> Result<u32, CaseError> {
        match self.node {
            Node::Number(n) if n.fract() == 0.0 && (f64::from(least)..=f64::from(most)).contains(n) => Ok(*n as u32),
            _ => Err(self.error(CaseFault::NotWhole(unit, least, most))),
        }
    }
}

impl<'a> Fields<'a> {
    /// The value of a field that may be left out.
    pub(crate) fn get(&self, name: &str) -> Option<At<'a>> {
        let path = if self.path.is_empty() { name.to_owned() } else { format!("{}.{name}", self.path) };
        self.map.iter().find(|(key, _)| key == name).map(|(_, node)| At { node, path })
    }

    /// The value of a field that must be there.
    pub(crate) fn need(&self, field: Needed) -> Result<At<'a>, CaseError> {
        self.get(field.field()).ok_or_else(|| error(&self.path, CaseFault::Missing(field)))
    }
}

fn error(path: &str, what: CaseFault) -> CaseError {
    CaseError { place: if path.is_empty() { Place::Whole } else { Place::Path(path.to_owned()) }, what }
}
