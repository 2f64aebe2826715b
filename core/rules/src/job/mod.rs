//! A job: what the journal says of it, and what it still lacks.
//!
//! Promises: a [`Job`] is nothing but a fold over the job's entries, so the same entries give the same job on every device and
//! in any order of arrival; no step is ticked, [`steps`] works out what each one lacks; nothing is appended that [`gate`]
//! refuses. Start at [`Job::fold`].

pub mod age;
pub mod asked;
mod back;
pub mod blocker;
mod blockers;
mod case;
pub mod company;
mod earths;
pub mod ended;
mod fold;
pub mod gate;
mod heard;
pub mod known;
mod limits;
mod listed;
mod parts;
mod presence;
pub mod refusal;
mod stand;
mod stated;
mod summary;
mod trouble;
pub mod waits;
pub use back::{Back, SupplyName};
pub use blocker::Blocker;
pub use earths::TemporaryEarth;
pub use ended::{Ended, Standing, Void, Voided};
pub use heard::Heard;
pub use known::Known;
pub use listed::{LockListed, ProofState, TagListed};
pub use parts::*;
pub use presence::{SupplyFinding, SupplyOdd};
pub use stated::{SaidBeside, Stated};
pub use summary::{NamedLock, Part, Summary};
pub use trouble::{Cause, Trouble, TroubleKind};

pub mod steps;

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::journal::fact::{Duty, Limit, On, ProvedOn, Rotation, RotationGuard, SourceKind};
use crate::journal::{EntryId, Stamp};
use crate::names::alike;
use crate::point::{Lock, LockBox, Point};
use crate::prove::conditions::known_line_proves;
use crate::prove::judge::energised::Tolerance;
use crate::prove::{Conductor, Earthing, Order, Role, Run, Supply, System, Taken, Test};
use stillbar_values::{CompanyRules, RuleSet};

