//! Phones, people and jobs of one site, and what happens to them, told by a seed.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Debug;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact};

use super::alike::alike;
use super::chance::Chance;
use super::known::{HOUR, Known, MINUTE};
use super::phone::{Phone, True};
use super::plan::Plan;
use super::points::{locks_on, may_close};
use super::promise::may_stand;
use super::questions::{may_do, never_refused};
use super::slips::Slip;
use super::waits::may_uncover;
use super::wild::Wild;
use crate::desk::MORNING;

const DAY: i64 = 24 * HOUR;
/// How far a clock is off at the beginning.
const OFF: [i64; 12] =
    [0, 0, 0, 0, 3 * MINUTE, -2 * MINUTE, 20 * MINUTE, -3 * HOUR, 5 * HOUR, -9 * MINUTE, 2 * DAY, -2 * DAY];

pub struct World {
    pub chance: Chance,
    pub time: True,
    pub phones: Vec<Phone>,
    pub jobs: Vec<(EntryId, Plan)>,
    pub people: Vec<EntryId>,
    pub log: Vec<String>,
    /// Deeds that were tried, those that were kept, and how often something stood proved.
    pub counts: (usize, usize, usize),
    /// Everything that was ever written, also what nobody has any more.
    all: BTreeMap<EntryId, Entry>,
    /// The phones and jobs where the last run led nowhere.
    pub again: BTreeSet<(usize, usize)>,
    /// What goes wrong, once it does, and with which job.
    pub slip: Option<(usize, Slip)>,
    /// With which phone.
    pub who: usize,
    /// Entries that exist in somebody's head only.
    pub believed: Vec<Entry>,
}

impl World {
    /// `honest`: right clocks, nothing put back.
    pub fn new(seed: u64, honest: bool) -> World {
        World::with(seed, honest, None)
    }

    /// Three phones, one of which asks no gate, and two jobs, in one of which somebody slips.
    pub fn slipping(seed: u64, slip: Slip) -> World {
        let mut world = World::with(seed, true, Some(slip));
        world.phones[2].loose = DeviceKey::from_secret(&[42; 32]);
        world
    }

    fn with(seed: u64, honest: bool, slip: Option<Slip>) -> World {
        let mut chance = Chance(seed.wrapping_mul(0x9E37_79B9) + 1);
        let time: True = Arc::new(AtomicI64::new(MORNING));
        let count = if slip.is_some() { 3 } else { 1 + chance.of(4).min(chance.of(4) + 1) };
        // A wall clock that is set back is no matter where another clock runs.
        let has_running = |chance: &mut Chance| slip != Some(Slip::ClockBack) && (honest || !chance.one_in(6));
        let mut phones = Vec::new();
        for n in 0..count {
            let has_running = has_running(&mut chance);
            phones.push(Phone::new(seed.wrapping_mul(31) + n as u64, &time, has_running));
        }
        let log = Vec::new();
        let mut world = World {
            chance,
            time,
            phones,
            jobs: Vec::new(),
            people: Vec::new(),
            log,
            counts: (0, 0, 0),
            all: BTreeMap::new(),
            again: BTreeSet::new(),
            slip: None,
            who: 0,
            believed: Vec::new(),
        };
        world.begin(honest, slip);
        world
    }

    /// People, the site, and one to three jobs, opened on the first phone.
    fn begin(&mut self, honest: bool, slip: Option<Slip>) {
        for name in ["Mara Lind", "Tomas Brandt", "Joel Aras"] {
            let (qualification, telephone) = ("Electrician".into(), String::new());
            let by = self.people.first().copied().unwrap_or(EntryId::NONE);
            let fact = Fact::PersonNoted { name: name.into(), qualification, telephone, corrects: None };
            let id = self.phones[0].keep(by, None, fact).expect("a person");
            self.people.push(id);
        }
        let by = self.people[0];
        self.phones[0].keep(by, None, Fact::SiteNoted { name: "Brook Lane dye works".into() }).expect("a site");
        let jobs = if slip.is_some() { 2 } else { 1 + self.chance.of(3) };
        for nth in 0..jobs {
            let mut plan = Plan::of(&mut self.chance, nth);
            if let Some(slip) = slip {
                slip.prepare(&mut plan, nth);
            }
            let id = self.phones[0].keep(by, None, plan.opening()).expect("a job");
            self.say(format!("job {nth} is {}: {plan:?}", id.short()));
            self.jobs.push((id, plan));
        }
        let all = self.phones[0].entries.clone();
        for n in 0..self.phones.len() {
            self.phones[n].person = self.people[n % self.people.len()];
            if n > 0 {
                self.phones[n].hear(all.clone());
            }
            let off = if honest { 0 } else { OFF[self.chance.of(OFF.len())] };
            self.phones[n].set_clock(off);
            let running = self.phones[n].with_moment(|m| m.running.is_some());
            self.say(format!("phone {n}: clock {} min off, running clock: {running}", off / MINUTE));
            self.gather(n);
        }
    }

