//! The rules of the exchange as pure functions over small enums, each with its whole table. docs/conflicts.md prints the tables.

pub use stillbar_protocol::Size;

/// How a clock that is ahead is told from one that is right: a day, in milliseconds.
pub const FUTURE_MS: i64 = stillbar_protocol::limits::AHEAD_MS;
/// The first wait after something went wrong, in milliseconds.
pub const FIRST_WAIT_MS: u64 = 2_000;
/// The longest wait, in milliseconds: a phone that comes up from the cellar is heard within minutes.
pub const LONGEST_WAIT_MS: u64 = 5 * 60_000;

/// What an entry that comes in meets here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EntryMet {
    /// Length, encoding and signature hold.
    pub holds: bool,
    /// This very entry is here.
    pub known: bool,
    /// Another entry of the same device has its number.
    pub number_taken: bool,
    /// It is signed with this device's key, or with one that it had before, and it is not here.
    pub of_this_device: bool,
    /// Its neighbours in that chain, as far as they are here, are those that it names and that name it.
    pub follows_on: bool,
    /// Its clock is more than a day ahead of this device's.
    pub from_the_future: bool,
}

/// What becomes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EntryTaken {
    /// Into the journal.
    In,
    /// Into the journal, as what this device has forgotten.
    Back,
    /// Nothing: it is there.
    Known,
    /// Kept beside the journal, and shown to a person.
    Aside(&'static str),
    /// Thrown away: it is no entry.
    Refused(&'static str),
}

impl EntryTaken {
    /// In words.
    pub fn says(&self) -> String {
        match self {
            EntryTaken::In => "It is taken into the journal.".into(),
            EntryTaken::Back => "It is taken back into the journal. The device has forgotten what it wrote, or its key is used elsewhere: nothing \
                            stands proved and nothing is signed until it goes on under a new key."
                .into(),
            EntryTaken::Known => "Nothing: it is there.".into(),
            EntryTaken::Aside(why) => {
                format!("It is put aside and counts as the more cautious reading until somebody has looked at the spot: {why}.")
            }
            EntryTaken::Refused(why) => format!("It is thrown away: {why}."),
        }
    }
}

/// Why an entry is put aside: a number twice.
pub const NUMBER_TAKEN: &str = "another entry of that device has its number";
/// Why an entry is put aside: a number twice in a chain of this device.
pub const KEY_ELSEWHERE: &str =
    "it is signed with this device's key and does not fit what is here: that key was used elsewhere";
/// Why an entry is put aside: its clock.
pub const AHEAD: &str = "its clock is more than a day ahead";
const NO_ENTRY: &str = "it is no entry, or its signature does not hold";

/// What becomes of an entry that comes in.
pub fn take(met: EntryMet) -> EntryTaken {
    match met {
        EntryMet { holds: false, .. } => EntryTaken::Refused(NO_ENTRY),
        EntryMet { known: true, .. } => EntryTaken::Known,
        EntryMet { of_this_device: true, number_taken: true, .. }
        | EntryMet { of_this_device: true, follows_on: false, .. } => EntryTaken::Aside(KEY_ELSEWHERE),
        EntryMet { number_taken: true, .. } => EntryTaken::Aside(NUMBER_TAKEN),
        EntryMet { from_the_future: true, .. } => EntryTaken::Aside(AHEAD),
        EntryMet { of_this_device: true, .. } => EntryTaken::Back,
        _ => EntryTaken::In,
    }
}

/// Every case of [`take`], in words.
pub const TAKE: [(&str, EntryMet, EntryTaken); 8] = {
    const PLAIN: EntryMet = EntryMet {
        holds: true,
        known: false,
        number_taken: false,
        of_this_device: false,
        follows_on: true,
        from_the_future: false,
    };
    const OWN: EntryMet = EntryMet { of_this_device: true, ..PLAIN };
    [
        ("A new entry that holds", PLAIN, EntryTaken::In),
        ("The same entry again", EntryMet { known: true, ..PLAIN }, EntryTaken::Known),
        ("A changed entry, or bytes that are none", EntryMet { holds: false, ..PLAIN }, EntryTaken::Refused(NO_ENTRY)),
        (
            "Another entry with the same device and number",
            EntryMet { number_taken: true, ..PLAIN },
            EntryTaken::Aside(NUMBER_TAKEN),
        ),
        ("An entry with this device's own signature that is not here and follows on", OWN, EntryTaken::Back),
        (
            "An entry with this device's own signature, and another one has its number here",
            EntryMet { number_taken: true, ..OWN },
            EntryTaken::Aside(KEY_ELSEWHERE),
        ),
        (
            "An entry with this device's own signature that goes on from another one than is here",
            EntryMet { follows_on: false, ..OWN },
            EntryTaken::Aside(KEY_ELSEWHERE),
        ),
        (
            "An entry whose clock is more than a day ahead",
            EntryMet { from_the_future: true, ..PLAIN },
            EntryTaken::Aside(AHEAD),
        ),
    ]
};

/// What went wrong on the way to the office.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ExchangeTrouble {
    /// No answer: no signal, no such host, broken off.
    Away(String),
    /// The office is there and cannot just now (429, 5xx).
    Busy(String),
    /// The office refuses this device: the token is void.
    Unknown(String),
    /// The office refuses this call; the sentence says why.
    Refused(String),
    /// The answer cannot be read.
    Garbled(String),
}

