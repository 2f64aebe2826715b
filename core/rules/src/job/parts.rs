//! What a job is made of: each a fact of the journal, with when and by whom.

use serde::Serialize;

use crate::TagId;
use crate::journal::fact::{About, Duty, Found, PhotoDoubt, SourceKind, SourceRef, StoredKind, SupplyAnswer};
use crate::journal::{EntryId, Stamp};
use crate::names::says_something;
use crate::prove::System;

/// A source known at the site that does not reach this work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Elsewhere {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which source.
    pub source: SourceRef,
    /// How they know.
    pub why: String,
}

/// The supply had been noted wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SupplyCorrected {
    /// When and by whom it was corrected.
    pub stamp: Stamp,
    /// What it had been noted as.
    pub was: System,
    /// The voltage that it had been named by, in millivolts.
    pub was_nominal: u32,
    /// What was wrong.
    pub why: String,
}

/// Something that cannot be made dead here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StaysLive {
    /// When and by whom it was said.
    pub stamp: Stamp,
    /// What it is.
    pub what: String,
    /// Where.
    pub at: String,
    /// How it is screened.
    pub screened: String,
    /// Which conductors of the job's own set it is.
    pub conductors: Vec<String>,
}

impl StaysLive {
    /// Whether it says what stays live, where, and how it is screened. Without, it warns all the same, and takes nothing out of the dead test.
    pub fn is_said(&self) -> bool {
        [&self.what, &self.at, &self.screened].into_iter().all(|said| says_something(said))
    }
}

/// What becomes of readings with the supply back that do not look as they should.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// When and by whom.
    pub stamp: Stamp,
    /// The readings.
    pub of: Vec<EntryId>,
    /// What becomes of them.
    pub answer: SupplyAnswer,
    /// Who was told, or what was left off.
    pub who: String,
    /// How.
    pub how: String,
}

/// Something firm that was withdrawn and that nobody has answered anew.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Undone {
    /// When and by whom it was withdrawn.
    pub stamp: Stamp,
    /// Why.
    pub why: String,
    /// What it had been.
    pub what: UndoneWhat,
}

/// What had been recorded before it was withdrawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UndoneWhat {
    /// A source that was found.
    Source(SourceKind, String),
    /// Stored energy that was found.
    Stored(String),
    /// A check that found an instrument not fit for use.
    Check(EntryId),
}

/// A person in a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Worker {
    /// Who.
    pub person: EntryId,
    /// As what.
    pub duty: Duty,
    /// Since when.
    pub joined: Stamp,
    /// When they left.
    pub left: Option<Stamp>,
}

/// Ways and doubts of the network that do not count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Differs {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which: the parts on the way.
    pub ways: Vec<String>,
    /// Why they do not count.
    pub why: String,
}

/// Somebody was told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// When.
    pub stamp: Stamp,
    /// Who.
    pub who: String,
    /// How.
    pub how: String,
    /// About what.
    pub about: About,
}

/// An answer to the question for one kind of source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which kind.
    pub kind: SourceKind,
    /// What was found, or `None`.
    pub found: Option<Found>,
    /// Where they looked.
    pub looked: String,
    /// The conductors that a control supply brings to the point of work.
    pub terminals: Vec<String>,
    /// Its voltage to its reference in millivolts, where it is not that of the job.
    pub millivolts: Option<u32>,
}

/// An answer to the question for stored energy.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stored {
    /// When and by whom.
    pub stamp: Stamp,
    /// What was found, or `None`.
    pub found: Option<Found>,
    /// How long is waited, in seconds.
    pub seconds: u32,
    /// Where they looked.
    pub looked: String,
    /// What it is.
    pub kind: Option<StoredKind>,
    /// The waiting time on its label, in seconds.
    pub label: Option<u32>,
}

/// A circuit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Circuit {
    /// The entry that listed it.
    pub stamp: Stamp,
    /// Its name on the board.
    pub label: String,
    /// What it serves.
    pub serves: String,
    /// When it was switched off, and how it was seen to go off.
    pub off: Option<(Stamp, String)>,
    /// When it was switched on again.
    pub on: Option<Stamp>,
}

/// An instrument as it was checked before use.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Checked {
    /// When and by whom.
    pub stamp: Stamp,
    /// Which.
    pub instrument: EntryId,
    /// What is wrong with it; empty if nothing is.
    pub faults: Vec<Fault>,
    /// Anything else.
    pub note: String,
    /// The failures of this instrument that whoever checked it knew of.
    pub knowing: Vec<EntryId>,
}

/// What is wrong with an instrument.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fault {
    /// Its leads are damaged.
    Leads,
    /// Its tips are not fit for use.
    Tips,
    /// Its case is damaged.
    Case,
    /// Its own check is out of date.
    OutOfDate,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// When and by whom.
    pub stamp: Stamp,
    /// SHA-256 of the file, hex.
    pub sha256: String,
    /// Bytes of the file.
    pub length: u64,
    /// Its media type.
    pub media: String,
    /// SHA-256 of its copies, hex.
    pub copies: Vec<String>,
    /// The entry of the thing that it shows.
    pub of: EntryId,
    /// A note.
    pub note: String,
    /// The tags that were read in it.
    pub tags: Vec<TagId>,
    /// What was said about it when it was taken.
    pub doubts: Vec<PhotoDoubt>,
}

/// A turn of the work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WorkTurn {
    /// Began or went on, under this run.
    Began(EntryId),
    /// Was left.
    Left(String),
    /// Was stopped, because the proof had ended.
    Stopped,
    /// Was finished.
    Finished,
}

/// A deviation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deviation {
    /// When and by whom.
    pub stamp: Stamp,
    /// The step's name.
    pub step: String,
    /// Why.
    pub why: String,
}
