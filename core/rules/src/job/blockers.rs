//! What each step still lacks, worked out from the job.

use super::age::Moment;
use super::blocker::{OpenWay, PhotoLack};
use super::steps::Step;
use super::{Back, Blocker, Job, Source, Standing, SupplyName};
use crate::journal::EntryId;
use crate::journal::fact::{About, On, SourceKind};
use crate::point::{Lock, Point, uncovered};
use crate::prove::conditions::neutral_has_to_open;
use crate::prove::{Conductor, Role};

impl Job {
    /// What `step` still lacks.
    pub fn blockers(&self, step: Step) -> Vec<Blocker> {
        let mut blockers = Vec::new();
        match step {
            Step::Permit if self.permit.is_none() => blockers.push(Blocker::Permit),
            Step::Told if !self.told.iter().any(|t| t.about == About::Isolating) => blockers.push(Blocker::NobodyTold),
            Step::Barriers if self.barriers.is_empty() => blockers.push(Blocker::NoBarrier),
            Step::RotationFound if self.rotation_found.is_none() => blockers.push(Blocker::RotationBefore),
            // Once the work is done the circuits come on again; that does not undo that they were shed.
            Step::Shed => {
                let on = self.circuits.iter().filter(|c| c.off.is_none());
                blockers.extend(on.map(|c| Blocker::CircuitOn { label: c.label.clone() }));
            }
            Step::OpenUp
                // One that stayed off through a change of scope was off in this round too, also once it is back.
                if !self.covers.iter().any(|(_, _, back)| back.as_ref().is_none_or(|back| self.this_round(back)))
                    && !self.no_covers.as_ref().is_some_and(|(stamp, _)| self.this_round(stamp)) =>
            {
                blockers.push(Blocker::CoversUnsaid);
            }
            Step::Warn if !self.told.iter().any(|t| t.about == About::Energising && self.this_round(&t.stamp)) => {
                blockers.push(Blocker::NobodyWarned);
            }
            Step::Close => self.close_blockers(&mut blockers),
            Step::CircuitsOn => {
                let off = self.circuits.iter().filter(|c| c.off.is_some() && c.on.is_none());
                blockers.extend(off.map(|c| Blocker::CircuitOff { label: c.label.clone() }));
            }
            _ => {}
        }
        // After the work nothing of what came before it is asked any more.
        if self.finished.is_none() || step >= Step::CoversBack {
            blockers.extend(self.questions(Some(step)).into_iter().map(|(_, _, open)| Blocker::Question(open)));
        }
        // Whoever gave the isolation up is asked for nothing more before restoring.
        if self.given_up.is_some() && step < Step::CoversBack {
            return Vec::new();
        }
        if matches!(step, Step::Presence | Step::HandBack) {
            self.finding_blockers(&mut blockers);
        }
        if step == Step::Presence {
            self.presence_blockers(&mut blockers);
        }
        let mut way = |why: OpenWay| blockers.push(Blocker::Way(why));
        match step {
            Step::People if self.in_charge().is_none() => blockers.push(Blocker::NobodyInCharge),
            Step::Sources => self.source_blockers(&mut way),
            Step::Stored => self.stored_blockers(&mut way),
            Step::Points => self.point_blockers(&mut way),
            Step::Instruments => self.instrument_blockers(&mut blockers),
            Step::Circuits if self.circuits.is_empty() && self.no_circuits.is_none() => {
                blockers.push(Blocker::CircuitsUnsaid);
            }
            Step::Isolate(point) if self.finished.is_none() => self.isolate_blockers(point, &mut blockers),
            Step::Discharge if self.finished.is_none() => self.discharge_blockers(&mut way),
            Step::ProveBefore | Step::ProveReference | Step::DeadTest | Step::ProveAfter if self.finished.is_none() => {
                self.proof_blockers(step, &mut blockers);
            }
            Step::OpenUp if self.finished.is_none() => {
                // What stores energy is waited for with the covers on.
                if let (Some(known), false) = (&self.known, self.covers.iter().any(|(_, _, back)| back.is_none())) {
                    blockers.extend(self.still_charged(&known.now).into_iter().map(Blocker::Charged));
                }
            }
            Step::Work if self.finished.is_none() => {
                blockers.push(if self.working() { Blocker::AtWork } else { Blocker::NotAtWork });
            }
            Step::CoversBack => {
                self.earth_blockers(&mut blockers);
                let off = self.covers.iter().filter(|(.., back)| back.is_none());
                blockers.extend(off.map(|(_, what, _)| Blocker::CoverOff { what: what.clone() }));
            }
            Step::Unlock => self.unlock_blockers(&mut blockers),
            Step::HandBack if self.handed.is_none() => blockers.push(Blocker::NotHandedBack),
            _ => {}
        }
        blockers
    }

    /// Whether it is answered what sources of this kind there are. That there is none holds for the scope for which somebody looked.
    pub fn answered(&self, kind: SourceKind) -> bool {
        self.sources.iter().any(|s| s.kind == kind && (s.found.is_some() || self.this_round(&s.stamp)))
    }

