//! What keeps energy after the supply is cut, and how long it is waited for.

use super::catalogue::say;
use super::words::waiting;
use stillbar_journal::fact::StoredKind;
use stillbar_rules::job::waits::{WaitSource, least_wait};

/// What keeps energy, with its least wait without a label and where that comes from, on a button.
pub fn stored_kind(kind: StoredKind) -> String {
    let least = least_wait(kind);
    let kind = match kind {
        StoredKind::Drive => say!("stored-drive"),
        StoredKind::PowerFactor => say!("stored-power-factor"),
        StoredKind::Capacitors => say!("stored-capacitors"),
        StoredKind::Ups => say!("stored-ups"),
        StoredKind::PvInverter => say!("stored-pv-inverter"),
        StoredKind::BatteryConverter => say!("stored-battery-converter"),
        StoredKind::NotKnown => say!("stored-not-known"),
    };
    let source = match least.source {
        WaitSource::Practice => say!("stored-wait-practice"),
        WaitSource::Iec60831 => say!("stored-wait-iec-60831"),
        WaitSource::Longest => say!("stored-wait-longest"),
    };
    say!("stored-kind", kind = kind, wait = waiting(least.seconds), source = source)
}
