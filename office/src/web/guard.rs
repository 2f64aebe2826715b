//! Who is calling, and whether they may.

use std::net::IpAddr;

use axum::extract::{ConnectInfo, Request, State};
use axum::http::header::{self, HeaderMap, HeaderName};
use axum::http::{HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use stillbar_core::journal::DeviceId;

use super::serve::Peer;
use super::{Who, pages};
use crate::error::{Code, OfficeError};
use crate::log::CallerKind;
use crate::office::{Office, Shared, call, kept};
use crate::params;
use crate::people::{self, COOKIE, Visitor};

/// Scripts, styles and pictures from here only, nothing inline, no frames around it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
                      form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

const HEADERS: [(HeaderName, &str); 5] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    // With "no-referrer" a browser hides the origin of our own forms too.
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
];

/// A phone that calls.
#[derive(Debug, Clone)]
pub struct Phone {
    /// Its key.
    pub device: DeviceId,
    /// Whether it was withdrawn: it may still send, and gets nothing.
    pub withdrawn: bool,
}

/// Where a call comes from, for limits and the audit.
#[derive(Debug, Clone)]
pub struct Origin(pub String);

/// Puts the headers on every answer.
pub async fn headers(State(office): State<Shared>, request: Request, next: Next) -> Response {
    let mut answer = next.run(request).await;
    let on = answer.headers_mut();
    for (name, value) in HEADERS {
        on.insert(name, HeaderValue::from_static(value));
    }
    if office.reached.secure {
        on.insert(header::STRICT_TRANSPORT_SECURITY, HeaderValue::from_static("max-age=31536000"));
    }
    on.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    answer
}

/// Lets through whom a route is for, and leaves on the answer what kind of caller it was.
pub async fn admit(State((office, who)): State<(Shared, Who)>, mut request: Request, next: Next) -> Response {
    let origin = origin(&office, &request);
    request.extensions_mut().insert(Origin(origin));
    let mut caller = CallerKind(if who == Who::Anyone { "anyone" } else { "nobody" });
    let mut answer = match let_in(&office, who, &mut request, &mut caller).await {
        Ok(()) => next.run(request).await,
        Err(refused) => refused,
    };
    answer.extensions_mut().insert(caller);
    answer
}

/// Whether this caller may; what answers them otherwise.
async fn let_in(office: &Shared, who: Who, request: &mut Request, caller: &mut CallerKind) -> Result<(), Response> {
    let role = match who {
        Who::Anyone => return Ok(()),
        Who::Phone | Who::AnyPhone => {
            let phone = phone(office, request.headers()).await.map_err(IntoResponse::into_response)?;
            *caller = CallerKind(if phone.withdrawn { "withdrawn phone" } else { "phone" });
            if phone.withdrawn && who == Who::Phone {
                let say = "This phone was withdrawn: it may send what it still has, and gets nothing. Ask the office.";
                return Err(OfficeError::refused(StatusCode::FORBIDDEN, Code::DeviceWithdrawn, say).into_response());
            }
            request.extensions_mut().insert(phone);
            return Ok(());
        }
        Who::Person(role) => role,
    };
    let reads = request.method() == Method::GET;
    let refuse = |visitor: Option<&Visitor>, status, code: Code, say: &str| {
        pages::refusal(visitor, &OfficeError::refused(status, code, say))
    };
    if !reads && !same_origin(request.headers()) {
        let say = "This comes from another page. Open the office's own page and do it there.";
        return Err(refuse(None, StatusCode::FORBIDDEN, Code::ForeignOrigin, say));
    }
    let found = visitor(office, request.headers()).await.map_err(|fault| pages::refusal(None, &fault))?;
    let Some(visitor) = found else {
        if reads {
            return Err(Redirect::to("/sign-in").into_response());
        }
        let say = "You are not signed in, or were away for too long. Sign in and do it again.";
        return Err(refuse(None, StatusCode::UNAUTHORIZED, Code::NotSignedIn, say));
    };
    *caller = CallerKind(visitor.person.role.word());
    if visitor.person.role < role {
        let say = format!("This is for a {} and above. Ask somebody who may.", role.word());
        return Err(refuse(Some(&visitor), StatusCode::FORBIDDEN, Code::NotAllowed, &say));
    }
    if visitor.person.fresh && !["/password", "/sign-out"].contains(&request.uri().path()) {
        if reads {
            return Err(Redirect::to("/password").into_response());
        }
        let say = "Choose a password of your own first.";
        return Err(refuse(Some(&visitor), StatusCode::FORBIDDEN, Code::FreshPassword, say));
    }
    request.extensions_mut().insert(visitor);
    Ok(())
}

