//! Who may do what: every route with every caller; signing in; and that nobody sees another's site.

use stillbar_core::journal::EntryId;
use stillbar_office::params;
use stillbar_office::people::{self, AccountRole, NewAccount};
use stillbar_office::web::routes;

use crate::phone::Phone;
use crate::rig::{Answer, Backend, Rig, each};

/// Somebody who is signed in.
pub struct Seat {
    cookie: String,
    csrf: String,
}

impl Seat {
    pub fn new(rig: &Rig, role: AccountRole, sites: &[EntryId]) -> Seat {
        let login =
            format!("{}-{}", role.word().replace(' ', "-"), rig.office.secret::<6>().expect("random").to_lowercase());
        let new = NewAccount { login: login.clone(), name: format!("A {}", role.word()), role, sites: sites.to_vec() };
        let password = people::add(&rig.office, &new, "the test", "here").expect("added");
        let token = people::sign_in(&rig.office, &login, &password, "here").expect("signed in");
        rig.office.change(|tx| tx.run("UPDATE person SET fresh = 0", &[])).expect("as if they had chosen one");
        let csrf = people::visitor(&rig.office, &token).expect("it reads").expect("they are here").csrf;
        Seat { cookie: format!("{}={token}", people::COOKIE), csrf }
    }

    pub fn get(&self, rig: &Rig, path: &str) -> Answer {
        rig.ask("GET", path, &[("cookie", &self.cookie)], "")
    }

    pub fn post(&self, rig: &Rig, path: &str, fields: &str) -> Answer {
        self.send(rig, path, &format!("csrf={}&{fields}", self.csrf))
    }

    /// The secret of its session, as a browser sends it.
    pub fn cookie(&self) -> &str {
        &self.cookie
    }

    fn send(&self, rig: &Rig, path: &str, body: &str) -> Answer {
        let kind = ("content-type", "application/x-www-form-urlencoded");
        rig.ask("POST", path, &[("cookie", &self.cookie), kind], body.to_owned())
    }
}

/// Who may call what, said a second time and by hand: `-` anybody, `p` phones, `w` withdrawn phones too, then the least role.
const TABLE: &str = "
- GET /capabilities
- POST /enrol
w POST /entries
p GET /entries
p GET /digest
w GET /wanted
- OPTIONS /photos
w POST /photos
p GET /photos/{name}
w HEAD /photos/up/{id}
w PATCH /photos/up/{id}
w DELETE /photos/up/{id}
- GET /openapi.json
- GET /style.css
- GET /office.js
- GET /icon.svg
- GET /sign-in
- POST /sign-in
reader POST /sign-out
reader GET /
reader GET /board
reader GET /board/rows
reader GET /board.csv
reader GET /sites
reader GET /sites/{site}
reader GET /sites/{site}/jobs.csv
reader GET /sites/{site}/export.json
reader GET /sites/{site}/network
reader GET /sites/{site}/network/{file}
reader GET /sites/{site}/company-rules
reader GET /sites/{site}/company-rules/company-rules.json
reader GET /sites/{site}/jobs/{job}
reader GET /sites/{site}/jobs/{job}/record/{kind}
reader GET /sites/{site}/jobs/{job}/stamps.json
reader GET /pictures/{name}
reader GET /search
reader GET /password
reader POST /password
planner POST /sites
planner GET /sites/{site}/plan
planner POST /sites/{site}/plan
planner POST /sites/{site}/network
planner GET /labels
planner POST /labels
lead POST /sites/{site}
lead POST /sites/{site}/company-rules
lead GET /phones
lead POST /phones
lead POST /phones/{device}
lead GET /held
lead POST /held/{device}/release
lead POST /held/quarantine/{id}
admin GET /people
admin POST /people
admin POST /people/{id}
admin GET /names
admin POST /names/{id}
admin GET /audit
";

fn table() -> Vec<(&'static str, &'static str, &'static str)> {
    let rows = TABLE.lines().filter(|l| !l.is_empty());
    rows.map(|l| {
        let mut words = l.split(' ');
        let mut word = || words.next().expect("three words a line");
        (word(), word(), word())
    })
    .collect()
}

#[test]
fn the_table_names_every_route() {
    let routes: Vec<String> = routes().iter().map(|r| format!("{} {}", r.method, r.path)).collect();
    let told: Vec<String> = table().iter().map(|(_, method, path)| format!("{method} {path}")).collect();
    assert_eq!(routes, told);
}

