//! The office as the phone calls it: over HTTP with TLS, or in a test over anything.

use std::io::Read;
use std::time::Duration;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::Serialize;
use serde::de::DeserializeOwned;
use ureq::http::Response;
use ureq::{Agent, Body, RequestBuilder};

use super::rules::{Size, Trouble};
use super::wire::{AllWanted, Ask, Capabilities, Digest, Enrolled, Page, Push, Pushed, Refusal};

/// Most bytes of an answer that is read.
const MOST_ANSWER: u64 = 16 * 1024 * 1024;
/// A call that brings nothing for so long is over.
const PATIENCE: Duration = Duration::from_secs(30);

/// An office and the token for it.
#[derive(Clone)]
pub struct Office {
    agent: Agent,
    url: String,
    token: String,
}

/// What an office answers to the wish to send a photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Begun {
    /// It has it.
    Here,
    /// Send it there.
    At(String),
}

type Outcome<T> = Result<T, Trouble>;

impl Office {
    /// The office at `url`, such as `https://office.example`. `token` is empty before the device has joined.
    pub fn new(url: &str, token: &str) -> Office {
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .timeout_connect(Some(Duration::from_secs(10)))
            .timeout_send_request(Some(PATIENCE))
            .timeout_recv_response(Some(PATIENCE))
            .timeout_global(Some(4 * PATIENCE))
            .max_redirects(0)
            .build();
        Office { agent: config.into(), url: url.trim_end_matches('/').to_owned(), token: token.to_owned() }
    }

    /// What it can do.
    pub fn capabilities(&self) -> Outcome<Capabilities> {
        self.get("/capabilities")
    }

    /// Joins it.
    pub fn enrol(&self, ask: &Ask) -> Outcome<Enrolled> {
        self.post("/enrol", ask)
    }

    /// Hands over the device's own entries.
    pub fn push(&self, push: &Push) -> Outcome<Pushed> {
        self.post("/entries", push)
    }

    /// A page of what others wrote.
    pub fn pull(&self, after: &str, limit: usize) -> Outcome<Page> {
        self.get(&format!("/entries?after={after}&limit={limit}"))
    }

    /// Counts and hashes.
    pub fn digest(&self) -> Outcome<Digest> {
        self.get("/digest")
    }

    /// Photos that it lacks.
    pub fn wanted(&self) -> Outcome<AllWanted> {
        self.get("/wanted")
    }

    /// A copy of a photo that somebody else took.
    pub fn photo(&self, name: &str) -> Outcome<Vec<u8>> {
        let mut answer = self.with_token(self.agent.get(self.at(&format!("/photos/{name}")))).call().map_err(away)?;
        refused(&mut answer)?;
        bytes(&mut answer)
    }

    /// Begins to send a photo, or learns that it is there.
    pub fn begin(&self, sha256: &str, size: Size, length: u64) -> Outcome<Begun> {
        let named = format!("sha256 {},size {}", STANDARD.encode(sha256), STANDARD.encode(size.name()));
        let request = self.tus(self.agent.post(self.at("/photos")));
        let request = request.header("upload-length", length.to_string()).header("upload-metadata", named);
        let mut answer = request.send_empty().map_err(away)?;
        refused(&mut answer)?;
        match answer.headers().get("location").and_then(|v| v.to_str().ok()) {
            Some(place) => Ok(Begun::At(place.to_owned())),
            None => Ok(Begun::Here),
        }
    }

    /// How many bytes of an upload are there; `None` if it is not known any more.
    pub fn there(&self, place: &str) -> Outcome<Option<u64>> {
        let mut answer = self.tus(self.agent.head(self.at(place))).call().map_err(away)?;
        if matches!(answer.status().as_u16(), 404 | 410) {
            return Ok(None);
        }
        refused(&mut answer)?;
        offset(&answer).map(Some)
    }

    /// Sends the next piece. Returns how many bytes are there after it.
    pub fn add(&self, place: &str, from: u64, piece: &[u8]) -> Outcome<u64> {
        let request = self.tus(self.agent.patch(self.at(place)));
        let request = request.header("upload-offset", from.to_string());
        let request = request.header("content-type", "application/offset+octet-stream");
        let mut answer = request.send(piece).map_err(away)?;
        // Somebody else, or an earlier try, has sent more: go on from there.
        if answer.status().as_u16() == 409 {
            return offset(&answer);
        }
        refused(&mut answer)?;
        offset(&answer)
    }

    fn at(&self, path: &str) -> String {
        format!("{}{path}", self.url)
    }

    fn with_token<B>(&self, request: RequestBuilder<B>) -> RequestBuilder<B> {
        if self.token.is_empty() { request } else { request.header("authorization", format!("Bearer {}", self.token)) }
    }

    fn tus<B>(&self, request: RequestBuilder<B>) -> RequestBuilder<B> {
        self.with_token(request).header("tus-resumable", "1.0.0")
    }

    fn get<T: DeserializeOwned>(&self, path: &str) -> Outcome<T> {
        read(self.with_token(self.agent.get(self.at(path))).call().map_err(away)?)
    }

    fn post<T: DeserializeOwned>(&self, path: &str, what: &impl Serialize) -> Outcome<T> {
        let plain = serde_json::to_vec(what).map_err(|e| Trouble::Garbled(e.to_string()))?;
        let packed = pack(&plain).map_err(|e| Trouble::Garbled(e.to_string()))?;
        let request = self.with_token(self.agent.post(self.at(path))).header("content-type", "application/json");
        read(request.header("content-encoding", "gzip").send(&packed[..]).map_err(away)?)
    }
}

fn pack(plain: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut packer = flate2::read::GzEncoder::new(plain, flate2::Compression::fast());
    let mut packed = Vec::new();
    packer.read_to_end(&mut packed)?;
    Ok(packed)
}

fn away(error: ureq::Error) -> Trouble {
    Trouble::Away(error.to_string())
}

fn offset(answer: &Response<Body>) -> Outcome<u64> {
    let said = answer.headers().get("upload-offset").and_then(|v| v.to_str().ok()).and_then(|v| v.parse().ok());
    said.ok_or_else(|| Trouble::Garbled("an upload without its offset".into()))
}

fn bytes(answer: &mut Response<Body>) -> Outcome<Vec<u8>> {
    answer.body_mut().with_config().limit(MOST_ANSWER).read_to_vec().map_err(away)
}

fn read<T: DeserializeOwned>(mut answer: Response<Body>) -> Outcome<T> {
    refused(&mut answer)?;
    serde_json::from_slice(&bytes(&mut answer)?).map_err(|e| Trouble::Garbled(e.to_string()))
}

/// Any answer that is not a success, as the trouble that it is.
fn refused(answer: &mut Response<Body>) -> Outcome<()> {
    let status = answer.status().as_u16();
    if (200..300).contains(&status) {
        return Ok(());
    }
    let body = answer.body_mut().with_config().limit(64 * 1024).read_to_vec().unwrap_or_default();
    let said: Refusal = serde_json::from_slice(&body).unwrap_or_default();
    let say = if said.say.is_empty() { format!("status {status}") } else { said.say };
    Err(match status {
        401 => Trouble::Unknown(say),
        429 | 500..=599 => Trouble::Busy(say),
        300..=399 => Trouble::Garbled(format!("status {status}")),
        _ => Trouble::Refused(say),
    })
}
