//! An office to test: over a fresh database of either backend, with a clock and a chance of its own, asked without a socket.

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use axum::Router;
use axum::body::Body;
use axum::http::{HeaderMap, Request, StatusCode};
use http_body_util::BodyExt;
use serde_json::Value;
use stillbar_core::journal::EntryId;
use stillbar_office::key::{KEY, office_key};
use stillbar_office::office::{Lent, Office, Reached, Shared};
use stillbar_office::photos::Blobs;
use stillbar_office::{enrol, store, web};
use tempfile::TempDir;
use tokio::runtime::Runtime;
use tower::ServiceExt;

use crate::phone::Phone;
use crate::postgres;

/// When the tests take place: 2026-11-25 10:00 UTC.
pub const NOW: i64 = 1_795_600_800_000;

/// An office and what is around it.
pub struct Rig {
    pub office: Shared,
    pub router: Router,
    pub runtime: Runtime,
    pub clock: Arc<AtomicI64>,
    pub folder: TempDir,
}

/// Whether one of the two databases is meant.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Backend {
    Sqlite,
    Postgres,
}

/// Runs a test over both backends, and says which one it failed on.
pub fn each(test: impl Fn(&Rig)) {
    for backend in [Backend::Sqlite, Backend::Postgres] {
        let rig = Rig::new(backend);
        if let Err(why) = catch_unwind(AssertUnwindSafe(|| test(&rig))) {
            eprintln!("this failed over {backend:?}");
            resume_unwind(why);
        }
    }
}

/// An answer.
pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub bytes: Vec<u8>,
}

impl Answer {
    /// The body as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.bytes)
            .unwrap_or_else(|e| panic!("{e}: {} {}", self.status, String::from_utf8_lossy(&self.bytes)))
    }

    /// The body as text.
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.bytes).into_owned()
    }

    /// A header.
    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |v| v.to_str().expect("headers of ours are text"))
    }

    /// Fails unless the status is `status`.
    pub fn is(self, status: u16) -> Answer {
        assert_eq!(self.status.as_u16(), status, "{}", self.text());
        self
    }
}

impl Rig {
    pub fn new(backend: Backend) -> Rig {
        let url = (backend == Backend::Postgres).then(postgres::database);
        Rig::over(tempfile::tempdir().expect("a folder"), url)
    }

    /// Over a folder and a database that may hold something already.
    pub fn over(folder: TempDir, url: Option<String>) -> Rig {
        Rig::again(folder, url, 1)
    }

    /// The same with another beginning of its chance: no two lives of an office draw the same.
    pub fn again(folder: TempDir, url: Option<String>, seed: u64) -> Rig {
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            .max_blocking_threads(16)
            .enable_all()
            .build()
            .expect("a runtime");
        let clock = Arc::new(AtomicI64::new(NOW));
        let office = Arc::new(office(&folder, url.as_deref(), &runtime, &clock, seed));
        let router = web::router(office.clone());
        Rig { office, router, runtime, clock, folder }
    }

    /// Moves the office's clock on.
    pub fn wait(&self, ms: i64) {
        self.clock.fetch_add(ms, Ordering::Relaxed);
    }

    pub fn now(&self) -> i64 {
        self.clock.load(Ordering::Relaxed)
    }

    /// Asks the router.
    pub fn ask(&self, method: &str, path: &str, headers: &[(&str, &str)], body: impl Into<Body>) -> Answer {
        let mut request = Request::builder().method(method).uri(path);
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        let request = request.body(body.into()).expect("the request of a test is well formed");
        self.runtime.block_on(async {
            let answer = self.router.clone().oneshot(request).await.expect("the router always answers");
            let (head, body) = answer.into_parts();
            let bytes = body.collect().await.expect("the body comes").to_bytes().to_vec();
            Answer { status: head.status, headers: head.headers, bytes }
        })
    }

    /// A code for a phone of these sites.
    pub fn code(&self, sites: &[EntryId]) -> String {
        self.office.change(|tx| enrol::make_code(&self.office, tx, "the test", "", sites)).expect("a code is made")
    }

    /// An enrolled phone.
    pub fn phone(&self, number: u8, sites: &[EntryId]) -> Phone {
        let mut phone = Phone::new(number);
        phone.enrol(self, &self.code(sites)).is(201);
        phone
    }
}

fn office(folder: &TempDir, url: Option<&str>, runtime: &Runtime, clock: &Arc<AtomicI64>, seed: u64) -> Office {
    let store = store::open(folder.path(), url, runtime.handle()).expect("the database opens");
    let key = office_key(&*store, &folder.path().join(KEY), NOW).expect("the key is made");
    let blobs = Blobs::folder(&folder.path().join("photos")).expect("the folder of photos");
    let (clock, seed) = (Arc::clone(clock), AtomicU64::new(seed));
    let lent = Lent {
        now: Box::new(move || clock.load(Ordering::Relaxed)),
        // Not random, and never twice the same: a run can be told again.
        random: Box::new(move |into| {
            let from = seed.fetch_add(1, Ordering::Relaxed);
            for (n, byte) in into.iter_mut().enumerate() {
                *byte = (from.wrapping_mul(0x9E37_79B9_7F4A_7C15).rotate_left(n as u32 * 5) >> 24) as u8;
            }
            for (byte, count) in into.iter_mut().rev().zip(from.to_le_bytes()) {
                *byte = count;
            }
            Ok(())
        }),
    };
    let reached = Reached { url: "http://127.0.0.1:7463".into(), secure: false, proxied: false };
    Office::new(store, blobs, key, folder.path().to_owned(), "The office".into(), reached, lent)
}
