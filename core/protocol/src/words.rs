//! Closed lists of words, as they stand on the wire.

/// An enum whose variants are words on the wire. A word that is not in the list is read as `$other`, which is in no list of `ALL` and is
/// what a newer side said; it is the caller's to take it the cautious way.
macro_rules! words {
    (
        $(#[$doc:meta])*
        $name:ident, $(#[$other_doc:meta])* else $other:ident:
        $( $(#[$of:meta])* $variant:ident $word:literal, )+
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $( $(#[$of])* $variant, )+
            $(#[$other_doc])*
            $other,
        }

        impl $name {
            /// All that are known here.
            pub const ALL: &[$name] = &[$( $name::$variant, )+];

            /// The word on the wire.
            pub fn word(self) -> &'static str {
                match self {
                    $( $name::$variant => $word, )+
                    $name::$other => "",
                }
            }

            /// What a word means here.
            pub fn named(word: &str) -> $name {
                match word {
                    $( $word => $name::$variant, )+
                    _ => $name::$other,
                }
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(self.word())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<$name, D::Error> {
                Ok($name::named(&String::deserialize(from)?))
            }
        }

        #[cfg(feature = "schema")]
        impl utoipa::PartialSchema for $name {
            fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::Schema> {
                $crate::schema::one_of($name::ALL.iter().map(|word| word.word()))
            }
        }

        #[cfg(feature = "schema")]
        impl utoipa::ToSchema for $name {}
    };
}
