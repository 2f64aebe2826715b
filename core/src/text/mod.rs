//! Text: the one room that makes sentences of what the rules find. Nothing is decided by what it says.
//!
//! A function a kind of finding; each variant is one message of the catalogue in `en/`. Names of people and instruments come from the
//! [`World`], so that a finding holds ids. Start at [`refusal()`], [`blocker`] and [`void`].

mod blocker;
mod catalogue;
mod drawing;
mod entry;
mod files;
mod refusal;
mod steps;
mod supply;
mod void;
mod words;

pub use blocker::{blocker, charged, open_way, photo_lack, sources_open, supply_finding};
#[doc(hidden)]
pub use catalogue::Distorted;
pub use drawing::draw;
pub use entry::{said, summary};
pub use files::{file_error, file_fault, file_place, remark};
pub use refusal::{forced_lack, misfit, refusal, stays};
pub use steps::{stage, stage_over, step, title};
pub use supply::{
    answer, caution, check, doubt, left_joined, network_fault, other_sources, path, proposal, proposals, stays_open,
    touched, uncut, worth,
};
pub use void::{ended, trouble, void};
pub use words::{
    capital, earth, fault, goes_through, limit, limit_set, met_at, place, proof_state, proof_state_heard, row_place,
    seen, supply_name, told_by, waiting,
};

use crate::world::World;
