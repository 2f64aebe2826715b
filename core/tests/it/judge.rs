//! The judge's promises that need no circuit: the faulted circuits are in `tests/outside/test_judge.py`.

use stillbar_core::prove::conditions::Unmet;
use stillbar_core::prove::judge::{Cause, Judgement, Reason, Verdict, judge};
use stillbar_core::prove::{Case, CaseError};
use stillbar_core::text;

use crate::desk::*;

/// Five conductors, the readings given and nothing else on every other pair.
fn case(readings: &[(&str, &str, &str)], more: &str) -> Case {
    read(readings, more).unwrap_or_else(|e| panic!("{}", text::case(&e)))
}

fn read(readings: &[(&str, &str, &str)], more: &str) -> Result<Case, CaseError> {
    let names = ["L1", "L2", "L3", "N", "PE"];
    let mut given: Vec<String> = Vec::new();
    for (k, a) in names.iter().enumerate() {
        for b in &names[k + 1..] {
            let found = readings.iter().filter(|(x, y, _)| (x, y) == (a, b));
            let mut values: Vec<&str> = found.map(|r| r.2).collect();
            if values.is_empty() {
                values.push("\"level\":\"none\"");
            }
            given.extend(values.iter().map(|v| format!("{{\"pair\":[\"{a}\",\"{b}\"],{v}}}")));
        }
    }
    let conductors: Vec<String> = names.iter().map(|n| format!("{{\"name\":\"{n}\"}}")).collect();
    Case::from_json(&format!(
        "{{\"conductors\":[{}],\"earthing\":\"TN-S\",\"nominal_volts\":{{\"line_neutral\":230}},\"readings\":[{}]{more}}}",
        conductors.join(","),
        given.join(",")
    ))
}

const PROVED: &str = ",\"proved_before\":true,\"proved_after\":true,\"reference_proved\":\"known-line\"";

fn first(said: &Judgement) -> Option<Cause> {
    said.diagnoses.first().map(|d| d.cause)
}

#[test]
fn all_pairs_without_an_indication_are_proved_dead() {
    let said = judge(&case(&[], PROVED));
    assert_eq!((said.verdict, said.diagnoses.len(), said.potentials), (Verdict::ProvedDead, 0, None));
}

/// Each thing that a proof needs, taken away alone.
#[test]
fn anything_missing_is_incomplete_void_or_live() {
    let void = [",\"proved_before\":false,\"proved_after\":true", ",\"proved_before\":true,\"proved_after\":false"];
    for more in void {
        assert_eq!(judge(&case(&[], more)).verdict, Verdict::Void, "{more}");
    }
    let incomplete = [
        ",\"proved_before\":true,\"reference_proved\":\"continuity\"",
        ",\"proved_after\":true,\"reference_proved\":\"continuity\"",
        ",\"proved_before\":true,\"proved_after\":true,\"reference_proved\":\"no\"",
        // A file that says nothing of the reference does not say that it was shown.
        ",\"proved_before\":true,\"proved_after\":true",
        ",\"proved_before\":true,\"proved_after\":true,\"reference_proved\":\"continuity\",\"equipment\":[\"drive\"]",
        ",\"proved_before\":true,\"proved_after\":true,\"reference_proved\":\"continuity\",\"stored_energy\":[{\"what\":\"drive\",\"label_seconds\":300}]",
    ];
    for more in incomplete {
        assert_eq!(judge(&case(&[], more)).verdict, Verdict::Incomplete, "{more}");
    }
    let failed = judge(&case(&[], ",\"proved_before\":true,\"proved_after\":true,\"reference_proved\":\"failed\""));
    assert_eq!((failed.verdict, first(&failed)), (Verdict::TreatAsLive, Some(Cause::BrokenReference)));
    // A pair that was never read.
    let mut short = case(&[], PROVED);
    short.readings.pop();
    let said = judge(&short);
    assert_eq!(said.verdict, Verdict::Incomplete);
    let pair = ["N", "PE"].map(str::to_owned);
    assert_eq!(said.why, [Reason::Unmet(Unmet::PairNotRead { pair, dc: false })]);
    assert_eq!(text::reasons(&said.why), ["Not read yet: N – PE."]);
}

/// Of several readings of a pair the worst counts, in whatever order they came.
#[test]
fn a_later_reading_does_not_take_an_indication_back() {
    let (lit, none) = (("L1", "N", "\"level\":230"), ("L1", "N", "\"level\":\"none\""));
    for readings in [[lit, none], [none, lit]] {
        assert_eq!(judge(&case(&readings, PROVED)).verdict, Verdict::TreatAsLive);
    }
    // A void run with an indication is still void: the readings count for nothing, also as a reason to go on.
    let said = judge(&case(&[lit], ",\"proved_before\":true,\"proved_after\":false"));
    assert_eq!(said.verdict, Verdict::Void);
}

