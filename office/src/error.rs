//! What can go wrong, and what is said about it.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use axum::{Extension, Json};
pub use stillbar_protocol::Code;
use stillbar_protocol::Refusal;

use crate::log::RefusedCode;

/// Why something was not done. As text it is what went wrong, whole, for whoever runs the office; what the caller is told is
/// [`OfficeError::says`].
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OfficeError {
    /// The caller asked for what cannot be had: told to them.
    #[error("{say}")]
    Refused {
        /// The HTTP status.
        status: u16,
        /// A word for programs.
        code: Code,
        /// One sentence that says what to do.
        say: String,
    },
    /// The database or the store of photos does not answer now. The caller comes again.
    #[error("{0}")]
    Busy(String),
    /// The database asks for the same transaction once more: two of them met.
    #[error("the database asks for the same once more")]
    Again,
    /// Something in here is broken: told in the log, not to the caller.
    #[error("{0}")]
    Broken(String),
}

impl OfficeError {
    /// A refusal that is told to the caller.
    pub fn refused(status: StatusCode, code: Code, say: impl Into<String>) -> OfficeError {
        OfficeError::Refused { status: status.as_u16(), code, say: say.into() }
    }

    /// What was sent cannot be understood.
    pub fn unreadable(say: impl Into<String>) -> OfficeError {
        OfficeError::refused(StatusCode::BAD_REQUEST, Code::Unreadable, say)
    }

    /// There is no such thing here, or it is not the caller's to see: both look the same from outside.
    pub fn nothing(say: impl Into<String>) -> OfficeError {
        OfficeError::refused(StatusCode::NOT_FOUND, Code::NotFound, say)
    }

    /// A fault of our own.
    pub fn broken(what: &str) -> OfficeError {
        OfficeError::Broken(what.to_owned())
    }

    /// The sentence for the caller.
    pub fn says(&self) -> &str {
        match self {
            OfficeError::Refused { say, .. } => say,
            OfficeError::Busy(_) | OfficeError::Again => {
                "The office does not get at what it keeps now. Nothing of this was kept: try again in a minute."
            }
            OfficeError::Broken(_) => {
                "The office met a fault of its own. Nothing of this was kept: try again, and tell who runs the office."
            }
        }
    }

    /// The same, once what the caller is not told is in the log, without anything that was sent.
    pub fn noted(self) -> OfficeError {
        self.note();
        self
    }

    fn note(&self) {
        match self {
            OfficeError::Busy(what) => tracing::warn!(what, "busy"),
            OfficeError::Broken(what) => tracing::error!(what, "fault"),
            OfficeError::Refused { .. } | OfficeError::Again => {}
        }
    }

    /// Status, word and sentence for the caller. What they are not told goes into the log.
    pub fn told(&self) -> (StatusCode, Code, String) {
        self.note();
        let (status, code) = match self {
            OfficeError::Refused { status, code, .. } => {
                (StatusCode::from_u16(*status).unwrap_or(StatusCode::BAD_REQUEST), *code)
            }
            OfficeError::Busy(_) | OfficeError::Again => (StatusCode::SERVICE_UNAVAILABLE, Code::Busy),
            OfficeError::Broken(_) => (StatusCode::INTERNAL_SERVER_ERROR, Code::Fault),
        };
        (status, code, self.says().to_owned())
    }
}

impl IntoResponse for OfficeError {
    fn into_response(self) -> Response {
        let (status, error, say) = self.told();
        let mut answer = (status, Extension(RefusedCode(error)), Json(Refusal { error, say })).into_response();
        if status == StatusCode::UNAUTHORIZED {
            answer.headers_mut().insert(header::WWW_AUTHENTICATE, HeaderValue::from_static("Bearer"));
        }
        if status == StatusCode::SERVICE_UNAVAILABLE || status == StatusCode::TOO_MANY_REQUESTS {
            answer.headers_mut().insert(header::RETRY_AFTER, HeaderValue::from_static("60"));
        }
        answer
    }
}
