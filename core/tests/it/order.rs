//! The order of the dead test: practice, rule 1, and the fewest moves, searched for exhaustively.

use std::collections::{HashMap, HashSet, VecDeque};

use stillbar_core::prove::{Case, Conductor, Note, Order, Role, Test, fewest_moves, parse_conductors, plan, plan_case};

fn pairs(list: &str, order: Order) -> String {
    plan(&parse_conductors(list).unwrap(), order).iter().map(|t| format!("{}-{} ", t.first, t.then)).collect()
}

/// All line-neutral, neutral-PE, all line-PE, all line-line; less dangerous first (common practice, no source).
#[test]
fn the_ten_steps() {
    assert_eq!(
        pairs("L1,L2,L3,N,PE", Order::LeastDangerousFirst),
        "N-L1 N-L2 N-L3 PE-N PE-L1 PE-L2 PE-L3 L1-L2 L1-L3 L2-L3 "
    );
    assert_eq!(
        pairs("L1,L2,L3,N,PE", Order::LineLineFirst),
        "L1-L2 L1-L3 L2-L3 N-L1 N-L2 N-L3 PE-L1 PE-L2 PE-L3 PE-N "
    );
    assert_eq!(pairs("L1,L2,L3,N,PE", Order::EarthFirst), "PE-N PE-L1 PE-L2 PE-L3 N-L1 N-L2 N-L3 L1-L2 L1-L3 L2-L3 ");
    assert_eq!(pairs("L,N,PE", Order::LeastDangerousFirst), "N-L PE-N PE-L ");
    assert_eq!(pairs("L1,L2,L3,PE", Order::LeastDangerousFirst), "PE-L1 PE-L2 PE-L3 L1-L2 L1-L3 L2-L3 ");
}

/// The ten steps are optimal: 13 moves, and no order has fewer under rule 1. As the screens draw them, group by group with both
/// probes off in between, they take one more. If a reading against PE already counted as showing a conductor dead, two less would do.
#[test]
fn the_ten_steps_are_optimal() {
    let five = parse_conductors("L1,L2,L3,N,PE").unwrap();
    let tests = plan(&five, Order::LeastDangerousFirst);
    let dangers = [2, 2, 2, 1, 0];
    assert_eq!((moves(&tests), fewest_moves(&five), search(&dangers, None)), (13, 13, 13));
    let groups = tests.last().unwrap().group;
    assert_eq!(tests.len() + groups, 14);
    assert_eq!(search(&dangers, Some(4)), 11);
}

/// n (n - 1) / 2 pairs, each once: 1, 3, 6, 10, 15, 21, 28, 36 for two to nine conductors (binomial coefficients).
#[test]
fn every_pair_once() {
    let names = ["PE", "N", "L1", "L2", "L3", "L4", "L5", "L6", "L7"];
    for (n, count) in (2..=9).zip([1, 3, 6, 10, 15, 21, 28, 36]) {
        let conductors = parse_conductors(&names[..n].join(",")).unwrap();
        assert_eq!(plan(&conductors, Order::LeastDangerousFirst).len(), count);
    }
}

/// Every mix of roles up to five conductors, in each preference: each pair once, rule 1 kept, and not one move more than the
/// exhaustive search needs.
#[test]
fn no_order_has_fewer_moves() {
    let mut known: HashMap<Vec<u8>, usize> = HashMap::new();
    let mut seen = 0;
    for n in 2..=5 {
        for roles in mixes(n) {
            let conductors = named(&roles);
            let dangers: Vec<u8> = roles.iter().map(|r| danger(*r)).collect();
            let best = *known.entry(dangers.clone()).or_insert_with(|| search(&dangers, None));
            for order in Order::ALL {
                let tests = plan(&conductors, order);
                keeps_the_rules(&conductors, &tests);
                assert_eq!(moves(&tests), best, "{roles:?} {order:?}");
            }
            assert_eq!(fewest_moves(&conductors), best, "{roles:?}");
            seen += 1;
        }
    }
    // Multisets of 2, 3, 4 and 5 out of 8 roles: 36 + 120 + 330 + 792.
    assert_eq!(seen, 1278);
}

