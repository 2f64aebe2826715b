//! What phones call: docs/exchange.md.

use axum::Extension;
use axum::body::Body;
use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;
use serde::{Deserialize, Serialize};
use stillbar_core::journal::DeviceId;

use super::body;
use super::guard::Phone;
use crate::exchange::{self, Cursor, MOST_BYTES, MOST_ENTRIES, Push};
use crate::fault::Fault;
use crate::office::{Shared, call};
use crate::photos::{MOST_COPY, MOST_ORIGINAL, Wanted, wanted};

#[derive(Serialize)]
#[serde(rename_all = "kebab-case")]
struct Capabilities {
    exchange: u32,
    entries_per_push: usize,
    bytes_per_push: usize,
    entries_per_page: usize,
    photo_bytes: i64,
    copy_bytes: i64,
    now_ms: i64,
}

pub async fn capabilities(State(office): State<Shared>, headers: HeaderMap) -> Result<Response, Fault> {
    let said = Capabilities {
        exchange: 1,
        entries_per_push: MOST_ENTRIES,
        bytes_per_push: MOST_BYTES,
        entries_per_page: MOST_ENTRIES,
        photo_bytes: MOST_ORIGINAL,
        copy_bytes: MOST_COPY,
        now_ms: office.now(),
    };
    body::answer(&headers, StatusCode::OK, &said)
}

/// What a query says, or a sentence about it.
pub fn asked<T>(query: Result<Query<T>, QueryRejection>) -> Result<T, Fault> {
    query.map(|Query(asked)| asked).map_err(|e| Fault::unreadable(format!("{}.", e.body_text())))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Of {
    of: Option<String>,
}

pub async fn push(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    of: Result<Query<Of>, QueryRejection>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response, Fault> {
    let of: DeviceId = match asked(of)?.of {
        None => phone.device,
        Some(of) => of.parse().map_err(|_| Fault::unreadable("`of` is a device: 64 hex digits."))?,
    };
    let push: Push = body::json(&headers, body, MOST_BYTES).await?;
    if push.entries.len() > MOST_ENTRIES {
        let say = format!("At most {MOST_ENTRIES} entries are taken at once. Send them in smaller parts.");
        return Err(Fault::refused(StatusCode::PAYLOAD_TOO_LARGE, "too-many", say));
    }
    let done = call(&office, move |office| {
        // A withdrawn phone hands nothing on: what others wrote comes from them.
        if phone.withdrawn && of != phone.device {
            let say = "This phone was withdrawn: it may send its own entries only.";
            return Err(Fault::refused(StatusCode::FORBIDDEN, "device-withdrawn", say));
        }
        if of == office.key.device() {
            return Err(Fault::refused(
                StatusCode::FORBIDDEN,
                "not-yours",
                "The office's own entries are here already.",
            ));
        }
        // Signatures are checked before anything is held in the database.
        let offered: Vec<_> = push.entries.iter().map(exchange::WireEntry::open).collect();
        let now = office.now();
        office.change(|tx| exchange::push(tx, now, phone.device, of, &offered))
    })
    .await?;
    body::answer(&headers, StatusCode::OK, &done)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct After {
    #[serde(default)]
    after: String,
    limit: Option<usize>,
    #[serde(default)]
    own: u8,
}

pub async fn pull(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    after: Result<Query<After>, QueryRejection>,
    headers: HeaderMap,
) -> Result<Response, Fault> {
    let After { after, limit, own } = asked(after)?;
    let cursor = Cursor::read(&after)?;
    let page = call(&office, move |office| {
        let limit = limit.unwrap_or(MOST_ENTRIES);
        office.read(|tx| exchange::pull(tx, phone.device, own == 1, &cursor, limit))
    })
    .await?;
    body::answer(&headers, StatusCode::OK, &page)
}

pub async fn digest(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    headers: HeaderMap,
) -> Result<Response, Fault> {
    let sums = call(&office, move |office| office.read(|tx| exchange::digest(tx, phone.device))).await?;
    body::answer(&headers, StatusCode::OK, &sums)
}

#[derive(Serialize)]
struct AllWanted {
    wanted: Vec<Wanted>,
}

pub async fn photos_wanted(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    headers: HeaderMap,
) -> Result<Response, Fault> {
    let wanted = call(&office, move |office| office.read(|tx| wanted(tx, phone.device))).await?;
    body::answer(&headers, StatusCode::OK, &AllWanted { wanted })
}