/// Every role with every route: who may is let in, who may not is turned away before anything happens.
#[test]
fn every_route_lets_in_whom_it_is_for_and_nobody_else() {
    let rig = Rig::new(Backend::Sqlite);
    let mut phone = rig.phone(1, &[]);
    let site = phone.site("Hill Laundry");
    phone.push_all(&rig);
    let withdrawn = rig.phone(2, &[site]);
    let sql = "UPDATE device SET withdrawn_ms = 1 WHERE id = $1";
    rig.office.change(|tx| tx.run(sql, params![withdrawn.id()])).expect("withdrawn");
    let ranks = ["reader", "planner", "lead", "admin"];
    let mut asked = 0;
    for (who, method, path) in table() {
        let filled = path
            .replace("{site}", &site.to_string())
            .replace("{device}", &phone.id().to_string())
            .replace("{kind}", "pdf")
            .replace("{file}", "network.json")
            .replace("{name}", &"ab".repeat(32))
            .replace("{job}", &"cd".repeat(32))
            .replace("{id}", "none");
        // A seat of its own for each call: signing out ends it.
        for caller in ["nobody", "phone", "withdrawn", "reader", "planner", "lead", "admin"] {
            let rank = ranks.iter().position(|r| *r == caller);
            let role = rank.map(|at| AccountRole::ALL[at]);
            let answer = match (caller, role) {
                ("nobody", _) => rig.ask(method, &filled, &[], ""),
                ("phone", _) => phone.ask(&rig, method, &filled, &[], ""),
                ("withdrawn", _) => withdrawn.ask(&rig, method, &filled, &[], ""),
                (_, Some(role)) => {
                    let seat = seat(&rig, role, site);
                    if method == "POST" {
                        seat.post(&rig, &filled, "")
                    } else {
                        rig.ask(method, &filled, &[("cookie", &seat.cookie)], "")
                    }
                }
                _ => unreachable!("every caller is one of these"),
            };
            let may = match who {
                "-" => true,
                "p" => caller == "phone",
                "w" => caller == "phone" || caller == "withdrawn",
                least => rank.is_some_and(|at| {
                    ranks[at..].len() <= ranks[ranks.iter().position(|r| *r == least).expect("a role")..].len()
                }),
            };
            let status = answer.status.as_u16();
            let to_sign_in = answer.header("location") == "/sign-in" && path != "/sign-out";
            let error: String = serde_json::from_slice::<serde_json::Value>(&answer.bytes)
                .map(|v| v["error"].as_str().unwrap_or("").to_owned())
                .unwrap_or_default();
            let turned = match status {
                401 => true,
                403 => error != "code-not-valid" && error != "not-signed" && error != "not-named" && path != "/sign-in",
                303 => to_sign_in,
                _ => false,
            };
            assert_eq!(
                !turned,
                may,
                "{caller} {method} {path}: {status} {}",
                answer.text().chars().take(300).collect::<String>()
            );
            assert!(status < 500, "{caller} {method} {path}: {status}");
            asked += 1;
        }
    }
    assert_eq!(asked, table().len() * 7);
}

/// A seat without hashing a password again: the rights are the same.
fn seat(rig: &Rig, role: AccountRole, site: EntryId) -> Seat {
    let (id, token) = (rig.office.secret::<12>().expect("random"), rig.office.secret::<32>().expect("random"));
    let now = rig.now();
    rig.office
        .change(|tx| {
            tx.run(
                "INSERT INTO person (id, login, name, password, role, fresh, off, entry, made_ms) \
                 VALUES ($1, $1, $1, '', $2, 0, 0, NULL, $3)",
                params![id.as_str(), role.number(), now],
            )?;
            people::give_sites(tx, &id, &[site])?;
            tx.run(
                "INSERT INTO session (token, person, csrf, made_ms, seen_ms) VALUES ($1, $2, 'once', $3, $3)",
                params![stillbar_office::office::kept(&token), id.as_str(), now],
            )
        })
        .expect("seated");
    Seat { cookie: format!("{}={token}", people::COOKIE), csrf: "once".into() }
}

#[test]
fn a_form_without_the_sessions_token_or_from_another_page_does_nothing() {
    let rig = Rig::new(Backend::Sqlite);
    let seat = Seat::new(&rig, AccountRole::Admin, &[]);
    for (method, path) in table().iter().filter(|(who, ..)| who.len() > 1).map(|(_, method, path)| (*method, *path)) {
        if method != "POST" {
            continue;
        }
        let filled =
            path.replace("{site}", &"ab".repeat(32)).replace("{device}", &"ab".repeat(32)).replace("{id}", "x");
        assert_eq!(seat.send(&rig, &filled, "csrf=wrong").status.as_u16(), 403, "{path}");
        let kind = ("content-type", "application/x-www-form-urlencoded");
        let body = format!("csrf={}", seat.csrf);
        let foreign =
            [("cookie", seat.cookie.as_str()), kind, ("host", "office.example"), ("origin", "https://evil.example")];
        assert_eq!(rig.ask("POST", &filled, &foreign, body).status.as_u16(), 403, "{path}");
    }
    seat.get(&rig, "/board").is(200);
}

