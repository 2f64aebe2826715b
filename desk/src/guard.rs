//! Who may ask: this machine's own page and nobody else.
//!
//! Any web page that is open in the same browser can send requests to loopback. A foreign name that resolves to
//! 127.0.0.1 is told by its Host (DNS rebinding), a foreign page by its Origin (cross-site request forgery).

use axum::extract::{Request, State};
use axum::http::header::{self, HeaderMap, HeaderName};
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::body::Say;

/// Scripts, styles and pictures from here only, nothing inline, no frames around it.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
                          form-action 'none'; frame-ancestors 'none'; base-uri 'none'";

/// On every answer.
const HEADERS: [(HeaderName, &str); 5] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "no-referrer"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
];

/// Lets through what comes from here, and puts the headers on every answer.
pub async fn guard(State(port): State<u16>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    let mut answer = if !host_is_ours(headers, port) {
        let say = format!("This desk answers only under http://127.0.0.1:{port}/.");
        Say::new(StatusCode::FORBIDDEN, say).into_response()
    } else if request.method() != Method::GET && !origin_is_ours(headers, port) {
        let say = "This desk takes nothing from other pages.";
        Say::new(StatusCode::FORBIDDEN, say).into_response()
    } else {
        next.run(request).await
    };
    for (name, value) in HEADERS {
        answer.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    answer.headers_mut().entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}

/// Whether a name and port are this desk's own.
fn is_ours(authority: &str, port: u16) -> bool {
    ["127.0.0.1", "localhost", "[::1]"].iter().any(|name| {
        authority.eq_ignore_ascii_case(&format!("{name}:{port}"))
            // A browser leaves the port of plain HTTP out.
            || (port == 80 && authority.eq_ignore_ascii_case(name))
    })
}

fn host_is_ours(headers: &HeaderMap, port: u16) -> bool {
    let mut hosts = headers.get_all(header::HOST).iter();
    match (hosts.next(), hosts.next()) {
        (Some(host), None) => host.to_str().is_ok_and(|h| is_ours(h, port)),
        _ => false,
    }
}

fn origin_is_ours(headers: &HeaderMap, port: u16) -> bool {
    let origin = match headers.get(header::ORIGIN) {
        // A browser names the origin of every post; what names none is a program that the person runs.
        None => true,
        Some(origin) => origin
            .to_str()
            .ok()
            .and_then(|o| o.strip_prefix("http://"))
            .is_some_and(|authority| is_ours(authority, port)),
    };
    let site = headers.get("sec-fetch-site").is_none_or(|site| site == "same-origin" || site == "none");
    origin && site
}
