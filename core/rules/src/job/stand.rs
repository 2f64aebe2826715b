//! What stands proved: every run of the job, what ended them, and what is known beside the job.
//!
//! Promises: whatever is unknown, contradictory or too old comes out as "treat as live"; no run proves anything that whoever began it did
//! not know enough for. Start at [`Job::standing`].

use super::age::{Moment, oldest, shortest};
use super::blocker::{Charged, OpenWay};
use super::known::{Known, SiteKind, SiteSource};
use super::trouble::{Trouble, TroubleKind};
use super::{Job, Standing, Void};
use crate::journal::fact::{Found, On, SourceKind, SourceRef};
use crate::journal::{EntryId, Stamp};
use crate::names::alike;
use crate::point::uncovered;
use crate::prove::conditions::{Unmet, unmet};
use crate::prove::{Met, Proof, Reading, Run, Taken, Test};

/// The site's network asks for the work zone within so many milliseconds. Our rule, no source.
const ZONE_WITHIN_MS: i64 = 3_600_000;

impl Job {
    /// Whether something that a newer version wrote, in this job or beside it, cannot be read here.
    pub fn has_newer(&self) -> bool {
        !self.newer.is_empty() || self.known.as_ref().is_some_and(|known| known.newer)
    }

    /// What stands proved. Without [`Job::known`] nothing does.
    pub fn standing(&self) -> Standing {
        let readings: Vec<Met> = self.unexplained().filter_map(voltage).cloned().collect();
        if !readings.is_empty() {
            return Standing::Indication { readings };
        }
        if let Some(trouble) = self.unexplained().next() {
            return Standing::Void { why: Void::Trouble(trouble.kind.clone()) };
        }
        let Some(run) = self.run() else { return Standing::NotBegun };
        if self.has_newer() {
            return Standing::Void { why: Void::Newer };
        }
        if let Some(why) = self.ended(run) {
            return Standing::Void { why };
        }
        let at = self.known.as_ref().map_or_else(|| Moment::of(&run.before), |known| known.now);
        let missing = self.untested(run, &at);
        if !missing.is_empty() {
            return Standing::UnderWay { missing: missing.len() };
        }
        let since = match run.after() {
            Some(Proof { stamp, works: true, .. }) if self.whole(run) => *stamp,
            Some(_) if self.unsigned(run) => return Standing::Unsigned,
            _ => return Standing::UnderWay { missing: 0 },
        };
        if self.second_run_lacks(&|run| self.whole(run)) {
            return Standing::Void { why: Void::TestTwice };
        }
        let Some(known) = &self.known else {
            return Standing::Void { why: Void::HeldAgainstNothing };
        };
        match self.open_way().map(Void::Way).or_else(|| self.beside(run, known)) {
            Some(why) => Standing::Void { why },
            None => Standing::Proved { since },
        }
    }

    /// What has ended this run, or what whoever began it did not know.
    fn ended(&self, run: &Run) -> Option<Void> {
        let over = |stamp: &Stamp| stamp.clock >= run.before.clock || !run.knew(stamp);
        if let Some(void) = self.voided.iter().find(|v| over(&v.stamp)) {
            return Some(Void::Ended(void.why.clone()));
        }
        if let Some(trouble) = self.unknown_to(run) {
            return Some(Void::TroubleUnknown(trouble.kind.clone()));
        }
        self.instrument_failed(run)
    }

    /// Whether an instrument that this run rests on failed, in any job, and was not checked again before it by somebody who knew.
    fn instrument_failed(&self, run: &Run) -> Option<Void> {
        let one = |a: EntryId, b: EntryId| self.is_one_instrument(a, b);
        let used = |id: EntryId| {
            one(id, run.indicator) || run.proofs.iter().any(|p| p.unit().is_some_and(|unit| one(id, unit)))
        };
        let at = Moment::of(&run.before);
        let checked = |id: EntryId, failure: &Stamp| self.checked_since(id, failure.id, &at, &|check| run.knew(check));
        let beside = self.known.iter().flat_map(|k| &k.failures);
        let failed = self.failures.iter().chain(beside).find(|(id, failure)| used(*id) && !checked(*id, failure));
        failed.map(|(id, _)| if one(*id, run.indicator) { Void::IndicatorUnfit } else { Void::ProverUnfit })
    }

    /// Whether this run shows by itself all that its plan demands, without indication: the conditions are those of `stillbar judge`.
    pub fn whole(&self, run: &Run) -> bool {
        run.indicator_works()
            && !run.readings.iter().any(|t| self.shows(t))
            && unmet(&self.case_of(run, None)).is_empty()
            && !self.unsigned(run)
    }

