//! The rules of the exchange as pure functions over small enums, each with its whole table. docs/conflicts.md prints the tables.

/// How a clock that is ahead is told from one that is right: a day, in milliseconds.
pub const FUTURE_MS: i64 = 24 * 3_600_000;
/// The first wait after something went wrong, in milliseconds.
pub const FIRST_WAIT_MS: u64 = 2_000;
/// The longest wait, in milliseconds: a phone that comes up from the cellar is heard within minutes.
pub const LONGEST_WAIT_MS: u64 = 5 * 60_000;

/// What an entry from another device meets here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Met {
    /// Length, encoding and signature hold.
    pub holds: bool,
    /// This very entry is here.
    pub known: bool,
    /// Another entry of the same device has its number.
    pub number_taken: bool,
    /// It says that this device wrote it, and it is not here.
    pub of_this_device: bool,
    /// Its clock is more than a day ahead of this device's.
    pub from_the_future: bool,
}

/// What becomes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    /// Into the journal.
    In,
    /// Nothing: it is there.
    Known,
    /// Kept beside the journal, and shown to a person.
    Aside(&'static str),
    /// Thrown away: it is no entry.
    Refused(&'static str),
}

impl Taken {
    /// In words.
    pub fn says(&self) -> String {
        match self {
            Taken::In => "It is taken into the journal.".into(),
            Taken::Known => "Nothing: it is there.".into(),
            Taken::Aside(why) => format!("It is kept aside and shown to a person: {why}."),
            Taken::Refused(why) => format!("It is thrown away: {why}."),
        }
    }
}

/// What becomes of an entry from another device.
pub fn take(met: Met) -> Taken {
    match met {
        Met { holds: false, .. } => Taken::Refused("it is no entry, or its signature does not hold"),
        Met { known: true, .. } => Taken::Known,
        Met { number_taken: true, .. } => Taken::Aside("another entry of that device has its number"),
        Met { of_this_device: true, .. } => {
            Taken::Aside("it is signed with this device's key, and this device did not write it")
        }
        Met { from_the_future: true, .. } => Taken::Aside("its clock is more than a day ahead"),
        _ => Taken::In,
    }
}

/// Every case of [`take`], in words.
pub const TAKE: [(&str, Met, Taken); 6] = {
    const PLAIN: Met =
        Met { holds: true, known: false, number_taken: false, of_this_device: false, from_the_future: false };
    [
        ("A new entry that holds", PLAIN, Taken::In),
        ("The same entry again", Met { known: true, ..PLAIN }, Taken::Known),
        (
            "A changed entry, or bytes that are none",
            Met { holds: false, ..PLAIN },
            Taken::Refused("it is no entry, or its signature does not hold"),
        ),
        (
            "Another entry with the same device and number",
            Met { number_taken: true, ..PLAIN },
            Taken::Aside("another entry of that device has its number"),
        ),
        (
            "An entry with this device's own signature that it did not write",
            Met { of_this_device: true, ..PLAIN },
            Taken::Aside("it is signed with this device's key, and this device did not write it"),
        ),
        (
            "An entry whose clock is more than a day ahead",
            Met { from_the_future: true, ..PLAIN },
            Taken::Aside("its clock is more than a day ahead"),
        ),
    ]
};

/// What went wrong on the way to the office.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Trouble {
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

impl Trouble {
    /// What happens next.
    pub fn next(&self) -> Next {
        match self {
            Trouble::Away(_) | Trouble::Busy(_) | Trouble::Garbled(_) => Next::Again,
            Trouble::Unknown(_) | Trouble::Refused(_) => Next::Ask,
        }
    }

    /// The sentence for the person.
    pub fn says(&self) -> String {
        match self {
            Trouble::Away(why) => {
                format!("The office cannot be reached ({why}). What was recorded is kept here and goes out by itself.")
            }
            Trouble::Busy(why) => format!("The office is busy ({why}). It is tried again by itself."),
            Trouble::Unknown(why) => {
                format!("The office does not take this device any more: {why} Scan a new code from the office.")
            }
            Trouble::Refused(why) => format!("The office refused: {why}"),
            Trouble::Garbled(why) => {
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

/// A size of a photo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Size {
    /// 320 px.
    Thumbnail,
    /// 960 px: what records show, named by the signed entry as the thumbnail is.
    Print,
    /// The file as the camera gave it.
    Original,
}

impl Size {
    /// All, in the order in which they go out.
    pub const ALL: [Size; 3] = [Size::Thumbnail, Size::Print, Size::Original];

    /// Its name on the wire.
    pub fn name(self) -> &'static str {
        match self {
            Size::Thumbnail => "320",
            Size::Print => "960",
            Size::Original => "original",
        }
    }

    /// What is behind the hash in the name under which [`crate::Field::photo`] gives it.
    pub fn suffix(self) -> &'static str {
        match self {
            Size::Thumbnail => ".320.jpg",
            Size::Print => ".960.jpg",
            Size::Original => "",
        }
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
