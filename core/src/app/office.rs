//! What the exchange with the office asks of the journal, and what is kept between two exchanges. None of it is evidence.

use std::collections::BTreeSet;
use std::path::PathBuf;

use super::known::NOT_BEFORE;
use super::session::Session;
use super::{NotDone, Stand};
use crate::journal::{DeviceId, Entry, EntryId};
use crate::screens::Route;
use crate::screens::context::ExchangeKnown;
use crate::store::Sum;
use crate::store::photos;
use crate::sync::rules::{ExchangeTrouble, Size};
use crate::sync::{Done, Exchanged, Holder, Join, OfficeClient};
use crate::wire::{Ask, DeviceSum, Enrolled, Erased, signed};

const URL: &str = "office-url";
const TOKEN: &str = "office-token";
const NAME: &str = "office-name";
const CURSOR: &str = "office-cursor";
const PUSHED: &str = "office-pushed";
/// The device that the office's token is for, where this one has a new key since.
const DEVICE: &str = "office-device";
const ASIDE: &str = "office-aside";

/// How the exchange stands, for its screen. Lost with the process: the next exchange tells it anew.
#[derive(Debug, Clone, Default)]
pub struct Exchange {
    /// This device belongs to an office.
    pub has_office: bool,
    /// An exchange is under way.
    pub running: bool,
    /// What went wrong last, and how often in a row.
    pub trouble: Option<ExchangeTrouble>,
    /// How often in a row.
    pub failures: u32,
    /// When it is tried again, milliseconds since 1970-01-01T00:00Z.
    pub next_ms: Option<i64>,
    /// Whether office and device hold the same.
    pub agreed: Option<bool>,
    /// Photos that the office lacks, by size.
    pub photos: [usize; 3],
    /// Photos that the office lacks and this device has not either.
    pub missing: Vec<String>,
    /// The shell says that the link costs nothing.
    pub free_link: bool,
    /// A person asked for originals over any link.
    pub originals_now: bool,
    /// An office that a person wants to join.
    pub join: Option<Join>,
}

impl Session {
    fn local_or(&self, name: &str) -> String {
        self.store.local(name).ok().flatten().unwrap_or_default()
    }

    fn keep_note(&self, name: &str, value: &str) -> Result<(), NotDone> {
        Ok(self.store.keep_local(name, value)?)
    }

    /// What the office is called, and where it is.
    pub(crate) fn office_name(&self) -> Option<(String, String)> {
        let url = self.local_or(URL);
        (!url.is_empty()).then(|| (self.local_or(NAME), url))
    }

    /// The request to join an office, signed.
    pub(crate) fn ask(&self, join: &Join) -> Ask {
        use base64::Engine;
        let sig = self.key.sign(signed(&join.code).as_bytes());
        let label = self.acting.map_or_else(|| "A phone".into(), |p| format!("Phone of {}", self.world.name(p)));
        let sig = base64::engine::general_purpose::STANDARD.encode(sig);
        Ask { code: join.code.clone(), device: self.key.device(), label, sig }
    }

    /// Notes by which device the office knows this one, before the key is another one.
    pub(super) fn note_office_device(&self) -> Result<(), NotDone> {
        if self.local_or(URL).is_empty() || !self.local_or(DEVICE).is_empty() {
            return Ok(());
        }
        self.keep_note(DEVICE, &self.key.device().to_string())
    }

    fn pushed_note(&self, of: DeviceId) -> String {
        if of == self.office_device() { PUSHED.into() } else { format!("{PUSHED}-{:.16}", of.to_string()) }
    }

    fn pushed(&self, of: DeviceId) -> u64 {
        self.local_or(&self.pushed_note(of)).parse().unwrap_or(0)
    }

    /// How many of the device's own entries the office does not have yet.
    pub(crate) fn unsent(&self) -> u64 {
        self.chains().into_iter().map(|of| self.end_of(of).saturating_sub(self.pushed(of))).sum()
    }

    /// Entries of this device that the office keeps aside until a person there has looked at them.
    pub(crate) fn aside_there(&self) -> usize {
        self.local_or(ASIDE).parse().unwrap_or(0)
    }

    pub(super) fn photos_folder(&self) -> PathBuf {
        photos::folder(&self.store.folder)
    }

