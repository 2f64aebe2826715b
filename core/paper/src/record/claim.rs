//! What is claimed, and how it is told.

use std::fmt::{self, Display, Formatter};
use std::ops::Deref;

use serde::{Serialize, Serializer};
use serde_json::Value;

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
