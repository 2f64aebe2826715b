//! Answers for some paths, held against all of them.

use std::collections::BTreeSet;

use stillbar_core::supply::{Network, NodeKind, check, paths_besides};

use super::{Random, brute, network};

/// All uncovered ways without a part twice and without the zone on the way, found by walking every one.
fn all_ways(network: &Network, zone: &str, locked: &[&str]) -> BTreeSet<Vec<String>> {
    let mut ways = BTreeSet::new();
    let mut open = vec![vec![zone.to_owned()]];
    while let Some(way) = open.pop() {
        let at = &way[0];
        if network.node(at).unwrap().kind == NodeKind::Source {
            ways.insert(way.clone());
        }
        for link in network.links().iter().filter(|l| !(l.lockable && locked.contains(&l.id.as_str()))) {
            let to = if link.from == *at { &link.to } else { &link.from };
            if (link.from == *at || link.to == *at) && !way.iter().step_by(2).any(|been| been == to) {
                open.push([to.clone(), link.id.clone()].into_iter().chain(way.iter().cloned()).collect());
            }
        }
        assert!(open.len() < 100_000);
    }
    ways
}

/// Answering for one path after another, nothing is left exactly when every way is answered, and what is told is a way not answered.
#[test]
fn equal_to_walking_every_way() {
    let (mut finished, mut most) = (0, 0);
    for seed in 1..=1000 {
        let (network, zone) = brute::random(seed);
        let mut r = Random(seed ^ 0x77);
        let locked: Vec<&str> =
            network.links().iter().filter(|l| l.lockable && !r.once_in(3)).map(|l| l.id.as_str()).collect();
        let all = all_ways(&network, &zone, &locked);
        let mut answered: Vec<Vec<String>> = Vec::new();
        while answered.len() <= 60 {
            let left = paths_besides(&network, &[&zone], &locked, &answered).unwrap();
            assert_eq!(left.is_empty(), answered.len() == all.len(), "network {seed}");
            for path in &left {
                assert!(all.contains(&path.way) && !answered.contains(&path.way), "network {seed}");
            }
            let Some(path) = left.first() else {
                finished += 1;
                break;
            };
            answered.push(path.way.clone());
        }
        most = most.max(all.len());
    }
    assert!(finished > 800 && most > 20, "{finished} {most}");
}

/// Two ways over one tie: who says that the first does not count has said nothing of the second, though the check tells only the first.
#[test]
fn a_way_that_shares_points_with_an_answered_one() {
    let site = network(
        "grid source\n B1 board\n B2 board\n B3 board\n grid Q1 B1\n B1 Q2 B2\n grid Q9 B2\n B2 T1! B3\n B1 T1b B3\n",
    );
    let told = check(&site, &["B3"], &["T1b"]).unwrap();
    assert_eq!(told.paths.iter().map(|p| p.ids.join(" ")).collect::<Vec<_>>(), ["grid Q9 T1 B3"]);
    let left = paths_besides(&site, &["B3"], &["T1b"], &[told.paths[0].way.clone()]).unwrap();
    assert_eq!(left.iter().map(|p| p.ids.join(" ")).collect::<Vec<_>>(), ["grid Q1 Q2 T1 B3"]);
}
