//! How long stored energy is waited for at least, before covers come off and its direct voltage is read.
//!
//! The label on the equipment counts where it is there: a longer one always, a shorter one because somebody read it. Without a label a kind
//! has the wait of this table, and where nobody knows what it is, the longest of it. No wait proves anything: the reading after it does.

use super::parts::Stored;
use crate::journal::fact::StoredKind;

/// A wait of the table, and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LeastWait {
    /// In seconds.
    pub seconds: u32,
    /// Its source.
    pub source: WaitSource,
}

/// Where a wait comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WaitSource {
    /// Common practice; no clause gives a figure without a label.
    Practice,
    /// IEC 60831-1: 75 V or less after three minutes. From memory.
    Iec60831,
    /// Makers differ too much: the longest of the table. Our rule, no source.
    Longest,
}

/// The least wait without a label. A drive: 5 to 15 minutes are common (facts: common practice; IEC 61800-5-1 asks for a label where it takes
/// more than 5 s, from memory), so the longer. Capacitors in machines: 5 minutes (common practice; IEC 60204-1 6.2.4 asks for 60 V or less
/// after 5 s, or a label, from memory). Power-factor capacitors: NEC 460.6 has 50 V or less after one minute, so the longer one counts.
pub fn least_wait(kind: StoredKind) -> LeastWait {
    let minutes = |minutes: u32, source| LeastWait { seconds: minutes * 60, source };
    match kind {
        StoredKind::PowerFactor => minutes(3, WaitSource::Iec60831),
        StoredKind::Capacitors => minutes(5, WaitSource::Practice),
        StoredKind::Drive => minutes(15, WaitSource::Practice),
        StoredKind::Ups | StoredKind::PvInverter | StoredKind::BatteryConverter | StoredKind::NotKnown => {
            minutes(15, WaitSource::Longest)
        }
    }
}

/// How long is waited at least for this kind, with this on its label, in seconds.
pub fn least(kind: Option<StoredKind>, label: Option<u32>) -> u32 {
    label.unwrap_or_else(|| least_wait(kind.unwrap_or(StoredKind::NotKnown)).seconds)
}

impl Stored {
    /// How long is waited: as long as was said, and never less than the label or the table asks. Before there was a kind, the wait was that
    /// of the label.
    pub(super) fn waits(&self) -> u32 {
        match (&self.found, self.kind, self.label) {
            (None, ..) | (Some(_), None, None) => self.seconds,
            (Some(_), kind, label) => self.seconds.max(least(kind, label)),
        }
    }
}
