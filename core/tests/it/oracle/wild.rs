//! What people do who do not keep to the order: anything that can be recorded, about things that exist.

use stillbar_core::journal::fact::*;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::point::{Means, PointKind};
use stillbar_core::prove::{Reading, System};
use stillbar_core::supply::{Link, LinkKind, Node, NodeKind, Position, SourceSort};
use stillbar_core::tag::TagId;

use super::asked::answered;
use super::chance::Chance;
use super::own::{Wire, wires};
use super::plan::{check, found};
use super::prove::{photo, went_wrong};
use super::questions::{self, Of};

/// What somebody on a job may think of.
pub struct Wild<'a> {
    pub chance: &'a mut Chance,
    pub entries: &'a [Entry],
    pub aside: &'a [Entry],
    pub job: EntryId,
    pub me: EntryId,
}

/// One label, as different people write it.
pub const SPELLINGS: [&str; 6] = [
    "Q4 feeder switch",
    "q4 FEEDER switch",
    "Q4  feeder switch",
    "Ｑ4 feeder switch",
    "Q4 feeder\u{200b} switch",
    "Q4 feеder switch",
];
const PLACES: [&str; 3] = ["Main board MB1, bay 4", "main board MB1, bay 4", "Маin board MB1, bay 4"];
const PADLOCKS: [&str; 6] = ["ML 7", "ml 7", "ML7", "МL 7", "TB 1", "K 3"];
const REASONS: [&str; 5] =
    ["It was another one, seen at the spot", "Agreed with the shift leader", ".", "\u{200b}\u{200b}", "no"];

