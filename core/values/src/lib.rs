//! Plain values that everything else of Stillbar speaks in.
//!
//! Promises: a value says what was given and decides nothing; one value has one spelling in files; nothing here reads a file, a clock or a
//! random source. Start at [`EntryId`], [`Conductor`], [`Reading`] and [`network`].

pub mod company;
pub mod conductors;
pub mod drawing;
pub mod figures;
mod id;
mod live;
pub mod names;
pub mod network;
mod order;
mod photo;
mod point;
mod reading;
mod ruleset;
mod supply;
mod system;
pub mod tag;
mod tone;

pub use company::{CompanyRules, Limit};
pub use conductors::{Conductor, Role};
pub use figures::{parse_volts, volts};
pub use id::{DeviceId, EntryId, IdError};
pub use live::{Rotation, Tolerance};
pub use order::Order;
pub use photo::PhotoDoubt;
pub use point::{Means, PointKind};
pub use reading::{Measured, Reading};
pub use ruleset::{RuleFigures, RuleSet};
pub use supply::{Live, Supply};
pub use system::{Earthing, System};
pub use tag::TagId;
pub use tone::Tone;
