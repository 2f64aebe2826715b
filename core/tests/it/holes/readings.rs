//! What is read in one's own job: a failed proof of earth, a cause that nobody found, a neutral that is not joined to earth.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::InstrumentKind;
use stillbar_core::prove::Reading;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

/// "Earth not proved", and then a new test at once, in which "the reference is earth".
#[test]
fn a_failed_proof_of_earth_asks_for_its_cause_before_another_test() {
    let one = opened_up();
    let run = keeps(&one, MARA, first_proof(&one, true));
    let failed = keeps(&one, MARA, earth(run, false));
    assert!(tries(&one, MARA, first_proof(&one, true)).is_err(), "no cause is noted");
    // Nor does the same test go on to a proof.
    let _ = tries(&one, MARA, earth(run, true));
    for test in pairs(&one) {
        let (first, then, reading) = (test.first, test.then, Reading::None);
        let _ = tries(&one, MARA, Fact::ReadingTaken { run, first, then, reading, dc: false });
    }
    let _ = tries(&one, MARA, second_proof(&one, run, true));
    assert!(!one.proved() && banner(&one).contains("not earth"), "{}", banner(&one));
    keeps(&one, MARA, cause(failed, true));
    assert!(!one.proved(), "a cause alone proves nothing: {}", banner(&one));
    proves(&one, MARA);
    assert!(one.proved(), "{}", banner(&one));
}

/// "Cause not found" is an answer: then two whole tests, the second with another indicator, and it stays on the banner and page one.
#[test]
fn a_cause_that_was_not_found_asks_for_two_tests() {
    let one = opened_up();
    let run = begins(&one, MARA);
    let seen = keeps(&one, MARA, lit(run, "N", "L2"));
    keeps(&one, MARA, cause(seen, false));
    for nth in ["first", "second, with the same indicator by the same person"] {
        proves(&one, MARA);
        assert!(!one.proved(), "{nth}: {}", banner(&one));
    }
    let other = noted(InstrumentKind::Indicator, "Two-pole indicator, red case", "51002");
    let indicator = one.field().keep(one.person(MARA), None, other).unwrap();
    keeps(&one, MARA, check(indicator, true));
    answers(&one, MARA, Step::Instruments);
    let proved = |run| Fact::IndicatorProved { run, indicator, on: unit(&one), works: true };
    let run = keeps(&one, MARA, proved(None));
    keeps(&one, MARA, earth(run, true));
    reads(&one, MARA, run, &pairs(&one), Reading::None);
    keeps(&one, MARA, proved(Some(run)));
    assert!(one.proved(), "{}", banner(&one));
    for says in [banner(&one), page_one(&one)] {
        assert!(says.contains("N – L2") && says.contains("Cause not found"), "{says}");
    }
}

/// TN-C-S, the neutral stays connected, and PE to N shows none where continuity is expected: it is remarked before anybody works.
#[test]
fn a_neutral_that_shows_no_continuity_to_earth_is_remarked() {
    let remarked = |pe_to_n: &str| {
        let prove = PROVE.replace("read PE – N = Continuity", &format!("read PE – N = {pe_to_n}"));
        let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE, &prove]);
        let job = one.job();
        let routes = ["", "/step/dead-test", "/step/work"].map(|route| one.at(&format!("/job/{job}{route}")));
        (routes.concat() + &page_one(&one)).to_lowercase().contains("n is not opened")
    };
    assert!(!remarked("Continuity"), "as it should be");
    assert!(remarked("Nothing"));
}
