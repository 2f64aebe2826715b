//! Maximum flow and minimum cut: Dinic's algorithm with iterative search, so that a chain of a million links is no deep recursion.
//!
//! Dinic 1970; on unit capacities it takes at most O(links x sqrt(links)) steps (Even and Tarjan 1975).

use std::collections::VecDeque;

/// A capacity that no cut goes through.
pub const ENDLESS: u32 = u32::MAX;

/// A flow network on nodes numbered from 0.
#[derive(Debug, Clone)]
pub struct Flow {
    /// Where a node's arcs begin in `at`; one more than there are nodes.
    first: Vec<u32>,
    /// The arcs of each node, node after node.
    at: Vec<u32>,
    /// To which node each arc goes. An arc and its way back are 2i and 2i + 1.
    to: Vec<u32>,
    /// What each arc can still take.
    left: Vec<u32>,
    /// Arcs looked at so far: what an answer has cost.
    work: u64,
}

/// An edge of a flow network: from, to, capacity forward, capacity back.
pub type Edge = (u32, u32, u32, u32);

impl Flow {
    /// A network of `nodes` nodes and these edges.
    ///
    /// # Panics
    /// If an edge names a node that is not there.
    pub fn new(nodes: usize, edges: &[Edge]) -> Flow {
        let mut first = vec![0u32; nodes + 1];
        for (a, b, ..) in edges {
            first[*a as usize + 1] += 1;
            first[*b as usize + 1] += 1;
        }
        for i in 0..nodes {
            first[i + 1] += first[i];
        }
        let mut next = first.clone();
        let (mut at, mut to, mut left) = (vec![0; edges.len() * 2], Vec::new(), Vec::new());
        for (i, &(a, b, forward, back)) in edges.iter().enumerate() {
            for (node, arc) in [(a, 2 * i), (b, 2 * i + 1)] {
                at[next[node as usize] as usize] = arc as u32;
                next[node as usize] += 1;
            }
            to.extend([b, a]);
            left.extend([forward, back]);
        }
        Flow { first, at, to, left, work: 0 }
    }

    /// The greatest flow from `source` to `sink`, on top of what flows already. `None`: it is endless.
    pub fn run(&mut self, source: u32, sink: u32) -> Option<u64> {
        let mut total = 0u64;
        while let Some(level) = self.levels(source, sink) {
            let mut next: Vec<u32> = self.first[..self.first.len() - 1].to_vec();
            while let Some(pushed) = self.push(source, sink, &level, &mut next) {
                if pushed == ENDLESS {
                    return None;
                }
                total += u64::from(pushed);
            }
        }
        Some(total)
    }

    /// Which nodes the source can still reach after [`Flow::run`]: the smallest side of a minimum cut that has the source in it.
    pub fn side(&self, source: u32) -> Vec<bool> {
        let mut side = vec![false; self.first.len() - 1];
        side[source as usize] = true;
        let mut open = vec![source];
        while let Some(node) = open.pop() {
            for &arc in self.arcs(node) {
                let to = self.to[arc as usize] as usize;
                if self.left[arc as usize] > 0 && !std::mem::replace(&mut side[to], true) {
                    open.push(to as u32);
                }
            }
        }
        side
    }

    /// How many arcs were looked at so far.
    pub fn work(&self) -> u64 {
        self.work
    }

    fn arcs(&self, node: u32) -> &[u32] {
        &self.at[self.first[node as usize] as usize..self.first[node as usize + 1] as usize]
    }

    /// How many arcs each node is from the source, as far as the sink; `None` if the sink is not reached.
    fn levels(&mut self, source: u32, sink: u32) -> Option<Vec<u32>> {
        let mut level = vec![u32::MAX; self.first.len() - 1];
        level[source as usize] = 0;
        let mut open = VecDeque::from([source]);
        let mut work = 0;
        while let Some(node) = open.pop_front() {
            if node == sink {
                break;
            }
            for &arc in self.arcs(node) {
                work += 1;
                let to = self.to[arc as usize];
                if self.left[arc as usize] > 0 && level[to as usize] == u32::MAX {
                    level[to as usize] = level[node as usize] + 1;
                    open.push_back(to);
                }
            }
        }
        self.work += work;
        (level[sink as usize] != u32::MAX).then_some(level)
    }

    /// Sends what one way takes. `next` says for each node which of its arcs were not tried yet.
    fn push(&mut self, source: u32, sink: u32, level: &[u32], next: &mut [u32]) -> Option<u32> {
        let mut way: Vec<u32> = Vec::new();
        let mut node = source;
        while node != sink {
            self.work += 1;
            let end = self.first[node as usize + 1];
            let place = &mut next[node as usize];
            if *place == end {
                // A dead end: back one step, and never here again.
                let arc = way.pop()?;
                node = self.to[arc as usize ^ 1];
                next[node as usize] += 1;
                continue;
            }
            let arc = self.at[*place as usize];
            let to = self.to[arc as usize];
            if self.left[arc as usize] > 0 && level[to as usize] == level[node as usize] + 1 {
                way.push(arc);
                node = to;
            } else {
                *place += 1;
            }
        }
        let least = way.iter().map(|arc| self.left[*arc as usize]).min().unwrap_or(ENDLESS);
        if least != ENDLESS {
            for arc in way {
                let (there, back) = (arc as usize, arc as usize ^ 1);
                if self.left[there] != ENDLESS {
                    self.left[there] -= least;
                }
                // What is endless stays so; two finite capacities never add up to it.
                self.left[back] = self.left[back].saturating_add(least);
            }
        }
        Some(least)
    }
}
