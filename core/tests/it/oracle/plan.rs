//! What a job of the players is like, and how somebody who does everything right goes on with it.

use std::collections::BTreeSet;

use stillbar_core::journal::fact::{About, Duty, Found, InstrumentKind, LightsFrom, Limit, SourceKind, SourceRef};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Conductor, Earthing, Order, System};

use super::alike::alike;
use super::chance::Chance;
use super::finds::{OTHERS, Other, STORED, Stored};
use super::own::{Is, Wire, listed, sets, wires};
use super::systems::{NEW, Row, row};

/// What there is at the site, as far as one job is about it.
#[derive(Clone, Debug)]
pub struct Plan {
    pub title: String,
    pub equipment: &'static str,
    pub system: System,
    pub earthing: Earthing,
    pub nominal: u32,
    pub limit: Option<Limit>,
    pub others: Vec<Other>,
    pub stored: Option<Stored>,
    /// Label and place of the point of the normal supply.
    pub point: (&'static str, &'static str),
    pub covers: bool,
    /// Whether somebody finds out what was behind what went wrong.
    pub finds_out: bool,
    /// Whether the indicator shows figures: dark lamps that show both say something of direct voltage too, and a figure does not.
    pub figures: bool,
    /// Which answer says which line is high or at earth, where the system asks that.
    pub mark: &'static str,
    /// Whether the line at earth is a solid link, which no point opens.
    pub link: bool,
    /// The conductors that they list themselves, those of them that are named as staying live, and how those are said to be screened.
    pub own: Vec<Conductor>,
    pub live: Vec<String>,
    pub screened: &'static str,
    /// A question that they do not answer, after the proof.
    pub leaves_out: Option<&'static str>,
    /// Whether photos are taken at the points.
    pub photos: bool,
    /// By what it is chosen which of the answers that go or stand is given.
    pub answers: u64,
}

/// Where the equipment is.
const PLACE: &str = "Plant room 2";

/// What comes next.
#[derive(Debug)]
pub enum Next {
    Keep(Fact),
    /// Nothing but waiting, so many milliseconds.
    Wait(i64),
    /// All pairs are read and the indicator is proved again.
    Done,
}

impl Plan {
    /// The `nth` job of a site; several share the point of the normal supply.
    pub fn of(chance: &mut Chance, nth: usize) -> Plan {
        let three = [System::ThreePhaseNeutral, System::OnePhase, System::ThreeWire];
        let of_old = three[chance.of(3).min(chance.of(3))];
        let of_own = chance.one_in(6);
        let (own, live) = if of_own { listed(chance) } else { Default::default() };
        let system = if of_own {
            System::Own
        } else if chance.one_in(2) {
            NEW[chance.of(NEW.len())]
        } else {
            of_old
        };
        let earthings = [Earthing::TnCS, Earthing::TnS, Earthing::Tt, Earthing::It, Earthing::Unknown];
        let earthing = earthings[chance.of(5)];
        let (row, nominal) = (row(system), row(system).nominal(chance));
        let mark = row.marks.map_or("", |(_, answers)| answers[chance.of(answers.len())].0);
        let others = (0..chance.of(3).min(chance.of(3))).map(|_| OTHERS[chance.of(OTHERS.len())].clone());
        let mut kinds = BTreeSet::new();
        let others: Vec<Other> = others.filter(|o| kinds.insert(o.kind)).collect();
        let points = [("Q4 feeder switch", "Main board MB1, bay 4"), ("Q5", "Main board MB1, bay 5")];
        let equipment = ["DB4", "DB6", "DB8"][nth % 3];
        // One that is at the equipment and has its label is not asked about.
        let point = if chance.one_in(8) { (equipment, PLACE) } else { points[usize::from(chance.of(4) == 0)] };
        Plan {
            title: format!("Replace breaker {nth}"),
            equipment,
            system,
            // Protective and neutral in one is an arrangement of its own.
            earthing: if system == System::Pen { Earthing::TnC } else { earthing },
            nominal,
            limit: None,
            others,
            stored: (chance.of(5) == 0).then(|| STORED[chance.of(STORED.len())]),
            point,
            covers: chance.of(3) > 0,
            finds_out: chance.of(3) > 0,
            figures: chance.of(2) == 0,
            mark,
            link: chance.one_in(2),
            own,
            live,
            screened: "Its cover stays on, seen by two",
            leaves_out: None,
            photos: chance.one_in(2),
            answers: chance.of(1 << 16) as u64,
        }
    }

