//! Everything that can be recorded, and nothing else.
//!
//! A fact says what a person did or saw, never that a step is done. References are ids of earlier entries. Quantities are
//! whole numbers of a small unit. Which facts a job accepts at a moment is decided in `job::gate`.

#![allow(missing_docs, reason = "a variant's comment explains its fields together")]

use ciborium::Value;
use serde::{Deserialize, Serialize};

use super::cbor::{self, CborError};
use super::{DeviceId, EntryId};

pub use super::kinds::*;
use stillbar_values::network::{Link, Node, Position};
use stillbar_values::tag::TagId;
use stillbar_values::{
    CompanyRules, Conductor, Earthing, Means, Measured, Order, PointKind, Reading, RuleSet, System, Tolerance,
};
pub use stillbar_values::{Limit, PhotoDoubt, Rotation};

/// One thing that happened. The kebab-case names are the ones in the file format.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", rename_all_fields = "kebab-case")]
pub enum Fact {
    // ---- the device, and what all its jobs share
    /// The device began its journal.
    /// `after`: the device whose key this one goes on for, because its journal was put back from a copy or its key was copied.
    DeviceBegan {
        label: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after: Option<DeviceId>,
    },
    /// A site.
    SiteNoted { name: String },
    /// A person, or a correction of one.
    PersonNoted { name: String, qualification: String, telephone: String, corrects: Option<EntryId> },
    /// A voltage indicator, a proving unit or another instrument.
    /// `lights_from`: its lowest indication; `None` where nobody said, and then it proves nothing.
    InstrumentNoted {
        kind: InstrumentKind,
        name: String,
        serial: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lights_from: Option<LightsFrom>,
    },
    /// The company's limit for figures that count as no indication, by the name of its rule.
    LimitRuled { limit: Limit },
    /// What the site sets below our own most: minutes between two proofs of the indicator, minutes that a proof holds.
    SiteRuled { between_proofs: u32, proof_holds: u32 },
    /// What the company rules for jobs that are opened at this site from now on. `call`: whom to call, as `company::call_written` writes it.
    CompanyRuled { rules: Box<CompanyRules>, call: String },

    // ---- the supply network of a site
    /// A source, board, load or joint of the site's network, in the place of what was noted under its id before.
    NodeNoted { node: Node },
    /// A switch, cable or other link between two nodes, likewise.
    LinkNoted { link: Link },
    /// A node or link is not there.
    PartGone { part: String, why: String },
    /// A link was seen open or closed, whatever it normally is.
    LinkSeen { link: String, position: Position },

