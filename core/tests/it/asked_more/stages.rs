//! The stages of a job of [`Bench`], each done right.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::*;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::point::{Means, PointKind};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Order, Reading};
use stillbar_core::supply::Position;

use super::bench::{Bench, WORDS, answered_of, met};
use crate::holes::by_hand::{IDA, JOEL, MARA, TITLE, TOMAS, check, noted};

impl Bench {
    pub fn of_site(&self, fact: Fact) -> EntryId {
        let by = self.phone.entries().iter().find(|e| matches!(e.body.fact, Fact::PersonNoted { .. })).map(|e| e.id);
        self.phone.field().keep(by.unwrap_or(EntryId::NONE), None, fact).unwrap()
    }

    pub fn begin(&self) {
        for name in [MARA, TOMAS, IDA, JOEL] {
            let (qualification, telephone) = ("Electrician".into(), String::new());
            self.of_site(Fact::PersonNoted { name: name.into(), qualification, telephone, corrects: None });
        }
        let case = &self.case;
        self.of_site(Fact::SiteNoted { name: "Brook Lane dye works".into() });
        self.of_site(Fact::JobOpened {
            title: TITLE.into(),
            place: "Plant room 2".into(),
            equipment: "Distribution board DB4".into(),
            scope: "Breaker 4 and its tails".into(),
            system: case.system,
            earthing: case.earthing,
            order: Order::default(),
            nominal_millivolts: case.volts * 1000,
            own: Vec::new(),
            rules: case.rules,
            limit: None,
            tolerance: Tolerance::default(),
            company: None,
        });
        self.keeps(Fact::WorkerJoined { person: self.phone.person(MARA), duty: Duty::InCharge });
        for (name, duty) in &case.mates {
            self.keeps(Fact::WorkerJoined { person: self.phone.person(name), duty: *duty });
        }
        self.asks();
    }

    /// Up to the points, all of them noted.
    pub fn plans_points(&self) {
        let case = &self.case;
        self.keeps(if case.permit {
            Fact::PermitNoted { reference: Some("BL-2231".into()), why_none: None }
        } else {
            Fact::PermitNoted { reference: None, why_none: Some("None is asked for in a house".into()) }
        });
        self.keeps(Fact::Told { who: "Shift leader".into(), how: "In person".into(), about: About::Isolating });
        self.keeps(Fact::BarrierPlaced { what: "Chain barrier".into(), at: "Door of plant room 2".into() });
        self.looks();
        for cuts in std::iter::once(None).chain(self.sources().into_iter().map(Some)) {
            self.adds(if cuts.is_some() { "Q9" } else { "Q4" }, cuts);
        }
        self.asks();
    }

    pub fn plan(&self) {
        self.plans_points();
        for (kind, name, serial) in [
            (InstrumentKind::Indicator, "Two-pole tester", "40771"),
            (InstrumentKind::ProvingUnit, "Proving unit", "9083"),
        ] {
            let id = self.of_site(noted(kind, name, serial));
            self.keeps(check(id, true));
        }
        self.answers(Step::Instruments);
        if self.case.turns() {
            let how = "Outlet beside the board".into();
            self.keeps(Fact::RotationFound { rotation: Some(Rotation::Clockwise), how });
        }
        self.keeps(Fact::NoCircuits { why: "Nothing runs".into() });
        self.answers(Step::Circuits);
    }

    /// Other sources and stored energy are looked for.
    pub fn looks(&self) {
        for kind in SourceKind::ALL {
            let found =
                self.case.others.contains(&kind).then(|| Found { what: format!("{kind:?} 1"), at: "DB1".into() });
            let looked = if found.is_some() { String::new() } else { "The board and its drawing".into() };
            self.keeps(Fact::SourceAnswered { kind, found, looked, terminals: Vec::new(), millivolts: None });
        }
        let found = self.case.stored.then(|| Found { what: "Drive 1".into(), at: "Its terminals X5".into() });
        let looked = if found.is_some() { String::new() } else { "Nameplates of the washers".into() };
        let label = self.case.stored.then_some(300);
        self.keeps(Fact::StoredAnswered { found, seconds: label.unwrap_or(0), looked, kind: None, label });
        self.asks();
    }

    pub fn ids(&self, fits: impl Fn(&Fact) -> bool) -> Vec<EntryId> {
        self.phone.entries().iter().filter(|e| fits(&e.body.fact)).map(|e| e.id).collect()
    }

    pub fn sources(&self) -> Vec<EntryId> {
        self.ids(|f| matches!(f, Fact::SourceAnswered { found: Some(_), .. }))
    }

