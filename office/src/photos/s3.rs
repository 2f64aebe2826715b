//! A store that speaks S3, reached by the HTTP client that the office has anyway: object_store's own would bring a second one, with a
//! second library of ciphers compiled from C.
//!
//! Promises: no call takes longer than [`PATIENCE`], and none is begun anew after that; no answer is larger than [`MAX_ANSWER`]; a store
//! that is silent leaves threads for the database; nothing goes in the clear unless `AWS_ALLOW_HTTP` allows it. Start at [`store`].

use std::io;
use std::sync::Arc;
use std::time::Duration;

use async_trait::async_trait;
use axum::body::Bytes;
use http_body_util::BodyExt;
use object_store::aws::{AmazonS3, AmazonS3Builder};
use object_store::client::{
    HttpClient, HttpConnector, HttpError, HttpErrorKind, HttpRequest, HttpResponse, HttpService,
};
use object_store::{ClientConfigKey, ClientOptions, RetryConfig};
use tokio::sync::Semaphore;
use ureq::http::Request;
use ureq::{Agent, Error};

use super::MAX_ORIGINAL;

/// How long one call may take, in all. A phone waits meanwhile, and calls again by itself.
const PATIENCE: Duration = Duration::from_secs(30);
/// How long a connection may take to come about.
const CONNECTING: Duration = Duration::from_secs(5);
/// Calls at once. Each holds a thread that the database may need as well, and there are 64.
const AT_ONCE: usize = 16;
/// Bytes of an answer at most: a photo, or what a store says of an error.
const MAX_ANSWER: u64 = MAX_ORIGINAL as u64 + (1 << 20);

/// The bucket at `s3://BUCKET`; address, region and key come from the environment, as `AWS_` variables.
pub(super) fn store(url: &str) -> object_store::Result<AmazonS3> {
    let retry = RetryConfig { max_retries: 2, retry_timeout: PATIENCE, ..RetryConfig::default() };
    AmazonS3Builder::from_env().with_url(url).with_retry(retry).with_http_connector(Connector).build()
}

#[derive(Debug)]
struct Connector;

impl HttpConnector for Connector {
    fn connect(&self, options: &ClientOptions) -> object_store::Result<HttpClient> {
        let in_the_clear = options.get_config_value(&ClientConfigKey::AllowHttp).as_deref() == Some("true");
        let config = Agent::config_builder()
            .https_only(!in_the_clear)
            .http_status_as_error(false)
            // What is signed for one address means nothing at another.
            .max_redirects(0)
            .timeout_connect(Some(CONNECTING))
            .timeout_global(Some(PATIENCE));
        Ok(HttpClient::new(Caller { agent: config.build().into(), turns: Arc::new(Semaphore::new(AT_ONCE)) }))
    }
}

#[derive(Debug)]
struct Caller {
    agent: Agent,
    turns: Arc<Semaphore>,
}

#[async_trait]
impl HttpService for Caller {
    async fn call(&self, asked: HttpRequest) -> Result<HttpResponse, HttpError> {
        let (parts, body) = asked.into_parts();
        let body = body.collect().await?.to_bytes();
        let turn = Arc::clone(&self.turns).acquire_owned().await;
        let turn = turn.map_err(|e| HttpError::new(HttpErrorKind::Unknown, e))?;
        let agent = self.agent.clone();
        let called = tokio::task::spawn_blocking(move || {
            let _turn = turn;
            call(&agent, Request::from_parts(parts, body))
        });
        called.await.map_err(|e| HttpError::new(HttpErrorKind::Unknown, e))?
    }
}

fn call(agent: &Agent, asked: Request<Bytes>) -> Result<HttpResponse, HttpError> {
    let (parts, body) = asked.into_parts();
    let answer = if body.is_empty() && !matches!(parts.method.as_str(), "PUT" | "POST") {
        agent.run(Request::from_parts(parts, ()))
    } else {
        agent.run(Request::from_parts(parts, &body[..]))
    };
    let (parts, body) = answer.map_err(failed)?.into_parts();
    let bytes = body.into_with_config().limit(MAX_ANSWER).read_to_vec().map_err(failed)?;
    Ok(HttpResponse::from_parts(parts, bytes.into()))
}

/// What went wrong, in the kinds by which object_store decides whether to try again.
fn failed(error: Error) -> HttpError {
    let kind = match &error {
        Error::Timeout(_) => HttpErrorKind::Timeout,
        Error::HostNotFound | Error::ConnectionFailed => HttpErrorKind::Connect,
        Error::Io(e) if e.kind() == io::ErrorKind::ConnectionRefused => HttpErrorKind::Connect,
        // A certificate that does not hold will not hold at the next try.
        Error::Io(e) if e.kind() == io::ErrorKind::InvalidData => HttpErrorKind::Unknown,
        Error::Io(_) => HttpErrorKind::Interrupted,
        _ => HttpErrorKind::Unknown,
    };
    HttpError::new(kind, error)
}
