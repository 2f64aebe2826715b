//! What each step still lacks, in sentences, worked out from the job.

use super::age::Moment;
use super::steps::{Lack, Step};
use super::{Back, Job, Source};
use crate::journal::EntryId;
use crate::journal::fact::{About, On, SourceKind};
use crate::point::{Lock, Point, uncovered};
use crate::prove::conditions::neutral_has_to_open;
use crate::prove::{Role, Standing};

impl Job {
    /// What `step` still lacks.
    pub fn lacks(&self, step: Step, name: &dyn Fn(EntryId) -> String) -> Vec<Lack> {
        let mut lacks = Vec::new();
        let mut soft = |text: String| lacks.push(Lack { text, firm: false });
        match step {
            Step::Permit if self.permit.is_none() => soft("The permit reference, or why there is none.".into()),
            Step::Told if !self.told.iter().any(|t| t.about == About::Isolating) => {
                soft("Nobody has been told that the supply goes off.".into());
            }
            Step::Barriers if self.barriers.is_empty() => soft("No barrier or danger sign is recorded.".into()),
            Step::RotationFound if self.rotation_found.is_none() => {
                soft("Which way the lines turn now, or why it was not read.".into());
            }
            Step::Shed => self.shed(&mut soft),
            Step::OpenUp
                // One that stayed off through a change of scope was off in this round too, also once it is back.
                if !self.covers.iter().any(|(_, _, back)| back.as_ref().is_none_or(|back| self.this_round(back)))
                    && !self.no_covers.as_ref().is_some_and(|(stamp, _)| self.this_round(stamp)) =>
            {
                soft("Which covers came off, or that none has to.".into());
            }
            Step::Warn if !self.told.iter().any(|t| t.about == About::Energising && self.this_round(&t.stamp)) => {
                soft("Nobody has been warned that the supply comes back.".into());
            }
            Step::Close => self.close_lacks(&mut soft),
            Step::CircuitsOn => self.circuits.iter().filter(|c| c.off.is_some() && c.on.is_none()).for_each(|c| {
                soft(format!("{} is still off.", c.label));
            }),
            _ => {}
        }
        // Whoever gave the isolation up is asked for nothing more before restoring.
        if self.given_up.is_some() && step < Step::CoversBack {
            return Vec::new();
        }
        if matches!(step, Step::Presence | Step::HandBack) {
            self.finding_lacks(&mut lacks);
        }
        if step == Step::Presence {
            self.presence_lacks(&mut lacks);
        }
        let mut firm = |text: String| lacks.push(Lack { text, firm: true });
        match step {
            Step::People if self.in_charge().is_none() => firm("Nobody is named who answers for the isolation.".into()),
            Step::Sources => self.source_lacks(&mut firm),
            Step::Stored if !self.stored_answered() => firm("Stored energy: not answered.".into()),
            Step::Points => self.point_lacks(&mut firm),
            Step::Instruments => self.instrument_lacks(&mut lacks),
            Step::Circuits if self.circuits.is_empty() && self.no_circuits.is_none() => {
                firm("The circuits to shed, or that there are none.".into());
            }
            Step::Isolate(point) if self.finished.is_none() => self.isolate_lacks(point, name, &mut lacks),
            Step::Discharge if self.finished.is_none() => self.discharge_lacks(&mut firm),
            Step::ProveBefore | Step::ProveReference | Step::DeadTest | Step::ProveAfter if self.finished.is_none() => {
                self.proof_lacks(step, &mut firm);
            }
            Step::OpenUp if self.finished.is_none() => {
                // What stores energy is waited for with the covers on.
                if let (Some(known), false) = (&self.known, self.covers.iter().any(|(_, _, back)| back.is_none())) {
                    self.still_charged(&known.now).into_iter().for_each(&mut firm);
                }
            }
            Step::Work if self.finished.is_none() => firm(if self.working() {
                "The work is not finished.".into()
            } else {
                "Work has not begun under a proof that stands.".into()
            }),
            Step::CoversBack => self.covers.iter().filter(|(.., back)| back.is_none()).for_each(|(_, what, _)| {
                firm(format!("Not back yet: {what}."));
            }),
            Step::Unlock => self.unlock_lacks(name, &mut lacks),
            Step::HandBack if self.handed.is_none() => firm("The installation is not handed back.".into()),
            _ => {}
        }
        lacks
    }

