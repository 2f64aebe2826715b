//! Photos from and to phones: tus 1.0.0 with the extensions creation, checksum and termination.

use axum::Extension;
use axum::body::Body;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::http::header::{self, HeaderMap, HeaderName, HeaderValue};
use axum::response::{IntoResponse, Response};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use http_body_util::BodyExt;
use sha2::{Digest, Sha256};
use stillbar_core::evidence;
use stillbar_protocol::limits::{CHECKED_BYTES, PIECE_BYTES};
use stillbar_protocol::photos as tus;

use super::guard::Phone;
use crate::error::{Code, OfficeError};
use crate::office::{Shared, call};
use crate::photos::{self, MAX_ORIGINAL, Name, Upload, UploadBegun};

const RESUMABLE: HeaderName = HeaderName::from_static(tus::RESUMABLE);
const OFFSET: HeaderName = HeaderName::from_static(tus::OFFSET);
const LENGTH: HeaderName = HeaderName::from_static(tus::LENGTH);
const VERSION: HeaderValue = HeaderValue::from_static(tus::TUS);

fn number(headers: &HeaderMap, name: &HeaderName) -> Result<i64, OfficeError> {
    let text = headers.get(name).and_then(|v| v.to_str().ok()).unwrap_or_default();
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    text.parse()
        .ok()
        .filter(|_| digits)
        .ok_or_else(|| OfficeError::unreadable(format!("`{name}` is a whole number of bytes.")))
}

fn spoken(headers: &HeaderMap) -> Result<(), OfficeError> {
    if headers.get(&RESUMABLE) == Some(&VERSION) {
        return Ok(());
    }
    Err(OfficeError::refused(
        StatusCode::PRECONDITION_FAILED,
        Code::TusVersion,
        "This speaks tus 1.0.0: send `Tus-Resumable: 1.0.0`.",
    ))
}

/// Every answer of an upload says the version.
fn said(mut answer: Response) -> Response {
    answer.headers_mut().insert(RESUMABLE, VERSION);
    answer
}

fn told(done: Result<Response, OfficeError>) -> Response {
    said(done.unwrap_or_else(IntoResponse::into_response))
}

fn offset(upload: &Upload) -> [(HeaderName, String); 2] {
    [(OFFSET, upload.here.to_string()), (LENGTH, upload.length.to_string())]
}

/// `OPTIONS /photos`.
pub async fn options() -> Response {
    let headers = [
        ("tus-version", tus::TUS.to_owned()),
        ("tus-extension", tus::EXTENSIONS.to_owned()),
        ("tus-checksum-algorithm", "sha256".to_owned()),
        ("tus-max-size", MAX_ORIGINAL.to_string()),
    ];
    said((StatusCode::NO_CONTENT, headers.map(|(n, v)| (HeaderName::from_static(n), v))).into_response())
}

/// `POST /photos`.
pub async fn begin(State(office): State<Shared>, Extension(phone): Extension<Phone>, headers: HeaderMap) -> Response {
    let done = async {
        spoken(&headers)?;
        let length = number(&headers, &LENGTH)?;
        let name = metadata(&headers).ok_or_else(|| {
            OfficeError::unreadable(
                "`Upload-Metadata` names the photo: `sha256` with its hash and `size` with 320, 960 or original, each in base64.",
            )
        })?;
        photos::sweep(&office).await?;
        let begun = call(&office, move |office| photos::begin(office, phone.device, name, length)).await?;
        Ok(match begun {
            UploadBegun::Here(length) => (StatusCode::OK, [(OFFSET, length.to_string())]).into_response(),
            UploadBegun::Upload(upload) => {
                let place = (header::LOCATION, format!("/photos/up/{}", upload.id));
                (StatusCode::CREATED, [place], offset(&upload)).into_response()
            }
        })
    };
    told(done.await)
}

/// The photo that an upload says it is.
fn metadata(headers: &HeaderMap) -> Option<Name> {
    let (sha256, size) = tus::read_metadata(headers.get(tus::METADATA)?.to_str().ok()?)?;
    Name::of(&sha256, size)
}

