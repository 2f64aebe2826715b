//! What the exchange asks of whoever holds the journal. It knows neither the data folder nor the app: a test, a phone and a browser can each
//! be the other side of these two traits.

use stillbar_journal::{DeviceId, Entry};
use stillbar_protocol::{Ask, DeviceSum, Enrolled, Erased, Size};
use stillbar_values::EntryId;

use crate::Join;
use crate::office::OfficeClient;
use crate::rules::ExchangeTrouble;

/// What an exchange came to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Done {
    /// Entries handed over.
    pub pushed: usize,
    /// Entries of others taken in.
    pub pulled: usize,
    /// Photos sent whole.
    pub photos: usize,
    /// Whether photos are left that could go now.
    pub more: bool,
}

/// Whoever holds a journal, which may be closed just now.
pub trait Holder: Send + 'static {
    /// The journal while it is open.
    type Journal: Exchanged;

    /// The journal, if it is open.
    fn open(&mut self) -> Result<&mut Self::Journal, <Self::Journal as Exchanged>::Error>;
    /// Why something was not done, for the person.
    fn says(&self, why: <Self::Journal as Exchanged>::Error) -> String;
}

/// A journal as the exchange sees it. Nothing here waits for the network.
pub trait Exchanged {
    /// Why the journal did not give or take something.
    type Error;

    /// The office that this device belongs to.
    fn office(&self) -> Option<OfficeClient>;
    /// An office that a person wants to join, and the signed request to it.
    fn joining(&self) -> Option<(Join, Ask)>;
    /// The office refused: it is not asked again by itself.
    fn stop_joining(&mut self);
    /// The device belongs to the office at `url` now. Everything is compared from the beginning.
    fn joined(&mut self, url: &str, enrolled: &Enrolled) -> Result<(), Self::Error>;

    /// How often the exchange failed in a row just before.
    fn failures(&self) -> u32;
    /// An exchange begins, or there is no office to exchange with.
    fn note_running(&mut self, running: bool);
    /// What came of an exchange, after how many failures in a row, and how long to wait for the next, in milliseconds.
    fn note_exchange(&mut self, done: Result<Done, ExchangeTrouble>, failures: u32, wait_ms: u64);
    /// The office's clock, in milliseconds since 1970-01-01T00:00Z.
    fn hear_office_clock(&mut self, theirs_ms: i64);
    /// Whether office and device held the same when they were compared last.
    fn agreed(&self) -> Option<bool>;
    /// Whether they do now.
    fn note_agreed(&mut self, agreed: bool);
    /// The office had and gave everything just now.
    fn note_reached(&mut self) -> Result<(), Self::Error>;

    /// The chains that go to the office: the one that it knows this device by, the one that goes on, and what older keys wrote.
    fn chains(&self) -> Vec<DeviceId>;
    /// The device by which the office knows this one.
    fn office_device(&self) -> DeviceId;
    /// Whether that is a key that this device had before.
    fn is_former(&self, of: DeviceId) -> bool;
    /// The last number of one of [`Exchanged::chains`].
    fn end_of(&self, of: DeviceId) -> u64;
    /// The entries of one of [`Exchanged::chains`] that the office has not answered for yet, at most `most`.
    fn to_push(&self, of: DeviceId, most: usize) -> Result<Vec<Entry>, Self::Error>;
    /// The office has answered for a chain up to this number, and put so many entries aside.
    fn note_pushed(&mut self, of: DeviceId, to: u64, aside: usize) -> Result<(), Self::Error>;
    /// Somebody else knows entries of this device up to this number.
    fn told_of_own(&mut self, device: DeviceId, last: u64);
    /// A chain of this device has two ends.
    fn told_of_fork(&mut self, of: DeviceId);
    /// Whether there is something for the office that goes before photos.
    fn has_news(&self) -> bool;

    /// How far the office's entries were taken in; empty from the beginning.
    fn cursor(&self) -> String;
    /// Keeps that.
    fn set_cursor(&self, cursor: &str) -> Result<(), Self::Error>;
    /// This device lacks entries that it wrote itself.
    fn lacks_own(&self) -> bool;
    /// Takes in what others wrote; returns how many were new here.
    fn take_in_new(&mut self, entries: Vec<Entry>) -> Result<usize, Self::Error>;
    /// Names in these entries were erased at the office.
    fn note_erased(&self, erased: &[Erased]) -> Result<(), Self::Error>;
    /// What is here of each site and device.
    fn sums(&self) -> Result<Vec<(EntryId, DeviceSum)>, Self::Error>;

    /// The link costs nothing, or a person wants originals to go over any.
    fn link_is_free(&self) -> bool;
    /// The photos that the office lacks.
    fn note_photos_left(&mut self, sizes: &[Size]);
    /// One of them is not here either.
    fn note_photo_missing(&mut self, sha256: &str);
    /// The bytes of a photo or a copy, by its file's name.
    fn photo_to_send(&self, name: &str) -> Option<Vec<u8>>;
    /// Where the office takes the rest of an upload that broke off.
    fn upload_place(&self, sha256: &str, size: Size) -> Option<String>;
    /// Keeps that, or that nothing is left to send.
    fn keep_upload_place(&self, sha256: &str, size: Size, place: Option<&str>) -> Result<(), Self::Error>;
    /// Photos of jobs with a lock on of which not even a small copy is here, at most `most`.
    fn pictures_lacked(&mut self, most: usize) -> Result<Vec<String>, Self::Error>;
    /// Keeps the small copy of a photo that somebody else took.
    fn keep_picture(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), Self::Error>;
}
