//! What may be behind the readings, by name.

use serde::{Serialize, Serializer};

/// What may explain the readings; what each means is in `docs/formats.md`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The readings are what conductors at one potential give.
    NoVoltage,
    /// The current of other circuits lifts a shared neutral by a few volts.
    NeutralDrop,
    /// As if nothing had been opened.
    NotIsolated,
    /// One line is live, the others are not fed.
    OneLineLive,
    /// Two lines are live, the third is not fed.
    TwoLinesLive,
    /// One line feeds all through loads or windings.
    Backfeed,
    /// The neutral is broken under live lines.
    OpenNeutral,
    /// A load of another circuit returns through the neutral.
    BorrowedNeutral,
    /// A source that does not belong to the isolated supply.
    OtherSource,
    /// Live lines on a supply that is not earthed.
    FloatingSupply,
    /// The reference is not where earth should be.
    BrokenReference,
    /// Voltage through capacitance.
    Induced,
    /// One reading does not fit the others.
    Misplaced,
    /// A neutral that does not read to earth as the arrangement predicts.
    NeutralEarth,
    /// Direct voltage.
    DirectVoltage,
    /// None that is known here.
    Unexplained,
}

impl Cause {
    /// As written in files.
    pub fn name(self) -> &'static str {
        match self {
            Cause::NoVoltage => "no-voltage",
            Cause::NeutralDrop => "neutral-drop",
            Cause::NotIsolated => "not-isolated",
            Cause::OneLineLive => "one-line-live",
            Cause::TwoLinesLive => "two-lines-live",
            Cause::Backfeed => "single-phase-backfeed",
            Cause::OpenNeutral => "open-neutral",
            Cause::BorrowedNeutral => "borrowed-neutral",
            Cause::OtherSource => "another-source",
            Cause::FloatingSupply => "floating-supply",
            Cause::BrokenReference => "broken-reference",
            Cause::Induced => "induced-voltage",
            Cause::Misplaced => "misread-or-misplaced",
            Cause::NeutralEarth => "neutral-earth-unexpected",
            Cause::DirectVoltage => "direct-voltage",
            Cause::Unexplained => "unexplained",
        }
    }
}

impl Serialize for Cause {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.name())
    }
}
