//! What the page asks, and the answers.
//!
//! | request | answer |
//! |---|---|
//! | `GET /` | the page with the screen as it is now |
//! | `POST /act` | the person did something; the new screen and the errands |
//! | `POST /edit` | one draft with the route and the hand of the screen it was typed on, kept before the answer |
//! | `POST /deliver?token=` | a photo's bytes, or `{"why": ..}` if there is none; the new screen |
//! | `POST /frame?token=&width=&height=&turn=` | the brightness of a camera's frame; the new screen, or 204 if nothing is in it |
//! | `GET /stirred` | a number that grows with every change of the screen; 204 while the core is busy |
//! | `GET /screen` | the screen as it is now |
//! | `GET /photo/{sha256}` | a kept photo; with `.320.jpg` behind it, its small copy |
//!
//! All of it for whoever has the key, see [`guard`]. An answer that is not 2xx is one or two sentences of plain text.

use std::fmt::Display;
use std::future::Future;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{DefaultBodyLimit, FromRequest, Path, Query, Request, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::middleware;
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use serde::{Deserialize, Serialize};
use stillbar_core::app::FieldError;
use stillbar_core::evidence::media;
use stillbar_core::{Errand, Field, Filled, Outcome, Screen};
use tokio::sync::{Mutex, Notify, Semaphore};

use crate::body::{MAX_FRAME, MAX_PHOTO, MAX_TYPED, Say, is_json, json, whole};
use crate::guard::{self, Door};
use crate::render;

/// Photos that may be in memory at once.
const PHOTOS_AT_ONCE: usize = 2;

/// How long a photo may take from the browser beside us; one that stalls must not keep the next from its turn.
const PHOTO_COMES: Duration = Duration::from_secs(60);

/// Languages that are looked at of those that a browser asks for.
const MOST_LANGUAGES: usize = 20;

/// How long a page that asks for changes waits for the core.
const CORE_ANSWERS: Duration = Duration::from_millis(500);

/// What the server needs of the core. A trait, so that tests can show any screen.
pub trait Brain: Send + Sync + 'static {
    /// Why a draft is not kept; as text it is told to the person.
    type NotKept: Display + Send;
    /// See [`Field::speak`].
    fn speak(&self, _languages: Vec<String>) {}
    /// See [`Field::screen`].
    fn screen(&self) -> Screen;
    /// See [`Field::act`].
    fn act(&self, turn: u64, action: String, input: Vec<Filled>) -> Vec<Errand>;
    /// See [`Field::edit_on`].
    fn edit(&self, typed: Typed) -> Result<(), Self::NotKept>;
    /// See [`Field::deliver`].
    fn deliver(&self, token: String, outcome: Outcome) -> Vec<Errand>;
    /// See [`Field::photo`].
    fn photo(&self, sha256: String) -> Option<Vec<u8>>;
    /// See [`Field::shared`].
    fn shared(&self, _name: &str) -> Option<Vec<u8>> {
        None
    }
    /// See [`Field::changes`].
    fn changes(&self) -> u64 {
        0
    }
}

impl Brain for Field {
    type NotKept = FieldError;
    fn speak(&self, languages: Vec<String>) {
        Field::speak(self, languages);
    }
    fn screen(&self) -> Screen {
        Field::screen(self)
    }
    fn act(&self, turn: u64, action: String, input: Vec<Filled>) -> Vec<Errand> {
        Field::act(self, Some(turn), action, input)
    }
    fn edit(&self, Typed { route, hand, field, value }: Typed) -> Result<(), FieldError> {
        Field::edit_on(self, &route, &hand, &field, &value)
    }
    fn deliver(&self, token: String, outcome: Outcome) -> Vec<Errand> {
        Field::deliver(self, token, outcome)
    }
    fn photo(&self, sha256: String) -> Option<Vec<u8>> {
        Field::photo(self, sha256)
    }
    fn shared(&self, name: &str) -> Option<Vec<u8>> {
        Field::shared(self, name)
    }
    fn changes(&self) -> u64 {
        Field::changes(self)
    }
}

