//! Text: the one room that makes sentences of what the rules find. Nothing is decided by what it says.
//!
//! A function a kind of finding; each variant is one message of the catalogue in `en/`. Names of people and instruments come from the
//! [`World`], so that a finding holds ids. Start at [`refusal()`], [`blocker`] and [`void`].

mod blocker;
mod catalogue;
mod refusal;
mod steps;
mod void;
mod words;

pub use blocker::{blocker, charged, open_way, photo_lack, sources_open, supply_finding};
#[doc(hidden)]
pub use catalogue::Distorted;
pub use refusal::{forced_lack, misfit, refusal, stays};
pub use steps::{stage, stage_over, step, title};
pub use void::{ended, trouble, void};
pub use words::{
    fault, goes_through, limit, met_at, place, proof_state, proof_state_heard, row_place, supply_name, told_by, waiting,
};

use crate::world::World;
