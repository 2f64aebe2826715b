//! The cuts that are worth weighing against each other: none has both fewer locks and fewer circuits lost.
//!
//! A cut is a set of islands around the zone (its inside) and all points that lead out of it. Two things make the search exact:
//!
//! - The inside can only grow at the cost of circuits: what keeps its supply while a larger inside is off keeps it while a smaller one
//!   is. So the smallest inside loses the fewest circuits: the nearest cut, found in linear time.
//! - Among the cuts with the fewest locks (a minimum cut) there is one inside that lies within all others, and maximum flow finds it.
//!
//! Between these ends the islands are decided one by one, in or out (branch and bound). For what is decided so far, the minimum cut bounds
//! the locks from below, and the circuits that go with the islands that are in bound the loss. The least bounds come first, so that what
//! is found is proved as soon as it is reached.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::flow::{ENDLESS, Edge, Flow};
use super::islands::{Islands, SOURCES, ZONE};

/// One cut.
#[derive(Debug, Clone)]
pub(super) struct FrontCut {
    /// The links to be locked, in the network's order.
    pub locks: Vec<usize>,
    /// How many circuits are lost.
    pub lost: usize,
    /// Which islands are inside.
    pub inside: Vec<bool>,
}

/// The cuts found, fewest circuits lost first.
pub(super) struct Front {
    pub cuts: Vec<FrontCut>,
    /// Whether no better cut and none between these is missing.
    pub complete: bool,
}

/// Searches for at most about `work` steps over links. `loss` says how many circuits are lost with some islands off, at a cost of
/// `loss_work` steps.
pub(super) fn front(islands: &Islands, loss: impl Fn(&[bool]) -> usize, loss_work: u64, work: u64) -> Front {
    let mut search = FrontSearch { islands, loss, loss_work, spent: 0, found: Vec::new(), open: BinaryHeap::new() };
    let alone = island_set(islands.count, &[ZONE]);
    let nearest = search.nearest(&alone);
    let low = search.weigh(nearest);
    search.decide(vec![ZONE], vec![SOURCES], low);
    let mut complete = true;
    while let Some(Reverse(state)) = search.open.pop() {
        if search.beaten(state.locks, state.low) {
            continue;
        }
        if search.spent >= work {
            complete = false;
            break;
        }
        search.branch(state);
    }
    let mut cuts = search.found;
    cuts.sort_by_key(|cut| (cut.lost, cut.locks.len()));
    Front { cuts, complete }
}

struct FrontSearch<'a, L> {
    islands: &'a Islands,
    loss: L,
    loss_work: u64,
    spent: u64,
    /// None of these has both fewer locks and fewer circuits lost than another.
    found: Vec<FrontCut>,
    open: BinaryHeap<Reverse<FrontState>>,
}

/// What is decided, and what follows for the locks and the circuits lost. Ordered by these two.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct FrontState {
    locks: usize,
    low: usize,
    /// Decided to be inside.
    inside: Vec<u32>,
    /// Decided to be outside.
    outside: Vec<u32>,
    /// Which islands to decide next: the inside of the minimum cut, less those decided.
    next: Vec<u32>,
}

impl<L: Fn(&[bool]) -> usize> FrontSearch<'_, L> {
    /// The inside of the nearest cut: the zone's island, and whatever reaches no source but through it.
    fn nearest(&mut self, alone: &[bool]) -> Vec<bool> {
        let count = self.islands.count;
        let mut around: Vec<Vec<u32>> = vec![Vec::new(); count];
        for &(a, b, _) in &self.islands.points {
            around[a as usize].push(b);
            around[b as usize].push(a);
        }
        let mut outside = vec![false; count];
        outside[SOURCES as usize] = true;
        let mut open = vec![SOURCES];
        while let Some(island) = open.pop() {
            for &to in &around[island as usize] {
                if !alone[to as usize] && !std::mem::replace(&mut outside[to as usize], true) {
                    open.push(to);
                }
            }
        }
        self.spent += 2 * self.islands.points.len() as u64;
        outside.iter().map(|out| !out).collect()
    }

    /// Keeps the cut around `inside` unless one that is as good is known. Returns the circuits lost.
    fn weigh(&mut self, inside: Vec<bool>) -> usize {
        let points = self.islands.points.iter();
        let mut locks: Vec<usize> = points
            .filter(|(a, b, _)| inside[*a as usize] != inside[*b as usize])
            .map(|(_, _, link)| *link as usize)
            .collect();
        locks.sort_unstable();
        let lost = self.lost(&inside);
        if !self.beaten(locks.len(), lost) {
            self.found.retain(|cut| cut.locks.len() < locks.len() || cut.lost < lost);
            self.found.push(FrontCut { locks, lost, inside });
        }
        lost
    }

    fn lost(&mut self, inside: &[bool]) -> usize {
        self.spent += self.loss_work;
        (self.loss)(inside)
    }

    /// Whether a known cut has no more locks and no more circuits lost than this.
    fn beaten(&self, locks: usize, lost: usize) -> bool {
        self.found.iter().any(|cut| cut.locks.len() <= locks && cut.lost <= lost)
    }

    /// The minimum cut with some islands inside and some outside, nearest to the inside; it is kept, and searched on from.
    fn decide(&mut self, inside: Vec<u32>, outside: Vec<u32>, low: usize) {
        let mut number: Vec<u32> = (0..self.islands.count as u32).collect();
        for (decided, as_one) in [(&inside, ZONE), (&outside, SOURCES)] {
            for island in decided {
                number[*island as usize] = as_one;
            }
        }
        let between = |&(a, b, _): &(u32, u32, u32)| {
            let (a, b) = (number[a as usize], number[b as usize]);
            (a != b).then_some((a, b, 1, 1))
        };
        let edges: Vec<Edge> = self.islands.points.iter().filter_map(between).collect();
        let mut flow = Flow::new(self.islands.count, &edges);
        // Every edge is finite, so the flow is.
        let locks = flow.run(ZONE, SOURCES).unwrap_or(u64::from(ENDLESS)) as usize;
        self.spent += flow.work() + 2 * self.islands.points.len() as u64;
        if self.beaten(locks, low) {
            return;
        }
        let side = flow.side(ZONE);
        let within: Vec<bool> = number.iter().map(|n| side[*n as usize]).collect();
        let decided = island_set(within.len(), &inside);
        let next = (0..within.len() as u32).filter(|i| within[*i as usize] && !decided[*i as usize]).collect();
        self.weigh(within);
        self.open.push(Reverse(FrontState { locks, low, inside, outside, next }));
    }

    /// Decides one more island: first in, then out.
    fn branch(&mut self, state: FrontState) {
        let FrontState { locks, low, inside, outside, mut next } = state;
        if next.is_empty() {
            return;
        }
        // The nearest one: islands are numbered from the zone outwards.
        let island = next.remove(0);
        let (mut more, mut less) = (inside.clone(), outside.clone());
        more.push(island);
        less.push(island);
        self.decide(inside, less, low);
        // The minimum cut has it inside already, so it stays the minimum.
        let low = self.lost(&island_set(self.islands.count, &more));
        if !self.beaten(locks, low) {
            self.open.push(Reverse(FrontState { locks, low, inside: more, outside, next }));
        }
    }
}

fn island_set(count: usize, islands: &[u32]) -> Vec<bool> {
    let mut set = vec![false; count];
    for island in islands {
        set[*island as usize] = true;
    }
    set
}