    /// The same of stored energy.
    pub fn stored_answered(&self) -> bool {
        self.stored.iter().any(|s| s.found.is_some() || self.this_round(&s.stamp))
    }

    /// What was found on and is still open; but for what only follows a supply that others keep locked.
    fn close_blockers(&self, blockers: &mut Vec<Blocker>) {
        for point in self.points.iter().filter(|p| self.goes_back_on(p)) {
            let at = point.label.clone();
            match self.back(point) {
                Back::After(first) if first.iter().all(|p| self.held_by(p).is_some()) => {}
                Back::Beside(own, others) => blockers.push(Blocker::Beside { at, own, others }),
                _ => blockers.push(Blocker::StillOpen { at }),
            }
        }
    }

    pub(super) fn source_blockers(&self, way: &mut dyn FnMut(OpenWay)) {
        for kind in SourceKind::ALL {
            if !self.answered(kind) {
                way(OpenWay::SourceUnanswered(kind));
            }
        }
        for source in self.unanswered_sources() {
            way(OpenWay::SourceBeside { what: source.what.clone(), told_by: source.told_by.clone() });
        }
    }

    pub(super) fn stored_blockers(&self, way: &mut dyn FnMut(OpenWay)) {
        if !self.stored_answered() {
            way(OpenWay::StoredUnanswered);
        }
    }

    pub(super) fn point_blockers(&self, way: &mut dyn FnMut(OpenWay)) {
        // Together the points of the normal supply have to open every line; one that is left closed keeps the board live.
        if self.points.iter().any(|p| p.cuts.is_none()) {
            // A line at earth may be a solid link, once somebody has shown which it is.
            let supply = self.supply();
            let control = |c: &Conductor| c.role == Role::Control && self.own.iter().any(|own| own.name == c.name);
            let has_to = |c: &Conductor| (c.role.is_line() || control(c)) && supply.grounded() != Some(c.name.as_str());
            for line in self.conductors().into_iter().filter(|c| has_to(c) && !self.opens_it(c)) {
                way(OpenWay::LineClosed { line: line.name });
            }
        }
        if !self.points.iter().any(|p| p.cuts.is_none()) {
            way(OpenWay::NoNormalPoint);
        }
        // Such a point leaves what is worked on without earth.
        for point in &self.points {
            for conductor in self.conductors().into_iter().filter(|c| c.role.is_reference()) {
                if point.poles.contains(&conductor.name) {
                    way(OpenWay::OpensProtective { at: point.label.clone(), conductor: conductor.name });
                }
            }
        }
        if neutral_has_to_open(self.earthing) {
            let middle = |c: &Conductor| matches!(c.role, Role::Neutral | Role::MidPoint);
            for neutral in self.of(middle).filter(|n| !self.opens(n)) {
                way(OpenWay::NeutralClosed { neutral, earthing: self.earthing });
            }
        }
        for source in self.found().filter(|s| !self.stays_live_whole(s)) {
            let found = source.found.as_ref();
            let what = || found.map_or(SupplyName::Unnamed, |f| SupplyName::Source(f.what.clone()));
            let points = || self.points.iter().filter(|p| p.cuts == Some(source.stamp.id));
            if points().next().is_none() {
                way(OpenWay::SourceUncut { what: what() });
                continue;
            }
            for conductor in self.to_open(source) {
                if !points().any(|p| p.poles.contains(&conductor)) {
                    way(OpenWay::SourceConductor { conductor, what: what() });
                }
            }
        }
    }

    fn of(&self, which: impl Fn(&Conductor) -> bool) -> impl Iterator<Item = String> {
        self.conductors().into_iter().filter(move |c| which(c)).map(|c| c.name)
    }

    /// What the points of a found source have to open: its own terminals; or every line, and the neutral where it may not be earth or the
    /// source is changed over (IEC 60364-4-46, NEK 400 461.2; common practice). A PEN never.
    pub fn to_open(&self, source: &Source) -> Vec<String> {
        if !source.terminals.is_empty() {
            return source.terminals.clone();
        }
        // A supply that brings conductors of its own to a set of one's own.
        let own: Vec<String> = self.of_supply(source).map(|c| c.name.clone()).collect();
        if !own.is_empty() {
            return own;
        }
        let over = matches!(source.kind, SourceKind::Generator | SourceKind::SecondFeeder | SourceKind::Ups);
        let doubtful = neutral_has_to_open(self.earthing);
        let neutral = |c: &Conductor| matches!(c.role, Role::Neutral | Role::MidPoint) && (over || doubtful);
        let normal = |c: &Conductor| c.supply.is_none();
        self.of(|c| c.role.is_line() && normal(c)).chain(self.of(|c| neutral(c) && normal(c))).collect()
    }

    fn instrument_blockers(&self, blockers: &mut Vec<Blocker>) {
        // Whether a checked instrument is an indicator or a proving unit is known to the world of instruments, not to the job: the
        // gate lets only an indicator be used for readings. Here it counts that one is sound.
        let sound = self.instruments.iter().filter(|c| c.faults.is_empty()).count();
        if sound == 0 {
            blockers.push(Blocker::NoInstrument);
        } else if sound == 1 {
            blockers.push(Blocker::OneInstrument);
        }
    }

