//! What can be taken back, and what stays.

/// Why an entry is not withdrawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WithdrawRefusal {
    /// It is withdrawn already.
    Already,
    /// The job has no such entry.
    NoSuchEntry,
    /// A reading with the supply back that stands out.
    StandsOut,
    /// A reading that showed a voltage.
    ShowedVoltage,
    /// A point that a lock is on.
    PointLocked,
    /// It tells of something that was done.
    Done,
}