    /// The one of this kind.
    pub fn another(kind: SourceKind) -> Other {
        OTHERS.into_iter().find(|other| other.kind == kind).expect("there is one of each kind")
    }

    pub fn opening(&self) -> Fact {
        Fact::JobOpened {
            title: self.title.clone(),
            place: PLACE.into(),
            equipment: self.equipment.into(),
            scope: "One breaker and its tails".into(),
            system: self.system,
            earthing: self.earthing,
            order: Order::ALL[0],
            nominal_millivolts: self.nominal,
            own: self.own.clone(),
            rules: None,
            limit: self.limit.clone(),
            tolerance: Tolerance::default(),
            company: None,
        }
    }

    /// What there is to be proved dead, as they see it.
    pub fn wires(&self) -> Vec<Wire> {
        let all = wires(self.system, &self.own).into_iter();
        all.filter(|wire| !self.live.contains(&wire.name)).collect()
    }

    fn names(&self, fits: impl Fn(&Wire) -> bool) -> Vec<String> {
        self.wires().into_iter().filter(fits).map(|wire| wire.name).collect()
    }

    pub fn lines(&self) -> Vec<String> {
        self.names(Wire::has_to_open)
    }

    /// Of the normal supply.
    pub fn lines_and_neutral(&self) -> Vec<String> {
        self.names(|wire| (wire.has_to_open() || wire.is_middle()) && wire.supply.is_none())
    }

    pub fn reference(&self) -> String {
        self.names(|wire| wire.is == Is::Earth).pop().expect("every set has one")
    }

    /// Three lines of alternating voltage turn.
    pub fn turns(&self) -> bool {
        self.names(|wire| wire.is == Is::Line).len() == 3
    }

    pub fn row(&self) -> Row {
        row(self.system)
    }

    /// Makes it a job of another system.
    pub fn is_of(&mut self, system: System, earthing: Earthing, mark: &'static str) {
        (self.system, self.earthing, self.mark) = (system, earthing, mark);
        (self.own, self.live) = Default::default();
        self.nominal = self.row().nominal(&mut Chance(0));
    }

    /// Makes it a job of one of the sets of their own, of which these stay live.
    pub fn lists(&mut self, nth: usize, live: &[&str]) {
        self.is_of(System::Own, Earthing::TnS, "");
        self.own = sets()[nth].clone();
        self.live = live.iter().map(|name| (*name).to_owned()).collect();
    }

    /// What the point of the normal supply opens: the line at earth may be a solid link.
    pub fn opened(&self) -> Vec<String> {
        let mut all = self.names(|wire| wire.has_to_open() || wire.is_middle());
        if self.system == System::CornerGrounded && self.link {
            all.retain(|line| line.to_lowercase() != self.mark);
        }
        all
    }
}

/// A person at work on a job, and what their phone knows.
pub struct Desk<'a> {
    pub plan: &'a Plan,
    pub entries: &'a [Entry],
    pub job: EntryId,
    pub me: EntryId,
    /// Somebody else who may work on it, where the one is not enough.
    pub mate: EntryId,
    /// What its wall clock says.
    pub wall: i64,
    /// Begin the test again: the last run led to nothing.
    pub again: bool,
    /// Whether they go on although an answer stopped.
    pub goes_on: bool,
}

impl<'a> Desk<'a> {
    pub fn all(&self) -> impl Iterator<Item = &'a Entry> + '_ {
        self.entries.iter().filter(|e| e.job() == Some(self.job) && !self.is_withdrawn(e.id))
    }

    pub fn is_withdrawn(&self, id: EntryId) -> bool {
        self.entries.iter().any(|e| matches!(e.body.fact, Fact::Withdrawn { entry, .. } if entry == id))
    }

    pub fn has(&self, fits: impl Fn(&Fact) -> bool) -> bool {
        self.all().any(|e| fits(&e.body.fact))
    }