    /// For the screens.
    pub(super) fn exchange_known(&self) -> ExchangeKnown {
        ExchangeKnown {
            office: self.office_name(),
            unsent: self.unsent(),
            aside_there: self.aside_there(),
            aside_full: self.store.aside_is_full().unwrap_or_default(),
            clock_may_be_right: self.clock_may_be_right(),
            old_key: self.office_device() != self.key.device(),
            aside_here: self.store.aside().unwrap_or_default(),
            now: self.exchange.clone(),
        }
    }

    /// What was scanned or typed on this screen and not kept yet.
    pub(crate) fn drafted(&self, field: &str) -> String {
        self.draft(field)
    }

    /// Something changed by itself that a screen may show.
    pub(crate) fn stir(&mut self) {
        self.stirred += 1;
    }
}

impl Holder for Stand {
    type Journal = Session;

    fn open(&mut self) -> Result<&mut Session, NotDone> {
        Stand::open(self)
    }

    fn says(&self, why: NotDone) -> String {
        self.error(why).to_string()
    }
}

impl Exchanged for Session {
    type Error = NotDone;

    fn office(&self) -> Option<OfficeClient> {
        let (url, token) = (self.local_or(URL), self.local_or(TOKEN));
        (!url.is_empty() && !token.is_empty()).then(|| OfficeClient::new(&url, &token))
    }

    fn joined(&mut self, url: &str, enrolled: &Enrolled) -> Result<(), NotDone> {
        self.keep_note(TOKEN, &enrolled.token)?;
        self.keep_note(NAME, &enrolled.office)?;
        self.keep_note(CURSOR, "")?;
        self.keep_note(DEVICE, &self.key.device().to_string())?;
        self.keep_note(PUSHED, "0")?;
        self.keep_note(ASIDE, "0")?;
        self.keep_note(URL, url)?;
        self.office_vouched();
        // The code is used up.
        self.prefill(Route::Office, "code", "");
        if self.route == Route::Office {
            self.edit("code", "");
        }
        self.exchange = Exchange { has_office: true, free_link: self.exchange.free_link, ..Exchange::default() };
        self.stir();
        Ok(())
    }

    fn office_device(&self) -> DeviceId {
        self.local_or(DEVICE).parse().unwrap_or_else(|_| self.key.device())
    }

    fn chains(&self) -> Vec<DeviceId> {
        let mut all = vec![self.office_device(), self.key.device()];
        all.extend(&self.formers);
        let mut seen = BTreeSet::new();
        all.retain(|device| seen.insert(*device));
        all
    }

    fn to_push(&self, of: DeviceId, most: usize) -> Result<Vec<Entry>, NotDone> {
        Ok(self.store.entries_after(of, self.pushed(of), most)?)
    }

    fn end_of(&self, of: DeviceId) -> u64 {
        if of == self.key.device() { self.head.seq } else { self.store.head(of).map_or(0, |head| head.seq) }
    }

    fn has_news(&self) -> bool {
        self.unsent() > 0
    }

    fn note_pushed(&mut self, of: DeviceId, to: u64, aside: usize) -> Result<(), NotDone> {
        self.keep_note(&self.pushed_note(of), &to.to_string())?;
        if aside > 0 {
            let before: usize = self.local_or(ASIDE).parse().unwrap_or(0);
            self.keep_note(ASIDE, &(before + aside).to_string())?;
        }
        Ok(())
    }

    fn cursor(&self) -> String {
        self.local_or(CURSOR)
    }

    fn set_cursor(&self, cursor: &str) -> Result<(), NotDone> {
        self.keep_note(CURSOR, cursor)
    }

    fn note_erased(&self, erased: &[Erased]) -> Result<(), NotDone> {
        for Erased { id, device, seq, site } in erased {
            if let Some(site) = site {
                self.store.note_erased(*site, *device, *seq, *id)?;
            }
        }
        Ok(())
    }

    fn sums(&self) -> Result<Vec<(EntryId, DeviceSum)>, NotDone> {
        let told = |sum: Sum| {
            let Sum { site, device, count, last_seq, hash } = sum;
            (site, DeviceSum { device, count, last_seq, hash })
        };
        Ok(self.store.sums()?.into_iter().map(told).collect())
    }

    fn note_agreed(&mut self, agreed: bool) {
        self.exchange.agreed = Some(agreed);
    }