/// A job as the journal tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Job {
    /// The entry that opened it; its id is the job's.
    pub stamp: Stamp,
    /// The site.
    pub site: Option<EntryId>,
    /// It happens on a practice board.
    pub practice: bool,
    /// Entries of this job that this version cannot read in full: nothing stands proved beside them.
    pub newer: Vec<Stamp>,
    /// What the job is.
    pub title: String,
    /// Where on the site.
    pub place: String,
    /// What is isolated.
    pub equipment: String,
    /// What will be worked on.
    pub scope: String,
    /// The conductors.
    pub system: System,
    /// The earthing arrangement.
    pub earthing: Earthing,
    /// The order of the dead test.
    pub order: Order,
    /// The voltage that the system is named by, millivolts.
    pub nominal: u32,
    /// The conductors of a system of one's own.
    pub own: Vec<Conductor>,
    /// By whose rules it is done.
    pub rule_set: Option<RuleSet>,
    /// Corrections of the supply, first to last.
    pub corrected: Vec<SupplyCorrected>,
    /// What cannot be made dead here and stays live.
    pub stays_live: Vec<StaysLive>,
    /// The company's limit for figures that count as no indication; none unless it set one.
    pub limit: Option<Limit>,
    /// The rules of the company that the job is done by: those that held when it was opened, or else the first that were heard of since.
    pub company: Option<Arc<CompanyRules>>,
    /// Where none were known when it was opened: those that were heard of since, first to last, each once. All of them ask and tighten.
    pub company_heard: Vec<(Stamp, Arc<CompanyRules>)>,
    /// When the limit was last changed in this job.
    pub limit_set: Option<Stamp>,
    /// What the supply is held against when it is back.
    pub tolerance: Tolerance,
    /// What is worked on in the site's network: ids of nodes or links; empty if nobody said.
    pub zone: Vec<String>,
    /// When somebody first named it.
    pub zone_named: Option<Stamp>,
    /// Ways that the network shows and for which a person answers.
    pub differs: Vec<Differs>,
    /// The permit: its reference, or why there is none.
    pub permit: Option<(Stamp, Result<String, String>)>,
    /// Who takes part.
    pub workers: Vec<Worker>,
    /// Who was told what.
    pub told: Vec<Told>,
    /// Barriers and danger signs.
    pub barriers: Vec<(Stamp, String, String)>,
    /// Answers to the question for other sources.
    pub sources: Vec<Source>,
    /// Sources known at the site that do not reach this work, as somebody says who answers for it.
    pub elsewhere: Vec<Elsewhere>,
    /// Answers to the question for stored energy.
    pub stored: Vec<Stored>,
    /// Points of isolation.
    pub points: Vec<Point>,
    /// Lock boxes.
    pub boxes: Vec<LockBox>,
    /// Locks, on and off.
    pub locks: Vec<Lock>,
    /// Circuits.
    pub circuits: Vec<Circuit>,
    /// Why no circuit needs shedding.
    pub no_circuits: Option<(Stamp, String)>,
    /// Instruments as they were checked for this job; the latest check of each counts.
    pub instruments: Vec<Checked>,
    /// Every check, and every failure of an instrument: what a proof made with it rests on.
    pub checks: Vec<Checked>,
    /// Failures of instruments in this job: the instrument and the entry that tells of it.
    pub failures: Vec<(EntryId, Stamp)>,
    /// Photos.
    pub photos: Vec<Photo>,
    /// Covers that came off, and when they came back.
    pub covers: Vec<(Stamp, String, Option<Stamp>)>,
    /// Why no cover comes off.
    pub no_covers: Option<(Stamp, String)>,
    /// Runs of the dead test, first to last.
    pub runs: Vec<Run>,
    /// Everything that ended the proofs before it.
    pub voided: Vec<Voided>,
    /// Indications, failed proofs of earth and failed second proofs of an indicator, in all runs.
    pub troubles: Vec<Trouble>,
    /// What was behind them.
    pub causes: Vec<Cause>,
    /// When work began or went on, and ended.
    pub work: Vec<(Stamp, WorkTurn)>,
    /// The work is finished: when, and how it was seen that people and tools are clear.
    pub finished: Option<(Stamp, String)>,
    /// The isolation was given up before the work was done: when, and why.
    pub given_up: Option<(Stamp, String)>,
    /// Readings with the supply back.
    pub presence: Vec<Taken>,
    /// What becomes of those that do not look as they should.
    pub supply_answers: Vec<Answered>,
    /// The rotation before the isolation, or why it was not read.
    pub rotation_found: Option<(Stamp, Option<Rotation>, String)>,
    /// The rotation with the supply back, and how motors were kept from harm.
    pub rotation: Option<(Stamp, Rotation, String, Option<RotationGuard>)>,
    /// An offer of the shift that was not answered yet: the entry, by whom, to whom, what was told.
    pub shift: Option<(EntryId, EntryId, EntryId, String)>,
    /// When the shift was last taken over.
    pub shift_taken: Option<Stamp>,
    /// The hand-back: when, to whom, note, drawn signature.
    pub handed: Option<(Stamp, String, String, String)>,
    /// Answers to questions of the procedure, first to last.
    pub given: Vec<asked::GivenAnswer>,
    /// Temporary earths, in and off.
    pub earths: Vec<TemporaryEarth>,
    /// When neutrals were parted.
    pub neutrals_parted: Vec<Stamp>,
    /// Deviations.
    pub deviations: Vec<Deviation>,
    /// The changes of scope: what was done before the last belongs to an earlier round.
    pub scopes: Vec<Stamp>,
    /// Entries whose writers did not know of a change of scope before them: what they say belongs to no round.
    pub unaware: BTreeSet<EntryId>,
    /// What each device had of the others' entries.
    pub heard: Heard,
    /// Entries that were withdrawn, and why.
    pub withdrawn: Vec<(Stamp, EntryId, String)>,
    /// Of those, what nobody has answered anew: a source that had been found, a check that an instrument had failed.
    pub undone: Vec<Undone>,
    /// Entries kept aside that somebody has looked into.
    pub aside_answered: Vec<(Stamp, EntryId)>,
    /// What is known beside the job's own entries; `None` where the job is not held against anything, and then it proves nothing.
    pub known: Option<Arc<Known>>,
}

impl Job {
    /// The same job held against nothing but its own entries, as at its last one: what a table or a record can say.
    pub fn alone(&self) -> Job {
        let now = age::Moment::of(self.heard.latest().unwrap_or(&self.stamp));
        Job { known: Some(Arc::new(Known::alone(now, self))), ..self.clone() }
    }

    /// The job's name.
    pub fn id(&self) -> EntryId {
        self.stamp.id
    }

    /// The supply as it was noted; no line is marked in it.
    fn noted_supply(&self) -> Supply {
        Supply { own: self.own.clone(), ..Supply::of(self.system, self.nominal) }
    }

    /// Whether the lines of the supply turn.
    pub fn turns(&self) -> bool {
        self.noted_supply().turns()
    }

