//! What people see follows from the feeds, and says what the phones say.

use stillbar_core::job::{Job, ProofState};
use stillbar_core::journal::{EntryId, Fact, SignedOn};
use stillbar_office::people::AccountRole;
use stillbar_office::records;
use stillbar_office::web::openapi;

use crate::people::Seat;
use crate::phone::{self, Phone};
use crate::rig::{Backend, NOW, Rig, each};

fn begun(rig: &Rig, phone: &mut Phone) -> (EntryId, EntryId, EntryId, EntryId) {
    phone.person("Mara Lind");
    let site = phone.site("Hill Laundry");
    let job = phone.job(site, "Replace a breaker");
    let point = phone.point(site, job, "Q4 feeder switch");
    let lock = phone.lock(site, job, point, "ML 7");
    phone.push_all(rig);
    (site, job, point, lock)
}

#[test]
fn a_lock_put_on_is_on_the_board_until_its_owner_took_it_off() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job, point, lock) = begun(rig, &mut phone);
        let reader = Seat::new(rig, AccountRole::Reader, &[site]);
        let shown = reader.get(rig, "/board").is(200).text();
        for word in ["Q4 feeder switch", "Mara Lind", "ML 7", "with the owner", "A phone", "as last heard", "555 0100"]
        {
            assert!(shown.contains(word), "{word} is missing");
        }
        assert!(!shown.contains("(no PIN)"), "{shown}");
        phone.signed_on = Some(SignedOn::WithoutPin);
        let unsigned = phone.lock(site, job, point, "ML 8");
        phone.push_all(rig);
        let shown = reader.get(rig, "/board").is(200).text();
        assert!(shown.matches("(no PIN)").count() == 1, "{shown}");
        assert_eq!(reader.get(rig, "/board.csv").is(200).text().matches(",\"yes\",").count(), 1);
        phone.write(Some(site), Some(job), Fact::LockRemoved { lock: unsigned, cut: None });
        phone.signed_on = None;
        // Somebody else's release does not take it off; the core's fold decides, here as on the phone.
        let owner = phone.by;
        phone.person("Ida Holm");
        phone.write(Some(site), Some(job), Fact::LockRemoved { lock, cut: None });
        phone.push_all(rig);
        assert!(reader.get(rig, "/board/rows").is(200).text().contains("ML 7"));
        phone.by = owner;
        phone.write(Some(site), Some(job), Fact::LockRemoved { lock, cut: None });
        phone.push_all(rig);
        let shown = reader.get(rig, "/board/rows").is(200).text();
        assert!(!shown.contains("ML 7") && shown.contains("no clearance"), "{shown}");
    });
}

#[test]
fn a_lock_in_an_entry_that_is_not_taken_in_is_shown_all_the_same() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job, point, _) = begun(rig, &mut phone);
        let lead = Seat::new(rig, AccountRole::Lead, &[site]);
        let before = phone.chain.clone();
        phone.wall = NOW + 30 * 3_600_000;
        phone.lock(site, job, point, "ML 8");
        assert_eq!(phone.push(rig, &phone.chain[5..]), ["aside from-the-future"]);
        let mut copy = Phone::new(1);
        copy.token.clone_from(&phone.token);
        copy.by = phone.by;
        copy.chain = before[..4].to_vec();
        copy.lock(site, job, point, "ML 9");
        assert_eq!(copy.push(rig, &copy.chain[4..]), ["refused another-entry-has-this-number"]);
        let shown = lead.get(rig, "/board").is(200).text();
        assert!(shown.contains("ML 8") && shown.contains("ML 9") && shown.contains("Not taken in yet"), "{shown}");
        let held = lead.get(rig, "/held").is(200).text();
        assert!(held.contains("24 hours ahead") && held.contains("went two ways"));
        lead.post(rig, &format!("/held/{}/release", phone.id()), "").is(200);
        let id = copy.chain[4].id;
        lead.post(rig, &format!("/held/quarantine/{id}"), "note=Put+back+from+a+copy").is(303);
        let shown = lead.get(rig, "/board").is(200).text();
        assert!(shown.contains("ML 8") && !shown.contains("Not taken in yet"));
        assert!(lead.get(rig, "/held").is(200).text().contains("Put back from a copy"));
    });
}

