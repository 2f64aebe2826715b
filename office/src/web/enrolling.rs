//! `POST /enrol`.

use axum::Extension;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;

use super::body;
use super::guard::Origin;
use crate::enrol::{self, Ask};
use crate::fault::Fault;
use crate::office::{Shared, call};

/// Bytes of a request to enrol at most.
const MOST: usize = 4096;

pub async fn enrol(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response, Fault> {
    let ask: Ask = body::json(&headers, body, MOST).await?;
    let done = call(&office, move |office| enrol::enrol(office, &ask, &origin.0)).await?;
    body::answer(&headers, StatusCode::CREATED, &done)
}
