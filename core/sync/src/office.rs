//! The office as the phone calls it: over HTTP with TLS, or in a test over anything that is a [`OfficeLink`].

use std::io::Read;
use std::sync::Arc;
use std::time::Duration;

use serde::Serialize;
use serde::de::DeserializeOwned;
use ureq::Agent;
use ureq::http::Request;

use super::no_answer;
use super::rules::{ExchangeTrouble, Size};
use stillbar_journal::DeviceId;
use stillbar_protocol::photos::{LENGTH, METADATA, OCTETS, OFFSET, RESUMABLE, TUS, metadata};
use stillbar_protocol::{AllWanted, Ask, Capabilities, Digest, Enrolled, Of, Page, Pull, Push, Pushed, Refusal, paths};

/// Most bytes of an answer that is read.
const MAX_ANSWER: u64 = 16 * 1024 * 1024;
/// Most bytes of a refusal that is read.
const MAX_REFUSAL: u64 = 64 * 1024;
/// A call that brings nothing for so long is over.
const PATIENCE: Duration = Duration::from_secs(30);

/// A call to the office.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Call {
    /// The method of HTTP.
    pub method: &'static str,
    /// Path and query.
    pub path: String,
    /// Names in lower case, and values.
    pub headers: Vec<(&'static str, String)>,
    /// What is sent along; nothing for a method that has no body.
    pub body: Vec<u8>,
}

/// What came back.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HeardAnswer {
    /// The status of HTTP.
    pub status: u16,
    /// Names in lower case, and values.
    pub headers: Vec<(String, String)>,
    /// The body, no longer than is looked at.
    pub body: Vec<u8>,
}

/// What carries calls to an office.
pub trait OfficeLink: Send + Sync {
    /// Carries one call. The error says why no answer came; whether the call arrived is not known then.
    fn call(&self, call: &Call) -> Result<HeardAnswer, String>;
}

/// An office and the token for it.
#[derive(Clone)]
pub struct OfficeClient {
    link: Arc<dyn OfficeLink>,
    token: String,
}

/// What an office answers to the wish to send a photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PutBegun {
    /// It has it.
    Here,
    /// Send it there.
    At(String),
}

type CallOutcome<T> = Result<T, ExchangeTrouble>;

impl OfficeClient {
    /// The office at `url`, such as `https://office.example`. `token` is empty before the device has joined.
    pub fn new(url: &str, token: &str) -> OfficeClient {
        OfficeClient::over(Arc::new(Http::new(url)), token)
    }

    /// The office at the other end of `link`.
    pub fn over(link: Arc<dyn OfficeLink>, token: &str) -> OfficeClient {
        OfficeClient { link, token: token.to_owned() }
    }

    /// What it can do.
    pub fn capabilities(&self) -> CallOutcome<Capabilities> {
        self.get(paths::CAPABILITIES)
    }

    /// Joins it.
    pub fn enrol(&self, ask: &Ask) -> CallOutcome<Enrolled> {
        self.post(paths::ENROL, ask)
    }

    /// Hands over entries of the device that the token is for, or `of` another one.
    pub fn push(&self, push: &Push, of: Option<DeviceId>) -> CallOutcome<Pushed> {
        self.post(&Of { of }.path(), push)
    }

    /// A page of what others wrote; with `own`, of what the device itself wrote too.
    pub fn pull(&self, after: &str, limit: u32, own: bool) -> CallOutcome<Page> {
        self.get(&Pull { after: after.to_owned(), limit: Some(limit), own: own.into() }.path())
    }

    /// Counts and hashes.
    pub fn digest(&self) -> CallOutcome<Digest> {
        self.get(paths::DIGEST)
    }

    /// Photos that it lacks.
    pub fn wanted(&self) -> CallOutcome<AllWanted> {
        self.get(paths::WANTED)
    }

    /// A copy of a photo that somebody else took.
    pub fn photo(&self, name: &str) -> CallOutcome<Vec<u8>> {
        let answer = self.call("GET", &format!("{}/{name}", paths::PHOTOS), Vec::new(), Vec::new())?;
        refused(&answer)?;
        Ok(answer.body)
    }

    /// Begins to send a photo, or learns that it is there.
    pub fn begin(&self, sha256: &str, size: Size, length: u64) -> CallOutcome<PutBegun> {
        let headers = vec![tus(), (LENGTH, length.to_string()), (METADATA, metadata(sha256, size))];
        let answer = self.call("POST", paths::PHOTOS, headers, Vec::new())?;
        refused(&answer)?;
        Ok(header(&answer, "location").map_or(PutBegun::Here, |place| PutBegun::At(place.to_owned())))
    }

    /// How many bytes of an upload are there; `None` if it is not known any more.
    pub fn there(&self, place: &str) -> CallOutcome<Option<u64>> {
        let answer = self.call("HEAD", place, vec![tus()], Vec::new())?;
        if matches!(answer.status, 404 | 410) {
            return Ok(None);
        }
        refused(&answer)?;
        offset(&answer).map(Some)
    }