    // ---- plan
    /// A job begins; the id of this entry is the job.
    JobOpened {
        title: String,
        place: String,
        equipment: String,
        scope: String,
        system: System,
        earthing: Earthing,
        order: Order,
        /// The voltage that the system is named by, in millivolts.
        nominal_millivolts: u32,
        /// The conductors of a system of one's own.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        own: Vec<Conductor>,
        /// By whose rules it is done; none where nobody chose.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rules: Option<RuleSet>,
        /// The limit for figures that count as no indication; none unless the company set one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        limit: Option<Limit>,
        /// What the supply is held against when it is back.
        #[serde(default, skip_serializing_if = "Tolerance::is_usual")]
        tolerance: Tolerance,
        /// The rules of the company that held at the site: the job is done by them, whatever comes later.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        company: Option<Box<CompanyRules>>,
    },
    /// The rules of the company came to be known in a job that was opened without any, where a device heard of them: from here on it is done
    /// by these. Nobody's deed: the device writes it. A lower limit ends the proof.
    CompanyHeard { rules: Box<CompanyRules> },
    /// The person in charge changes the limit of this job; the proof ends.
    LimitSet { limit: Option<Limit> },
    /// Conductors, earthing or voltage had been noted wrong: this is what is there. The proof ends.
    SystemCorrected {
        system: System,
        earthing: Earthing,
        nominal_millivolts: u32,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        own: Vec<Conductor>,
        why: String,
    },
    /// Something near the work cannot be made dead here and stays live: what, where, and how it is screened. `conductors`: those of the
    /// job's own set that it is, which no point opens and which leave the dead test by name.
    StaysLive {
        what: String,
        at: String,
        screened: String,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        conductors: Vec<String>,
    },
    /// The job is now about something else or more.
    ScopeChanged { scope: String, why: String },
    /// What is worked on in the site's network: ids of nodes or links.
    ZoneNoted { zone: Vec<String> },
    /// These ways or doubts that the network shows do not count, and a person answers for it. Ids of the parts on the way.
    CutDiffers { ways: Vec<String>, why: String },
    /// The permit, or why there is none.
    PermitNoted { reference: Option<String>, why_none: Option<String> },
    /// A person takes part.
    WorkerJoined { person: EntryId, duty: Duty },
    /// A person no longer takes part.
    WorkerLeft { person: EntryId },
    /// Somebody was told.
    Told { who: String, how: String, about: About },
    /// A barrier or a danger sign stands.
    BarrierPlaced { what: String, at: String },
    /// Another source was looked for: found, or none found by the person who wrote this.
    /// `terminals`: the conductors that a control supply brings to the point of work, and `millivolts` its voltage to its reference.
    SourceAnswered {
        kind: SourceKind,
        found: Option<Found>,
        looked: String,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        terminals: Vec<String>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        millivolts: Option<u32>,
    },
    /// A source that another job found at this site, or that its network shows, does not reach this work; who says so answers for it.
    SourceElsewhere { source: SourceRef, why: String },
    /// Stored energy was looked for: drives, capacitors, UPS. `seconds` is how long is waited; `label` the waiting time on its label, in
    /// seconds. Before there was a kind, `seconds` was that of the label.
    StoredAnswered {
        found: Option<Found>,
        seconds: u32,
        looked: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        kind: Option<StoredKind>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        label: Option<u32>,
    },
    /// A point of isolation.
    PointAdded {
        label: String,
        at: String,
        kind: PointKind,
        lockable: bool,
        /// The conductors it opens.
        poles: Vec<String>,
        /// The other source that it cuts off, or `None` for the normal supply.
        cuts: Option<EntryId>,
        /// The link of the site's network that it is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        switch: Option<String>,
        /// Whether it is open in normal service, so that it stays open when the supply is restored.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        stays_open: bool,
        /// The point of this site, known from another job, that it is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        same_as: Option<EntryId>,
    },
    /// Two points that are alike are two; who stood there says by what they are told apart.
    PointsParted { point: EntryId, other: EntryId, apart: String },
    /// A tag hangs at a point. `why` where it hung somewhere else before.
    TagBound { tag: TagId, point: EntryId, why: Option<String> },
    /// A tag no longer hangs at its point: lost, damaged, taken down.
    TagGone { tag: TagId, point: EntryId, why: String },
    /// A person read the tag at the point: they stood in front of it.
    TagRead { tag: TagId, point: EntryId },
    /// A point that was added before is this link of the site's network.
    PointDrawn { point: EntryId, switch: String, stays_open: bool },
    /// A lock box for keys.
    BoxPlaced { label: String, at: String },
    /// A circuit to shed before opening, and to restore after closing.
    CircuitListed { label: String, serves: String },
    /// No circuit needs shedding.
    NoCircuits { why: String },
    /// An instrument was looked at before use.
    InstrumentChecked {
        instrument: EntryId,
        leads_sound: bool,
        tips_sound: bool,
        body_sound: bool,
        in_date: bool,
        note: String,
        /// The failures of this instrument, in any job, that whoever checked it knew of.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        knowing: Vec<EntryId>,
    },

    // ---- isolate
    /// A circuit was switched off and seen to go off.
    CircuitOff { circuit: EntryId, seen: String },
    /// A point was opened, or found open. `knowing`: closings of a like point in other jobs that whoever opened it knew of.
    PointOpened {
        point: EntryId,
        off_load: bool,
        seen: String,
        found: Position,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        knowing: Vec<EntryId>,
    },
    /// A lock is on. `through`: the same padlock is already on elsewhere, and one cable or bar goes through both.
    LockFitted {
        on: On,
        owner: EntryId,
        label: String,
        key: KeyAt,
        means: Means,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        through: Option<EntryId>,
    },
    /// A caution sign hangs at a point.
    SignPosted { point: EntryId },
    /// A photo was kept.
    /// `tags` are those that were read in it; `doubts` what was said about it; `note` why it was kept all the same; `copies` the SHA-256
    /// of its copies for records and for lists, which hold nothing but the picture.
    PhotoTaken {
        sha256: String,
        length: u64,
        media: String,
        of: EntryId,
        note: String,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        tags: Vec<TagId>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        doubts: Vec<PhotoDoubt>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        copies: Vec<String>,
    },

    // ---- locks and keys
    /// The holder offers lock and key to another person.
    KeyOffered { lock: EntryId, to: EntryId },
    /// The other person takes them.
    KeyTaken { offer: EntryId, mark: String },
    /// A shift is offered.
    ShiftOffered { to: EntryId, told: String },
    /// A shift is taken.
    ShiftTaken { offer: EntryId, mark: String },
    /// The owner took the lock off. `cut`: they cut it, and why there was no key.
    LockRemoved {
        lock: EntryId,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cut: Option<String>,
    },
    /// Removing the lock of an absent owner begins. `function`: what the authority is at this site; `reached`: how they were reached.
    ForcedBegun { lock: EntryId, authority: EntryId, function: String, reached: String, why: String },
    /// The owner was looked for on site and is not there.
    OwnerNotOnSite { lock: EntryId, how: String },
    /// An attempt to reach the owner.
    OwnerSought { lock: EntryId, how: String, outcome: String },
    /// The lock is off, taken off under the named authority.
    LockForced { lock: EntryId, mark: String },
    /// The owner knows, before resuming work.
    OwnerTold { lock: EntryId, how: String },

