//! What facts are made of: kinds, duties, ways and answers, each with its name in the file format.

use serde::{Deserialize, Serialize};

use super::EntryId;

/// What an instrument is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum InstrumentKind {
    /// A two-pole voltage indicator (IEC 61243-3).
    Indicator,
    /// A proving unit for it.
    ProvingUnit,
    /// A phase rotation indicator (IEC 61557-7).
    RotationIndicator,
}

/// What a person does in a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Duty {
    /// Answers for the isolation.
    InCharge,
    /// Works.
    Working,
    /// Works under somebody's eye.
    Learning,
}

/// What somebody was told about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum About {
    /// That the supply goes off.
    Isolating,
    /// That the supply comes back.
    Energising,
}

/// The other sources that are asked for, one by one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SourceKind {
    /// A standby or plug-in generator.
    Generator,
    /// An uninterruptible supply.
    Ups,
    /// Photovoltaics.
    Pv,
    /// A battery store, a vehicle charger that feeds back.
    Battery,
    /// A second feeder, a tie, a changeover.
    SecondFeeder,
    /// A control supply, a heater, a lighting circuit from elsewhere.
    Control,
}

/// What keeps energy after the supply is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StoredKind {
    /// A drive or another converter with a DC link.
    Drive,
    /// Capacitors that correct the power factor.
    PowerFactor,
    /// Smoothing and other capacitors, in machines and power supplies.
    Capacitors,
    /// An uninterruptible supply.
    Ups,
    /// An inverter of photovoltaics.
    PvInverter,
    /// A converter of a battery store or of a vehicle charger.
    BatteryConverter,
    /// Nobody knows.
    NotKnown,
}

impl StoredKind {
    /// Every kind, as offered.
    pub const ALL: [StoredKind; 7] = [
        StoredKind::Drive,
        StoredKind::PowerFactor,
        StoredKind::Capacitors,
        StoredKind::Ups,
        StoredKind::PvInverter,
        StoredKind::BatteryConverter,
        StoredKind::NotKnown,
    ];
}

/// A source that was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Found {
    /// What it is.
    pub what: String,
    /// Where it comes in.
    pub at: String,
}

/// What a lock is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum On {
    /// A point of isolation.
    Point(EntryId),
    /// A lock box.
    Box(EntryId),
}

/// Where a lock's key is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum KeyAt {
    /// With the owner.
    Owner,
    /// In a lock box.
    Box(EntryId),
}

/// What an indicator was proved on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProvedOn {
    /// A proving unit.
    ProvingUnit(EntryId),
    /// A source known to be live: which.
    KnownSource(String),
}

/// The lowest voltage that an instrument indicates, in millivolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct LightsFrom {
    /// Alternating.
    pub ac: u32,
    /// Direct; `None`: it does not indicate direct voltage.
    pub dc: Option<u32>,
}

/// A source that is known at a site beside the job.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SourceRef {
    /// What another job found: the entry that tells of it.
    Found(EntryId),
    /// A source of the site's network, by its id there.
    Drawn(String),
}

/// How it is shown that a protective conductor is earth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum EarthProof {
    /// It reads the full voltage to a line that is known to be live. Worth nothing where the supply has no earthed point.
    LiveLine,
    /// Low resistance to the main earthing terminal.
    MainTerminal,
    /// Low resistance to metalwork that is bonded elsewhere.
    Bonded,
    /// Another way, in words.
    Other,
}

/// How motors were kept from harm while a rotation was read for the first time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RotationGuard {
    /// What turns was uncoupled.
    Uncoupled,
    /// A short bump that somebody watched.
    Bumped,
}

/// What becomes of a reading with the supply back that does not look as it should.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SupplyAnswer {
    /// Put right; a new reading shows it.
    Mended,
    /// What it feeds is left off.
    LeftOff,
    /// A named person who was told accepts it.
    Accepted,
}

impl RotationGuard {
    /// All.
    pub const ALL: [RotationGuard; 2] = [RotationGuard::Uncoupled, RotationGuard::Bumped];
}

impl SupplyAnswer {
    /// All.
    pub const ALL: [SupplyAnswer; 3] = [SupplyAnswer::Mended, SupplyAnswer::LeftOff, SupplyAnswer::Accepted];
}

impl SourceKind {
    /// Every kind, in the order in which they are asked for.
    pub const ALL: [SourceKind; 6] = [
        SourceKind::SecondFeeder,
        SourceKind::Generator,
        SourceKind::Ups,
        SourceKind::Pv,
        SourceKind::Battery,
        SourceKind::Control,
    ];
}
