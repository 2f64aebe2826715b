//! What people find when they look for other sources and for stored energy.

use stillbar_core::journal::fact::{SourceKind, StoredKind};

/// A source that somebody finds when they look.
#[derive(Clone, Debug)]
pub struct Other {
    pub kind: SourceKind,
    pub what: &'static str,
    pub at: &'static str,
    pub terminals: &'static [&'static str],
    pub millivolts: Option<u32>,
}

/// Stored energy that somebody finds when they look, and how long they wait.
#[derive(Clone, Copy, Debug)]
pub struct Stored {
    pub what: &'static str,
    pub kind: Option<StoredKind>,
    /// The time on its label, in seconds.
    pub label: Option<u32>,
    /// What is waited, in seconds.
    pub waits: u32,
}

impl Stored {
    /// With a label that somebody read.
    const fn labelled(what: &'static str, kind: Option<StoredKind>, seconds: u32) -> Stored {
        Stored { what, kind, label: Some(seconds), waits: seconds }
    }

    /// Without one.
    pub const fn bare(what: &'static str, kind: StoredKind, waits: u32) -> Stored {
        Stored { what, kind: Some(kind), label: None, waits }
    }
}

/// By the label, also where that is shorter than the table, or by the table, or longer.
pub const STORED: [Stored; 10] = [
    Stored::labelled("Drive 1", None, 300),
    Stored::labelled("Drive 10", Some(StoredKind::Drive), 900),
    Stored::labelled("Drive 1", Some(StoredKind::Drive), 60),
    Stored::labelled("Capacitor bank", Some(StoredKind::PowerFactor), 600),
    Stored::bare("Drive 1", StoredKind::Drive, 900),
    Stored::bare("Capacitor bank", StoredKind::PowerFactor, 180),
    Stored::bare("Press", StoredKind::Capacitors, 300),
    Stored::bare("Desk supply", StoredKind::Ups, 1200),
    Stored::bare("Yard inverter", StoredKind::PvInverter, 900),
    Stored::bare("Box on the wall", StoredKind::NotKnown, 900),
];

pub const OTHERS: [Other; 6] = [
    Other {
        kind: SourceKind::Generator,
        what: "Standby set",
        at: "Changeover Q9 in DB1",
        terminals: &[],
        millivolts: None,
    },
    Other { kind: SourceKind::SecondFeeder, what: "Tie from MB2", at: "Q12 in MB1", terminals: &[], millivolts: None },
    Other { kind: SourceKind::Ups, what: "UPS of the desk", at: "Server cupboard", terminals: &[], millivolts: None },
    Other { kind: SourceKind::Pv, what: "Roof", at: "Inverter in the yard", terminals: &[], millivolts: None },
    Other { kind: SourceKind::Battery, what: "Store in the cellar", at: "QB1", terminals: &[], millivolts: None },
    Other {
        kind: SourceKind::Control,
        what: "Panel heater",
        at: "X3",
        terminals: &["X3:1", "X3:2"],
        millivolts: Some(230_000),
    },
];
