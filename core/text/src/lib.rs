//! Text: the one room that makes sentences of what the rules find. Nothing is decided by what it says.
//!
//! A function a kind of finding; each variant is one message of the catalogue in `en/`. Names of people and instruments come from the
//! [`World`], so that a finding holds ids. What is asked of a person first is a value of
//! [`AskFirst`]. Start at [`refusal()`], [`blocker`], [`void`], [`plan()`] and [`judgement`].

mod ask;
mod asked;
mod blocker;
mod case;
mod catalogue;
mod company;
mod conditions;
mod dead_test;
mod drawing;
mod energised;
mod entry;
mod files;
mod judge;
pub mod languages;
mod lists;
mod reader;
mod refusal;
mod rule_sets;
pub mod screens;
mod standing;
mod steps;
mod stored;
mod supply;
pub mod terms;
pub mod times;
mod typed;
mod void;
mod words;

pub use ask::{
    AskDevice, AskFirst, AskIsolate, AskJob, AskLock, AskPlan, AskProve, AskRestore, AskSupply, Gone, InstrumentPart,
    ask_first, padlock_stays_beside, photo_unwritten, pin_unkept, record_unwritten,
};
pub use asked::{
    answer_read, answer_to, answer_with, answer_words, as_shown, asked_of, given, question, read_over, said_with,
    save_answer, save_reading, say_it, usual_words,
};
pub use blocker::{blocker, charged, open_way, photo_lack, sources_open, supply_finding};
pub use case::{case, json};
#[doc(hidden)]
pub use catalogue::{Distorted, catalogue_in, catalogues};
pub use company::{company_error, company_file, company_ppe, company_rules, company_version, company_wrong, ring};
pub use conditions::unmet;
pub use dead_test::{ToldDcTest, ToldPlan, ToldReference, ToldTest, ToldWait, if_dead, if_live, plan, terminals};
pub use drawing::draw;
pub use energised::odd;
pub use entry::{said, summary};
pub use files::{file_error, file_fault, file_place, remark};
pub use judge::{ToldDiagnosis, ToldJudgement, explains, judgement, next, potentials, reasons, unexpected};
pub use lists::{ands, commas, semicolons, sentences};
pub use reader::{Reader, no_pin};
pub use refusal::{forced_lack, misfit, refusal, stays};
pub use rule_sets::{ToldRules, defers, rule_set, rules_in_short};
pub use standing::{Standing, standing};
pub use steps::{stage, stage_over, step, title};
pub use stored::stored_kind;
pub use supply::{
    answer, caution, check, doubt, left_joined, network_fault, other_sources, path, proposal, proposals, stays_open,
    touched, uncut, worth,
};
pub use terms::in_terms;
pub use void::{ended, trouble, void};
pub use words::{
    as_ruled, capital, drawings_of_systems, earth, earthing, fault, goes_through, instrument, job_title, limit,
    limit_set, link_kind, met_at, named_by, order, photo_doubt, place, point_kind, proof_state, proof_state_heard,
    reading, rotation, rotation_choice, rotation_guard, row_place, seen, source, source_kind, source_sort, supply,
    supply_answer, supply_name, system, told_by, tolerance, volts, waiting,
};

use stillbar_rules::world::World;