/// Whether a post comes from a page of ours. Browsers say where a post comes from; the token in every form is asked for as well.
pub fn same_origin(headers: &HeaderMap) -> bool {
    let site = headers.get("sec-fetch-site").is_none_or(|site| site == "same-origin" || site == "none");
    let origin = match (headers.get(header::ORIGIN), headers.get(header::HOST)) {
        (None, _) => true,
        (Some(origin), Some(host)) => {
            let origin = origin.to_str().ok().and_then(|o| o.split_once("://")).map(|(_, authority)| authority);
            host.to_str().ok().zip(origin).is_some_and(|(host, origin)| host.eq_ignore_ascii_case(origin))
        }
        (Some(_), None) => false,
    };
    site && origin
}

/// The secret in the cookie.
pub fn cookie(headers: &HeaderMap) -> Option<String> {
    let all = headers.get_all(header::COOKIE).iter().filter_map(|v| v.to_str().ok());
    let mut pairs = all.flat_map(|v| v.split(';')).filter_map(|pair| pair.trim().split_once('='));
    pairs.find(|(name, _)| *name == COOKIE).map(|(_, value)| value.to_owned())
}

async fn visitor(office: &Shared, headers: &HeaderMap) -> Result<Option<Visitor>, OfficeError> {
    let Some(token) = cookie(headers) else { return Ok(None) };
    call(office, move |office| people::visitor(office, &token)).await
}

/// The phone of a token.
async fn phone(office: &Shared, headers: &HeaderMap) -> Result<Phone, OfficeError> {
    let unknown = || {
        let say = "This needs the token of an enrolled phone. Enrol it again with a code from the office.";
        OfficeError::refused(StatusCode::UNAUTHORIZED, Code::NotEnrolled, say)
    };
    let given = headers.get(header::AUTHORIZATION).and_then(|v| v.to_str().ok()).unwrap_or_default();
    let (scheme, token) = given.split_once(' ').ok_or_else(unknown)?;
    if !scheme.eq_ignore_ascii_case("bearer") {
        return Err(unknown());
    }
    // Looked up by its hash: how long that takes tells nothing of a token.
    let hash = kept(token.trim());
    let found = call(office, move |office: &Office| {
        office.read(|tx| {
            let rows = tx.rows("SELECT id, withdrawn_ms FROM device WHERE token = $1", params![hash])?;
            rows.first()
                .map(|row| Ok(Phone { device: row.device(0)?, withdrawn: row.maybe_int(1)?.is_some() }))
                .transpose()
        })
    });
    found.await?.ok_or_else(unknown)
}

/// Where a call comes from: the other end of the connection, or what the proxy in front says of it.
fn origin(office: &Office, request: &Request) -> String {
    let peer = request.extensions().get::<ConnectInfo<Peer>>().map(|c| c.0.0.ip());
    let named = || {
        // The last address is the one that our own proxy added; what stands before it, anybody may have written.
        let said = request.headers().get_all("x-forwarded-for").iter().next_back()?.to_str().ok()?;
        said.rsplit(',').next()?.trim().parse::<IpAddr>().ok()
    };
    let ip = if office.reached.proxied { named().or(peer) } else { peer };
    ip.map_or_else(|| "unknown".to_owned(), |ip| ip.to_string())
}
