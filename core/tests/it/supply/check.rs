//! What counts as a path, and what is never called cut.

use stillbar_core::supply::{
    Answer, Check, Conductors, Link, LinkKind, MAX_PATHS, Network, Node, NodeKind, SourceSort, check,
};
use stillbar_core::text;

use super::network;

const SITE: &str = "
    grid source
    gen source
    B1 board
    B2 board
    B3 board
    C1 load lighting 2
    grid Q1 B1
    gen G1! B1
    B1 Q7 B3
    B1 Q5 B2
    B2 T1! B3
    B3 -w1- C1
";

fn asked(network: &Network, locked: &[&str]) -> Check {
    check(network, &["B3"], locked).unwrap()
}

fn paths(check: &Check) -> Vec<String> {
    check.paths.iter().map(|p| p.ids.join(" ")).collect()
}

/// A tie and a standby set that are open are paths until they are locked open.
#[test]
fn open_is_not_locked() {
    let site = network(SITE);
    let check = asked(&site, &["Q7"]);
    assert!(!check.cut);
    assert_eq!(paths(&check), ["grid Q1 Q5 T1 B3", "gen G1 Q5 T1 B3"]);
    assert_eq!(check.paths[0].way, ["grid", "Q1", "B1", "Q5", "B2", "T1", "B3"]);
    assert_eq!(
        text::path(&check.paths[1]),
        "gen reaches B3 through G1 (normally open, not locked open), Q5 (normally closed, not locked) and T1 (normally open, not locked open)."
    );
    assert_eq!(check.answer(), Answer::NotCut);
    assert!(asked(&site, &["Q7", "T1"]).cut);
    assert!(asked(&site, &["Q7", "Q5"]).cut);
    assert!(!asked(&site, &["Q1", "Q5"]).cut, "the standby set comes over Q7");
    assert!(asked(&site, &["Q1", "G1"]).cut);
    assert_eq!(asked(&site, &["Q1", "G1"]).answer(), Answer::Cut);
}

/// The shortest path of each source first, then those that would be left if its points were locked too.
#[test]
fn further_paths_are_told_at_once() {
    let site = network("grid source\n B3 board\n grid Q1 B3\n grid Q2 B3\n grid Q3! B3\n");
    assert_eq!(paths(&asked(&site, &[])), ["grid Q1 B3", "grid Q2 B3", "grid Q3 B3"]);
    // Where nothing on the way takes a lock, one path says it all.
    let site = network("grid source\n B3 board\n grid Q1? B3\n grid Q2 B3\n");
    assert_eq!(paths(&asked(&site, &["Q2"])), ["grid Q1 B3"]);
}

/// PV and a battery below the zone feed it as well as what is above it.
#[test]
fn what_is_below_feeds_back() {
    let site = network("grid source\n PV source\n B3 board\n B4 board\n grid Q1 B3\n B3 Q2 B4\n B4 -w- PV\n");
    let check = asked(&site, &["Q1"]);
    assert_eq!(paths(&check), ["PV Q2 B3"]);
    assert!(asked(&site, &["Q1", "Q2"]).cut);
}

/// A zone that is a source itself, a cable as a zone, and several parts as one zone.
#[test]
fn zones() {
    let site = network(SITE);
    let ids = |zone: &[&str], locked: &[&str]| check(&site, zone, locked).unwrap();
    assert_eq!(paths(&ids(&["grid"], &["Q1"])), ["grid"]);
    // To work on a switch both its ends have to be cut.
    assert_eq!(paths(&ids(&["Q7"], &["Q7"])), ["grid Q1 B1", "gen G1 B1"]);
    assert!(ids(&["w1"], &["Q7", "T1"]).cut);
    assert_eq!(ids(&["B2", "B3"], &["Q7"]).sources, 2);
    assert!(ids(&["B2", "B3"], &["Q5", "Q7"]).cut);
    let error = check(&site, &["B9"], &["Q1"]).unwrap_err();
    assert_eq!(text::network_fault(&error.why), "\"B9\" is not in it; name a node or a link as the network does.");
    assert!(check(&site, &[] as &[&str], &["Q1"]).is_err());
}

