//! The core's tests, one binary. What crosses rooms is in `tests/` at the top.

mod background;
mod desk;
mod energised;
mod evidence;
mod faults;
mod forgotten;
mod gates;
mod holes;
mod journal;
mod journeys;
mod judge;
mod merge;
mod networks;
mod no_answer;
mod order;
mod pictures;
mod read;
mod record;
mod replay;
mod supply;
mod tag;
mod tags;
