//! Rules of a company at the office: brought in by a site lead, on the page, in a file, on the phones, and in what is planned here.

use stillbar_core::company::call_read;
use stillbar_core::job::Job;
use stillbar_core::job::company::CompanyFile;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_office::people::AccountRole;

use crate::people::Seat;
use crate::rig::{Rig, each};

const PAGE: &str = include_str!("../../../docs/company-rules.md");

/// The file of the page.
pub fn example() -> String {
    PAGE.split("```json\n").nth(1).and_then(|rest| rest.split("```").next()).expect("an example").to_owned()
}

/// What a browser posts.
pub fn form(rules: &str) -> String {
    format!("rules={}", rules.bytes().map(|b| format!("%{b:02X}")).collect::<String>())
}

fn site(rig: &Rig, seat: &Seat) -> EntryId {
    let place = seat.post(rig, "/sites", "name=Mill").is(303).header("location").to_owned();
    place.trim_start_matches("/sites/").parse().expect("a site")
}

/// Brought in once it is on the page, in the file and on the phones, and in the audit; the same again, other words under its name, a bound
/// that is passed and a role that may not: refused in a sentence, and nothing is written.
#[test]
fn rules_brought_in_at_the_office_reach_the_phones_of_its_site() {
    each(|rig| {
        let lead = Seat::new(rig, AccountRole::Lead, &[]);
        let site = site(rig, &lead);
        let phone = rig.phone(1, &[site]);
        let (at, before) = (format!("/sites/{site}/company-rules"), phone.pull(rig, 500).len());
        assert!(lead.get(rig, &at).is(200).text().contains("No rules of a company hold"));
        lead.get(rig, &format!("{at}/company-rules.json")).is(404);
        for (bad, says) in [
            (String::new(), "In the rules: it is empty"),
            (example().replace("\"ac_volts\": 5", "\"ac_volts\": 50"), "dead_limit.ac_volts: "),
            (example().replace("\"minutes_between_proofs\": 30", "\"minutes_between_proofs\": 61"), "from 1 to 60"),
            (example().replace("\"ppe\"", "\"pep\""), "is not known here"),
            (" ".repeat(16 * 1024) + "{}", "larger than 16384 bytes"),
        ] {
            let said = lead.post(rig, &at, &form(&bad)).is(400).text();
            assert!(said.contains(says), "{said}");
        }
        assert_eq!(phone.pull(rig, 500).len(), before);
        let planner = Seat::new(rig, AccountRole::Planner, &[site]);
        planner.post(rig, &at, &form(&example())).is(403);
        lead.post(rig, &at, &form(&example())).is(303);
        for seat in [&lead, &planner] {
            let shown = seat.get(rig, &at).is(200).text();
            for word in
                ["Alder &amp; Finch Electrical, version 2026-03", "Is the goods lift empty", "01632 960 120", "5 V AC"]
            {
                assert!(shown.contains(word), "{word} is missing: {shown}");
            }
        }
        assert!(!planner.get(rig, &at).is(200).text().contains("Bring in a file"));
        assert!(lead.get(rig, &format!("/sites/{site}")).is(200).text().contains("version 2026-03"));
        let file = lead.get(rig, &format!("{at}/company-rules.json")).is(200).text();
        assert_eq!(CompanyFile::from_json(&file), CompanyFile::from_json(&example()));
        let got = phone.pull(rig, 500);
        let Some(Fact::CompanyRuled { rules, call }) = got.last().map(|e| &e.body.fact) else { panic!("{got:?}") };
        assert_eq!((rules.version.as_str(), call_read(call).len(), got.len() - before), ("2026-03", 2, 1));
        assert_eq!(got.last().map(|e| (e.body.site, e.body.device)), Some((Some(site), rig.office.key.device())));
        let again = lead.post(rig, &at, &form(&file)).is(400).text();
        assert!(again.contains("hold at this site already"), "{again}");
        let other = lead.post(rig, &at, &form(&example().replace("second person", "third person"))).is(400).text();
        assert!(other.contains("says something else"), "{other}");
        assert_eq!(phone.pull(rig, 500).len(), got.len());
        lead.post(rig, &at, &form(&example().replace("2026-03", "2026-04"))).is(303);
        let shown = lead.get(rig, &at).is(200).text();
        assert!(shown.contains("version 2026-04") && shown.contains("version 2026-03"), "{shown}");
        // The name of a version that holds no more is not taken for other words; as it was, it comes back.
        let other = lead.post(rig, &at, &form(&example().replace("second person", "third person"))).is(400).text();
        assert!(other.contains("says something else"), "{other}");
        lead.post(rig, &at, &form(&example())).is(303);
        let admin = Seat::new(rig, AccountRole::Admin, &[]);
        let audit = admin.get(rig, "/audit").is(200).text();
        assert_eq!(audit.matches("company rules brought in").count(), 3, "{audit}");
        for text in [shown, audit] {
            assert!(!text.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| word == "safe"));
        }
    });
}

/// A job that is planned here is done by the rules that hold at its site, with their limit, and keeps them; another site has none.
#[test]
fn a_job_planned_at_the_office_is_done_by_the_rules_of_its_site() {
    each(|rig| {
        let lead = Seat::new(rig, AccountRole::Lead, &[]);
        let (site, other) = (site(rig, &lead), site(rig, &lead));
        let phone = rig.phone(1, &[site, other]);
        let fields = "title=Replace+K3&place=Roof&equipment=DB2&scope=K3&system=0&earthing=0&order=0&volts=230\
                      &label1=Q1&at1=Bay+1&kind1=0&poles1=L1&lockable1=1";
        let planned = |site: EntryId| -> Job {
            let answer = lead.post(rig, &format!("/sites/{site}/plan"), fields);
            let place = answer.is(303).header("location").to_owned();
            let id: EntryId = place.rsplit('/').next().and_then(|id| id.parse().ok()).expect("a job");
            let own: Vec<Entry> = phone.pull(rig, 500).into_iter().filter(|e| e.job() == Some(id)).collect();
            Job::fold(&own).expect("it opens")
        };
        assert_eq!(planned(site).company, None);
        lead.post(rig, &format!("/sites/{site}/company-rules"), &form(&example())).is(303);
        let job = planned(site);
        assert_eq!(job.company.as_ref().map(|rules| rules.version.as_str()), Some("2026-03"));
        assert_eq!(job.limit.map(|limit| (limit.ac, limit.dc)), Some((5_000, 10_000)));
        assert_eq!(planned(other).company, None);
    });
}
