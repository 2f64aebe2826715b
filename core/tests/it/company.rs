//! Rules of a company: they only ask for more, each job is done by those that it was opened with, and no file breaks anything.

use stillbar_core::app::of_folder;
use stillbar_core::company::{
    CompanyRules, Limit, MAX_ALWAYS, MAX_CALL, MAX_FILE, MAX_POINT, MAX_POINTS, MAX_PPE, WhomToCall, call_read,
    call_written,
};
use stillbar_core::job::asked::{ALL, InEveryJob};
use stillbar_core::job::company::{CompanyFile, fits, may_be_always};
use stillbar_core::job::steps::Step;
use stillbar_core::job::{Blocker, Job};
use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact, WITHHELD, fingerprint};
use stillbar_core::record::{reread, verify};
use stillbar_core::supply::Position;
use stillbar_core::{Errand, text};

use crate::desk::*;
use crate::forgotten::Phone;
use crate::holes::by_hand::{MARA, TITLE, another_job, banner, point, tries};

const PAGE: &str = include_str!("../../../docs/company-rules.md");
const SITE: &str = "Brook Lane dye works";

/// The file of the page.
fn example() -> String {
    PAGE.split("```json\n").nth(1).unwrap().split("```").next().unwrap().to_owned()
}

fn read(json: &str) -> Result<CompanyFile, String> {
    CompanyFile::from_json(json).map_err(|e| text::company_error(&e))
}

/// The example with one field set to something else, on one line.
fn with(field: &str, value: serde_json::Value) -> String {
    let mut file: serde_json::Value = serde_json::from_str(&example()).unwrap();
    file[field] = value;
    file.to_string()
}

fn why(field: &str, value: serde_json::Value) -> String {
    read(&with(field, value)).unwrap_err()
}

/// A phone at whose site the rules of `json` hold, pasted as somebody without an office does.
fn ruled(json: &str) -> Phone {
    let one = Phone::begun(&[PEOPLE]);
    one.field().keep(one.person(MARA), None, Fact::SiteNoted { name: SITE.into() }).unwrap();
    takes(&one, json);
    one
}

fn takes(phone: &Phone, json: &str) {
    let line = json.replace('\n', " ");
    phone.at("/rules");
    phone.play(&format!(
        "choose Site of the file = {SITE}\nfill File of rules = {line}\ntap Take this file in, signed by Mara Lind\nsee Jobs that are opened here"
    ));
    phone.at("/");
}

fn folded(phone: &Phone, id: EntryId) -> Job {
    let entries: Vec<Entry> = phone.entries().into_iter().filter(|e| e.job() == Some(id)).collect();
    Job::fold(&entries).unwrap()
}

/// The plan of a whole job, up to its first point of isolation: what the company asks there is answered.
fn isolated() -> String {
    format!("see Is the goods lift empty\ntap Done\n{ISOLATE}")
}

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

/// A job begins with the tighter of both limits, nobody in it sets more, and whatever an entry says, no more counts.
#[test]
fn a_job_sets_its_limit_lower_and_not_higher() {
    let one = Phone::begun(&[PEOPLE]);
    let limit = |ac, dc| Limit { ac, dc, rule: "EW 14".into() };
    one.field().keep(one.person(MARA), None, Fact::LimitRuled { limit: limit(2_000, 49_000) }).unwrap();
    one.field().keep(one.person(MARA), None, Fact::SiteNoted { name: SITE.into() }).unwrap();
    takes(&one, &example());
    one.play(PLAN);
    let opened = folded(&one, one.job());
    assert_eq!(opened.limit.as_ref().map(|l| (l.ac, l.dc)), Some((2_000, 10_000)));
    let set = |ac, dc| tries(&one, MARA, Fact::LimitSet { limit: Some(limit(ac, dc)) });
    let said = set(6_000, 0).unwrap_err();
    assert!(said.contains("5 V AC") && said.contains("lower, not higher"), "{said}");
    set(4_000, 8_000).unwrap();
    assert_eq!(folded(&one, one.job()).limits().ac_mv, 4_000);
    // Another program writes more all the same.
    let entries = one.entries();
    let opening = entries.iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap();
    let mut body = opening.body.clone();
    let Fact::JobOpened { limit: wide, .. } = &mut body.fact else { unreachable!("it opens a job") };
    *wide = Some(limit(45_000, 45_000));
    let key = DeviceKey::from_secret(&[8; 32]).unwrap();
    body.device = key.device();
    let forged = Entry::seal(body, &key, &|count| vec![1; count as usize]).unwrap();
    assert_eq!(Job::fold(&[forged]).unwrap().limit.map(|l| (l.ac, l.dc)), Some((5_000, 10_000)));
}

