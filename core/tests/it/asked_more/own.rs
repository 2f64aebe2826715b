//! A set of one's own is not named as staying live as a whole: then nothing would be left to prove.

use stillbar_core::journal::fact::Duty;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Conductor, Earthing, Order, System, parse_conductors};

use super::bench::*;
use crate::forgotten::Phone;
use crate::holes::by_hand::{MARA, TITLE};

fn opened(list: &str) -> Phone {
    let bench = Bench::new(Case::house_socket(), &[], &[]);
    let own: Vec<Conductor> = parse_conductors(list).unwrap();
    let by = bench.phone.person(MARA);
    let fact = Fact::JobOpened {
        title: format!("{TITLE} too"),
        place: "Roof".into(),
        equipment: "Combiner box".into(),
        scope: "Both strings".into(),
        system: System::Own,
        earthing: Earthing::TnS,
        order: Order::default(),
        nominal_millivolts: 600_000,
        own,
        rules: None,
        limit: None,
        tolerance: Tolerance::default(),
        company: None,
    };
    let job = bench.phone.field().keep(by, None, fact).unwrap();
    bench.phone.field().keep(by, Some(job), Fact::WorkerJoined { person: by, duty: Duty::InCharge }).unwrap();
    bench.phone
}

fn job(phone: &Phone) -> EntryId {
    let own = |f: &Fact| matches!(f, Fact::JobOpened { system: System::Own, .. });
    phone.entries().iter().find(|e| own(&e.body.fact)).unwrap().id
}

fn live(phone: &Phone, names: &[&str]) -> Result<EntryId, String> {
    let fact = Fact::StaysLive {
        what: "The strings".into(),
        at: "Behind the isolator, left".into(),
        screened: "Cover 3 on, looked at by two".into(),
        conductors: names.iter().map(|n| (*n).to_owned()).collect(),
    };
    phone.field().keep(phone.person(MARA), Some(job(phone)), fact).map_err(|why| why.to_string())
}

fn pairs(phone: &Phone) -> usize {
    let id = job(phone);
    let of_it: Vec<_> = phone.entries().into_iter().filter(|e| e.job() == Some(id)).collect();
    stillbar_core::job::Job::fold(&of_it).unwrap().plan().len()
}

/// All of them are of supplies beside the normal one, as the list has it.
const STRINGS: &str = "A+=dc-plus@String A, A-=dc-minus@String A, B+=dc-plus@String B, B-=dc-minus@String B";

#[test]
fn not_all_at_once() {
    let phone = opened(STRINGS);
    assert_eq!(pairs(&phone), 6);
    assert!(live(&phone, &["A+", "A-", "B+", "B-"]).is_err(), "nothing is left to prove");
    assert!(live(&phone, &["A+", "A-", "B+"]).is_err(), "one conductor is no pair");
    assert_eq!(pairs(&phone), 6);
    live(&phone, &["A+", "A-"]).unwrap();
    assert_eq!(pairs(&phone), 1);
}

#[test]
fn nor_one_after_the_other() {
    let phone = opened(STRINGS);
    live(&phone, &["A+", "A-"]).unwrap();
    assert!(live(&phone, &["B+", "B-"]).is_err(), "nothing is left to prove");
    assert!(live(&phone, &["B+"]).is_err(), "one conductor is no pair");
    assert_eq!(pairs(&phone), 1);
}

/// With a protective conductor beside them it is the same: to prove dead is to read something to earth.
#[test]
fn nor_all_but_the_protective_conductor() {
    let phone = opened(&format!("PE, {STRINGS}"));
    assert_eq!(pairs(&phone), 10);
    assert!(live(&phone, &["A+", "A-", "B+", "B-"]).is_err(), "PE alone is no pair");
    assert!(pairs(&phone) > 0);
}

/// Two phones name half of it each, without hearing of each other: what is left is no proof of anything.
#[test]
fn nor_by_two_phones() {
    for theirs in [&["B+", "B-"][..], &["B+"]] {
        let one = opened(STRINGS);
        let other = Phone::of(crate::desk::Device::new(9));
        other.hear(&one);
        live(&one, &["A+", "A-"]).unwrap();
        live(&other, theirs).unwrap();
        one.hear(&other);
        assert!(pairs(&one) > 0 && !one.field().proved(job(&one)), "{theirs:?}: {} pairs are left", pairs(&one));
    }
}
