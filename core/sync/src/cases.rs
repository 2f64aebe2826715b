//! What comes out when two devices did things without hearing of each other: the table that docs/conflicts.md prints and the tests play.
//!
//! Merging is a union; what differs is only how the union is read. Whatever is in doubt is read the more cautious way.

/// A case: what each did, and what both show once they have heard of each other.
#[derive(Debug, Clone, Copy)]
pub struct MeetingCase {
    /// The journeys of `core/journeys/` that both know before, with the one device's way.
    pub name: &'static str,
    /// What the one did.
    pub one: &'static str,
    /// What the other did.
    pub other: &'static str,
    /// What holds then.
    pub then: &'static str,
}

/// All cases.
pub const CASES: [MeetingCase; 8] = [
    MeetingCase {
        name: "fitted-while-released",
        one: "takes their lock off a point",
        other: "fits a lock of their own there",
        then: "The first lock is off, the second is on: a release takes off only the lock that it names.",
    },
    MeetingCase {
        name: "released-while-handed-over",
        one: "takes the lock off that was on offer",
        other: "takes lock and key over, as the new owner",
        then: "The lock is on, and the new owner's. Who took it over stood at it and knew of no release.",
    },
    MeetingCase {
        name: "released-by-two",
        one: "takes the lock off",
        other: "takes the same lock off",
        then: "It is off, by the earlier of the two.",
    },
    MeetingCase {
        name: "proved-while-it-ended",
        one: "proves dead and begins work",
        other: "finds another source, takes a lock off, or does anything else that ends a proof, whatever its clock says",
        then: "Treat as live: the proof did not know of it.",
    },
    MeetingCase {
        name: "lit-while-proved",
        one: "proves the indicator again after all pairs",
        other: "reads an indication in the same test",
        then: "Stop, treat as live: an indication counts whenever it was seen.",
    },
    MeetingCase {
        name: "opened-while-closed",
        one: "opens a point",
        other: "closed it, unknown to the first",
        then: "The point counts as not open, and every proof has ended, until somebody who knows of both opens it.",
    },
    MeetingCase {
        name: "withdrawn-while-locked",
        one: "withdraws a point that was a mistake",
        other: "fits a lock on it",
        then: "The point stays in the job with its lock.",
    },
    MeetingCase {
        name: "handed-back-while-locked",
        one: "hands the job back",
        other: "fits a lock",
        then: "The job is handed back and the lock is on, on every list of locks, until its owner takes it off.",
    },
];

/// What docs/conflicts.md prints of these tables.
pub fn as_markdown() -> String {
    let mut out = String::from("| one device | another, without hearing of it | then |\n|---|---|---|\n");
    for MeetingCase { one, other, then, .. } in CASES {
        out.push_str(&format!("| {one} | {other} | {then} |\n"));
    }
    out.push_str(
        "\n## What a device does with an entry that comes in\n\n| what comes | what becomes of it |\n|---|---|\n",
    );
    for (what, _, taken) in super::rules::TAKE {
        out.push_str(&format!("| {what} | {} |\n", taken.says()));
    }
    out
}