#[test]
fn the_tables_follow_from_the_feeds() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job, ..) = begun(rig, &mut phone);
        let all = std::collections::BTreeSet::from([site]);
        records::refresh(&rig.office, &all).expect("worked out");
        let tables = || {
            let mut text = String::new();
            for sql in [
                "SELECT site, id, have, seen, title, place, next, next_at, turns, proof, done, opened_ms FROM job ORDER BY id",
                "SELECT site, fit, job, place, label, owner, boxed, key_box, device, since_ms, zone, is_on, no_pin FROM lock_on ORDER BY fit",
                "SELECT site, tag, point, job, label, place, since_ms, zone, gone FROM tag ORDER BY tag",
            ] {
                text += &format!("{:?}\n", rig.office.read(|tx| tx.rows(sql, &[])).expect("it reads"));
            }
            text
        };
        let before = tables();
        records::replay(&rig.office).expect("worked out again");
        assert_eq!(tables(), before);
        // The same fold as the phone's.
        let same = Job::fold(&phone.chain[2..]).expect("a job");
        let found = records::jobs(&rig.office, site).expect("it reads");
        assert_eq!((found[0].id, found[0].proof), (job, ProofState::of(&same.alone())));
        assert_eq!(found[0].next, same.alone().next_listed());
        // No table holds a word of the pages.
        let words = ["Treat as live", "with the owner", "Other sources", "What it is"];
        assert!(words.iter().all(|word| !before.contains(word)), "{before}");
        let told = records::job(&rig.office, site, job).expect("it reads");
        assert_eq!(Job { known: None, ..told.job.clone() }, same);
    });
}

#[test]
fn another_version_works_the_tables_out_again() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, ..) = begun(rig, &mut phone);
        let (office, all) = (&rig.office, std::collections::BTreeSet::from([site]));
        records::taken_up(&*office.store, "0.2.0").expect("noted");
        let shown = || {
            let board = records::board(office, &all).expect("it reads");
            board.on.iter().map(|l| l.label.clone()).collect::<Vec<_>>()
        };
        let before = shown();
        assert!(!before.is_empty());
        // As if a version that could not read it had left the lock out.
        let lose = |tx: &mut dyn stillbar_office::store::Tx| tx.run("DELETE FROM lock_on", &[]).map(drop);
        office.change(lose).expect("lost");
        records::taken_up(&*office.store, "0.2.0").expect("the same version");
        assert!(shown().is_empty(), "the same version does nothing again");
        records::taken_up(&*office.store, "0.3.0").expect("a later one");
        assert_eq!(shown(), before);
    });
}

#[test]
fn a_job_planned_at_the_office_reaches_the_phones_of_its_site() {
    each(|rig| {
        let planner = Seat::new(rig, AccountRole::Planner, &[]);
        let place = planner.post(rig, "/sites", "name=Mill").is(303).header("location").to_owned();
        let site: EntryId = place.trim_start_matches("/sites/").parse().expect("a site");
        let phone = rig.phone(1, &[site]);
        assert_eq!(phone.pull(rig, 500).len(), 2, "the planner and the site");
        let fields = "title=Replace+K3&place=Roof&equipment=DB2&scope=K3&system=0&earthing=0&order=0&volts=230\
                      &label1=Q1&at1=Bay+1&kind1=0&poles1=L1&lockable1=1";
        let answer = planner.post(rig, &format!("/sites/{site}/plan"), fields);
        let job = answer.is(303).header("location").to_owned();
        assert!(planner.get(rig, &job).is(200).text().contains("Replace K3"));
        let got = phone.pull(rig, 500);
        let kinds: Vec<String> = got.iter().map(|e| e.body.fact.kind()).collect();
        assert_eq!(kinds, ["person-noted", "site-noted", "job-opened", "point-added"]);
        let office = rig.office.key.device();
        assert!(got.iter().all(|e| e.body.device == office));
        assert!(got.windows(2).all(|w| w[1].body.prev == w[0].id && w[1].body.clock > w[0].body.clock));
        // What is no point of isolation is not planned as one.
        let control = fields.replace("kind1=0", "kind1=5");
        assert!(
            planner
                .post(rig, &format!("/sites/{site}/plan"), &control)
                .is(400)
                .text()
                .contains("never a point of isolation")
        );
    });
}

#[test]
fn a_lock_of_a_job_whose_beginning_is_not_here_is_on_the_board() {
    each(|rig| {
        let mut a = rig.phone(1, &[]);
        let (site, ..) = begun(rig, &mut a);
        let mut b = rig.phone(2, &[]);
        let owner = b.person("Ida Holm");
        let job = b.job(site, "Opened before the site was given");
        assert_eq!(b.push(rig, &b.chain), ["accepted", "aside not-your-site"]);
        let give = "INSERT INTO device_site (device, site) VALUES ($1, $2)";
        rig.office.change(|tx| tx.run(give, stillbar_office::params![b.id(), site])).expect("given");
        b.lock(site, job, job, "ML 8");
        assert_eq!(b.push(rig, &b.chain[2..]), ["accepted"]);
        let reader = Seat::new(rig, AccountRole::Reader, &[site]);
        let shown = reader.get(rig, "/board").is(200).text();
        assert!(
            shown.contains("ML 8") && shown.contains("not known here yet") && shown.contains("Ida Holm"),
            "{shown}"
        );
        let refused =
            Seat::new(rig, AccountRole::Admin, &[]).post(rig, &format!("/names/{owner}"), "sure=1").is(409).text();
        assert!(refused.contains("ML 8 on a point that is not known here yet"), "{refused}");
    });
}

