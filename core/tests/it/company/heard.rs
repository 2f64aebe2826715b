//! A job that was opened where no rules of a company were known: it says so, and takes up those that are heard of until it is handed back.

use std::sync::atomic::Ordering;

use super::*;
use stillbar_core::job::{Ended, Standing, Void};

/// Two phones of one site, of which the second knows the rules and the first does not; the first has a limit of its own.
fn apart(limit: Option<(u32, u32)>, json: &str) -> (Phone, Phone) {
    let one = Phone::begun(&[PEOPLE]);
    one.field().keep(one.person(MARA), None, Fact::SiteNoted { name: SITE.into() }).unwrap();
    if let Some((ac, dc)) = limit {
        let limit = Limit { ac, dc, rule: "EW 14".into() };
        one.field().keep(one.person(MARA), None, Fact::LimitRuled { limit }).unwrap();
    }
    let other = knows(&one, 2, json);
    (one, other)
}

/// Another phone of the site, which brings a file of rules in.
fn knows(one: &Phone, seed: u64, json: &str) -> Phone {
    let other = Phone::of(Device::new(seed));
    other.device.now.store(one.device.now.load(Ordering::Relaxed), Ordering::Relaxed);
    other.hear(one);
    other.play("tap Sign on\ntap Mara Lind");
    takes(&other, json);
    other
}

fn heard(phone: &Phone) -> Vec<Entry> {
    phone.entries().into_iter().filter(|e| matches!(e.body.fact, Fact::CompanyHeard { .. })).collect()
}

/// Proved dead by a phone that knows of no rules.
fn proved(limit: Option<(u32, u32)>, json: &str) -> (Phone, Phone) {
    let (one, other) = apart(limit, json);
    for script in [PLAN, ISOLATE, PROVE] {
        one.play(script);
    }
    assert!(one.proved(), "{}", banner(&one));
    (one, other)
}

const NONE: &str = "No company rules were known when this job was opened.";

/// It says so on its page and in its record, before and after; once they are heard of, it says by which version it is done, and since when.
#[test]
fn it_says_so_and_takes_up_what_is_heard_of() {
    let (one, other) = proved(Some((9_000, 20_000)), &example());
    assert!(one.at_job().contains(NONE), "{}", one.at_job());
    let record = || of_folder(one.folder.path(), &*one.device, TITLE, false).unwrap();
    assert!(record().report().company.is_none());
    one.hear(&other);
    let told = heard(&one);
    // The device says it, and nobody's name is put to it.
    assert_eq!(told.iter().map(|e| (e.body.device, e.body.by)).collect::<Vec<_>>(), [(one.key(), None)]);
    let job = folded(&one, one.job());
    assert_eq!(job.company.as_ref().map(|rules| rules.version.as_str()), Some("2026-03"));
    assert_eq!(job.limit.as_ref().map(|l| (l.ac, l.dc)), Some((5_000, 10_000)));
    assert_eq!((job.rules().between_proofs, job.rules().proof_holds), (30, 240));
    // What was proved under the looser limit is over.
    assert!(!one.proved() && banner(&one).contains("lower limit"), "{}", banner(&one));
    let why = job.alone().standing();
    assert!(matches!(why, Standing::Void { why: Void::Ended(Ended::CompanyLimit) }), "{why:?}");
    let page = one.at_job();
    assert!(
        page.contains(NONE) && page.contains("version 2026-03") && page.contains("since they were heard of"),
        "{page}"
    );
    let made = record();
    let claim = made.report().company.clone().unwrap();
    assert_eq!((&claim.code()["version"], &claim.code()["heard"]), (&"2026-03".into(), &told[0].id.to_string().into()));
    assert!(claim.says().starts_with("none were known when this job was opened; since "), "{}", claim.says());
    assert!(made.report().time_line.iter().any(|line| line.says.contains("Heard of the rules of Alder & Finch")));
    for bytes in [made.json().unwrap(), made.pdf().unwrap()] {
        let verdict = verify(&bytes).unwrap();
        assert!(verdict.holds, "{:#?}", verdict.failures);
    }
    if let Some(folder) = std::env::var_os("STILLBAR_KEEP_RECORD") {
        std::fs::write(std::path::Path::new(&folder).join("company-heard.json"), made.json().unwrap()).unwrap();
        std::fs::write(std::path::Path::new(&folder).join("company-heard.pdf"), made.pdf().unwrap()).unwrap();
    }
    // Nothing more is written with the next acts, and nothing when the same is heard again.
    one.hear(&other);
    one.field()
        .keep(one.person(MARA), Some(one.job()), Fact::BarrierPlaced { what: "Chain".into(), at: "Gate".into() })
        .unwrap();
    assert_eq!(heard(&one).len(), 1);
}

/// What the company always asks is asked in it from then on, and its own points: nothing behind them goes on.
#[test]
fn its_questions_are_asked_from_then_on() {
    let (one, other) = apart(None, &with("always_asked", may_be_always().into()));
    one.play(PLAN);
    let open = || -> Vec<&'static str> {
        let job = folded(&one, one.job());
        let of = |step: Step| {
            job.blockers(step).into_iter().filter_map(|lack| match lack {
                Blocker::Question(open) => Some(open.question),
                _ => None,
            })
        };
        job.sequence().into_iter().flat_map(of).collect()
    };
    let before = open();
    one.hear(&other);
    let now = open();
    assert!(before.iter().all(|q| now.contains(q)), "{before:?} {now:?}");
    for code in ["tried-to-start", "live-beside", "left-inside", "company-isolate", "company-work", "company-restore"] {
        assert!(now.contains(&code), "{code}: {now:?}");
    }
    let (point, seen, found) = (point(&one, "Q4 feeder switch"), "Handle at 0".into(), Position::Closed);
    let opened = tries(&one, MARA, Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() });
    assert!(opened.is_err(), "a point was opened before what comes before it was answered");
    one.at(&format!("/job/{}/step/shed", one.job()));
    one.play("see Is the goods lift empty, and its door blocked?\ntap Done");
}

