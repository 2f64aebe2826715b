//! What is asked and never assumed: which line is high or at earth, by what earth may be shown, and where an indicator has to begin.

use stillbar_core::job::steps::Step;
use stillbar_core::journal::Fact;
use stillbar_core::prove::conditions::{Unmet, unmet};
use stillbar_core::prove::{Earthing, ReferenceProof, System, parse_conductors};
use stillbar_core::supply::Position;

use super::Office;
use super::live::{NOMINAL, answer_of};
use super::plants::plants;
use super::story::*;
use crate::desk::*;
use crate::forgotten::Phone;

/// Earth is shown by a known live line only where that line has its full voltage to earth: not in IT, not where the earthing is not known,
/// not on a set of one's own, and on a corner at earth or two poles only once it is known which.
#[test]
fn a_known_live_line_shows_earth_only_where_it_can() {
    for (system, volts, _) in NOMINAL {
        let office = Office::open();
        let question = answer_of(*system, None).map(|(question, _)| (question, "not-known"));
        let marks = plants(*system, *volts).into_iter().map(|p| (answer_of(*system, p.marked), p.marked));
        for (answer, marked) in marks.chain([(question, None), (None, None)]) {
            for earthing in Earthing::ALL {
                let asks = matches!(system, System::CornerGrounded | System::DcTwoWire);
                let tied = !matches!(earthing, Earthing::It | Earthing::Unknown);
                let can = tied && (!asks || marked.is_some());
                let mut case = office.job(*system, *volts, earthing, answer).case();
                case.reference_proved = ReferenceProof::KnownLine;
                let refused = unmet(&case).iter().any(|u| matches!(u, Unmet::KnownLine { .. }));
                assert_eq!(!refused, can, "{system:?} {earthing:?} {answer:?}");
            }
        }
    }
    let office = Office::open();
    let own = parse_conductors("L1, L2, PE").unwrap();
    let job = office.tries(System::Own, 230.0, Earthing::TnS, &own).unwrap();
    let mut case = office.folded(job).case();
    case.reference_proved = ReferenceProof::KnownLine;
    assert!(unmet(&case).iter().any(|u| matches!(u, Unmet::KnownLine { .. })));
}

/// Nothing is opened before it is asked: afterwards nobody can read it any more.
#[test]
fn nothing_is_opened_before_the_line_is_asked_for() {
    for (system, volts) in [(System::HighLeg, 240.0), (System::CornerGrounded, 480.0), (System::DcTwoWire, 220.0)] {
        let story = Story::of(system, volts, Earthing::TnS, 0);
        let unanswered = changed(&story.plan(), &story.answer(), "");
        let shed = until(ISOLATE, "fill What you saw go off");
        let phone = Phone::begun(&[PEOPLE, &unanswered]);
        let lacks = format!("{:?}", folded(&phone).blockers(Step::Points));
        assert!(!lacks.is_empty() && lacks != "[]", "{system:?}");
        let q4 = phone
            .entries()
            .iter()
            .find(|e| matches!(&e.body.fact, Fact::PointAdded { label, .. } if label.starts_with("Q4")))
            .unwrap()
            .id;
        let (seen, found) = ("Blades seen apart".to_owned(), Position::Closed);
        // Beside the right board, which is asked of it as well.
        let _ = phone.device.try_play(phone.field(), &format!("tap The job\ntap Switch off the loads\n{shed}"));
        let opened = Fact::PointOpened { point: q4, off_load: true, seen, found, knowing: Vec::new() };
        let said = tries(&phone, opened).expect_err("opened, and nobody was asked which line it is");
        assert!(said.contains("Answer: The "), "{system:?}: {said}");
    }
}

/// A solid link stays closed because L1 was shown to be at earth. Whoever says otherwise ends that.
#[test]
fn a_link_that_is_not_at_earth_after_all_ends_the_proof() {
    for other in ["l2", "not-known"] {
        let mut link = Story::of(System::CornerGrounded, 480.0, Earthing::TnS, 0);
        link.opens.retain(|pole| pole != "L1");
        let phone = link.proved();
        assert!(phone.proved());
        let (question, answer) = ("grounded-line".to_owned(), other.to_owned());
        let (words, who) = ("Read again at the meter: 480, 0, 480".to_owned(), String::new());
        let said = tries(&phone, Fact::Answered { question, answer, of: None, point: None, words, who, read: None });
        assert!(said.is_err() || !phone.proved(), "{other}: {}", banner(&phone));
    }
}

/// 27.5 V for 55-0-55, 12 V for 48 V DC, and no direct voltage at all: an indicator that begins too late proves nothing.
#[test]
fn an_indicator_that_begins_too_late_proves_nothing() {
    let (ac, dc) = ("Its lowest indication, AC = 12 V", "Its lowest indication, DC = 12 V");
    for (system, volts, from, to, serves) in [
        (System::SiteTransformer, 110.0, ac, "Its lowest indication, AC = 24 V", true),
        (System::SiteTransformer, 110.0, ac, "Its lowest indication, AC = 50 V", false),
        (System::SiteTransformerThree, 110.0, ac, "Its lowest indication, AC = 50 V", false),
        (System::SplitPhase, 120.0, ac, "Its lowest indication, AC = 50 V", true),
        (System::DcTwoWire, 48.0, dc, "Its lowest indication, DC = 12 V", true),
        (System::DcTwoWire, 48.0, dc, "Its lowest indication, DC = 24 V", false),
        (System::DcTwoWire, 750.0, dc, "Its lowest indication, DC = 120 V", true),
        (System::DcTwoWire, 220.0, dc, "Its lowest indication, DC = 120 V", false),
        (System::DcTwoWire, 220.0, dc, "Its lowest indication, DC = It shows no direct voltage", false),
    ] {
        // Neither pole at earth: half of the voltage on each.
        let which = if system == System::DcTwoWire { 2 } else { 0 };
        let story = Story::of(system, volts, Earthing::TnS, which);
        let circuits = changed(&story.circuits(), from, to);
        let phone = Phone::begun(&[PEOPLE, &story.plan()]);
        let on = format!("{circuits}{ISOLATE}{}", until(PROVE, "choose How it was shown"));
        phone.play(&on);
        let begun = !phone.at_job().is_empty() && folded(&phone).run().is_some();
        if begun {
            phone.at(&format!("/job/{}/step/prove-reference", phone.job()));
            let way = "choose How it was shown = Low-resistance continuity from PE to the main earthing terminal\n\
                       fill Where, or another way = MET in the meter room\ntap Earth proved";
            phone.play(way);
            dead_test(&phone);
            let _ = phone.device.try_play(phone.field(), from_second_proof());
        }
        assert_eq!(phone.proved(), serves, "{system:?} {volts} V, {to}");
    }
}

fn from_second_proof() -> &'static str {
    from(PROVE, "see Prove the indicator again")
}
