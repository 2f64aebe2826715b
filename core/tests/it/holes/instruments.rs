//! Instruments: one that failed, that nobody looked over, that lights too late, or that is proved on itself proves nothing.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::{InstrumentKind, ProvedOn};
use stillbar_core::prove::Reading;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

fn proof_on(phone: &Phone, on: ProvedOn) -> Fact {
    Fact::IndicatorProved { run: None, indicator: tester(phone), on, works: true }
}

/// The indicator fails its first or its second proof, and the same one is taken again at once.
#[test]
fn an_indicator_that_failed_is_checked_before_it_is_used_again() {
    for second in [false, true] {
        let one = opened_up();
        if second {
            let run = begins(&one, MARA);
            reads(&one, MARA, run, &pairs(&one), Reading::None);
            let failed = keeps(&one, MARA, second_proof(&one, run, false));
            keeps(&one, MARA, cause(failed, true));
        } else {
            keeps(&one, MARA, first_proof(&one, false));
        }
        assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "second: {second}");
        keeps(&one, MARA, check(tester(&one), true));
        proves(&one, MARA);
        assert!(one.proved(), "second: {second}: {}", banner(&one));
    }
}

/// "Proved on a source known to be live", and nobody says which.
#[test]
fn the_live_source_that_proves_an_indicator_is_named() {
    let one = opened_up();
    for unnamed in ["", " ", ".", "-----", "\u{200b}\u{200b}"] {
        assert!(tries(&one, MARA, proof_on(&one, ProvedOn::KnownSource(unnamed.into()))).is_err(), "{unnamed:?}");
    }
    let socket = || ProvedOn::KnownSource("Socket of bay 2".into());
    let run = keeps(&one, MARA, proof_on(&one, socket()));
    keeps(&one, MARA, earth(run, true));
    reads(&one, MARA, run, &pairs(&one), Reading::None);
    let last = |on: ProvedOn| Fact::IndicatorProved { run: Some(run), indicator: tester(&one), on, works: true };
    assert!(tries(&one, MARA, last(ProvedOn::KnownSource(String::new()))).is_err());
    keeps(&one, MARA, last(socket()));
    assert!(one.proved());
    let made = stillbar_core::app::of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    assert!(made.report().runs.iter().any(|run| format!("{run:?}").contains("Socket of bay 2")));
}

/// The indicator is noted once more as a proving unit, with the same maker and serial number, and proved on itself.
#[test]
fn an_indicator_is_not_proved_on_itself() {
    let one = opened_up();
    let twin = noted(InstrumentKind::ProvingUnit, "Two-pole indicator, yellow case", "40771");
    let twin = one.field().keep(one.person(MARA), None, twin).unwrap();
    keeps(&one, MARA, check(twin, true));
    answers(&one, MARA, Step::Instruments);
    for on in [twin, tester(&one)] {
        assert!(tries(&one, MARA, proof_on(&one, ProvedOn::ProvingUnit(on))).is_err());
    }
    keeps(&one, MARA, first_proof(&one, true));
}

/// The instruments were looked over 13 hours or 400 days before they are used.
#[test]
fn a_check_counts_for_one_shift() {
    for passed in [13 * HOUR, 400 * DAY] {
        let one = Phone::begun(&[PEOPLE, PLAN]);
        one.device.pass(passed);
        one.play(ISOLATE);
        one.play(cover_off());
        assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "{passed} ms");
        let ProvedOn::ProvingUnit(unit) = unit(&one) else { unreachable!("the plan's unit") };
        keeps(&one, MARA, check(tester(&one), true));
        assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "the unit too, {passed} ms");
        keeps(&one, MARA, check(unit, true));
        proves(&one, MARA);
        assert!(one.proved(), "{}", banner(&one));
    }
}

/// Another job finds the indicator broken: what this one proved with it ends, until it was checked and all is proved again.
#[test]
fn an_indicator_found_broken_in_another_job_ends_this_proof() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let (job, mara) = (one.job(), one.person(MARA));
    let other = Phone::beside(&one, 2, MARA);
    let second = another_job(&other);
    other.field().keep(mara, Some(second), check(tester(&other), false)).unwrap();
    assert!(one.field().proved(job));
    one.hear(&other);
    assert!(!one.field().proved(job), "{}", one.field().standing_says(job));
    let again = || first_proof(&one, true);
    assert!(one.field().keep(mara, Some(job), again()).is_err());
    one.field().keep(mara, Some(job), check(tester(&one), true)).unwrap();
    assert!(!one.field().proved(job), "a check alone proves nothing: {}", one.field().standing_says(job));
    one.field().keep(mara, Some(job), again()).unwrap();
}

/// An indicator that lights above 50 V only is none, on whatever board.
#[test]
fn an_indicator_that_lights_too_late_begins_no_test() {
    for (from, fits) in [(51_000, false), (120_000, false), (50_000, true)] {
        let one = opened_up();
        let lights_from = Some(stillbar_core::journal::fact::LightsFrom { ac: from, dc: Some(from) });
        let (kind, name) = (InstrumentKind::Indicator, "Lamp indicator, grey case".into());
        let late = Fact::InstrumentNoted { kind, name, serial: "7".into(), lights_from };
        let late = one.field().keep(one.person(MARA), None, late).unwrap();
        keeps(&one, MARA, check(late, true));
        answers(&one, MARA, Step::Instruments);
        let proof = Fact::IndicatorProved { run: None, indicator: late, on: unit(&one), works: true };
        assert_eq!(tries(&one, MARA, proof).is_ok(), fits, "{from} mV");
    }
}
