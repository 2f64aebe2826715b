//! Points of isolation: what they open, and that a switch is one switch, whoever lists it.

use stillbar_core::journal::fact::{About, SourceKind};
use stillbar_core::journal::{Entry, Fact};
use stillbar_core::tag::TagId;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;
use crate::shared_points::{hand, second_isolated};

const ALL: [&str; 4] = ["L1", "L2", "L3", "N"];

/// One more generator is found, and its point opens the neutral only, or one line too few, or no neutral although it is changed over.
#[test]
fn a_found_generators_point_opens_every_line_and_its_neutral() {
    for poles in [&["N"][..], &["L1", "L2", "N"], &["L1", "L2", "L3"]] {
        let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
        let set = keeps(&one, MARA, found(SourceKind::Generator, "Mobile set", "Inlet X1", &[]));
        let partly = adds(&one, "Q20", poles, Some(set));
        isolates(&one, partly, "ML 20");
        assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "{poles:?}");
        assert!(!one.proved(), "{poles:?}: {}", banner(&one));
        // With a second one that opens all of it the job goes on.
        let whole = adds(&one, "Q21", &ALL, Some(set));
        isolates(&one, partly, "ML 20");
        isolates(&one, whole, "ML 21");
        proves(&one, MARA);
        assert!(one.proved(), "{poles:?}: {}", banner(&one));
    }
}

/// No point opens the protective conductor, whatever it cuts off.
#[test]
fn no_generators_point_opens_the_protective_conductor() {
    let one = Phone::begun(&[PEOPLE, PLAN]);
    let set = keeps(&one, MARA, found(SourceKind::Generator, "Mobile set", "Inlet X1", &[]));
    let with_pe = || {
        let poles = ["L1", "L2", "L3", "N", "PE"].map(str::to_owned).to_vec();
        Fact::PointAdded {
            label: "Q20".into(),
            at: "DB1".into(),
            kind: stillbar_core::point::PointKind::SwitchDisconnector,
            lockable: true,
            poles,
            cuts: Some(set),
            switch: None,
            stays_open: false,
            same_as: None,
        }
    };
    assert!(tries(&one, MARA, with_pe()).unwrap_err().contains("PE"));
    adds(&one, "Q20", &ALL, Some(set));
}

/// On TT, on IT and where nobody knows the earthing, the neutral of the normal supply is opened as well.
#[test]
fn a_neutral_that_may_not_be_earth_is_opened() {
    let line = "choose Conductors that it opens = L3\n";
    let next = "tap Next: Indicator and proving unit\n";
    for (earthing, asked) in [("TT", true), ("IT", true), ("Not known", true), ("TN-C-S", false), ("TN-S", false)] {
        let plan =
            until(PLAN, next).replace("Earthing arrangement = TN-C-S", &format!("Earthing arrangement = {earthing}"));
        let one = Phone::begun(&[PEOPLE, &plan]);
        let says = stillbar_core::screens::as_text(&one.field().screen());
        assert_eq!(says.contains("N of the normal supply is opened by no point"), asked, "{earthing}: {says}");
        assert_eq!(one.device.try_play(one.field(), next).is_err(), asked, "{earthing}: the step is not passed");
        let whole = plan.replacen(line, &format!("{line}choose Conductors that it opens = N\n"), 1);
        assert_ne!(whole, plan);
        Phone::begun(&[PEOPLE, &whole, next]);
    }
}

/// Two jobs, one switch under two names, the same tag at both, and no network: the second job neither misses the first one's lock nor
/// closes what it holds.
#[test]
fn one_tag_makes_points_of_two_jobs_one_point() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE, BEGIN]);
    let first = one.job();
    hand(&one.device, one.field(), MARA, TOMAS);
    let renamed = second_isolated().replace("Q4 feeder switch", "Switch 44").replace("Main board MB1, bay 4", "Bay F");
    one.play(&renamed);
    let entries = || one.field().entries().unwrap();
    let opened = |e: &&Entry| matches!(e.body.fact, Fact::JobOpened { .. }) && e.id != first;
    let second = entries().iter().find(opened).unwrap().id;
    let (q4, q44) = (point(&one, "Q4 feeder switch"), point(&one, "Switch 44"));
    let tomas = one.person(TOMAS);
    let keep = |fact: Fact| one.field().keep(tomas, Some(second), fact);
    let listed = || one.at(&format!("/job/{second}/locks"));
    assert!(!listed().contains("ML 7"), "nothing tells yet: {}", listed());
    let tag: TagId = "STB7K2M9PX4W6BHE".parse().unwrap();
    one.field().keep(one.person(MARA), Some(first), Fact::TagBound { tag, point: q4, why: None }).unwrap();
    keep(Fact::TagBound { tag, point: q44, why: None }).unwrap();
    assert!(listed().contains("Mara Lind, lock ML 7"), "{}", listed());
    // The second job is over before the first: its own locks come off, and the switch stays open.
    keep(Fact::GivenUp { why: "Called away".into(), clear: "Nobody was at it".into() }).unwrap();
    keep(Fact::Told { who: "Hall".into(), how: "Radio".into(), about: About::Energising }).unwrap();
    for entry in entries().iter().filter(|e| e.job() == Some(second)) {
        match &entry.body.fact {
            Fact::LockFitted { .. } => _ = keep(Fact::LockRemoved { lock: entry.id, cut: None }).unwrap(),
            Fact::SignPosted { point } => _ = keep(Fact::SignRemoved { point: *point }).unwrap(),
            _ => {}
        }
    }
    let refused = keep(Fact::PointClosed { point: q44, beside: None }).unwrap_err().to_string();
    assert!(refused.contains("ML 7"), "{refused}");
    assert!(one.field().known_locks().iter().any(|l| l.on && l.label == "ML 7"));
    assert!(one.field().proved(first), "{}", one.field().standing_says(first));
}
