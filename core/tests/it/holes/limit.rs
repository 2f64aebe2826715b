//! Figures: the company's limit is said wherever the proof is, and no figure is guessed.

use stillbar_core::journal::Fact;
use stillbar_core::journal::fact::Limit;
use stillbar_core::prove::Reading;
use stillbar_core::screens::as_text;

use super::by_hand::*;
use crate::desk::*;
use crate::forgotten::Phone;

/// A company whose figures count as none up to 49.9 V.
fn limited() -> Phone {
    let one = Phone::begun(&[PEOPLE]);
    let limit = Limit { ac: 49_900, dc: 10_000, rule: "EW 14".into() };
    one.field().keep(one.person(MARA), None, Fact::LimitRuled { limit }).unwrap();
    [PLAN, ISOLATE, cover_off()].iter().for_each(|script| one.play(script));
    one
}

/// A limit of 49.9 V, and every pair at 49.9 V: the company may rule so, and whoever reads the banner or page one knows it.
#[test]
fn the_limit_stands_on_the_banner_and_the_record() {
    let one = limited();
    let run = begins(&one, MARA);
    reads(&one, MARA, run, &pairs(&one), Reading::Millivolts(49_900));
    keeps(&one, MARA, second_proof(&one, run, true));
    assert!(one.proved(), "{}", banner(&one));
    for says in [banner(&one), page_one(&one), one.at_job()] {
        assert!(says.contains("49.9 V AC") && says.contains("10 V DC") && says.contains("EW 14"), "{says}");
    }
    let above = begins(&one, MARA);
    reads(&one, MARA, above, &pairs(&one)[..1], Reading::Millivolts(49_901));
    assert!(!one.proved() && banner(&one).contains("Stop, treat as live"), "{}", banner(&one));
}

/// "1,000" under that limit: one volt, or a thousand? Nothing is kept before somebody says which.
#[test]
fn a_mark_before_three_digits_is_asked_about() {
    let one = limited();
    let from = "tap Next: Prove the indicator";
    one.at_job();
    one.play(&until(PROVE, "read N – L1")[PROVE.find(from).unwrap()..]);
    let kept = || one.entries().iter().filter(|e| matches!(e.body.fact, Fact::ReadingTaken { .. })).count();
    for typed in ["1,000", "1.000", "49,900"] {
        let none = "read N – L2 = Nothing\nread N – L3 = Nothing\n";
        one.play(&format!("read N – L1 = {typed}\n{none}tap Save these readings"));
        let shown = as_text(&one.field().screen());
        let thousands = typed.replace([',', '.'], "");
        assert!(shown.contains(" V, or ") && shown.contains(&thousands), "{shown}");
        assert_eq!(kept(), 0, "{typed}: {shown}");
    }
    one.play("read N – L1 = 1,0\nread N – L2 = Nothing\nread N – L3 = Nothing\ntap Save these readings");
    assert_eq!(kept(), 3);
    let of = |e: &stillbar_core::journal::Entry| matches!(&e.body.fact, Fact::ReadingTaken { then, reading, .. } if then == "L1" && *reading == Reading::Millivolts(1_000));
    assert!(one.entries().iter().any(of));
}
