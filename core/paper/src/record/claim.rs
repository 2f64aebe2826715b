//! What is claimed and how it is told, and when and by whom it was recorded.

use std::fmt::{self, Display, Formatter};
use std::ops::Deref;

use serde::{Serialize, Serializer};
use serde_json::Value;
use stillbar_text::no_pin;

/// One claim: what stands in the record and is compared, a code with its values, and the sentence that pages and tables show for it. Wording may
/// change from version to version; what is claimed does not.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Claim {
    code: Value,
    says: String,
}

impl Claim {
    /// `code` as it is written; what cannot be written claims nothing.
    pub fn of(code: impl Serialize, says: impl Into<String>) -> Claim {
        Claim { code: serde_json::to_value(code).unwrap_or_default(), says: says.into() }
    }

    /// What people wrote themselves: there is no other code for it. `otherwise` is said where it is not known.
    pub fn named(name: Option<String>, otherwise: &str) -> Claim {
        let says = name.clone().unwrap_or_else(|| otherwise.to_owned());
        Claim::of(name, says)
    }

    /// The code and its values.
    pub fn code(&self) -> &Value {
        &self.code
    }

    /// The sentence.
    pub fn says(&self) -> String {
        self.says.clone()
    }
}

impl Deref for Claim {
    type Target = str;

    fn deref(&self) -> &str {
        &self.says
    }
}

impl Display for Claim {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        f.write_str(&self.says)
    }
}

impl Serialize for Claim {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        self.code.serialize(to)
    }
}

/// When something was recorded, by whom, and the entry that says so.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct When {
    /// The device's own clock, with its offset (RFC 3339).
    pub at: String,
    /// Who had the device in hand.
    pub by: Option<String>,
    /// They went on without their PIN.
    pub no_pin: bool,
    /// The entry's id, hex.
    pub entry: String,
}

impl When {
    /// Who had the device in hand, and that they went on without their PIN.
    pub fn named(&self) -> Option<String> {
        self.by.clone().map(|by| no_pin(by, self.no_pin))
    }
}