/// Where nothing of the plan asks for it a question that the company has asked always is asked once, and its step waits; without the company
/// it is not. Nothing that the app asks is gone.
#[test]
fn what_is_always_asked_is_asked_where_the_job_does_not_call_for_it() {
    let all = with("always_asked", may_be_always().into());
    let (plain, asked) = (Phone::begun(&[PEOPLE]), ruled(&all));
    plain.field().keep(plain.person(MARA), None, Fact::SiteNoted { name: SITE.into() }).unwrap();
    let open = |phone: &Phone| -> Vec<(&'static str, Step)> {
        let job = folded(phone, another_job(phone));
        let of = |step: Step| {
            job.lacks(step).into_iter().filter_map(move |lack| match lack {
                Blocker::Question(open) if !open.question.starts_with("company-") => Some((open.question, step)),
                _ => None,
            })
        };
        job.sequence().into_iter().flat_map(of).collect()
    };
    let (before, now) = (open(&plain), open(&asked));
    assert!(before.iter().all(|q| now.contains(q)), "{before:?} {now:?}");
    let more: Vec<&str> = now.iter().filter(|q| !before.contains(q)).map(|(code, _)| *code).collect();
    assert_eq!(more, ["told-each-other", "tried-to-start", "temporary-earths", "live-beside", "left-inside"]);
    for (code, step) in now {
        assert_eq!(ALL.into_iter().find(|q| q.code == code).unwrap().home, step);
    }
}

/// The company's own points: they stand in its words, nothing behind them goes on, and one that may be skipped says why.
#[test]
fn own_points_are_asked_before_what_they_come_before() {
    let one = ruled(&example());
    one.play(PLAN);
    let opens = || {
        let (point, seen, found) = (point(&one, "Q4 feeder switch"), "Handle at 0".into(), Position::Closed);
        tries(&one, MARA, Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() })
    };
    assert!(opens().unwrap_err().contains("Shed the circuits"));
    let own = |question: &str, code: &str, answer: &str, words: &str| Fact::Answered {
        question: question.into(),
        answer: answer.into(),
        of: None,
        point: Some(code.into()),
        words: words.into(),
        who: String::new(),
    };
    // Not of this stage, of no point, of one that may not be skipped, or without its words: no answer.
    for fact in [
        own("company-work", "lift-empty", "done", ""),
        own("company-isolate", "lift", "done", ""),
        own("company-work", "second-person", "does-not-apply", "Alone today"),
        own("company-isolate", "lift-empty", "does-not-apply", "..."),
        own("company-isolate", "lift-empty", "perhaps", ""),
    ] {
        let shown = format!("{fact:?}");
        assert!(tries(&one, MARA, fact).is_err(), "{shown}");
    }
    one.at(&format!("/job/{}/step/shed", one.job()));
    one.play(
        "see Is the goods lift empty, and its door blocked?\ntap Not as it should be\nsee Not as it should be. Treat as live\n\
         tap Does not apply\nsee Why it does not apply\ntap Save: Does not apply\nsee Say how, what or where\n\
         fill Why it does not apply = There is no lift in this building\ntap Save: Does not apply\nsee There is no lift",
    );
    one.at(&format!("/job/{}/step/shed", one.job()));
    one.play(ISOLATE);
    one.play(PROVE);
    assert!(one.proved(), "{}", banner(&one));
    one.at(&format!("/job/{}/step/work", one.job()));
    one.play(
        "see Gloves against cuts\ntap Not asked for\nfill By whose rule = Site rule 4\ntap Save: Not asked for\ntap Nothing within reach\n\
         see Does a second person stand by\nunseen Does not apply\ntap Begin work\nsee Answer this first\ntap Not as it should be\nsee [Treat as live]",
    );
    // It stops, and ends what was proved; the answer that lifts it does not bring the proof back.
    assert!(!one.proved() && banner(&one).contains("Does a second person stand by"), "{}", banner(&one));
    one.play("tap Done\nsee [Treat as live]");
    assert!(!one.proved());
}