    pub fn adds(&self, label: &str, cuts: Option<EntryId>) -> EntryId {
        self.keeps(Fact::PointAdded {
            label: label.into(),
            at: format!("Main board MB1, bay of {label}"),
            kind: PointKind::SwitchDisconnector,
            lockable: true,
            poles: self.case.poles(cuts.is_some()),
            cuts,
            switch: None,
            stays_open: false,
            same_as: None,
        })
    }

    pub fn points(&self) -> Vec<EntryId> {
        self.ids(|f| matches!(f, Fact::PointAdded { .. }))
    }

    pub fn skips(&self, step: &str) {
        let _ = self.tries(Fact::Deviated { step: step.into(), why: "Agreed with the shift leader".into() });
    }

    pub fn opens(&self, point: EntryId) -> Result<EntryId, String> {
        // What goes back on is what was found on: the normal supply alone.
        let is_normal = self
            .phone
            .entries()
            .iter()
            .any(|e| e.id == point && matches!(e.body.fact, Fact::PointAdded { cuts: None, .. }));
        let found = if is_normal || self.case.others_on { Position::Closed } else { Position::Open };
        let seen = "Lamp out, blades seen apart".into();
        self.tries(Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() })
    }

    pub fn isolate(&self) {
        for point in self.points() {
            self.isolates(point);
        }
    }

    /// Opens, locks, signs.
    pub fn isolates(&self, point: EntryId) {
        self.answers(Step::Circuits);
        for (_, code, of) in self.asks() {
            if matches!(code.as_str(), "right-board" | "starts-itself") {
                let said = self.says.iter().find(|(question, _)| *question == code).map(|(_, answer)| *answer);
                let answer = said.unwrap_or(if code == "right-board" { "seen-live" } else { "blocked" });
                self.keeps(answered_of(&code, answer, WORDS, of));
            }
        }
        self.opens(point).unwrap_or_else(|why| panic!("{why}"));
        let mates = self.case.mates.iter().map(|(name, _)| *name);
        for (n, name) in std::iter::once(MARA).chain(mates).enumerate() {
            let (owner, label) = (self.phone.person(name), format!("{n}-{}", &point.short()));
            let (on, key, means) = (On::Point(point), KeyAt::Owner, Means::Hasp);
            self.keeps(Fact::LockFitted { on, owner, label, key, means, through: None });
        }
        self.keeps(Fact::SignPosted { point });
        self.skips(&format!("isolate-{point}"));
        self.asks();
    }

    pub fn open_up(&self) {
        self.answers(Step::OpenUp);
        if self.case.stored {
            self.phone.device.pass(301_000);
        }
        self.keeps(if self.case.cover {
            Fact::CoverOff { what: "Front plate".into() }
        } else {
            Fact::NoCovers { why: "It is open".into() }
        });
        self.asks();
    }

    pub fn instrument(&self, wanted: InstrumentKind) -> EntryId {
        self.ids(|f| matches!(f, Fact::InstrumentNoted { kind, .. } if *kind == wanted))[0]
    }

    /// A test begins: the indicator responds.
    pub fn begins(&self) -> Result<EntryId, String> {
        self.begins_as(MARA)
    }

    fn begins_as(&self, who: &str) -> Result<EntryId, String> {
        let indicator = self.instrument(InstrumentKind::Indicator);
        let on = ProvedOn::ProvingUnit(self.instrument(InstrumentKind::ProvingUnit));
        let run = self.tries_as(who, Fact::IndicatorProved { run: None, indicator, on, works: true })?;
        *self.run.borrow_mut() = Some(run);
        Ok(run)
    }

    /// The whole of a test, with nothing on any pair.
    pub fn tests(&self) -> Result<EntryId, String> {
        self.tests_as(MARA)
    }

    /// The same, by somebody else.
    pub fn tests_as(&self, who: &str) -> Result<EntryId, String> {
        let run = self.begins_as(who)?;
        let how = "Low resistance to the main earthing terminal".into();
        self.tries_as(who, Fact::ReferenceProved { run, way: EarthProof::MainTerminal, how, holds: true })?;
        // Stored energy, and what brings direct voltage.
        let direct = |kind: &SourceKind| matches!(kind, SourceKind::Ups | SourceKind::Pv | SourceKind::Battery);
        let read = |f: &Fact| match f {
            Fact::StoredAnswered { found, .. } => found.is_some(),
            Fact::SourceAnswered { kind, found, .. } => found.is_some() && direct(kind),
            _ => false,
        };
        for of in self.ids(read) {
            self.tries_as(who, Fact::DischargeRead { run, of, reading: Reading::None })?;
        }
        let all = self.case.conductors();
        let both = self.case.is_direct() || self.case.stored || self.case.others.iter().any(direct);
        let ranges: &[bool] = if both { &[false, true] } else { &[false] };
        for dc in ranges {
            for (n, first) in all.iter().enumerate() {
                for then in &all[n + 1..] {
                    let (first, then) = ((*first).to_owned(), (*then).to_owned());
                    self.tries_as(who, Fact::ReadingTaken { run, first, then, reading: Reading::None, dc: *dc })?;
                }
            }
        }
        let (indicator, on) = (
            self.instrument(InstrumentKind::Indicator),
            ProvedOn::ProvingUnit(self.instrument(InstrumentKind::ProvingUnit)),
        );
        self.tries_as(who, Fact::IndicatorProved { run: Some(run), indicator, on, works: true })?;
        Ok(run)
    }

    pub fn prove(&self) {
        self.answers(Step::OpenUp);
        self.tests().unwrap_or_else(|why| panic!("{why}"));
        self.asks();
    }

    pub fn proved(&self) -> bool {
        self.phone.proved()
    }

    pub fn begins_work(&self) -> Result<EntryId, String> {
        self.tries(Fact::WorkBegan { run: self.run.borrow().expect("a test") })
    }

    pub fn work(&self) {
        assert!(self.proved(), "{}", self.banner());
        self.answers(Step::Work);
        self.begins_work().unwrap_or_else(|why| panic!("{why}"));
        self.asks();
    }

    pub fn finish(&self) {
        self.keeps(Fact::WorkFinished { clear: "Counted the tools, nobody in the board".into() });
        self.asks();
    }

    pub fn supply_back(&self) {
        self.answers(Step::CoversBack);
        for cover in self.ids(|f| matches!(f, Fact::CoverOff { .. })) {
            self.keeps(Fact::CoverBack { cover });
        }
        let (who, how) = ("Shift leader".into(), "In person".into());
        self.keeps(Fact::Told { who, how, about: About::Energising });
        for e in self.phone.entries() {
            if let Fact::LockFitted { owner, .. } = e.body.fact {
                let fact = Fact::LockRemoved { lock: e.id, cut: None };
                let name = [MARA, TOMAS, IDA, JOEL].into_iter().find(|name| self.phone.person(name) == owner);
                self.tries_as(name.expect("one of them"), fact).unwrap();
            }
        }
        for point in self.points() {
            self.keeps(Fact::SignRemoved { point });
        }
        self.closes().unwrap_or_else(|why| panic!("{why}"));
        // The other supply is left off for now.
        if self.case.others_on {
            self.skips("close");
        }
        self.reads_back();
        self.asks();
    }

    /// The point of the normal supply.
    pub fn closes(&self) -> Result<EntryId, String> {
        let point = self.ids(|f| matches!(f, Fact::PointAdded { cuts: None, .. }))[0];
        self.tries(Fact::PointClosed { point, beside: None })
    }

    pub fn reads_back(&self) {
        for (first, then, volts) in self.case.back() {
            let reading = Reading::Millivolts(volts * 1000);
            self.keeps(Fact::PresenceRead { first: first.into(), then: then.into(), reading });
        }
        if self.case.turns() {
            let how = "Outlet beside the board".into();
            self.keeps(Fact::RotationRead { rotation: Rotation::Clockwise, how, guard: None });
        }
    }

    pub fn hands_back(&self) -> Result<EntryId, String> {
        self.tries(Fact::HandedBack { to: "Joel Aras, site manager".into(), note: String::new(), mark: "J".into() })
    }

    pub fn hand_back(&self) {
        self.answers(Step::HandBack);
        self.hands_back().unwrap_or_else(|why| panic!("{why}"));
        self.asks();
    }

    /// A voltage is met at the work, and its cause is found: what is behind it is another question.
    pub fn meets(&self) {
        let met = self.keeps(met());
        let cause = "A line of the next board runs beside it".into();
        self.keeps(Fact::CauseNoted { of: vec![met], found: true, cause });
    }

    /// The cause of each that has none yet.
    pub fn notes_causes(&self) {
        for met in self.ids(|f| matches!(f, Fact::VoltageMet { .. })) {
            let has = !self.ids(|f| matches!(f, Fact::CauseNoted { of, .. } if of.contains(&met))).is_empty();
            if !has {
                let cause = "A line of the next board runs beside it".into();
                self.keeps(Fact::CauseNoted { of: vec![met], found: true, cause });
            }
        }
    }

    pub fn takes_cover_off(&self) {
        self.keeps(Fact::CoverOff { what: "Side plate".into() });
    }

    /// Another scope, for which everything is looked for again.
    pub fn changes_scope(&self) {
        self.keeps(Fact::ScopeChanged { scope: "Breaker 5 too".into(), why: "Agreed with the client".into() });
    }

    /// One more point of the normal supply.
    pub fn opens_another(&self) {
        let point = self.adds("Q5", None);
        self.isolates(point);
    }
}
