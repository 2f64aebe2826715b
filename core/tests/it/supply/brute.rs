//! Every subset of the switches tried, on 2,000 random networks: no cleverness to be wrong in.

use std::collections::BTreeSet;

use stillbar_core::supply::{Link, LinkKind, Network, Node, NodeKind, Position, check, propose};

use super::{Random, normal};

const NETWORKS: u64 = 2000;
const SWITCHES: usize = 14;

/// How a network is made: anything joined to anything, each part below an earlier one, or a chain with more and more ways from board
/// to board towards the zone, where fewer locks cost more circuits.
#[derive(Clone, Copy, PartialEq)]
enum Shape {
    Wild,
    Tree,
    Chain,
}

struct Maker {
    r: Random,
    shape: Shape,
    nodes: Vec<Node>,
    links: Vec<Link>,
}

impl Maker {
    fn join(&mut self, a: usize, b: usize, kind: LinkKind) {
        let (a, b) = if self.r.once_in(2) { (a, b) } else { (b, a) };
        let id = format!("{}{}", if kind == LinkKind::Cable { "w" } else { "Q" }, self.links.len());
        let mut link = Link::new(id, self.nodes[a].id.clone(), self.nodes[b].id.clone(), kind);
        link.lockable = kind == LinkKind::Switch && !self.r.once_in(if self.shape == Shape::Wild { 6 } else { 25 });
        if kind == LinkKind::Switch && self.r.once_in(4) {
            link.normally = Position::Open;
        }
        self.links.push(link);
    }

    fn join_any(&mut self, kind: LinkKind) {
        let a = self.r.below(self.nodes.len());
        let b = (a + 1 + self.r.below(self.nodes.len() - 1)) % self.nodes.len();
        self.join(a, b, kind);
    }

    fn switches(&self) -> usize {
        self.links.iter().filter(|l| l.kind == LinkKind::Switch).count()
    }
}

/// Sources, boards and loads; up to 14 switches, of which some take no lock and some are open; some cables; parallel links and rings.
pub fn random(seed: u64) -> (Network, String) {
    let mut r = Random(seed);
    let shape = [Shape::Wild, Shape::Tree, Shape::Chain][r.below(3)];
    let sources = 1 + r.below(if shape == Shape::Wild { 3 } else { 2 });
    let boards = 2 + r.below(if shape == Shape::Wild { 6 } else { 4 });
    let mut nodes: Vec<Node> = (0..sources).map(|i| Node::new(format!("S{i}"), NodeKind::Source)).collect();
    nodes.extend((0..boards).map(|i| Node::new(format!("B{i}"), NodeKind::Board)));
    for i in 0..r.below(7) {
        let mut load = Node::new(format!("C{i}"), NodeKind::Load);
        load.stops = format!("circuit {i}");
        if r.once_in(8) {
            load.circuit = Some(false);
        }
        nodes.push(load);
    }
    let mut m = Maker { r, shape, nodes, links: Vec::new() };
    let switches = if shape == Shape::Wild { 1 + m.r.below(SWITCHES) } else { SWITCHES - m.r.below(3) };
    if shape != Shape::Wild {
        for board in sources..sources + boards {
            let chain = shape == Shape::Chain;
            let on = if chain { board - 1 } else { m.r.below(board) };
            let times = if chain { 1 + board - sources } else { 1 + m.r.below(3) };
            for _ in 0..times.min(switches - m.switches()) {
                m.join(board, on, LinkKind::Switch);
            }
        }
        // Loads hang on cables here, so that the switches are left for the boards.
        for load in sources + boards..m.nodes.len() {
            let on = sources + m.r.below(boards);
            m.join(load, on, LinkKind::Cable);
        }
    }
    let most = if shape == Shape::Chain { switches - m.r.below(2) } else { switches };
    while m.switches() < most {
        m.join_any(LinkKind::Switch);
    }
    for _ in 0..if shape == Shape::Wild { m.r.below(5) } else { 0 } {
        m.join_any(LinkKind::Cable);
    }
    let zone = if shape == Shape::Chain { boards - 1 } else { m.r.below(boards) };
    (Network::new(m.nodes, m.links).unwrap(), format!("B{zone}"))
}