    fn note_reached(&mut self) -> Result<(), NotDone> {
        let now = self.platform.now_ms();
        Ok(self.store.keep_office_reached(now)?)
    }

    fn note_exchange(&mut self, done: Result<Done, ExchangeTrouble>, failures: u32, wait_ms: u64) {
        self.exchange.running = false;
        let trouble = done.as_ref().err().cloned();
        let quiet = trouble == self.exchange.trouble && done.as_ref().is_ok_and(|d| *d == Done::default());
        if !quiet {
            self.stir();
        }
        self.exchange.failures = if trouble.is_some() { failures.saturating_add(1) } else { 0 };
        self.exchange.trouble = trouble;
        let wait = i64::try_from(wait_ms).unwrap_or(i64::MAX);
        self.exchange.next_ms = Some(self.platform.now_ms().saturating_add(wait));
    }

    fn link_is_free(&self) -> bool {
        self.exchange.free_link || self.exchange.originals_now
    }

    fn note_photos_left(&mut self, sizes: &[Size]) {
        self.exchange.photos = Size::ALL.map(|size| sizes.iter().filter(|s| **s == size).count());
        self.exchange.missing.clear();
    }

    fn note_photo_missing(&mut self, sha256: &str) {
        if self.exchange.missing.len() < 100 && !self.exchange.missing.iter().any(|m| m == sha256) {
            self.exchange.missing.push(sha256.to_owned());
        }
    }

    fn upload_place(&self, sha256: &str, size: Size) -> Option<String> {
        self.store.upload(sha256, size.name()).ok().flatten()
    }

    fn keep_upload_place(&self, sha256: &str, size: Size, place: Option<&str>) -> Result<(), NotDone> {
        Ok(self.store.keep_upload(sha256, size.name(), place)?)
    }

    fn pictures_lacked(&mut self, most: usize) -> Result<Vec<String>, NotDone> {
        let mut jobs: Vec<_> = self.locks.iter().map(|l| l.job).collect();
        jobs.sort_unstable();
        jobs.dedup();
        let (mut lacked, folder) = (Vec::new(), self.photos_folder());
        for id in jobs {
            let taken: Vec<String> = self.job(id)?.photos.iter().map(|p| p.sha256.clone()).collect();
            lacked.extend(
                taken.into_iter().filter(|sha| !folder.join(format!("{sha}{}", Size::Thumbnail.suffix())).exists()),
            );
            if lacked.len() >= most {
                break;
            }
        }
        lacked.truncate(most);
        Ok(lacked)
    }

    fn keep_picture(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), NotDone> {
        photos::keep_copy(&self.photos_folder(), sha256, bytes).map_err(NotDone::CopyUnwritten)?;
        self.stir();
        Ok(())
    }

    fn joining(&self) -> Option<(Join, Ask)> {
        let join = self.exchange.join.clone()?;
        Some((join.clone(), self.ask(&join)))
    }

    fn stop_joining(&mut self) {
        self.exchange.join = None;
    }

    fn failures(&self) -> u32 {
        self.exchange.failures
    }

    fn note_running(&mut self, running: bool) {
        self.exchange.running = running;
    }

    fn hear_office_clock(&mut self, theirs_ms: i64) {
        Session::hear_office_clock(self, theirs_ms);
    }

    fn agreed(&self) -> Option<bool> {
        self.exchange.agreed
    }

    fn is_former(&self, of: DeviceId) -> bool {
        self.formers.contains(&of)
    }

    fn told_of_own(&mut self, device: DeviceId, last: u64) {
        // More than is here was written by this device and forgotten, or by a copy of it.
        if device == self.key.device() && last > self.head.seq {
            self.note_forgot();
        }
    }

    fn told_of_fork(&mut self, of: DeviceId) {
        if of == self.key.device() {
            self.note_forgot();
        }
    }

    fn lacks_own(&self) -> bool {
        self.forgot || self.store.local(NOT_BEFORE).ok().flatten().is_some()
    }

    fn take_in_new(&mut self, entries: Vec<Entry>) -> Result<usize, NotDone> {
        Ok(self.take_in(entries)?.new)
    }

    fn photo_to_send(&self, name: &str) -> Option<Vec<u8>> {
        photos::to_send(&self.photos_folder(), name)
    }
}
