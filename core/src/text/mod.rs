//! Text: the one room that makes sentences of what the rules find. Nothing is decided by what it says.
//!
//! A function a kind of finding; each variant is one message of the catalogue in `en/`. Names of people and instruments come from the
//! [`World`], so that a finding holds ids. Start at [`refusal()`], [`blocker`], [`void`], [`plan()`] and [`judgement`].

mod blocker;
mod case;
mod catalogue;
mod conditions;
mod dead_test;
mod energised;
mod judge;
mod refusal;
mod steps;
mod void;
mod words;

pub use blocker::{blocker, charged, open_way, photo_lack, sources_open, supply_finding};
pub use case::case;
#[doc(hidden)]
pub use catalogue::Distorted;
pub use conditions::unmet;
pub use dead_test::{ToldDcTest, ToldPlan, ToldReference, ToldTest, ToldWait, if_dead, if_live, plan, terminals};
pub use energised::odd;
pub use judge::{ToldDiagnosis, ToldJudgement, explains, judgement, next, potentials, reasons, unexpected};
pub use refusal::{forced_lack, misfit, refusal, stays};
pub use steps::{stage, stage_over, step, title};
pub use void::{ended, trouble, void};
pub use words::{
    earthing, fault, goes_through, instrument, job_title, limit, met_at, order, place, point_kind, reading, rotation,
    rotation_choice, rotation_guard, row_place, source_kind, supply_answer, supply_name, system, told_by, tolerance,
    waiting,
};

use crate::world::World;
