//! In the background: the database is closed and the folder's lock let go, and what is not on disk stays in memory.
//!
//! A phone ends an app that holds the lock of a file while it sleeps, and another process may use the folder meanwhile. Whatever
//! follows from the journal is read again on the way back, as at a start; the rest is carried over. Start at [`Stand`].

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::acts::draft_fits;
use super::language::Chosen;
use super::office::Exchange;
use super::pin::Hands;
use super::session::Session;
use super::{FieldError, NotDone, OpenError, Platform, records, scan, shoot};
use crate::journal::{DeviceId, EntryId};
use crate::screens::Route;
use crate::screens::parts::{Errand, Filled, Notice, Outcome, Screen, Tone};
use crate::store::{DATABASE, Store, StoreError, photos};
use crate::text::Gone;
use crate::text::languages::{Language, Spoken};
use crate::text::screens::app as said;
use crate::world::World;

/// The field app, at work or set aside.
pub(crate) enum Stand {
    Open(Box<Session>),
    Suspended(Box<Suspended>),
}

/// What is left in memory while the journal is closed.
pub(crate) struct Suspended {
    folder: PathBuf,
    platform: Arc<dyn Platform>,
    /// The last entry of this device.
    head: EntryId,
    /// The device: a journal without any entry of it is another one.
    device: DeviceId,
    /// The last screen; its notice and its turn go on.
    screen: Screen,
    route: Route,
    acting: Option<EntryId>,
    hands: Hands,
    site: Option<EntryId>,
    /// What was typed, here too: the keyboard may hand over its last word late.
    drafts: BTreeMap<String, String>,
    language: Chosen,
    notice: Option<Notice>,
    stirred: u64,
    /// An office that is to be joined, among others.
    exchange: Exchange,
    wanted: Option<(String, EntryId, EntryId)>,
    scanning: Option<String>,
}

impl Stand {
    /// The journal, if it is open.
    pub fn open(&mut self) -> Result<&mut Session, NotDone> {
        match self {
            Stand::Open(session) => Ok(session),
            Stand::Suspended(_) => Err(Gone::Journal.into()),
        }
    }

    /// An error of this journal, with the names that it knows.
    pub(crate) fn error(&self, why: NotDone) -> FieldError {
        match self {
            Stand::Open(session) => {
                let _spoken = Spoken::of(session.language.spoken());
                FieldError::of(why, &session.world)
            }
            Stand::Suspended(aside) => {
                let _spoken = Spoken::of(aside.language.spoken());
                FieldError::of(why, &World::default())
            }
        }
    }

    pub(super) fn screen(&mut self) -> Screen {
        match self {
            Stand::Open(session) => session.screen(),
            Stand::Suspended(aside) => aside.screen.clone(),
        }
    }

    pub(super) fn act(&mut self, turn: Option<u64>, action: &str, input: &[Filled]) -> Vec<Errand> {
        match self {
            Stand::Open(session) => {
                let errands = session.act(turn, action, input);
                session.felt(errands)
            }
            Stand::Suspended(aside) => {
                input.iter().for_each(|filled| aside.edit(&filled.field, &filled.value));
                aside.refuse();
                Vec::new()
            }
        }
    }

    pub(super) fn edit(&mut self, field: &str, value: &str) {
        match self {
            Stand::Open(session) => {
                session.touch();
                session.edit(field, value);
            }
            Stand::Suspended(aside) => aside.edit(field, value),
        }
    }

    pub(super) fn deliver(&mut self, token: &str, outcome: Outcome) -> Vec<Errand> {
        match self {
            Stand::Open(session) => {
                let errands = session.deliver(token, outcome);
                session.felt(errands)
            }
            Stand::Suspended(aside) => aside.deliver(token, &outcome),
        }
    }

    pub(super) fn tend(&mut self) -> bool {
        match self {
            Stand::Open(session) => session.tend(),
            Stand::Suspended(_) => false,
        }
    }

    pub(super) fn speak(&mut self, tags: &[String]) {
        match self {
            Stand::Open(session) => session.speak(tags),
            // The last screen stands as it was; from the next one on.
            Stand::Suspended(aside) => aside.language.asked = Language::of_tags(tags.iter().map(String::as_str)),
        }
    }

    pub(super) fn photo(&self, name: &str) -> Option<Vec<u8>> {
        match self {
            Stand::Open(session) => session.photo(name),
            // Photos are plain files: reading one holds nothing open.
            Stand::Suspended(aside) => photos::load(&photos::folder(&aside.folder), name),
        }
    }

