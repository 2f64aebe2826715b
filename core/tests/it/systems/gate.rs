//! What is no low voltage, what is no set of conductors, and what may not stay live: refused before anything is kept.

use stillbar_core::journal::Fact;
use stillbar_core::prove::{Conductor, Earthing, Role, System, parse_conductors};

use super::Office;
use super::live::answer_of;
use super::plants::{Site, plants};

fn set(list: &str) -> Vec<Conductor> {
    parse_conductors(list).unwrap()
}

fn line(name: &str) -> Conductor {
    Conductor { name: name.into(), role: Role::Line, supply: None, colour: None }
}

/// Low voltage ends at 1000 V AC between any two and at 1500 V DC (IEC 60038). The greatest of a system is what its circuit shows.
#[test]
fn what_is_no_low_voltage_is_refused() {
    let office = Office::open();
    let systems = System::ALL.into_iter().filter(|s| *s != System::Own);
    for system in systems {
        let plant = &plants(system, 100.0)[0];
        let ends = if plant.direct { 1500.0 } else { 1000.0 };
        let circuit = plant.live(Site::of(Earthing::TnS));
        let greatest = plant.pairs().iter().map(|(a, b)| circuit.between(a, b)).fold(0.0, f64::max);
        let nominal = |most: f64| most * 100.0 / greatest;
        let earthing = if system == System::Pen { Earthing::TnC } else { Earthing::TnS };
        for (most, is_low) in [(0.99, true), (1.01, false), (1.7, false)] {
            let tried = office.tries(system, nominal(ends * most), earthing, &[]);
            assert_eq!(tried.is_ok(), is_low, "{system:?}, {} V between two: {tried:?}", ends * most);
            let said = tried.err().unwrap_or_default();
            assert!(is_low || said.contains("no low voltage"), "{system:?}: {said}");
        }
        // A correction is held against the same ends.
        let job = office.job(system, 100.0, earthing, answer_of(system, plant.marked)).id();
        let corrected = |volts: f64| Fact::SystemCorrected {
            system,
            earthing,
            nominal_millivolts: (volts * 1000.0) as u32,
            own: Vec::new(),
            why: "Read again at the nameplate".into(),
        };
        assert!(
            office.keep(job, corrected(nominal(ends * 1.01))).unwrap_err().contains("no low voltage"),
            "{system:?}"
        );
        assert!(office.keep(job, corrected(nominal(ends * 0.99))).is_ok(), "{system:?}");
    }
    // Exactly at the end it still is.
    assert!(office.tries(System::ThreeWire, 1000.0, Earthing::TnS, &[]).is_ok());
    assert!(office.tries(System::ThreeWire, 1000.001, Earthing::TnS, &[]).is_err());
    assert!(office.tries(System::DcTwoWire, 1500.0, Earthing::TnS, &[]).is_ok());
    assert!(office.tries(System::DcTwoWire, 1500.001, Earthing::TnS, &[]).is_err());
    // Of a set of one's own the highest between any two is said by whoever lists it.
    assert!(office.tries(System::Own, 1000.0, Earthing::TnS, &set("L1, L2, PE")).is_ok());
    assert!(office.tries(System::Own, 1001.0, Earthing::TnS, &set("L1, L2, PE")).is_err());
}