/// A whole job under rules, from its own screens: what to wear on its step, what is asked, whom to call; and its record says the version.
#[test]
fn a_whole_job_under_rules_and_its_record() {
    let one = ruled(&example());
    one.play(PLAN);
    one.play(
        &isolated()
            .replace("tap Seen live\n", "see Face shield, insulating gloves class 0, arms covered\ntap Seen live\n"),
    );
    one.play(&PROVE.replace("wait 1\nread N – L1", "see class 0 until dead is proved\nwait 1\nread N – L1"));
    one.play(&WORK.replace("tap Nothing within reach\n", "tap Nothing within reach\ntap Done\n"));
    one.play(
        &RESTORE
            .replace(
                "fill Who was warned",
                "see Are all labels and terminal covers back\ntap Done\nfill Who was warned",
            )
            .replace("tap Front plate of DB4 is back", "see until every cover is back\ntap Front plate of DB4 is back"),
    );
    let page = one.at_job();
    assert!(page.contains("Company rules: Alder & Finch Electrical, version 2026-03"), "{page}");
    let made = of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    let rules = read(&example()).unwrap().rules;
    let claim = made.report().company.as_ref().unwrap();
    assert_eq!(claim.code()["name"], "Alder & Finch Electrical");
    assert_eq!((&claim.code()["version"], &claim.code()["sha256"]), (&"2026-03".into(), &fingerprint(&rules).into()));
    let asked: Vec<_> = made.report().answers.iter().filter_map(|a| a.says.code().get("point")).collect();
    assert_eq!(asked.len(), 3, "{asked:?}");
    assert_eq!(asked[1]["text"], rules.points[1].text.as_str());
    assert!(
        made.report().answers.iter().any(|a| *a.says == *"Are all labels and terminal covers back as they were?: Done")
    );
    for bytes in [made.json().unwrap(), made.pdf().unwrap()] {
        let verdict = verify(&bytes).unwrap();
        assert!(verdict.holds, "{:#?}", verdict.failures);
        assert_eq!(reread(&bytes).unwrap().report().company, made.report().company);
        // Another version under the same entries is found out.
        if bytes.starts_with(b"{") {
            let other = String::from_utf8(bytes).unwrap().replace("\"version\":\"2026-03\"", "\"version\":\"2026-04\"");
            assert!(!verify(other.as_bytes()).unwrap().holds);
        }
    }
    // Nobody's number goes along, in the clear or in an entry.
    let json: serde_json::Value = serde_json::from_slice(&made.json().unwrap()).unwrap();
    for entry in json["entries"].as_array().unwrap() {
        use base64::Engine;
        let body = base64::engine::general_purpose::STANDARD.decode(entry["body"].as_str().unwrap()).unwrap();
        assert!(!body.windows(12).any(|w| w == b"01632 960 120"[..12].as_ref()));
    }
    if let Some(folder) = std::env::var_os("STILLBAR_KEEP_RECORD") {
        std::fs::write(std::path::Path::new(&folder).join("company.json"), made.json().unwrap()).unwrap();
    }
}

