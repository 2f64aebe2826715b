//! What is asked of a person before an act can be done, and what an act is about that is not there: a value each, and its sentence.
//!
//! A form names the value of what it lacks; the sentence is made once the act has come to nothing. Start at [`AskFirst`].

mod device;
mod gone;
mod isolate;
mod job;
mod lock;
mod plan;
mod prove;
mod restore;
mod supply;

pub use device::AskDevice;
pub use gone::Gone;
pub use isolate::AskIsolate;
pub use job::AskJob;
pub use lock::AskLock;
pub use plan::{AskPlan, InstrumentPart};
pub use prove::AskProve;
pub use restore::AskRestore;
pub use supply::AskSupply;

use super::World;
use super::catalogue::say;
use super::company::company_error;
use super::lists::commas;
use super::typed::{reading_error, tag_error};
use super::words::{QUOTED, quoted, row_place};
use stillbar_journal::EntryId;
use stillbar_rules::job::company::CompanyError;
use stillbar_rules::point::LockRow;
use stillbar_rules::prove::ReadingError;
use stillbar_values::tag::TagError;

/// What has to be given, said or done first.
#[derive(Debug, Clone, PartialEq)]
pub enum AskFirst {
    /// About the device itself.
    Device(AskDevice),
    /// About a job as a whole.
    Job(AskJob),
    /// Of the plan.
    Plan(AskPlan),
    /// At a point.
    Isolate(AskIsolate),
    /// About locks and keys.
    Lock(AskLock),
    /// Of proving dead.
    Prove(AskProve),
    /// While the supply comes back.
    Restore(AskRestore),
    /// About a supply network.
    Supply(AskSupply),
    /// What the act is about is not there.
    Gone(Gone),
    /// More was given than is taken.
    Longer {
        /// The most characters.
        most: usize,
        /// What was asked for.
        ask: Box<AskFirst>,
    },
    /// A name that is listed already where things are told apart by their names.
    Listed {
        /// The name.
        name: String,
    },
    /// Whole minutes within bounds.
    Minutes {
        /// The most.
        most: u32,
    },
    /// The signature.
    Signs {
        /// Who signs.
        name: String,
    },
    /// The name of who signs, where another one was typed.
    SignsAsThemselves {
        /// What was typed.
        typed: String,
        /// Who signs.
        name: String,
    },
    /// The parts of an instrument that nobody marked as sound.
    NotMarked {
        /// Them.
        parts: Vec<InstrumentPart>,
    },
    /// A part of the network that has another name.
    PartNamed {
        /// The name that is taken.
        id: String,
    },
    /// A voltage in digits.
    Volts(ReadingError),
    /// The same for a pair of the dead test.
    VoltsOf {
        /// One conductor of the pair.
        first: String,
        /// The other.
        then: String,
        /// What is wrong with what was typed.
        why: Box<ReadingError>,
    },
    /// The same for a pair that is read with the supply back.
    VoltsBack {
        /// One conductor of the pair.
        first: String,
        /// The other.
        then: String,
        /// What is wrong with what was typed.
        why: Box<ReadingError>,
    },
    /// A tag as it is printed.
    TagText(TagError),
    /// A file of rules that can be read and can hold.
    Company(CompanyError),
    /// That the wait after a wrong PIN is over.
    PinWait {
        /// What is left of it.
        seconds: u64,
    },
    /// The right PIN.
    PinOf {
        /// Whose.
        person: EntryId,
        /// How long the next try waits.
        seconds: u64,
    },
    /// A PIN of so many digits.
    PinDigits {
        /// The fewest.
        from: usize,
        /// The most.
        to: usize,
    },
}

/// What is asked first, or is not there, in a sentence or two.
pub fn ask_first(ask: &AskFirst, names: &World) -> String {
    match ask {
        AskFirst::Device(ask) => ask.says(),
        AskFirst::Job(ask) => ask.says(),
        AskFirst::Plan(ask) => ask.says(),
        AskFirst::Isolate(ask) => ask.says(),
        AskFirst::Lock(ask) => ask.says(),
        AskFirst::Prove(ask) => ask.says(),
        AskFirst::Restore(ask) => ask.says(),
        AskFirst::Supply(ask) => ask.says(),
        AskFirst::Gone(gone) => gone.says(),
        AskFirst::Longer { most, ask } => say!("ask-shorter", most = *most, ask = ask_first(ask, names)),
        AskFirst::Listed { name } => say!("ask-listed", name = name),
        AskFirst::Minutes { most } => say!("ask-minutes", most = *most),
        AskFirst::Signs { name } => say!("ask-signs", name = name),
        AskFirst::SignsAsThemselves { typed, name } => {
            say!("ask-signs-as-themselves", typed = quoted(typed, QUOTED), name = name)
        }
        AskFirst::NotMarked { parts } => {
            say!("ask-not-marked", parts = commas(parts.iter().map(|part| part.says())))
        }
        AskFirst::PartNamed { id } => say!("ask-part-named", id = id),
        AskFirst::Volts(why) => say!("ask-volts", why = reading_error(why)),
        AskFirst::VoltsOf { first, then, why } => {
            say!("ask-volts-of", first = first, then = then, why = reading_error(why))
        }
        AskFirst::VoltsBack { first, then, why } => {
            say!("ask-volts-back", first = first, then = then, why = reading_error(why))
        }
        AskFirst::TagText(why) => say!("ask-tag-text", why = tag_error(why)),
        AskFirst::Company(why) => say!("ask-company", why = company_error(why)),
        AskFirst::PinWait { seconds } => say!("ask-pin-wait", seconds = *seconds),
        AskFirst::PinOf { person, seconds } => say!("ask-pin-of", name = names.name(*person), seconds = *seconds),
        AskFirst::PinDigits { from, to } => say!("ask-pin-digits", from = *from, to = *to),
    }
}

/// That a photo could not be written to disk, for this reason.
pub fn photo_unwritten(why: &str) -> String {
    say!("photo-unwritten", why = why)
}

/// That a record could not be written to disk, for this reason.
pub fn record_unwritten(why: &str) -> String {
    say!("record-unwritten", why = why)
}

/// That a PIN could not be kept, for this reason.
pub fn pin_unkept(why: &str) -> String {
    say!("pin-unkept", why = why)
}

/// That a padlock which goes through points of two jobs cannot come off in the other one, for this reason.
pub fn padlock_stays_beside(there: &LockRow, why: &str) -> String {
    say!("padlock-stays-beside", place = row_place(there), job = &there.job_title, why = why)
}

/// Questions that have one sentence each and no value in it.
macro_rules! asks {
    ($(#[$about:meta])* $name:ident in $group:ident { $($variant:ident => $id:literal,)* }) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[allow(missing_docs, reason = "the message of each is what there is to say of it")]
        pub enum $name {
            $($variant,)*
        }

        impl $name {
            pub(super) fn says(self) -> String {
                match self {
                    $($name::$variant => say!($id),)*
                }
            }
        }

        impl From<$name> for AskFirst {
            fn from(ask: $name) -> AskFirst {
                AskFirst::$group(ask)
            }
        }
    };
}
use asks;