/// Beyond five: the bound n (n - 1) / 2 + levels with a pair, which the module docs prove, is reached up to 64 conductors.
#[test]
fn the_bound_is_reached_up_to_64_conductors() {
    for n in 6..=64 {
        for shift in 0..8 {
            let roles: Vec<Role> = (0..n).map(|i| Role::ALL[(i * i + shift * i + i / 3 + shift) % 8]).collect();
            let conductors = named(&roles);
            let count = |level| roles.iter().filter(|r| danger(**r) == level).count();
            // The topmost level that is there has a pair only if it has two conductors.
            let present: Vec<usize> = (0..3).map(count).filter(|n| *n > 0).collect();
            let levels = present.len() - usize::from(present.last() == Some(&1));
            for order in Order::ALL {
                let tests = plan(&conductors, order);
                keeps_the_rules(&conductors, &tests);
                assert_eq!(moves(&tests), n * (n - 1) / 2 + levels, "{roles:?} {order:?}");
            }
        }
    }
}

/// A site's own order is kept as written; the plan says what it costs, and rule 1 still decides which probe goes first.
#[test]
fn an_own_order_is_kept_and_priced() {
    let written = [["L1", "PE"], ["L2", "N"], ["L1", "N"], ["L1", "L2"], ["PE", "L2"], ["N", "PE"]];
    let conductors = parse_conductors("L1,L2,N,PE").unwrap();
    let own = written.map(|pair| pair.map(str::to_owned)).to_vec();
    let plan = plan_case(&Case { own_order: Some(own), ..Case::of(conductors.clone()) });
    let got: Vec<String> = plan.tests.iter().map(|t| format!("{}-{}", t.first, t.then)).collect();
    assert_eq!(got, ["PE-L1", "N-L2", "N-L1", "L1-L2", "PE-L2", "PE-N"]);
    keeps_the_rules(&conductors, &plan.tests);
    // PE-L1: 2, N-L2: 2, N-L1: 1 (N stays), L1-L2: 2, PE-L2: 2, PE-N: 1 (PE stays); at best 6 + 3 levels.
    assert_eq!((plan.moves, plan.fewest_moves), (10, 9));
    assert!(plan.notes.contains(&Note::MoreMoves(1)), "{:?}", plan.notes);
}

#[test]
fn bad_lists_say_what_to_write() {
    for (list, says) in [
        ("L1", "at least two"),
        ("L1,L1,N", "twice"),
        ("L1,brown", "\"brown\" is not a designation"),
        ("A=phase,N", "is not a designation"),
        ("", "at least two"),
    ] {
        let error = parse_conductors(list).unwrap_err().to_string();
        assert!(error.contains(says), "{list}: {error}");
    }
}

/// A table of its own: the search must not take the danger from the code that it checks.
fn danger(role: Role) -> u8 {
    match role {
        Role::Protective => 0,
        Role::Neutral | Role::Pen | Role::MidPoint => 1,
        Role::Line | Role::DcPlus | Role::DcMinus | Role::Control => 2,
    }
}

fn named(roles: &[Role]) -> Vec<Conductor> {
    roles
        .iter()
        .enumerate()
        .map(|(i, role)| Conductor { name: format!("X{i}"), role: *role, supply: None, colour: None })
        .collect()
}

/// All multisets of `n` roles.
fn mixes(n: usize) -> Vec<Vec<Role>> {
    let mut all: Vec<Vec<usize>> = vec![vec![]];
    for _ in 0..n {
        let longer = |mix: Vec<usize>| {
            let from = mix.last().copied().unwrap_or(0);
            (from..8).map(move |role| mix.iter().copied().chain([role]).collect())
        };
        all = all.into_iter().flat_map(longer).collect();
    }
    all.into_iter().map(|mix| mix.into_iter().map(|i| Role::ALL[i]).collect()).collect()
}