/// Two to 64, each with a name of its own of at most 12 characters, and only where the job is of such a set.
#[test]
fn what_is_no_set_of_conductors_is_refused() {
    let office = Office::open();
    let tries = |own: &[Conductor]| office.tries(System::Own, 230.0, Earthing::TnS, own);
    let many = |count: usize| (0..count).map(|k| line(&format!("U{k}"))).collect::<Vec<_>>();
    assert!(tries(&set("L1, PE")).is_ok());
    assert!(tries(&many(64)).is_ok());
    assert!(tries(&[line("123456789012"), line("L1")]).is_ok());
    for (what, own) in [
        ("none", vec![]),
        ("one", set("L1, PE")[..1].to_vec()),
        ("65", many(65)),
        ("one name twice", vec![line("L1"), line("L2"), line("L1")]),
        ("no name", vec![line("L1"), line("")]),
        ("a name of blanks", vec![line("L1"), line("  ")]),
        ("13 characters", vec![line("L1"), line("1234567890123")]),
    ] {
        let said = tries(&own).err().unwrap_or_else(|| panic!("{what} was taken"));
        assert!(said.contains("two to 64") || said.contains("character"), "{what}: {said}");
    }
    // A correction to such a set is held against the same.
    let job = office.job(System::OnePhase, 230.0, Earthing::TnS, None).id();
    let corrected = |own: Vec<Conductor>, system: System| {
        let (earthing, why) = (Earthing::TnS, "Counted again at the terminals".to_owned());
        office.keep(job, Fact::SystemCorrected { system, earthing, nominal_millivolts: 230_000, own, why })
    };
    assert!(corrected(vec![line("L1"), line("L1")], System::Own).is_err());
    assert!(corrected(vec![line("L1")], System::Own).is_err());
    assert!(corrected(set("L1, L2, PE"), System::OnePhase).is_err(), "a plain system has its own conductors");
    assert!(corrected(set("L1, L2, PE"), System::Own).is_ok());
    assert!(office.tries(System::ThreeWire, 230.0, Earthing::TnS, &set("L1, L2, PE")).is_err());
}

/// Only a conductor of one's own set, of a supply beside the normal one, may be named as staying live.
#[test]
fn what_is_of_the_normal_supply_does_not_stay_live() {
    let office = Office::open();
    let live = |names: &[&str]| Fact::StaysLive {
        what: "String A".into(),
        at: "Behind the DC isolator, left".into(),
        screened: "Cover 3 on, looked at by two".into(),
        conductors: names.iter().map(|n| (*n).to_owned()).collect(),
    };
    let own = set("L1, L2, L3, N, PE, S+=dc-plus@String A, S-=dc-minus@String A, E=protective@String A");
    let job = office.tries(System::Own, 600.0, Earthing::TnS, &own).unwrap();
    office.keep(job, Fact::WorkerJoined { person: office.mara, duty: super::Duty::InCharge }).unwrap();
    for names in [&["L1"][..], &["N"], &["PE"], &["S+", "L2"], &["E"], &["T1"], &[""]] {
        let said = office.keep(job, live(names)).err().unwrap_or_else(|| panic!("{names:?} was taken"));
        assert!(said.contains("has to be proved dead"), "{names:?}: {said}");
    }
    office.keep(job, live(&["S+", "S-"])).unwrap();
    let names = |job: &stillbar_core::job::Job| job.conductors().into_iter().map(|c| c.name).collect::<Vec<_>>();
    assert_eq!(names(&office.folded(job)), ["L1", "L2", "L3", "N", "PE", "E"]);
    // Without a conductor it may always be said: the supply side of the main switch is in no list.
    office.keep(job, live(&[])).unwrap();
    assert_eq!(names(&office.folded(job)).len(), 6);
    // Not without a place or a screen.
    for (at, screened) in [("", "Cover 3 on"), ("Left", ""), ("..", "Cover 3 on")] {
        let fact =
            Fact::StaysLive { what: "String B".into(), at: at.into(), screened: screened.into(), conductors: vec![] };
        assert!(office.keep(job, fact).is_err(), "{at:?} {screened:?}");
    }
    // Nor a conductor of any plain system.
    for system in System::ALL.into_iter().filter(|s| *s != System::Own) {
        let earthing = if system == System::Pen { Earthing::TnC } else { Earthing::TnS };
        let job = office.job(system, 100.0, earthing, None);
        for conductor in job.conductors() {
            assert!(office.keep(job.id(), live(&[&conductor.name])).is_err(), "{system:?}: {}", conductor.name);
        }
    }
}

/// Of a set of one's own nobody knows the lowest voltage: an indicator has to begin at 12 V, whatever the highest is.
#[test]
fn the_limit_of_a_set_of_ones_own() {
    let office = Office::open();
    for volts in [24.0, 48.0, 230.0, 600.0, 1000.0] {
        let job = office.tries(System::Own, volts, Earthing::TnS, &set("L1, L2, PE, S+=dc-plus@String A")).unwrap();
        let bound = office.folded(job).bound();
        assert_eq!((bound.ac_mv, bound.dc_mv), (12_000, 12_000), "{volts}");
    }
}
