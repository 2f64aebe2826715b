//! What the office says of its running: one event a request, at the level that was asked for, and nothing that anybody sent.

use std::future::poll_fn;
use std::io;
use std::pin::pin;
use std::sync::{Arc, Mutex};
use std::task::Poll;

use axum::body::Body;
use axum::http::Request;
use futures_util::stream;
use serde_json::Value;
use stillbar_office::error::OfficeError;
use stillbar_office::log::{self, LevelFilter, Said};
use stillbar_office::people::AccountRole;
use tower::ServiceExt;
use tracing::subscriber::with_default;
use tracing_subscriber::fmt::MakeWriter;

use crate::people::Seat;
use crate::phone::Phone;
use crate::rig::{Backend, Rig};

/// Lines, where a test can read them.
#[derive(Clone, Default)]
struct Kept(Arc<Mutex<Vec<u8>>>);

impl io::Write for Kept {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.lock().expect("no test panicked").extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl<'a> MakeWriter<'a> for Kept {
    type Writer = Kept;

    fn make_writer(&'a self) -> Kept {
        self.clone()
    }
}

/// What is written while `deed` is done.
fn written(said: Said, deed: impl FnOnce()) -> String {
    let kept = Kept::default();
    with_default(log::subscriber(said, kept.clone()), deed);
    let bytes = kept.0.lock().expect("no test panicked").clone();
    String::from_utf8(bytes).expect("lines of text")
}

/// The events while `deed` is done.
fn events(level: LevelFilter, deed: impl FnOnce()) -> Vec<Value> {
    let lines = written(Said { level, json: true }, deed);
    lines.lines().map(|line| serde_json::from_str(line).expect("a JSON object a line")).collect()
}

/// Method, route, status, caller and the word of a refusal.
fn request(event: &Value) -> (&str, &str, u64, &str, &str) {
    assert_eq!((&event["message"], event["ms"].is_u64()), (&"request".into(), true), "{event}");
    let text = |name: &str| event[name].as_str().unwrap_or_default();
    (text("method"), text("route"), event["status"].as_u64().expect("a status"), text("caller"), text("refused"))
}

#[test]
fn every_request_is_one_event_with_its_route_and_the_kind_of_caller() {
    let rig = Rig::new(Backend::Sqlite);
    let phone = rig.phone(1, &[]);
    let lead = Seat::new(&rig, AccountRole::Lead, &[]);
    let told = events(LevelFilter::INFO, || {
        rig.ask("GET", "/capabilities", &[], "").is(200);
        rig.ask("GET", "/digest", &[("authorization", &format!("Bearer {}", phone.token))], "").is(200);
        rig.ask("GET", "/digest", &[("authorization", "Bearer nobodys")], "").is(401);
        lead.get(&rig, "/board").is(200);
        lead.get(&rig, "/people").is(403);
        lead.get(&rig, &format!("/sites/{}", "ab".repeat(32))).is(404);
        rig.ask("GET", "/wp-login.php?x=1", &[], "").is(404);
        rig.ask("BREW", "/entries", &[], "").is(401);
    });
    assert_eq!(
        told.iter().map(request).collect::<Vec<_>>(),
        [
            ("GET", "/capabilities", 200, "anyone", ""),
            ("GET", "/digest", 200, "phone", ""),
            ("GET", "/digest", 401, "nobody", "not-enrolled"),
            ("GET", "/board", 200, "site lead", ""),
            ("GET", "/people", 403, "site lead", "not-allowed"),
            ("GET", "/sites/{site}", 404, "site lead", "not-found"),
            ("GET", "none", 404, "anyone", "not-found"),
            ("other", "/entries", 401, "nobody", "not-enrolled"),
        ]
    );
}

#[test]
fn nothing_that_anybody_sent_is_in_an_event() {
    let rig = Rig::new(Backend::Sqlite);
    let admin = Seat::new(&rig, AccountRole::Admin, &[]);
    let code = rig.code(&[]);
    let mut phone = Phone::new(1);
    let mut secrets =
        vec![code.clone(), "correct horse".into(), "Petra Quist".into(), "pquist".into(), "Hangar Nine".into()];
    let lines = written(Said { level: LevelFilter::DEBUG, json: true }, || {
        phone.enrol(&rig, &code).is(201);
        phone.person("Petra Quist");
        let site = phone.site("Hangar Nine");
        phone.push_all(&rig);
        phone.enrol(&rig, "petra-quists-code").is(403);
        admin.post(&rig, "/people", "login=pquist&name=Petra+Quist&role=reader").is(200);
        admin.get(&rig, "/search?q=Petra+Quist").is(200);
        admin.get(&rig, &format!("/sites/{site}")).is(200);
        let kind = [("content-type", "application/x-www-form-urlencoded")];
        rig.ask("POST", "/sign-in", &kind, "login=pquist&password=correct+horse").is(403);
        rig.ask("GET", "/petra-quist/correct-horse", &[], "").is(404);
        secrets.push(site.to_string());
    });
    secrets.extend([phone.token.clone(), admin.cookie().to_owned(), phone.id().to_string()]);
    assert_eq!(lines.lines().count(), 8, "{lines}");
    let plain = |text: &str| text.to_lowercase().replace(['+', '-', '_', ' '], "");
    for secret in secrets {
        assert!(secret.len() > 5 && !plain(&lines).contains(&plain(&secret)), "{secret} is in {lines}");
    }
}

#[test]
fn only_what_went_wrong_is_said_where_that_is_asked_for() {
    let rig = Rig::new(Backend::Sqlite);
    let deeds = || {
        rig.ask("GET", "/capabilities", &[], "").is(200);
        let _ = OfficeError::broken("a table is missing").told();
        let _ = OfficeError::Busy("the disk is full".into()).told();
    };
    let said = |level| -> Vec<(String, String)> {
        let text = |v: &Value| v.as_str().unwrap_or_default().to_owned();
        events(level, deeds).iter().map(|e| (text(&e["level"]), text(&e["message"]))).collect()
    };
    let line = |level: &str, message: &str| (level.to_owned(), message.to_owned());
    let (info, fault, busy) = (line("INFO", "request"), line("ERROR", "fault"), line("WARN", "busy"));
    assert_eq!(said(LevelFilter::INFO), [info, fault.clone(), busy.clone()]);
    assert_eq!(said(LevelFilter::WARN), [fault.clone(), busy]);
    assert_eq!(said(LevelFilter::ERROR), [fault]);
    assert_eq!(said(LevelFilter::OFF), []);
}

#[test]
fn lines_for_people_have_no_colours() {
    let rig = Rig::new(Backend::Sqlite);
    let said = written(Said::default(), || {
        rig.ask("GET", "/capabilities", &[], "").is(200);
    });
    let (at, rest) = said.split_once(' ').expect("when, and what");
    assert!(
        at.ends_with('Z') && rest.trim_start().starts_with("INFO stillbar_office::log: request method=\"GET\""),
        "{said}"
    );
    assert!(rest.contains("route=\"/capabilities\" status=200 ms=") && !said.contains('\u{1b}'), "{said}");
    assert_eq!(said.lines().count(), 1, "{said}");
}

/// A caller who goes away before the answer is told all the same.
#[test]
fn a_request_without_an_answer_is_told() {
    let rig = Rig::new(Backend::Sqlite);
    let told = events(LevelFilter::WARN, || {
        let body = Body::from_stream(stream::pending::<io::Result<Vec<u8>>>());
        let request =
            Request::post("/enrol").header("content-type", "application/json").body(body).expect("well formed");
        let mut answer = pin!(rig.router.clone().oneshot(request));
        let begun = rig.runtime.block_on(poll_fn(|at| Poll::Ready(answer.as_mut().poll(at).is_pending())));
        assert!(begun, "its body never comes");
    });
    let [event] = &told[..] else { panic!("{told:?}") };
    assert_eq!((&event["message"], &event["route"]), (&"request without an answer".into(), &"/enrol".into()));
}