    pub(super) fn shared(&self, name: &str) -> Option<Vec<u8>> {
        records::shared(self.folder(), name)
    }

    pub(super) fn folder(&self) -> &Path {
        match self {
            Stand::Open(session) => &session.store.folder,
            Stand::Suspended(aside) => &aside.folder,
        }
    }

    /// Closes the journal.
    pub(super) fn suspend(&mut self) {
        if let Stand::Open(session) = self {
            // So that closing has little left to write, and the next opening little to read.
            session.store.tidy();
            let aside = Suspended::of(session);
            *self = Stand::Suspended(Box::new(aside));
        }
    }

    /// Opens the same journal again. On an error everything stays as it was, and it may be tried again.
    pub(super) fn resume(&mut self) -> Result<(), OpenError> {
        if let Stand::Suspended(aside) = self {
            let session = aside.open()?;
            *self = Stand::Open(Box::new(session));
        }
        Ok(())
    }
}

impl Suspended {
    fn of(session: &mut Session) -> Suspended {
        Suspended {
            screen: session.screen(),
            folder: session.store.folder.clone(),
            platform: session.platform.clone(),
            head: session.head.id,
            device: session.key.device(),
            route: session.route,
            acting: session.acting,
            hands: session.hands.clone(),
            site: session.site,
            drafts: session.drafts.clone(),
            language: session.language,
            notice: session.notice.clone(),
            stirred: session.stirred,
            exchange: session.exchange.clone(),
            wanted: session.wanted.clone(),
            scanning: session.scanning.clone(),
        }
    }

    fn open(&self) -> Result<Session, OpenError> {
        // Before anything is opened: a folder that is empty now would be begun anew.
        if !fs::metadata(self.folder.join(DATABASE)).is_ok_and(|m| m.len() > 0) {
            return Err(self.another());
        }
        let store = Store::open(&self.folder)?;
        let other = |e: StoreError| OpenError::Other { what: e.to_string() };
        let known = self.head == EntryId::NONE || store.entry(self.head).map_err(other)?.is_some();
        // An older copy of the same journal is opened, and says that it has forgotten.
        if !known && store.head(self.device).map_err(other)?.seq == 0 {
            return Err(self.another());
        }
        let mut session = Session::over(store, self.platform.clone())?;
        if !known {
            session.note_forgot();
        }
        session.acting = self.acting.filter(|a| session.world.people.contains_key(a));
        session.site = self.site;
        session.language.asked = self.language.asked;
        session.go(self.route);
        // Read anew: another process may have gone on.
        let all = std::mem::take(&mut session.hands.all);
        let mut hands = self.hands.clone();
        hands.all = all;
        session.hands = hands;
        for (field, value) in &self.drafts {
            if session.draft(field) != *value {
                session.edit(field, value);
            }
        }
        // If another process has gone on in the journal, what is shown is old, and no tap on it counts.
        let went_on = u64::from(session.head.id != self.head);
        session.turn = self.screen.turn + went_on;
        session.stirred = self.stirred + went_on;
        let has_office = session.exchange.has_office;
        session.exchange = Exchange { has_office, running: false, ..self.exchange.clone() };
        session.notice.clone_from(&self.notice);
        session.wanted.clone_from(&self.wanted);
        session.scanning.clone_from(&self.scanning);
        Ok(session)
    }

    fn another(&self) -> OpenError {
        OpenError::Other { what: said::other_journal(self.folder.display().to_string()) }
    }

    fn edit(&mut self, field: &str, value: &str) {
        if draft_fits(&self.drafts, field, value) {
            self.drafts.insert(field.to_owned(), value.to_owned());
        }
    }

    /// What was asked for is still to be done: a photo's entry would tell the time of the return, and not of the photo.
    fn deliver(&mut self, token: &str, outcome: &Outcome) -> Vec<Errand> {
        if !matches!(outcome, Outcome::Frame { .. }) {
            self.refuse();
        }
        let scanning = self.scanning.iter().filter(|t| *t == token).cloned().map(scan::errand);
        let wanted = self.wanted.iter().map(|(t, ..)| t).filter(|t| *t == token).cloned().map(shoot::errand);
        scanning.chain(wanted).collect()
    }

    fn refuse(&mut self) {
        let _spoken = Spoken::of(self.language.spoken());
        self.notice = Some(Notice { tone: Tone::Warn, text: said::was_aside() });
        self.screen.notice.clone_from(&self.notice);
        self.screen.turn += 1;
    }
}
