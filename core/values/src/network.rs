//! What a network is made of: nodes and links, as people write them down. Nothing here computes.

use serde::{Deserialize, Serialize};

/// The most characters of an id.
pub const MAX_ID: usize = 40;
/// The most characters of a label, a place, what stops, or one who must be told.
pub const MAX_TEXT: usize = 80;
/// The most characters of what was seen and not traced.
pub const MAX_NOTE: usize = 200;
/// The most people or places to be told about one node.
pub const MAX_TELL: usize = 20;
/// The most conductors of one link.
pub const MAX_CONDUCTORS: usize = 64;

/// A part at which links meet.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Node {
    /// Its name in the network, as on the device or the drawing; no two nodes have the same.
    pub id: String,
    /// What it is.
    pub kind: NodeKind,
    /// Which sort of source; of sources only.
    #[serde(default, skip_serializing_if = "SourceSort::is_unsaid")]
    pub sort: SourceSort,
    /// What is written on it, where that is more than the id; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// Where it is; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub place: String,
    /// What stops when it has no supply; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub stops: String,
    /// Who must be told before it loses its supply.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tell: Vec<String>,
    /// Whether it counts as a circuit that is lost. `None`: it does if it is a load, or if `stops` says something.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub circuit: Option<bool>,
    /// Something else here that was seen and not traced to its end; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub untraced: String,
}

/// What a node is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NodeKind {
    /// Something that can make a conductor live by itself.
    Source,
    /// A board, a busbar, a panel.
    Board,
    /// Something that uses the supply.
    Load,
    /// A place where conductors meet: a joint, a terminal box, the common side of a changeover.
    Junction,
    /// Nobody knows: it may be a source.
    #[default]
    Unknown,
}

/// Which sort of source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SourceSort {
    /// The distributor's supply.
    Grid,
    /// A standby or mobile generating set.
    Generator,
    /// An uninterruptible supply.
    Ups,
    /// Photovoltaics.
    Pv,
    /// A battery store, or a vehicle charger that feeds back.
    Battery,
    /// A feeder from another board, transformer or building.
    SecondFeeder,
    /// A control supply, a heater, a lighting circuit from elsewhere.
    Control,
    /// A source, and nobody said which sort.
    #[default]
    Unsaid,
}

/// What joins two nodes. Current may flow either way.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Link {
    /// Its name in the network, as on the device; no two links have the same.
    pub id: String,
    /// The node at one end.
    pub from: String,
    /// The node at the other end.
    pub to: String,
    /// What it is.
    pub kind: LinkKind,
    /// What is written on it, where that is more than the id; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// Where it is; else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub place: String,
    /// Whether it can be locked open and is suitable for isolation.
    #[serde(default)]
    pub lockable: bool,
    /// Its position in normal service.
    #[serde(default, skip_serializing_if = "Position::is_closed")]
    pub normally: Position,
    /// The conductors that it opens; `None`: not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub poles: Option<Conductors>,
    /// The conductors that have to be opened here; `None`: not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conductors: Option<Conductors>,
}

/// What a link is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LinkKind {
    /// A switch, breaker, fuse or plug that parts the conductors.
    Switch,
    /// Conductors and nothing else.
    Cable,
    /// One way of a changeover switch.
    Changeover,
    /// A tie or coupler between two supplies.
    Tie,
    /// An inverter that can go on feeding when the supply is gone.
    Inverter,
    /// An inlet that a mobile set is plugged into.
    Inlet,
    /// A transformer; it carries voltage both ways.
    Transformer,
    /// Nobody knows: it may be anything, a source as well.
    #[default]
    Unknown,
}

/// Open or closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Position {
    /// The conductors are parted.
    Open,
    /// The conductors are joined.
    #[default]
    Closed,
}

/// What stays joined when a link is open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LeftJoined {
    /// Nobody noted which conductors it opens.
    Unnoted,
    /// These conductors.
    Named(Vec<String>),
    /// Some of them.
    Fewer {
        /// How many it opens.
        opens: usize,
        /// How many have to be opened.
        of: usize,
    },
}

/// Conductors by name, or how many.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Conductors {
    /// How many.
    Count(u8),
    /// Which, such as L1, L2, L3, N.
    Names(Vec<String>),
}

impl Node {
    /// A node with this id and kind, and nothing else said.
    pub fn new(id: impl Into<String>, kind: NodeKind) -> Node {
        Node { id: id.into(), kind, ..Node::default() }
    }

    /// Whether losing it counts as a circuit lost.
    pub fn is_circuit(&self) -> bool {
        self.circuit.unwrap_or(self.kind == NodeKind::Load || !self.stops.is_empty())
    }

    /// What stops with it, in the fewest words that were given: `stops`, else the label, else the id.
    pub fn stopping(&self) -> &str {
        [&self.stops, &self.label].into_iter().find(|text| !text.is_empty()).unwrap_or(&self.id)
    }
}

