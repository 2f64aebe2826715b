//! What can be wrong with the file of a case: values, worded where they are shown.

use crate::json::{Broken, JsonKind};
use crate::prove::limit::LimitError;
use crate::prove::{Earthing, Role};

/// Why a case cannot be used, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseError {
    /// Where.
    pub place: Place,
    /// What is wrong.
    pub what: CaseFault,
}

/// A place in the file of a case.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// The file as a whole.
    Whole,
    /// A value, such as `conductors[2].role`.
    Path(String),
    /// Where the text stops being JSON that can be read.
    At {
        /// The line, from 1.
        line: usize,
        /// The column, from 1.
        column: usize,
    },
}

/// What is wrong. Texts of the file stand in it cut short: see [`crate::json::quoted`].
#[derive(Debug, Clone, PartialEq)]
pub enum CaseFault {
    /// The file has more than so many bytes.
    TooLarge(usize),
    /// The file is empty.
    Empty,
    /// It is no JSON, or none that can be read.
    Broken(Broken),
    /// Another kind of value belongs here.
    Wants(Wanted, JsonKind),
    /// The object has a field that the format has not.
    UnknownField {
        /// Its name.
        field: String,
        /// Those that the format has.
        known: Vec<&'static str>,
    },
    /// A field that has to be there is not.
    Missing(Needed),
    /// The list has too many items.
    TooMany {
        /// So many.
        count: usize,
        /// At most so many.
        most: usize,
    },
    /// The text is empty, or has white space about it or characters that cannot be seen.
    NotSeen,
    /// The text is too long.
    TooLong {
        /// So many characters.
        count: usize,
        /// At most so many.
        most: usize,
    },
    /// The word is not one of those that can stand here.
    NotOneOf {
        /// The word.
        text: String,
        /// Those that can.
        choices: Vec<&'static str>,
    },
    /// The voltage is below zero.
    Negative(f64),
    /// The voltage is more than can be saved.
    TooHigh,
    /// No whole number from the first to the second.
    NotWhole(Unit, u32, u32),
    /// An order by name and an own one are both given.
    TwoOrders,
    /// Less than two conductors.
    FewConductors,
    /// Two conductors have one name.
    NameTwice {
        /// The name.
        name: String,
        /// The place of the first in the list.
        at: usize,
    },
    /// The name designates a conductor of another role than the one given.
    RoleOfName {
        /// The name.
        name: String,
        /// What it designates.
        usual: Role,
        /// What was given.
        role: Role,
    },
    /// The role of this conductor does not follow from its name.
    RoleUnsaid(String),
    /// TN-C, and this conductor is a neutral.
    NeutralInTnC(String),
    /// An arrangement without a PEN conductor, and this conductor is one.
    PenElsewhere(Earthing, String),
    /// A nominal voltage of less than 1 V.
    NominalTooLow,
    /// A nominal voltage that is no low voltage.
    NotLowVoltage,
    /// These do not belong together.
    NominalsApart {
        /// Line to line, in millivolts.
        line_line_mv: u32,
        /// Line to neutral, in millivolts.
        line_neutral_mv: u32,
    },
    /// No conductor of the list has this name.
    NotListed(String),
    /// A pair that is not two names.
    NotAPair,
    /// A pair of one conductor with itself.
    PairOfOne(String),
    /// The points open this conductor twice.
    PoleTwice(String),
    /// The points open this conductor, and it is a protective or PEN conductor.
    PoleProtective(String),
    /// The own order has this pair twice.
    PairTwice([String; 2]),
    /// The own order lacks this pair.
    PairMissing([String; 2]),
    /// The steps of an indicator do not rise from above zero.
    LevelsUnordered,
    /// An indicator without any step.
    NoLevels,
    /// The limit for dead is too high.
    Limit(LimitError),
    /// What was read between conductors of the list stands with what holds the charge.
    ReadElsewhere,
    /// A kind of equipment is there twice.
    EquipmentTwice,
    /// A reading without what was read.
    NothingRead,
    /// A reading with two values.
    ReadTwice,
    /// The indicator has no such step; it has these, in millivolts.
    NoSuchStep(Vec<u32>),
}

/// What belongs in a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Wanted {
    /// An object.
    Object,
    /// A list.
    List,
    /// A text.
    Text,
    /// One of these words.
    OneOf(Vec<&'static str>),
    /// A number of volts.
    Volts,
    /// True or false.
    Flag,
}

/// What a whole number counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Seconds.
    Seconds,
    /// Hertz.
    Hertz,
    /// Minutes.
    Minutes,
}

/// A field that has to be there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needed {
    /// The conductors of the case.
    Conductors,
    /// The name of a conductor.
    Name,
    /// What holds a charge.
    What,
    /// The pair that was read.
    Pair,
}

impl Needed {
    /// The field, as written in files.
    pub fn field(self) -> &'static str {
        match self {
            Needed::Conductors => "conductors",
            Needed::Name => "name",
            Needed::What => "what",
            Needed::Pair => "pair",
        }
    }
}
