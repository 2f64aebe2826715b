//! What a record claims: plain data, worked out from entries and from nothing else. A [`Claim`] is a code in the file and a sentence on paper.

use serde::Serialize;

use stillbar_text::languages::{Language, Spoken};
use stillbar_text::terms::Speaking;
use stillbar_values::{RuleSet, Tone};

use super::claim::Claim;
pub use super::claim::When;

/// Everything that a record says of a job. The page, the JSON and the CSV are written from this alone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Report {
    /// The job's id, hex.
    pub job: String,
    /// What the job is.
    pub title: String,
    /// Where on the site.
    pub place: String,
    /// The site's name.
    pub site: Option<String>,
    /// What is isolated.
    pub equipment: String,
    /// What is worked on.
    pub scope: String,
    /// The conductors, in words.
    pub system: Claim,
    /// The earthing arrangement.
    pub earthing: Claim,
    /// The order of the dead test. It stands on pages only: it is in the entry that opens the job.
    #[serde(skip)]
    pub order: Claim,
    /// What the supply is held against once it is back. It stands on pages only, like the order.
    #[serde(skip)]
    pub tolerance: Claim,
    /// By whose rules the job was done; its words are the sentence that defers to them.
    pub rules: Claim,
    /// The rules of the company that the job was done by; nothing where it had none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub company: Option<Claim>,
    /// The nominal voltage, in volts.
    pub nominal_volts: String,
    /// The greatest reading that the company counts as dead, in volts.
    pub dead_limit_volts: String,
    /// The first entry of the job.
    pub opened: When,
    /// The last entry of the job.
    pub last: When,
    /// What stood proved when the last entry was written.
    pub state: ReportState,
    /// What was passed over, and where no lock is.
    pub deviations: Vec<Claim>,
    /// What whoever reads this has to know.
    pub cautions: Vec<Claim>,
    /// The permit.
    pub permit: Option<Permit>,
    /// Who took part.
    pub people: Vec<ReportPerson>,
    /// Who was told.
    pub told: Vec<ReportTold>,
    /// Barriers and danger signs.
    pub barriers: Vec<ReportSeen>,
    /// Other sources that were looked for.
    pub sources: Vec<Looked>,
    /// Stored energy that was looked for.
    pub stored: Vec<Looked>,
    /// Circuits that were shed.
    pub circuits: Vec<ReportCircuit>,
    /// Answers to questions of the procedure, first to last.
    pub answers: Vec<ReportSeen>,
    /// Points of isolation.
    pub points: Vec<ReportPoint>,
    /// Lock boxes.
    pub boxes: Vec<ReportLockBox>,
    /// Instruments as they were checked for this job.
    pub instruments: Vec<ReportInstrument>,
    /// Temporary earths.
    pub earths: Vec<ReportEarth>,
    /// Covers that came off.
    pub covers: Vec<Cover>,
    /// Runs of the dead test.
    pub runs: Vec<ReportRun>,
    /// Readings, in the order in which they were taken.
    pub readings: Vec<ReportReading>,
    /// What else ended or followed: causes of indications, turns of the work, rotation.
    pub work: Vec<ReportSeen>,
    /// Hand-overs and hand-back, with what was signed.
    pub hand_overs: Vec<HandOver>,
    /// Photos.
    pub photos: Vec<ReportPhoto>,
    /// Everything that was recorded, in the journal's order.
    pub time_line: Vec<Line>,
    /// The devices that wrote the job, and where each ends.
    pub devices: Vec<Device>,
    /// SHA-256 over the devices and their last entries: names this state of the job.
    pub head: String,
}

impl Report {
    /// The rules that the job was done by.
    pub fn rule_set(&self) -> Option<RuleSet> {
        serde_json::from_value(self.rules.code().clone()).unwrap_or_default()
    }

    /// In the words of the rules that the job was done by, while what is given lives.
    pub fn speaking(&self) -> (Speaking, Spoken) {
        by_rules(self.rule_set())
    }
}