    /// Sends the next piece. Returns how many bytes are there after it.
    pub fn add(&self, place: &str, from: u64, piece: &[u8]) -> CallOutcome<u64> {
        let headers = vec![tus(), (OFFSET, from.to_string()), ("content-type", OCTETS.to_owned())];
        let answer = self.call("PATCH", place, headers, piece.to_vec())?;
        // Somebody else, or an earlier try, has sent more: go on from there.
        if answer.status == 409 {
            return offset(&answer);
        }
        refused(&answer)?;
        offset(&answer)
    }

    fn call(
        &self,
        method: &'static str,
        path: &str,
        mut headers: Vec<(&'static str, String)>,
        body: Vec<u8>,
    ) -> CallOutcome<HeardAnswer> {
        if !self.token.is_empty() {
            headers.push(("authorization", format!("Bearer {}", self.token)));
        }
        self.link.call(&Call { method, path: path.to_owned(), headers, body }).map_err(ExchangeTrouble::Away)
    }

    fn get<T: DeserializeOwned>(&self, path: &str) -> CallOutcome<T> {
        read(&self.call("GET", path, Vec::new(), Vec::new())?)
    }

    fn post<T: DeserializeOwned>(&self, path: &str, what: &impl Serialize) -> CallOutcome<T> {
        let plain = serde_json::to_vec(what).map_err(|e| ExchangeTrouble::Garbled(e.to_string()))?;
        let packed = pack(&plain).map_err(|e| ExchangeTrouble::Garbled(e.to_string()))?;
        let headers = vec![("content-type", "application/json".into()), ("content-encoding", "gzip".into())];
        read(&self.call("POST", path, headers, packed)?)
    }
}

/// HTTP, with TLS where the address says so.
struct Http {
    agent: Agent,
    url: String,
}

impl Http {
    fn new(url: &str) -> Http {
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .timeout_connect(Some(Duration::from_secs(10)))
            .timeout_send_request(Some(PATIENCE))
            .timeout_recv_response(Some(PATIENCE))
            .timeout_global(Some(4 * PATIENCE))
            .max_redirects(0)
            .build();
        Http { agent: config.into(), url: url.trim_end_matches('/').to_owned() }
    }
}

impl OfficeLink for Http {
    fn call(&self, call: &Call) -> Result<HeardAnswer, String> {
        let mut request = Request::builder().method(call.method).uri(format!("{}{}", self.url, call.path));
        for (name, value) in &call.headers {
            request = request.header(*name, value);
        }
        let unsent = |e: ureq::http::Error| e.to_string();
        let answer = match call.method {
            "GET" | "HEAD" => self.agent.run(request.body(()).map_err(unsent)?),
            _ => self.agent.run(request.body(&call.body[..]).map_err(unsent)?),
        };
        let mut answer = answer.map_err(|e| no_answer(&e))?;
        let text = |v: &ureq::http::HeaderValue| v.to_str().ok().map(str::to_owned);
        let headers = answer.headers().iter().filter_map(|(n, v)| Some((n.as_str().to_owned(), text(v)?))).collect();
        let status = answer.status().as_u16();
        let body = if (200..300).contains(&status) {
            answer.body_mut().with_config().limit(MAX_ANSWER).read_to_vec().map_err(|e| no_answer(&e))?
        } else {
            answer.body_mut().with_config().limit(MAX_REFUSAL).read_to_vec().unwrap_or_default()
        };
        Ok(HeardAnswer { status, headers, body })
    }
}

fn pack(plain: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut packer = flate2::read::GzEncoder::new(plain, flate2::Compression::fast());
    let mut packed = Vec::new();
    packer.read_to_end(&mut packed)?;
    Ok(packed)
}

/// The header that every call about an upload has.
fn tus() -> (&'static str, String) {
    (RESUMABLE, TUS.into())
}

fn header<'a>(answer: &'a HeardAnswer, name: &str) -> Option<&'a str> {
    answer.headers.iter().find(|(n, _)| n == name).map(|(_, v)| v.as_str())
}

fn offset(answer: &HeardAnswer) -> CallOutcome<u64> {
    let said = header(answer, OFFSET).and_then(|v| v.parse().ok());
    said.ok_or_else(|| ExchangeTrouble::Garbled("an upload without its offset".into()))
}

fn read<T: DeserializeOwned>(answer: &HeardAnswer) -> CallOutcome<T> {
    refused(answer)?;
    serde_json::from_slice(&answer.body).map_err(|e| ExchangeTrouble::Garbled(e.to_string()))
}

/// Any answer that is not a success, as the trouble that it is.
fn refused(answer: &HeardAnswer) -> CallOutcome<()> {
    let status = answer.status;
    if (200..300).contains(&status) {
        return Ok(());
    }
    let said: Refusal = serde_json::from_slice(&answer.body).unwrap_or_default();
    let say = if said.say.is_empty() { format!("status {status}") } else { said.say };
    Err(match status {
        401 => ExchangeTrouble::Unknown(say),
        429 | 500..=599 => ExchangeTrouble::Busy(say),
        300..=399 => ExchangeTrouble::Garbled(format!("status {status}")),
        _ => ExchangeTrouble::Refused(say),
    })
}
