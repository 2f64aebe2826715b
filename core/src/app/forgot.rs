//! A journal that was put back from a copy, and a key that is used elsewhere: noticed, said, and left behind by one tap.
//!
//! What tells is the end of this device's own chain, kept where a copy of the data folder does not reach ([`Platform::store_head`]), and
//! what others hold of that chain. While the note stands nothing is signed. The writes of [`Session::renew`] are in such an order that a
//! device that is ended between any two of them has either its old state, or a new key that has signed nothing and is gone on with.

use super::key::{device_key, stored_device};
use super::known::{FORGOT, NOT_BEFORE};
use super::session::Session;
use super::{NotDone, OpenError, Platform};
use crate::journal::{DeviceId, Entry, EntryId, Fact, Hlc};
use crate::store::{Head, NEW_KEY, Store, StoreError};
use crate::sync::Exchanged;
use crate::text::{AskDevice, Gone};

/// The note of the device whose key may not go on, while the new one is begun.
const OLD_KEY: &str = "old-key";
/// The note of a kept head that this journal does not have, and that a new key has answered for.
const ANSWERED: &str = "forgot-head";

/// The end of a chain as [`Platform::store_head`] keeps it: device, number, id.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct KeptHead {
    pub device: DeviceId,
    pub head: Head,
}

impl KeptHead {
    fn bytes(&self) -> Vec<u8> {
        [&self.device.0[..], &self.head.seq.to_be_bytes(), &self.head.id.0].concat()
    }

    fn read(bytes: &[u8]) -> Option<KeptHead> {
        let (device, rest) = bytes.split_first_chunk::<32>()?;
        let (seq, id) = rest.split_first_chunk::<8>()?;
        let (seq, id) = (u64::from_be_bytes(*seq), EntryId(id.try_into().ok()?));
        Some(KeptHead { device: DeviceId(*device), head: Head { seq, id } })
    }

    /// What was kept last; nothing where the device cannot say.
    fn load(platform: &dyn Platform) -> Option<KeptHead> {
        KeptHead::read(&platform.load_head().ok()??).filter(|kept| kept.head.seq > 0)
    }

    fn name(&self) -> String {
        self.bytes().iter().map(|b| format!("{b:02x}")).collect()
    }
}

/// How a start goes on: what the notes and the kept head come to.
pub(super) struct Beginning {
    /// A new key is begun: the note's text.
    pub renew: Option<String>,
    /// This journal does not have what was kept.
    pub forgot: bool,
    /// The device whose chain was kept is this one, so a journal without any of its entries is an older copy.
    pub older: bool,
}

impl Beginning {
    /// Looks at the notes and the kept head before the key is looked at.
    pub fn of(store: &Store, platform: &dyn Platform, last: Hlc) -> Result<Beginning, OpenError> {
        let kept = KeptHead::load(platform);
        let device = stored_device(platform)?;
        let own = |kept: &KeptHead| device == Some(kept.device);
        let mut renew = store.local(NEW_KEY).map_err(other)?;
        if last.0 == 0 && renew.is_none() && kept.as_ref().is_some_and(own) {
            // The journal is gone and its key is not: under that key the same numbers would be given twice.
            renew = Some("1".into());
            store.keep_local(NEW_KEY, "1").map_err(other)?;
        }
        let lost = match &kept {
            Some(kept) => {
                let there = store.id_at(kept.device, kept.head.seq).map_err(other)?;
                let answered = store.local(ANSWERED).map_err(other)?;
                there != Some(kept.head.id) && answered != Some(kept.name())
            }
            None => false,
        };
        if renew.as_deref() == Some("1") {
            if lost && last.0 > 0 {
                store.keep_local_moment(NOT_BEFORE, last).map_err(other)?;
            }
            if let Some(old) = device {
                store.keep_local(OLD_KEY, &old.to_string()).map_err(other)?;
            }
        }
        let noted = store.local(FORGOT).map_err(other)?.is_some();
        let forgot = renew.is_none() && (noted || lost && last.0 > 0);
        Ok(Beginning { renew, forgot, older: kept.as_ref().is_some_and(own) })
    }
}

fn other(error: StoreError) -> OpenError {
    OpenError::Other { what: error.to_string() }
}

