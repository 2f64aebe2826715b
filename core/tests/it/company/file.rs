//! The file: what it takes, what it refuses, and that nothing in it breaks anything.

use stillbar_core::company::{CompanyRules, MAX_ALWAYS, MAX_CALL, MAX_FILE, MAX_POINT, MAX_POINTS, MAX_PPE};
use stillbar_core::job::asked::InEveryJob;

use super::*;

/// The page's example reads, and all that it says of bounds and questions is so.
#[test]
fn the_page_says_what_a_file_holds() {
    let file = read(&example()).unwrap();
    assert_eq!((file.rules.company.as_str(), file.rules.version.as_str()), ("Alder & Finch Electrical", "2026-03"));
    assert_eq!((file.rules.always.len(), file.rules.ppe.len(), file.rules.points.len(), file.call.len()), (3, 4, 3, 2));
    assert_eq!(file.rules.limit.as_ref().map(|l| (l.ac, l.dc)), Some((5_000, 10_000)));
    assert!(file.rules.points[0].skippable && !file.rules.points[1].skippable);
    for most in [MAX_ALWAYS, MAX_CALL, MAX_POINT, MAX_POINTS, MAX_PPE] {
        assert!(PAGE.contains(&format!(" {most} ")) || PAGE.contains(&format!(" {most};")), "{most}");
    }
    assert!(PAGE.contains(&format!("{} KiB", MAX_FILE / 1024)));
    let always = PAGE.split("Questions that can be asked always: ").nth(1).unwrap();
    let (may, others) = always.split_once("The others are refused").unwrap();
    for question in ALL {
        let code = format!("`{}`", question.code);
        if question.code.starts_with("company-") {
            continue;
        }
        assert_eq!(may.contains(&code), question.in_every_job != InEveryJob::Never, "{code}");
        assert!(may.contains(&code) || others.contains(&code), "{code}");
    }
    // Written and read again it is the same, and has the same name.
    let again = read(&file.to_json()).unwrap();
    assert_eq!(again, file);
    assert_eq!(fingerprint(&again.rules), fingerprint(&file.rules));
    // Whom to call is no part of that name, and everything else is.
    let called = read(&with("call", serde_json::json!([]))).unwrap();
    assert_eq!(fingerprint(&called.rules), fingerprint(&file.rules));
    for (field, value) in [("version", "2026-04".into()), ("minutes_between_proofs", 29.into())] {
        assert_ne!(fingerprint(&read(&with(field, value)).unwrap().rules), fingerprint(&file.rules), "{field}");
    }
}

/// A limit, a time, a question: what would be less than the app asks is refused, with the bound and the place.
#[test]
fn tighter_only() {
    use serde_json::json;
    let limit = |ac: f64, dc: f64, rule: &str| json!({ "ac_volts": ac, "dc_volts": dc, "rule": rule });
    for (field, value, place, says) in [
        ("dead_limit", limit(50.0, 10.0, "WI 12"), "dead_limit.ac_volts: ", "50 V"),
        ("dead_limit", limit(5.0, 120.0, "WI 12"), "dead_limit.dc_volts: ", "120 V"),
        ("dead_limit", limit(5.0, 10.0, "..."), "dead_limit.rule: ", "name the rule"),
        ("dead_limit", limit(-5.0, 10.0, "WI 12"), "dead_limit.ac_volts: ", "below zero"),
        ("dead_limit", json!({ "ac_volts": 5 }), "dead_limit: ", "\"dc_volts\" is missing"),
        ("minutes_between_proofs", json!(61), "minutes_between_proofs: ", "1 to 60"),
        ("minutes_between_proofs", json!(0), "minutes_between_proofs: ", "1 to 60"),
        ("minutes_a_proof_holds", json!(721), "minutes_a_proof_holds: ", "1 to 720"),
        ("minutes_a_proof_holds", json!(10.5), "minutes_a_proof_holds: ", "whole number"),
        ("always_asked", json!(["right-board"]), "always_asked[0]: ", "says nothing elsewhere"),
        ("always_asked", json!(["company-work"]), "always_asked[0]: ", "says nothing elsewhere"),
        ("always_asked", json!(["live-beside", "nobody-asks"]), "always_asked[1]: ", "is no question"),
        ("always_asked", json!(["live-beside", "live-beside"]), "always_asked[1]: ", "twice"),
        // There is no field by which a question goes away, or may be skipped.
        ("never_asked", json!(["live-beside"]), "", "is not known here"),
        ("firm", json!(false), "", "is not known here"),
        (
            "points",
            json!([{ "code": "live-beside", "stage": "plan", "text": "Asked?" }]),
            "points[0].stage: ",
            "isolate, work, restore",
        ),
        ("points", json!([{ "code": "A", "stage": "work", "text": "Asked?" }]), "points[0].code: ", "small letters"),
        ("points", json!([{ "code": "a", "stage": "work", "text": "?!" }]), "points[0].text: ", "says something"),
        ("points", json!([{ "code": "a", "stage": "work" }]), "points[0]: ", "\"text\" is missing"),
        ("ppe", json!({ "before_lunch": "Bib" }), "ppe: ", "is not known here"),
        ("call", json!([{ "who": "Gate", "number": "ask" }]), "call[0].number: ", "three digits"),
        (
            "call",
            json!([{ "who": "Gate", "number": "123" }, { "who": "Gate", "number": "124" }]),
            "call[1].who: ",
            "twice",
        ),
        ("version", json!("x".repeat(41)), "version: ", "at most 40"),
        ("version", json!("one\ntwo"), "version: ", "can be seen"),
    ] {
        let said = why(field, value);
        assert!(said.starts_with(place) && said.contains(says) && said.ends_with('.'), "{field}: {said}");
        assert!(said.len() < 500 && !said.contains('\n'), "{said}");
    }
    for (json, says) in [("", "it is empty"), ("[]", "An object in braces"), ("{}", "\"company\" is missing")] {
        assert!(read(json).unwrap_err().contains(says), "{json}");
    }
    assert!(read(&format!("{}{}", example(), " ".repeat(MAX_FILE))).unwrap_err().contains("16384 bytes"));
    // The same bounds hold for an entry that no file of ours was read for.
    let mut rules = read(&example()).unwrap().rules;
    rules.between_proofs = Some(600);
    let one = Phone::begun(&[PEOPLE]);
    one.field().keep(one.person(MARA), None, Fact::SiteNoted { name: SITE.into() }).unwrap();
    let fact = Fact::CompanyRuled { rules: Box::new(rules), call: String::new() };
    let said = one.field().keep(one.person(MARA), None, fact).unwrap_err().to_string();
    assert!(said.contains("1 to 60"), "{said}");
}

