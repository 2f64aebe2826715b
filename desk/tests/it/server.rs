//! What is answered and who is let in, over the real router with a brain that only remembers.

use std::sync::{Arc, Mutex};

use axum::body::Body;
use axum::http::{HeaderMap, Request, StatusCode};
use stillbar_core::{Errand, Filled, Outcome, Screen};
use stillbar_desk::body::{MAX_FRAME, MAX_PHOTO, MAX_TYPED};
use stillbar_desk::guard::{Door, POLICY};
use stillbar_desk::server::{self, Brain, Typed};
use tower::ServiceExt;

use crate::samples;

pub const PORT: u16 = 7462;
pub const HOST: (&str, &str) = ("host", "127.0.0.1:7462");
pub const JSON: (&str, &str) = ("content-type", "application/json");

/// Writes down what it is asked.
#[derive(Default)]
struct Notes {
    said: Mutex<Vec<String>>,
}

impl Notes {
    fn note(&self, what: String) {
        self.said.lock().expect("no test panics while it notes").push(what);
    }
}

impl Brain for Notes {
    type NotKept = &'static str;
    fn screen(&self) -> Screen {
        samples::first()
    }
    fn act(&self, turn: u64, action: String, input: Vec<Filled>) -> Vec<Errand> {
        assert!(action != "panic", "asked to");
        let fields: Vec<_> = input.iter().map(|f| format!("{}={}", f.field, f.value)).collect();
        self.note(format!("act {turn} {action} {}", fields.join(",")));
        vec![Errand::TakePhoto { token: "t 1".into(), hint: "near".into() }]
    }
    fn edit(&self, Typed { route, hand, field, value }: Typed) -> Result<(), &'static str> {
        if hand != "mara" {
            return Err("Somebody else has this device now.");
        }
        self.note(format!("edit {route} {field}={value}"));
        Ok(())
    }
    fn changes(&self) -> u64 {
        41
    }
    fn deliver(&self, token: String, outcome: Outcome) -> Vec<Errand> {
        self.note(match outcome {
            Outcome::Photo { media_type, bytes } => {
                format!("photo {token} {media_type} {}", bytes.len())
            }
            Outcome::Frame { width, height, luma } => format!("frame {token} {width} x {height}, {}", luma.len()),
            Outcome::Refused { why } => format!("refused {token} {why}"),
        });
        vec![]
    }
    fn shared(&self, name: &str) -> Option<Vec<u8>> {
        (name == "a.pdf").then(|| b"<html>whatever is in it</html>".to_vec())
    }
    fn photo(&self, sha256: String) -> Option<Vec<u8>> {
        match &sha256[..2] {
            "aa" => Some(b"\xFF\xD8\xFF\xE0 jpeg".to_vec()),
            "bb" => Some(b"\x89PNG\r\n\x1a\n png".to_vec()),
            "cc" => Some(b"RIFF\x08\0\0\0WEBP".to_vec()),
            "dd" => Some(b"<html>no picture</html>".to_vec()),
            _ => None,
        }
    }
}

/// What was made to be shared is a download, and never a page of the desk's.
#[test]
fn a_shared_file_is_a_download() {
    let got = get("/shared/a.pdf");
    assert_eq!((got.status, got.text.as_str()), (StatusCode::OK, "<html>whatever is in it</html>"));
    assert_eq!(got.headers["content-type"], "application/octet-stream");
    assert_eq!(got.headers["content-disposition"], "attachment");
    assert_eq!(get("/shared/b.pdf").status, StatusCode::NOT_FOUND);
    assert_eq!(get("/shared/..%2Fjournal.db").status, StatusCode::NOT_FOUND);
}

pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
    noted: Vec<String>,
}

/// As the page does, which has the key.
fn ask(method: &str, path: &str, headers: &[(&str, &str)], body: impl Into<Body>) -> Answer {
    let door = Arc::new(Door::new(PORT).expect("this system has random bytes"));
    let address = door.address();
    let (_, key) = address.split_once("=").expect("the address has a key");
    let cookie = format!("stillbar-{PORT}={key}");
    at(&door, method, path, &[headers, &[("cookie", &cookie)]].concat(), body)
}

/// Asks the desk behind this door, with no more than these headers.
pub fn at(door: &Arc<Door>, method: &str, path: &str, headers: &[(&str, &str)], body: impl Into<Body>) -> Answer {
    let brain = Arc::new(Notes::default());
    let mut request = Request::builder().method(method).uri(path);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    let request = request.body(body.into()).expect("the request of a test is well formed");
    let runtime = tokio::runtime::Builder::new_current_thread().enable_time().build().expect("a runtime starts");
    runtime.block_on(async {
        let answer = server::router(Arc::clone(&brain), Arc::clone(door))
            .oneshot(request)
            .await
            .expect("the router always answers");
        let (parts, body) = answer.into_parts();
        let bytes = axum::body::to_bytes(body, MAX_PHOTO).await.expect("the answer is whole");
        let noted = brain.said.lock().expect("no test panics while it notes").clone();
        Answer {
            status: parts.status,
            headers: parts.headers,
            text: String::from_utf8_lossy(&bytes).into_owned(),
            noted,
        }
    })
}