    /// Whether a reading counts as an indication by the limit that holds now.
    pub fn shows(&self, taken: &Taken) -> bool {
        self.shows_voltage(taken.reading, taken.dc)
    }

    /// Whether a reading counts as an indication by the limit that holds now, in the range for direct voltage or not.
    pub fn shows_voltage(&self, reading: Reading, dc: bool) -> bool {
        let limits = self.limits();
        reading.indicates(limits.of(dc))
    }

    /// Whether a learner's run still waits for somebody who does not learn.
    pub fn unsigned(&self, run: &Run) -> bool {
        run.by_learner && run.signed.as_ref().is_none_or(|(_, seen)| *seen < run.proofs.len())
    }

    /// The tests without a reading that counts, or that will count if the indicator is proved again in time: `at` is now.
    pub fn untested(&self, run: &Run, at: &Moment) -> Vec<Test> {
        let unread = self.unread(run, at);
        self.plan().into_iter().filter(|test| unread.iter().any(|(pair, _)| is_pair(test, pair))).collect()
    }

    /// Whether a pair still lacks its reading of direct voltage, and nothing else.
    pub fn lacks_direct(&self, run: &Run, test: &Test, at: &Moment) -> bool {
        let unread = self.unread(run, at);
        let of = |direct: bool| unread.iter().any(|(pair, dc)| *dc == direct && is_pair(test, pair));
        of(true) && !of(false)
    }

    /// The pairs that the conditions find unread, and whether direct voltage is meant.
    fn unread(&self, run: &Run, at: &Moment) -> Vec<([String; 2], bool)> {
        let all = unmet(&self.case_of(run, Some(at))).into_iter();
        all.filter_map(|unmet| if let Unmet::PairNotRead { pair, dc } = unmet { Some((pair, dc)) } else { None })
            .collect()
    }

    pub(super) fn counts(&self, run: &Run, taken: &Taken, pending: Option<&Moment>) -> bool {
        let Some(since) = taken.since else { return false };
        let most = i64::from(self.rules().between_proofs) * 60_000;
        let near = |to: &Moment| {
            run.proofs.get(since).is_some_and(|p| p.works && self.oldest(&p.stamp, to).is_some_and(|ms| ms <= most))
        };
        match (taken.until, pending) {
            (Some(until), _) => {
                run.proofs.get(until).is_some_and(|p| near(&Moment::of(&p.stamp)))
                    && run.proofs[since..=until.max(since)].iter().all(|p| p.works)
            }
            (None, Some(now)) => near(now),
            (None, None) => false,
        }
    }

    /// What the site allows, and the rules that the job was opened with.
    pub fn rules(&self) -> super::known::Rules {
        self.with_company(self.known.as_ref().map(|k| k.rules).unwrap_or_default())
    }

    /// Where the isolation does not hold now, by this job and by what is known of others.
    pub fn open_way(&self) -> Option<OpenWay> {
        if self.points.is_empty() {
            return Some(OpenWay::NoPoint);
        }
        if let Some(open) = self.stopped_by() {
            return Some(OpenWay::Stopped(open));
        }
        let mut blockers = Vec::new();
        self.source_blockers(&mut |why| blockers.push(why));
        self.stored_blockers(&mut |why| blockers.push(why));
        self.point_blockers(&mut |why| blockers.push(why));
        self.discharge_blockers(&mut |why| blockers.push(why));
        if !blockers.is_empty() {
            return Some(blockers.swap_remove(0));
        }
        let people = self.people();
        self.points.iter().find_map(|p| {
            let at = || p.label.clone();
            if p.opened.is_none() {
                Some(OpenWay::NotOpen { at: at() })
            } else if let Some((_, job)) = self.closed_beside(p.stamp.id) {
                Some(OpenWay::ClosedBeside { at: at(), job: job.map(str::to_owned) })
            } else if !self.locks_on().any(|l| l.on == On::Point(p.stamp.id)) {
                Some(OpenWay::NoLock { at: at() })
            } else if !uncovered(p, &people, &self.locks).is_empty() {
                Some(OpenWay::NotAllLocked { at: at() })
            } else {
                None
            }
        })
    }