    pub fn say(&mut self, what: impl Into<String>) {
        self.log.push(what.into());
    }

    fn gather(&mut self, n: usize) {
        for e in &self.phones[n].entries {
            self.all.entry(e.id).or_insert_with(|| e.clone());
        }
    }

    fn number(&self, job: EntryId) -> usize {
        self.jobs.iter().position(|j| j.0 == job).unwrap_or(99)
    }

    pub fn pass(&mut self, ms: i64) {
        self.time.fetch_add(ms, Ordering::Relaxed);
    }

    /// Somebody does something with a phone.
    pub fn keep(&mut self, n: usize, by: EntryId, job: Option<EntryId>, fact: Fact) -> Result<EntryId, String> {
        self.pass(15_000);
        let closes = if let Fact::PointClosed { point, .. } = fact { Some(point) } else { None };
        let known = Known::new(&self.phones[n].entries, &self.phones[n].aside);
        let free = closes.map(|p| may_close(&known, p));
        let asked = job.map(|job| may_do(&known, job, &fact));
        let uncovers = matches!(fact, Fact::CoverOff { .. });
        let waited = job.filter(|_| uncovers).map(|job| self.phones[n].with_moment(|at| may_uncover(&known, job, at)));
        // "Work began or went on under a standing proof."
        let works = matches!(fact, Fact::WorkBegan { .. });
        let stood = job.filter(|_| works).map(|job| self.phones[n].with_moment(|at| may_stand(&known, job, at)));
        let stops = job.and_then(|job| never_refused(&known, job, by, &fact));
        let loose = self.phones[n].loose.is_some();
        let who = self
            .people
            .iter()
            .position(|p| *p == by)
            .map_or("?".into(), |p| ["Mara", "Tomas", "Joel"][p.min(2)].to_owned());
        let about = job.map_or("site".to_owned(), |j| format!("job {}", self.number(j)));
        let shown = short(&fact);
        let kept = self.phones[n].keep(by, job, fact);
        let what = match &kept {
            Ok(id) => format!("kept {}", id.short()),
            Err(why) => format!("REFUSED: {why}"),
        };
        self.say(format!("{n} {who}, {about}: {shown} -> {what}"));
        if let (Err(refused), Some(why), false) = (&kept, stops, self.phones[n].forgotten) {
            panic!("phone {n}: {why}: {refused}");
        }
        self.counts.0 += 1;
        if let Ok(id) = &kept {
            self.counts.1 += 1;
            let written = self.phones[n].entries.iter().rfind(|e| e.id == *id);
            self.all.extend(written.map(|e| (*id, e.clone())));
            if let Some(Err(why)) = asked.filter(|_| !loose) {
                panic!("phone {n} went on although {why}");
            }
            if let Some(Err(why)) = stood.filter(|_| !loose) {
                panic!("phone {n} went on to the work although {why}");
            }
            if let Some(Err(why)) = waited.filter(|_| !loose) {
                panic!("phone {n} went on and let a cover come off although {why}");
            }
            if let Some(Err(why)) = free {
                panic!("phone {n} closed a point although {why}");
            }
        }
        kept
    }

    /// One phone hears of another: all of it, its beginning, or any part of it.
    pub fn hear(&mut self, n: usize, from: usize, part: usize) {
        let mut entries = self.phones[from].entries.clone();
        let all = entries.len();
        match part {
            0 => entries.truncate(all - all.min(self.chance.of(30))),
            1 => entries.retain(|_| !self.chance.one_in(4)),
            _ => {}
        }
        self.say(format!("{n} hears {} of {all} entries of {from}", entries.len()));
        self.phones[n].hear(entries);
        self.gather(n);
    }

