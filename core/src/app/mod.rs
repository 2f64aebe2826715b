//! The one object that a shell holds.
//!
//! Promises: calls are synchronous and never panic across the bridge; what a person gave is on disk before [`Field::screen`]
//! shows anything later; an act is kept whole or not at all. Start at [`Field::open`].

mod across;
mod acts;
mod aside;
mod clocks;
mod company;
mod errors;
pub(crate) mod forgot;
mod keep;
mod key;
pub(crate) mod known;
pub(crate) mod language;
pub(crate) mod near;
mod networks;
mod not_done;
mod of_folder;
pub(crate) mod office;
mod others;
pub(crate) mod pin;
mod records;
mod scan;
mod session;
pub(crate) mod shoot;
mod show;
mod suspend;
mod tend;
mod windows;

use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, OnceLock};

pub use errors::{OpenError, PlatformError};
pub use not_done::{FieldError, NotDone};
pub use of_folder::{NoRecord, of_folder};
pub use others::TakenIn;
pub(crate) use session::Session;
pub(crate) use suspend::Stand;

use crate::journal::{Entry, EntryId, Fact, Running};
use crate::screens::parts::{Errand, Filled, Outcome, Screen};
use crate::store::{LockRow, Store};
use crate::sync::rules::ExchangeTrouble;
use crate::sync::worker::{self, Waker};
use crate::sync::{Done, OfficeLink};
use crate::text::AskDevice;
use windows::WindowSeen;

/// What the device lends to the core. Clock, chance and the secret come from here, so that tests can inject them.
#[cfg_attr(feature = "bindings", uniffi::export(with_foreign))]
pub trait Platform: Send + Sync {
    /// The device's clock, in milliseconds since 1970-01-01T00:00Z.
    fn now_ms(&self) -> i64;
    /// Minutes that local time was ahead of UTC at that moment.
    fn offset_minutes(&self, at_ms: i64) -> i32;
    /// How long the device has been running, by a clock that runs while it sleeps and that nobody sets; `None` where it has none.
    fn running(&self) -> Option<Running>;
    /// `count` bytes from the system's cryptographic source.
    fn random(&self, count: u32) -> Vec<u8>;
    /// The device's secret, if one was stored.
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError>;
    /// Store the device's secret where other apps cannot read it. One that is there already is set aside, and never destroyed: what it
    /// signed has to be gone on with, should its journal come back.
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError>;
    /// What was last kept by [`Platform::store_head`], if anything was.
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError>;
    /// Keeps a few bytes where a copy of the data folder that is put back does not bring older ones: the end of this device's own chain.
    fn store_head(&self, head: Vec<u8>) -> Result<(), PlatformError>;
}

/// The field app. One of these is open per data folder.
#[cfg_attr(feature = "bindings", derive(uniffi::Object))]
pub struct Field {
    stand: Arc<Mutex<Stand>>,
    /// Held by whoever talks to the office: two at once would each be given a token, and only the later one counts.
    talking: Arc<Mutex<()>>,
    /// The thread that talks to the office, from the first time that there is one.
    waker: OnceLock<Waker>,
    seen: Mutex<WindowSeen>,
}

#[cfg_attr(feature = "bindings", uniffi::export)]
impl Field {
    /// Opens (or begins) the journal in `folder`.
    #[cfg_attr(feature = "bindings", uniffi::constructor)]
    pub fn open(folder: String, platform: Arc<dyn Platform>) -> Result<Arc<Field>, OpenError> {
        let session = Session::over(Store::open(Path::new(&folder))?, platform)?;
        let stand = Arc::new(Mutex::new(Stand::Open(Box::new(session))));
        let field = Field { stand, talking: Arc::default(), waker: OnceLock::new(), seen: Mutex::default() };
        field.wake();
        Ok(Arc::new(field))
    }

    /// The languages that the device asks for, as tags (BCP 47), the one liked best first: the first that the app has is spoken from now
    /// on, unless a person chose one in the app. To be called once it is open, and whenever the device's languages change.
    pub fn speak(&self, languages: Vec<String>) {
        self.lock().speak(&languages);
    }

