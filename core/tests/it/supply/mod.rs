//! The supply network: checked against searches that are written another way, and against the issue's own words.

mod besides;
mod brute;
mod check;
mod draw;
mod files;
mod flow;
mod propose;
mod restore;

use stillbar_core::supply::{Link, LinkKind, Network, Node, NodeKind, States};

/// A network from lines such as `grid source`, `C1 load lighting 2`, `grid Q1 B1`, `B1 Q2? B2` (takes no lock), `B1 T1! B2` (normally
/// open), `B1 -w1- C1` (a cable).
pub fn network(lines: &str) -> Network {
    let (mut nodes, mut links) = (Vec::new(), Vec::new());
    for line in lines.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let words: Vec<&str> = line.split_whitespace().collect();
        let kind = NodeKind::ALL.into_iter().find(|kind| words.get(1) == Some(&kind.name()));
        match (kind, words.as_slice()) {
            (Some(kind), [id, _, stops @ ..]) => {
                nodes.push(Node { stops: stops.join(" "), ..Node::new(*id, kind) });
            }
            (None, [from, link, to]) => {
                let id = link.trim_matches(['?', '!', '-']);
                let kind = if link.starts_with('-') { LinkKind::Cable } else { LinkKind::Switch };
                let mut made = Link::new(id, *from, *to, kind);
                made.lockable = kind == LinkKind::Switch && !link.contains('?');
                links.push(if link.contains('!') { made.normally_open() } else { made });
            }
            _ => panic!("no node and no link: {line}"),
        }
    }
    Network::new(nodes, links).unwrap()
}

/// Everything as it normally is.
pub fn normal() -> States {
    States::new()
}

/// A small generator of numbers that look random: SplitMix64 (Steele, Lea and Flood 2014), the same at every run.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 to `below` - 1.
    pub fn below(&mut self, below: usize) -> usize {
        (self.next() % below as u64) as usize
    }

    /// True once in `n` times.
    pub fn once_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }
}
