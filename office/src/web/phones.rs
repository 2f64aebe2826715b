//! What phones call: docs/exchange.md.

use axum::Extension;
use axum::body::Body;
use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;
use stillbar_protocol::limits::COPY_BYTES;
use stillbar_protocol::{AllWanted, Capabilities, EXCHANGE, NEWEST_ENTRY, OLDEST_ENTRY, Of, Pull, Push};

use super::body;
use super::guard::Phone;
use crate::error::{Code, OfficeError};
use crate::exchange::{self, Cursor, MAX_BYTES, MAX_ENTRIES};
use crate::office::{Shared, call};
use crate::photos::{MAX_ORIGINAL, wanted};

pub async fn capabilities(State(office): State<Shared>, headers: HeaderMap) -> Result<Response, OfficeError> {
    let said = Capabilities {
        exchange: EXCHANGE,
        oldest: OLDEST_ENTRY,
        newest: NEWEST_ENTRY,
        entries_per_push: MAX_ENTRIES as u32,
        bytes_per_push: MAX_BYTES as u64,
        entries_per_page: MAX_ENTRIES as u32,
        photo_bytes: MAX_ORIGINAL.unsigned_abs(),
        copy_bytes: COPY_BYTES.unsigned_abs(),
        now_ms: office.now(),
    };
    body::answer(&headers, StatusCode::OK, &said)
}

/// What a query says, or a sentence about it.
pub fn asked<T>(query: Result<Query<T>, QueryRejection>) -> Result<T, OfficeError> {
    query.map(|Query(asked)| asked).map_err(|e| OfficeError::unreadable(format!("{}.", e.body_text())))
}

pub async fn push(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    of: Result<Query<Of>, QueryRejection>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response, OfficeError> {
    let of = asked(of)?.of.unwrap_or(phone.device);
    let push: Push = body::json(&headers, body, MAX_BYTES).await?;
    if push.entries.len() > MAX_ENTRIES {
        let say = format!("At most {MAX_ENTRIES} entries are taken at once. Send them in smaller parts.");
        return Err(OfficeError::refused(StatusCode::PAYLOAD_TOO_LARGE, Code::TooMany, say));
    }
    let done = call(&office, move |office| {
        // A withdrawn phone hands nothing on: what others wrote comes from them.
        if phone.withdrawn && of != phone.device {
            let say = "This phone was withdrawn: it may send its own entries only.";
            return Err(OfficeError::refused(StatusCode::FORBIDDEN, Code::DeviceWithdrawn, say));
        }
        if of == office.key.device() {
            return Err(OfficeError::refused(
                StatusCode::FORBIDDEN,
                Code::NotYours,
                "The office's own entries are here already.",
            ));
        }
        // Signatures are checked before anything is held in the database.
        let offered: Vec<_> = push.entries.iter().map(exchange::open).collect();
        let now = office.now();
        office.change(|tx| exchange::push(tx, now, phone.device, of, &offered))
    })
    .await?;
    body::answer(&headers, StatusCode::OK, &done)
}

pub async fn pull(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    after: Result<Query<Pull>, QueryRejection>,
    headers: HeaderMap,
) -> Result<Response, OfficeError> {
    let Pull { after, limit, own } = asked(after)?;
    let cursor = Cursor::read(&after)?;
    let page = call(&office, move |office| {
        let limit = limit.map_or(MAX_ENTRIES, |limit| limit as usize);
        office.read(|tx| exchange::pull(tx, phone.device, own == 1, &cursor, limit))
    })
    .await?;
    body::answer(&headers, StatusCode::OK, &page)
}

pub async fn digest(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    headers: HeaderMap,
) -> Result<Response, OfficeError> {
    let sums = call(&office, move |office| office.read(|tx| exchange::digest(tx, phone.device))).await?;
    body::answer(&headers, StatusCode::OK, &sums)
}

pub async fn photos_wanted(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    headers: HeaderMap,
) -> Result<Response, OfficeError> {
    let wanted = call(&office, move |office| office.read(|tx| wanted(tx, phone.device))).await?;
    body::answer(&headers, StatusCode::OK, &AllWanted { wanted })
}
