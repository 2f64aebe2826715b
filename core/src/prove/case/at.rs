//! A value together with its place in the file: every error of the reader begins with that place.

use super::CaseError;
use super::node::Node;
use crate::json::quoted;
use stillbar_values::figures;

/// A value and where it stands.
#[derive(Clone)]
pub(super) struct At<'a> {
    pub(super) node: &'a Node,
    path: String,
}

/// The fields of one object.
pub(super) struct Fields<'a> {
    map: &'a [(String, Node)],
    path: String,
}

impl<'a> At<'a> {
    pub(super) fn root(node: &'a Node) -> At<'a> {
        At { node, path: String::new() }
    }

    pub(super) fn error(&self, say: impl Into<String>) -> CaseError {
        error(&self.path, say)
    }

    fn wants(&self, what: &str) -> CaseError {
        self.error(format!("{what} belongs here, not {}.", self.node.kind()))
    }

    /// Its fields; one that is not in `known` is refused.
    pub(super) fn fields(&self, known: &[&str]) -> Result<Fields<'a>, CaseError> {
        let Node::Map(map) = self.node else { return Err(self.wants("An object in braces")) };
        match map.iter().find(|(key, _)| !known.contains(&key.as_str())) {
            Some((key, _)) => {
                Err(self.error(format!("the field {} is not known here; known are {}.", quoted(key), known.join(", "))))
            }
            None => Ok(Fields { map, path: self.path.clone() }),
        }
    }

    /// Its items, at most `most`.
    pub(super) fn items(&self, most: usize) -> Result<Vec<At<'a>>, CaseError> {
        let Node::List(list) = self.node else { return Err(self.wants("A list in square brackets")) };
        if list.len() > most {
            return Err(
                self.error(format!("this list has {} items and at most {most} are taken; shorten it.", list.len()))
            );
        }
        Ok(list.iter().enumerate().map(|(i, node)| At { node, path: format!("{}[{i}]", self.path) }).collect())
    }

    /// A text of 1 to `most` characters, without white space around it.
    pub(super) fn text(&self, most: usize) -> Result<&'a str, CaseError> {
        let Node::Text(text) = self.node else { return Err(self.wants("A text in quotation marks")) };
        let count = text.chars().count();
        if text.trim().is_empty() || text.trim() != text || text.chars().any(char::is_control) {
            return Err(self.error("a name needs characters that can be seen, and no white space before or after it."));
        }
        if count > most {
            return Err(self.error(format!("this has {count} characters and at most {most} are taken; shorten it.")));
        }
        Ok(text)
    }

    /// One of `choices` by name.
    pub(super) fn choice<T: Copy>(&self, choices: &[(&str, T)]) -> Result<T, CaseError> {
        let names = choices.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
        let Node::Text(text) = self.node else { return Err(self.wants(&format!("One of {names}"))) };
        let found = choices.iter().find(|(name, _)| name == text);
        found.map(|(_, value)| *value).ok_or_else(|| self.error(format!("{} is not one of {names}.", quoted(text))))
    }

    pub(super) fn flag(&self) -> Result<bool, CaseError> {
        match self.node {
            Node::Flag(flag) => Ok(*flag),
            _ => Err(self.error(format!(
                "true or false belongs here, not {}; leave it out if it is not known.",
                self.node.kind()
            ))),
        }
    }

    /// A voltage that was read, as millivolts. What is finer is rounded up: nothing that was read becomes nothing.
    pub(super) fn volts(&self) -> Result<u32, CaseError> {
        let (mv, rest) = self.millivolts()?;
        Ok(mv.saturating_add(u32::from(rest)))
    }

    /// A voltage that was set, as millivolts. What is finer is left out: a limit, or what bounds one, never grows.
    pub(super) fn volts_set(&self) -> Result<u32, CaseError> {
        Ok(self.millivolts()?.0)
    }

    fn millivolts(&self) -> Result<(u32, bool), CaseError> {
        let Node::Number(volts) = self.node else {
            return Err(self.wants("A number of volts without a unit, such as 230,"));
        };
        if *volts < 0.0 {
            return Err(self.error(format!("{volts} V is below zero; write the amount without a sign.")));
        }
        figures::of_number(*volts).ok_or_else(|| {
            self.error(format!("this is more than {} V, the most that can be saved; correct it.", figures::MOST))
        })
    }

    /// A whole number from `least` to `most`.
    pub(super) fn whole(&self, least: u32, most: u32, unit: &str) -> Result<u32, CaseError> {
        match self.node {
            Node::Number(n) if n.fract() == 0.0 && (f64::from(least)..=f64::from(most)).contains(n) => Ok(*n as u32),
            _ => Err(self.error(format!("a whole number of {unit} from {least} to {most} belongs here."))),
        }
    }
}

impl<'a> Fields<'a> {
    /// The value of a field that may be left out.
    pub(super) fn get(&self, name: &str) -> Option<At<'a>> {
        let path = if self.path.is_empty() { name.to_owned() } else { format!("{}.{name}", self.path) };
        self.map.iter().find(|(key, _)| key == name).map(|(_, node)| At { node, path })
    }

    /// The value of a field that must be there; `fix` says what to give.
    pub(super) fn need(&self, name: &str, fix: &str) -> Result<At<'a>, CaseError> {
        self.get(name).ok_or_else(|| error(&self.path, format!("the field \"{name}\" is missing; {fix}.")))
    }
}

fn error(path: &str, say: impl Into<String>) -> CaseError {
    CaseError { place: if path.is_empty() { CaseError::WHOLE.into() } else { path.to_owned() }, say: say.into() }
}