/// What a record is told in, while what is given lives: the words of these rules, and always English. The pages have sentences that no other
/// language has yet, and half of a page in another tongue is worse than none.
pub(super) fn by_rules(rules: Option<RuleSet>) -> (Speaking, Spoken) {
    (Speaking::of(rules), Spoken::of(Language::English))
}

/// What stands proved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportState {
    /// What a reader is to make of it; the state says it in the record.
    #[serde(skip)]
    pub tone: Tone,
    /// The state, told in a word or two.
    #[serde(rename = "state")]
    pub word: Claim,
    /// What belongs to it: since when, what is missing, what was read, what ended it; told in a sentence.
    #[serde(rename = "with")]
    pub text: Claim,
}

/// The permit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Permit {
    /// Its reference.
    pub reference: Option<String>,
    /// Why there is none.
    pub why_none: Option<String>,
    /// When.
    pub when: When,
}

/// Somebody who took part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportPerson {
    /// The entry that brought them, hex.
    pub person: String,
    /// Their name.
    pub name: String,
    /// Their qualification.
    pub qualification: String,
    /// What they did, in words.
    pub duty: Claim,
    /// Since when.
    pub joined: When,
    /// Until when.
    pub left: Option<When>,
}

/// Somebody who was told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportTold {
    /// Who.
    pub who: String,
    /// How.
    pub how: String,
    /// Of what.
    pub about: Claim,
    /// When.
    pub when: When,
}

/// Something in a sentence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportSeen {
    /// The sentence.
    #[serde(rename = "what")]
    pub says: Claim,
    /// When.
    pub when: When,
}

/// Something that was looked for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Looked {
    /// For what.
    pub what: Claim,
    /// What was found; null if nothing was.
    pub found: Option<Claim>,
    /// Where they looked.
    pub looked: String,
    /// When.
    pub when: When,
}

/// A circuit that was shed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportCircuit {
    /// Its name on the board.
    pub label: String,
    /// What it serves.
    pub serves: String,
    /// When it was switched off.
    pub off: Option<When>,
    /// How it was seen to go off.
    pub seen: Option<String>,
    /// When it was switched on again.
    pub on: Option<When>,
}

/// A point of isolation.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportPoint {
    /// Its name on the device.
    pub label: String,
    /// Where it is.
    pub at: String,
    /// What it is.
    pub kind: Claim,
    /// The conductors that it opens.
    pub poles: Vec<String>,
    /// The other source that it cuts.
    pub cuts: Option<Claim>,
    /// When it was added.
    pub added: When,
    /// Whether it stood open at the last entry, as far as is known.
    pub open: bool,
    /// When it was opened last.
    pub opened: Option<When>,
    /// When it was closed last.
    pub closed: Option<When>,
    /// When the caution sign was hung last.
    pub sign: Option<When>,
    /// When it was taken down last.
    pub sign_down: Option<When>,
    /// Tags that hang or hung at it.
    pub tags: Vec<Claim>,
    /// Its locks, on and off.
    pub locks: Vec<ReportLock>,
}

/// A lock box.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportLockBox {
    /// Its name.
    pub label: String,
    /// Where it hangs.
    pub at: String,
    /// When it was placed.
    pub when: When,
    /// The locks on it.
    pub locks: Vec<ReportLock>,
}

/// A lock that is or was on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportLock {
    /// What is written on it.
    pub label: String,
    /// Whose it is or was last.
    pub owner: String,
    /// How it secures.
    pub means: Claim,
    /// Where its key is.
    pub key: Claim,
    /// When it was fitted.
    pub fitted: When,
    /// Since when it is its owner's.
    pub since: When,
    /// When it came off.
    pub off: Option<When>,
    /// How it came off.
    pub off_how: Option<Claim>,
}

