//! `POST /enrol`.

use axum::Extension;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;
use stillbar_protocol::Ask;
use stillbar_protocol::limits::ENROL_BYTES;

use super::body;
use super::guard::Origin;
use crate::enrol;
use crate::error::OfficeError;
use crate::office::{Shared, call};

pub async fn enrol(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response, OfficeError> {
    let ask: Ask = body::json(&headers, body, ENROL_BYTES).await?;
    let done = call(&office, move |office| enrol::enrol(office, &ask, &origin.0)).await?;
    body::answer(&headers, StatusCode::CREATED, &done)
}
