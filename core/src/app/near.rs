//! Two phones beside each other: what this one shows, and what it has scanned so far.

use super::NotDone;
use super::session::Session;
use crate::job::Job;
use crate::journal::Entry;
use crate::screens::Route;
use crate::screens::parts::{Errand, Notice, Tone};
use crate::sync::near::{
    Has, PartKind, PartStep, PartsGathered, lacked, named, read_entries, read_has, short, show_entries, show_has,
};
use crate::text::screens::near as said;
use crate::text::{self, Gone};

/// How long a part is shown.
pub const PART_MS: i64 = 2_000;

/// What is shown and what was scanned. Not kept: a broken-off meeting begins again.
#[derive(Debug, Clone, Default)]
pub struct Near {
    /// The parts that are shown, and since when.
    pub shown: Option<(Vec<String>, i64)>,
    /// Whether what is shown is entries.
    pub entries: usize,
    gathered: PartsGathered,
}

impl Near {
    /// The part whose turn it is: its place, and how many there are.
    pub fn part(&self, now: i64) -> Option<(usize, &str, usize)> {
        let (parts, since) = self.shown.as_ref()?;
        let turn = usize::try_from((now - since).max(0) / PART_MS).unwrap_or(0) % parts.len().max(1);
        parts.get(turn).map(|text| (turn, text.as_str(), parts.len()))
    }
}

impl Session {
    /// Jobs under way, and those with a lock on.
    fn under_way(&mut self) -> Result<Vec<Job>, NotDone> {
        let rows = self.store.jobs()?;
        let locked: Vec<_> = self.locks.iter().map(|l| l.job).collect();
        let ids: Vec<_> = rows.into_iter().filter(|r| !r.done || locked.contains(&r.id)).map(|r| r.id).collect();
        ids.into_iter().map(|id| self.job(id).cloned()).collect()
    }

    /// Shows what this phone has.
    pub(crate) fn show_has(&mut self) -> Result<(), NotDone> {
        let mut has = Has::default();
        for job in self.under_way()? {
            let heads = job.heard.heads().map(|(device, seq)| (short(&device.0), *seq));
            has.0.insert(short(&job.id().0), heads.collect());
        }
        self.show(show_has(&has).map_err(NotDone::Codes)?, 0);
        Ok(())
    }

    fn show(&mut self, parts: Vec<String>, entries: usize) {
        self.near.shown = Some((parts, self.platform.now_ms()));
        self.near.entries = entries;
    }

    /// Shows what a phone that has `has` lacks.
    fn show_lacked(&mut self, has: &Has) -> Result<usize, NotDone> {
        let shared = self.store.shared_entries()?;
        let mut out: Vec<Entry> = Vec::new();
        for job in self.under_way()? {
            let entries = self.store.entries_of(job.id())?;
            let news = lacked(has.0.get(&short(&job.id().0)), &entries);
            out.extend(named(&news, &shared).into_iter().chain(news).cloned());
        }
        out.sort_by_key(|e| (e.body.device, e.body.seq));
        out.dedup_by_key(|e| e.id);
        let count = out.len();
        if count > 0 {
            self.show(show_entries(&out).map_err(NotDone::Codes)?, count);
        }
        Ok(count)
    }

    /// A part was scanned: goes on until the set is whole, and then answers it.
    pub(super) fn near_read(&mut self, text: &str, scan: Vec<Errand>) -> Vec<Errand> {
        self.turn += 1;
        if self.route != Route::Near {
            self.go(Route::Near);
        }
        let (tone, said, goes_on) = match self.near.gathered.take(text) {
            None => (Tone::Warn, said::unread(), true),
            Some(PartStep::Parts(here, of)) => (Tone::Plain, said::parts_here(here, of), true),
            Some(PartStep::Whole(kind, plain)) => {
                let done = match kind {
                    PartKind::Has => read_has(&plain)
                        .ok_or_else(|| Gone::Codes.into())
                        .and_then(|has| self.show_lacked(&has))
                        .map(|n| match n {
                            0 => said::has_all(),
                            count => said::lacks(count),
                        }),
                    PartKind::Entries => read_entries(&plain)
                        .ok_or_else(|| Gone::Codes.into())
                        .and_then(|all| self.take_in(all))
                        .map(|taken| {
                            let new = match taken.new {
                                0 => said::nothing_new(),
                                count => said::taken_in(count),
                            };
                            if taken.aside == 0 { new } else { text::sentences(new, said::some_aside()) }
                        }),
                };
                match done {
                    Ok(said) => (Tone::Plain, said, false),
                    Err(why) => (Tone::Forbid, why.says(&self.world), false),
                }
            }
        };
        self.notice = Some(Notice { tone, text: said });
        if goes_on {
            return scan;
        }
        self.scanning = None;
        vec![Errand::Buzz]
    }
}