    /// The supply, with the line that is marked in it as far as somebody has shown which.
    pub fn supply(&self) -> Supply {
        Supply { marked: asked::marked(self), ..self.noted_supply() }
    }

    /// The conductors to test: those of the system, and those that a found control supply brings. What stays live is none of them.
    pub fn conductors(&self) -> Vec<Conductor> {
        let mut all = self.noted_supply().conductors();
        all.retain(|c| !(self.named_live(&c.name) && self.may_stay_live(&c.name)));
        for source in self.found() {
            for terminal in &source.terminals {
                if !all.iter().any(|c| c.name == *terminal) {
                    let supply = source.found.as_ref().map(|f| f.what.clone());
                    all.push(Conductor { name: terminal.clone(), role: Role::Control, supply, colour: None });
                }
            }
        }
        all
    }

    /// Whether a line that is known to be live shows by its full voltage that a conductor is earth.
    pub fn live_line_shows_earth(&self) -> bool {
        known_line_proves(self.earthing) && self.supply().line_shows_earth()
    }

    /// Whether an entry names it as one that stays live.
    fn named_live(&self, name: &str) -> bool {
        self.stays_live.iter().any(|live| live.is_said() && live.conductors.iter().any(|named| named == name))
    }

    /// Whether a conductor may leave the dead test as one that stays live: it is of the job's own set and of a supply beside the normal
    /// one, of which no point opens anything. Whatever a point could open lies behind it, and is proved dead.
    pub fn may_stay_live(&self, name: &str) -> bool {
        let here = self.own.iter().find(|c| c.name == name && !c.role.is_reference());
        let Some(supply) = here.filter(|_| self.system == System::Own).and_then(|c| c.supply.as_ref()) else {
            return false;
        };
        if !self.leaves_a_pair(&[name.to_owned()]) {
            return false;
        }
        let of_it = |pole: &String| self.own.iter().any(|c| c.name == *pole && c.supply.as_ref() == Some(supply));
        !self.points.iter().any(|p| p.poles.iter().any(of_it))
    }

    /// Whether something is left to be proved dead beside what stays live, these as well: a line or a pole, and what it is read to.
    pub fn leaves_a_pair(&self, more: &[String]) -> bool {
        let left = || self.own.iter().filter(|c| !self.named_live(&c.name) && !more.contains(&c.name));
        left().any(|c| c.role.is_line()) && left().count() > 1
    }

    /// The dead test.
    pub fn plan(&self) -> Vec<Test> {
        crate::prove::plan(&self.conductors(), self.order)
    }

    /// The run that was begun last.
    pub fn run(&self) -> Option<&Run> {
        self.runs.last()
    }

    /// What needs a reading of direct voltage: stored energy, and every UPS, PV or battery that was found. Its entry, its name, and
    /// the waiting time on its label in seconds.
    pub fn direct(&self) -> Vec<(EntryId, String, u32)> {
        let stored = self.stored.iter();
        let stored = stored.filter_map(|s| s.found.as_ref().map(|found| (s.stamp.id, found.what.clone(), s.seconds)));
        let direct = |s: &&Source| matches!(s.kind, SourceKind::Ups | SourceKind::Pv | SourceKind::Battery);
        let sources = self.sources.iter().filter(direct).filter(|s| !self.stays_live_whole(s));
        let sources = sources.filter_map(|s| s.found.as_ref().map(|f| (s.stamp.id, f.what.clone(), 0)));
        stored.chain(sources).collect()
    }

    /// Whether something was done in the round that is under way.
    pub fn this_round(&self, stamp: &Stamp) -> bool {
        let round = self.scopes.last().unwrap_or(&self.stamp);
        stamp.clock > round.clock && !self.unaware.contains(&stamp.id)
    }

    /// Those who take part now.
    pub fn present(&self) -> impl Iterator<Item = &Worker> {
        self.workers.iter().filter(|w| w.left.is_none())
    }

    /// Those who take part now, by name.
    pub fn people(&self) -> Vec<EntryId> {
        self.present().map(|w| w.person).collect()
    }

    /// Who answers for the isolation.
    pub fn in_charge(&self) -> Option<EntryId> {
        self.present().find(|w| w.duty == Duty::InCharge).map(|w| w.person)
    }

    /// Whether work began and nobody has stopped, left or finished it; the proof that it began under may have ended since.
    pub fn at_work(&self) -> bool {
        matches!(self.work.last(), Some((_, WorkTurn::Began(_))))
    }