    // ---- prove
    /// A cover came off.
    CoverOff { what: String },
    /// No cover has to come off.
    NoCovers { why: String },
    /// The indicator was proved: `run` is `None` at the beginning of a run, or the run that this ends.
    IndicatorProved { run: Option<EntryId>, indicator: EntryId, on: ProvedOn, works: bool },
    /// A reading between two conductors; `first` is where the first probe went. `dc`: in the range for direct voltage.
    ReadingTaken {
        run: EntryId,
        first: String,
        then: String,
        reading: Reading,
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        dc: bool,
    },
    /// A voltage was met at the work, on whatever it was: in no plan, and as much of an indication as one that is.
    VoltageMet { at: String, reading: Reading },
    /// The protective conductor that readings are taken against was shown to be earth, or not.
    ReferenceProved { run: EntryId, way: EarthProof, how: String, holds: bool },
    /// A reading of direct voltage across stored energy, or at a source of direct voltage.
    DischargeRead { run: EntryId, of: EntryId, reading: Reading },
    /// What was behind an indication, a failed proof of earth or a failed second proof of an indicator: the entries that tell of them.
    /// `found`: false says that it was looked for and not found.
    CauseNoted { of: Vec<EntryId>, found: bool, cause: String },
    /// Somebody of the job who does not learn stands by a learner's test.
    RunSigned { run: EntryId, mark: String },

    // ---- work
    /// A temporary earth is in: the number on it, and where it is.
    EarthFitted { label: String, at: String },
    /// It is off again.
    EarthRemoved { earth: EntryId },
    /// Work began or went on under a standing proof.
    WorkBegan { run: EntryId },
    /// The work was left; the proof ends.
    WorkLeft { why: String },
    /// The proof ended under the work: it was stopped, and everybody is clear.
    WorkStopped {},
    /// The isolation is given up before the work was done; what was opened can be closed again.
    GivenUp { why: String, clear: String },
    /// A neutral was parted; the proof ends.
    NeutralParted { what: String },
    /// Work is finished, people and tools are clear.
    WorkFinished { clear: String },

    // ---- restore
    /// A cover is back.
    CoverBack { cover: EntryId },
    /// The sign is down.
    SignRemoved { point: EntryId },
    /// A point was closed. `beside`: why a source that makes a supply of its own goes on beside another one.
    PointClosed {
        point: EntryId,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        beside: Option<String>,
    },
    /// A reading with the supply back.
    PresenceRead { first: String, then: String, reading: Reading },
    /// The rotation before the isolation, or `None` and why it was not read.
    RotationFound { rotation: Option<Rotation>, how: String },
    /// The rotation with the supply back. `guard`: how motors were kept from harm where it had not been read before.
    RotationRead {
        rotation: Rotation,
        how: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        guard: Option<RotationGuard>,
    },
    /// What becomes of readings with the supply back that do not look as they should: the entries that tell of them. `who` was told, or
    /// what was left off.
    SupplyAnswered { of: Vec<EntryId>, answer: SupplyAnswer, who: String, how: String },
    /// A circuit was switched on.
    CircuitOn { circuit: EntryId },
    /// The installation was handed back.
    HandedBack { to: String, note: String, mark: String },

    // ---- anywhere
    /// A named person passes over what a step still asks for.
    Deviated { step: String, why: String },
    /// A question of the procedure was answered: its code, and that of the answer. `of`: the point or source that it was asked of, if it is
    /// asked of each; `point`: the point of the company's own checklist, by its code; `words`: what the answer asks to be said, or `who`,
    /// where it asks for people; `read`: what was read for it, where it asks for a figure.
    Answered {
        question: String,
        answer: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        of: Option<EntryId>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        point: Option<String>,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        words: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        who: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        read: Option<Measured>,
    },
    /// An earlier entry was a mistake. It stays; what it ended stays ended.
    Withdrawn { entry: EntryId, why: String },
    /// Somebody looked into an entry about this job that is kept aside, and says how it is at the spot.
    AsideAnswered { entry: EntryId, why: String },

    // ---- written by a newer version
    /// What this version cannot read: its kind, and what is recorded, in deterministic CBOR. It is never written here.
    #[serde(skip)]
    Newer { kind: String, payload: Vec<u8> },
}

impl Fact {
    /// What is recorded, as CBOR's own kinds of values; of what cannot be read, the content alone.
    pub(super) fn value(&self) -> Result<Value, CborError> {
        match self {
            Fact::Newer { payload, .. } => cbor::item(&mut payload.as_slice()),
            read => cbor::value(read),
        }
    }

    /// The fact's name in the file format, such as `lock-fitted`.
    pub fn kind(&self) -> String {
        if let Fact::Newer { kind, .. } = self {
            return kind.clone();
        }
        match serde_json::to_value(self) {
            Ok(serde_json::Value::Object(map)) => map.keys().next().cloned().unwrap_or_default(),
            _ => String::new(),
        }
    }
}
