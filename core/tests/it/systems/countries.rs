//! A whole job under each rule set, with a system that is usual there, and what its record says of the rules. Every value is typed here from
//! docs/rule-sets.md: what the app has must not be what it is held against.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use ciborium::Value as Cbor;
use stillbar_core::app::of_folder;
use stillbar_core::parts::Block;
use stillbar_core::prove::{Earthing, System};
use stillbar_core::record::verify;
use stillbar_core::screens::as_text;

use super::story::*;
use crate::desk::*;
use crate::forgotten::Phone;

const TITLE: &str = "Replace the outgoing breaker of washer 4";

/// What the page says of a rule set, and the job that is done under it.
struct Country {
    /// In brackets beside the name.
    code: &'static str,
    name: &'static str,
    law: &'static str,
    standards: &'static str,
    /// The first of "Usual systems" whose voltage this is, as an option on the form.
    usual: (System, f64, &'static str),
    earthing: Earthing,
    /// As files write it, as the form says it, and what it allows at 230 V.
    tolerance: (&'static str, &'static str, (f64, f64)),
    /// As files write it, and as the form says it.
    order: (&'static str, &'static str),
}

const EARTH_FIRST: (&str, &str) = ("earth-first", "Earth first (all to the protective conductor, then the others)");
const LEAST_DANGEROUS: (&str, &str) = ("least-dangerous-first", "Least dangerous first (line to line at the end)");
const LINE_LINE: (&str, &str) = ("line-line-first", "Line to line first");
const UK_BAND: (&str, &str, (f64, f64)) = ("uk", "United Kingdom: +10 %, -6 %", (216.2, 253.0));
const IEC_BAND: (&str, &str, (f64, f64)) = ("iec60038", "IEC 60038: 10 % either way", (207.0, 253.0));
const ANSI_BAND: (&str, &str, (f64, f64)) = ("ansi-c841-a", "ANSI C84.1 Range A: 5 % either way", (218.5, 241.5));
const THREE: &str = "Three phase with neutral: L1, L2, L3, N, PE";
const ONE: &str = "One phase: L, N, PE";

/// The whole job. Whoever opens a second job finds all that the rules of the first bring on the form, and picks none of it again.
fn whole(country: &Country) {
    let (system, volts, usual) = country.usual;
    let story = Story::of(system, volts, country.earthing, 0);
    let words = |script: &str| match country.code {
        "us" | "ca" => american(script),
        "au" | "nz" => script
            .replace("The caution sign hangs", "The danger tag hangs")
            .replace("tap Caution sign taken off", "tap Danger tag taken off"),
        _ => script.to_owned(),
    };
    let plan = story.plan();
    let rules = format!("choose Rules of = {}\n", country.name);
    let first = changed(until(&plan, "see Permit reference"), "choose Rules of = European Union\n", &rules);
    let phone =
        Phone::begun(&[PEOPLE, &changed(&first, TITLE, "The job before"), "tap The job\ntap All jobs\ntap New job"]);

    // The form.
    let form = as_text(&phone.field().screen());
    let law = format!("Law: {}. Standards and guidance: {}. ", country.law, country.standards);
    for says in [&*law, &format!("({})", country.name), country.tolerance.1, country.order.1] {
        assert!(form.contains(says), "{}: {says:?} is not on\n{form}", country.code);
    }
    // Order and tolerance are those of the rules, also of those that were only just picked.
    assert_eq!(form.matches("(As these rules have it)").count(), 2, "{form}");
    let first = folded_of(&phone, "The job before");
    assert_eq!(serde_json::to_value(first.order).unwrap(), country.order.0);
    assert_eq!(serde_json::to_value(first.tolerance).unwrap(), country.tolerance.0);
    let systems = phone.field().screen().blocks.into_iter().find_map(|block| match block {
        Block::Choice { choice, .. } if choice.field == "system" => Some(choice.options),
        _ => None,
    });
    let offered: Vec<String> = systems.unwrap().into_iter().map(|option| option.label).collect();
    let place = offered.iter().position(|label| label == usual).unwrap();
    assert!(place < 5, "{}: {usual} is number {place} of {offered:?}", country.code);

    // From opening to hand-back.
    let second = changed(from(&plan, "fill What the job is"), "choose Rules of = European Union\n", "");
    // The form speaks in the words of the last job: its labels are those of the rules by now.
    let second = words(&second.replace("choose Earthing arrangement", "choose EARTHING"));
    let arrangement =
        if words("[Proved dead]") == "[Proved dead]" { "Earthing arrangement" } else { "Grounding arrangement" };
    let second = second.replace("EARTHING", arrangement);
    phone.play(&format!(
        "{second}{}{}",
        story.circuits(),
        words(&format!("{ISOLATE}{}", until(PROVE, "choose How it was shown")))
    ));
    reference_and_pairs_in(&phone, &story.plant.conductors(), &words);
    phone.play(&words(&format!("see [Proved dead]\n{}\n{}", story.work(), until(RESTORE, "read L1 – N"))));
    presence(&phone, |a, b| story.shows(a, b));
    // Nobody is asked about a reading that is as it should be: the hand-back is next.
    phone.play(&format!("{}\nsee [Handed back]", hand_back(story.turns())));

    // The record.
    let made = of_folder(phone.folder.path(), &*phone.device, TITLE, false).unwrap();
    let report = made.report();
    assert_eq!(report.rules.code(), country.code);
    assert!(report.rules.says().starts_with(&law), "{}: {}", country.code, report.rules.says());
    assert_eq!(&*report.system, usual);
    let json = made.json().unwrap();
    let verdict = verify(&json).unwrap();
    assert!(verdict.holds, "{}: {:?}", country.code, verdict.failures);
    // Pages speak in the words of the rules, and are the same when they are made again.
    let pages = verify(&made.pdf().unwrap()).unwrap();
    assert!(pages.holds, "{}: {:?}", country.code, pages.failures);
    let opened = opened(&json);
    let said = |field: &str| text_under(&opened, field);
    assert_eq!(said("rules").as_deref(), Some(country.code));
    assert_eq!(said("order").as_deref(), Some(country.order.0));
    // The usual tolerance is the one that an entry leaves out.
    assert_eq!(said("tolerance").as_deref().unwrap_or("iec60038"), country.tolerance.0, "{}", country.code);
    let tolerance = folded_of(&phone, TITLE).tolerance;
    let (least, most) = tolerance.band(230.0);
    let tenth = |volts: f64| (volts * 10.0).round() / 10.0;
    assert_eq!((tenth(least), tenth(most)), country.tolerance.2, "{}", country.code);
}

/// The job of this title as its entries tell it.
fn folded_of(phone: &Phone, title: &str) -> stillbar_core::job::Job {
    use stillbar_core::journal::Fact;
    let all = phone.field().entries().unwrap();
    let id = all.iter().find(|e| matches!(&e.body.fact, Fact::JobOpened { title: t, .. } if t == title)).unwrap().id;
    let own: Vec<_> = all.into_iter().filter(|e| e.job() == Some(id)).collect();
    stillbar_core::job::Job::fold(&own).unwrap()
}

/// The entry of a record that opened its job, as CBOR and by no type of the app.
fn opened(json: &[u8]) -> Cbor {
    let record: serde_json::Value = serde_json::from_slice(json).unwrap();
    let bodies = record["entries"].as_array().unwrap().iter().map(|entry| {
        let bytes = STANDARD.decode(entry["body"].as_str().unwrap()).unwrap();
        ciborium::from_reader::<Cbor, _>(&*bytes).unwrap()
    });
    let mut found = bodies.filter(|body| text_under(body, "scope").is_some() && text_under(body, "order").is_some());
    let opened = found.next().expect("a job was opened");
    assert!(found.next().is_none(), "two jobs in one record");
    opened
}

/// The text under this key, wherever in the entry it stands.
fn text_under(value: &Cbor, key: &str) -> Option<String> {
    match value {
        Cbor::Map(pairs) => pairs.iter().find_map(|(name, inside)| match (name, inside) {
            (Cbor::Text(name), Cbor::Text(text)) if name == key => Some(text.clone()),
            (_, inside) => text_under(inside, key),
        }),
        Cbor::Array(all) => all.iter().find_map(|inside| text_under(inside, key)),
        Cbor::Tag(_, inside) => text_under(inside, key),
        _ => None,
    }
}

#[test]
fn a_job_in_the_united_kingdom() {
    whole(&Country {
        code: "uk",
        name: "United Kingdom",
        law: "Electricity at Work Regulations 1989, regulations 4, 12, 13, 14 and 16 (in Northern Ireland those of 1991)",
        standards: "HSG85, GS38, BS EN 50110-1, BS 7671",
        usual: (System::OnePhase, 230.0, ONE),
        earthing: Earthing::TnCS,
        tolerance: UK_BAND,
        order: EARTH_FIRST,
    });
}

#[test]
fn a_job_in_ireland() {
    whole(&Country {
        code: "ie",
        name: "Ireland",
        law: "S.I. 299 of 2007, Part 3, regulations 85 (isolation) and 86 (work on dead and live equipment)",
        standards: "HSA guide to Part 3, EN 50110-1, I.S. 10101",
        usual: (System::SiteTransformer, 110.0, "Site transformer 55-0-55: L1, L2, PE"),
        earthing: Earthing::TnS,
        tolerance: IEC_BAND,
        order: EARTH_FIRST,
    });
}

#[test]
fn a_job_in_the_european_union() {
    whole(&Country {
        code: "eu",
        name: "European Union",
        law: "Directives 89/391/EEC and 2009/104/EC, and the national law under them",
        standards: "EN 50110-1 with the national part of EN 50110-2, HD 60364",
        usual: (System::Pen, 230.0, "Three phase with PEN (TN-C): L1, L2, L3, PEN"),
        earthing: Earthing::TnC,
        tolerance: IEC_BAND,
        order: LEAST_DANGEROUS,
    });
}

#[test]
fn a_job_in_germany() {
    whole(&Country {
        code: "de",
        name: "Germany",
        law: "ArbSchG, BetrSichV, DGUV Vorschrift 3",
        standards: "DIN VDE 0105-100: five rules in order, taken back in reverse",
        usual: (System::ThreePhaseNeutral, 230.0, THREE),
        earthing: Earthing::Tt,
        tolerance: IEC_BAND,
        order: LEAST_DANGEROUS,
    });
}

#[test]
fn a_job_in_the_united_states() {
    whole(&Country {
        code: "us",
        name: "United States",
        law: "29 CFR 1910.331 to .335 for electrical hazards, 1910.147 for the rest, 1926.416 and .417 on construction sites; state plans",
        standards: "NFPA 70E, article 120; NEC",
        usual: (System::SplitPhase, 120.0, "Split phase: L1, L2, N, PE"),
        earthing: Earthing::TnCS,
        tolerance: ANSI_BAND,
        order: LINE_LINE,
    });
}

#[test]
fn a_job_in_canada() {
    whole(&Country {
        code: "ca",
        name: "Canada",
        law: "The law of the province or territory, such as O. Reg. 851 and 213/91, BC Reg. 296/97 parts 10 and 19, Alberta's OHS Code part 15",
        standards: "CSA Z462, CSA Z460, CEC C22.1",
        usual: (System::ThreePhaseNeutral, 347.0, THREE),
        earthing: Earthing::TnCS,
        tolerance: ANSI_BAND,
        order: LINE_LINE,
    });
}

#[test]
fn a_job_in_australia() {
    whole(&Country {
        code: "au",
        name: "Australia",
        law: "Model WHS Regulations, part 4.7 (154 to 166), and the electrical law of the state",
        standards: "Code of practice Managing electrical risks in the workplace, AS/NZS 4836, AS/NZS 3000",
        usual: (System::ThreePhaseNeutral, 230.0, THREE),
        earthing: Earthing::TnCS,
        tolerance: UK_BAND,
        order: EARTH_FIRST,
    });
}

#[test]
fn a_job_in_new_zealand() {
    whole(&Country {
        code: "nz",
        name: "New Zealand",
        law: "Electricity Act 1992, Electricity (Safety) Regulations 2010 as amended, Health and Safety at Work Act 2015",
        standards: "AS/NZS 4836, AS/NZS 3000 with the New Zealand parts",
        usual: (System::OnePhase, 230.0, ONE),
        earthing: Earthing::TnCS,
        tolerance: IEC_BAND,
        order: EARTH_FIRST,
    });
}