struct Desk<B> {
    brain: Arc<B>,
    photos: Arc<Semaphore>,
    /// Held by the one question for changes that is under way.
    asking: Arc<Mutex<()>>,
}

impl<B> Clone for Desk<B> {
    fn clone(&self) -> Self {
        Self { brain: self.brain.clone(), photos: self.photos.clone(), asking: self.asking.clone() }
    }
}

/// All that the desk answers, for whom this door lets in.
pub fn router<B: Brain>(brain: Arc<B>, door: Arc<Door>) -> Router {
    let desk = Desk { brain, photos: Arc::new(Semaphore::new(PHOTOS_AT_ONCE)), asking: Arc::default() };
    Router::new()
        .route("/act", post(act::<B>))
        .route("/edit", post(edit::<B>))
        .layer(DefaultBodyLimit::max(MAX_TYPED))
        .route("/deliver", post(deliver::<B>).layer(DefaultBodyLimit::max(MAX_PHOTO)))
        .route("/frame", post(frame::<B>).layer(DefaultBodyLimit::max(MAX_FRAME)))
        .route("/", get(page::<B>))
        .route("/stirred", get(stirred::<B>))
        .route("/screen", get(again::<B>))
        .route("/photo/{sha256}", get(photo::<B>))
        .route("/shared/{name}", get(shared::<B>))
        .route("/style.css", get(|| asset("text/css; charset=utf-8", include_str!("../assets/style.css"))))
        .route("/desk.js", get(|| asset("text/javascript; charset=utf-8", include_str!("../assets/desk.js"))))
        .route("/themes.css", get(|| asset("text/css; charset=utf-8", include_str!("../assets/themes.css"))))
        .route("/contrast.js", get(|| asset("text/javascript; charset=utf-8", include_str!("../assets/contrast.js"))))
        .route("/room.js", get(|| asset("text/javascript; charset=utf-8", include_str!("../assets/room.js"))))
        .route("/camera.js", get(|| asset("text/javascript; charset=utf-8", include_str!("../assets/camera.js"))))
        .route("/watch.js", get(|| asset("text/javascript; charset=utf-8", include_str!("../assets/watch.js"))))
        .route("/icon.svg", get(|| asset("image/svg+xml", include_str!("../assets/icon.svg"))))
        .fallback(|| async { Say::new(StatusCode::NOT_FOUND, "There is nothing here. The desk is at /.") })
        .with_state(desk)
        .layer(middleware::from_fn_with_state(door, guard::guard))
}

/// Answers until Ctrl-C or a request to end; answers under way then get `last` to finish. `ready` is called once such a
/// request would be heard: who reads the address may end the desk at once.
pub async fn run(
    listener: tokio::net::TcpListener,
    app: Router,
    last: Duration,
    ready: impl FnOnce(),
) -> std::io::Result<()> {
    let ending = Arc::new(Notify::new());
    let asked = asked_to_end()?;
    ready();
    let end = {
        let ending = Arc::clone(&ending);
        async move {
            asked.await;
            ending.notify_one();
        }
    };
    tokio::select! {
        done = axum::serve(listener, app).with_graceful_shutdown(end) => done,
        () = async { ending.notified().await; tokio::time::sleep(last).await } => Ok(()),
    }
}

#[cfg(unix)]
fn asked_to_end() -> std::io::Result<impl Future<Output = ()> + Send> {
    use tokio::signal::unix::{SignalKind, signal};
    let (mut interrupt, mut terminate) = (signal(SignalKind::interrupt())?, signal(SignalKind::terminate())?);
    Ok(async move {
        tokio::select! { _ = interrupt.recv() => {}, _ = terminate.recv() => {} }
    })
}

#[cfg(not(unix))]
fn asked_to_end() -> std::io::Result<impl Future<Output = ()> + Send> {
    Ok(async { drop(tokio::signal::ctrl_c().await) })
}

/// Calls the core on a thread that may block. A panic there is told, and the desk goes on.
async fn call<T: Send + 'static>(deed: impl FnOnce() -> T + Send + 'static) -> Result<T, Say> {
    tokio::task::spawn_blocking(deed).await.map_err(|_| Say::fault())
}

