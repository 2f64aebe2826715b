//! What is read for an answer, and how much of it counts as nothing.
//!
//! A voltage counts by the job's own limits, like any reading of the dead test. No rule set and no company names a current that counts as
//! none before a neutral is parted (facts: trade press on borrowed neutrals has the clamp read 0), so only 0 is none.

use crate::prove::Measured;
use crate::prove::limit::Limits;

/// What is read for an answer, and what the answer is where more was read than counts as nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reads {
    /// What is read.
    pub quantity: Quantity,
    /// The code of the answer that stops.
    pub over: &'static str,
}

/// What is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// A current.
    Current,
    /// A voltage that may be alternating or direct: the lower limit counts.
    Voltage,
    /// A direct voltage.
    DirectVoltage,
}

impl Reads {
    /// Whether more was read than counts as nothing. What is no reading of what is asked for never counts as nothing.
    pub(super) fn is_over(&self, read: Measured, limits: Limits) -> bool {
        match (self.quantity, read) {
            (Quantity::Current, Measured::Milliamps(ma)) => ma > 0,
            (Quantity::Voltage, Measured::Millivolts(mv)) => mv > limits.ac_mv.min(limits.dc_mv),
            (Quantity::DirectVoltage, Measured::Millivolts(mv)) => mv > limits.dc_mv,
            (Quantity::Voltage | Quantity::DirectVoltage, Measured::NoIndication) => false,
            _ => true,
        }
    }
}
