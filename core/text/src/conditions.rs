//! What the plan of a dead test demands and a case does not show.

use super::catalogue::say;
use super::lists::commas;
use super::words::{current, pair, volts, yes};
use stillbar_rules::prove::conditions::Unmet;
use stillbar_rules::prove::{Earthing, Holder, SHOWS_NONE};

/// So many pairs are named in a sentence; the others are counted.
const NAMED: usize = 12;

/// The list in words: one sentence each, and one for all pairs. Each says what to do where that is not plain.
pub fn unmet<'a>(list: impl IntoIterator<Item = &'a Unmet>) -> Vec<String> {
    let list: Vec<&Unmet> = list.into_iter().collect();
    let mut not_read = not_read(&list);
    list.iter().filter_map(|unmet| one(unmet).or_else(|| not_read.take())).collect()
}

/// One sentence about all pairs that were not read.
fn not_read(list: &[&Unmet]) -> Option<String> {
    let pairs = list.iter().filter_map(|unmet| match unmet {
        Unmet::PairNotRead { pair: of, dc: false } => Some(pair(of)),
        Unmet::PairNotRead { pair: of, dc: true } => Some(say!("unmet-pair-dc", pair = pair(of))),
        _ => None,
    });
    let pairs: Vec<String> = pairs.collect();
    let more = pairs.len().saturating_sub(NAMED);
    let named = commas(pairs.iter().take(NAMED).cloned());
    match (pairs.len(), more) {
        (0, _) => None,
        (_, 0) => Some(say!("unmet-not-read", pairs = named)),
        (_, more) => Some(say!("unmet-not-read-more", pairs = named, more = more)),
    }
}

/// One that is not about a pair, in a sentence.
fn one(unmet: &Unmet) -> Option<String> {
    Some(match unmet {
        Unmet::IndicatorBefore => say!("unmet-indicator-before"),
        Unmet::IndicatorAfter => say!("unmet-indicator-after"),
        Unmet::LightsLate { dc, lowest_mv, bound_mv, said } => lights_late(*dc, *lowest_mv, *bound_mv, *said),
        Unmet::LimitTooHigh(error) => {
            say!("unmet-limit-too-high", bound = volts(error.bound_mv), current = current(error.dc))
        }
        Unmet::NoEarth => say!("unmet-no-earth"),
        Unmet::EarthNotProved => say!("unmet-earth-not-proved"),
        Unmet::KnownLine { earthing } => say!("unmet-known-line", it = yes(*earthing == Earthing::It)),
        Unmet::LineClosed(line) => say!("unmet-line-closed", line = line),
        Unmet::NeutralClosed { conductor, earthing: Earthing::Unknown } => {
            say!("unmet-neutral-closed-unknown", neutral = conductor)
        }
        Unmet::NeutralClosed { conductor, earthing } => {
            say!("unmet-neutral-closed", neutral = conductor, earthing = earthing.name())
        }
        Unmet::PairNotRead { .. } => return None,
        Unmet::NotWaited { what, label_seconds, waited_seconds } => match waited_seconds {
            Some(waited) => {
                say!("unmet-not-waited", what = holder(what), label = *label_seconds, waited = *waited)
            }
            None => say!("unmet-wait-unsaid", what = holder(what), label = *label_seconds),
        },
        Unmet::ChargeNotRead { what, at: Some(at) } => {
            say!("unmet-charge-not-read", what = holder(what), pair = pair(at))
        }
        Unmet::ChargeNotRead { what, at: None } => say!("unmet-charge-not-read-own", what = holder(what)),
    })
}

fn lights_late(dc: bool, lowest_mv: u32, bound_mv: u32, said: bool) -> String {
    let (current, lowest, by) = (current(dc), volts(lowest_mv), volts(bound_mv));
    match (lowest_mv, said) {
        (SHOWS_NONE, _) => say!("unmet-lights-never", current = current, by = by),
        (_, true) => say!("unmet-lights-late", current = current, lowest = lowest, by = by),
        (_, false) => say!("unmet-lights-unsaid", current = current, lowest = lowest, by = by),
    }
}

/// What holds a charge, inside a sentence.
pub(super) fn holder(what: &Holder) -> String {
    match what {
        Holder::Named(what) => what.clone(),
        Holder::Drive => say!("holder-drive"),
        Holder::Ups => say!("holder-ups"),
        Holder::Inverter => say!("holder-inverter"),
    }
}