/// A job is done by the version that it was opened with: page, questions, limit and record stay; the next job has the new one.
#[test]
fn a_job_keeps_its_version_after_the_rules_change() {
    let one = ruled(&example());
    one.play(PLAN);
    let before = folded(&one, one.job());
    let next =
        with("points", serde_json::json!([{ "code": "new", "stage": "isolate", "text": "Is the new thing done?" }]));
    // One version says one thing, and what holds is not written twice.
    one.at("/rules");
    one.play(&format!(
        "choose Site of the file = {SITE}\nfill File of rules = {next}\ntap Take this file in, signed by Mara Lind\n\
         see version \"2026-03\" says something else at this site already"
    ));
    let kept = one.entries().len();
    one.play(&format!(
        "choose Site of the file = {SITE}\nfill File of rules = {}\ntap Take this file in, signed by Mara Lind\nsee hold at this site already",
        example().replace('\n', " ")
    ));
    assert_eq!(one.entries().len(), kept);
    takes(&one, &next.replace("2026-03", "2026-04"));
    let page = one.at_job();
    assert!(page.contains("version 2026-03") && page.contains("New jobs here are done by"), "{page}");
    assert_eq!(folded(&one, one.job()), before);
    let second = folded(&one, another_job(&one)).company.unwrap();
    assert_eq!((second.version.as_str(), second.points.len()), ("2026-04", 1));
    one.at_job();
    let made = of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    assert_eq!(made.report().company.as_ref().unwrap().code()["version"], "2026-03");
    let opened = &made.report().time_line[0];
    assert!(opened.says.contains("by the rules of Alder & Finch Electrical, version 2026-03"), "{}", *opened.says);
}

/// A job without rules of a company is told as before: nothing of them is on its page or in its record.
#[test]
fn a_job_without_rules_is_told_as_before() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let page = one.at_job();
    assert!(!page.contains("Company rules") && !page.contains("Whom to call"), "{page}");
    let made = of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    let claims: serde_json::Value = serde_json::from_slice(&made.json().unwrap()).unwrap();
    assert!(claims["claims"].get("company").is_none());
    assert!(claims["claims"]["answers"].as_array().unwrap().iter().all(|a| a["what"].get("point").is_none()));
}

/// The times of the rules hold in the job, beside those of the site, the shorter of each; those of a later version do not.
#[test]
fn times_of_the_rules_hold_in_the_job() {
    let one = ruled(&example());
    let site = Fact::SiteRuled { between_proofs: 45, proof_holds: 100 };
    one.field().keep(one.person(MARA), None, site).unwrap();
    for script in [PLAN, &isolated(), PROVE] {
        one.play(script);
    }
    let proved_after = |minutes: i64| {
        one.device.pass(minutes * 60_000);
        one.proved()
    };
    assert!(proved_after(90) && !proved_after(15), "{}", banner(&one));
    // Alone, as a record has it, the job's own rules hold.
    let job = folded(&one, one.job()).alone();
    assert_eq!((job.rules().between_proofs, job.rules().proof_holds), (30, 240));
}

/// What cannot be asked here is another version's: nothing stands proved beside it.
#[test]
fn rules_of_a_newer_version_are_treated_as_live() {
    let one = ruled(&example());
    one.play(PLAN);
    let entries = one.entries();
    let opening = entries.iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap();
    let mut body = opening.body.clone();
    let Fact::JobOpened { company: Some(rules), .. } = &mut body.fact else { unreachable!("it has rules") };
    assert!(fits(rules).is_ok() && Job::fold(std::slice::from_ref(opening)).unwrap().newer.is_empty());
    rules.always.push("asked-tomorrow".into());
    let key = DeviceKey::from_secret(&[8; 32]).unwrap();
    body.device = key.device();
    let newer = Entry::seal(body, &key, &|count| vec![1; count as usize]).unwrap();
    assert_eq!(Job::fold(&[newer]).unwrap().newer.len(), 1);
}

