//! Other witnesses of the time: the office, and phones beside. Where they contradict this device's clock, no age that it tells is believed.

use super::inner::Inner;
use super::known::CLOCK_DOUBT;
use crate::job::age::CLOCK_DOUBT_MS;
use crate::words;

/// How the office's contradiction is noted: how far its clock is ahead of this one, in milliseconds.
const OFFICE: &str = "office";
/// How an entry's contradiction is noted: what its writer's clock read.
const PEER: &str = "peer";

impl Inner {
    /// The office says what time it is. It is the better witness: where it agrees, no other one counts.
    pub(crate) fn hear_office_clock(&mut self, theirs: i64) {
        let ahead = theirs.saturating_sub(self.now().0);
        let was = self.clock_says().is_some();
        // What the disk does not take is heard again with the next exchange.
        if ahead.abs() > CLOCK_DOUBT_MS {
            let _ = self.store.keep_local(CLOCK_DOUBT, &format!("{OFFICE} {ahead}"));
        } else {
            let _ = self.store.drop_local(CLOCK_DOUBT);
        }
        if was != self.clock_says().is_some() {
            self.stir();
        }
    }

    /// An entry came in that was written at this moment, by its writer's clock.
    pub(super) fn hear_peer_clock(&self, wall: i64) {
        let noted = self.store.local(CLOCK_DOUBT).ok().flatten();
        let weaker = noted.as_deref().and_then(|n| n.strip_prefix(PEER)).and_then(|n| n.trim().parse().ok());
        if wall.saturating_sub(self.now().0) > CLOCK_DOUBT_MS
            && (noted.is_none() || weaker.is_some_and(|before: i64| before < wall))
        {
            let _ = self.store.keep_local(CLOCK_DOUBT, &format!("{PEER} {wall}"));
        }
    }

    /// Whether this device's clock reads more than a minute less than when it wrote an entry itself.
    pub(super) fn went_back(&self, now: i64) -> bool {
        self.wrote_at.saturating_sub(now) > 60_000
    }

    /// What contradicts this device's clock now, and what to do; a sentence.
    pub(super) fn clock_says(&self) -> Option<String> {
        let (now, zone) = self.now();
        let noted = self.store.local(CLOCK_DOUBT).ok().flatten()?;
        let (who, at) = noted.split_once(' ')?;
        let at: i64 = at.parse().ok()?;
        let clock = |ms: i64| words::exact(ms, zone);
        if who == OFFICE {
            return Some(format!(
                "This phone's clock reads {}, the office's {}. Set the phone's clock, then exchange with the office.",
                clock(now),
                clock(now.saturating_add(at))
            ));
        }
        // Once this clock has caught up, nothing contradicts it any more.
        (at.saturating_sub(now) > CLOCK_DOUBT_MS).then(|| {
            format!(
                "This phone's clock reads {}; another phone wrote at {}. Compare both with a third clock, and set the wrong one.",
                clock(now),
                clock(at)
            )
        })
    }
}