/// Which nodes hang together with `from` over links of which `passes` says so: links are gone through until nothing changes.
fn together(network: &Network, from: &[&str], passes: impl Fn(&Link) -> bool) -> BTreeSet<String> {
    let mut set: BTreeSet<String> = from.iter().map(|id| (*id).to_owned()).collect();
    loop {
        let before = set.len();
        for link in network.links().iter().filter(|link| passes(link)) {
            if set.contains(&link.from) || set.contains(&link.to) {
                set.insert(link.from.clone());
                set.insert(link.to.clone());
            }
        }
        if set.len() == before {
            return set;
        }
    }
}

fn sources(network: &Network) -> Vec<&str> {
    network.nodes().iter().filter(|n| n.kind == NodeKind::Source).map(|n| n.id.as_str()).collect()
}

fn is_cut(network: &Network, zone: &str, locked: &[&str]) -> bool {
    let reached = together(network, &[zone], |link| !(link.lockable && locked.contains(&link.id.as_str())));
    sources(network).iter().all(|s| !reached.contains(*s))
}

/// The circuits that have a supply over closed links, with these locked open.
fn supplied(network: &Network, locked: &[&str]) -> BTreeSet<String> {
    let on = together(network, &sources(network), |link| {
        !locked.contains(&link.id.as_str()) && (link.kind == LinkKind::Cable || link.normally == Position::Closed)
    });
    let circuit = |n: &&Node| n.circuit.unwrap_or(n.kind == NodeKind::Load);
    network.nodes().iter().filter(circuit).map(|n| n.id.clone()).filter(|id| on.contains(id)).collect()
}

/// A network by numbers, for going through every subset: bits of nodes that hang together.
struct Bits {
    /// Each link's two ends as bits, whether it is closed, and its place among the switches that take a lock.
    links: Vec<(u32, bool, Option<usize>)>,
}

impl Bits {
    fn of(network: &Network) -> Bits {
        let bit = |id: &str| 1u32 << network.nodes().iter().position(|n| n.id == id).unwrap();
        let mut lockable = 0;
        let links = network.links().iter().map(|l| {
            let place = l.lockable.then_some(lockable);
            lockable += usize::from(l.lockable);
            (bit(&l.from) | bit(&l.to), l.kind == LinkKind::Cable || l.normally == Position::Closed, place)
        });
        Bits { links: links.collect() }
    }

    /// What hangs together with `from`: over any link that is not in `locked`, or over closed ones alone.
    fn together(&self, mut from: u32, locked: u32, closed_only: bool) -> u32 {
        loop {
            let before = from;
            for (ends, closed, place) in &self.links {
                let stops = place.is_some_and(|place| locked >> place & 1 == 1) || closed_only && !closed;
                if !stops && from & ends != 0 {
                    from |= ends;
                }
            }
            if from == before {
                return from;
            }
        }
    }
}

/// The pairs of circuits lost and locks that no other pair beats, fewest lost first.
fn front(network: &Network, zone: &str) -> Vec<(usize, usize)> {
    let bits = Bits::of(network);
    let which = |is: &dyn Fn(&Node) -> bool| -> u32 {
        network.nodes().iter().enumerate().filter(|(_, n)| is(n)).map(|(i, _)| 1 << i).sum()
    };
    let (zone, sources) = (which(&|n| n.id == zone), which(&|n| n.kind == NodeKind::Source));
    let circuits = which(&|n| n.circuit.unwrap_or(n.kind == NodeKind::Load));
    let before = bits.together(sources, 0, true) & circuits;
    let lockable = network.links().iter().filter(|l| l.lockable).count();
    let mut cuts = Vec::new();
    for locked in 0u32..1 << lockable {
        if bits.together(zone, locked, false) & sources == 0 {
            let after = bits.together(sources, locked, true);
            cuts.push(((before & !after).count_ones() as usize, locked.count_ones() as usize));
        }
    }
    cuts.sort_unstable();
    let mut front: Vec<(usize, usize)> = Vec::new();
    for (lost, locks) in cuts {
        if front.iter().all(|(_, fewest)| locks < *fewest) {
            front.push((lost, locks));
        }
    }
    front
}