fn moves(tests: &[Test]) -> usize {
    tests.iter().map(|t| usize::from(t.moves)).sum()
}

/// Plays the plan with two probes: what is held is on already, no tip is free under something worse, and each pair comes once.
fn keeps_the_rules(conductors: &[Conductor], tests: &[Test]) {
    let of = |name: &str| danger(conductors.iter().find(|c| c.name == name).unwrap().role);
    let mut seen = HashSet::new();
    let mut on: Option<[&str; 2]> = None;
    for test in tests {
        let pair = [test.first.as_str(), test.then.as_str()];
        assert_eq!(test.pair, pair);
        assert!(seen.insert(if pair[0] < pair[1] { pair } else { [pair[1], pair[0]] }), "{pair:?} twice");
        match (&test.held, on) {
            (Some(held), Some(before)) => {
                assert_eq!(test.moves, 1);
                let other = |p: [&'_ str; 2]| if p[0] == held { of(p[1]) } else { of(p[0]) };
                assert!(before.contains(&held.as_str()) && pair.contains(&held.as_str()), "{held} is not on");
                assert!(of(held) <= other(before) && of(held) <= other(pair), "free tip under {held}");
            }
            (None, _) => {
                assert_eq!(test.moves, 2);
                assert!(of(&test.first) <= of(&test.then), "{} goes on first", test.first);
            }
            (Some(_), None) => panic!("nothing is on before the first test"),
        }
        // What comes off first leaves a probe on the other one.
        let stays = if test.off_first == test.first { &test.then } else { &test.first };
        assert!(of(stays) <= of(&test.off_first), "free tip under {stays}");
        on = Some(pair);
    }
    assert_eq!(seen.len(), conductors.len() * (conductors.len() - 1) / 2);
}

/// The fewest moves by breadth-first search over single acts: lift a probe (free) or put one on (a move). A state is which pairs are
/// done and where the probes are. With `reference`, the weaker rule: what was read against it counts as shown dead.
fn search(dangers: &[u8], reference: Option<usize>) -> usize {
    let n = dangers.len();
    let bit = |a: usize, b: usize| 1u32 << (a.min(b) * n + a.max(b));
    let mut all = 0;
    for a in 0..n {
        for b in a + 1..n {
            all |= bit(a, b);
        }
    }
    let harmless = |done: u32, held: usize, other: usize| {
        dangers[held] <= dangers[other] || reference.is_some_and(|r| r != held && done & bit(r, held) != 0)
    };
    let mut best: HashMap<(u32, Option<usize>, Option<usize>), usize> = HashMap::new();
    let mut queue = VecDeque::from([((0u32, None, None), 0usize)]);
    while let Some((state, cost)) = queue.pop_front() {
        if best.get(&state).is_some_and(|known| *known <= cost) {
            continue;
        }
        best.insert(state, cost);
        let (done, a, b) = state;
        if done == all {
            return cost;
        }
        // Two like probes: `a` is on if any is.
        match (a, b) {
            (None, _) => (0..n).for_each(|x| queue.push_back(((done, Some(x), None), cost + 1))),
            (Some(a), None) => {
                queue.push_front(((done, None, None), cost));
                for x in (0..n).filter(|x| *x != a && harmless(done, a, *x)) {
                    queue.push_back(((done | bit(a, x), Some(a), Some(x)), cost + 1));
                }
            }
            (Some(a), Some(b)) => {
                for (held, lifted) in [(a, b), (b, a)] {
                    if harmless(done, held, lifted) {
                        queue.push_front(((done, Some(held), None), cost));
                    }
                }
            }
        }
    }
    unreachable!("every pair can be reached from both probes off")
}