impl Wild<'_> {
    /// The conductors of the job, as it was opened.
    fn wires(&self) -> Vec<Wire> {
        let opened = self.entries.iter().find(|e| e.id == self.job).map(|e| &e.body.fact);
        let Some(Fact::JobOpened { system, own, .. }) = opened else { return wires(System::ThreePhaseNeutral, &[]) };
        wires(*system, own)
    }

    fn names(&self) -> Vec<String> {
        self.wires().into_iter().map(|wire| wire.name).collect()
    }

    fn ids(&self, fits: impl Fn(&Entry) -> bool) -> Vec<EntryId> {
        self.entries.iter().filter(|e| fits(e)).map(|e| e.id).collect()
    }

    fn mine(&self, fits: impl Fn(&Fact) -> bool) -> Vec<EntryId> {
        self.ids(|e| e.job() == Some(self.job) && fits(&e.body.fact))
    }

    fn person(&mut self) -> Option<EntryId> {
        let people = self.ids(|e| matches!(e.body.fact, Fact::PersonNoted { corrects: None, .. }));
        self.chance.pick(&people).copied()
    }

    fn why(&mut self) -> String {
        let good = !self.chance.one_in(4);
        REASONS[if good { self.chance.of(2) } else { self.chance.of(REASONS.len()) }].into()
    }

    fn run(&mut self) -> Option<EntryId> {
        let runs = self.mine(|f| matches!(f, Fact::IndicatorProved { run: None, works: true, .. }));
        if self.chance.one_in(3) { self.chance.pick(&runs).copied() } else { runs.last().copied() }
    }

    fn reading(&mut self) -> Reading {
        [
            Reading::None,
            Reading::None,
            Reading::Lit(None),
            Reading::Millivolts(0),
            Reading::Millivolts(1_200),
            Reading::Millivolts(231_000),
            Reading::Continuity,
        ][self.chance.of(7)]
    }

    /// Of any job, one of this job three times out of four.
    fn point(&mut self) -> Option<EntryId> {
        let own = self.mine(|f| matches!(f, Fact::PointAdded { .. }));
        let all = self.ids(|e| matches!(e.body.fact, Fact::PointAdded { .. }));
        if self.chance.one_in(4) { self.chance.pick(&all).copied() } else { self.chance.pick(&own).copied() }
    }

    fn lock(&mut self) -> Option<EntryId> {
        let locks = self.ids(|e| matches!(e.body.fact, Fact::LockFitted { .. }));
        self.chance.pick(&locks).copied()
    }

    fn instrument(&mut self, kind: InstrumentKind) -> Option<EntryId> {
        let all = self.ids(|e| matches!(e.body.fact, Fact::InstrumentNoted { kind: k, .. } if k == kind));
        self.chance.pick(&all).copied()
    }

    /// What may bring a voltage back, or end a proof otherwise.
    pub fn ending(&mut self) -> Option<Fact> {
        let place = |what: &str| Found { what: what.into(), at: "X9".into() };
        Some(match self.chance.of(14) {
            0 | 1 => Fact::CoverOff { what: "Side plate".into() },
            2 => {
                let kind = SourceKind::ALL[self.chance.of(6)];
                let terminals = if kind == SourceKind::Control { vec!["X9:1".into()] } else { Vec::new() };
                let millivolts = (kind == SourceKind::Control).then_some([24_000, 230_000][self.chance.of(2)]);
                Fact::SourceAnswered {
                    kind,
                    found: Some(place("Heater from DB2")),
                    looked: String::new(),
                    terminals,
                    millivolts,
                }
            }
            3 => {
                // What nobody may wait is refused.
                let kind = self.chance.one_in(2).then(|| StoredKind::ALL[self.chance.of(StoredKind::ALL.len())]);
                let label = self.chance.one_in(2).then_some(60);
                let seconds = [60, 300, 900][self.chance.of(3)];
                Fact::StoredAnswered { found: Some(place("Capacitor")), seconds, looked: String::new(), kind, label }
            }
            4 => Fact::NeutralParted { what: "N of way 3".into() },
            5 => Fact::WorkLeft { why: self.why() },
            6 => Fact::ScopeChanged { scope: "Breaker 5 too".into(), why: self.why() },
            7 => Fact::LimitSet {
                limit: [None, Some(Limit { ac: 2_000, dc: 2_000, rule: "House rule 7".into() })][self.chance.of(2)]
                    .clone(),
            },
            8 => {
                let all = self.mine(|f| {
                    matches!(
                        f,
                        Fact::SourceAnswered { .. }
                            | Fact::StoredAnswered { .. }
                            | Fact::InstrumentChecked { .. }
                            | Fact::CauseNoted { .. }
                            | Fact::SourceElsewhere { .. }
                            | Fact::PermitNoted { .. }
                            | Fact::PointAdded { .. }
                            | Fact::PointsParted { .. }
                            | Fact::RunSigned { .. }
                            | Fact::ZoneNoted { .. }
                            | Fact::Deviated { .. }
                            | Fact::Answered { .. }
                    )
                });
                Fact::Withdrawn { entry: *self.chance.pick(&all)?, why: self.why() }
            }
            9 => Fact::ShiftOffered { to: self.person()?, told: "All of it".into() },
            10 => Fact::LockRemoved { lock: self.lock()?, cut: None },
            11 => Fact::PointClosed { point: self.point()?, beside: None },
            12 => Fact::GivenUp { why: self.why(), clear: "All are clear".into() },
            _ if self.chance.one_in(3) => self.live()?,
            _ => self.added()?,
        })
    }

    /// Whatever somebody may name as staying live.
    fn live(&mut self) -> Option<Fact> {
        let beside: Vec<String> = self.wires().into_iter().filter(|w| w.supply.is_some()).map(|w| w.name).collect();
        let conductors = match self.chance.of(4) {
            0 => vec![self.chance.pick(&self.names())?.clone()],
            1 => Vec::new(),
            _ => beside,
        };
        let (what, at, screened) = ("Cable from the yard".into(), "X9".into(), self.why());
        Some(Fact::StaysLive { what, at, screened, conductors })
    }

    fn added(&mut self) -> Option<Fact> {
        let label = SPELLINGS[self.chance.of(SPELLINGS.len())].into();
        let at = PLACES[self.chance.of(PLACES.len())].into();
        let same_as = if self.chance.one_in(3) { self.point() } else { None };
        let (middles, beside) = (self.chance.one_in(2), self.chance.one_in(2));
        let opens =
            |wire: &Wire| (wire.has_to_open() || middles && wire.is_middle()) && (beside || wire.supply.is_none());
        let poles = self.wires().into_iter().filter(opens).map(|wire| wire.name).collect();
        let kind = PointKind::ALL[0];
        Some(Fact::PointAdded {
            label,
            at,
            kind,
            lockable: true,
            poles,
            cuts: None,
            switch: None,
            stays_open: false,
            same_as,
        })
    }

    /// What went wrong at the test, and what is answered about it.
    pub fn trouble(&mut self) -> Option<Fact> {
        let terminals = self.names();
        Some(match self.chance.of(10) {
            0 | 1 => {
                let (first, then) = (terminals[0].clone(), terminals[1 + self.chance.of(terminals.len() - 1)].clone());
                let reading =
                    [Reading::Lit(None), Reading::Millivolts(230_000), Reading::Millivolts(1_200)][self.chance.of(3)];
                Fact::ReadingTaken { run: self.run()?, first, then, reading, dc: self.chance.one_in(4) }
            }
            2 | 3 => Fact::VoltageMet {
                at: "Screw of the rail".into(),
                reading: [Reading::Lit(None), Reading::Millivolts(64_000)][self.chance.of(2)],
            },
            4 => {
                let how = "Loose clamp".into();
                Fact::ReferenceProved { run: self.run()?, way: EarthProof::MainTerminal, how, holds: false }
            }
            5 => self.proof(false)?,
            6 => {
                let bad = check(self.instrument(InstrumentKind::Indicator)?);
                let Fact::InstrumentChecked { instrument, tips_sound, body_sound, in_date, note, knowing, .. } = bad
                else {
                    return None;
                };
                Fact::InstrumentChecked {
                    instrument,
                    leads_sound: false,
                    tips_sound,
                    body_sound,
                    in_date,
                    note,
                    knowing,
                }
            }
            7 => check(self.instrument(InstrumentKind::Indicator)?),
            _ => {
                let wrong = self.mine(went_wrong);
                let of = if self.chance.one_in(3) { wrong } else { vec![*self.chance.pick(&wrong)?] };
                Fact::CauseNoted { of, found: self.chance.of(3) > 0, cause: self.why() }
            }
        })
    }

    fn proof(&mut self, works: bool) -> Option<Fact> {
        let indicator = self.instrument(InstrumentKind::Indicator)?;
        let unit = self.instrument(InstrumentKind::ProvingUnit)?;
        let on = if self.chance.one_in(4) {
            ProvedOn::KnownSource("Socket beside the door".into())
        } else {
            ProvedOn::ProvingUnit(unit)
        };
        Some(Fact::IndicatorProved { run: if self.chance.one_in(2) { self.run() } else { None }, indicator, on, works })
    }

    /// Points and locks, the tags at them, and who is there.
    pub fn at_the_points(&mut self) -> Option<Fact> {
        let means = if self.chance.one_in(4) { Means::Padlock } else { Means::Hasp };
        Some(match self.chance.of(16) {
            0..3 => {
                let label = PADLOCKS[self.chance.of(PADLOCKS.len())].into();
                let owner = if self.chance.one_in(3) { self.person()? } else { self.me };
                let through = if self.chance.one_in(5) { self.lock() } else { None };
                Fact::LockFitted { on: On::Point(self.point()?), owner, label, key: KeyAt::Owner, means, through }
            }
            3 | 4 => {
                let cut = self.chance.one_in(5).then(|| "The key broke off".to_owned());
                Fact::LockRemoved { lock: self.lock()?, cut }
            }
            5 => Fact::KeyOffered { lock: self.lock()?, to: self.person()? },
            6 => {
                let offers = self.ids(|e| matches!(e.body.fact, Fact::KeyOffered { .. }));
                Fact::KeyTaken { offer: *self.chance.pick(&offers)?, mark: "M".into() }
            }
            7 => {
                let (seen, found) = ("Blades seen apart".into(), [Position::Open, Position::Closed][self.chance.of(2)]);
                Fact::PointOpened { point: self.point()?, off_load: true, seen, found, knowing: Vec::new() }
            }
            8 => Fact::PointClosed { point: self.point()?, beside: None },
            9 => Fact::PointsParted { point: self.point()?, other: self.point()?, apart: self.why() },
            10 => {
                let tag = TagId::from_random([self.chance.of(2) as u8; TagId::RANDOM_BYTES]);
                let why = self.chance.one_in(3).then(|| self.why());
                Fact::TagBound { tag, point: self.point()?, why }
            }
            11 => Fact::WorkerJoined {
                person: self.person()?,
                duty: [Duty::Working, Duty::Learning, Duty::InCharge][self.chance.of(3)],
            },
            12 => Fact::WorkerLeft { person: self.person()? },
            13 => {
                let offers = self.mine(|f| matches!(f, Fact::ShiftOffered { .. }));
                Fact::ShiftTaken { offer: *self.chance.pick(&offers)?, mark: "M".into() }
            }
            14 => self.forced()?,
            _ => self.added()?,
        })
    }

    fn forced(&mut self) -> Option<Fact> {
        let lock = self.lock()?;
        Some(match self.chance.of(5) {
            0 => {
                let (function, reached, why) = ("Site manager".into(), "By telephone".into(), self.why());
                Fact::ForcedBegun { lock, authority: self.person()?, function, reached, why }
            }
            1 => Fact::OwnerNotOnSite { lock, how: "The gate book".into() },
            2 => Fact::OwnerSought { lock, how: "Telephone".into(), outcome: "No answer".into() },
            3 => Fact::LockForced { lock, mark: "M".into() },
            _ => Fact::OwnerTold { lock, how: "Telephone".into() },
        })
    }

    /// Whatever else there is.
    pub fn other(&mut self) -> Option<Fact> {
        Some(match self.chance.of(16) {
            0 => {
                let all = self.ids(|e| e.job() != Some(self.job) && found(&e.body.fact).is_some());
                Fact::SourceElsewhere { source: SourceRef::Found(*self.chance.pick(&all)?), why: self.why() }
            }
            1 | 2 => {
                let aside: Vec<EntryId> = self.aside.iter().map(|e| e.id).collect();
                Fact::AsideAnswered { entry: *self.chance.pick(&aside)?, why: self.why() }
            }
            3 => Fact::RunSigned { run: self.run()?, mark: "M".into() },
            4 | 5 => Fact::WorkBegan { run: self.run()? },
            6 if self.chance.one_in(2) => Fact::EarthFitted { label: "E1".into(), at: "Busbar".into() },
            6 if self.chance.one_in(2) => {
                let earths = self.mine(|f| matches!(f, Fact::EarthFitted { .. }));
                Fact::EarthRemoved { earth: *self.chance.pick(&earths)? }
            }
            6 => Fact::WorkStopped {},
            7 => Fact::WorkFinished { clear: "All are clear".into() },
            8 => {
                let covers = self.mine(|f| matches!(f, Fact::CoverOff { .. }));
                Fact::CoverBack { cover: *self.chance.pick(&covers)? }
            }
            9 => Fact::SignRemoved { point: self.point()? },
            10 => Fact::PresenceRead { first: "N".into(), then: "L1".into(), reading: Reading::Millivolts(230_000) },
            11 => Fact::HandedBack { to: "Shift leader".into(), note: String::new(), mark: "M".into() },
            12 => {
                let steps =
                    ["instruments", "sources", "stored", "open-up", "permit", "told", "dead-test", "prove-before"];
                Fact::Deviated { step: steps[self.chance.of(8)].into(), why: self.why() }
            }
            13 if self.chance.one_in(3) => photo(self.point()?),
            13 => self.proof(true)?,
            14 => {
                let all = self.names();
                let (first, then) = (all[self.chance.of(2)].clone(), all[1 + self.chance.of(all.len() - 1)].clone());
                Fact::ReadingTaken { run: self.run()?, first, then, reading: self.reading(), dc: self.chance.one_in(4) }
            }
            _ => Fact::ZoneNoted { zone: vec![["DB4", "DB6"][self.chance.of(2)].into()] },
        })
    }

    /// Any answer to any question, about whatever.
    pub fn answer(&mut self) -> Option<Fact> {
        let asked = &questions::ALL[self.chance.of(questions::ALL.len())];
        let of = match asked.of {
            _ if self.chance.one_in(6) => {
                let all = self.ids(|_| true);
                [None, self.chance.pick(&all).copied()][self.chance.of(2)]
            }
            Of::Job => None,
            Of::Point => Some(self.point()?),
            Of::Source => {
                let all = self.mine(|f| matches!(f, Fact::SourceAnswered { found: Some(_), .. }));
                Some(*self.chance.pick(&all)?)
            }
        };
        let words = if self.chance.one_in(3) { String::new() } else { self.why() };
        // What a later version may ask, or have answered.
        let question = if self.chance.one_in(40) { "boots-dry" } else { asked.code };
        let answer =
            if self.chance.one_in(40) { "mostly" } else { asked.answers[self.chance.of(asked.answers.len())].0 };
        Some(answered(question, answer, of, &words))
    }

    /// Of the site, in no job.
    pub fn at_the_site(&mut self) -> Option<Fact> {
        let node = |id: &str, kind, sort| Fact::NodeNoted { node: Node { sort, ..Node::new(id, kind) } };
        Some(match self.chance.of(10) {
            0 => node("GRID", NodeKind::Source, SourceSort::Grid),
            1 => node("GEN", NodeKind::Source, SourceSort::Generator),
            2 => node(["DB4", "DB6"][self.chance.of(2)], NodeKind::Board, SourceSort::Unsaid),
            3 => Fact::LinkNoted { link: Link::new("Q4", "GRID", "DB4", LinkKind::Switch).lockable() },
            4 => {
                Fact::LinkNoted { link: Link::new("Q9", "GEN", "DB4", LinkKind::Changeover).lockable().normally_open() }
            }
            5 => Fact::PartGone { part: ["GEN", "Q9"][self.chance.of(2)].into(), why: self.why() },
            6 => Fact::SiteRuled {
                between_proofs: [20, 60][self.chance.of(2)],
                proof_holds: [240, 720][self.chance.of(2)],
            },
            7 => {
                let name = ["Mara Lind", "mara  lind", "Маra Lind", "Ida Holm"][self.chance.of(4)].into();
                Fact::PersonNoted {
                    name,
                    qualification: "Electrician".into(),
                    telephone: String::new(),
                    corrects: None,
                }
            }
            8 => {
                let lights_from = [
                    None,
                    Some(LightsFrom { ac: 12_000, dc: Some(12_000) }),
                    Some(LightsFrom { ac: 120_000, dc: None }),
                ][self.chance.of(3)];
                let serial = ["900", "77"][self.chance.of(2)].into();
                let kind = [InstrumentKind::Indicator, InstrumentKind::ProvingUnit][self.chance.of(2)];
                Fact::InstrumentNoted { kind, name: "Two-pole tester".into(), serial, lights_from }
            }
            _ => Fact::LimitRuled { limit: Limit { ac: 2_000, dc: 2_000, rule: "House rule 7".into() } },
        })
    }
}