/// Two phones each take a file in and hear of each other later: both come to the same, in whatever order.
#[test]
fn two_phones_come_to_the_same_rules() {
    let one = ruled(&example());
    let other = Phone::of(Device::new(2));
    other
        .device
        .now
        .store(one.device.now.load(std::sync::atomic::Ordering::Relaxed), std::sync::atomic::Ordering::Relaxed);
    other.hear(&one);
    other.play("tap Say who has this device\ntap Mara Lind");
    one.device.pass(60_000);
    other.device.pass(120_000);
    takes(&one, &with("version", "one".into()));
    takes(&other, &with("version", "two".into()));
    one.hear(&other);
    other.hear(&one);
    let third = Phone::of(Device::new(3));
    third.hear(&other);
    for phone in [&one, &other, &third] {
        let page = phone.at("/rules");
        assert!(page.contains("version two") && !page.contains("version one"), "{page}");
    }
    // The job that one of them opens is done by it on both.
    one.at("/");
    one.play(PLAN);
    other.hear(&one);
    for phone in [&one, &other] {
        assert!(phone.at_job().contains("version two"));
    }
}

/// Whom to call is on the job's page with the numbers that hold now, and rings; an entry whose names were taken out calls nobody.
#[test]
fn whom_to_call_rings() {
    let one = ruled(&example());
    one.play(PLAN);
    takes(&one, &with("call", serde_json::json!([{ "who": "Night desk", "number": "01632 960 199" }])));
    let page = one.at_job();
    assert!(page.contains("Night desk: 01632 960 199") && !page.contains("New jobs here are done by"), "{page}");
    let errands = one.field().act(None, "ring-company 0".into(), vec![]);
    assert!(matches!(&errands[..], [Errand::Ring { number }] if number == "01632 960 199"), "{errands:?}");
    assert!(one.field().act(None, "ring-company 7".into(), vec![]).is_empty());
    let entries = one.entries();
    let ruled = entries.iter().rfind(|e| matches!(e.body.fact, Fact::CompanyRuled { .. })).unwrap();
    let Fact::CompanyRuled { call, .. } = &ruled.withheld().unwrap().body.fact else { unreachable!("it rules") };
    assert_eq!((call.as_str(), call_read(call)), (WITHHELD, Vec::new()));
    assert!(!ruled.signed().windows(10).any(|w| w == b"Night desk"));
    let all = vec![WhomToCall { who: "Gate".into(), number: "123 4".into() }];
    assert_eq!(call_read(&call_written(&all)), all);
}

/// A file that is refused stays in its field, as long as a file may be, and nothing is kept.
#[test]
fn a_refused_file_stays_in_its_field() {
    let one = ruled(&example());
    let kept = one.entries().len();
    let long = with("note", "n".repeat(1001).into()).replace("\"note\"", &format!("{}\"note\"", " ".repeat(12_000)));
    one.at("/rules");
    one.play(&format!("choose Site of the file = {SITE}\nfill File of rules = {long}\ntap Take this file in, signed by Mara Lind\nsee note: this has 1001"));
    let shown = format!("{:?}", one.field().screen());
    assert!(shown.contains(&"n".repeat(1001)), "it is gone");
    assert_eq!(one.entries().len(), kept);
}

/// Whatever is done to a file: it reads and can hold, or is refused in one sentence; nothing breaks.
#[test]
fn no_file_breaks_anything() {
    let example = example();
    let mut state = 7_u64;
    let mut below = |most: usize| {
        state = state.wrapping_add(STEP);
        mixed(state) as usize % most
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
    for odd in [String::new(), " a".into(), "a\u{7}b".into(), "a".repeat(81)] {
        assert!(fits(&rules(odd)).is_err());
    }
}