    /// What to show now.
    pub fn screen(&self) -> Screen {
        self.lock().screen()
    }

    /// The person did something. `turn` is the screen's turn, or `None` to act whatever happened since.
    pub fn act(&self, turn: Option<u64>, action: String, input: Vec<Filled>) -> Vec<Errand> {
        let errands = self.lock().act(turn, &action, &input);
        self.wake();
        errands
    }

    /// The person typed into a field: kept as a draft, so that nothing typed is lost.
    pub fn edit(&self, field: String, value: String) {
        self.lock().edit(&field, &value);
    }

    /// An errand ended.
    pub fn deliver(&self, token: String, outcome: Outcome) -> Vec<Errand> {
        let errands = self.lock().deliver(&token, outcome);
        self.wake();
        errands
    }

    /// Now is a good time for what can wait: there is power, and nobody is tapping. Makes missing copies of photos again and
    /// tidies the database. True if there is more to do.
    pub fn tend(&self) -> bool {
        let more = self.lock().tend();
        // In the background there is time to wait, and a thread of its own might not live to the end.
        if self.waker.get().is_some() {
            let _alone = worker::alone(&self.talking);
            worker::turn(&self.stand);
        }
        more
    }

    /// There is signal, or the app is in front again: a good time to exchange with the office. `free_link`: the link costs nothing, so
    /// that originals of photos may go too. Never waits for the network.
    pub fn good_time(&self, free_link: bool) {
        if let Ok(session) = self.lock().open() {
            session.exchange.free_link = free_link;
        }
        self.wake();
    }

    /// Grows when something changed that no act here has done, such as a lock that another phone told of: then draw [`Field::screen`]
    /// again. Cheap enough to be asked every second or two.
    pub fn stirred(&self) -> u64 {
        self.lock().open().map_or(0, |session| session.stirred_now())
    }

    /// The bytes of a kept photo: the original by its SHA-256; with `.320.jpg`, `.960.jpg` or `.1600.jpg` behind it the copy
    /// of that size, which holds nothing but the picture.
    pub fn photo(&self, sha256: String) -> Option<Vec<u8>> {
        self.lock().photo(&sha256)
    }

    /// The app goes to the background: closes the database and lets go of the folder's lock. Until [`Field::resume`] the last screen
    /// stands, what is typed is kept, and an act is refused with a notice. Does nothing if that was done before.
    pub fn suspend(&self) {
        self.lock().suspend();
    }

    /// The app is back: opens the same folder again, and goes on where it was. Refuses another journal than the one that was open; on
    /// an error nothing was changed or lost, and it may be called again. Does nothing if the journal is open.
    pub fn resume(&self) -> Result<(), OpenError> {
        self.lock().resume()
    }
}

impl Field {
    /// The bytes of a file that was made to be shared, by the name in [`Errand::ShareFile`]. The latest few are kept.
    pub fn shared(&self, name: &str) -> Option<Vec<u8>> {
        self.lock().shared(name)
    }

    /// Grows with every change of the screen but what is typed, acts here among them: for a shell with several windows, each of which can
    /// then tell that what it shows is old.
    pub fn changes(&self) -> u64 {
        let mut seen = self.seen.lock().unwrap_or_else(|poisoned| poisoned.into_inner());
        seen.changes(&mut self.lock())
    }

    /// As [`Field::edit`], from a window whose screen may be old: kept for the screen of that `route`, and only while the device is in
    /// the same `hand`. The error says why nothing was kept.
    pub fn edit_on(&self, route: &str, hand: &str, field: &str, value: &str) -> Result<(), FieldError> {
        let mut stand = self.lock();
        let done = stand.edit_on(route, hand, field, value);
        done.map_err(|why| stand.error(why))
    }

    /// Takes in entries that other devices wrote; those of one device in the order of their numbers, all of them or none.
    pub fn take_in(&self, entries: Vec<Entry>) -> Result<TakenIn, FieldError> {
        self.with(|session| session.take_in(entries))
    }

