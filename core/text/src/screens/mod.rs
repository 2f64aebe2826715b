//! What screens say: titles, headings, labels, hints, buttons and notices. A file a room of the app, and a function a message.
//!
//! A screen calls the function of what it wants to say and decides the rest: `locks::tell(owner, lock)` is the message `locks-tell`.

/// A function for each message, that takes its values in this order: `tell(owner, lock) => "locks-tell"`.
macro_rules! says {
    (one $name:ident $id:literal) => {
        #[allow(missing_docs, reason = "the message of each is what there is to say of it")]
        pub fn $name() -> String {
            $crate::catalogue::say!($id)
        }
    };
    (one $name:ident $id:literal $($value:ident)+) => {
        #[allow(missing_docs, reason = "the message of each is what there is to say of it")]
        pub fn $name<'a>($($value: impl Into<fluent_bundle::FluentValue<'a>>),+) -> String {
            $(let $value: fluent_bundle::FluentValue = $value.into();)+
            $crate::catalogue::say!($id $(, $value = $value)+)
        }
    };
    ($($name:ident $(($($value:ident),+))? => $id:literal,)*) => {
        $(says!(one $name $id $($($value)+)?);)*
    };
}

pub mod again;
pub mod app;
pub mod aside;
pub mod command;
pub mod find;
pub mod give_up;
pub mod home;
pub mod isolate;
pub mod job;
pub mod language;
pub mod locks;
pub mod near;
pub mod office;
pub mod pin;
pub mod plan;
pub mod prove;
pub mod record;
pub mod restore;
pub mod ruled;
pub mod shell;
pub mod supply;
pub mod system;
pub mod tags;
pub mod work;