/// Cut by all that is known, and a part of it is not known: never "cut".
#[test]
fn unknown_is_never_cut() {
    let base = "grid source\n B3 board\n grid Q1 B3\n";
    let not_shown = |more: &str, change: &dyn Fn(&mut Vec<Node>, &mut Vec<Link>), locked: &[&str]| {
        let made = network(&format!("{base}{more}"));
        let (mut nodes, mut links) = (made.described().to_vec(), made.links().to_vec());
        change(&mut nodes, &mut links);
        let made = Network::new(nodes, links).unwrap();
        let check = check(&made, &["B3"], locked).unwrap();
        assert!(check.paths.is_empty() && !check.cut);
        assert_eq!(check.answer(), Answer::NotShown);
        assert_eq!(check.not_shown.len(), 1);
        format!("{}: {}", check.not_shown[0].id, text::doubt(&check.not_shown[0].why))
    };
    let none = |_: &mut Vec<Node>, _: &mut Vec<Link>| {};
    let q1 = &["Q1"];
    assert_eq!(not_shown("X1 unknown\n B3 -w9- X1\n", &none, q1), "X1: Nobody knows what X1 is: it may be a source.");
    assert_eq!(
        not_shown("B3 -w9- X1\n", &none, q1),
        "X1: X1 is named by a link, and nobody described it: it may be a source."
    );
    let grey = |nodes: &mut Vec<Node>, _: &mut Vec<Link>| nodes[1].untraced = "a grey cable".into();
    assert_eq!(not_shown("", &grey, q1), "B3: At B3 something was not traced: a grey cable.");
    let link = |_: &mut Vec<Node>, links: &mut Vec<Link>| links[1].kind = LinkKind::Unknown;
    assert_eq!(not_shown("C1 load\n B3 -w9- C1\n", &link, q1), "w9: Nobody traced w9 from B3 to C1.");
    assert_eq!(not_shown("", &none, &["Q1", "Q99"]), "Q99: \"Q99\" is given as locked, but it is not in the network.");
    assert_eq!(
        not_shown("", &none, &["Q1", "B3"]),
        "B3: \"B3\" is given as locked, but it is a board, and locks are on links."
    );
    assert_eq!(
        not_shown("C1 load\n B3 Q2? C1\n", &none, &["Q1", "Q2"]),
        "Q2: Q2 is given as locked, but the network says that it takes no lock."
    );
    assert_eq!(
        not_shown("C1 load\n B3 -w2- C1\n", &none, &["Q1", "w2"]),
        "w2: w2 is a cable, which parts nothing: lock the switch at its end."
    );
}

/// What is not known beyond a locked point does not matter.
#[test]
fn unknown_beyond_a_lock() {
    let site = network("grid source\n B1 board\n B3 board\n grid Q1 B1\n B1 -w9- X1\n B1 Q7 B3\n");
    assert!(asked(&site, &["Q7"]).cut);
    assert!(!asked(&site, &["Q1"]).cut);
}

/// A lock on a switch that leaves conductors joined is not shown to cut, and the path over it stays uncovered.
#[test]
fn poles_that_do_not_open_all() {
    let names = |list: &str| Some(Conductors::Names(list.split(' ').map(str::to_owned).collect()));
    let says = |poles: Option<Conductors>, conductors: Option<Conductors>| {
        let nodes = vec![Node::new("grid", NodeKind::Source), Node::new("B3", NodeKind::Board)];
        let link = Link { poles, conductors, ..Link::new("Q1", "grid", "B3", LinkKind::Switch).lockable() };
        let site = Network::new(nodes, vec![link]).unwrap();
        let check = check(&site, &["B3"], &["Q1"]).unwrap();
        assert_eq!(check.cut, check.paths.is_empty());
        check.not_shown.first().map(|d| text::doubt(&d.why)).unwrap_or_default()
    };
    assert_eq!(says(names("L1 L2 L3"), None), "");
    assert_eq!(says(names("L1 L2 L3"), names("L1 L2 L3")), "");
    assert_eq!(says(names("L1 L2 L3"), names("L1 L2 L3 N")), "Q1 is locked, but it does not open N.");
    assert_eq!(says(None, names("L1 N")), "Q1 is locked, but nobody noted which conductors it opens.");
    assert_eq!(says(Some(Conductors::Count(3)), names("L1 L2 L3 N")), "Q1 is locked, but it opens 3 of 4 conductors.");
    assert_eq!(says(Some(Conductors::Count(4)), Some(Conductors::Count(4))), "");
}

/// Every kind of link that nobody locked is a path, open or not.
#[test]
fn every_kind_of_link_is_a_path() {
    for kind in LinkKind::ALL {
        let mut link = Link::new("X", "gen", "B3", kind).normally_open();
        link.lockable = kind.parts();
        let mut gen_set = Node::new("gen", NodeKind::Source);
        gen_set.sort = SourceSort::Generator;
        let site = Network::new(vec![gen_set, Node::new("B3", NodeKind::Board)], vec![link]).unwrap();
        assert_eq!(check(&site, &["B3"], &[] as &[&str]).unwrap().sources, 1, "{kind:?}");
        let locked = check(&site, &["B3"], &["X"]).unwrap();
        assert_eq!(locked.cut, kind.parts(), "{kind:?}");
    }
}

/// However many sources there are, the answer is bounded and says how many.
#[test]
fn many_sources() {
    let mut lines = String::from("B3 board\n");
    for i in 0..500 {
        lines += &format!("S{i} source\n S{i} Q{i} B3\n");
    }
    let check = asked(&network(&lines), &[]);
    assert_eq!((check.paths.len(), check.sources), (MAX_PATHS, 500));
}
