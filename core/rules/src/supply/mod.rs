//! The supply network: which sources can reach the work zone, and which points cut it off at what cost.
//!
//! Promises: a switch stops a path only if it is locked open; whatever is open but not locked, a tie, a changeover or an inlet for a
//! mobile set, counts as a path. What nobody traced is never taken for nothing: the answer is then "not shown", never "cut". And
//! "cut" is about this network as people drew it, so the question for other sources stays a person's to answer.
//!
//! Here are pure functions over a [`Network`]: no journal, no clock, no files. Start at [`check`]; then [`propose`], which finds the points
//! to lock, [`restore`], [`touched`] and [`draw()`]. Files are read and written in [`files`]. A site's network as its journal tells it is
//! [`Drawn`].

mod besides;
mod check;
mod cut;
pub mod draw;
mod drawn;
mod fault;
pub mod files;
pub mod flow;
mod front;
mod islands;
mod network;
mod propose;
mod restore;
mod supplied;
mod told;
mod touched;

pub use besides::paths_besides;
pub use check::{Answer, Check, MAX_DOUBTS, MAX_PATHS, check};
pub use cut::{Cut, held, own_locks, ways};
pub use draw::{Shown, draw};
pub use drawn::{Drawn, MAX_NOTED, Misfit, Noted};
pub use network::{MAX_PARTS, Network, NetworkFault, SupplyError, Where};
pub use propose::{Proposal, Proposals, Worth, propose};
pub use restore::{Caution, Held, Restore, RestoreStep, StaysOpen, restore};
use stillbar_values::network as model;
pub use stillbar_values::network::{
    Conductors, LeftJoined, Link, LinkKind, MAX_CONDUCTORS, MAX_ID, MAX_NOTE, MAX_TELL, MAX_TEXT, Node, NodeKind,
    Position, SourceSort,
};
pub use supplied::States;
pub use told::{Doubt, Doubtful, Named, Over, OverLock, Path, Uncut};
pub use touched::{Change, Touched, touched};