    /// After the scope was changed last, if it was.
    pub fn has_for_scope(&self, fits: impl Fn(&Fact) -> bool) -> bool {
        let all: Vec<&Entry> = self.all().collect();
        let from = all.iter().rposition(|e| matches!(e.body.fact, Fact::ScopeChanged { .. })).unwrap_or(0);
        all[from..].iter().any(|e| fits(&e.body.fact))
    }

    pub fn next(&self) -> Next {
        if let Some(fact) = self
            .planned()
            .or_else(|| self.line_asked_for())
            .or_else(|| self.stays_live())
            .or_else(|| self.points())
            .or_else(|| self.network())
            .or_else(|| self.instruments())
        {
            return Next::Keep(fact);
        }
        if let Some(fact) = self.isolated() {
            return Next::Keep(fact);
        }
        if let Some(next) = self.opened_up() {
            return next;
        }
        let asked = self.tried_to_start().or_else(|| self.at_the_open_points());
        asked.map_or_else(|| self.proving(), Next::Keep)
    }

    fn planned(&self) -> Option<Fact> {
        if !self.has(|f| matches!(f, Fact::WorkerJoined { .. })) {
            return Some(Fact::WorkerJoined { person: self.me, duty: Duty::InCharge });
        }
        if !self.workers().contains(&self.me) {
            return Some(Fact::WorkerJoined { person: self.me, duty: Duty::Working });
        }
        if self.needs_mate() && !self.workers().contains(&self.mate) {
            return Some(Fact::WorkerJoined { person: self.mate, duty: Duty::Working });
        }
        if !self.has(|f| matches!(f, Fact::PermitNoted { .. })) {
            return Some(Fact::PermitNoted { reference: Some("BL-2231".into()), why_none: None });
        }
        if !self.has(|f| matches!(f, Fact::Told { about: About::Isolating, .. })) {
            return Some(Fact::Told { who: "Shift leader".into(), how: "In person".into(), about: About::Isolating });
        }
        if let Some(fact) = self.told_each_other() {
            return Some(fact);
        }
        if !self.has(|f| matches!(f, Fact::BarrierPlaced { .. })) {
            return Some(Fact::BarrierPlaced { what: "Chain barrier".into(), at: "Door of plant room 2".into() });
        }
        for kind in SourceKind::ALL {
            let known = self.plan.others.iter().find(|o| o.kind == kind);
            if !self.has_for_scope(|f| matches!(f, Fact::SourceAnswered { kind: k, .. } if *k == kind)) {
                let found = known.map(|o| Found { what: o.what.into(), at: o.at.into() });
                let terminals = known.map_or(Vec::new(), |o| o.terminals.iter().map(|t| (*t).to_owned()).collect());
                let millivolts = known.and_then(|o| o.millivolts);
                let looked = if found.is_some() { String::new() } else { "The board and its drawing".into() };
                return Some(Fact::SourceAnswered { kind, found, looked, terminals, millivolts });
            }
        }
        if !self.has_for_scope(|f| matches!(f, Fact::StoredAnswered { .. })) {
            let stored = self.plan.stored;
            let found = stored.map(|s| Found { what: s.what.into(), at: "Its terminals X5".into() });
            let looked = if found.is_some() { String::new() } else { "Nameplates of the washers".into() };
            let (kind, label) = (stored.and_then(|s| s.kind), stored.and_then(|s| s.label));
            return Some(Fact::StoredAnswered { found, seconds: stored.map_or(0, |s| s.waits), looked, kind, label });
        }
        self.goes_again().or_else(|| self.foreign())
    }

    /// What another job found, and this one did not: it does not reach this work.
    pub fn foreign(&self) -> Option<Fact> {
        let own: Vec<&Found> = self.all().filter_map(|e| found(&e.body.fact)).collect();
        let site = self.entries.iter().find(|e| e.id == self.job).and_then(|e| e.body.site);
        for e in
            self.entries.iter().filter(|e| e.body.site == site && e.job() != Some(self.job) && !self.is_withdrawn(e.id))
        {
            let Some(theirs) = found(&e.body.fact) else { continue };
            let mine = own.iter().any(|o| alike(&o.what, &theirs.what) && alike(&o.at, &theirs.at));
            let source = SourceRef::Found(e.id);
            if !mine && !self.has(|f| matches!(f, Fact::SourceElsewhere { source: s, .. } if *s == source)) {
                return Some(Fact::SourceElsewhere { source, why: "It feeds another board, traced by hand".into() });
            }
        }
        None
    }