#[test]
fn a_name_can_be_erased_and_the_chain_stays_whole() {
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        let (site, job, ..) = begun(rig, &mut phone);
        let other = rig.phone(2, &[site]);
        let person = phone.chain[0].id;
        assert_eq!(records::names(&rig.office).expect("it reads")[0].name, "Mara Lind");
        let admin = Seat::new(rig, AccountRole::Admin, &[]);
        admin.post(rig, &format!("/names/{person}"), "").is(400);
        // Whoever meets a lock has to know whom to ring.
        let refused = admin.post(rig, &format!("/names/{person}"), "sure=1").is(409).text();
        assert!(refused.contains("A lock of this person is on (ML 7 on "), "{refused}");
        let lock = phone.chain.iter().find(|e| matches!(e.body.fact, Fact::LockFitted { .. })).expect("it is on").id;
        phone.write(Some(site), Some(job), Fact::LockRemoved { lock, cut: None });
        phone.push_all(rig);
        let before = other.ask(rig, "GET", "/digest", &[], "").is(200).json();
        admin.post(rig, &format!("/names/{person}"), "sure=1").is(200);
        // No text of the office has the name any more, and everything else is as it was.
        for path in ["/board", &format!("/sites/{site}/jobs/{job}"), "/names", "/audit"] {
            assert!(!admin.get(rig, path).is(200).text().contains("Mara Lind"), "{path}");
        }
        let line = admin.get(rig, &format!("/sites/{site}/jobs/{job}")).is(200).text();
        assert!(line.contains(&format!("person {}", person.short())), "{line}");
        assert_eq!(other.ask(rig, "GET", "/digest", &[], "").is(200).json(), before);
        let page = other.ask(rig, "GET", "/entries", &[], "").is(200).json();
        let (entries, whole) = (phone::entries(&page), &phone.chain[0]);
        assert_eq!((page["erased"].as_array().map_or(0, Vec::len), entries.len()), (0, 6));
        // The entry still holds, for whoever checks it: only what opened its commitments is gone.
        let entry = entries.iter().find(|e| e.id == person).expect("the person");
        assert_eq!((entry.id, entry.signed()), (whole.id, whole.signed()));
        assert!(whole.opens() && !entry.opens());
        // The phone sends it again, and it does not come back.
        assert_eq!(phone.push(rig, &phone.chain), ["duplicate"; 6]);
        assert!(records::names(&rig.office).expect("it reads").is_empty());
        // What is no person cannot go.
        admin.post(rig, &format!("/names/{}", phone.chain[4].id), "sure=1").is(404);
    });
}

#[test]
fn no_page_says_safe_and_every_page_is_whole() {
    let rig = Rig::new(Backend::Sqlite);
    let mut phone = rig.phone(1, &[]);
    let (site, job, ..) = begun(&rig, &mut phone);
    let admin = Seat::new(&rig, AccountRole::Admin, &[]);
    let job = format!("/sites/{site}/jobs/{job}");
    let (this, plan) = (format!("/sites/{site}"), format!("/sites/{site}/plan"));
    let pages = [
        "/board",
        "/sites",
        &this,
        &job,
        &plan,
        "/search?q=break",
        "/labels",
        "/phones",
        "/held",
        "/people",
        "/names",
        "/audit",
        "/password",
    ];
    for path in pages {
        let text = admin.get(&rig, path).is(200).text();
        let words: Vec<&str> = text.split(|c: char| !c.is_alphabetic()).collect();
        assert!(!words.iter().any(|w| w.eq_ignore_ascii_case("safe")), "{path}");
        assert!(text.contains("<h1>") && text.contains("lang=\"en\""), "{path}");
    }
    let export = admin.get(&rig, &format!("/sites/{site}/export.json")).is(200).json();
    assert_eq!(export["entries"].as_array().map(Vec::len), Some(5));
    assert_eq!(crate::phone::entries(&export).len(), 5, "each holds when it is read from outside");
    let csv = admin.get(&rig, "/board.csv").is(200).text();
    assert_eq!(csv.lines().count(), 2, "{csv}");
    let labels = admin.post(&rig, "/labels", "grid=a4-3x8&points=Q1%0AQ2&name=Mill").is(200);
    assert!(labels.bytes.starts_with(b"%PDF"));
    let code = admin.post(&rig, "/phones", &format!("label=Phone+of+Ida&site={site}")).is(200).text();
    assert!(code.contains("stillbar-enrol:1:http://127.0.0.1:7463:") && code.contains("<svg"));
}

