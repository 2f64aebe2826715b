//! Conductors by name and role. A role never comes from a colour: blue, black, grey, white and red each mean two things somewhere.

use serde::{Deserialize, Serialize};

/// What a conductor is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// Protective conductor.
    Protective,
    /// Protective and neutral in one.
    Pen,
    /// Neutral or mid-point.
    Neutral,
    /// Line.
    Line,
    /// Mid-point of a DC or a two-phase supply.
    MidPoint,
    /// Positive pole of a DC supply.
    DcPlus,
    /// Negative pole of a DC supply.
    DcMinus,
    /// Control circuit: often fed from elsewhere, so as dangerous as a line until it is shown dead.
    Control,
}

/// A conductor at the point of work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Conductor {
    /// Its designation (IEC 60445), such as "L1".
    pub name: String,
    /// What it is for.
    pub role: Role,
    /// Which supply it belongs to, where one enclosure holds several; protective conductors are shared and have none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supply: Option<String>,
    /// Its colour as somebody saw it: a note for the eye, from which nothing follows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
}

/// Why a list of conductors cannot be used; each sentence says what to write instead.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ConductorError {
    /// Fewer than two.
    #[error("a dead test needs at least two conductors, for example L1,L2,L3,N,PE")]
    TooFew,
    /// More than the app takes.
    #[error("at most {MAX} conductors can be tested together; this list has {0}")]
    TooMany(usize),
    /// A name whose role is not known.
    #[error(
        "\"{0}\" is not a designation known here: write L or L1 to L9 for lines, N for neutral, M for mid-point, L+ and L- for DC, PEN, PE, or give the role as in U=line (line, neutral, pen, protective, mid-point, dc-plus, dc-minus, control; the name at most 12 characters)"
    )]
    Unknown(String),
    /// A name twice.
    #[error("\"{0}\" is in the list twice; each conductor needs its own name")]
    Twice(String),
}

/// The most conductors that are tested together.
pub const MAX: usize = 64;
/// The longest name of a supply, in characters.
const SUPPLY: usize = 40;
/// The longest colour, in characters.
const COLOUR: usize = 24;
/// The longest name of a conductor, in characters.
pub const NAME: usize = 12;

impl Role {
    /// All.
    pub const ALL: [Role; 8] = [
        Role::Line,
        Role::Neutral,
        Role::Pen,
        Role::Protective,
        Role::MidPoint,
        Role::DcPlus,
        Role::DcMinus,
        Role::Control,
    ];

    /// As written on the command line and in files.
    pub fn name(self) -> &'static str {
        match self {
            Role::Line => "line",
            Role::Neutral => "neutral",
            Role::Pen => "pen",
            Role::Protective => "protective",
            Role::MidPoint => "mid-point",
            Role::DcPlus => "dc-plus",
            Role::DcMinus => "dc-minus",
            Role::Control => "control",
        }
    }

    /// The role of this name.
    pub fn of_name(name: &str) -> Option<Role> {
        Role::ALL.into_iter().find(|role| role.name() == name)
    }

    /// Whether it is earth where its path is whole: what the others are held against.
    pub fn is_reference(self) -> bool {
        matches!(self, Role::Protective | Role::Pen)
    }

    /// Whether it is a line, or a pole of a DC supply.
    pub fn is_line(self) -> bool {
        matches!(self, Role::Line | Role::DcPlus | Role::DcMinus)
    }

    /// How dangerous a conductor of this role could be if it is not dead: higher is worse.
    /// Common practice, no source: lines, DC poles and control before neutral and mid-point before protective.
    pub fn danger(self) -> u8 {
        match self {
            Role::Protective => 0,
            Role::Pen | Role::Neutral | Role::MidPoint => 1,
            Role::Line | Role::DcPlus | Role::DcMinus | Role::Control => 2,
        }
    }
}

impl Conductor {
    /// Its name, and its colour where somebody noted one.
    pub fn with_colour(&self) -> String {
        self.colour.as_ref().map_or_else(|| self.name.clone(), |colour| format!("{} ({colour})", self.name))
    }

    /// A conductor whose role follows from its IEC 60445 designation.
    pub fn named(name: &str) -> Option<Conductor> {
        let role = match name {
            "N" => Role::Neutral,
            "M" => Role::MidPoint,
            "L+" => Role::DcPlus,
            "L-" => Role::DcMinus,
            "PEN" => Role::Pen,
            "PE" => Role::Protective,
            "L" => Role::Line,
            _ => match name.strip_prefix('L')?.as_bytes() {
                [b'1'..=b'9'] => Role::Line,
                _ => return None,
            },
        };
        Some(Conductor { name: name.into(), role, supply: None, colour: None })
    }
}

/// Reads a list such as `L1,L2,L3,N,PE` or `U=line,V=line,N`; of another supply, `S+=dc-plus@String A`; with a colour, `U=line[black]`.
pub fn parse_conductors(list: &str) -> Result<Vec<Conductor>, ConductorError> {
    let parts: Vec<&str> = list.split(',').map(str::trim).filter(|p| !p.is_empty()).collect();
    if parts.len() > MAX {
        return Err(ConductorError::TooMany(parts.len()));
    }
    let mut found: Vec<Conductor> = Vec::with_capacity(parts.len());
    for part in parts {
        let unknown = || ConductorError::Unknown(part.chars().take(24).collect());
        let (part, colour) = match part.strip_suffix(']').and_then(|part| part.rsplit_once('[')) {
            Some((part, colour)) => (part.trim(), Some(colour.trim().to_owned())),
            None => (part, None),
        };
        if colour.as_ref().is_some_and(|c| c.is_empty() || c.chars().count() > COLOUR) {
            return Err(unknown());
        }
        let conductor = match part.split_once('=') {
            None => Conductor::named(part).ok_or_else(unknown)?,
            Some((name, role)) => {
                let (role, supply) = match role.split_once('@') {
                    Some((role, supply)) => (role, Some(supply.trim().to_owned())),
                    None => (role, None),
                };
                if supply.as_ref().is_some_and(|s| s.is_empty() || s.chars().count() > SUPPLY) {
                    return Err(unknown());
                }
                let role = Role::of_name(role.trim()).ok_or_else(unknown)?;
                let name = name.trim();
                if name.is_empty() || name.chars().count() > NAME {
                    return Err(unknown());
                }
                Conductor { name: name.into(), role, supply, colour: None }
            }
        };
        if found.iter().any(|c| c.name == conductor.name) {
            return Err(ConductorError::Twice(conductor.name));
        }
        found.push(Conductor { colour, ..conductor });
    }
    if found.len() < 2 { Err(ConductorError::TooFew) } else { Ok(found) }
}
