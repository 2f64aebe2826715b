//! What goes into a statement and what comes out of a row.

use stillbar_core::journal::{DeviceId, EntryId};

use crate::error::OfficeError;

/// A value of the database. What is missing says of which kind it would be, because PostgreSQL asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SqlValue {
    /// A whole number; also yes (1) and no (0).
    Int(Option<i64>),
    /// A text.
    Text(Option<String>),
    /// Bytes.
    Bytes(Option<Vec<u8>>),
}

impl From<i64> for SqlValue {
    fn from(n: i64) -> SqlValue {
        SqlValue::Int(Some(n))
    }
}

impl From<u32> for SqlValue {
    fn from(n: u32) -> SqlValue {
        SqlValue::Int(Some(n.into()))
    }
}

impl From<i32> for SqlValue {
    fn from(n: i32) -> SqlValue {
        SqlValue::Int(Some(n.into()))
    }
}

impl From<usize> for SqlValue {
    fn from(n: usize) -> SqlValue {
        SqlValue::Int(Some(i64::try_from(n).unwrap_or(i64::MAX)))
    }
}

impl From<bool> for SqlValue {
    fn from(yes: bool) -> SqlValue {
        SqlValue::Int(Some(yes.into()))
    }
}

impl From<&str> for SqlValue {
    fn from(text: &str) -> SqlValue {
        SqlValue::from(text.to_owned())
    }
}

impl From<String> for SqlValue {
    fn from(mut text: String) -> SqlValue {
        // PostgreSQL's texts have no zero; nothing that a person types has one.
        text.retain(|c| c != '\0');
        SqlValue::Text(Some(text))
    }
}

impl From<&[u8]> for SqlValue {
    fn from(bytes: &[u8]) -> SqlValue {
        SqlValue::Bytes(Some(bytes.to_vec()))
    }
}

impl From<Vec<u8>> for SqlValue {
    fn from(bytes: Vec<u8>) -> SqlValue {
        SqlValue::Bytes(Some(bytes))
    }
}

impl<const N: usize> From<[u8; N]> for SqlValue {
    fn from(bytes: [u8; N]) -> SqlValue {
        SqlValue::Bytes(Some(bytes.to_vec()))
    }
}

impl From<EntryId> for SqlValue {
    fn from(id: EntryId) -> SqlValue {
        id.0.into()
    }
}

impl From<DeviceId> for SqlValue {
    fn from(id: DeviceId) -> SqlValue {
        id.0.into()
    }
}

impl From<Option<i64>> for SqlValue {
    fn from(n: Option<i64>) -> SqlValue {
        SqlValue::Int(n)
    }
}

impl From<Option<EntryId>> for SqlValue {
    fn from(id: Option<EntryId>) -> SqlValue {
        SqlValue::Bytes(id.map(|id| id.0.to_vec()))
    }
}

impl From<Option<DeviceId>> for SqlValue {
    fn from(id: Option<DeviceId>) -> SqlValue {
        SqlValue::Bytes(id.map(|id| id.0.to_vec()))
    }
}

impl From<Option<String>> for SqlValue {
    fn from(text: Option<String>) -> SqlValue {
        text.map_or(SqlValue::Text(None), SqlValue::from)
    }
}

/// A row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SqlRow(pub Vec<SqlValue>);

fn other(at: usize) -> OfficeError {
    OfficeError::broken(&format!("column {at} of a row is not of the kind that was asked for"))
}

impl SqlRow {
    /// A whole number.
    pub fn int(&self, at: usize) -> Result<i64, OfficeError> {
        self.maybe_int(at)?.ok_or_else(|| other(at))
    }

    /// A whole number, if there is one.
    pub fn maybe_int(&self, at: usize) -> Result<Option<i64>, OfficeError> {
        match self.0.get(at) {
            Some(SqlValue::Int(n)) => Ok(*n),
            Some(SqlValue::Text(None) | SqlValue::Bytes(None)) => Ok(None),
            _ => Err(other(at)),
        }
    }

    /// A number that counts something.
    pub fn count(&self, at: usize) -> Result<u64, OfficeError> {
        u64::try_from(self.int(at)?).map_err(|_| other(at))
    }

    /// Yes or no.
    pub fn yes(&self, at: usize) -> Result<bool, OfficeError> {
        Ok(self.int(at)? != 0)
    }

    /// A text.
    pub fn text(&self, at: usize) -> Result<String, OfficeError> {
        self.maybe_text(at)?.ok_or_else(|| other(at))
    }

    /// A text, if there is one.
    pub fn maybe_text(&self, at: usize) -> Result<Option<String>, OfficeError> {
        match self.0.get(at) {
            Some(SqlValue::Text(text)) => Ok(text.clone()),
            Some(SqlValue::Int(None) | SqlValue::Bytes(None)) => Ok(None),
            _ => Err(other(at)),
        }
    }

    /// Bytes.
    pub fn bytes(&self, at: usize) -> Result<Vec<u8>, OfficeError> {
        match self.0.get(at) {
            Some(SqlValue::Bytes(Some(bytes))) => Ok(bytes.clone()),
            _ => Err(other(at)),
        }
    }

    fn array<const N: usize>(&self, at: usize) -> Result<[u8; N], OfficeError> {
        self.bytes(at)?.try_into().map_err(|_| other(at))
    }

    /// 32 bytes.
    pub fn hash(&self, at: usize) -> Result<[u8; 32], OfficeError> {
        self.array(at)
    }

    /// An entry's id.
    pub fn id(&self, at: usize) -> Result<EntryId, OfficeError> {
        self.array(at).map(EntryId)
    }

    /// An entry's id, if there is one.
    pub fn maybe_id(&self, at: usize) -> Result<Option<EntryId>, OfficeError> {
        match self.0.get(at) {
            Some(SqlValue::Int(None) | SqlValue::Text(None) | SqlValue::Bytes(None)) => Ok(None),
            _ => self.id(at).map(Some),
        }
    }

    /// A device.
    pub fn device(&self, at: usize) -> Result<DeviceId, OfficeError> {
        self.array(at).map(DeviceId)
    }

    /// A signature.
    pub fn signature(&self, at: usize) -> Result<[u8; 64], OfficeError> {
        self.array(at)
    }
}