#[test]
fn signing_in_is_limited_ends_by_itself_and_asks_for_an_own_password() {
    each(|rig| {
        let new = NewAccount { login: "Mara".into(), name: "Mara Lind".into(), role: AccountRole::Lead, sites: vec![] };
        let password = people::add(&rig.office, &new, "the test", "here").expect("added");
        let kept = rig.office.read(|tx| tx.rows("SELECT password FROM person", &[])).expect("it reads");
        assert!(kept[0].text(0).expect("text").starts_with("$argon2id$v=19$m=19456,t=2,p=1$"));
        let form = |password: &str| {
            let kind = ("content-type", "application/x-www-form-urlencoded");
            rig.ask("POST", "/sign-in", &[kind], format!("login=mara&password={password}"))
        };
        let cookie = form(&password).is(303).header("set-cookie").to_owned();
        assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
        let pair = cookie.split(';').next().expect("a pair").to_owned();
        // The one-time password leads to nothing but another one.
        assert_eq!(rig.ask("GET", "/board", &[("cookie", &pair)], "").is(303).header("location"), "/password");
        rig.ask("GET", "/password", &[("cookie", &pair)], "").is(200);
        // Two hours without a call end it.
        rig.wait(2 * 3_600_000 + 1);
        assert_eq!(rig.ask("GET", "/password", &[("cookie", &pair)], "").is(303).header("location"), "/sign-in");
        let mut refused = 0;
        for _ in 0..40 {
            refused = form("wrong").status.as_u16();
        }
        assert_eq!(refused, 429);
        assert_eq!(form(&password).status.as_u16(), 429, "the right one neither, for a while");
        rig.wait(15 * 60_000);
        form(&password).is(303);
        // No secret in what is kept of who did what.
        let notes = rig.office.read(|tx| tx.rows("SELECT who, what, about, origin FROM audit", &[])).expect("it reads");
        assert!(notes.len() > 2 && !format!("{notes:?}").contains(&password));
    });
}

#[test]
fn somebody_of_one_site_sees_nothing_of_another() {
    each(|rig| {
        let (mut a, mut b) = (rig.phone(1, &[]), rig.phone(2, &[]));
        let begun = |phone: &mut Phone, name: &str, lock: &str| {
            phone.person(&format!("Person of {name}"));
            let site = phone.site(name);
            let job = phone.job(site, &format!("Job at {name}"));
            let point = phone.point(site, job, "Q1");
            phone.lock(site, job, point, lock);
            phone.push_all(rig);
            (site, job)
        };
        let (laundry, _) = begun(&mut a, "Hill Laundry", "ML 7");
        let (mill, mill_job) = begun(&mut b, "Mill", "ML 9");
        let reader = Seat::new(rig, AccountRole::Reader, &[laundry]);
        for path in ["/board", "/board/rows", "/board.csv", "/sites", "/search?q=job"] {
            let text = reader.get(rig, path).is(200).text();
            assert!(text.contains("Hill Laundry"), "{path}: {text}");
            assert!(!text.contains("Mill") && !text.contains("ML 9"), "{path}");
        }
        reader.get(rig, &format!("/sites/{mill}")).is(404);
        reader.get(rig, &format!("/sites/{mill}/jobs/{mill_job}")).is(404);
        reader.get(rig, &format!("/sites/{laundry}/jobs/{mill_job}")).is(404);
        reader.get(rig, &format!("/sites/{mill}/export.json")).is(404);
        let lead = Seat::new(rig, AccountRole::Lead, &[laundry]);
        assert!(!lead.get(rig, "/phones").is(200).text().contains(&b.id().to_string()));
        lead.post(rig, &format!("/phones/{}", b.id()), "do=withdraw").is(404);
        lead.post(rig, "/phones", &format!("label=x&site={mill}")).is(404);
        lead.post(rig, &format!("/sites/{laundry}"), &format!("do=join&main={mill}")).is(404);
        // An admin sees both; joined, they are one for everybody.
        let admin = Seat::new(rig, AccountRole::Admin, &[]);
        assert!(admin.get(rig, "/board").is(200).text().contains("ML 9"));
        admin.post(rig, &format!("/sites/{mill}"), &format!("do=join&main={laundry}")).is(303);
        assert!(reader.get(rig, "/board").is(200).text().contains("ML 9"));
        let kinds: Vec<String> = a.pull(rig, 500).iter().map(|e| e.body.fact.kind()).collect();
        assert!(kinds.contains(&"lock-fitted".to_owned()), "the phone of either gets both: {kinds:?}");
    });
}