    /// Who is on the job, as far as is known here.
    pub fn workers(&self) -> BTreeSet<EntryId> {
        let mut workers = BTreeSet::new();
        for e in self.all() {
            match e.body.fact {
                Fact::WorkerJoined { person, .. } => drop(workers.insert(person)),
                Fact::WorkerLeft { person } => drop(workers.remove(&person)),
                _ => {}
            }
        }
        workers
    }

    fn instruments(&self) -> Option<Fact> {
        for kind in [InstrumentKind::Indicator, InstrumentKind::ProvingUnit] {
            let Some(id) = self.instrument(kind) else {
                let lights_from =
                    (kind == InstrumentKind::Indicator).then_some(LightsFrom { ac: 12_000, dc: Some(12_000) });
                let name = if lights_from.is_some() { "Two-pole tester" } else { "Proving unit" };
                return Some(Fact::InstrumentNoted {
                    kind,
                    name: name.into(),
                    serial: format!("90{}", kind as u8),
                    lights_from,
                });
            };
            if self.needs_check(id) {
                return Some(check(id));
            }
        }
        if let Some(asked) = self.instrument_fit() {
            return Some(asked);
        }
        if !self.has(|f| matches!(f, Fact::NoCircuits { .. } | Fact::CircuitListed { .. })) {
            return Some(Fact::NoCircuits { why: "Nothing runs".into() });
        }
        if self.plan.turns() && !self.has(|f| matches!(f, Fact::RotationFound { .. })) {
            return Some(Fact::RotationFound { rotation: None, how: "No outlet is near, no motor runs".into() });
        }
        None
    }

    /// It was not checked in this job and shift, or has failed since, in any job.
    fn needs_check(&self, id: EntryId) -> bool {
        let good = |e: &Entry| match e.body.fact {
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, .. } => {
                instrument == id && leads_sound && tips_sound && body_sound && e.job() == Some(self.job)
            }
            _ => false,
        };
        let Some(checked) = self.entries.iter().rposition(|e| good(e) && !self.is_withdrawn(e.id)) else { return true };
        let age = self.wall - self.entries[checked].body.wall;
        let failed = self.entries[checked..].iter().any(|e| match e.body.fact {
            Fact::IndicatorProved { indicator, works: false, .. } => indicator == id,
            Fact::InstrumentChecked { instrument, leads_sound, .. } => instrument == id && !leads_sound,
            Fact::ShiftTaken { .. } => e.job() == Some(self.job),
            _ => false,
        });
        failed || !(0..11 * 3_600_000).contains(&age)
    }

    pub fn instrument(&self, wanted: InstrumentKind) -> Option<EntryId> {
        let found =
            self.entries.iter().find(|e| matches!(e.body.fact, Fact::InstrumentNoted { kind, .. } if kind == wanted));
        found.map(|e| e.id)
    }

    /// Whose a lock is.
    pub fn owner(&self, lock: EntryId) -> Option<EntryId> {
        self.all().find(|e| e.id == lock).and_then(|e| match e.body.fact {
            Fact::LockFitted { owner, .. } => Some(owner),
            _ => None,
        })
    }

    pub fn own_points(&self) -> Vec<EntryId> {
        self.all().filter(|e| matches!(e.body.fact, Fact::PointAdded { .. })).map(|e| e.id).collect()
    }
}

pub fn found(fact: &Fact) -> Option<&Found> {
    match fact {
        Fact::SourceAnswered { found, .. } | Fact::StoredAnswered { found, .. } => found.as_ref(),
        _ => None,
    }
}

pub fn check(instrument: EntryId) -> Fact {
    let (note, knowing) = (String::new(), Vec::new());
    Fact::InstrumentChecked {
        instrument,
        leads_sound: true,
        tips_sound: true,
        body_sound: true,
        in_date: true,
        note,
        knowing,
    }
}