#[test]
fn the_description_tells_every_route_and_no_other() {
    let described = openapi::description("http://127.0.0.1");
    let mut told = Vec::new();
    for (path, operations) in described["paths"].as_object().expect("paths") {
        for method in operations.as_object().expect("operations").keys() {
            told.push(format!("{} {path}", method.to_uppercase()));
        }
    }
    let mut routes: Vec<String> =
        stillbar_office::web::routes().iter().map(|r| format!("{} {}", r.method, r.path)).collect();
    told.sort();
    routes.sort();
    assert_eq!(told, routes);
    // Every part that is pointed to is there.
    let text = described.to_string();
    for part in text.split("#/components/schemas/").skip(1) {
        let name: String = part.chars().take_while(|c| c.is_alphanumeric()).collect();
        assert!(described["components"]["schemas"].get(&name).is_some(), "{name}");
    }
}

/// A network that was drawn elsewhere: brought in once, it is on the pages and on the phones; brought in again, nothing is noted.
#[test]
fn a_network_brought_in_at_the_office_reaches_the_phones_of_its_site() {
    const NODES: &str = "id,kind,stops\ngrid,source,\nB1,board,\nC1,load,lighting & <doors>\n";
    const LINKS: &str = "id,from,to,kind,lockable\nQ1,grid,B1,switch,yes\nQ2,B1,C1,switch,no\n";
    let form = |fields: &[(&str, &str)]| {
        let escaped = |text: &str| text.bytes().map(|b| format!("%{b:02X}")).collect::<String>();
        fields.iter().map(|(name, text)| format!("{name}={}", escaped(text))).collect::<Vec<_>>().join("&")
    };
    each(|rig| {
        let mut phone = rig.phone(1, &[]);
        phone.person("Mara Lind");
        let site = phone.site("Hill Laundry");
        phone.push_all(rig);
        let planner = Seat::new(rig, AccountRole::Planner, &[site]);
        let at = format!("/sites/{site}/network");
        assert!(planner.get(rig, &at).is(200).text().contains("Nothing is drawn"));
        planner.get(rig, &format!("{at}/network.json")).is(404);
        // One sentence, with the line; nothing is noted.
        let bad = form(&[("nodes", NODES), ("links", &LINKS.replace("switch,no", "switch,perhaps"))]);
        let said = planner.post(rig, &at, &bad).is(400).text();
        assert!(said.contains("In the links: line 3"), "{said}");
        let both = form(&[("nodes", NODES), ("json", "{}")]);
        assert!(planner.post(rig, &at, &both).is(400).text().contains("not both"));
        let before = phone.pull(rig, 500).len();
        planner.post(rig, &at, &form(&[("nodes", NODES), ("links", LINKS)])).is(303);
        let shown = planner.get(rig, &at).is(200).text();
        for word in ["Q2", "grid", "lighting &amp; &lt;doors&gt;", "takes no lock", "takes a lock"] {
            assert!(shown.contains(word), "{word} is missing: {shown}");
        }
        let drawn = planner.get(rig, &format!("{at}/drawing.svg")).is(200).text();
        assert!(drawn.starts_with("<svg ") && drawn.contains("&lt;doors&gt;") && !drawn.contains("<doors>"), "{drawn}");
        assert!(planner.get(rig, &format!("/sites/{site}")).is(200).text().contains("drawing.svg"));
        let json = planner.get(rig, &format!("{at}/network.json")).is(200).text();
        let read = stillbar_core::supply::files::from_json(&json).expect("it reads");
        assert_eq!((read.network.nodes().len(), read.network.links().len()), (3, 2));
        assert_eq!(phone.pull(rig, 500).len() - before, 6, "five parts, and who brought them in");
        planner.post(rig, &at, &form(&[("json", &json)])).is(303);
        assert_eq!(phone.pull(rig, 500).len() - before, 6, "nothing was new");
        // What the phone noted since stays; what is otherwise in the file takes its place.
        let changed = json.replace("lighting", "heating");
        planner.post(rig, &at, &form(&[("json", &changed)])).is(303);
        assert_eq!(phone.pull(rig, 500).len() - before, 7);
        assert!(planner.get(rig, &at).is(200).text().contains("heating"));
        let reader = Seat::new(rig, AccountRole::Reader, &[site]);
        assert!(!reader.get(rig, &at).is(200).text().contains("Bring in a file"));
    });
}