async fn asset(kind: &'static str, text: &'static str) -> Response {
    // Not cached, so that a page never meets the script of another version.
    ([(header::CONTENT_TYPE, kind)], text).into_response()
}

async fn page<B: Brain>(State(desk): State<Desk<B>>, headers: HeaderMap) -> Result<Html<String>, Say> {
    let languages = languages(&headers);
    call(move || {
        desk.brain.speak(languages);
        let changes = desk.brain.changes();
        render::page(&desk.brain.screen(), changes)
    })
    .await
    .map(Html)
}

/// The languages that a browser asks for, the one liked best first. Browsers list them so; the weights behind them say the same.
fn languages(headers: &HeaderMap) -> Vec<String> {
    let asked = headers.get(header::ACCEPT_LANGUAGE).and_then(|asked| asked.to_str().ok()).unwrap_or_default();
    asked
        .split(',')
        .take(MOST_LANGUAGES)
        .filter_map(|one| one.split(';').next())
        .map(|tag| tag.trim().to_owned())
        .collect()
}

/// A page asks every second. While the core is busy with a photo or a record, the questions must not fill the threads behind it, and
/// that the desk is there has to be told all the same.
async fn stirred<B: Brain>(State(desk): State<Desk<B>>) -> Result<Response, Say> {
    let busy = || StatusCode::NO_CONTENT.into_response();
    let Ok(asking) = desk.asking.clone().try_lock_owned() else { return Ok(busy()) };
    let asked = call(move || {
        let changes = desk.brain.changes();
        drop(asking);
        changes
    });
    match tokio::time::timeout(CORE_ANSWERS, asked).await {
        Ok(changes) => Ok(changes?.to_string().into_response()),
        Err(_) => Ok(busy()),
    }
}

async fn again<B: Brain>(State(desk): State<Desk<B>>) -> Result<Response, Say> {
    call(move || shown(&*desk.brain, Vec::new())).await
}

const NO_TURN: &str =
    "An act has to say the turn of the screen that it was done on. Nothing was done: reload the page.";

#[derive(Deserialize)]
struct ActBody {
    turn: Option<u64>,
    action: String,
    #[serde(default)]
    fields: Vec<Filled>,
}

