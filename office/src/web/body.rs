//! What comes in, bounded while it streams; what goes out, compressed if the caller takes that.

use std::io::{Read, Write};

use axum::body::{Body, Bytes};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use flate2::Compression;
use flate2::read::MultiGzDecoder;
use flate2::write::GzEncoder;
use http_body_util::{BodyExt, Limited};
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::error::{Code, OfficeError};

/// Answers shorter than this are not worth compressing.
const WORTH: usize = 1024;

fn too_large(most: usize) -> OfficeError {
    let say = format!("This is more than is taken at once: at most {most} bytes. Send it in smaller parts.");
    OfficeError::refused(StatusCode::PAYLOAD_TOO_LARGE, Code::TooLarge, say)
}

/// The whole body, at most `most` bytes before and after gzip is taken off.
pub async fn whole(headers: &HeaderMap, body: Body, most: usize) -> Result<Vec<u8>, OfficeError> {
    let taken = Limited::new(body, most).collect().await;
    let bytes = taken
        .map_err(|e| match e.downcast::<http_body_util::LengthLimitError>() {
            Ok(_) => too_large(most),
            Err(_) => OfficeError::refused(
                StatusCode::BAD_REQUEST,
                Code::BrokeOff,
                "What was sent broke off on the way. Send it again.",
            ),
        })?
        .to_bytes();
    match headers.get(header::CONTENT_ENCODING).map(HeaderValue::as_bytes) {
        None | Some(b"identity") => Ok(bytes.into()),
        Some(b"gzip") => unpacked(&bytes, most),
        Some(_) => {
            let say = "This takes bodies as they are, or with gzip.";
            Err(OfficeError::refused(StatusCode::UNSUPPORTED_MEDIA_TYPE, Code::Encoding, say))
        }
    }
}

/// Takes gzip off; a few bytes that would become many are told from that, not from memory running out.
fn unpacked(bytes: &[u8], most: usize) -> Result<Vec<u8>, OfficeError> {
    let mut out = Vec::new();
    MultiGzDecoder::new(bytes)
        .take(most as u64 + 1)
        .read_to_end(&mut out)
        .map_err(|_| OfficeError::unreadable("The gzip of the body is damaged or broke off. Send it again."))?;
    if out.len() > most { Err(too_large(most)) } else { Ok(out) }
}

/// A body of JSON.
pub async fn json<T: DeserializeOwned>(headers: &HeaderMap, body: Body, most: usize) -> Result<T, OfficeError> {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|t| t.to_str().ok()).unwrap_or_default();
    if !kind.split(';').next().is_some_and(|t| t.trim().eq_ignore_ascii_case("application/json")) {
        let say = "This takes application/json only.";
        return Err(OfficeError::refused(StatusCode::UNSUPPORTED_MEDIA_TYPE, Code::NotJson, say));
    }
    let bytes = whole(headers, body, most).await?;
    serde_json::from_slice(&bytes).map_err(|e| OfficeError::unreadable(format!("This could not be read: {e}.")))
}

/// An answer of JSON, compressed if the caller takes gzip and it is worth it.
pub fn answer(headers: &HeaderMap, status: StatusCode, said: &impl Serialize) -> Result<Response, OfficeError> {
    let text =
        serde_json::to_vec(said).map_err(|e| OfficeError::broken(&format!("an answer could not be written: {e}")))?;
    let takes = headers.get_all(header::ACCEPT_ENCODING).iter().filter_map(|v| v.to_str().ok());
    let gzip = takes.flat_map(|v| v.split(',')).any(|coding| {
        let (name, weight) = coding.split_once(';').unwrap_or((coding, ""));
        name.trim().eq_ignore_ascii_case("gzip") && weight.replace(' ', "") != "q=0"
    });
    let kind = (header::CONTENT_TYPE, HeaderValue::from_static("application/json"));
    if !gzip || text.len() < WORTH {
        return Ok((status, [kind], Bytes::from(text)).into_response());
    }
    let mut packed = GzEncoder::new(Vec::with_capacity(text.len() / 2), Compression::fast());
    let packed = packed.write_all(&text).and_then(|()| packed.finish());
    let packed = packed.map_err(|e| OfficeError::broken(&format!("an answer could not be compressed: {e}")))?;
    let coding = (header::CONTENT_ENCODING, HeaderValue::from_static("gzip"));
    let vary = (header::VARY, HeaderValue::from_static("accept-encoding"));
    Ok((status, [kind, coding, vary], Bytes::from(packed)).into_response())
}
