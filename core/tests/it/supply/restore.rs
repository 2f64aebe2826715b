//! Putting points back, and which jobs a change touches.

use stillbar_core::supply::{
    Answer, Change, Held, Link, LinkKind, Node, NodeKind, Position, Restore, RestoreStep, States, StaysOpen, check,
    restore, touched,
};
use stillbar_core::text;

use super::{Random, brute, network};

const SITE: &str = "
    grid source
    gen source
    B1 board
    B2 board
    B3 board
    grid Q1 B1
    B1 Q5 B2
    B1 Q7 B3
    B2 T1! B3
    gen G1! B2
";

fn held(job: &str, zone: &str, own: &[&str], shared: &[&str]) -> Held {
    let list = |ids: &[&str]| ids.iter().map(|id| (*id).to_owned()).collect();
    Held { job: job.into(), zone: vec![zone.into()], own: list(own), shared: list(shared) }
}

fn states(open: &[&str], closed: &[&str]) -> States {
    let open = open.iter().map(|id| ((*id).to_owned(), Position::Open));
    open.chain(closed.iter().map(|id| ((*id).to_owned(), Position::Closed))).collect()
}

/// From the source outwards, each step with what it feeds.
#[test]
fn from_the_source_outwards() {
    let now = states(&["Q7", "Q5", "Q1"], &[]);
    let Restore::Steps(steps) = restore(&network(SITE), &now, &states(&[], &["Q1", "Q5", "Q7"]), &[]).unwrap() else {
        panic!("it is refused");
    };
    let feeds = |step: &RestoreStep| step.feeds.iter().map(|part| part.id.clone()).collect::<Vec<_>>().join(" ");
    let told: Vec<String> = steps.iter().map(|s| format!("{} {}: {}", s.to.word(), s.link, feeds(s))).collect();
    assert_eq!(told, ["closed Q1: B1", "closed Q5: B2", "closed Q7: B3"]);
    assert!(steps.iter().all(|s| s.caution.is_none()));
}

/// What stood in for the supply opens before the supply comes back.
#[test]
fn opening_comes_first() {
    let now = states(&["Q1", "Q7"], &["G1", "T1"]);
    let wanted = states(&["G1", "T1"], &["Q1", "Q7"]);
    let Restore::Steps(steps) = restore(&network(SITE), &now, &wanted, &[]).unwrap() else { panic!("it is refused") };
    let links: Vec<&str> = steps.iter().map(|s| s.link.as_str()).collect();
    assert_eq!(links, ["T1", "G1", "Q1", "Q7"]);
    // Closing a tie between two supplies is not refused: it is said.
    let Restore::Steps(steps) = restore(&network(SITE), &states(&[], &[]), &states(&[], &["G1"]), &[]).unwrap() else {
        panic!("it is refused")
    };
    assert_eq!(
        text::caution(steps[0].caution.as_ref().unwrap()),
        "Both sides have a supply, from gen and from grid: close it only if they may be joined."
    );
}

/// Somebody still has B3 locked: their point stays, and no other way round feeds it.
#[test]
fn a_zone_that_is_still_locked_gets_nothing() {
    let now = states(&["Q5", "Q7"], &[]);
    let job = [held("Kitchen", "B3", &["Q7"], &[])];
    let refused = |wanted: States| match restore(&network(SITE), &now, &wanted, &job).unwrap() {
        Restore::Refused { why } => {
            let paths = why.iter().filter(|why| matches!(why, StaysOpen::Fed { .. })).count();
            (why.iter().map(text::stays_open).collect::<Vec<_>>(), paths)
        }
        Restore::Steps(steps) => panic!("{steps:?}"),
    };
    let (why, paths) = refused(states(&[], &["Q7"]));
    assert_eq!((why, paths), (vec!["Q7 still has a lock that Kitchen counts on.".to_owned()], 0));
    let (why, paths) = refused(states(&[], &["Q5", "T1"]));
    assert_eq!(paths, 1);
    assert_eq!(
        why,
        [
            "Kitchen then has a supply where its locks are on. grid reaches B3 through Q1 (normally closed, not locked), Q5 (normally closed, not locked) and T1 (normally open, not locked open)."
        ]
    );
    assert!(matches!(restore(&network(SITE), &now, &states(&[], &["Q5"]), &job).unwrap(), Restore::Steps(_)));
}