/// An instrument as it was checked.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportInstrument {
    /// Name and serial number.
    #[serde(rename = "instrument")]
    pub name: Claim,
    /// What is wrong with it; empty if nothing is.
    pub faults: Vec<Claim>,
    /// Anything else.
    pub note: String,
    /// When it was checked.
    pub when: When,
}

/// A temporary earth.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportEarth {
    /// The number on it.
    pub label: String,
    /// Where it was.
    pub at: String,
    /// When it was fitted.
    pub fitted: When,
    /// When it was taken off.
    pub off: Option<When>,
}

/// A cover that came off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Cover {
    /// Which.
    pub what: String,
    /// When it came off.
    pub off: When,
    /// When it was back.
    pub back: Option<When>,
}

/// A run of the dead test.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportRun {
    /// 1 for the first.
    pub number: usize,
    /// The indicator.
    pub indicator: Claim,
    /// What it was proved on before.
    pub on: Claim,
    /// The proof before.
    pub before: When,
    /// How the reference was shown to be earth, or that it is not.
    pub reference: Option<Claim>,
    /// When.
    pub reference_when: Option<When>,
    /// What the indicator was proved on after, and whether it worked.
    pub after: Option<Claim>,
    /// When.
    pub after_when: Option<When>,
    /// What the readings of this run show, in a sentence.
    pub shows: Claim,
    /// What ended it.
    pub ended: Option<Claim>,
    /// When.
    pub ended_when: Option<When>,
}

/// A reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportReading {
    /// Its place in the order, from 1.
    pub number: usize,
    /// Its run; null for one with the supply back, or of a run that was withdrawn.
    pub run: Option<usize>,
    /// `dead-test`, `dead-test-dc`, `direct-voltage`, `at-the-work` or `supply-back`.
    pub kind: Claim,
    /// Where the first probe went; for direct voltage, at what.
    pub first: Claim,
    /// Where the second probe went.
    pub then: String,
    /// What was read.
    pub reading: Claim,
    /// Whether it counts as an indication of voltage.
    pub indicates: bool,
    /// Why it was withdrawn.
    pub withdrawn: Option<String>,
    /// When.
    pub when: When,
}

/// A hand-over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HandOver {
    /// Of what.
    pub what: Claim,
    /// Who signed.
    pub signed: Claim,
    /// Anything that was said.
    pub note: String,
    /// The signature: strokes `x,y x,y;x,y` on 1000 by 400, or `typed:` and a name.
    pub mark: String,
    /// When.
    pub when: When,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReportPhoto {
    /// SHA-256 of the original, hex.
    pub sha256: String,
    /// Bytes of the original.
    pub length: u64,
    /// SHA-256 of the copies that were made with it, best first.
    pub copies: Vec<String>,
    /// The entry of what it shows, hex.
    pub of: String,
    /// What it shows, in words.
    pub shows: Claim,
    /// Why it was kept all the same.
    pub note: String,
    /// What was said about it when it was taken.
    pub doubts: Vec<Claim>,
    /// Tags that were read in it.
    pub tags: Vec<String>,
    /// When.
    pub when: When,
}

/// A line of the time line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Line {
    /// From 1.
    pub number: usize,
    /// Which of the devices wrote it, from 1.
    pub device: usize,
    /// Its number in that device's chain.
    pub seq: u64,
    /// What it says.
    #[serde(rename = "kind")]
    pub says: Claim,
    /// Why it was withdrawn.
    pub withdrawn: Option<String>,
    /// Whether the device's clock was behind: the time is in doubt, the order is not.
    pub clock_in_doubt: bool,
    /// When.
    pub when: When,
}

/// A device that wrote entries of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Device {
    /// From 1, in the order of their first entries.
    pub number: usize,
    /// Its public key, hex.
    pub device: String,
    /// How many entries of the job it wrote.
    pub entries: usize,
    /// The number of its last entry in the job.
    pub last_seq: u64,
    /// The id of its last entry in the job, hex.
    pub last: String,
}
