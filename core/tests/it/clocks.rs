//! Clocks that contradict each other: no age is told by one that is doubted, and time that passes mends none.

use std::sync::Arc;
use std::sync::atomic::Ordering;

use stillbar_core::job::age::{Moment, oldest};
use stillbar_core::journal::{Fact, Hlc, Running};

use crate::desk::*;
use crate::forgotten::{JOINED, Phone, desk, fit};

const MINUTE: i64 = 60_000;
const HOUR: i64 = 60 * MINUTE;
const CONTRADICTED: &str = "Compare both with a third clock";

/// A clock that another witness contradicts by more than five minutes tells no age; where one agrees again, it does.
#[test]
fn the_office_is_a_witness_of_the_time() {
    let phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let office = Arc::new(desk(&phone));
    let hears = |ahead: i64| {
        office.now.store(phone.device.now.load(Ordering::Relaxed) + ahead, Ordering::Relaxed);
        let _ = phone.field().exchange_over(office.clone(), "t");
        phone.at("/").contains("Set the phone's clock")
    };
    assert!(!hears(4 * 60_000));
    assert!(hears(6 * 60_000) && phone.proved(), "within one start nobody needs the wall clock");
    phone.device.starts_anew();
    assert!(!phone.proved(), "{}", phone.at_job());
    assert!(!hears(0) && phone.proved());
    assert!(hears(-6 * 60_000) && !phone.proved());
}

/// A phone beside is a witness as well. To go on for a while mends no clock; to set it does.
#[test]
fn a_phone_beside_is_a_witness_of_the_time() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let other = Phone::beside(&one, 2, "Tomas Brandt");
    other.device.set_clock(20 * MINUTE);
    other.play(&fit("TB 1"));
    one.hear(&other);
    assert!(one.at("/").contains(CONTRADICTED), "{}", one.at("/"));
    one.device.pass(16 * MINUTE);
    assert!(one.at("/").contains(CONTRADICTED), "{}", one.at("/"));
    one.device.set_clock(16 * MINUTE);
    assert!(!one.at("/").contains(CONTRADICTED), "{}", one.at("/"));
}

/// What another phone proved is four hours old by its own clock; by one that is three hours behind it would be one.
#[test]
fn a_clock_that_is_behind_makes_no_proof_younger() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let third = Phone::of(Device::new(3));
    third.device.now.store(one.device.now.load(Ordering::Relaxed) - 3 * HOUR, Ordering::Relaxed);
    third.hear(&one);
    for _ in 0..14 {
        third.device.pass(HOUR);
        one.device.pass(HOUR);
        assert!(!third.proved(), "{}", third.at_job());
    }
    assert!(!one.proved(), "a proof holds for twelve hours");
    // Its clock is the right one, somebody there says: then the other's was three hours ahead, and what it proved is no younger.
    third.at("/");
    third.play("tap This phone's clock is right\nunseen Compare both");
    assert!(!third.proved(), "{}", third.at_job());
}

/// A clock is ahead also where the other phone, which knew of what it wrote, wrote less.
#[test]
fn a_phone_that_is_behind_says_so_to_the_one_that_is_ahead() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, JOINED]);
    let other = Phone::beside(&one, 2, "Tomas Brandt");
    other.device.set_clock(-20 * MINUTE);
    other.play(&fit("TB 1"));
    one.hear(&other);
    assert!(one.at("/").contains(CONTRADICTED), "{}", one.at("/"));
    one.play("tap This phone's clock is right\nunseen Compare both");
    one.device.pass(MINUTE);
    other.device.pass(MINUTE);
    let barrier = Fact::BarrierPlaced { what: "Chain".into(), at: "Door".into() };
    other.field().keep(other.person("Tomas Brandt"), Some(other.job()), barrier).unwrap();
    one.hear(&other);
    assert!(!one.at("/").contains(CONTRADICTED), "somebody compared it: {}", one.at("/"));
}

/// One device's clock does not go back by itself: a proof from before has no age.
#[test]
fn a_clock_that_went_back_tells_no_age() {
    let phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    phone.device.set_clock(-120_000);
    assert!(phone.proved(), "the running clock counts within one start");
    phone.device.starts_anew();
    assert!(!phone.proved(), "{}", phone.at_job());
    let entry = phone.entries().pop().unwrap();
    let from = entry.stamp();
    let moment = |wall: i64, running| Moment {
        device: from.device,
        running,
        wall,
        clock: Hlc(wall.max(from.clock.0), 0),
        doubt: false,
    };
    assert_eq!(oldest(&from, &moment(from.wall - 1, None)), None);
    assert_eq!(oldest(&from, &moment(from.wall + 1, Some(Running { start: 999, ms: 0 }))), Some(1));
}

/// A clock that was set back by half a day, and has gone on since, says the hour after the proof; that it ran longer is known all the same.
#[test]
fn a_clock_set_back_and_gone_on_tells_no_age() {
    let phone = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    assert!(phone.proved());
    phone.device.set_clock(-11 * HOUR);
    phone.device.pass(12 * HOUR + MINUTE);
    assert!(!phone.proved(), "by the clock that runs");
    let barrier = Fact::BarrierPlaced { what: "Chain".into(), at: "Door".into() };
    phone.field().keep(phone.person("Mara Lind"), Some(phone.job()), barrier).unwrap();
    phone.device.starts_anew();
    assert!(!phone.proved(), "{}", phone.at_job());
}