impl Session {
    /// Refuses while this device has forgotten what it wrote: a number might be given to two entries.
    pub(super) fn remembers(&self) -> Result<(), NotDone> {
        if self.forgot { Err(Gone::Memory.into()) } else { Ok(()) }
    }

    /// Notes that this journal was put back from a copy, or that the key is used elsewhere.
    pub(crate) fn note_forgot(&mut self) {
        if self.forgot {
            return;
        }
        self.forgot = true;
        // What the disk does not take is noticed again at the next start, as it was noticed now.
        let _ = self.store.keep_local(FORGOT, "1");
        // Everything is asked for anew, this device's own entries among it.
        let _ = self.set_cursor("");
        self.turn += 1;
        self.stir();
    }

    /// Keeps the end of the own chain where a copy of the folder does not reach. A shell that cannot do it holds up no act.
    pub(super) fn keep_head(&self) {
        if self.head.seq > 0 && !self.forgot {
            let _ = self.platform.store_head(KeptHead { device: self.key.device(), head: self.head }.bytes());
        }
    }

    /// Goes on under a new key. What the old one wrote stays in the journal, and no proof begun before stands on this device.
    pub(crate) fn renew(&mut self) -> Result<(), NotDone> {
        if !self.forgot {
            return Err(AskDevice::KeyGoesOn.into());
        }
        self.reload()?;
        let begun = self.store.local(NEW_KEY)? == Some(self.key.device().to_string());
        if !begun {
            self.store.keep_local_moment(NOT_BEFORE, self.clock.last())?;
            self.store.keep_local(OLD_KEY, &self.key.device().to_string())?;
            self.note_office_device()?;
            let store = &self.store;
            let name = |name: &str| store.keep_local(NEW_KEY, name).map_err(other);
            self.key = device_key(&*self.platform, Some("1"), true, name)?;
            self.head = Head { seq: 0, id: EntryId::NONE };
        }
        self.begin()
    }

    /// Signs the first entry of this device's chain, unless it is there, and puts the notes of a new key away, the one that a start looks
    /// for last.
    pub(super) fn begin(&mut self) -> Result<(), NotDone> {
        let after = self.store.local(OLD_KEY)?.and_then(|old| old.parse().ok());
        if self.head.seq == 0 {
            let after = after.filter(|old| *old != self.key.device());
            self.seal(None, None, Fact::DeviceBegan { label: "field".into(), after })?;
            if let Err(why) = self.commit() {
                self.reload()?;
                return Err(why);
            }
        }
        if let Some(kept) = KeptHead::load(&*self.platform).filter(|kept| kept.device != self.key.device()) {
            self.store.keep_local(ANSWERED, &kept.name())?;
        }
        self.forgot = false;
        self.keep_head();
        for note in [FORGOT, OLD_KEY, NEW_KEY] {
            self.store.drop_local(note)?;
        }
        Ok(self.reload()?)
    }

    /// Whether an entry of this device's own chain, or of one that it had before, fits between its neighbours that are here. `fresh`: an
    /// entry of the same delivery.
    pub(super) fn follows_on(
        &self,
        entry: &Entry,
        fresh: &dyn Fn(DeviceId, u64) -> Option<EntryId>,
    ) -> Result<bool, StoreError> {
        let (device, seq) = (entry.body.device, entry.body.seq);
        let before = match seq.checked_sub(1) {
            None => return Ok(false),
            Some(0) => Some(EntryId::NONE),
            Some(seq) => fresh(device, seq).map_or_else(|| self.store.id_at(device, seq), |id| Ok(Some(id)))?,
        };
        let after = self.store.entries_after(device, seq, 1)?;
        let after = after.first().filter(|next| seq.checked_add(1) == Some(next.body.seq));
        Ok(before.is_none_or(|id| id == entry.body.prev) && after.is_none_or(|next| next.body.prev == entry.id))
    }

    /// The keys that this device had before the one that it has.
    pub(super) fn former(&self, began: &[(DeviceId, DeviceId)]) -> Vec<DeviceId> {
        let mut all = vec![self.key.device()];
        while let Some((_, after)) = all.last().and_then(|last| began.iter().find(|(device, _)| device == last)) {
            if all.contains(after) {
                break;
            }
            all.push(*after);
        }
        all.split_off(1)
    }
}