    /// Every entry that is here, in the journal's order: for whom this device meets.
    pub fn entries(&self) -> Result<Vec<Entry>, FieldError> {
        self.with(|session| Ok(session.store.all_entries()?))
    }

    /// Joins the office whose code this is, as if it had been scanned and agreed to: for who sets up a device. The thread asks the office.
    pub fn join(&self, code: &str) -> Result<(), FieldError> {
        self.with(|session| {
            session.exchange.join = Some(crate::sync::Join::read(code).ok_or(AskDevice::OfficeNot)?);
            Ok(())
        })?;
        self.wake();
        Ok(())
    }

    /// Joins the office that a person asked for, and exchanges with the office that this device belongs to, on the caller's thread: what
    /// the thread of the exchange does when it is woken. `None` if there is no office.
    pub fn exchange(&self) -> Option<Result<Done, ExchangeTrouble>> {
        let _alone = worker::alone(&self.talking);
        if let Some(Err(trouble)) = worker::join(&self.stand) {
            return Some(Err(trouble));
        }
        let failures = self.lock().open().ok()?.exchange.failures;
        worker::once(&self.stand, failures)
    }

    /// One exchange, on the caller's thread, over another link than HTTP, with the office that knows this device by `token`. What it came
    /// to is noted as the thread notes it.
    pub fn exchange_over(&self, link: Arc<dyn OfficeLink>, token: &str) -> Result<Done, ExchangeTrouble> {
        let _alone = worker::alone(&self.talking);
        worker::over(&self.stand, &crate::sync::office::OfficeClient::over(link, token))
    }

    /// Keeps a fact in this person's name, as a screen would: through the gate, on disk. For tools and tests that have no screen. The
    /// site that was noted last is that of the next job.
    pub fn keep(&self, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, FieldError> {
        let mut stand = self.lock();
        match stand.open() {
            Ok(session) => session.keep_alone(by, job, fact),
            Err(why) => Err(stand.error(why)),
        }
    }

    /// Whether this device shows "proved dead" for a job now.
    pub fn proved(&self, job: EntryId) -> bool {
        let proved = |job: crate::job::Job| matches!(job.standing(), crate::job::Standing::Proved { .. });
        self.lock().open().is_ok_and(|session| session.look_at(job).is_ok_and(proved))
    }

    /// The locks that this device knows to be on, of all jobs, and those that entries put aside tell of.
    pub fn known_locks(&self) -> Vec<LockRow> {
        self.lock().open().map(|session| session.known_locks()).unwrap_or_default()
    }

    /// What stands at the top of a job's screens now: word, sentence, and what is said beside them, a line each.
    pub fn standing_says(&self, job: EntryId) -> String {
        self.with(|session| Ok(session.standing_says(job))).unwrap_or_else(|why| why.to_string())
    }

    /// Looks into the journal, or says why that cannot be.
    fn with<T>(&self, look: impl FnOnce(&mut Session) -> Result<T, NotDone>) -> Result<T, FieldError> {
        let mut stand = self.lock();
        let seen = stand.open().and_then(look);
        seen.map_err(|why| stand.error(why))
    }

    /// Wakes the thread that talks to the office, and starts it if there is an office now.
    fn wake(&self) {
        let needed =
            self.lock().open().is_ok_and(|session| session.exchange.has_office || session.exchange.join.is_some());
        if needed {
            self.waker.get_or_init(|| worker::start(Arc::downgrade(&self.stand), self.talking.clone())).wake();
        }
    }

    fn lock(&self) -> MutexGuard<'_, Stand> {
        // A panic in an earlier call was a bug, but what is on disk is whole: going on beats a dead app in a plant room.
        self.stand.lock().unwrap_or_else(|poisoned| poisoned.into_inner())
    }
}

impl Drop for Field {
    /// The thread may be waiting for the network just now: the folder is let go of all the same.
    fn drop(&mut self) {
        if self.waker.get().is_some() {
            self.lock().suspend();
        }
    }
}
