//! How the device knows who has it in hand: by nothing while one person uses it, by a PIN of their own once several do.
//!
//! Promises: a PIN is kept as argon2id beside the journal, never in it, and nothing of it leaves the device; a wrong one makes the next try
//! wait, and locks nobody out; going on without is always one tap, and the entries say so. Start at [`Session::asks_pin`].

use std::collections::BTreeMap;

use argon2::password_hash::phc::PasswordHash;
use argon2::{Argon2, PasswordHasher, PasswordVerifier};

use super::NotDone;
use super::session::Session;
use crate::journal::{EntryId, SignedOn};
use crate::screens::Route;
use crate::screens::parts::{Errand, Filled};
use crate::store::StoreError;
pub use crate::store::{Hand, Tick};
use crate::sync::Join;
use crate::text::{AskDevice, AskFirst};

/// Without a touch for longer, whoever has the device in hand is asked again. Our rule, no source.
pub const IDLE_MS: i64 = 10 * 60_000;
/// Digits of a PIN. Our rule, no source: four fit a gloved hand.
pub const DIGITS: std::ops::RangeInclusive<usize> = 4..=12;
/// The longest wait after a wrong PIN, in seconds. Our rule, no source.
const MAX_WAIT: u64 = 60;

/// An act that waits for a PIN.
#[derive(Debug, Clone)]
pub struct Then {
    /// The screen of the act.
    pub route: Route,
    verb: String,
    arg: String,
    input: Vec<Filled>,
}

/// Who has the device in hand, and how that is known.
#[derive(Debug, Clone, Default)]
pub struct Hands {
    /// Everybody who has had it in hand.
    pub all: BTreeMap<EntryId, Hand>,
    /// How the person in hand is known, where several use the device; `None`: they are asked before anything is kept.
    pub known: Option<SignedOn>,
    /// The last touch.
    touched: Option<Tick>,
    /// What goes on after the PIN.
    pub then: Option<Then>,
    ready: Option<Then>,
    /// Whose PIN an office is asked to be the witness for, and whose it has been.
    asked_office: Option<(EntryId, Join)>,
    /// Whose PIN the office was witness for: they may set it anew.
    pub vouched: Option<EntryId>,
    /// A tool keeps something in somebody's name: no screen, and nothing known of a hand.
    pub tool: bool,
}

impl Hands {
    /// Whether more than one person uses this device.
    pub fn shared(&self) -> bool {
        self.all.len() > 1
    }

    /// Whether this person has a PIN here.
    pub fn has_pin(&self, person: EntryId) -> bool {
        self.all.get(&person).is_some_and(|hand| hand.hash.is_some())
    }

    /// Those with a PIN, but for `person`: they can be witnesses.
    pub fn witnesses(&self, person: EntryId) -> Vec<EntryId> {
        self.all.keys().copied().filter(|p| *p != person && self.has_pin(*p)).collect()
    }
}

impl Session {
    fn tick(&self) -> Tick {
        Tick { running: self.platform.running(), wall: self.platform.now_ms() }
    }

    /// Somebody touched the device: after a pause it is no longer known who has it in hand.
    pub(super) fn touch(&mut self) {
        let now = self.tick();
        let before = self.hands.touched.replace(now);
        if before.is_none_or(|before| before.until(&now).is_none_or(|ms| ms > IDLE_MS)) {
            self.hands.known = None;
        }
    }

    /// How an entry that is kept now knows its person.
    pub(super) fn signed_on(&self) -> Option<SignedOn> {
        self.acting.filter(|_| !self.hands.tool)?;
        Some(if self.hands.shared() { self.hands.known.unwrap_or(SignedOn::WithoutPin) } else { SignedOn::OnlyUser })
    }

    /// Whether the person in hand has to say who they are before anything is kept.
    pub(super) fn asks_pin(&self) -> bool {
        self.acting.is_some() && self.hands.shared() && self.hands.known.is_none()
    }

    /// Whether the device asks for a PIN when this person takes it.
    pub(crate) fn asks_of(&self, person: EntryId) -> bool {
        self.hands.all.keys().any(|known| *known != person)
    }

    /// Puts an act off until the person in hand has signed on.
    pub(super) fn ask_first(&mut self, verb: &str, arg: &str, input: &[Filled]) {
        let Some(person) = self.acting else { return };
        let (route, verb, arg) = (self.route, verb.to_owned(), arg.to_owned());
        self.go(Route::Pin(person));
        self.hands.then = Some(Then { route, verb, arg, input: input.to_vec() });
    }

    /// Goes on with the act that waited for a PIN.
    pub(super) fn go_on(&mut self, errands: Vec<Errand>) -> Vec<Errand> {
        let Some(then) = self.hands.ready.take() else { return errands };
        self.go(then.route);
        match then.verb.as_str() {
            "photo" => self.want_photo(&then.arg),
            verb => self.do_act(verb, &then.arg, &then.input),
        }
    }

    /// Takes the device into this person's hand, and goes on with what waited for them. Says whether anything did.
    pub(crate) fn sign_on(&mut self, person: EntryId, how: SignedOn) -> Result<bool, NotDone> {
        self.hold(person, Some(how))?;
        self.hands.ready = self.hands.then.take();
        Ok(self.hands.ready.is_some())
    }

