//! What comes in, bounded; and what is said when it is refused.

use std::borrow::Cow;

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;

/// All that a person can type on one screen is far below this.
pub const MAX_TYPED: usize = 256 * 1024;

/// A photo of 100 megapixels as JPEG is below this.
pub const MAX_PHOTO: usize = 40 * 1024 * 1024;

/// A frame of a camera, one byte a pixel: no preview is larger.
pub const MAX_FRAME: usize = 4096 * 2304;

/// An answer that is not what was asked for: one or two sentences for the person.
pub struct Say(StatusCode, Cow<'static, str>);

impl Say {
    /// Says `text` under `status`.
    pub fn new(status: StatusCode, text: impl Into<Cow<'static, str>>) -> Self {
        Self(status, text.into())
    }

    /// Something in here broke; nothing of its inside is shown.
    pub fn fault() -> Self {
        const FAULT: &str = "The desk met a fault of its own; what it had kept before is on disk. Reload the page and \
                             look at the screen before you go on.";
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, FAULT)
    }
}

impl IntoResponse for Say {
    fn into_response(self) -> Response {
        (self.0, format!("{}\n", self.1)).into_response()
    }
}

/// The whole body, if it was not too large and did not break off.
pub fn whole(body: Result<Bytes, BytesRejection>) -> Result<Bytes, Say> {
    body.map_err(|e| match e.status() {
        status @ StatusCode::PAYLOAD_TOO_LARGE => Say::new(
            status,
            format!(
                "This is more than the desk takes at once: {} KiB of text, or a photo of {} MiB. Nothing of it was kept.",
                MAX_TYPED / 1024,
                MAX_PHOTO / 1024 / 1024
            ),
        ),
        status => Say::new(status, "What was sent broke off on the way. Send it once more."),
    })
}

/// Whether the body says that it is JSON.
pub fn is_json(headers: &HeaderMap) -> bool {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|t| t.to_str().ok()).unwrap_or_default();
    kind.split(';').next().is_some_and(|t| t.trim().eq_ignore_ascii_case("application/json"))
}

/// The body as JSON, and as nothing else: a plain HTML form of another page cannot send this kind.
pub fn json<T: for<'a> Deserialize<'a>>(headers: &HeaderMap, body: Result<Bytes, BytesRejection>) -> Result<T, Say> {
    if !is_json(headers) {
        return Err(Say::new(StatusCode::UNSUPPORTED_MEDIA_TYPE, "This takes application/json only."));
    }
    serde_json::from_slice(&whole(body)?)
        .map_err(|e| Say::new(StatusCode::BAD_REQUEST, format!("This could not be read: {e}.")))
}