fn get(path: &str) -> Answer {
    ask("GET", path, &[HOST], "")
}

#[test]
fn the_page_and_what_it_needs() {
    let page = get("/");
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text.contains("Plan a job"));
    for (path, kind) in [
        ("/style.css", "text/css"),
        ("/desk.js", "text/javascript"),
        ("/camera.js", "text/javascript"),
        ("/themes.css", "text/css"),
        ("/contrast.js", "text/javascript"),
        ("/room.js", "text/javascript"),
        ("/watch.js", "text/javascript"),
        ("/icon.svg", "image/svg+xml"),
    ] {
        assert!(page.text.contains(path), "{path} is not asked for");
        let asset = get(path);
        assert_eq!(asset.status, StatusCode::OK, "{path}");
        assert!(asset.headers["content-type"].to_str().is_ok_and(|t| t.starts_with(kind)), "{path}");
    }
    assert_eq!(get("/elsewhere").status, StatusCode::NOT_FOUND);
}

#[test]
fn every_answer_carries_the_headers() {
    for path in ["/", "/desk.js", "/none", "/photo/x"] {
        let headers = get(path).headers;
        assert_eq!(headers["content-security-policy"], POLICY, "{path}");
        assert_eq!(headers["x-content-type-options"], "nosniff", "{path}");
        assert_eq!(headers["referrer-policy"], "no-referrer", "{path}");
        assert_eq!(headers["cache-control"], "no-store", "{path}");
    }
    assert!(POLICY.contains("default-src 'none'") && !POLICY.contains("unsafe"));
    assert_eq!(ask("GET", "/", &[("host", "evil.example")], "").headers["content-security-policy"], POLICY);
}

#[test]
fn only_its_own_names() {
    for host in ["127.0.0.1:7462", "localhost:7462", "LOCALHOST:7462", "[::1]:7462"] {
        assert_eq!(ask("GET", "/", &[("host", host)], "").status, StatusCode::OK, "{host}");
    }
    for host in
        ["evil.example:7462", "127.0.0.1", "127.0.0.1:80", "localhost.evil.example:7462", "192.168.0.7:7462", ""]
    {
        let answer = ask("GET", "/", &[("host", host)], "");
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{host}");
        assert!(answer.text.contains("http://127.0.0.1:7462/"), "it says where it is");
    }
    assert_eq!(ask("GET", "/", &[], "").status, StatusCode::FORBIDDEN, "no host");
    assert_eq!(ask("GET", "/", &[HOST, ("host", "evil.example")], "").status, StatusCode::FORBIDDEN, "two hosts");
}

