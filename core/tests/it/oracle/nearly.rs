//! How a job goes in which somebody slips.

use stillbar_core::journal::fact::*;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::point::PointKind;
use stillbar_core::prove::{Earthing, Reading, System};

use super::asked::{WORDS, answered};
use super::known::{HOUR, Known, MINUTE};
use super::plan::{Next, check};
use super::promise::may_stand;
use super::slips::Slip;
use super::world::World;

/// Whose phone is looked at, and the job in which somebody slips.
pub const HERE: usize = 0;
pub const JOB: usize = 1;
/// Whose phone asks no gate: what it wrote has to be judged by who hears of it.
pub const LOOSE: usize = 2;
/// Who does something else meanwhile, and the job that may be about.
pub const THERE: usize = 1;
const OTHER: usize = 0;
/// All that somebody has.
pub const WHOLE: usize = 9;
/// More than any job needs.
const MAX: usize = 250;

impl World {
    /// A job in which everything is right but one thing, done with the phone `who`. An error: it did not come about, for the gate refused
    /// it for example.
    pub fn nearly(&mut self, slip: Slip, who: usize) -> Result<(), String> {
        self.who = who;
        self.before(slip)?;
        if (!slip.comes_after() || slip.leaves_out().is_some()) && self.slip.is_none() {
            self.slip = Some((JOB, slip));
        }
        // Else it is the other phone that tests.
        if slip != Slip::OthersClockAhead {
            self.until(who, JOB, &|next| matches!(next, Next::Done))?;
        }
        if slip == Slip::SignedByALearner {
            let entries = &self.phones[who].entries;
            let run = entries.iter().rfind(|e| matches!(e.body.fact, Fact::IndicatorProved { run: None, .. }));
            let run = run.ok_or("no run")?.id;
            self.here(Fact::RunSigned { run, mark: "J".into() })?;
        }
        if slip.comes_after() {
            self.seen_here();
            if !self.phones[HERE].field().proved(self.jobs[JOB].0) {
                return Err(format!(
                    "not proved before: {}",
                    self.phones[HERE].field().standing_says(self.jobs[JOB].0)
                ));
            }
            if let Some((_, waits)) = slip.leaves_out() {
                return self.goes_on(who, waits);
            }
            self.after(slip)?;
            // All is put right but the test.
            self.until(who, JOB, &is_of_a_test)?;
        }
        self.seen_here();
        self.check(HERE);
        self.check(THERE);
        let phone = &self.phones[HERE];
        let known = Known::new(&phone.entries, &phone.aside);
        match phone.with_moment(|moment| may_stand(&known, self.jobs[JOB].0, moment)) {
            Ok(()) => Err("by the promises it may stand".into()),
            Err(_) => Ok(()),
        }
    }

    /// The work, and the supply back on: an error if what waits for an answer was refused, and nothing before it.
    fn goes_on(&mut self, who: usize, waits: &str) -> Result<(), String> {
        for _ in 0..MAX {
            match self.right_after(who, JOB) {
                Ok(true) => self.check(who),
                Ok(false) => return Ok(()),
                Err(why) if self.log.last().is_some_and(|line| line.contains(&format!(": {waits} "))) => {
                    return Err(why);
                }
                Err(why) => panic!("refused before {waits}: {why}"),
            }
        }
        Err("it comes to no end".into())
    }

    fn seen_here(&mut self) {
        if self.who != HERE {
            self.hear(HERE, self.who, WHOLE);
        }
    }

    /// Right things, until one comes that fits.
    pub fn until(&mut self, n: usize, nth: usize, fits: &dyn Fn(&Next) -> bool) -> Result<(), String> {
        for _ in 0..MAX {
            let (next, by) = self.ahead(n, nth);
            if next.as_ref().is_some_and(fits) {
                return Ok(());
            }
            if matches!(
                (self.slip, &next),
                (Some((JOB, Slip::SlowTest)), Some(Next::Keep(Fact::IndicatorProved { run: Some(_), .. })))
            ) {
                self.pass(61 * MINUTE);
            }
            self.does(n, nth, next, by)?;
            self.check(n);
        }
        Err("it comes to no end".into())
    }

    pub fn here(&mut self, fact: Fact) -> Result<EntryId, String> {
        self.keep(self.who, self.phones[self.who].person, Some(self.jobs[JOB].0), fact)
    }