    /// A closing of this point in another job that whoever opened it here did not know of, and that job's title if it is known.
    pub fn closed_beside(&self, point: EntryId) -> Option<(&Stamp, Option<&str>)> {
        /// Clocks are off by less than this, in milliseconds; a closing that lies further back is of another day. Our rule, no source.
        const APART_MS: i64 = 3 * 24 * 3_600_000;
        let at = self.point(point)?;
        let opened = at.opened.as_ref()?;
        let known = self.known.as_ref()?;
        let doubt = |closing: &Stamp| {
            !at.knowing.contains(&closing.id) && closing.clock.0 > opened.clock.0.saturating_sub(APART_MS)
        };
        let found = known.closings.iter().find(|(p, closing, _)| *p == point && doubt(closing));
        found.map(|(_, closing, job)| (closing, job.as_deref()))
    }

    /// What is known beside the job and keeps its proof from standing.
    fn beside(&self, run: &Run, known: &Known) -> Option<Void> {
        if known.forgot || known.not_before.is_some_and(|at| run.before.clock <= at) {
            return Some(Void::Forgotten);
        }
        if let Some(source) = self.unanswered_sources().first() {
            return Some(Void::SourceKnown { what: source.what.clone(), told_by: source.told_by.clone() });
        }
        let answers = |s: &SiteSource| self.elsewhere.iter().filter(|e| e.source == s.source).collect::<Vec<_>>();
        let unknown = known.sources.iter().find(|s| {
            let said = answers(s);
            !said.is_empty() && !said.iter().any(|e| run.knew(&e.stamp))
        });
        if let Some(source) = unknown {
            return Some(Void::SourceFound { what: source.what.clone() });
        }
        if let Some(why) = &known.against {
            return Some(Void::Network { why: why.clone() });
        }
        if self.zone_late(run, known) {
            return Some(Void::ZoneUnsaid);
        }
        for aside in &known.aside {
            let mut answers = self.aside_answered.iter().filter(|(_, entry)| *entry == aside.entry);
            if !answers.any(|(stamp, _)| run.knew(stamp)) {
                return Some(Void::Aside { says: aside.says.clone() });
            }
        }
        if !self.lights_in_time(known.lights_from.get(&run.indicator)) {
            return Some(Void::LightsLate);
        }
        let named = |proof: &Proof| proof.is_named() && proof.unit().is_none_or(|unit| known.units.contains(&unit));
        if !run.proofs.iter().all(named) {
            return Some(Void::ProverUnknown);
        }
        if !self.checked_this_shift(run.indicator, &Moment::of(&run.before)) {
            return Some(Void::NotThisShift);
        }
        match self.age(run, known) {
            None => Some(Void::ClockDoubt),
            Some(left) if left <= 0 => Some(Void::TooOld),
            Some(_) => None,
        }
    }

    /// Milliseconds for which the proof of this run still holds; `None` if no clock can be believed.
    fn age(&self, run: &Run, known: &Known) -> Option<i64> {
        Some(i64::from(self.with_company(known.rules).proof_holds) * 60_000 - known.oldest(&run.before, &known.now)?)
    }

    /// Milliseconds for which the proof that stands still holds.
    pub fn proof_left(&self) -> Option<i64> {
        self.age(self.run()?, self.known.as_deref()?)
    }

    /// Milliseconds until the indicator has to be proved again, while a test is under way.
    pub fn test_left(&self) -> Option<i64> {
        let (run, known) = (self.run()?, self.known.as_ref()?);
        let most = i64::from(self.with_company(known.rules).between_proofs) * 60_000;
        Some(most - known.oldest(&run.proofs.last()?.stamp, &known.now).unwrap_or(i64::MAX / 2))
    }

    /// How old something is, as far as is known here: see [`Known::oldest`].
    fn oldest(&self, from: &Stamp, to: &Moment) -> Option<i64> {
        self.known.as_ref().map_or_else(|| oldest(from, to), |known| known.oldest(from, to))
    }

    /// Sources that are known at the site and that this job has not answered for.
    pub fn unanswered_sources(&self) -> Vec<&SiteSource> {
        let known = self.known.iter().flat_map(|k| &k.sources);
        let named = |source: &SiteSource| {
            // The network may know it by another place; what is written on it tells.
            let place = |at: &str| matches!(source.source, SourceRef::Drawn(_)) || alike(at, &source.at);
            let is = |f: &Found| alike(&f.what, &source.what) && place(&f.at);
            let mut kept = self.stored.iter().filter_map(|s| s.found.as_ref());
            let own = |kind: Option<SourceKind>| {
                self.found().any(|own| kind.is_none_or(|k| k == own.kind) && own.found.as_ref().is_some_and(is))
            };
            self.elsewhere.iter().any(|e| e.source == source.source)
                || match source.kind {
                    SiteKind::Stored(..) => kept.any(is),
                    SiteKind::Source(kind) => own(Some(kind)),
                    SiteKind::Unsaid => own(None),
                }
        };
        known.filter(|source| !named(source)).collect()
    }

