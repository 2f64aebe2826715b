//! The order of the pairs with the fewest moves, and which probe stays.
//!
//! Each level of danger is walked in one chain. A conductor of the level is held while the other probe goes to every more dangerous
//! one, then to every conductor of its own level that was not held yet; the last of these is held next, so that its probe is on
//! already. One chain a level is the fewest there can be (see `plan`).

use crate::prove::order::{other_turn, turn};
use crate::prove::{Conductor, Order};

/// One test, by places in the list of conductors.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ProbeMove {
    pub(super) first: usize,
    pub(super) then: usize,
    /// The one whose probe stays on from the step before.
    pub(super) held: Option<usize>,
}

/// The chains of all levels, in the order that the site prefers.
pub(super) fn best(conductors: &[Conductor], order: Order) -> Vec<ProbeMove> {
    let danger = |i: usize| conductors[i].role.danger();
    let mut levels: Vec<u8> = (0..conductors.len()).map(danger).collect();
    levels.sort_unstable_by_key(|level| turn(order, *level));
    levels.dedup();

    let mut steps = Vec::with_capacity(conductors.len() * conductors.len() / 2);
    for level in levels {
        let mut above: Vec<usize> = (0..conductors.len()).filter(|&i| danger(i) > level).collect();
        above.sort_by_key(|&i| other_turn(order, danger(i)));
        // In the order of the terminals, without the one that is held.
        let mut left: Vec<usize> = (0..conductors.len()).filter(|&i| danger(i) == level).collect();
        let mut held = left.remove(0);
        let mut on = None;
        loop {
            for &then in above.iter().chain(&left) {
                steps.push(ProbeMove { first: held, then, held: on });
                on = Some(held);
            }
            let Some(next) = left.pop() else { break };
            held = next;
            on = Some(next);
        }
        // The last two of a level: the one that stands first at the terminals is named first, whichever probe is on already.
        if let Some(last) = steps.last_mut().filter(|last| danger(last.first) == danger(last.then)) {
            (last.first, last.then) = (last.first.min(last.then), last.first.max(last.then));
        }
    }
    steps
}

/// The site's own order, with every probe that rule 1 lets stay.
pub(super) fn own(conductors: &[Conductor], pairs: &[[String; 2]]) -> Vec<ProbeMove> {
    let place = |name: &String| conductors.iter().position(|c| c.name == *name);
    let mut steps: Vec<ProbeMove> = Vec::with_capacity(pairs.len());
    for [a, b] in pairs {
        let (Some(a), Some(b)) = (place(a), place(b)) else { continue };
        let before = steps.last().copied();
        let danger = |i: usize| conductors[i].role.danger();
        let (first, then) = match danger(a).cmp(&danger(b)) {
            std::cmp::Ordering::Less => (a, b),
            std::cmp::Ordering::Greater => (b, a),
            // Of two alike, the one that is held already, or the one that the site wrote first.
            std::cmp::Ordering::Equal if before.is_some_and(|last| last.first == b) => (b, a),
            std::cmp::Ordering::Equal => (a, b),
        };
        let held = before.and_then(|last| stays(conductors, last, first, then));
        steps.push(ProbeMove { first, then, held });
    }
    steps
}

/// The conductor that both tests share, if its probe may stay on while the other is free.
fn stays(conductors: &[Conductor], last: ProbeMove, first: usize, then: usize) -> Option<usize> {
    let danger = |i: usize| conductors[i].role.danger();
    [(first, then), (then, first)].into_iter().find_map(|(shared, to)| {
        let from = if last.first == shared {
            last.then
        } else if last.then == shared {
            last.first
        } else {
            return None;
        };
        (danger(shared) <= danger(from) && danger(shared) <= danger(to)).then_some(shared)
    })
}