/// Whatever is done to a file: it reads and can hold, or is refused in one sentence; nothing breaks.
#[test]
fn no_file_breaks_anything() {
    let example = example();
    let mut state = 7_u64;
    let mut below = |most: usize| {
        state = state.wrapping_add(STEP);
        mixed(state) as usize % most.max(1)
    };
    const PARTS: [&str; 16] = [
        "{",
        "}",
        "[",
        "]",
        ",",
        ":",
        "\"",
        "null",
        "true",
        "1e999",
        "-1",
        "\\u0000",
        "\"points\"",
        "\u{202e}",
        "é",
        "99999999999",
    ];
    let mut read_at_all = 0;
    for _ in 0..20_000 {
        let mut text: Vec<char> = example.chars().collect();
        for _ in 0..=below(3) {
            let at = below(text.len());
            match below(4) {
                _ if text.is_empty() => {}
                0 => drop(text.remove(at)),
                1 => text.truncate(at.max(1)),
                2 => text[at] = char::from(b' ' + below(95) as u8),
                _ => {
                    let part = PARTS[below(PARTS.len())].chars();
                    text.splice(at..at, part);
                }
            }
        }
        match CompanyFile::from_json(&text.iter().collect::<String>()) {
            Ok(file) => {
                read_at_all += 1;
                fits(&file.rules).unwrap();
                assert_eq!(read(&file.to_json()).unwrap(), file);
            }
            Err(error) => {
                let said = text::company_error(&error);
                assert!(said.ends_with('.') && said.len() < 500 && !said.contains('\n'), "{said}");
            }
        }
    }
    assert!(read_at_all > 100, "{read_at_all}");
    // Texts as an entry of another program may have them.
    let rules = |company: String| CompanyRules { company, ..read(&example).unwrap().rules };
    for odd in [String::new(), " a".into(), "a\u{7}b".into(), "a\u{202e}b".into(), "a".repeat(81)] {
        assert!(fits(&rules(odd)).is_err());
    }
}

/// A file that is refused stays in its field, as long as a file may be, and nothing is kept.
#[test]
fn a_refused_file_stays_in_its_field() {
    let one = ruled(&example());
    let kept = one.entries().len();
    let long = with("note", "n".repeat(1001).into()).replace("\"note\"", &format!("{}\"note\"", " ".repeat(12_000)));
    one.at("/rules");
    one.play(&format!("choose Site of the file = {SITE}\nfill File of rules = {long}\ntap Save this file, signed by Mara Lind\nsee note: this has 1001"));
    let shown = format!("{:?}", one.field().screen());
    assert!(shown.contains(&"n".repeat(1001)), "it is gone");
    assert_eq!(one.entries().len(), kept);
}