    fn isolate_blockers(&self, point: EntryId, blockers: &mut Vec<Blocker>) {
        let Some(point) = self.point(point) else { return };
        let at = || point.label.clone();
        if point.opened.is_none() {
            blockers.push(Blocker::Way(OpenWay::NotOpen { at: at() }));
            return;
        }
        if let Some((_, job)) = self.closed_beside(point.stamp.id) {
            blockers.push(Blocker::Way(OpenWay::ClosedBeside { at: at(), job: job.map(str::to_owned) }));
        }
        let on: Vec<&Lock> =
            self.locks_on().filter(|l| matches!(l.on, On::Point(id) if id == point.stamp.id)).collect();
        if on.is_empty() && !point.lockable {
            blockers.push(Blocker::NotSecured { at: at() });
        } else if on.is_empty() {
            blockers.push(Blocker::Way(OpenWay::NoLock { at: at() }));
        } else {
            for person in uncovered(point, &self.people(), &self.locks) {
                blockers.push(Blocker::NoOwnLock { person, at: at() });
            }
        }
        if point.sign.is_none() {
            blockers.push(Blocker::NoSign { at: at() });
        }
        blockers.extend(self.photo_lack(point).map(Blocker::Photo));
    }

    /// What the photos of a point that were taken since it was opened do not show yet.
    pub fn photo_lack(&self, point: &Point) -> Option<PhotoLack> {
        let (at, opened) = (point.label.clone(), point.opened.as_ref()?);
        // A photo shows the locks that are on: of a point that stayed open and is locked anew, an earlier one shows others.
        let locked = self.locks_on().filter(|l| l.on == On::Point(point.stamp.id)).map(|l| l.stamp.clock).min();
        let since = locked.map_or(opened.clock, |locked| locked.max(opened.clock));
        let photos: Vec<_> = self.photos_of(point.stamp.id).filter(|p| p.stamp.clock > since).collect();
        let tagged = point.tags_now().next().is_some();
        if photos.is_empty() {
            Some(PhotoLack::Lock { at })
        } else if tagged && !photos.iter().any(|p| point.tags_now().any(|t| p.tags.contains(&t.tag))) {
            Some(PhotoLack::Tag { at })
        } else {
            None
        }
    }

    fn proof_blockers(&self, step: Step, blockers: &mut Vec<Blocker>) {
        let standing = self.standing();
        match (step, &standing) {
            (_, Standing::Proved { .. }) => {}
            (Step::ProveAfter, Standing::Unsigned) => blockers.push(Blocker::Unsigned),
            (_, Standing::Unsigned) => {}
            (Step::ProveBefore, Standing::UnderWay { .. } | Standing::Indication { .. }) => {}
            (Step::ProveBefore, Standing::Void { why }) => blockers.push(Blocker::Void(why.clone())),
            (Step::ProveBefore, _) => blockers.push(Blocker::IndicatorUnproved),
            (Step::ProveReference, _) if !self.run().is_some_and(|r| r.reference_holds()) => {
                blockers.push(Blocker::ReferenceUnproved);
            }
            (Step::DeadTest, Standing::Indication { readings }) => {
                blockers.extend(readings.iter().cloned().map(Blocker::Indication));
            }
            (Step::DeadTest, Standing::UnderWay { .. }) => {
                if let (Some(run), Some(known)) = (self.run(), &self.known) {
                    for test in self.untested(run, &known.now) {
                        let direct = self.lacks_direct(run, &test, &known.now);
                        blockers.push(Blocker::NotTested { first: test.first, then: test.then, direct });
                    }
                }
            }
            (Step::DeadTest, _) => blockers.push(Blocker::NothingTested),
            (Step::ProveAfter, _) => blockers.push(Blocker::NotProvedAgain),
            _ => {}
        }
    }

    /// Never passed on time alone: the label's time has to be over, and then a reading of direct voltage has to show nothing.
    pub(super) fn discharge_blockers(&self, way: &mut dyn FnMut(OpenWay)) {
        let run = self.run();
        for (id, what, seconds) in self.direct() {
            let read = run.and_then(|r| r.discharge.iter().rev().find(|(_, of, _)| *of == id));
            match read {
                None => way(OpenWay::DirectUnread { what, seconds }),
                Some((_, _, reading)) if self.shows_voltage(*reading, true) => {
                    way(OpenWay::DirectShows { what, reading: *reading });
                }
                Some((stamp, ..)) if self.wait_left(seconds, &Moment::of(stamp)) > 0 => {
                    way(OpenWay::DirectEarly { what, seconds });
                }
                Some(_) => {}
            }
        }
    }

    fn unlock_blockers(&self, blockers: &mut Vec<Blocker>) {
        let on = self.locks_on();
        blockers.extend(on.map(|l| Blocker::LockOn { owner: l.owner, place: self.lock_label(l.on) }));
        let signs = self.points.iter().filter(|p| p.sign.is_some());
        blockers.extend(signs.map(|p| Blocker::SignUp { at: p.label.clone() }));
    }
}
