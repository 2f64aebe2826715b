//! Rules of a company: they only ask for more, each job is done by those that it was opened with, and no file breaks anything.

mod file;
mod heard;

use stillbar_core::app::of_folder;
use stillbar_core::company::{CompanyRules, Limit, WhomToCall, call_read, call_written};
use stillbar_core::job::asked::ALL;
use stillbar_core::job::company::{CompanyFile, fits, may_be_always};
use stillbar_core::job::steps::Step;
use stillbar_core::job::{Blocker, Job};
use stillbar_core::journal::{DeviceKey, Entry, EntryId, Fact, Hlc, WITHHELD, fingerprint};
use stillbar_core::record::{reread, verify};
use stillbar_core::supply::Position;
use stillbar_core::world::{VersionsHeard, World};
use stillbar_core::{Errand, text};

use crate::desk::*;
use crate::forgotten::Phone;
use crate::holes::by_hand::{MARA, TITLE, another_job, banner, point, tries};

const PAGE: &str = include_str!("../../../../docs/company-rules.md");
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
        "choose Site of the file = {SITE}\nfill File of rules = {line}\ntap Save this file, signed by Mara Lind\nsee Jobs opened here"
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
            job.blockers(step).into_iter().filter_map(move |lack| match lack {
                Blocker::Question(open) if !open.question.starts_with("company-") => Some((open.question, step)),
                _ => None,
            })
        };
        job.sequence().into_iter().flat_map(of).collect()
    };
    let (before, now) = (open(&plain), open(&asked));
    assert!(before.iter().all(|q| now.contains(q)), "{before:?} {now:?}");
    let more: Vec<&str> = now.iter().filter(|q| !before.contains(q)).map(|(code, _)| *code).collect();
    let of_any_job = ["told-each-other", "tried-to-start", "interlocks", "temporary-earths", "live-beside"];
    let and_later = ["current-transformers", "released-by", "left-inside", "counted-back"];
    assert_eq!(more, [&of_any_job[..], &and_later[..]].concat());
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
    assert!(opens().unwrap_err().contains("Switch off the loads"));
    let own = |question: &str, code: &str, answer: &str, words: &str| Fact::Answered {
        question: question.into(),
        answer: answer.into(),
        of: None,
        point: Some(code.into()),
        words: words.into(),
        who: String::new(),
        read: None,
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
        "see Gloves against cuts\ntap Not asked for\nfill By whose rule = Site rule 4\ntap Save: Not asked for\ntap Nothing within reach\ntap None in there\n\
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
    one.play(&WORK.replace("tap None in there\n", "tap None in there\ntap Done\n"));
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
        assert!(!body.windows(12).any(|w| *w == b"01632 960 120"[..12]));
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
        "choose Site of the file = {SITE}\nfill File of rules = {next}\ntap Save this file, signed by Mara Lind\n\
         see version \"2026-03\" says something else already"
    ));
    let kept = one.entries().len();
    one.play(&format!(
        "choose Site of the file = {SITE}\nfill File of rules = {}\ntap Save this file, signed by Mara Lind\nsee hold at this site already",
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
    assert!(opened.says.contains("by the rules of Alder & Finch Electrical, version 2026-03"), "{}", opened.says);
}

/// A job without rules of a company says that none were known, and nothing else of them is on its page or in the claims of its record.
#[test]
fn a_job_without_rules_is_told_as_before() {
    let one = Phone::begun(&[PEOPLE, PLAN, ISOLATE]);
    let page = one.at_job();
    assert!(page.contains("Company rules: No company rules were known") && !page.contains("Whom to call"), "{page}");
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

/// One version says one thing, whichever holds by now, at whatever site it was heard of, and also if it came in a job alone. As it was, it
/// may be brought back.
#[test]
fn a_version_that_was_heard_of_says_one_thing() {
    let one = ruled(&example());
    let kept = |phone: &Phone, site: &str, json: &str, says: &str| {
        phone.at("/rules");
        let json = json.replace('\n', " ");
        phone.play(&format!(
            "choose Site of the file = {site}\nfill File of rules = {json}\ntap Save this file, signed by Mara Lind\nsee {says}"
        ));
    };
    let (taken, refused) = ("Jobs opened here", "version \"2026-03\" says something else already");
    let other_words = example().replace("second person", "third person");
    takes(&one, &example().replace("2026-03", "2026-04"));
    kept(&one, SITE, &other_words, refused);
    one.field().keep(one.person(MARA), None, Fact::SiteNoted { name: "Quarry".into() }).unwrap();
    kept(&one, "Quarry", &other_words, refused);
    kept(&one, SITE, &example(), taken);
    // Of another company it is another version.
    kept(&one, SITE, &other_words.replace("Alder & Finch", "Birch & Wren"), taken);

    // A phone that only heard of a job knows the version of the job.
    let two = ruled(&example());
    two.play(PLAN);
    let mut world = World::default();
    let job = two.entries().into_iter().filter(|e| matches!(e.body.fact, Fact::JobOpened { .. }));
    job.for_each(|entry| world.extend(&entry));
    let said = |json: &str| world.versions.say_otherwise(&CompanyFile::from_json(json).unwrap().rules);
    assert!(said(&other_words) && !said(&example()) && !said(&other_words.replace("2026-03", "2026-05")));
}

/// Those that were told of last are remembered, in whatever order they come.
#[test]
fn versions_are_remembered_within_bounds() {
    let one = ruled(&example());
    let told = one.entries().into_iter().find(|e| matches!(e.body.fact, Fact::CompanyRuled { .. })).unwrap();
    let version = |n: usize| {
        let mut entry = told.clone();
        entry.body.clock = Hlc(n as i64 + 1, 0);
        let Fact::CompanyRuled { rules, .. } = &mut entry.body.fact else { unreachable!() };
        rules.version = format!("v{n}");
        entry
    };
    let count = VersionsHeard::MAX + 3;
    let (mut first, mut last) = (World::default(), World::default());
    (0..count).for_each(|n| first.extend(&version(n)));
    (0..count).rev().for_each(|n| last.extend(&version(n)));
    assert_eq!(first.versions, last.versions);
    let other = |n: usize| {
        let Fact::CompanyRuled { rules, .. } = version(n).body.fact else { unreachable!() };
        first.versions.say_otherwise(&CompanyRules { between_proofs: Some(7), ..*rules })
    };
    assert!(!other(0) && !other(2) && other(3) && other(count - 1));
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
    other.play("tap Sign on\ntap Mara Lind");
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
    let none = one.field().act(None, "ring-company 7".into(), vec![]);
    assert!(!none.iter().any(|errand| matches!(errand, Errand::Ring { .. })), "{none:?}");
    let entries = one.entries();
    let ruled = entries.iter().rfind(|e| matches!(e.body.fact, Fact::CompanyRuled { .. })).unwrap();
    let Fact::CompanyRuled { call, .. } = &ruled.withheld().unwrap().body.fact else { unreachable!("it rules") };
    assert_eq!((call.as_str(), call_read(call)), (WITHHELD, Vec::new()));
    assert!(!ruled.signed().windows(10).any(|w| w == b"Night desk"));
    let all = vec![WhomToCall { who: "Gate".into(), number: "123 4".into() }];
    assert_eq!(call_read(&call_written(&all)), all);
}
