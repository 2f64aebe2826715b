//! What is behind [`Field`](super::Field): the open store, the key, where the person is, and the one way to keep a fact.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::forgot::Beginning;
use super::key::{device_key, wrong_key};
use super::near::{Near, PART_MS};
use super::office::Exchange;
use super::pin::{Hand, Hands};
use super::shoot::WAITING;
use super::{OpenError, Platform};
use crate::job::Job;
use crate::job::age::Moment;
use crate::job::gate::Gate;
use crate::journal::{Body, Clock, DeviceId, DeviceKey, Entry, EntryId, Fact, SignedOn};
use crate::screens::cx::Act;
use crate::screens::parts::{Errand, Filled, Notice, Tone};
use crate::screens::{self, Route};
use crate::site::Across;
use crate::store::{Head, LockRow, NEW_KEY, Store};
use crate::supply::{Cut, Drawn, Held};
use crate::world::World;

/// Most characters of one draft; a drawn signature is the longest.
const MAX_DRAFT: usize = 8_000;
/// Jobs held in memory.
const MAX_JOBS: usize = 32;

/// See the module.
pub struct Inner {
    pub(super) store: Store,
    pub(super) platform: Arc<dyn Platform>,
    pub(super) key: DeviceKey,
    pub(super) clock: Clock,
    /// What this device's clock read when it wrote its last entry.
    pub(super) wrote: i64,
    /// The latest that its wall clock read then.
    pub(super) wrote_at: i64,
    pub(super) head: Head,
    pub(crate) world: World,
    pub(crate) acting: Option<EntryId>,
    /// How it is known that they have, and who has had it before.
    pub(crate) hands: Hands,
    /// The site for the next job that is opened.
    pub(crate) site: Option<EntryId>,
    jobs: BTreeMap<EntryId, Job>,
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

impl Inner {
    /// Everything over a store that was just opened.
    pub(super) fn over(store: Store, platform: Arc<dyn Platform>) -> Result<Inner, OpenError> {
        let other = |e: crate::store::StoreError| OpenError::Other { what: e.to_string() };
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
        let mut inner = Inner {
            clock: Clock::resume(last),
            head,
            wrote: 0,
            wrote_at: 0,
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
        let failed = |what: String| OpenError::Other { what };
        inner.reload().map_err(failed)?;
        if forgot {
            inner.note_forgot();
        } else if renew.is_some() || head.seq == 0 {
            inner.begin().map_err(|what| {
                if what.contains("full") { OpenError::DiskFull { what } } else { OpenError::Other { what } }
            })?;
        }
        inner.keep_head();
        inner.take_in_due();
        let local = |name: &str| inner.store.local(name).map_err(other);
        let (route, acting) = (local("route")?, local("acting")?);
        inner.exchange.has_office = inner.office().is_some();
        inner.route = route.and_then(|r| r.parse().ok()).unwrap_or(Route::Home);
        inner.acting = acting.and_then(|a| a.parse().ok()).filter(|a| inner.world.people.contains_key(a));
        inner.load_hands().map_err(failed)?;
        if let Some(person) = inner.acting {
            // A journal of before PINs: what cannot be kept now is kept at the next start.
            inner.hands.all.entry(person).or_default();
            let _ = inner.keep_hand(person);
        }
        inner.load_drafts();
        Ok(inner)
    }

    /// Everything in memory that follows from the disk, read again.
    pub(super) fn reload(&mut self) -> Result<(), String> {
        let said = |e: crate::store::StoreError| e.to_string();
        self.pending.clear();
        self.jobs.clear();
        self.stale = true;
        self.touched.clear();
        let mut world = World::default();
        let mut sites = BTreeMap::new();
        let mut began = Vec::new();
        for entry in self.store.shared_entries().map_err(said)? {
            world.extend(&entry);
            draw(&mut sites, &entry);
            if let Fact::DeviceBegan { after: Some(after), .. } = entry.body.fact {
                began.push((entry.body.device, after));
            }
        }
        let mut across = Across::default();
        let shared = self.store.entries_across().map_err(said)?;
        // Rules of sites belong to no job, and come with what is read anyway.
        self.store.shared_entries().map_err(said)?.iter().chain(&shared).for_each(|entry| across.extend(entry));
        let head = self.store.head(self.key.device()).map_err(said)?;
        let last = self.store.entry(head.id).map_err(said)?;
        self.wrote = last.as_ref().map_or(0, |e| e.body.clock.0);
        self.wrote_at = self.wrote_at.max(last.map_or(0, |e| e.body.wall));
        (self.world, self.sites, self.across, self.head) = (world, sites, across, head);
        self.formers = self.former(&began);
        self.load_locks()?;
        self.load_asides()?;
        self.stale = false;
        Ok(())
    }

    fn load_locks(&mut self) -> Result<(), String> {
        self.locks = self.store.open_locks().map_err(|e| e.to_string())?;
        for lock in &mut self.locks {
            lock.telephone = self.world.telephone(lock.owner).to_owned();
        }
        Ok(())
    }

    fn load_drafts(&mut self) {
        self.drafts = self.store.drafts(&self.route.to_string(), &self.hand()).unwrap_or_default();
    }

    /// The job, read from the journal if it is not in memory.
    pub(crate) fn job(&mut self, id: EntryId) -> Result<&Job, String> {
        if !self.jobs.contains_key(&id) {
            if self.jobs.len() >= MAX_JOBS {
                self.jobs.clear();
            }
            let mut entries = self.store.entries_of(id).map_err(|e| e.to_string())?;
            entries.extend(self.pending.iter().filter(|e| e.job() == Some(id)).cloned());
            let job = Job::fold(&entries).ok_or("This job is not on this device.")?;
            self.jobs.insert(id, job);
        }
        self.jobs.get(&id).ok_or_else(|| "This job is not on this device.".into())
    }

    /// Takes the device into a person's hand, who is known by `how` where several use it.
    /// It is kept for the next start at the end of the act, when all else of the act is on disk.
    pub(crate) fn hold(&mut self, person: EntryId, how: Option<SignedOn>) -> Result<(), String> {
        if !self.world.people.contains_key(&person) {
            return Err("This person is not known on this device.".into());
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

    /// See [`super::Field::keep`].
    pub(super) fn keep_alone(&mut self, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, String> {
        let before = self.acting.replace(by);
        self.hands.tool = true;
        let kept = match (&fact, self.site, job) {
            (
                Fact::NodeNoted { .. }
                | Fact::LinkNoted { .. }
                | Fact::PartGone { .. }
                | Fact::LinkSeen { .. }
                | Fact::SiteRuled { .. },
                Some(site),
                None,
            ) => self.keep_at(site, fact),
            _ => self.keep(job, fact),
        };
        let done = kept.and_then(|id| self.commit().map(|()| id));
        self.acting = before;
        self.hands.tool = false;
        match done {
            Ok(id) => {
                if self.world.sites.contains_key(&id) {
                    self.site = Some(id);
                }
                self.touched.clear();
                self.stirred += 1;
                Ok(id)
            }
            Err(why) => {
                self.reload()?;
                Err(why)
            }
        }
    }

    /// Keeps a fact about a site's supply network, likewise.
    pub(crate) fn keep_at(&mut self, site: EntryId, fact: Fact) -> Result<EntryId, String> {
        self.remembers()?;
        if self.stale {
            self.reload()?;
        }
        let drawn = self.sites.get(&site).cloned().unwrap_or_default();
        self.gate(None, None, &[], self.moment()).network(&drawn, &fact)?;
        self.note_touched(site, None, &fact)?;
        self.seal(Some(site), None, fact)
    }

    /// Keeps a fact: through the gate, signed, into the job. On disk at the end of the act, with all others of the act.
    pub(crate) fn keep(&mut self, job: Option<EntryId>, mut fact: Fact) -> Result<EntryId, String> {
        self.remembers()?;
        if self.stale {
            self.reload()?;
        }
        self.say_known(&mut fact);
        let named = match &fact {
            Fact::Withdrawn { entry, .. } => self.store.entry(*entry).map_err(|e| e.to_string())?,
            _ => None,
        };
        let current = job.map(|id| self.look_at(id)).transpose()?;
        let cut = current.as_ref().and_then(|job| self.cut(job));
        let held = match (&current, &fact) {
            (Some(job), Fact::PointClosed { .. }) => self.held(job.site, Some(job.id()))?,
            _ => Vec::new(),
        };
        let gate = self.gate(named.as_ref(), cut.as_ref(), &held, self.moment());
        match &current {
            None => gate.alone(&fact)?,
            Some(job) => gate.inside(job, &fact)?,
        }
        let site = match (&current, &fact) {
            (Some(job), _) => job.site,
            (None, Fact::JobOpened { .. }) => self.site,
            (None, _) => None,
        };
        if let Some(job) = &current
            && let Some(site) = job.site
        {
            self.note_touched(site, Some(job), &fact)?;
        }
        self.seal(site, job, fact)
    }

    fn gate<'a>(&'a self, named: Option<&'a Entry>, cut: Option<&'a Cut>, held: &'a [Held], now: Moment) -> Gate<'a> {
        let Inner { world, acting, locks, across, .. } = self;
        Gate { world, acting: *acting, locks, named, cut, held, across, now }
    }

    /// Signs a fact that passed the gate, and takes it in.
    pub(super) fn seal(&mut self, site: Option<EntryId>, job: Option<EntryId>, fact: Fact) -> Result<EntryId, String> {
        let wall = self.platform.now_ms();
        let reaches_back = matches!(fact, Fact::Withdrawn { .. });
        let mut clock = self.clock;
        let body = Body {
            device: self.key.device(),
            seq: self.head.seq + 1,
            clock: clock.tick(wall),
            wall,
            zone: self.platform.offset_minutes(wall),
            running: self.platform.running(),
            prev: self.head.id,
            after: job.and_then(|id| self.jobs.get(&id)).and_then(|j| j.heard.last_of(self.key.device())),
            site,
            job,
            by: self.acting,
            signed_on: self.signed_on(),
            seen: job.and_then(|id| self.jobs.get(&id)).map(|j| j.heard.to_say(self.key.device())).unwrap_or_default(),
            fact,
        };
        let entry = Entry::seal(body, &self.key, &|count| self.platform.random(count)).map_err(|e| e.to_string())?;
        self.wrote = clock.last().0;
        self.wrote_at = self.wrote_at.max(wall);
        self.clock = clock;
        self.head = Head { seq: entry.body.seq, id: entry.id };
        self.world.extend(&entry);
        draw(&mut self.sites, &entry);
        self.across.extend(&entry);
        let id = entry.id;
        if let Some(job) = job {
            match self.jobs.get_mut(&job) {
                Some(known) if !reaches_back => known.extend(&entry),
                _ => {
                    self.jobs.remove(&job);
                }
            }
        }
        let fact = entry.body.fact.clone();
        self.pending.push(entry);
        if let Some(job) = job {
            self.note_off(job, &fact);
        }
        Ok(id)
    }

    /// Writes what the act kept, in one transaction.
    pub(super) fn commit(&mut self) -> Result<(), String> {
        if self.pending.is_empty() {
            return Ok(());
        }
        let mut ids: Vec<EntryId> = self.pending.iter().filter_map(Entry::job).collect();
        ids.sort_unstable();
        ids.dedup();
        let jobs = ids.into_iter().map(|id| self.job(id).cloned()).collect::<Result<Vec<Job>, String>>()?;
        self.store.append(&self.pending, &jobs.iter().collect::<Vec<_>>()).map_err(|e| e.to_string())?;
        self.pending.clear();
        self.keep_head();
        // The act is on disk whatever happens now: what cannot be read again is read before the next act.
        self.stale = self.load_locks().is_err();
        Ok(())
    }

    pub(super) fn act(&mut self, turn: Option<u64>, action: &str, input: &[Filled]) -> Vec<Errand> {
        // A place is named whole and going there keeps nothing: such a tap means the same on any screen.
        if turn.is_some_and(|turn| turn != self.turn) && !action.starts_with("go ") {
            let text = "The screen had moved on before that tap. Nothing was done: look again.".into();
            self.notice = Some(Notice { tone: Tone::Warn, text });
            self.turn += 1;
            return Vec::new();
        }
        self.turn += 1;
        self.notice = None;
        self.touch();
        let (verb, arg) = action.split_once(' ').unwrap_or((action, ""));
        match verb {
            "go" => match arg.parse() {
                Ok(route) => self.go(route),
                Err(()) => self.refuse("This place does not exist any more.".into()),
            },
            "photo" => return self.want_photo(arg),
            "scan" => return self.want_scan(arg),
            "share" => return self.share(),
            _ => {
                let errands = self.do_act(verb, arg, input);
                return self.go_on(errands);
            }
        }
        Vec::new()
    }

    pub(super) fn do_act(&mut self, verb: &str, arg: &str, input: &[Filled]) -> Vec<Errand> {
        let route = self.route;
        let (acting, hand, known) = (self.acting, self.hand(), self.hands.known);
        let mut act = Act { app: self, input, go: None, say: None, alarm: false, errands: Vec::new() };
        let done = screens::act(&route, &mut act, verb, arg);
        let Act { go, say, alarm, errands, .. } = act;
        let tone = if alarm { Tone::Forbid } else { Tone::Plain };
        let first = done.is_ok() && !self.pending.is_empty() && self.asks_pin();
        match done.and_then(|()| {
            if first {
                return Err("Say who you are first. What you did goes on after that.".into());
            }
            let kept = !self.pending.is_empty();
            self.commit().map(|()| kept)
        }) {
            Ok(kept) => {
                if let Some(person) = self.acting.filter(|_| self.acting != acting) {
                    // If this alone fails, the next start has the person who had the device before, and says so on the first screen.
                    let _ = self.store.keep_local("acting", &person.to_string());
                    let _ = self.keep_hand(person);
                }
                if kept {
                    // A photo that waits for its reason outlives every other act on its screen.
                    let waiting = if verb == "keep-photo" { String::new() } else { self.draft(WAITING) };
                    let _ = self.store.clear_drafts(&route.to_string(), &hand);
                    self.drafts.clear();
                    if !waiting.is_empty() {
                        self.edit(WAITING, &waiting);
                    }
                    let text = say.unwrap_or_else(|| "Kept.".into());
                    self.notice = Some(Notice { tone, text });
                } else if let Some(text) = say {
                    self.notice = Some(Notice { tone, text });
                }
                self.tell_touched();
                if let Some(route) = go {
                    self.go(route);
                }
                errands
            }
            Err(why) => {
                // The act is undone whole, and what was typed stays on the screen.
                self.acting = acting;
                self.hands.known = known;
                let reloaded = self.reload().and_then(|()| self.load_hands());
                self.hands.all.extend(acting.filter(|a| !self.hands.all.contains_key(a)).map(|a| (a, Hand::default())));
                for filled in input {
                    self.edit(&filled.field, &filled.value);
                }
                match reloaded {
                    Ok(()) if first => {
                        self.ask_first(verb, arg, input);
                        self.notice = Some(Notice { tone: Tone::Warn, text: why });
                    }
                    other => self.refuse(other.err().unwrap_or(why)),
                }
                Vec::new()
            }
        }
    }

    pub(super) fn refuse(&mut self, text: String) {
        self.notice = Some(Notice { tone: Tone::Forbid, text });
    }

    pub(super) fn go(&mut self, route: Route) {
        // An entry that was tapped in the time line is asked about once, not again after a walk through other screens.
        if matches!(self.route, Route::TimeLine(_)) && route != self.route && !self.draft("entry").is_empty() {
            self.edit("entry", "");
        }
        self.route = route;
        self.scanning = None;
        self.hands.then = None;
        // Where the person was is a convenience: a full disk must not stop them from looking around.
        let _ = self.store.keep_local("route", &route.to_string());
        self.load_drafts();
    }

    pub(crate) fn edit(&mut self, field: &str, value: &str) {
        if !draft_fits(&self.drafts, field, value) {
            return;
        }
        self.drafts.insert(field.to_owned(), value.to_owned());
        // In memory it stays on the screen even if the disk is full; that it is not on disk comes out at the next tap.
        let _ = self.store.keep_draft(&self.route.to_string(), &self.hand(), field, value);
    }

    /// The same on another screen. What fails here is only typed again.
    pub(crate) fn prefill(&mut self, route: Route, field: &str, value: &str) {
        let _ = self.store.keep_draft(&route.to_string(), &self.hand(), field, value);
    }

    /// Grows when the screen may have changed without an act: something came in, or the next part of a code is due.
    pub(super) fn stirred_now(&self) -> u64 {
        let parts = match (&self.route, &self.near.shown) {
            (Route::Near, Some((parts, since))) if parts.len() > 1 => {
                u64::try_from((self.now().0 - since) / PART_MS).unwrap_or(0)
            }
            _ => 0,
        };
        self.stirred.wrapping_add(parts)
    }

    /// A name for an errand that cannot be guessed.
    pub(super) fn token(&self) -> String {
        self.platform.random(8).iter().map(|b| format!("{b:02x}")).collect()
    }

    /// What stands in a field of this screen and is not kept yet.
    pub(crate) fn draft(&self, field: &str) -> String {
        self.drafts.get(field).cloned().unwrap_or_default()
    }
}

/// Takes an entry about a site's network into the networks.
fn draw(sites: &mut BTreeMap<EntryId, Drawn>, entry: &Entry) {
    if let (Some(site), None) = (entry.body.site, entry.body.job) {
        sites.entry(site).or_default().extend(entry);
    }
}

/// Whether this may stand beside the other drafts of a screen.
pub(super) fn draft_fits(drafts: &BTreeMap<String, String>, field: &str, value: &str) -> bool {
    // A signature is given for one act by one person: it must never stand there for the next.
    // A PIN stands nowhere.
    field != "mark"
        && !field.starts_with("pin")
        && field.len() <= 100
        && value.len() <= MAX_DRAFT
        && (drafts.len() < 100 || drafts.contains_key(field))
}