/// What happens next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Next {
    /// Try again after a while, twice as long as last time up to [`LONGEST_WAIT_MS`]; at once when the shell says that it is a good time.
    Again,
    /// Try again only when a person asks for it or the app starts: trying will not help by itself. The timer runs all the same, slowly.
    Ask,
}

impl ExchangeTrouble {
    /// What happens next.
    pub fn next(&self) -> Next {
        match self {
            ExchangeTrouble::Away(_) | ExchangeTrouble::Busy(_) | ExchangeTrouble::Garbled(_) => Next::Again,
            ExchangeTrouble::Unknown(_) | ExchangeTrouble::Refused(_) => Next::Ask,
        }
    }

    /// The sentence for the person.
    pub fn says(&self) -> String {
        match self {
            ExchangeTrouble::Away(why) => {
                format!("The office cannot be reached ({why}). What was recorded is kept here and goes out by itself.")
            }
            ExchangeTrouble::Busy(why) => format!("The office is busy ({why}). It is tried again by itself."),
            ExchangeTrouble::Unknown(why) => {
                format!("The office does not take this device any more: {why} Scan a new code from the office.")
            }
            ExchangeTrouble::Refused(why) => format!("The office refused: {why}"),
            ExchangeTrouble::Garbled(why) => {
                format!("The answer could not be read ({why}). Something stands between this device and the office.")
            }
        }
    }
}

/// How long to wait after so many failures in a row, in milliseconds. It never ends and never stops: the timer always re-arms.
pub fn wait_ms(failures: u32, next: Next) -> u64 {
    match next {
        Next::Ask => LONGEST_WAIT_MS,
        Next::Again => FIRST_WAIT_MS.saturating_mul(1 << failures.saturating_sub(1).min(16)).min(LONGEST_WAIT_MS),
    }
}

/// Why a photo is not at the office yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waits {
    /// It goes out now.
    Goes,
    /// Entries go first.
    ForEntries,
    /// Originals wait for a link that costs nothing.
    ForWifi,
}

/// Whether a photo goes out now. Entries first, thumbnails next, originals last or on Wi-Fi only.
pub fn goes(size: Size, entries_left: bool, free_link: bool) -> Waits {
    match (size, entries_left, free_link) {
        (_, true, _) => Waits::ForEntries,
        (Size::Original, false, false) => Waits::ForWifi,
        _ => Waits::Goes,
    }
}
