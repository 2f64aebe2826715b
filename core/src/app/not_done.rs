//! Why what was asked of the app was not done: a value, and the one place where it becomes a sentence.

use std::fmt::{self, Display, Formatter};
use std::io;

use argon2::password_hash;

use super::{NoRecord, OpenError};
use crate::evidence::PhotoError;
use crate::job::refusal::Refusal;
use crate::journal::EntryError;
use crate::record::RecordError;
use crate::store::photos::KeepPhotoError;
use crate::store::{LockRow, StoreError, plain};
use crate::supply::SupplyError;
use crate::sync::near::PartRefused;
use crate::text::{self, AskFirst};
use crate::world::World;

/// Why something was not done. Nothing of it was kept.
#[derive(Debug)]
pub enum NotDone {
    /// The gate refuses it.
    Refused(Box<Refusal>),
    /// Something has to be given, said or done first, or what it is about is not there.
    Ask(Box<AskFirst>),
    /// The network of the site gives no answer.
    Network(Box<SupplyError>),
    /// The store could not read or keep it.
    Store(StoreError),
    /// It is no entry that can be signed.
    Entry(EntryError),
    /// The device's key cannot be made or read.
    Key(OpenError),
    /// The library that hashes PINs does not.
    Pin(password_hash::Error),
    /// What came is no photo that can be kept.
    Photo(PhotoError),
    /// A photo could not be written to disk.
    PhotoUnwritten(io::Error),
    /// The small copy of a photo that somebody else took could not be written to disk.
    CopyUnwritten(io::Error),
    /// The device gave nothing, and says why in words of its own.
    Device(String),
    /// There is no record of it; the room for records says why.
    NoRecord(NoRecord),
    /// The record cannot be made.
    Record(RecordError),
    /// The record could not be written to disk.
    RecordUnwritten(io::Error),
    /// It does not go into codes.
    Codes(PartRefused),
    /// The same padlock is on a point of another job, and stays on there.
    PadlockBeside {
        /// The lock there.
        there: Box<LockRow>,
        /// Why it stays.
        why: Box<NotDone>,
    },
}

impl NotDone {
    /// The sentence for the person; names of people come from `names`.
    pub(crate) fn says(&self, names: &World) -> String {
        match self {
            NotDone::Refused(why) => text::refusal(why, names),
            NotDone::Ask(ask) => text::ask_first(ask, names),
            NotDone::Network(error) => text::network_fault(&error.why),
            NotDone::Store(error) => error.to_string(),
            NotDone::Entry(error) => error.to_string(),
            NotDone::Key(error) => error.to_string(),
            NotDone::Pin(error) => text::pin_unkept(&error.to_string()),
            NotDone::Photo(error) => error.to_string(),
            NotDone::PhotoUnwritten(error) => text::photo_unwritten(&plain(error)),
            NotDone::CopyUnwritten(error) => error.to_string(),
            NotDone::Device(why) | NotDone::Codes(why) => why.clone(),
            NotDone::NoRecord(why) => why.to_string(),
            NotDone::Record(error) => error.to_string(),
            NotDone::RecordUnwritten(error) => text::record_unwritten(&plain(error)),
            NotDone::PadlockBeside { there, why } => text::padlock_stays_beside(there, &why.says(names)),
        }
    }
}

/// The same for whoever asked and does not know the names: why, with the sentence for a person.
#[derive(Debug)]
pub struct FieldError {
    /// Why.
    pub why: NotDone,
    says: String,
}

impl FieldError {
    /// With the names that are known now: what is undone afterwards may take some of them away.
    pub(super) fn of(why: NotDone, names: &World) -> FieldError {
        FieldError { says: why.says(names), why }
    }
}

impl Display for FieldError {
    fn fmt(&self, f: &mut Formatter) -> fmt::Result {
        f.write_str(&self.says)
    }
}

impl std::error::Error for FieldError {}

impl From<Refusal> for NotDone {
    fn from(why: Refusal) -> NotDone {
        NotDone::Refused(Box::new(why))
    }
}

impl From<KeepPhotoError> for NotDone {
    fn from(error: KeepPhotoError) -> NotDone {
        match error {
            KeepPhotoError::Photo(error) => NotDone::Photo(error),
            KeepPhotoError::Unwritten(error) => NotDone::PhotoUnwritten(error),
        }
    }
}

impl From<SupplyError> for NotDone {
    fn from(error: SupplyError) -> NotDone {
        NotDone::Network(Box::new(error))
    }
}

/// From a cause that is carried as it is, and from what is asked.
macro_rules! causes {
    ($($group:ident: $cause:ty,)*; $($ask:ty,)*) => {
        $(impl From<$cause> for NotDone {
            fn from(cause: $cause) -> NotDone {
                NotDone::$group(cause)
            }
        })*
        $(impl From<$ask> for NotDone {
            fn from(ask: $ask) -> NotDone {
                NotDone::Ask(Box::new(ask.into()))
            }
        })*
    };
}

causes! {
    Store: StoreError,
    Entry: EntryError,
    Key: OpenError,
    Record: RecordError,
    NoRecord: NoRecord,
    ;
    AskFirst,
    text::AskDevice,
    text::AskJob,
    text::AskPlan,
    text::AskIsolate,
    text::AskLock,
    text::AskProve,
    text::AskRestore,
    text::AskSupply,
    text::Gone,
}