/// A tighter limit stays, and no limit, which is 0 V, stays none: nothing loosens, and a proof under it stands on.
#[test]
fn nothing_loosens() {
    for (limit, stays) in [(Some((2_000, 3_000)), Some((2_000, 3_000))), (None, None)] {
        let (one, other) = proved(limit, &with("always_asked", serde_json::json!([])));
        one.hear(&other);
        assert_eq!(heard(&one).len(), 1);
        let job = folded(&one, one.job());
        assert_eq!(job.limit.as_ref().map(|l| (l.ac, l.dc)), stays);
        assert!(job.voided.iter().all(|v| v.why != Ended::CompanyLimit), "{:?}", job.voided);
    }
}

/// One that is handed back is done as it was: nothing is written into it.
#[test]
fn one_that_is_handed_back_stays() {
    let (one, other) = proved(Some((9_000, 20_000)), &example());
    one.play(WORK);
    one.play(RESTORE);
    let before = folded(&one, one.job());
    assert!(before.handed.is_some());
    one.hear(&other);
    assert_eq!((heard(&one).len(), folded(&one, one.job())), (0, before));
    assert!(one.at_job().contains(NONE));
}

/// One that was opened with rules keeps those: what another device writes into it changes nothing.
#[test]
fn one_that_was_opened_with_rules_keeps_them() {
    let one = ruled(&example());
    one.play(PLAN);
    takes(&one, &with("version", "2026-04".into()));
    assert!(heard(&one).is_empty());
    let before = folded(&one, one.job());
    let mut rules = read(&example()).unwrap().rules;
    rules.limit = Some(Limit { ac: 0, dc: 0, rule: "None".into() });
    one.field().keep(one.person(MARA), Some(one.job()), Fact::CompanyHeard { rules: Box::new(rules) }).unwrap();
    let after = folded(&one, one.job());
    assert_eq!((after.company, after.limit, after.company_heard), (before.company, before.limit, Vec::new()));
}

/// The phone that knows the rules hears of the job first: it says so in the job, once, and whoever hears of the job from it has them too. Two
/// that each heard of them by themselves come to the same.
#[test]
fn whoever_knows_them_says_it_once() {
    let (one, other) = proved(Some((9_000, 20_000)), &example());
    let third = knows(
        &one,
        3,
        &with("dead_limit", serde_json::json!({ "ac_volts": 3, "dc_volts": 40, "rule": "WI 13" }))
            .replace("2026-03", "2026-05"),
    );
    other.hear(&one);
    assert_eq!(heard(&other).len(), 1);
    // It came with the job, also without the rules of the site.
    let of_job: Vec<Entry> = other.entries().into_iter().filter(|e| e.job() == Some(one.job())).collect();
    one.field().take_in(of_job).unwrap();
    assert_eq!((heard(&one).len(), one.proved()), (1, false));
    // The third heard of the job before it heard of the others' rules.
    third.hear(&one);
    let versions = heard(&third).len();
    for phone in [&other, &one, &third] {
        for from in [&other, &one, &third] {
            phone.hear(from);
        }
    }
    let jobs = [&one, &other, &third].map(|phone| folded(phone, one.job()));
    assert_eq!((&jobs[0], &jobs[0]), (&jobs[1], &jobs[2]));
    assert_eq!(jobs[0].company_heard.len(), versions);
}

/// Two versions that were written in without knowing of each other: every order of arrival gives the tightest of both, and asks what both ask.
#[test]
fn two_versions_in_one_job_give_the_tightest_of_both() {
    let (one, other) = proved(Some((9_000, 20_000)), &example());
    let next = with("dead_limit", serde_json::json!({ "ac_volts": 6, "dc_volts": 2, "rule": "WI 13" }))
        .replace("2026-03", "2026-05")
        .replace("\"minutes_a_proof_holds\":240", "\"minutes_a_proof_holds\":90");
    let third = knows(&one, 3, &next);
    other.hear(&one);
    third.hear(&one);
    assert_eq!((heard(&other).len(), heard(&third).len()), (1, 1));
    let all: Vec<Entry> = [other.entries(), third.entries()].concat();
    for order in [[&one, &other, &third], [&third, &one, &other]] {
        for phone in order {
            phone.hear(&other);
            phone.hear(&third);
        }
    }
    let of = |mut entries: Vec<Entry>| {
        entries.retain(|e| e.job() == Some(one.job()));
        Job::fold(&entries).unwrap()
    };
    let (job, back) = (of(all.clone()), of(all.into_iter().rev().collect()));
    assert_eq!(job, back);
    assert_eq!(job.limit.as_ref().map(|l| (l.ac, l.dc)), Some((5_000, 2_000)));
    assert_eq!((job.rules().between_proofs, job.rules().proof_holds, job.company_heard.len()), (30, 90, 2));
    for phone in [&one, &other, &third] {
        assert_eq!(folded(phone, one.job()), job);
    }
}