    /// Everything that the promises say of a phone, with what it has.
    pub fn check(&mut self, n: usize) {
        let phone = &self.phones[n];
        if phone.loose.is_some() {
            return;
        }
        let known = Known::new(&phone.entries, &phone.aside);
        for (nth, (job, _)) in self.jobs.iter().enumerate() {
            if known.get(*job).is_none() || !phone.field().proved(*job) {
                continue;
            }
            self.counts.2 += 1;
            if let Err(why) = phone.with_moment(|moment| may_stand(&known, *job, moment)) {
                if std::env::var_os("STILLBAR_TELL").is_some() {
                    let of_job = known.of(*job).chain(phone.aside.iter());
                    of_job.for_each(|e| self.log.push(format!("    knows {} {:?}", e.id.short(), e.body.fact)));
                }
                panic!(
                    "phone {n} shows job {nth} proved dead, and by the promises it may not: {why}\n  it shows: {}",
                    phone.field().standing_says(*job)
                );
            }
        }
        let shown = phone.field().known_locks();
        for lock in locks_on(&known) {
            let found = shown.iter().any(|row| {
                row.on
                    && (row.fit == lock.fit || alike(&row.label, &lock.label))
                    && known.person(row.owner) == lock.owner
            });
            assert!(
                found,
                "phone {n} does not show lock {} ({}) of {}: it shows {shown:#?}",
                lock.label,
                lock.fit.short(),
                lock.owner.short()
            );
        }
    }

    pub fn check_all(&mut self) {
        (0..self.phones.len()).for_each(|n| self.check(n));
    }

    /// One thing happens, whatever it is.
    pub fn step(&mut self) {
        let (n, nth) = (self.chance.of(self.phones.len()), self.chance.of(self.jobs.len()));
        match self.chance.of(100) {
            0..40 => {
                let most = 1 + self.chance.of(25);
                self.work(n, nth, most);
                self.check(n);
            }
            40..76 => {
                self.wild(n, nth);
                self.check(n);
            }
            76..88 => {
                let (other, part) = (self.chance.of(self.phones.len()), self.chance.of(5));
                if other != n {
                    self.hear(n, other, part);
                    self.check(n);
                }
            }
            88..94 => {
                let minutes = [1, 5, 30, 61, 61, 240, 700, 721][self.chance.of(8)];
                self.say(format!("{minutes} min pass"));
                self.pass(minutes * MINUTE);
                self.check_all();
            }
            _ => {
                self.upset(n);
                self.check(n);
            }
        }
    }

    fn wild(&mut self, n: usize, nth: usize) {
        let (job, me) = (self.jobs[nth].0, self.phones[n].person);
        let me = if self.chance.one_in(6) { *self.chance.pick(&self.people).unwrap_or(&me) } else { me };
        let mut chance = self.chance.clone();
        let kind = chance.of(13);
        let phone = &self.phones[n];
        let mut wild = Wild { chance: &mut chance, entries: &phone.entries, aside: &phone.aside, job, me };
        let fact = match kind {
            0..3 => wild.ending(),
            3..6 => wild.trouble(),
            6..9 => wild.at_the_points(),
            9 | 10 => wild.other(),
            11 => wild.answer(),
            _ => wild.at_the_site(),
        };
        self.chance = chance;
        if let Some(fact) = fact {
            let _ = self.keep(n, me, if kind == 12 { None } else { Some(job) }, fact);
        }
    }

    /// What happens to a phone itself.
    fn upset(&mut self, n: usize) {
        match self.chance.of(8) {
            0 | 1 => {
                let off =
                    [0, 4 * MINUTE, -4 * MINUTE, 20 * MINUTE, -11 * HOUR, 47 * HOUR, -47 * HOUR][self.chance.of(7)];
                self.phones[n].set_clock(off);
                self.say(format!("the clock of {n} is now {} min off", off / MINUTE));
            }
            2 => {
                self.phones[n].restart_app();
                self.say(format!("the app on {n} starts again"));
            }
            3 => {
                self.phones[n].restart();
                self.say(format!("{n} is switched off and on"));
            }
            4 | 5 => {
                self.phones[n].copy();
                self.say(format!("somebody copies the folder of {n}"));
            }
            6 => {
                let knows = !self.chance.one_in(3);
                if self.phones[n].put_back(knows) {
                    let forgotten = self.phones[n].forgotten;
                    self.say(format!(
                        "the folder of {n} is put back, its end known outside: {knows}; it has forgotten: {forgotten}"
                    ));
                }
            }
            _ => {
                if self.phones[n].forgotten {
                    let done = self.phones[n].go_on();
                    self.say(format!("{n} goes on under a new key: {done:?}"));
                    self.gather(n);
                }
            }
        }
    }

    /// All hear of all; what is forgotten comes back from those who have it.
    pub fn meet(&mut self) {
        let all: Vec<Entry> = self.all.values().cloned().collect();
        for n in 0..self.phones.len() {
            self.phones[n].hear(all.clone());
            self.say(format!("{n} hears everything"));
        }
    }
}

/// A fact in a line.
pub fn short(fact: &impl Debug) -> String {
    let text = format!("{fact:?}");
    let mut words = text.replace("EntryId(", "(");
    if words.chars().count() > 230 {
        words = words.chars().take(230).collect::<String>() + " ...";
    }
    words
}
