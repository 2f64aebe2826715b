//! What belongs to no job: people, limits, the opening of a job.

use crate::job::company::CompanyWrong;
use crate::prove::limit::LimitError;

/// Why something that belongs to no job is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AloneRefusal {
    /// It belongs to a job or a site.
    NoJobOpen,
    /// A person without a name.
    NoName,
    /// A name that looks like that of another person.
    NameAlike {
        /// The name.
        name: String,
        /// The other person's.
        other: String,
    },
    /// A limit without the name of the rule that sets it.
    LimitUnruled,
    /// A limit that could hide a source.
    LimitTooHigh(LimitError),
    /// No low voltage.
    NotLowVoltage {
        /// Between conductors, in volts.
        volts: u64,
        /// Where low voltage ends, in volts.
        most: u32,
    },
    /// A set of conductors that cannot be tested: too few, too many, or two of one name.
    OwnConductors,
    /// Rules of a company that cannot hold.
    Company(CompanyWrong),
}