/// The front is the one that trying everything finds; what each proposal says of itself is true.
#[test]
fn equal_to_brute_force() {
    let (mut steps, mut between, mut bare) = (0, 0, 0);
    for seed in 1..=NETWORKS {
        let (network, zone) = random(seed);
        let expected = front(&network, &zone);
        let found = propose(&network, &[&zone], &normal()).unwrap();
        assert!(found.complete, "network {seed}");
        let got: Vec<(usize, usize)> = found.proposals.iter().map(|p| (p.loses.len(), p.locks())).collect();
        assert_eq!(got, expected, "network {seed}, zone {zone}: {network:?}");
        assert_eq!(found.bare.is_some(), expected.is_empty(), "network {seed}");
        let before = supplied(&network, &[]);
        for proposal in &found.proposals {
            let locked: Vec<&str> = proposal.lock.iter().map(String::as_str).collect();
            assert!(is_cut(&network, &zone, &locked), "network {seed}");
            let after = supplied(&network, &locked);
            let lost: BTreeSet<String> = before.difference(&after).cloned().collect();
            assert_eq!(proposal.circuits.iter().cloned().collect::<BTreeSet<_>>(), lost, "network {seed}");
            assert!(proposal.check.cut);
        }
        steps += usize::from(got.len() > 1);
        between += usize::from(got.len() > 2);
        bare += usize::from(got.is_empty());
    }
    // The networks are of every sort: with a choice, with steps between the ends, and without any cut.
    println!("{steps} with a choice, {between} with something between, {bare} that nothing cuts");
    assert!(steps > 300 && between > 50 && bare > 100);
}

/// The check says what flooding says, for random locks; its paths are ways over links that are not locked, and the first is a shortest.
#[test]
fn the_check_is_equal_to_flooding() {
    let mut cut = 0;
    for seed in 1..=NETWORKS {
        let (network, zone) = random(seed);
        let mut r = Random(seed ^ 0xabcd);
        let locked: Vec<&str> =
            network.links().iter().filter(|l| l.lockable && !r.once_in(3)).map(|l| l.id.as_str()).collect();
        let found = check(&network, &[&zone], &locked).unwrap();
        assert_eq!(found.cut, is_cut(&network, &zone, &locked), "network {seed}");
        assert!(found.not_shown.is_empty());
        assert_eq!(found.paths.is_empty(), found.cut);
        cut += usize::from(found.cut);
        let reached = together(&network, &[&zone], |l| !(l.lockable && locked.contains(&l.id.as_str())));
        let live: BTreeSet<String> =
            sources(&network).iter().filter(|s| reached.contains(**s)).map(|s| (*s).into()).collect();
        assert_eq!(found.paths.iter().map(|p| p.ids[0].clone()).collect::<BTreeSet<_>>(), live, "network {seed}");
        assert_eq!(found.sources, live.len());
        for path in &found.paths {
            assert!(live.contains(&path.way[0]) && path.way.last() == Some(&zone));
            for step in path.way.windows(3).step_by(2) {
                let link = network.link(&step[1]).unwrap();
                assert!([&link.from, &link.to].contains(&&step[0]) && [&link.from, &link.to].contains(&&step[2]));
                assert!(!(link.lockable && locked.contains(&link.id.as_str())));
            }
        }
    }
    assert!(cut > 200 && cut < 1800, "{cut} are cut");
}

/// Whether any source hangs together with `zone` when these links are open and all others closed.
pub fn reached(network: &Network, zone: &str, open: &[&str]) -> bool {
    let with = together(network, &[zone], |link| !open.contains(&link.id.as_str()));
    sources(network).iter().any(|s| with.contains(*s))
}