/// `HEAD /photos/up/{id}`.
pub async fn head(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    Path(id): Path<String>,
    headers: HeaderMap,
) -> Response {
    let done = async {
        spoken(&headers)?;
        let upload = find(&office, &phone, id).await?;
        // Broken off between the last byte and its end: ended now, so that nobody waits for more.
        if upload.here == upload.length {
            photos::finish(&office, &upload).await?;
        }
        Ok((StatusCode::OK, offset(&upload)).into_response())
    };
    told(done.await)
}

async fn find(office: &Shared, phone: &Phone, id: String) -> Result<Upload, OfficeError> {
    let device = phone.device;
    call(office, move |office| office.read(|tx| photos::upload(tx, device, &id))).await
}

/// `PATCH /photos/up/{id}`.
pub async fn add(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    Path(id): Path<String>,
    headers: HeaderMap,
    body: Body,
) -> Response {
    let done = async {
        spoken(&headers)?;
        let kind = headers.get(header::CONTENT_TYPE).map(HeaderValue::as_bytes);
        if kind != Some(tus::OCTETS.as_bytes()) {
            let say = "An upload goes on with application/offset+octet-stream.";
            return Err(OfficeError::refused(StatusCode::UNSUPPORTED_MEDIA_TYPE, Code::NotOctets, say));
        }
        let from = number(&headers, &OFFSET)?;
        let mut upload = find(&office, &phone, id.clone()).await?;
        if from != upload.here {
            let say = format!("The upload is at byte {}: go on from there.", upload.here);
            let refused = OfficeError::refused(StatusCode::CONFLICT, Code::WrongOffset, say).into_response();
            return Ok((offset(&upload), refused).into_response());
        }
        let kept = match headers.get(tus::CHECKSUM) {
            Some(sum) => checked(&office, &mut upload, sum, body).await,
            None => streamed(&office, &mut upload, body).await,
        };
        match kept {
            Ok(()) => {}
            // A call that broke off may still be keeping its last bytes: where the upload is now is told here as well.
            Err(fault @ OfficeError::Refused { code: Code::WrongOffset, .. }) => {
                let now = find(&office, &phone, id).await?;
                return Ok((offset(&now), fault.into_response()).into_response());
            }
            Err(fault) => return Err(fault),
        }
        if upload.here == upload.length {
            photos::finish(&office, &upload).await?;
        }
        Ok((StatusCode::NO_CONTENT, offset(&upload)).into_response())
    };
    told(done.await)
}

fn too_long() -> OfficeError {
    OfficeError::refused(
        StatusCode::PAYLOAD_TOO_LARGE,
        Code::TooLarge,
        "This goes beyond the end of the upload. Ask where it is.",
    )
}

/// Keeps piece after piece as they come; what came before a break stays.
async fn streamed(office: &Shared, upload: &mut Upload, mut body: Body) -> Result<(), OfficeError> {
    let mut piece: Vec<u8> = Vec::with_capacity(PIECE_BYTES);
    loop {
        let frame = body.frame().await;
        let (more, broken) = match frame {
            None => (None, false),
            Some(Err(_)) => (None, true),
            Some(Ok(frame)) => (frame.into_data().ok(), false),
        };
        let ended = more.is_none();
        if let Some(bytes) = more {
            let room = upload.length - upload.here;
            if i64::try_from(piece.len() + bytes.len()).is_ok_and(|all| all > room) {
                return Err(too_long());
            }
            piece.extend_from_slice(&bytes);
        }
        if piece.len() >= PIECE_BYTES || (ended && !piece.is_empty()) {
            upload.here = photos::add(office, upload, upload.here, std::mem::take(&mut piece)).await?;
        }
        if broken {
            let say = "What was sent broke off on the way. Ask where the upload is, and go on from there.";
            return Err(OfficeError::refused(StatusCode::BAD_REQUEST, Code::BrokeOff, say));
        }
        if ended {
            return Ok(());
        }
    }
}

