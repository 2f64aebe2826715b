//! A job of a country is told in its words at the office: on its page, in lists, and where it is planned.

use stillbar_core::job::Job;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Earthing, Order, RuleSet, System};
use stillbar_office::people::AccountRole;

use crate::people::Seat;
use crate::phone::Phone;
use crate::rig::{Rig, each};

/// What somebody typed stays as they typed it.
const TYPED: &str = "Earthworks pump, isolator hall";

/// Words of the British catalogue that no page of a job by US rules has (NFPA 70E, NEC article 100: ground, disconnect, danger tag; from memory).
const BRITISH: [&str; 8] =
    ["earth", "earths", "earthed", "earthing", "isolator", "isolators", "caution sign", "dead test"];

fn job(rig: &Rig, phone: &mut Phone, rules: RuleSet) -> (EntryId, EntryId) {
    phone.person("Mara Lind");
    let site = phone.site("Mill");
    let opened = Fact::JobOpened {
        title: "Replace a starter".into(),
        place: TYPED.into(),
        equipment: "Starter 4".into(),
        scope: "The starter".into(),
        system: System::CornerGrounded,
        earthing: Earthing::Unknown,
        order: Order::EarthFirst,
        nominal_millivolts: 480_000,
        own: Vec::new(),
        rules: Some(rules),
        limit: None,
        tolerance: Tolerance::default(),
        company: None,
    };
    let job = phone.write(Some(site), None, opened);
    let point = phone.point(site, job, "Q4");
    phone.write(Some(site), Some(job), Fact::SignPosted { point });
    phone.write(Some(site), Some(job), Fact::EarthFitted { label: "G 1".into(), at: "Bus".into() });
    phone.push_all(rig);
    (site, job)
}

/// What a person reads of a page: no tags, no address, and not what was typed.
fn read(page: &str) -> String {
    let text: String =
        page.split('<').filter_map(|part| part.split_once('>')).map(|(_, text)| format!("{text} ")).collect();
    text.replace(TYPED, "").to_lowercase()
}

fn has_word(text: &str, word: &str) -> bool {
    text.match_indices(word).any(|(at, _)| {
        let around = [text[..at].chars().next_back(), text[at + word.len()..].chars().next()];
        !around.into_iter().flatten().any(|c| c.is_alphanumeric() || c == '-')
    })
}

#[test]
fn a_job_by_us_rules_says_ground_and_never_earth() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job) = job(rig, &mut phone, RuleSet::Us);
        let planner = Seat::new(rig, AccountRole::Planner, &[site]);
        let at = format!("/sites/{site}/jobs/{job}");
        let page = planner.get(rig, &at).is(200).text();
        assert!(page.contains(TYPED) && page.contains("United States"), "{page}");
        for (page, says) in [
            (page, "danger tag"),
            (planner.get(rig, &format!("/sites/{site}/plan")).is(200).text(), "ground"),
            (planner.get(rig, &format!("/sites/{site}")).is(200).text(), "mill"),
            (planner.get(rig, "/search?q=starter").is(200).text(), "replace a starter"),
        ] {
            let said = read(&page);
            assert!(said.contains(says), "{says}: {said}");
            for word in BRITISH {
                assert!(!has_word(&said, word), "{word}: {said}");
            }
        }
    });
}

/// The same job by British rules says what it always said: the words are those of the rules, and not of the office.
#[test]
fn a_job_by_british_rules_says_earth() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job) = job(rig, &mut phone, RuleSet::Uk);
        let reader = Seat::new(rig, AccountRole::Reader, &[site]);
        let page = reader.get(rig, &format!("/sites/{site}/jobs/{job}")).is(200).text();
        assert!(page.contains("None were known when this job was opened."), "{page}");
        let said = read(&reader.get(rig, &format!("/sites/{site}/jobs/{job}")).is(200).text());
        assert!(has_word(&said, "earth") && said.contains("caution sign"), "{said}");
        assert!(!has_word(&said, "ground") && !said.contains("danger tag"), "{said}");
    });
}

/// What is planned here is done by the rules that are named, with their tolerance; none need be named, and no others are taken.
#[test]
fn a_job_is_planned_by_the_rules_that_are_named() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, _) = job(rig, &mut phone, RuleSet::Us);
        let planner = Seat::new(rig, AccountRole::Planner, &[site]);
        let at = format!("/sites/{site}/plan");
        let form = planner.get(rig, &at).is(200).text();
        assert!(form.contains("value=\"us\" selected"), "{form}");
        let fields = "title=Replace+K3&place=Roof&equipment=DB2&scope=K3&system=0&earthing=0&order=0&volts=230";
        planner.post(rig, &at, &format!("{fields}&rules=mars")).is(400);
        for (rules, named, tolerance) in [
            ("&rules=ca", Some(RuleSet::Ca), RuleSet::Ca.figures().tolerance),
            ("&rules=", None, Tolerance::default()),
            ("", None, Tolerance::default()),
        ] {
            let place = planner.post(rig, &at, &format!("{fields}{rules}")).is(303).header("location").to_owned();
            let id: EntryId = place.rsplit('/').next().and_then(|id| id.parse().ok()).expect("a job");
            let own: Vec<_> = phone.pull(rig, 500).into_iter().filter(|e| e.job() == Some(id)).collect();
            let planned = Job::fold(&own).expect("it opens");
            assert_eq!((planned.rule_set, planned.tolerance), (named, tolerance));
        }
    });
}
