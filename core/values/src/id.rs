//! Names of entries and devices: 32 bytes each, byte strings in CBOR, hex digits where a person may read them.

use std::fmt;
use std::str::FromStr;

use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Why a text is not an id.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("an id has 64 hex digits")]
pub struct IdError;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub [u8; 32]);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.iter().try_for_each(|b| write!(f, "{b:02x}"))
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{}({:.8})", stringify!($name), self.to_string())
            }
        }

        impl FromStr for $name {
            type Err = IdError;
            fn from_str(text: &str) -> Result<Self, IdError> {
                let digits = text.as_bytes();
                if digits.len() != 64 || !digits.iter().all(u8::is_ascii_hexdigit) {
                    return Err(IdError);
                }
                let mut out = [0; 32];
                for (byte, pair) in out.iter_mut().zip(text.as_bytes().chunks(2)) {
                    let pair = std::str::from_utf8(pair).map_err(|_| IdError)?;
                    *byte = u8::from_str_radix(pair, 16).map_err(|_| IdError)?;
                }
                Ok(Self(out))
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                if to.is_human_readable() { to.collect_str(self) } else { to.serialize_bytes(&self.0) }
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                struct Bytes;
                impl Visitor<'_> for Bytes {
                    type Value = [u8; 32];
                    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                        f.write_str("32 bytes")
                    }
                    fn visit_bytes<E: Error>(self, v: &[u8]) -> Result<[u8; 32], E> {
                        v.try_into().map_err(|_| E::invalid_length(v.len(), &self))
                    }
                }
                if from.is_human_readable() {
                    String::deserialize(from)?.parse().map_err(D::Error::custom)
                } else {
                    from.deserialize_bytes(Bytes).map(Self)
                }
            }
        }
    };
}

id! {
    /// SHA-256 of an entry's body. Everything in a job (the job itself, a point, a lock, a person) is named by the entry
    /// that brought it, so a name cannot be forged and can only point backwards.
    EntryId
}

id! {
    /// A device's Ed25519 public key.
    DeviceId
}

impl EntryId {
    /// What a device's first entry names as the entry before it.
    pub const NONE: EntryId = EntryId([0; 32]);

    /// The first eight hex digits, for eyes only.
    pub fn short(&self) -> String {
        self.to_string()[..8].to_owned()
    }
}
