//! What the office says of its own running: one event a request, and what went wrong in here. Who did what is the audit's.
//!
//! Promises: no token, code, password, text that somebody typed or name of a person is in an event. A request is told by its route as it
//! stands in the table of routes, never by the path or query that was sent, and its caller by the kind. Start at [`each`].

use std::io::stderr;
use std::time::Instant;

use axum::extract::{MatchedPath, Request};
use axum::http::Method;
use axum::middleware::Next;
use axum::response::Response;
use stillbar_protocol::Code;
use tracing::Subscriber;
pub use tracing::level_filters::LevelFilter;
use tracing_subscriber::Layer;
use tracing_subscriber::filter::Targets;
use tracing_subscriber::fmt::{MakeWriter, layer};
use tracing_subscriber::layer::SubscriberExt;

/// How much is said, and in what form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Said {
    /// The least that is said. Libraries below the office say warnings at most.
    pub level: LevelFilter,
    /// A JSON object a line, instead of a line for people.
    pub json: bool,
}

impl Default for Said {
    /// Every request, for people.
    fn default() -> Said {
        Said { level: LevelFilter::INFO, json: false }
    }
}

/// What writes the events, a line each.
pub fn subscriber<W>(said: Said, into: W) -> Box<dyn Subscriber + Send + Sync>
where
    W: for<'a> MakeWriter<'a> + Send + Sync + 'static,
{
    let below = said.level.min(LevelFilter::WARN);
    let which = Targets::new().with_target("stillbar_office", said.level).with_default(below);
    let lines = layer().with_writer(into).with_ansi(false);
    let registry = tracing_subscriber::registry();
    if said.json {
        let lines = lines.json().flatten_event(true).with_current_span(false).with_span_list(false);
        Box::new(registry.with(lines.with_filter(which)))
    } else {
        Box::new(registry.with(lines.with_filter(which)))
    }
}

/// Writes the events of this process to the terminal from now on. The first who asks decides.
pub fn begin(said: Said) {
    let _ = tracing::subscriber::set_global_default(subscriber(said, stderr));
}

/// The kind of a caller, left on an answer: `anyone` where it is not asked, `nobody` who is not known, `phone`, `withdrawn phone`, or a
/// person's role.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CallerKind(pub &'static str);

/// The word of a refusal or a fault, left on an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RefusedCode(pub Code);

/// One event for each request, once the head of its answer is there, or when it ends without one.
pub async fn each(request: Request, next: Next) -> Response {
    let method = match *request.method() {
        Method::GET => "GET",
        Method::POST => "POST",
        Method::HEAD => "HEAD",
        Method::OPTIONS => "OPTIONS",
        Method::PATCH => "PATCH",
        Method::DELETE => "DELETE",
        // Whatever somebody wrote there.
        _ => "other",
    };
    let route = request.extensions().get::<MatchedPath>().cloned();
    let mut asked = RequestFacts { method, route, began: Instant::now(), answered: false };
    let answer = next.run(request).await;
    asked.answered(&answer);
    answer
}

/// A request under way.
struct RequestFacts {
    method: &'static str,
    route: Option<MatchedPath>,
    began: Instant,
    answered: bool,
}

impl RequestFacts {
    fn route(&self) -> &str {
        self.route.as_ref().map_or("none", MatchedPath::as_str)
    }

    fn ms(&self) -> u64 {
        u64::try_from(self.began.elapsed().as_millis()).unwrap_or(u64::MAX)
    }

    fn answered(&mut self, answer: &Response) {
        self.answered = true;
        let (method, route, ms, status) = (self.method, self.route(), self.ms(), answer.status().as_u16());
        // What no route answers was asked by somebody whom nobody looked at.
        let caller = answer.extensions().get::<CallerKind>().map_or("anyone", |caller| caller.0);
        let refused = answer.extensions().get::<RefusedCode>().map(|word| word.0.word());
        if status < 500 {
            tracing::info!(method, route, status, ms, caller, refused, "request");
        } else {
            tracing::warn!(method, route, status, ms, caller, refused, "request");
        }
    }
}

impl Drop for RequestFacts {
    /// The caller went away, or what should have answered panicked.
    fn drop(&mut self) {
        if !self.answered {
            let (method, route, ms) = (self.method, self.route(), self.ms());
            tracing::warn!(method, route, ms, "request without an answer");
        }
    }
}
