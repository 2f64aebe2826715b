//! Maximum flow against a published example, and against cuts found by trying all.

use stillbar_core::supply::flow::{ENDLESS, Edge, Flow};

use super::Random;

/// The flow network of Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, figure 26.1 (third edition; from memory): s, v1,
/// v2, v3, v4, t are 0 to 5. Its maximum flow is 23, and the minimum cut parts {s, v1, v2, v4} from {v3, t}.
#[test]
fn clrs_figure_26_1() {
    let edges: [Edge; 9] = [
        (0, 1, 16, 0),
        (0, 2, 13, 0),
        (1, 3, 12, 0),
        (2, 1, 4, 0),
        (3, 2, 9, 0),
        (2, 4, 14, 0),
        (4, 3, 7, 0),
        (3, 5, 20, 0),
        (4, 5, 4, 0),
    ];
    let mut flow = Flow::new(6, &edges);
    assert_eq!(flow.run(0, 5), Some(23));
    assert_eq!(flow.side(0), [true, true, true, false, true, false]);
}

/// The flow is the least capacity of all cuts (Ford and Fulkerson 1956), which are tried one by one; the side is the smallest of those.
#[test]
fn equal_to_the_least_of_all_cuts() {
    for seed in 0..2000 {
        let mut r = Random(seed);
        let nodes = 2 + r.below(7);
        let edges: Vec<Edge> = (0..r.below(20))
            .map(|_| (r.below(nodes) as u32, r.below(nodes) as u32, r.below(9) as u32, r.below(9) as u32))
            .filter(|(a, b, ..)| a != b)
            .collect();
        let through = |side: usize| -> u64 {
            let out = |node: u32| side >> node & 1 == 1;
            edges
                .iter()
                .map(|&(a, b, ab, ba)| match (out(a), out(b)) {
                    (true, false) => u64::from(ab),
                    (false, true) => u64::from(ba),
                    _ => 0,
                })
                .sum()
        };
        // Sides with node 0 and without node 1.
        let sides: Vec<usize> = (0..1usize << nodes).filter(|s| s & 1 == 1 && s & 2 == 0).collect();
        let least = sides.iter().map(|s| through(*s)).min().unwrap();
        let mut flow = Flow::new(nodes, &edges);
        assert_eq!(flow.run(0, 1), Some(least), "network {seed}");
        let side: usize = flow.side(0).iter().enumerate().map(|(i, on)| usize::from(*on) << i).sum();
        assert_eq!(through(side), least, "network {seed}");
        assert!(sides.iter().filter(|s| through(**s) == least).all(|s| s & side == side), "network {seed}");
    }
}

/// No cut goes through what is endless; a long chain is no deep recursion.
#[test]
fn endless_and_long() {
    assert_eq!(Flow::new(3, &[(0, 1, ENDLESS, ENDLESS), (1, 2, ENDLESS, 0)]).run(0, 2), None);
    assert_eq!(Flow::new(3, &[(0, 1, ENDLESS, 0), (1, 2, 5, 0), (1, 2, 7, 0)]).run(0, 2), Some(12));
    assert_eq!(Flow::new(2, &[]).run(0, 1), Some(0));
    let chain: Vec<Edge> = (0..300_000).map(|i| (i, i + 1, 2, 2)).collect();
    assert_eq!(Flow::new(300_001, &chain).run(0, 300_000), Some(2));
}