/// However well a harmless cause explains it: what is above the limit is not dead. Every voltage and impedance is tried.
#[test]
fn no_explanation_makes_a_conductor_dead() {
    for volts in [0.1, 0.5, 2.0, 5.0, 12.0, 49.9, 50.0, 90.0, 230.0] {
        for impedance in ["low", "high", "unknown"] {
            let reading = format!("\"volts\":{volts},\"impedance\":\"{impedance}\"");
            for (a, b) in [("L1", "PE"), ("N", "PE"), ("L1", "L2")] {
                let said = judge(&case(&[(a, b, &reading)], PROVED));
                assert_eq!(said.verdict, Verdict::TreatAsLive, "{a} – {b} at {volts} V, {impedance}");
            }
        }
    }
}

/// L2 still closed, everything else dead: exact phasors, and what the drawing and its words say.
#[test]
fn one_line_live_is_drawn() {
    let live = "\"volts\":230";
    let said = judge(&case(&[("L1", "L2", live), ("L2", "L3", live), ("L2", "N", live), ("L2", "PE", live)], PROVED));
    assert_eq!((said.verdict, first(&said)), (Verdict::TreatAsLive, Some(Cause::OneLineLive)));
    assert!(said.diagnoses[0].fit > 0.99 && said.repeat.is_empty(), "{said:?}");
    let (picture, label) = text::potentials(&said).unwrap();
    assert!(label.contains("L2 is 230 V from earth") && label.contains("L1, L3, N, PE are at earth"), "{label}");
    assert!(picture.shapes.len() > 4);
}

/// Steps of an indicator, a lit lamp without a number, and readings of only some of the pairs still give a diagnosis.
#[test]
fn few_and_coarse_readings_are_enough_for_a_guess() {
    let mut few = case(&[("L2", "PE", "\"level\":\"lit\"")], "");
    few.readings.retain(|g| g.pair[1] == "PE");
    let said = judge(&few);
    assert_eq!((said.verdict, first(&said)), (Verdict::TreatAsLive, Some(Cause::OneLineLive)));
}

/// The most of everything: 64 conductors, all pairs, every reading at random. It ends, and nothing is proved.
#[test]
fn the_largest_case_is_bounded() {
    let names: Vec<String> = (0..63).map(|k| format!("C{k}")).collect();
    let list: Vec<String> = names.iter().map(|n| format!("{{\"name\":\"{n}\",\"role\":\"line\"}}")).collect();
    let mut readings = Vec::new();
    let mut seed = 1u32;
    for (k, a) in names.iter().enumerate() {
        for b in &names[k + 1..] {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            readings.push(format!("{{\"pair\":[\"{a}\",\"{b}\"],\"volts\":{}}}", seed >> 22));
        }
    }
    let text = format!(
        "{{\"conductors\":[{},{{\"name\":\"PE\"}}],\"readings\":[{}],\"proved_before\":true,\"proved_after\":true}}",
        list.join(","),
        readings.join(",")
    );
    let said = judge(&Case::from_json(&text).unwrap());
    assert_eq!(said.verdict, Verdict::TreatAsLive);
    assert_eq!(said.diagnoses[0].of, Some(12), "{said:?}");
    assert!(text::explains(&said.diagnoses[0]).ends_with("(Worked out from the 12 conductors that read most.)"));
}

/// On the screens: an indication is explained, more readings may be taken to find the cause, and none of it proves anything.
#[test]
fn the_diagnosis_is_shown_and_proves_nothing() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE]);
    device.play(&field, INDICATION.split("read ").next().unwrap());
    device.play(
        &field,
        "read N – L1 = Nothing\nread N – L2 = Lit\nread N – L3 = Nothing\ntap Save these readings\nsee What may be behind it\nsee Likeliest\nsee Potentials that fit the readings\nsee No guess makes a conductor dead\n\
         read PE – N = Continuity\nread PE – L1 = Nothing\nread PE – L2 = 231\nread PE – L3 = Nothing\n\
         read L1 – L2 = 229\nread L1 – L3 = Nothing\nread L2 – L3 = 230\ntap Save the further readings\n\
         see L2 is live, the other lines are not fed\nsee [Stop, treat as live]\nunseen Begin work",
    );
}
