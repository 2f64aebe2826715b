//! What is behind [`Field`](super::Field): the open store, the key, what is read into memory, and where the person is.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::forgot::Beginning;
use super::key::{device_key, wrong_key};
use super::language::{CHOSEN, Chosen};
use super::near::Near;
use super::office::Exchange;
use super::pin::Hands;
use super::{NotDone, OpenError, Platform};
use crate::job::Job;
use crate::journal::{Clock, DeviceId, DeviceKey, Entry, EntryId, Fact, SignedOn, Stamp};
use crate::screens::Route;
use crate::screens::parts::Notice;
use crate::site::Across;
use crate::store::{Head, LockRow, NEW_KEY, Store, StoreError};
use crate::supply::Drawn;
use crate::sync::Exchanged;
use crate::text::Gone;
use crate::text::languages::Language;
use crate::world::World;

/// Jobs held in memory.
const MAX_JOBS: usize = 32;

/// See the module.
pub struct Session {
    pub(super) store: Store,
    pub(super) platform: Arc<dyn Platform>,
    pub(super) key: DeviceKey,
    pub(super) clock: Clock,
    /// When this device wrote its last entry.
    pub(super) wrote: Option<Stamp>,
    pub(super) head: Head,
    pub(crate) world: World,
    pub(crate) acting: Option<EntryId>,
    /// How it is known that they have, and who has had it before.
    pub(crate) hands: Hands,
    /// The site for the next job that is opened.
    pub(crate) site: Option<EntryId>,
    pub(super) jobs: BTreeMap<EntryId, Job>,
    pub(super) locks: Vec<LockRow>,
    /// Entries that are put aside, and why.
    pub(super) asides: Vec<(Entry, String)>,
    /// The keys that this device had before.
    pub(super) formers: Vec<DeviceId>,
    /// This device has forgotten what it wrote: nothing is signed.
    pub(crate) forgot: bool,
    /// What all jobs share.
    pub(super) across: Across,
    /// The supply networks, by site.
    pub(super) sites: BTreeMap<EntryId, Drawn>,
    /// What the act under way does to jobs of others, a sentence each.
    pub(super) touched: Vec<String>,
    /// Entries of the act under way, not on disk yet.
    pub(super) pending: Vec<Entry>,
    pub(super) route: Route,
    pub(super) drafts: BTreeMap<String, String>,
    pub(super) turn: u64,
    /// Which language it speaks.
    pub(crate) language: Chosen,
    pub(super) notice: Option<Notice>,
    /// Reading the disk again after a failed act failed too: nothing may be kept until it succeeds.
    pub(super) stale: bool,
    /// Counts what changed by itself: a shell that sees it grow draws the screen again.
    pub(super) stirred: u64,
    /// What is passed to a phone beside this one.
    pub(crate) near: Near,
    /// How the exchange with the office stands.
    pub(crate) exchange: Exchange,
    /// A photo that was asked for: the errand's token, the job, and what it shows.
    pub(super) wanted: Option<(String, EntryId, EntryId)>,
    /// The token of a scan under way; it ends when the person goes elsewhere.
    pub(super) scanning: Option<String>,
}

impl Session {
    /// Everything over a store that was just opened.
    pub(super) fn over(store: Store, platform: Arc<dyn Platform>) -> Result<Session, OpenError> {
        let other = |e: StoreError| OpenError::Other { what: e.to_string() };
        let last = store.last_clock().map_err(other)?;
        let Beginning { renew, forgot, older } = Beginning::of(&store, &*platform, last)?;
        let fresh = last.0 == 0 || renew.is_some();
        // Should the power go before the new key has signed anything, it is known by its name.
        let name = |name: &str| if renew.is_some() { store.keep_local(NEW_KEY, name).map_err(other) } else { Ok(()) };
        let key = device_key(&*platform, renew.as_deref(), fresh, name)?;
        let head = store.head(key.device()).map_err(other)?;
        // A copy from before this key is this device's all the same.
        if !fresh && head.seq == 0 && !older {
            return Err(wrong_key());
        }
        let mut session = Session {
            clock: Clock::resume(last),
            head,
            wrote: None,
            key,
            world: World::default(),
            acting: None,
            hands: Hands::default(),
            site: None,
            jobs: BTreeMap::new(),
            locks: Vec::new(),
            asides: Vec::new(),
            formers: Vec::new(),
            forgot: false,
            across: Across::default(),
            sites: BTreeMap::new(),
            touched: Vec::new(),
            pending: Vec::new(),
            route: Route::Home,
            drafts: BTreeMap::new(),
            turn: u64::from(platform.random(4).iter().fold(0u32, |n, b| n << 8 | u32::from(*b))),
            language: Chosen::default(),
            notice: None,
            stale: false,
            stirred: 0,
            near: Near::default(),
            exchange: Exchange::default(),
            wanted: None,
            scanning: None,
            store,
            platform,
        };
        session.reload().map_err(other)?;
        if forgot {
            session.note_forgot();
        } else if renew.is_some() || head.seq == 0 {
            session.begin().map_err(|why| {
                let what = why.says(&World::default());
                match why {
                    NotDone::Store(why) if why.is_full() => OpenError::DiskFull { what },
                    _ => OpenError::Other { what },
                }
            })?;
        }
        session.keep_head();
        session.take_in_due();
        let local = |name: &str| session.store.local(name).map_err(other);
        let (route, acting) = (local("route")?, local("acting")?);
        session.exchange.has_office = session.office().is_some();
        session.route = route.and_then(|r| r.parse().ok()).unwrap_or(Route::Home);
        session.acting = acting.and_then(|a| a.parse().ok()).filter(|a| session.world.people.contains_key(a));
        session.language.chosen = local(CHOSEN)?.and_then(|tag| Language::of_tag(&tag));
        session.load_hands().map_err(other)?;
        if let Some(person) = session.acting {
            // A journal of before PINs: what cannot be kept now is kept at the next start.
            session.hands.all.entry(person).or_default();
            let _ = session.keep_hand(person);
        }
        session.load_drafts();
        Ok(session)
    }