    /// How this person is known who signs on the present screen with this PIN, or with none.
    pub(crate) fn signs(&mut self, person: EntryId, pin: &str) -> Result<Option<SignedOn>, NotDone> {
        if !pin.is_empty() && self.hands.has_pin(person) {
            return self.check_pin(person, pin).map(|()| Some(SignedOn::Pin));
        }
        Ok(if self.acting == Some(person) { self.hands.known } else { Some(SignedOn::WithoutPin) })
    }

    /// Holds a PIN against the one that is kept. A wrong one makes the next try wait: 1 s, 2 s, 4 s, at most a minute.
    pub(crate) fn check_pin(&mut self, person: EntryId, pin: &str) -> Result<(), NotDone> {
        let wait = self.pin_wait(person);
        if wait > 0 {
            return Err(AskFirst::PinWait { seconds: wait }.into());
        }
        let now = self.tick();
        let Some(hand) = self.hands.all.get_mut(&person) else { return Err(AskDevice::PinUnset.into()) };
        let Some(kept) = &hand.hash else { return Err(AskDevice::PinUnset.into()) };
        let hash = PasswordHash::new(kept).map_err(|_| AskDevice::PinUnreadable)?;
        let right = pin.len() <= *DIGITS.end() && Argon2::default().verify_password(pin.as_bytes(), &hash).is_ok();
        (hand.wrong, hand.tried) = if right { (0, None) } else { (hand.wrong.saturating_add(1), Some(now)) };
        self.keep_hand(person)?;
        if right {
            return Ok(());
        }
        Err(AskFirst::PinOf { person, seconds: self.pin_wait(person) }.into())
    }

    /// How many seconds the next try waits.
    pub(crate) fn pin_wait(&self, person: EntryId) -> u64 {
        let hand = self.hands.all.get(&person);
        let Some((wrong, tried)) = hand.and_then(|h| Some((h.wrong, h.tried?))) else { return 0 };
        let wait = 1u64.checked_shl(wrong.saturating_sub(1)).unwrap_or(MAX_WAIT).clamp(1, MAX_WAIT) * 1000;
        // A clock that went back must lock nobody out.
        let gone = tried.until(&self.tick()).map_or(wait, i64::unsigned_abs);
        wait.saturating_sub(gone).div_ceil(1000)
    }

    /// Sets a PIN. `witness` says by whom it was set anew.
    pub(crate) fn set_pin(&mut self, person: EntryId, pin: &str, witness: Option<String>) -> Result<(), NotDone> {
        if !DIGITS.contains(&pin.len()) || !pin.bytes().all(|b| b.is_ascii_digit()) {
            return Err(AskFirst::PinDigits { from: *DIGITS.start(), to: *DIGITS.end() }.into());
        }
        if self.hands.has_pin(person) && witness.is_none() {
            return Err(AskDevice::PinThere.into());
        }
        let salt = self.platform.random(16);
        if salt.len() != 16 {
            return Err(AskDevice::PinByNoChance.into());
        }
        // The library's own figures: argon2id with 19 MiB, two passes, one lane, the least that OWASP's cheat sheet on storing passwords
        // asks for (from memory).
        let hashed: Result<PasswordHash, _> = Argon2::default().hash_password_with_salt(pin.as_bytes(), &salt);
        let hash = hashed.map_err(NotDone::Pin)?.to_string();
        let anew = witness.map(|who| (self.platform.now_ms(), who));
        self.hands.all.insert(person, Hand { hash: Some(hash), anew, ..Hand::default() });
        self.hands.vouched.take_if(|vouched| *vouched == person);
        Ok(self.keep_hand(person)?)
    }

    /// Asks the office to be the witness: its one-time code is good for this only if the office itself takes it.
    pub(crate) fn ask_office(&mut self, person: EntryId, code: &str) -> Result<(), NotDone> {
        let join = Join::read(code).ok_or(AskDevice::OfficeCodeWhole)?;
        let ours = self.office_name().is_some_and(|(_, url)| url == join.url);
        if !ours {
            return Err(AskDevice::OfficeCodeOfOurs.into());
        }
        self.exchange.join = Some(join.clone());
        self.hands.asked_office = Some((person, join));
        Ok(())
    }

    /// The office took a code: the one that it was asked by as a witness, or one to join by.
    pub(super) fn office_vouched(&mut self) {
        let taken = self.exchange.join.as_ref();
        if let Some((person, _)) = self.hands.asked_office.take_if(|(_, join)| Some(&*join) == taken) {
            self.hands.vouched = Some(person);
        }
    }

    /// Keeps what is known of a person's hand, beside the journal.
    pub(super) fn keep_hand(&self, person: EntryId) -> Result<(), StoreError> {
        let Some(hand) = self.hands.all.get(&person) else { return Ok(()) };
        self.store.keep_hand(person, hand)
    }

    /// Everybody who has had the device in hand, read from disk.
    pub(super) fn load_hands(&mut self) -> Result<(), StoreError> {
        self.hands.all = self.store.hands()?;
        Ok(())
    }
}