impl Link {
    /// A link of this kind between two nodes, closed, not lockable, and nothing else said.
    pub fn new(id: impl Into<String>, from: impl Into<String>, to: impl Into<String>, kind: LinkKind) -> Link {
        Link { id: id.into(), from: from.into(), to: to.into(), kind, ..Link::default() }
    }

    /// The same, and it takes a lock.
    pub fn lockable(mut self) -> Link {
        self.lockable = true;
        self
    }

    /// The same, and it is open in normal service.
    pub fn normally_open(mut self) -> Link {
        self.normally = Position::Open;
        self
    }

    /// Whether a lock on it cuts: it parts conductors, takes a lock, and opens all that have to be opened.
    pub fn cuts(&self) -> bool {
        self.lockable && self.kind.parts() && self.left_joined().is_none()
    }

    /// What stays joined when it is open; `None` if nothing is known to.
    pub fn left_joined(&self) -> Option<LeftJoined> {
        use Conductors::Names;
        match (self.conductors.as_ref()?, self.poles.as_ref()) {
            (_, None) => Some(LeftJoined::Unnoted),
            (Names(all), Some(Names(open))) => {
                let left: Vec<String> = all.iter().filter(|c| !open.contains(c)).cloned().collect();
                (!left.is_empty()).then_some(LeftJoined::Named(left))
            }
            (all, Some(open)) => {
                let (opens, of) = (open.count(), all.count());
                (opens < of).then_some(LeftJoined::Fewer { opens, of })
            }
        }
    }
}

impl Conductors {
    /// How many there are.
    pub fn count(&self) -> usize {
        match self {
            Conductors::Count(count) => usize::from(*count),
            Conductors::Names(names) => names.len(),
        }
    }
}

impl NodeKind {
    /// All, in the order in which they are offered.
    pub const ALL: [NodeKind; 5] =
        [NodeKind::Source, NodeKind::Board, NodeKind::Load, NodeKind::Junction, NodeKind::Unknown];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            NodeKind::Source => "source",
            NodeKind::Board => "board",
            NodeKind::Load => "load",
            NodeKind::Junction => "junction",
            NodeKind::Unknown => "unknown",
        }
    }
}

impl SourceSort {
    /// All, in the order in which they are offered.
    pub const ALL: [SourceSort; 8] = [
        SourceSort::Grid,
        SourceSort::SecondFeeder,
        SourceSort::Generator,
        SourceSort::Ups,
        SourceSort::Pv,
        SourceSort::Battery,
        SourceSort::Control,
        SourceSort::Unsaid,
    ];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            SourceSort::Grid => "grid",
            SourceSort::SecondFeeder => "second-feeder",
            SourceSort::Generator => "generator",
            SourceSort::Ups => "ups",
            SourceSort::Pv => "pv",
            SourceSort::Battery => "battery",
            SourceSort::Control => "control",
            SourceSort::Unsaid => "unsaid",
        }
    }

    /// Whether circuits can be expected to run on it alone. PV that loses the grid stops feeding (EN 50549-1), which is no reason to
    /// take it for dead.
    pub fn holds_supply(self) -> bool {
        self != SourceSort::Pv
    }

    fn is_unsaid(&self) -> bool {
        *self == SourceSort::Unsaid
    }
}

impl LinkKind {
    /// All, in the order in which they are offered.
    pub const ALL: [LinkKind; 8] = [
        LinkKind::Switch,
        LinkKind::Cable,
        LinkKind::Changeover,
        LinkKind::Tie,
        LinkKind::Inlet,
        LinkKind::Inverter,
        LinkKind::Transformer,
        LinkKind::Unknown,
    ];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            LinkKind::Switch => "switch",
            LinkKind::Cable => "cable",
            LinkKind::Changeover => "changeover",
            LinkKind::Tie => "tie",
            LinkKind::Inverter => "inverter",
            LinkKind::Inlet => "inlet",
            LinkKind::Transformer => "transformer",
            LinkKind::Unknown => "unknown",
        }
    }

    /// Whether it is made to part conductors, so that a lock on it can mean something. An inverter is none: its electronics part nothing,
    /// the isolator beside it does.
    pub fn parts(self) -> bool {
        matches!(self, LinkKind::Switch | LinkKind::Changeover | LinkKind::Tie | LinkKind::Inlet)
    }

    /// Whether it has an open and a closed position at all.
    pub fn switches(self) -> bool {
        self.parts() || self == LinkKind::Inverter
    }
}

impl Position {
    fn is_closed(&self) -> bool {
        *self == Position::Closed
    }

    /// "open" or "closed".
    pub fn word(self) -> &'static str {
        match self {
            Position::Open => "open",
            Position::Closed => "closed",
        }
    }
}