    /// Whether people are at work under the run that was begun last: work does not go on by itself under a new one.
    pub fn working(&self) -> bool {
        matches!(self.work.last(), Some((_, WorkTurn::Began(run))) if self.run().is_some_and(|r| r.id() == *run))
    }

    /// The locks that are on.
    pub fn locks_on(&self) -> impl Iterator<Item = &Lock> {
        self.locks.iter().filter(|l| l.is_on())
    }

    /// A lock by name.
    pub fn lock(&self, id: EntryId) -> Option<&Lock> {
        self.locks.iter().find(|l| l.stamp.id == id)
    }

    /// A point by name.
    pub fn point(&self, id: EntryId) -> Option<&Point> {
        self.points.iter().find(|p| p.stamp.id == id)
    }

    /// The link of the site's network that a lock is on.
    pub fn switch_of(&self, on: On) -> Option<&String> {
        match on {
            On::Point(point) => self.point(point)?.switch.as_ref(),
            On::Box(_) => None,
        }
    }

    /// The photos of a thing.
    pub fn photos_of(&self, id: EntryId) -> impl Iterator<Item = &Photo> {
        self.photos.iter().filter(move |p| p.of == id)
    }

    /// The latest answer for each kind of source, and every source that was found.
    pub fn found(&self) -> impl Iterator<Item = &Source> {
        self.sources.iter().filter(|s| s.found.is_some())
    }

    /// The locks that hold a point now: on it, or on a box that holds the key of one on it.
    pub fn locks_at(&self, point: EntryId) -> Vec<&Lock> {
        let boxes = self.boxes_of(point);
        let here = |l: &&Lock| match l.on {
            On::Point(id) => id == point,
            On::Box(id) => boxes.iter().any(|b| b.stamp.id == id),
        };
        self.locks_on().filter(here).collect()
    }

    /// Whether a point of the normal supply opens this conductor.
    pub fn opens(&self, conductor: &str) -> bool {
        self.points.iter().any(|p| p.cuts.is_none() && p.poles.iter().any(|pole| pole == conductor))
    }

    /// Whether a point opens this conductor: of the normal supply its points, of a control supply that was found those that cut it, and of
    /// another supply any point.
    pub fn opens_it(&self, conductor: &Conductor) -> bool {
        let brings = |s: &&Source| conductor.role == Role::Control && s.terminals.contains(&conductor.name);
        let source = self.found().find(brings).map(|s| s.stamp.id);
        let fits = |p: &&Point| match (source, &conductor.supply) {
            (Some(_), _) => p.cuts == source,
            (None, None) => p.cuts.is_none(),
            (None, Some(_)) => true,
        };
        self.points.iter().filter(fits).any(|p| p.poles.contains(&conductor.name))
    }

    /// The conductors of one's own set that a found source feeds: its supply is called as it is.
    pub fn of_supply(&self, source: &Source) -> impl Iterator<Item = &Conductor> {
        let what = source.found.as_ref().map(|f| f.what.clone());
        let fed =
            move |c: &&Conductor| c.supply.as_ref().zip(what.as_ref()).is_some_and(|(own, what)| alike(own, what));
        self.own.iter().filter(|c| !c.role.is_reference()).filter(fed)
    }

    /// Whether all that a found source feeds here stays live and is named so: then no point has to cut it off.
    pub fn stays_live_whole(&self, source: &Source) -> bool {
        let named = |c: &Conductor| self.named_live(&c.name);
        let mut fed = self.of_supply(source).peekable();
        fed.peek().is_some() && fed.all(|c| named(c) && self.may_stay_live(&c.name))
    }

    /// All conductors that are here, those that stay live with them: what a point may open.
    pub fn all_conductors(&self) -> Vec<Conductor> {
        let mut all = self.conductors();
        let others = self.own.iter().filter(|own| !all.iter().any(|c| c.name == own.name));
        let others: Vec<Conductor> = others.cloned().collect();
        all.extend(others);
        all
    }

    /// The boxes that hold the key of a lock on a point.
    pub fn boxes_of(&self, point: EntryId) -> Vec<&LockBox> {
        let holds = |b: &&LockBox| b.keys(&self.locks).iter().any(|l| l.on == On::Point(point));
        self.boxes.iter().filter(holds).collect()
    }

    /// What the indicator of the latest run was proved on first.
    pub fn proved_on(&self) -> Option<&ProvedOn> {
        self.run()?.on()
    }
}