async fn act<B: Brain>(
    State(desk): State<Desk<B>>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, Say> {
    let ActBody { turn, action, fields } = json(&headers, body)?;
    // Without it, a tap on an old screen would count on the new one.
    let turn = turn.ok_or_else(|| Say::new(StatusCode::BAD_REQUEST, NO_TURN))?;
    call(move || {
        let errands = desk.brain.act(turn, action, fields);
        shown(&*desk.brain, errands)
    })
    .await
}

/// What was typed into a field, and the screen that it was typed on.
#[derive(Debug, Deserialize)]
pub struct Typed {
    /// See [`Screen::route`].
    pub route: String,
    /// See [`Screen::hand`].
    pub hand: String,
    /// The field.
    pub field: String,
    /// All that now stands in it.
    pub value: String,
}

async fn edit<B: Brain>(
    State(desk): State<Desk<B>>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<StatusCode, Say> {
    let typed = json(&headers, body)?;
    match call(move || desk.brain.edit(typed)).await? {
        Ok(()) => Ok(StatusCode::NO_CONTENT),
        Err(why) => Err(Say::new(StatusCode::CONFLICT, why.to_string())),
    }
}

#[derive(Deserialize)]
struct Token {
    token: String,
}

#[derive(Deserialize)]
struct RefusalBody {
    why: String,
}

async fn deliver<B: Brain>(
    State(desk): State<Desk<B>>,
    Query(Token { token }): Query<Token>,
    headers: HeaderMap,
    request: Request,
) -> Result<Response, Say> {
    // Held until the core has the photo; the next one waits in the browser, not in memory.
    let _turn = desk.photos.clone().acquire_owned().await;
    let body = tokio::time::timeout(PHOTO_COMES, Bytes::from_request(request, &()))
        .await
        .map_err(|_| Say::new(StatusCode::REQUEST_TIMEOUT, "The photo did not arrive. Send it once more."))?;
    let outcome = if is_json(&headers) {
        let RefusalBody { why } = json(&headers, body)?;
        Outcome::Refused { why }
    } else {
        let bytes = whole(body)?.into();
        let media_type = headers.get(header::CONTENT_TYPE).and_then(|t| t.to_str().ok()).unwrap_or_default().to_owned();
        Outcome::Photo { media_type, bytes }
    };
    call(move || {
        let errands = desk.brain.deliver(token, outcome);
        shown(&*desk.brain, errands)
    })
    .await
}

#[derive(Deserialize)]
struct FrameQuery {
    token: String,
    width: u32,
    height: u32,
    /// The turn that the page shows.
    turn: u64,
}

async fn frame<B: Brain>(
    State(desk): State<Desk<B>>,
    Query(FrameQuery { token, width, height, turn }): Query<FrameQuery>,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, Say> {
    let luma = whole(body)?.into();
    call(move || {
        let errands = desk.brain.deliver(token, Outcome::Frame { width, height, luma });
        // Nothing in it: the page goes on looking, and need not draw the screen again.
        if desk.brain.screen().turn == turn {
            StatusCode::NO_CONTENT.into_response()
        } else {
            shown(&*desk.brain, errands)
        }
    })
    .await
}

/// Behind the SHA-256 of a photo: its copy of 320 pixels.
pub const SMALL: &str = ".320.jpg";

async fn photo<B: Brain>(State(desk): State<Desk<B>>, Path(sha256): Path<String>) -> Result<Response, Say> {
    let none = || Say::new(StatusCode::NOT_FOUND, "There is no such photo here.");
    let hex = sha256.strip_suffix(SMALL).unwrap_or(&sha256);
    if hex.len() != 64 || !hex.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')) {
        return Err(none());
    }
    let on_page = sha256.ends_with(SMALL);
    let Some(bytes) = call(move || desk.brain.photo(sha256)).await? else {
        // Others' pictures come after their entries: until then a page has something in the place.
        let missing = [(header::CONTENT_TYPE, "image/svg+xml"), (header::CACHE_CONTROL, "no-store")];
        return if on_page {
            Ok((missing, include_str!("../assets/missing.svg")).into_response())
        } else {
            Err(none())
        };
    };
    // By its own first bytes; the browser gets no other kind of file from here.
    let kind = media(&bytes).ok_or_else(none)?;
    // The address is the hash of the bytes, so what is under it never changes.
    let headers = [(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, "private, max-age=3600, immutable")];
    Ok((headers, bytes).into_response())
}

/// A file that was made to be shared: always a download, whatever is in it.
async fn shared<B: Brain>(State(desk): State<Desk<B>>, Path(name): Path<String>) -> Result<Response, Say> {
    let bytes = call(move || desk.brain.shared(&name)).await?;
    let bytes =
        bytes.ok_or_else(|| Say::new(StatusCode::NOT_FOUND, "This file is not here any more. Make it again."))?;
    let headers = [(header::CONTENT_TYPE, "application/octet-stream"), (header::CONTENT_DISPOSITION, "attachment")];
    Ok((headers, bytes).into_response())
}

#[derive(Serialize)]
struct ScreenAnswer<'a> {
    html: String,
    title: &'a str,
    route: &'a str,
    changes: u64,
    errands: Vec<Errand>,
}

fn shown(brain: &impl Brain, errands: Vec<Errand>) -> Response {
    // Counted before the screen is read: what comes in between is shown once too often rather than never.
    let changes = brain.changes();
    let screen = brain.screen();
    let shown =
        ScreenAnswer { html: render::screen(&screen), title: &screen.title, route: &screen.route, changes, errands };
    match serde_json::to_string(&shown) {
        Ok(text) => ([(header::CONTENT_TYPE, "application/json")], text).into_response(),
        Err(_) => Say::fault().into_response(),
    }
}
