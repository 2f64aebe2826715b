//! What goes into a statement and what comes out of a row.

use stillbar_core::journal::{DeviceId, EntryId};

use crate::fault::Fault;

/// A value of the database. What is missing says of which kind it would be, because PostgreSQL asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Value {
    /// A whole number; also yes (1) and no (0).
    Int(Option<i64>),
    /// A text.
    Text(Option<String>),
    /// Bytes.
    Bytes(Option<Vec<u8>>),
}

impl From<i64> for Value {
    fn from(n: i64) -> Value {
        Value::Int(Some(n))
    }
}

impl From<u32> for Value {
    fn from(n: u32) -> Value {
        Value::Int(Some(n.into()))
    }
}

impl From<i32> for Value {
    fn from(n: i32) -> Value {
        Value::Int(Some(n.into()))
    }
}

impl From<usize> for Value {
    fn from(n: usize) -> Value {
        Value::Int(Some(i64::try_from(n).unwrap_or(i64::MAX)))
    }
}

impl From<bool> for Value {
    fn from(yes: bool) -> Value {
        Value::Int(Some(yes.into()))
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Value {
        Value::from(text.to_owned())
    }
}

impl From<String> for Value {
    fn from(mut text: String) -> Value {
        // PostgreSQL's texts have no zero; nothing that a person types has one.
        text.retain(|c| c != '\0');
        Value::Text(Some(text))
    }
}

impl From<&[u8]> for Value {
    fn from(bytes: &[u8]) -> Value {
        Value::Bytes(Some(bytes.to_vec()))
    }
}

impl From<Vec<u8>> for Value {
    fn from(bytes: Vec<u8>) -> Value {
        Value::Bytes(Some(bytes))
    }
}

impl<const N: usize> From<[u8; N]> for Value {
    fn from(bytes: [u8; N]) -> Value {
        Value::Bytes(Some(bytes.to_vec()))
    }
}

impl From<EntryId> for Value {
    fn from(id: EntryId) -> Value {
        id.0.into()
    }
}

impl From<DeviceId> for Value {
    fn from(id: DeviceId) -> Value {
        id.0.into()
    }
}

impl From<Option<i64>> for Value {
    fn from(n: Option<i64>) -> Value {
        Value::Int(n)
    }
}

impl From<Option<EntryId>> for Value {
    fn from(id: Option<EntryId>) -> Value {
        Value::Bytes(id.map(|id| id.0.to_vec()))
    }
}

impl From<Option<DeviceId>> for Value {
    fn from(id: Option<DeviceId>) -> Value {
        Value::Bytes(id.map(|id| id.0.to_vec()))
    }
}

impl From<Option<String>> for Value {
    fn from(text: Option<String>) -> Value {
        text.map_or(Value::Text(None), Value::from)
    }
}

/// A row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row(pub Vec<Value>);

fn other(at: usize) -> Fault {
    Fault::broken(&format!("column {at} of a row is not of the kind that was asked for"))
}

impl Row {
    /// A whole number.
    pub fn int(&self, at: usize) -> Result<i64, Fault> {
        self.maybe_int(at)?.ok_or_else(|| other(at))
    }

    /// A whole number, if there is one.
    pub fn maybe_int(&self, at: usize) -> Result<Option<i64>, Fault> {
        match self.0.get(at) {
            Some(Value::Int(n)) => Ok(*n),
            Some(Value::Text(None) | Value::Bytes(None)) => Ok(None),
            _ => Err(other(at)),
        }
    }

    /// A number that counts something.
    pub fn count(&self, at: usize) -> Result<u64, Fault> {
        u64::try_from(self.int(at)?).map_err(|_| other(at))
    }

    /// Yes or no.
    pub fn yes(&self, at: usize) -> Result<bool, Fault> {
        Ok(self.int(at)? != 0)
    }

    /// A text.
    pub fn text(&self, at: usize) -> Result<String, Fault> {
        self.maybe_text(at)?.ok_or_else(|| other(at))
    }

    /// A text, if there is one.
    pub fn maybe_text(&self, at: usize) -> Result<Option<String>, Fault> {
        match self.0.get(at) {
            Some(Value::Text(text)) => Ok(text.clone()),
            Some(Value::Int(None) | Value::Bytes(None)) => Ok(None),
            _ => Err(other(at)),
        }
    }

    /// Bytes.
    pub fn bytes(&self, at: usize) -> Result<Vec<u8>, Fault> {
        match self.0.get(at) {
            Some(Value::Bytes(Some(bytes))) => Ok(bytes.clone()),
            _ => Err(other(at)),
        }
    }

    fn array<const N: usize>(&self, at: usize) -> Result<[u8; N], Fault> {
        self.bytes(at)?.try_into().map_err(|_| other(at))
    }

    /// 32 bytes.
    pub fn hash(&self, at: usize) -> Result<[u8; 32], Fault> {
        self.array(at)
    }

    /// An entry's id.
    pub fn id(&self, at: usize) -> Result<EntryId, Fault> {
        self.array(at).map(EntryId)
    }

    /// An entry's id, if there is one.
    pub fn maybe_id(&self, at: usize) -> Result<Option<EntryId>, Fault> {
        match self.0.get(at) {
            Some(Value::Int(None) | Value::Text(None) | Value::Bytes(None)) => Ok(None),
            _ => self.id(at).map(Some),
        }
    }

    /// A device.
    pub fn device(&self, at: usize) -> Result<DeviceId, Fault> {
        self.array(at).map(DeviceId)
    }

    /// A signature.
    pub fn signature(&self, at: usize) -> Result<[u8; 64], Fault> {
        self.array(at)
    }
}
