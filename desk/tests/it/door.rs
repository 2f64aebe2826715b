//! The key in the address: who has it is let in, everybody else on this machine is not.

use std::collections::HashSet;
use std::sync::Arc;

use axum::http::StatusCode;
use stillbar_desk::guard::Door;

use crate::server::{Answer, HOST, JSON, PORT, at};

/// Every route, as whoever looks into the source knows them; one that does not exist is no way to find out either.
const ROUTES: [(&str, &str); 21] = [
    ("GET", "/"),
    ("HEAD", "/"),
    ("GET", "/stirred"),
    ("GET", "/screen"),
    ("GET", "/photo/aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"),
    ("GET", "/shared/a.pdf"),
    ("GET", "/style.css"),
    ("GET", "/desk.js"),
    ("GET", "/watch.js"),
    ("GET", "/camera.js"),
    ("GET", "/themes.css"),
    ("GET", "/contrast.js"),
    ("GET", "/room.js"),
    ("GET", "/icon.svg"),
    ("GET", "/elsewhere"),
    ("POST", "/act"),
    ("POST", "/edit"),
    ("POST", "/deliver?token=t"),
    ("POST", "/frame?token=t&width=1&height=1&turn=7"),
    ("PUT", "/"),
    ("OPTIONS", "/act"),
];

fn door() -> Arc<Door> {
    Arc::new(Door::new(PORT).expect("this system has random bytes"))
}

fn key(address: &str) -> &str {
    address.split_once("/?key=").expect("an address with its key").1
}

fn refused(answer: &Answer) -> bool {
    answer.status == StatusCode::FORBIDDEN
        && (answer.text.is_empty() || answer.text.starts_with("Open the whole address that Stillbar printed"))
}

#[test]
fn every_route_needs_the_key() {
    let door = door();
    let address = door.address();
    let right = format!("stillbar-{PORT}={}", key(&address));
    let wrong = [
        String::new(),
        format!("stillbar-{PORT}="),
        format!("stillbar-{PORT}={}", "0".repeat(32)),
        format!("stillbar-{PORT}={}", &key(&address)[1..]),
        format!("stillbar={}", key(&address)),
        format!("stillbar-7463={}", key(&address)),
        key(&address).to_owned(),
    ];
    for (method, path) in ROUTES {
        assert!(refused(&at(&door, method, path, &[HOST, JSON], "{}")), "{method} {path} with no key");
        for cookie in &wrong {
            let answer = at(&door, method, path, &[HOST, JSON, ("cookie", cookie)], "{}");
            assert!(refused(&answer), "{method} {path} with {cookie:?}: {} {}", answer.status, answer.text);
        }
        let answer = at(&door, method, path, &[HOST, JSON, ("cookie", &format!("other=1; {right}"))], "{}");
        assert_ne!(answer.status, StatusCode::FORBIDDEN, "{method} {path} with the key");
    }
}

#[test]
fn the_printed_address_brings_the_cookie_and_then_the_page() {
    let door = door();
    let address = door.address();
    for _ in 0..2 {
        let answer = at(&door, "GET", &format!("/?key={}", key(&address)), &[HOST], "");
        assert_eq!((answer.status, &answer.headers["location"]), (StatusCode::SEE_OTHER, &"/".parse().unwrap()));
        let cookie = answer.headers["set-cookie"].to_str().unwrap().to_owned();
        for part in ["HttpOnly", "SameSite=Strict", "Path=/"] {
            assert!(cookie.contains(part), "{cookie}");
        }
        let pair = cookie.split(';').next().unwrap();
        let page = at(&door, "GET", "/", &[HOST, ("cookie", pair)], "");
        assert!(page.status == StatusCode::OK && page.text.contains("Plan a job"), "{}", page.text);
        assert!(!page.text.contains(key(&address)), "the page does not show the key");
    }
    // A program that the person runs needs no cookie.
    assert_eq!(at(&door, "GET", &format!("/stirred?key={}", key(&address)), &[HOST], "").text, "41");
    assert!(refused(&at(&door, "GET", "/?key=0", &[HOST], "")));
    // The key is no way around what a foreign name or page is told by.
    let with_key = format!("/?key={}", key(&address));
    assert_eq!(at(&door, "GET", &with_key, &[("host", "evil.example")], "").status, StatusCode::FORBIDDEN);
    let foreign = [HOST, JSON, ("origin", "http://evil.example")];
    assert_eq!(at(&door, "POST", &format!("/act{}", &with_key[1..]), &foreign, "{}").status, StatusCode::FORBIDDEN);
}

/// A program's words can be read by everybody, so what a browser is started with lets in one browser.
#[test]
fn the_address_that_a_browser_is_started_with_lets_in_once() {
    let door = door();
    let address = door.address_once().unwrap();
    let path = format!("/?key={}", key(&address));
    assert_ne!(key(&address), key(&door.address()));
    // Not for anything but the page, and trying that uses nothing up.
    assert!(refused(&at(&door, "GET", &format!("/stirred?key={}", key(&address)), &[HOST], "")));
    let first = at(&door, "GET", &path, &[HOST], "");
    assert_eq!(first.status, StatusCode::SEE_OTHER);
    let cookie = first.headers["set-cookie"].to_str().unwrap().split(';').next().unwrap().to_owned();
    assert!(refused(&at(&door, "GET", &path, &[HOST], "")), "a second time");
    // The browser that was let in may load that address again.
    assert_eq!(at(&door, "GET", &path, &[HOST, ("cookie", &cookie)], "").status, StatusCode::SEE_OTHER);
    assert_eq!(at(&door, "GET", "/", &[HOST, ("cookie", &cookie)], "").status, StatusCode::OK);
}

#[test]
fn every_start_has_a_key_of_its_own() {
    let keys: HashSet<String> = (0..50).map(|_| key(&door().address()).to_owned()).collect();
    assert!(keys.len() == 50 && keys.iter().all(|k| k.len() == 32));
    let (old, new) = (door(), door());
    let cookie = format!("stillbar-{PORT}={}", key(&old.address()));
    assert!(refused(&at(&new, "GET", "/", &[HOST, ("cookie", &cookie)], "")), "the key of the start before");
}
