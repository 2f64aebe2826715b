//! The points to lock: the examples that people would check by hand. All small networks are in `brute`.

use stillbar_core::supply::{
    Conductors, Network, Node, NodeKind, Position, Proposals, SourceSort, States, Worth, propose,
};
use stillbar_core::text;

use super::{network, normal};

fn told(found: &Proposals) -> Vec<String> {
    found.proposals.iter().map(|p| format!("{}: {}", p.lock.join(" "), p.loses.join(", "))).collect()
}

/// The issue's own example, and its neighbours.
#[test]
fn the_nearest_point_loses_least() {
    let site = network(
        "grid source\n B1 board\n B3 board\n C1 load lighting 2\n C2 load lighting 1\n grid Q1 B1\n B1 Q7 B3\n B3 -w1- C1\n B1 F1 C2\n",
    );
    let found = propose(&site, &["B3"], &normal()).unwrap();
    assert_eq!(told(&found), ["Q7: lighting 2"]);
    assert_eq!(found.proposals[0].why, Worth::Best);
    assert_eq!(told(&propose(&site, &["B1"], &normal()).unwrap()), ["Q1: lighting 2, lighting 1"]);
    // A cable to be worked on: both its ends.
    assert_eq!(told(&propose(&site, &["w1"], &normal()).unwrap()), ["Q7: lighting 2"]);
}

/// Three feeders at the board or one lock further up: fewer locks cost more circuits, and both are told.
#[test]
fn a_choice_between_locks_and_circuits() {
    let site = network(
        "grid source\n B1 board\n B3 board\n C1 load lift\n C2 load oven\n
         grid Q1 B1\n B1 Q7 B3\n B1 Q8 B3\n B1 Q9! B3\n B1 F1 C1\n B3 F2 C2\n",
    );
    let found = propose(&site, &["B3"], &normal()).unwrap();
    assert_eq!(told(&found), ["Q7 Q8 Q9: oven", "Q1: lift, oven"]);
    assert_eq!(found.proposals[0].why, Worth::FewestLost);
    assert_eq!(found.proposals[1].why, Worth::FewestLocks);
    assert!(found.complete);
}

/// Who must be told is everybody named at a part that loses its supply, boards too, each once.
#[test]
fn who_must_be_told() {
    let site =
        network("grid source\n B1 board\n C1 load fire pump\n C2 load lift\n grid Q1 B1\n B1 F1 C1\n B1 F2 C2\n");
    let mut nodes = site.described().to_vec();
    nodes[1].tell = vec!["Caretaker".into()];
    nodes[2].tell = vec!["Fire brigade".into(), "Caretaker".into()];
    let site = Network::new(nodes, site.links().to_vec()).unwrap();
    let found = propose(&site, &["B1"], &normal()).unwrap();
    assert_eq!(found.proposals[0].tell, ["Caretaker", "Fire brigade"]);
    assert_eq!(found.proposals[0].circuits, ["C1", "C2"]);
    let one = propose(&site, &["C2"], &normal()).unwrap();
    assert_eq!((told(&one), one.proposals[0].tell.len()), (vec!["F2: lift".to_owned()], 0));
}

/// Nothing takes a lock between a source and the zone: said with the path.
#[test]
fn what_nothing_cuts() {
    let site = network("grid source\n PV source\n B3 board\n grid Q1 B3\n PV Q2? B3\n");
    let found = propose(&site, &["B3"], &normal()).unwrap();
    assert!(found.proposals.is_empty());
    assert_eq!(found.bare.as_ref().unwrap().ids, ["PV", "Q2", "B3"]);
    assert_eq!(
        text::proposals(&found),
        ["Nothing that takes a lock cuts B3 off. PV reaches B3 through Q2 (normally closed, takes no lock)."]
    );
}

/// A switch that leaves the neutral joined is no point to propose.
#[test]
fn a_switch_that_does_not_open_all_is_not_proposed() {
    let site = network("grid source\n B1 board\n B3 board\n grid Q1 B1\n B1 Q7 B3\n");
    let mut links = site.links().to_vec();
    links[1].poles = Some(Conductors::Count(3));
    links[1].conductors = Some(Conductors::Count(4));
    let site = Network::new(site.described().to_vec(), links).unwrap();
    assert_eq!(told(&propose(&site, &["B3"], &normal()).unwrap()), ["Q1: "]);
}

/// What nobody knows enough of is cut off like a source; where that cannot be, no proposal is called a cut.
#[test]
fn unknown_parts_are_cut_off_or_named() {
    let beyond = network("grid source\n B1 board\n B3 board\n grid Q1 B1\n B1 Q7 B3\n B1 -w9- X1\n");
    let found = propose(&beyond, &["B3"], &normal()).unwrap();
    assert_eq!(told(&found), ["Q7: "]);
    assert!(found.proposals[0].check.cut && found.not_shown.is_empty());
    let at_it = network("grid source\n B1 board\n B3 board\n grid Q1 B1\n B1 Q7 B3\n B3 -w9- X1\n");
    let found = propose(&at_it, &["B3"], &normal()).unwrap();
    assert_eq!(told(&found), ["Q7: "]);
    assert!(!found.proposals[0].check.cut);
    assert_eq!(found.not_shown[0].id, "X1");
    assert!(
        text::proposals(&found)[0].starts_with("With none of these is it shown that B3 is cut: X1 is named by a link")
    );
}

/// What has no supply now is not lost, and PV alone keeps nothing going.
#[test]
fn what_is_lost_depends_on_what_is_supplied() {
    let lines = "grid source\n B1 board\n B3 board\n C1 load oven\n grid Q1 B1\n B1 Q7 B3\n B1 Q8 B3\n B3 F1 C1\n";
    let site = network(lines);
    let open = States::from([("F1".to_owned(), Position::Open)]);
    assert_eq!(told(&propose(&site, &["B1"], &open).unwrap()), ["Q1: "]);
    assert_eq!(told(&propose(&site, &["B1"], &normal()).unwrap()), ["Q1: oven"]);
    let mut nodes = site.described().to_vec();
    nodes.push(Node { sort: SourceSort::Pv, ..Node::new("PV", NodeKind::Source) });
    let more = network(&format!("{lines} PV source\n PV Q9 C1\n"));
    let site = Network::new(nodes, more.links().to_vec()).unwrap();
    assert_eq!(told(&propose(&site, &["B1"], &normal()).unwrap()), ["Q1 F1: oven"]);
    assert!(propose(&site, &["B1"], &States::from([("Q99".to_owned(), Position::Open)])).is_err());
}

/// A zone that no source reaches needs no lock, and that is said as a reason to look again.
#[test]
fn no_source_at_all() {
    let site = network("grid source\n B1 board\n B3 board\n grid Q1 B1\n");
    let found = propose(&site, &["B3"], &normal()).unwrap();
    assert_eq!(told(&found), [": "]);
    assert!(text::proposals(&found)[0].contains("Look for what feeds it"));
}