/// Keeps all of the body if its checksum is right, and nothing of it otherwise.
async fn checked(office: &Shared, upload: &mut Upload, sum: &HeaderValue, body: Body) -> Result<(), OfficeError> {
    let said = sum.to_str().ok().and_then(|s| s.split_once(' ')).filter(|(name, _)| *name == "sha256");
    let said = said.and_then(|(_, hash)| STANDARD.decode(hash.trim()).ok());
    let said = said.ok_or_else(|| OfficeError::unreadable("`Upload-Checksum` is `sha256` and a hash in base64."))?;
    let room = usize::try_from(upload.length - upload.here).unwrap_or(0).min(CHECKED_BYTES);
    let bytes = super::body::whole(&HeaderMap::new(), body, room).await?;
    if Sha256::digest(&bytes).as_slice() != said {
        let status = StatusCode::from_u16(tus::MISMATCH).unwrap_or(StatusCode::CONFLICT);
        return Err(OfficeError::refused(
            status,
            Code::Checksum,
            "The checksum is not that of the bytes. Send them again.",
        ));
    }
    if !bytes.is_empty() {
        upload.here = photos::add(office, upload, upload.here, bytes).await?;
    }
    Ok(())
}

/// `DELETE /photos/up/{id}`.
pub async fn give_up(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    Path(id): Path<String>,
    headers: HeaderMap,
) -> Response {
    let done = async {
        spoken(&headers)?;
        let upload = find(&office, &phone, id).await?;
        photos::drop_upload(&office, &upload.id).await?;
        Ok(StatusCode::NO_CONTENT.into_response())
    };
    told(done.await)
}

/// `GET /photos/{name}`.
pub async fn fetch(
    State(office): State<Shared>,
    Extension(phone): Extension<Phone>,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Result<Response, OfficeError> {
    let none = || OfficeError::nothing("There is no such photo here for this phone.");
    let name = Name::read(&name).ok_or_else(none)?;
    let length = call(&office, move |office| {
        office.read(|tx| {
            Ok(if photos::named(tx, phone.device, name.sha256, false)? { photos::length(tx, name)? } else { None })
        })
    });
    let length = length.await?.ok_or_else(none)?;
    give(&office, name, length, &headers).await
}

/// The bytes of a photo, or the part of them that is asked for.
pub async fn give(office: &Shared, name: Name, length: i64, headers: &HeaderMap) -> Result<Response, OfficeError> {
    let none = || OfficeError::nothing("This photo's bytes are not here.");
    let _turn = office.photos.acquire().await.map_err(|_| OfficeError::Busy("the office is ending".into()))?;
    let length = u64::try_from(length).map_err(|_| none())?;
    let caching = (header::CACHE_CONTROL, "private, max-age=3600, immutable".to_owned());
    let takes = (header::ACCEPT_RANGES, "bytes".to_owned());
    let asked = headers.get(header::RANGE).and_then(|v| v.to_str().ok()).and_then(|r| range(r, length));
    let key = photos::key(name);
    match asked {
        Some(Err(())) => {
            let all = [(header::CONTENT_RANGE, format!("bytes */{length}"))];
            let say = "The photo ends before that.";
            Ok((all, OfficeError::refused(StatusCode::RANGE_NOT_SATISFIABLE, Code::Range, say).into_response())
                .into_response())
        }
        Some(Ok((from, to))) => {
            let bytes = office.blobs.range(&key, Some(from..to + 1)).await?.ok_or_else(none)?;
            let part = (header::CONTENT_RANGE, format!("bytes {from}-{to}/{length}"));
            let kind = (header::CONTENT_TYPE, "application/octet-stream".to_owned());
            Ok((StatusCode::PARTIAL_CONTENT, [part, kind, caching, takes], bytes).into_response())
        }
        None => {
            let bytes = office.blobs.get(&key).await?.ok_or_else(none)?;
            let kind = evidence::media(&bytes).unwrap_or("application/octet-stream");
            Ok(([(header::CONTENT_TYPE, kind.to_owned()), caching, takes], bytes).into_response())
        }
    }
}

/// One range of bytes (RFC 9110, 14.1.2), both ends counted in; an error where it lies behind the end, `None` for all the rest.
fn range(text: &str, length: u64) -> Option<Result<(u64, u64), ()>> {
    let (from, to) = text.strip_prefix("bytes=")?.split_once('-')?;
    let last = length.checked_sub(1)?;
    Some(match (from.trim(), to.trim()) {
        ("", tail) => match tail.parse::<u64>().ok()? {
            0 => Err(()),
            tail => Ok((length.saturating_sub(tail), last)),
        },
        (from, to) => {
            let from = from.parse::<u64>().ok()?;
            let to = if to.is_empty() { last } else { to.parse::<u64>().ok()?.min(last) };
            if from > last || from > to { Err(()) } else { Ok((from, to)) }
        }
    })
}