    fn shed(&self, soft: &mut dyn FnMut(String)) {
        // Once the work is done the circuits come on again; that does not undo that they were shed.
        for circuit in self.circuits.iter().filter(|c| c.off.is_none()) {
            soft(format!("{} is not switched off yet.", circuit.label));
        }
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
    fn close_lacks(&self, soft: &mut dyn FnMut(String)) {
        for point in self.points.iter().filter(|p| self.goes_back_on(p)) {
            let at = &point.label;
            match self.back(point) {
                Back::After(first) if first.iter().all(|p| self.held_by(p).is_some()) => {}
                Back::Beside(own, others) => soft(format!(
                    "{at} is still open. It brings {own} beside {}: say why, or leave it open.",
                    others.join(" and ")
                )),
                _ => soft(format!("{at} is still open.")),
            }
        }
    }

    pub(super) fn source_lacks(&self, firm: &mut dyn FnMut(String)) {
        for kind in SourceKind::ALL {
            if !self.answered(kind) {
                firm(format!("{}: not answered.", kind.word()));
            }
        }
        for source in self.unanswered_sources() {
            firm(format!(
                "{}, known at this site ({}): say whether it reaches this work.",
                source.what, source.told_by
            ));
        }
    }

    pub(super) fn point_lacks(&self, firm: &mut dyn FnMut(String)) {
        // Together the points of the normal supply have to open every line; one that is left closed keeps the board live.
        if self.points.iter().any(|p| p.cuts.is_none()) {
            for line in self.conductors().into_iter().filter(|c| c.role == Role::Line && !self.opens(&c.name)) {
                firm(format!("{} of the normal supply is opened by no point.", line.name));
            }
        }
        if !self.points.iter().any(|p| p.cuts.is_none()) {
            firm("No point cuts off the normal supply yet.".into());
        }
        if neutral_has_to_open(self.earthing) {
            for neutral in self.of_role(Role::Neutral).filter(|n| !self.opens(n)) {
                firm(format!(
                    "{neutral} of the normal supply is opened by no point; earthing {}: it has to be.",
                    self.earthing.word()
                ));
            }
        }
        for source in self.found() {
            let what = source.found.as_ref().map_or("A source", |f| f.what.as_str());
            let points = || self.points.iter().filter(|p| p.cuts == Some(source.stamp.id));
            if points().next().is_none() {
                firm(format!("{what}: found, and no point cuts it off yet."));
                continue;
            }
            for conductor in self.to_open(source) {
                if !points().any(|p| p.poles.contains(&conductor)) {
                    firm(format!("{conductor} of {what} is opened by no point."));
                }
            }
        }
    }

    fn of_role(&self, role: Role) -> impl Iterator<Item = String> {
        self.conductors().into_iter().filter(move |c| c.role == role).map(|c| c.name)
    }

    /// What the points of a found source have to open: its own terminals; or every line, and the neutral where it may not be earth or the
    /// source is changed over (IEC 60364-4-46, NEK 400 461.2; common practice). A PEN never.
    pub fn to_open(&self, source: &Source) -> Vec<String> {
        if !source.terminals.is_empty() {
            return source.terminals.clone();
        }
        let over = matches!(source.kind, SourceKind::Generator | SourceKind::SecondFeeder | SourceKind::Ups);
        let doubtful = neutral_has_to_open(self.earthing);
        let neutral = self.of_role(Role::Neutral).filter(|_| over || doubtful);
        self.of_role(Role::Line).chain(neutral).collect()
    }

    fn instrument_lacks(&self, lacks: &mut Vec<Lack>) {
        // Whether a checked instrument is an indicator or a proving unit is known to the world of instruments, not to the job: the
        // gate lets only an indicator be used for readings. Here it counts that one is sound.
        let sound = self.instruments.iter().filter(|c| c.faults.is_empty()).count();
        if sound == 0 {
            lacks.push(Lack { text: "No voltage indicator was found fit for use.".into(), firm: true });
        } else if sound == 1 {
            let text =
                "Only one instrument was found fit for use: both the indicator and what proves it are needed, or say \
                        that a known live source proves it."
                    .into();
            lacks.push(Lack { text, firm: false });
        }
    }

    fn isolate_lacks(&self, point: EntryId, name: &dyn Fn(EntryId) -> String, lacks: &mut Vec<Lack>) {
        let Some(point) = self.point(point) else { return };
        let at = &point.label;
        let mut lack = |firm: bool, text: String| lacks.push(Lack { text, firm });
        if point.opened.is_none() {
            lack(true, format!("{at} is not open."));
            return;
        }
        if let Some((_, job)) = self.closed_beside(point.stamp.id) {
            lack(true, format!("{at} was closed for another job: {job}. See that it is open, and say so."));
        }
        let on: Vec<&Lock> =
            self.locks_on().filter(|l| matches!(l.on, On::Point(id) if id == point.stamp.id)).collect();
        if on.is_empty() && !point.lockable {
            lack(true, format!("{at} is not secured."));
        } else if on.is_empty() {
            lack(true, format!("No lock is on {at}."));
        } else {
            for person in uncovered(point, &self.people(), &self.locks) {
                lack(true, format!("{} has no lock of their own on {at}.", name(person)));
            }
        }
        if point.sign.is_none() {
            lack(false, format!("No caution sign hangs at {at}."));
        }
        if let Some(text) = self.photo_lack(point) {
            lack(false, text);
        }
    }

    /// What the photos of a point that were taken since it was opened do not show yet.
    pub fn photo_lack(&self, point: &Point) -> Option<String> {
        let (at, opened) = (&point.label, point.opened.as_ref()?);
        // A photo shows the locks that are on: of a point that stayed open and is locked anew, an earlier one shows others.
        let locked = self.locks_on().filter(|l| l.on == On::Point(point.stamp.id)).map(|l| l.stamp.clock).min();
        let since = locked.map_or(opened.clock, |locked| locked.max(opened.clock));
        let photos: Vec<_> = self.photos_of(point.stamp.id).filter(|p| p.stamp.clock > since).collect();
        let tagged = point.tags_now().next().is_some();
        if photos.is_empty() {
            Some(format!("No photo shows the lock and label on {at}."))
        } else if tagged && !photos.iter().any(|p| point.tags_now().any(|t| p.tags.contains(&t.tag))) {
            Some(format!(
                "No photo shows the tag of {at}: lock, label and tag in one picture, or the tag in a second one."
            ))
        } else {
            None
        }
    }

    fn proof_lacks(&self, step: Step, firm: &mut dyn FnMut(String)) {
        let standing = self.standing();
        match (step, &standing) {
            (_, Standing::Proved { .. }) => {}
            (Step::ProveAfter, Standing::Unsigned) => {
                firm("Tested under supervision: somebody on the job who is not under supervision signs it.".into());
            }
            (_, Standing::Unsigned) => {}
            (Step::ProveBefore, Standing::UnderWay { .. } | Standing::Indication { .. }) => {}
            (Step::ProveBefore, Standing::Void { why }) => {
                firm(format!("The last proof is void. {why} Prove the indicator and test again."));
            }
            (Step::ProveBefore, _) => firm("The indicator is not proved.".into()),
            (Step::ProveReference, _) if !self.run().is_some_and(|r| r.reference_holds()) => {
                firm("It is not shown that the protective conductor here is earth.".into());
            }
            (Step::DeadTest, Standing::Indication { readings }) => {
                for met in readings {
                    firm(format!("{}: {}. Treat as live.", met.at, met.reading.word()));
                }
            }
            (Step::DeadTest, Standing::UnderWay { .. }) => {
                if let (Some(run), Some(known)) = (self.run(), &self.known) {
                    for test in self.untested(run, &known.now) {
                        let dc = if self.lacks_direct(run, &test, &known.now) { " for direct voltage" } else { "" };
                        firm(format!("{} – {}: not tested{dc}.", test.first, test.then));
                    }
                }
            }
            (Step::DeadTest, _) => firm("No pair is tested under a proof that stands.".into()),
            (Step::ProveAfter, _) => firm("The indicator is not proved again after the tests.".into()),
            _ => {}
        }
    }

    /// Never passed on time alone: the label's time has to be over, and then a reading of direct voltage has to show nothing.
    pub(super) fn discharge_lacks(&self, firm: &mut dyn FnMut(String)) {
        let run = self.run();
        for (id, what, seconds) in self.direct() {
            let read = run.and_then(|r| r.discharge.iter().rev().find(|(_, of, _)| *of == id));
            match read {
                None => firm(format!("{what}: no reading of direct voltage. Wait {}, then read.", waiting(seconds))),
                Some((_, _, reading)) if self.shows_voltage(*reading, true) => {
                    firm(format!("{what}: {}. Treat as live, wait, and read again.", reading.word()));
                }
                Some((stamp, ..)) if self.wait_left(seconds, &Moment::of(stamp)) > 0 => {
                    firm(format!("{what}: read before the {} on its label were over. Read again.", waiting(seconds)));
                }
                Some(_) => {}
            }
        }
    }

    fn unlock_lacks(&self, name: &dyn Fn(EntryId) -> String, lacks: &mut Vec<Lack>) {
        for lock in self.locks_on() {
            let text = format!("The lock of {} is still on {}.", name(lock.owner), self.lock_place(lock.on));
            lacks.push(Lack { text, firm: true });
        }
        for point in self.points.iter().filter(|p| p.sign.is_some()) {
            lacks.push(Lack { text: format!("The sign is still at {}.", point.label), firm: false });
        }
    }
}

/// A waiting time in words.
pub(crate) fn waiting(seconds: u32) -> String {
    match seconds {
        0 => "as the label says".into(),
        s if s % 60 == 0 => format!("{} min", s / 60),
        s => format!("{s} s"),
    }
}