/// On random networks: after every step of every order, no held zone is joined to a source over closed links.
#[test]
fn no_step_feeds_a_held_zone() {
    let (mut ordered, mut refused) = (0, 0);
    for seed in 1..=2000 {
        let (network, zone) = brute::random(seed);
        let mut r = Random(seed ^ 0x5151);
        let switches: Vec<&Link> = network.links().iter().filter(|l| l.kind == LinkKind::Switch).collect();
        let own: Vec<String> = switches.iter().filter(|l| l.lockable && !r.once_in(5)).map(|l| l.id.clone()).collect();
        let mut pick = |one_in: usize| -> States {
            let mut picked = States::new();
            for link in &switches {
                if r.once_in(one_in) {
                    picked.insert(link.id.clone(), if r.once_in(3) { Position::Open } else { Position::Closed });
                }
            }
            picked
        };
        let (now, wanted) = (pick(3), pick(3));
        let job = Held { job: "it".into(), zone: vec![zone.clone()], own: own.clone(), shared: Vec::new() };
        let fed = |at: &States| {
            let open: Vec<&str> = network
                .links()
                .iter()
                .filter(|l| l.kind == LinkKind::Switch)
                .filter(|l| own.contains(&l.id) || *at.get(&l.id).unwrap_or(&l.normally) == Position::Open)
                .map(|l| l.id.as_str())
                .collect();
            brute::reached(&network, &zone, &open)
        };
        match restore(&network, &now, &wanted, &[job]).unwrap() {
            Restore::Refused { .. } => refused += 1,
            Restore::Steps(steps) => {
                ordered += 1;
                let mut at = now.clone();
                assert!(!fed(&at), "network {seed}");
                for step in &steps {
                    at.insert(step.link.clone(), step.to);
                    assert!(!fed(&at), "network {seed}: {steps:?}");
                }
                // All of it is done, and nothing else.
                for link in &switches {
                    let target = wanted.get(&link.id).or(now.get(&link.id)).unwrap_or(&link.normally);
                    let reached = at.get(&link.id).unwrap_or(&link.normally);
                    let locked = own.contains(&link.id);
                    assert!(target == reached || locked && *target == Position::Open, "network {seed}, {}", link.id);
                }
            }
        }
    }
    assert!(ordered > 200 && refused > 200, "{ordered} {refused}");
}

/// A shared point: the job whose own lock hangs there does not mind that another takes its lock off; the one without a lock does.
#[test]
fn a_lock_that_comes_off() {
    let site = network(SITE);
    let jobs = [
        held("Kitchen", "B3", &["Q7", "T1"], &[]),
        held("Lift", "B3", &["T1"], &["Q7"]),
        held("Roof", "B2", &["Q5", "G1"], &["T1"]),
    ];
    let off = |link: &str, by: usize| {
        let told = touched(&site, &jobs, &Change::LockRemoved { link: link.into(), by }).unwrap();
        told.into_iter().map(|t| (t.job, text::touched(&t))).collect::<Vec<_>>()
    };
    let lift = "Lift: B3 is no longer cut. grid reaches B3 through Q1 (normally closed, not locked) and Q7 (normally closed, not locked). gen reaches";
    let told = off("Q7", 0);
    assert_eq!(told.iter().map(|t| t.0).collect::<Vec<_>>(), [0, 1]);
    assert!(told[1].1.starts_with(lift) && told[1].1.ends_with("Treat as live."));
    // T1 has two locks: either may come off.
    assert!(off("T1", 0).is_empty());
    assert_eq!(off("G1", 2).len(), 1);
}

/// A tie that is closed, whoever counted on it; and one that nobody had locked, where the zone was not cut to begin with.
#[test]
fn a_tie_that_is_closed() {
    let site = network(SITE);
    let jobs = [held("Kitchen", "B3", &["Q7", "T1"], &[]), held("Roof", "B2", &["Q5", "G1"], &[])];
    let told = touched(&site, &jobs, &Change::Closed { link: "T1".into() }).unwrap();
    assert_eq!(told.iter().map(|t| (t.job, t.before.cut)).collect::<Vec<_>>(), [(0, true), (1, false)]);
    assert!(touched(&site, &jobs, &Change::Closed { link: "Q1".into() }).unwrap().iter().all(|t| t.job == 1));
}

/// A generator that nobody had on the plan.
#[test]
fn a_source_that_is_found() {
    let site = network(SITE);
    let jobs = [held("Kitchen", "B3", &["Q7", "T1"], &[]), held("Roof", "B2", &["Q5", "T1", "G1"], &[])];
    let found = Change::Found {
        nodes: vec![Node::new("gen 2", NodeKind::Source)],
        links: vec![Link::new("CO", "gen 2", "B3", LinkKind::Changeover).lockable().normally_open()],
    };
    let told = touched(&site, &jobs, &found).unwrap();
    assert_eq!(told.len(), 1);
    assert_eq!(
        text::touched(&told[0]),
        "Kitchen: B3 is no longer cut. gen 2 reaches B3 through CO (a changeover, normally open, not locked open). Treat as live."
    );
    assert!(check(&site, &["B3"], &["Q7", "T1"]).unwrap().cut);
    // A cable that ends nobody knows where makes it doubtful.
    let found = Change::Found { nodes: vec![], links: vec![Link::new("w9", "B2", "?", LinkKind::Cable)] };
    let told = touched(&site, &jobs, &found).unwrap();
    assert_eq!(told.iter().map(|t| (t.job, t.after.answer())).collect::<Vec<_>>(), [(1, Answer::NotShown)]);
}
