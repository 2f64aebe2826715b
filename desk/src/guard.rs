//! Who may ask: this machine's own page, for the person who started the desk, and nobody else.
//!
//! Any web page that is open in the same browser can send requests to loopback. A foreign name that resolves to
//! 127.0.0.1 is told by its Host (DNS rebinding), a foreign page by its Origin (cross-site request forgery). Another user of this
//! machine can connect to loopback too: only who has the key is let in, which is made anew at each start and stands in the
//! address that is printed. Start at [`guard`].

use std::sync::{Arc, Mutex};

use axum::extract::{Request, State};
use axum::http::header::{self, HeaderMap, HeaderName};
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use subtle::ConstantTimeEq;

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

const LOCKED_OUT: &str =
    "Open the whole address that Stillbar printed where it was started last: the key in it lets you in.";

/// Bytes of a key: nobody guesses 128 bits.
const KEY: usize = 16;

/// The system gives no random bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("This system gives no random bytes, so the desk could let in anybody.")]
pub struct NoKey;

/// The way in, from one start of the desk to its end.
pub struct Door {
    port: u16,
    key: String,
    /// The key of the address that a browser is started with, until it was used.
    once: Mutex<Option<String>>,
}

impl Door {
    /// A way in that nobody knows yet.
    pub fn new(port: u16) -> Result<Door, NoKey> {
        Ok(Door { port, key: key()?, once: Mutex::default() })
    }

    /// The address to print: whoever has it is let in.
    pub fn address(&self) -> String {
        self.with(&self.key)
    }

    /// An address to start a browser with. It lets in once: everybody on this machine can read the words that a program was started with.
    pub fn address_once(&self) -> Result<String, NoKey> {
        let once = key()?;
        let address = self.with(&once);
        *self.once.lock().unwrap_or_else(|poisoned| poisoned.into_inner()) = Some(once);
        Ok(address)
    }

    fn with(&self, key: &str) -> String {
        format!("http://127.0.0.1:{}/?key={key}", self.port)
    }

    /// The cookie's name. A browser sends cookies to all ports of a host, so two desks need two names.
    fn cookie(&self) -> String {
        format!("stillbar-{}", self.port)
    }

    /// Whether the browser was let in before.
    fn knows(&self, headers: &HeaderMap) -> bool {
        let name = self.cookie();
        let all = headers.get_all(header::COOKIE).iter().filter_map(|h| h.to_str().ok());
        let mut values = all.flat_map(|h| h.split(';')).filter_map(|pair| pair.trim().split_once('='));
        values.any(|(given, value)| given == name && same(value, &self.key))
    }

    /// Whether this key lets in; `page`: it is the page itself that is asked for.
    fn lets_in(&self, given: &str, page: bool) -> bool {
        let mut once = self.once.lock().unwrap_or_else(|poisoned| poisoned.into_inner());
        same(given, &self.key) || (page && once.take_if(|once| same(given, once)).is_some())
    }
}

fn key() -> Result<String, NoKey> {
    let mut bytes = [0; KEY];
    getrandom::fill(&mut bytes).map_err(|_| NoKey)?;
    Ok(bytes.iter().map(|b| format!("{b:02x}")).collect())
}

/// In the same time wherever they differ, so that nobody finds a key by measuring.
fn same(a: &str, b: &str) -> bool {
    a.as_bytes().ct_eq(b.as_bytes()).into()
}

/// Lets through what comes from here, and puts the headers on every answer.
pub async fn guard(State(door): State<Arc<Door>>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    let mut answer = if !host_is_ours(headers, door.port) {
        let say = format!("This desk answers only under http://127.0.0.1:{}/.", door.port);
        Say::new(StatusCode::FORBIDDEN, say).into_response()
    } else if request.method() != Method::GET && !origin_is_ours(headers, door.port) {
        let say = "This desk takes nothing from other pages.";
        Say::new(StatusCode::FORBIDDEN, say).into_response()
    } else {
        enter(&door, request, next).await
    };
    for (name, value) in HEADERS {
        answer.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    answer.headers_mut().entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}

/// By the cookie, or by the key in the address; for the page itself that key becomes the cookie.
async fn enter(door: &Door, request: Request, next: Next) -> Response {
    let page = request.method() == Method::GET && request.uri().path() == "/";
    let given = request.uri().query().and_then(|q| q.split('&').find_map(|pair| pair.strip_prefix("key=")));
    let known = door.knows(request.headers());
    match given {
        Some(given) if !known && !door.lets_in(given, page) => locked_out(),
        // The key is not left in the address, where it would be seen and copied.
        Some(_) if page => {
            let cookie = format!("{}={}; Path=/; HttpOnly; SameSite=Strict", door.cookie(), door.key);
            let to = [(header::LOCATION, "/".to_owned()), (header::SET_COOKIE, cookie)];
            (StatusCode::SEE_OTHER, to).into_response()
        }
        None if !known => locked_out(),
        _ => next.run(request).await,
    }
}

fn locked_out() -> Response {
    Say::new(StatusCode::FORBIDDEN, LOCKED_OUT).into_response()
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
