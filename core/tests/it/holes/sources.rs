//! Whatever may bring a voltage back: covers, control supplies, sources that a network shows.

use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{Found, SourceKind};
use stillbar_core::prove::{Reading, Test};

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

const AT_WORK: [&str; 5] = [PEOPLE, PLAN, ISOLATE, PROVE, BEGIN];

/// The site's supply is drawn on another phone: the grid and the board.
const DRAWN: &str = "tap Supply of Brook Lane dye works\n\
                     tap Add a source, board or load\nfill Name, as it is labelled = Grid\nchoose What it is = Source: grid\ntap Save this part\n\
                     tap Add a source, board or load\nfill Name, as it is labelled = DB4\nchoose What it is = Board\ntap Save this part\n";
/// And a generator that feeds the board, of which no job knows.
const SET: &str = "tap Add a source, board or load\nfill Name, as it is labelled = G2\nchoose What it is = Source: generator\n\
                   fill What else is written on it = Mobile set\ntap Save this part\n\
                   tap Add a switch or cable\nchoose From = G2\nchoose To = DB4\nfill Name of the switch or cable = Q20\n\
                   choose Kind of link = Switch, breaker or fuses\nchoose Can it be locked open? = It takes a lock\ntap Save this part\n";

/// Another phone on which somebody draws.
fn draws(one: &Phone, script: &str) -> Phone {
    let other = Phone::beside(one, 2, MARA);
    other.at("/");
    other.play(script);
    other
}

/// What everybody at work sees: treat as live, and that they have to stop.
fn stops_work(one: &Phone) {
    let shown = one.at_job();
    assert!(!one.proved() && shown.contains("[Treat as live]"), "{shown}");
    for route in ["", "/step/work"] {
        let shown = one.at(&format!("/job/{}{route}", one.job()));
        assert!(main_button(one).starts_with("Stop work"), "{shown}");
    }
}

/// Another cover comes off while people are at work.
#[test]
fn a_further_cover_ends_the_proof_during_work() {
    let one = Phone::begun(&AT_WORK);
    assert!(one.proved());
    keeps(&one, MARA, Fact::CoverOff { what: "Rear plate of DB4".into() });
    stops_work(&one);
    keeps(&one, MARA, Fact::WorkStopped {});
    proves(&one, MARA);
    assert!(one.proved(), "{}", banner(&one));
}

/// A generator is drawn while people are at work.
#[test]
fn a_generator_drawn_while_at_work_stops_it() {
    let one = Phone::begun(&AT_WORK);
    let other = draws(&one, &format!("{DRAWN}{SET}"));
    assert!(one.proved());
    one.hear(&other);
    stops_work(&one);
}

/// The network shows a generator, and nobody has named what this job works on in it.
#[test]
fn a_generator_that_the_network_shows_ends_the_proof_of_a_job_without_a_zone() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let other = draws(&one, &format!("{DRAWN}{SET}"));
    assert!(one.proved() && one.at("/").contains("Proved dead"), "{}", one.at("/"));
    one.hear(&other);
    assert!(!one.proved() && banner(&one).contains("Mobile set"), "{}", banner(&one));
    assert!(!one.at("/").contains("Proved dead"), "{}", one.at("/"));
    assert!(tries(&one, MARA, Fact::WorkBegan { run: proof(&one) }).is_err());
}

/// Where the network shows nothing that the job has not answered for, it asks for the zone within the hour.
#[test]
fn a_network_that_arrives_asks_for_the_zone_within_the_hour() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let other = draws(&one, DRAWN);
    one.hear(&other);
    assert!(one.proved(), "{}", banner(&one));
    one.device.pass(55 * MINUTE);
    assert!(one.proved(), "{}", banner(&one));
    one.device.pass(10 * MINUTE);
    assert!(!one.proved(), "{}", banner(&one));
    // To name it then does not bring the proof back.
    let late = Fact::ZoneNoted { zone: vec!["DB4".into()] };
    keeps(&one, MARA, late);
    assert!(!one.proved(), "{}", banner(&one));
}

fn proof(phone: &Phone) -> stillbar_core::journal::EntryId {
    find(phone, |f| matches!(f, Fact::IndicatorProved { run: None, .. }))
}

/// A control supply is found: it says which terminals it brings, and each of them is tested against every conductor and the other.
#[test]
fn a_found_control_supply_brings_its_terminals_into_the_pairs() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let ten = pairs(&one);
    let unsaid = Fact::SourceAnswered {
        kind: SourceKind::Control,
        found: Some(Found { what: "Heater from DB2".into(), at: "X9".into() }),
        looked: "X9".into(),
        terminals: Vec::new(),
        millivolts: None,
    };
    assert!(tries(&one, MARA, unsaid).unwrap_err().contains("terminals"));
    let heater = keeps(&one, MARA, found(SourceKind::Control, "Heater from DB2", "X9", &["X9:1", "X9:2"]));
    assert!(!one.proved(), "{}", banner(&one));
    let point = adds(&one, "Q30", &["X9:1", "X9:2"], Some(heater));
    isolates(&one, point, "ML 30");
    let all = pairs(&one);
    assert_eq!((ten.len(), all.len()), (10, 21));
    let of_heater = |t: &Test| t.first.starts_with("X9") || t.then.starts_with("X9");
    let (more, before): (Vec<Test>, Vec<Test>) = all.into_iter().partition(of_heater);
    let run = begins(&one, MARA);
    reads(&one, MARA, run, &before, Reading::None);
    let _ = tries(&one, MARA, second_proof(&one, run, true));
    assert!(!one.proved(), "ten pairs of twenty-one: {}", banner(&one));
    reads(&one, MARA, run, &more, Reading::None);
    keeps(&one, MARA, second_proof(&one, run, true));
    assert!(one.proved(), "{}", banner(&one));
}