    /// Whether the site's network is there for an hour and nobody has said what is worked on in it.
    fn zone_late(&self, run: &Run, known: &Known) -> bool {
        let Some(drawn) = &known.network_since else { return false };
        // A network that was there before the job asks from the job's beginning on.
        let from = if drawn.wall > self.stamp.wall { drawn } else { &self.stamp };
        match &self.zone_named {
            None => known.oldest(from, &known.now).is_none_or(|ms| ms > ZONE_WITHIN_MS),
            Some(named) => {
                known.oldest(from, &Moment::of(named)).is_none_or(|ms| ms > ZONE_WITHIN_MS) && !run.knew(named)
            }
        }
    }

    /// Whether an instrument was found sound in this job within a shift before this moment, and since the shift last changed.
    pub fn checked_this_shift(&self, instrument: EntryId, at: &Moment) -> bool {
        let Some(check) = self.checks.iter().rev().find(|c| c.instrument == instrument && c.stamp.clock <= at.clock)
        else {
            return false;
        };
        check.faults.is_empty() && self.in_this_shift(&check.stamp, at)
    }

    /// Whether a check counts at this moment: it was within a shift before, and since the shift last changed.
    fn in_this_shift(&self, check: &Stamp, at: &Moment) -> bool {
        let most = i64::from(super::known::PROOF_HOLDS) * 60_000;
        self.oldest(check, at).is_some_and(|ms| ms <= most)
            && self.shift_taken.as_ref().is_none_or(|taken| taken.clock < check.clock || taken.clock > at.clock)
    }

    /// Whether an instrument that failed was found sound by somebody who knew of that failure, in any job, by a check that counts at this
    /// moment. `had`: whether a check of this job was known to whoever rests on it.
    pub fn checked_since(
        &self,
        instrument: EntryId,
        failure: EntryId,
        at: &Moment,
        had: &dyn Fn(&Stamp) -> bool,
    ) -> bool {
        let one = |checked: EntryId| self.is_one_instrument(checked, instrument);
        let here = self.checks.iter().filter(|c| one(c.instrument) && c.faults.is_empty() && had(&c.stamp));
        let beside = self
            .known
            .iter()
            .flat_map(|k| &k.checks)
            .filter(|(checked, stamp, _)| one(*checked) && stamp.clock < at.clock);
        let mut all = here.map(|c| (&c.stamp, &c.knowing)).chain(beside.map(|(_, stamp, knowing)| (stamp, knowing)));
        all.any(|(check, knowing)| knowing.contains(&failure) && self.in_this_shift(check, at))
    }

    /// How many milliseconds of the waiting time of something that stores energy are left at this moment.
    pub fn wait_left(&self, seconds: u32, at: &Moment) -> i64 {
        let opened = self.points.iter().filter_map(|p| p.opened.as_ref());
        // Another device's clock may be ahead of this one's: the wait is no longer than the opening is known here.
        let arrived = |opened: &Stamp| {
            let known = self.known.as_ref().filter(|k| k.now.device == at.device && opened.device != at.device)?;
            known.arrivals.get(&opened.id)
        };
        let since = |opened: &Stamp| {
            let told = shortest(opened, at);
            arrived(opened).map_or(told, |arrived| shortest(arrived, at).min(told))
        };
        let waited = opened.map(since).min().unwrap_or(0);
        i64::from(seconds) * 1000 - waited
    }

    /// What stores energy and has not been waited for at this moment.
    pub fn still_charged(&self, at: &Moment) -> Vec<Charged> {
        let charged = self.direct().into_iter().filter(|(_, _, seconds)| self.wait_left(*seconds, at) > 0);
        charged
            .map(|(_, what, seconds)| {
                let left_min = (self.wait_left(seconds, at) + 59_999) / 60_000;
                Charged { what, seconds, left_min }
            })
            .collect()
    }
}

fn is_pair(test: &Test, [a, b]: &[String; 2]) -> bool {
    (test.first == *a && test.then == *b) || (test.first == *b && test.then == *a)
}

fn voltage(trouble: &Trouble) -> Option<&Met> {
    match &trouble.kind {
        TroubleKind::Voltage(met) => Some(met),
        _ => None,
    }
}