#[test]
fn only_its_own_page_may_post() {
    let edit = |header| {
        ask("POST", "/edit", &[HOST, JSON, header], r#"{"route":"/new","hand":"mara","field":"a","value":"b"}"#)
    };
    for ours in
        [("origin", "http://127.0.0.1:7462"), ("origin", "http://localhost:7462"), ("sec-fetch-site", "same-origin")]
    {
        let answer = edit(ours);
        assert_eq!(
            (answer.status, answer.noted),
            (StatusCode::NO_CONTENT, vec!["edit /new a=b".to_owned()]),
            "{ours:?}"
        );
    }
    for foreign in [
        ("origin", "http://evil.example"),
        ("origin", "https://127.0.0.1:7462"),
        ("origin", "http://127.0.0.1:7463"),
        ("origin", "null"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        let answer = edit(foreign);
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{foreign:?}");
        assert!(answer.noted.is_empty(), "{foreign:?} reached the core");
    }
    // A plain HTML form can send these without asking first.
    for kind in ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"] {
        let answer = ask(
            "POST",
            "/edit",
            &[HOST, ("content-type", kind)],
            r#"{"route":"/new","hand":"mara","field":"a","value":"b"}"#,
        );
        assert_eq!(answer.status, StatusCode::UNSUPPORTED_MEDIA_TYPE, "{kind}");
        assert!(answer.noted.is_empty());
    }
}

#[test]
fn an_act_reaches_the_core_as_it_is_and_brings_the_screen() {
    let answer =
        ask("POST", "/act", &[HOST, JSON], r#"{"turn":7,"action":"go:1","fields":[{"field":"a","value":"b\nc"}]}"#);
    assert_eq!(answer.noted, ["act 7 go:1 a=b\nc"]);
    let shown: serde_json::Value = serde_json::from_str(&answer.text).expect("JSON");
    assert_eq!(shown["route"], "/");
    assert_eq!(shown["title"], "Jobs");
    assert_eq!(shown["errands"], serde_json::json!([{"errand": "take-photo", "token": "t 1", "hint": "near"}]));
    assert!(shown["html"].as_str().is_some_and(|h| h.starts_with("<form")));
    assert_eq!(shown["changes"], 41);
}

/// Over HTTP there is always a screen that was tapped on.
#[test]
fn an_act_without_a_turn_is_refused() {
    for body in [r#"{"action":"x"}"#, r#"{"turn":null,"action":"x"}"#] {
        let answer = ask("POST", "/act", &[HOST, JSON], body);
        assert_eq!(answer.status, StatusCode::BAD_REQUEST, "{body}");
        assert!(answer.text.contains("turn") && answer.text.contains("Nothing was done"), "{}", answer.text);
        assert!(answer.noted.is_empty(), "it reached the core");
    }
}

#[test]
fn a_draft_without_its_screen_is_refused_and_one_that_the_core_refuses_is_told() {
    let answer = ask("POST", "/edit", &[HOST, JSON], r#"{"field":"a","value":"b"}"#);
    assert_eq!((answer.status, answer.noted), (StatusCode::BAD_REQUEST, vec![]));
    let late = r#"{"route":"/new","hand":"tomas","field":"a","value":"b"}"#;
    let answer = ask("POST", "/edit", &[HOST, JSON], late);
    assert_eq!((answer.status, answer.noted), (StatusCode::CONFLICT, vec![]));
    assert!(answer.text.starts_with("Somebody else has this device now."), "{}", answer.text);
}

#[test]
fn the_page_says_what_it_is_the_state_of() {
    assert_eq!(get("/stirred").text, "41");
    assert!(get("/").text.contains(r#"data-changes="41""#));
    let again: serde_json::Value = serde_json::from_str(&get("/screen").text).expect("JSON");
    assert_eq!(again["changes"], 41);
}

/// Its core is at work for as long as the gate is held.
struct Busy(Mutex<()>);

impl Brain for Busy {
    type NotKept = &'static str;
    fn screen(&self) -> Screen {
        samples::first()
    }
    fn act(&self, _: u64, _: String, _: Vec<Filled>) -> Vec<Errand> {
        vec![]
    }
    fn edit(&self, _: Typed) -> Result<(), &'static str> {
        Ok(())
    }
    fn deliver(&self, _: String, _: Outcome) -> Vec<Errand> {
        vec![]
    }
    fn photo(&self, _: String) -> Option<Vec<u8>> {
        None
    }
    fn changes(&self) -> u64 {
        let _gate = self.0.lock();
        7
    }
}

/// A page that asks whether the desk is there gets an answer while a photo is being looked at, however often it asks.
#[test]
fn a_busy_core_is_no_desk_that_is_gone() {
    let door = Arc::new(Door::new(PORT).expect("this system has random bytes"));
    let path = door.address().replace("/?", "/stirred?");
    let brain = Arc::new(Busy(Mutex::new(())));
    let router = server::router(Arc::clone(&brain), door);
    let asked = || {
        let request = Request::get(&path).header(HOST.0, HOST.1).body(Body::empty()).expect("well formed");
        router.clone().oneshot(request)
    };
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_time()
        .max_blocking_threads(2)
        .build()
        .expect("a runtime starts");
    let gate = brain.0.lock().expect("nobody panics while the core is at work");
    runtime.block_on(async {
        for _ in 0..20 {
            assert_eq!(asked().await.expect("the router always answers").status(), StatusCode::NO_CONTENT);
        }
        // One question waits for the core, and the threads are free for acts.
        let free = tokio::task::spawn_blocking(|| true);
        assert!(
            tokio::time::timeout(std::time::Duration::from_secs(10), free).await.expect("a thread is free").unwrap()
        );
    });
    // The question that waits has to end before the runtime does.
    drop(gate);
}

#[test]
fn what_cannot_be_read_is_refused_with_a_reason() {
    for body in ["", "{", r#"{"action":3}"#, r#"{"turn":-1,"action":"x"}"#] {
        let answer = ask("POST", "/act", &[HOST, JSON], body);
        assert_eq!(answer.status, StatusCode::BAD_REQUEST, "{body}");
        assert!(answer.text.starts_with("This could not be read:") && answer.noted.is_empty(), "{}", answer.text);
    }
    assert_eq!(ask("POST", "/deliver", &[HOST], "x").status, StatusCode::BAD_REQUEST, "no token");
}

#[test]
fn too_much_is_refused_with_a_sentence() {
    let json = |size: usize| {
        let frame = r#"{"route":"/","hand":"mara","field":"a","value":""}"#;
        frame.replace("\"\"", &format!("\"{}\"", "x".repeat(size - frame.len())))
    };
    assert_eq!(ask("POST", "/edit", &[HOST, JSON], json(MAX_TYPED)).status, StatusCode::NO_CONTENT);
    assert_eq!(
        ask("POST", "/deliver?token=t", &[HOST, ("content-type", "image/jpeg")], vec![0; MAX_PHOTO]).status,
        StatusCode::OK
    );
    for (path, kind, body) in [
        ("/edit", JSON.1, json(MAX_TYPED + 1).into_bytes()),
        ("/act", JSON.1, json(MAX_TYPED + 1).into_bytes()),
        ("/deliver?token=t", "image/jpeg", vec![0; MAX_PHOTO + 1]),
        ("/frame?token=t&width=1&height=1&turn=7", "application/octet-stream", vec![0; MAX_FRAME + 1]),
    ] {
        let answer = ask("POST", path, &[HOST, ("content-type", kind)], body);
        assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE, "{path}");
        assert!(answer.text.contains("256 KiB") && answer.text.contains("40 MiB"), "{path}: {}", answer.text);
        assert!(answer.noted.is_empty(), "{path} reached the core");
    }
}

/// The screen stays as it is here, so there is nothing to draw again.
#[test]
fn a_frame_in_which_nothing_is_found_has_no_answer() {
    let answer = ask("POST", "/frame?token=t&width=2&height=3&turn=7", &[HOST], vec![0; 6]);
    assert_eq!((answer.status, answer.noted), (StatusCode::NO_CONTENT, vec!["frame t 2 x 3, 6".to_owned()]));
    // A page that shows an older turn gets the screen as it is now.
    let other = ask("POST", "/frame?token=t&width=2&height=3&turn=6", &[HOST], vec![0; 6]);
    assert!(other.status == StatusCode::OK && other.text.contains("\"title\":\"Jobs\""), "{}", other.text);
    for bad in [
        "/frame",
        "/frame?token=t",
        "/frame?token=t&width=-1&height=1&turn=7",
        "/frame?token=t&width=99999999999&height=1&turn=7",
        "/frame?token=t&width=1&height=1",
    ] {
        assert_eq!(ask("POST", bad, &[HOST], vec![0]).status, StatusCode::BAD_REQUEST, "{bad}");
    }
}

#[test]
fn a_photo_or_a_refusal_is_delivered_under_its_token() {
    let photo = ask("POST", "/deliver?token=t%201", &[HOST, ("content-type", "image/png")], vec![1, 2, 3]);
    assert_eq!((photo.status, photo.noted), (StatusCode::OK, vec!["photo t 1 image/png 3".to_owned()]));
    let untold = ask("POST", "/deliver?token=t", &[HOST], vec![1]);
    assert_eq!(untold.noted, ["photo t  1"]);
    let refusal = ask("POST", "/deliver?token=t", &[HOST, JSON], r#"{"why":"No camera."}"#);
    assert_eq!(refusal.noted, ["refused t No camera."]);
}

#[test]
fn a_kept_photo_has_the_kind_that_its_bytes_say() {
    for (first, kind) in [("aa", "image/jpeg"), ("bb", "image/png"), ("cc", "image/webp")] {
        let small = get(&format!("/photo/{}.320.jpg", first.repeat(32)));
        assert_eq!(small.status, StatusCode::OK, "the small copy of {first}");
        let answer = get(&format!("/photo/{}", first.repeat(32)));
        assert_eq!(answer.status, StatusCode::OK, "{kind}");
        assert_eq!(answer.headers["content-type"], kind);
    }
    let (other, unknown) = (format!("/photo/{}", "dd".repeat(32)), format!("/photo/{}", "ee".repeat(32)));
    for path in [
        other.as_str(),
        &unknown,
        &format!("/photo/{}.640.jpg", "aa".repeat(32)),
        "/photo/aa.320.jpg",
        "/photo/aa",
        "/photo/..%2Fdevice.key",
        &format!("/photo/{}", "AA".repeat(32)),
    ] {
        let answer = get(path);
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        assert!(!answer.text.contains("no picture"), "{path}");
    }
}

#[test]
fn a_panic_is_told_and_the_desk_goes_on() {
    let answer = ask("POST", "/act", &[HOST, JSON], r#"{"turn":7,"action":"panic"}"#);
    assert_eq!(answer.status, StatusCode::INTERNAL_SERVER_ERROR);
    assert!(answer.text.starts_with("The desk met a fault of its own"), "{}", answer.text);
    assert!(!answer.text.contains("asked to"), "nothing of the inside shows");
}