    /// Everything in memory that follows from the disk, read again.
    pub(super) fn reload(&mut self) -> Result<(), StoreError> {
        self.pending.clear();
        self.jobs.clear();
        self.stale = true;
        self.touched.clear();
        let mut world = World::default();
        let mut sites = BTreeMap::new();
        let mut began = Vec::new();
        for entry in self.store.shared_entries()? {
            world.extend(&entry);
            draw(&mut sites, &entry);
            if let Fact::DeviceBegan { after: Some(after), .. } = entry.body.fact {
                began.push((entry.body.device, after));
            }
        }
        let mut across = Across::default();
        let shared = self.store.entries_across()?;
        // Rules of sites belong to no job, and come with what is read anyway.
        self.store.shared_entries()?.iter().chain(&shared).for_each(|entry| across.extend(entry));
        let head = self.store.head(self.key.device())?;
        self.wrote = self.store.entry(head.id)?.map(|e| e.stamp());
        (self.world, self.sites, self.across, self.head) = (world, sites, across, head);
        self.formers = self.former(&began);
        self.load_locks()?;
        self.load_asides()?;
        self.stale = false;
        Ok(())
    }

    pub(super) fn load_locks(&mut self) -> Result<(), StoreError> {
        self.locks = self.store.open_locks()?;
        for lock in &mut self.locks {
            lock.telephone = self.world.telephone(lock.owner).to_owned();
        }
        Ok(())
    }

    pub(super) fn load_drafts(&mut self) {
        self.drafts = self.store.drafts(&self.route.to_string(), &self.hand()).unwrap_or_default();
    }

    /// The job, read from the journal if it is not in memory.
    pub(crate) fn job(&mut self, id: EntryId) -> Result<&Job, NotDone> {
        if !self.jobs.contains_key(&id) {
            if self.jobs.len() >= MAX_JOBS {
                self.jobs.clear();
            }
            let mut entries = self.store.entries_of(id)?;
            entries.extend(self.pending.iter().filter(|e| e.job() == Some(id)).cloned());
            let job = Job::fold(&entries).ok_or(Gone::Job)?;
            self.jobs.insert(id, job);
        }
        Ok(self.jobs.get(&id).ok_or(Gone::Job)?)
    }

    /// Takes the device into a person's hand, who is known by `how` where several use it.
    /// It is kept for the next start at the end of the act, when all else of the act is on disk.
    pub(crate) fn hold(&mut self, person: EntryId, how: Option<SignedOn>) -> Result<(), NotDone> {
        if !self.world.people.contains_key(&person) {
            return Err(Gone::Person.into());
        }
        let before = self.acting.replace(person);
        self.hands.known = how;
        self.hands.all.entry(person).or_default();
        if before != Some(person) {
            // What one person asked for is not theirs who has the device when it comes.
            (self.wanted, self.scanning) = (None, None);
            // A form that somebody opened for another person's lock closes when the device is handed on. Should this fail, it still says
            // whose.
            let _ = self.store.drop_drafts_of(crate::screens::FOR_WHOM);
        }
        // What somebody typed or chose stays theirs: the next person begins with what they left here themselves.
        self.load_drafts();
        Ok(())
    }

    /// The person who has the device in hand, as drafts name them; empty while nobody has.
    pub(super) fn hand(&self) -> String {
        self.acting.map(|person| person.to_string()).unwrap_or_default()
    }
}

/// Takes an entry about a site's network into the networks.
pub(super) fn draw(sites: &mut BTreeMap<EntryId, Drawn>, entry: &Entry) {
    if let (Some(site), None) = (entry.body.site, entry.body.job) {
        sites.entry(site).or_default().extend(entry);
    }
}