    pub fn there(&mut self, job: usize, fact: Fact) -> Result<EntryId, String> {
        self.keep(THERE, self.phones[THERE].person, Some(self.jobs[job].0), fact)
    }

    /// Whoever has the other phone is on the job as well.
    fn two_at_work(&mut self) -> Result<(), String> {
        self.until(self.who, JOB, &|next| matches!(next, Next::Keep(Fact::PermitNoted { .. })))?;
        let person = self.phones[THERE].person;
        self.here(Fact::WorkerJoined { person, duty: Duty::Working }).map(drop)
    }

    /// And has heard of all, up to the test.
    fn both_before_the_test(&mut self) -> Result<(), String> {
        self.two_at_work()?;
        self.until(self.who, JOB, &is_of_a_test)?;
        self.hear(THERE, HERE, WHOLE);
        Ok(())
    }

    fn before(&mut self, slip: Slip) -> Result<(), String> {
        match slip {
            Slip::OthersNotAnswered | Slip::NoReasonElsewhere => {
                self.until(THERE, OTHER, &is_of_a_test)?;
                self.hear(self.who, THERE, WHOLE);
            }
            Slip::FailedElsewhere => {
                self.until(THERE, OTHER, &|next| matches!(next, Next::Done))?;
                self.hear(HERE, THERE, WHOLE);
            }
            // Neither has heard of what the other noted.
            Slip::TwinFailed | Slip::ClosedElsewhere => self.until(THERE, OTHER, &is_of_a_test)?,
            // The neutral is in no pair that is read.
            Slip::CorrectedBefore => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(corrected(System::ThreePhaseNeutral, 230_000))?;
            }
            Slip::LiveWithdrawn => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let named =
                    self.phones[self.who].entries.iter().find(|e| matches!(e.body.fact, Fact::StaysLive { .. }));
                let entry = named.ok_or("nothing stays live")?.id;
                self.here(Fact::Withdrawn { entry, why: "It can be opened after all".into() })?;
            }
            Slip::WaitCutShort => {
                self.until(self.who, JOB, &|next| matches!(next, Next::Wait(_)))?;
                self.pass(10 * MINUTE);
            }
            Slip::CheckedYesterday => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.pass(13 * HOUR);
            }
            Slip::ScopeChangedBefore => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(Fact::ScopeChanged { scope: "Breaker 5 too".into(), why: "Agreed with the client".into() })?;
            }
            Slip::CauseSaysNothing => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(met())?;
            }
            Slip::LimitByAnother => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let limit = Some(Limit { ac: 2_000, dc: 2_000, rule: "House rule 7".into() });
                let by = self.phones[THERE].person;
                self.keep(self.who, by, Some(self.jobs[JOB].0), Fact::LimitSet { limit })?;
                self.slip = Some((JOB, Slip::OnePairAtAVolt));
            }
            // And goes on with it unchecked.
            Slip::ProverFailed => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let unit = self.instrument(self.who, InstrumentKind::ProvingUnit)?;
                self.here(broken(unit))?;
                self.slip = Some((JOB, Slip::NotChecked));
            }
            Slip::CauseNotFoundOnce | Slip::CauseFoundThenNot => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let met = self.here(met())?;
                self.until(self.who, JOB, &is_of_a_test)?;
                if slip == Slip::CauseFoundThenNot {
                    let cause = "It was not the neighbour's lighting".into();
                    self.here(Fact::CauseNoted { of: vec![met], found: false, cause })?;
                }
            }
            Slip::Shift => self.two_at_work()?,
            Slip::MetUnheard => {
                self.both_before_the_test()?;
                let of = vec![self.there(JOB, met())?];
                self.there(JOB, Fact::CauseNoted { of, found: true, cause: "A neighbour's lighting".into() })?;
            }
            Slip::CoverUnheard => {
                self.both_before_the_test()?;
                self.there(JOB, cover())?;
            }
            Slip::OthersClockAhead => {
                self.phones[THERE].set_clock(20 * MINUTE);
                self.until(THERE, JOB, &|next| matches!(next, Next::Done))?;
                self.hear(HERE, THERE, WHOLE);
                self.here(Fact::BarrierPlaced { what: "Chain".into(), at: "Back door".into() })?;
                self.check(HERE);
                self.pass(30 * MINUTE);
            }
            _ => self.stopped_before(slip)?,
        }
        Ok(())
    }

    fn after(&mut self, slip: Slip) -> Result<(), String> {
        let me = self.phones[self.who].person;
        let mate = self.phones[THERE].person;
        let of_job = |world: &World, fits: &dyn Fn(&Fact) -> bool| {
            let job = Some(world.jobs[JOB].0);
            world.phones[world.who].entries.iter().rfind(|e| e.job() == job && fits(&e.body.fact)).map(|e| e.id)
        };
        let found = |what: &str| Some(Found { what: what.into(), at: "X9".into() });
        match slip {
            Slip::Cover => drop(self.here(cover())?),
            Slip::Neutral => drop(self.here(Fact::NeutralParted { what: "N of way 3".into() })?),
            Slip::Source => {
                let (kind, found, terminals) = (SourceKind::Generator, found("Trailer set"), Vec::new());
                self.here(Fact::SourceAnswered { kind, found, looked: String::new(), terminals, millivolts: None })?;
            }
            Slip::Stored => {
                let found = found("Capacitor");
                self.here(Fact::StoredAnswered {
                    found,
                    seconds: 60,
                    looked: String::new(),
                    kind: None,
                    label: Some(60),
                })?;
            }
            Slip::Point => {
                let (poles, kind) = (self.jobs[JOB].1.lines_and_neutral(), PointKind::ALL[0]);
                let (label, at) = ("Q6".into(), "Main board MB1, bay 6".into());
                let (cuts, switch, stays_open, same_as) = (None, None, false, None);
                self.here(Fact::PointAdded {
                    label,
                    at,
                    kind,
                    lockable: true,
                    poles,
                    cuts,
                    switch,
                    stays_open,
                    same_as,
                })?;
            }
            Slip::LockOffAndOn => {
                let lock = of_job(self, &|f| matches!(f, Fact::LockFitted { owner, .. } if *owner == me));
                self.here(Fact::LockRemoved { lock: lock.ok_or("no lock")?, cut: None })?;
            }
            Slip::Left | Slip::Stopped => {
                let run = of_job(self, &|f| matches!(f, Fact::IndicatorProved { run: None, works: true, .. }));
                if self.jobs[JOB].1.covers {
                    self.here(answered("live-beside", "none", None, ""))?;
                    // On a board of three lines only: refused elsewhere, and that is right.
                    drop(self.here(answered("current-transformers", "none", None, "")));
                }
                drop(self.here(answered("charge-returned", "gone", None, WORDS)));
                drop(self.here(answered("temporary-earths", "not-asked", None, WORDS)));
                drop(self.here(answered("released-by", "tester", None, "")));
                self.here(Fact::WorkBegan { run: run.ok_or("no run")? })?;
                self.here(if slip == Slip::Left {
                    Fact::WorkLeft { why: "The shift leader called".into() }
                } else {
                    Fact::WorkStopped {}
                })?;
            }
            Slip::Shift => {
                let offer = self.here(Fact::ShiftOffered { to: mate, told: "All of it".into() })?;
                self.keep(self.who, mate, Some(self.jobs[JOB].0), Fact::ShiftTaken { offer, mark: "T".into() })?;
            }
            Slip::Scope => {
                self.here(Fact::ScopeChanged { scope: "Breaker 5 too".into(), why: "Agreed with the client".into() })?;
            }
            Slip::EarthOff => {
                let earth = self.here(Fact::EarthFitted { label: "E1".into(), at: "Busbar".into() })?;
                self.here(Fact::EarthRemoved { earth })?;
            }
            Slip::NamedLive => {
                let (what, at, screened) = ("Supply side".into(), "Top of Q4".into(), "Its own shroud".into());
                self.here(Fact::StaysLive { what, at, screened, conductors: Vec::new() })?;
            }
            // Its conductors are the same, and so are their pairs.
            Slip::Corrected => drop(self.here(corrected(System::ThreeWire, 690_000))?),
            Slip::Limit => {
                let limit = Some(Limit { ac: 2_000, dc: 2_000, rule: "House rule 7".into() });
                self.here(Fact::LimitSet { limit })?;
            }
            Slip::Withdrawn => {
                let entry = of_job(self, &|f| matches!(f, Fact::BarrierPlaced { .. })).ok_or("no barrier")?;
                self.here(Fact::Withdrawn { entry, why: "It stands at another door".into() })?;
            }
            Slip::Met => drop(self.here(met())?),
            Slip::IndicatorFailed => {
                let fact = self.failing(self.who)?;
                self.here(fact)?;
            }
            Slip::TooOld => self.pass(12 * HOUR + MINUTE),
            Slip::PutBack => {
                self.phones[HERE].copy();
                self.here(cover())?;
                self.phones[HERE].put_back(true);
                // It keeps nothing now: there is nothing to put right.
                self.say("the folder of 0 is put back");
            }
            Slip::MetUnheard | Slip::CoverUnheard => self.hear(HERE, THERE, WHOLE),
            Slip::MetAside => {
                self.hear(THERE, HERE, WHOLE);
                self.phones[THERE].set_clock(48 * HOUR);
                self.there(JOB, met())?;
                self.hear(HERE, THERE, WHOLE);
            }
            Slip::FailedElsewhere | Slip::TwinFailed => {
                let fact = self.failing(THERE)?;
                self.there(OTHER, fact)?;
                self.hear(HERE, THERE, WHOLE);
            }
            Slip::ClosedElsewhere => {
                self.there(OTHER, Fact::GivenUp { why: "Not today".into(), clear: "All are clear".into() })?;
                let (who, how) = ("Shift leader".into(), "In person".into());
                self.there(OTHER, Fact::Told { who, how, about: About::Energising })?;
                let job = Some(self.jobs[OTHER].0);
                let ids = |fits: &dyn Fn(&Fact) -> bool| -> Vec<EntryId> {
                    let own = self.phones[THERE].entries.iter().filter(|e| e.job() == job);
                    own.filter(|e| fits(&e.body.fact)).map(|e| e.id).collect()
                };
                let locks = ids(&|f| matches!(f, Fact::LockFitted { .. }));
                let points = ids(&|f| matches!(f, Fact::PointAdded { .. }));
                for lock in locks {
                    self.there(OTHER, Fact::LockRemoved { lock, cut: None })?;
                }
                for point in &points {
                    self.there(OTHER, Fact::SignRemoved { point: *point })?;
                }
                self.there(OTHER, Fact::PointClosed { point: points[0], beside: None })?;
                self.hear(HERE, THERE, WHOLE);
            }
            Slip::ClockBack => {
                self.phones[HERE].set_clock(-3 * HOUR);
                self.check(HERE);
                self.here(Fact::BarrierPlaced { what: "Chain".into(), at: "Back door".into() })?;
                self.pass(4 * HOUR);
            }
            _ => self.stopped_after(slip)?,
        }
        Ok(())
    }

    fn instrument(&self, n: usize, wanted: InstrumentKind) -> Result<EntryId, String> {
        let mut entries = self.phones[n].entries.iter();
        let noted =
            entries.find(|e| matches!(e.body.fact, Fact::InstrumentNoted { kind, .. } if kind == wanted)).map(|e| e.id);
        Ok(noted.ok_or("no instrument")?)
    }

    fn failing(&self, n: usize) -> Result<Fact, String> {
        let indicator = self.instrument(n, InstrumentKind::Indicator)?;
        let unit = self.instrument(n, InstrumentKind::ProvingUnit)?;
        Ok(Fact::IndicatorProved { run: None, indicator, on: ProvedOn::ProvingUnit(unit), works: false })
    }
}

fn broken(instrument: EntryId) -> Fact {
    let mut fact = check(instrument);
    if let Fact::InstrumentChecked { leads_sound, .. } = &mut fact {
        *leads_sound = false;
    }
    fact
}

pub fn is_of_a_test(next: &Next) -> bool {
    match next {
        Next::Keep(fact) => matches!(
            fact,
            Fact::IndicatorProved { .. }
                | Fact::ReferenceProved { .. }
                | Fact::ReadingTaken { .. }
                | Fact::DischargeRead { .. }
        ),
        Next::Wait(_) => false,
        Next::Done => true,
    }
}

fn met() -> Fact {
    Fact::VoltageMet { at: "Screw of the rail".into(), reading: Reading::Millivolts(64_000) }
}

fn corrected(system: System, nominal_millivolts: u32) -> Fact {
    let (own, why) = (Vec::new(), "Read again at the terminals behind the cover".into());
    Fact::SystemCorrected { system, earthing: Earthing::TnS, nominal_millivolts, own, why }
}

fn cover() -> Fact {
    Fact::CoverOff { what: "Side plate".into() }
}
