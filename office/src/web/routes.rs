//! The table of routes: what is answered, to whom, in one place. The router, the description at /openapi.json and the test of who may
//! do what all read it.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware;
use axum::routing::{MethodRouter, delete, get, head, options, patch, post};

use super::{enrolling, guard, phones, photos};
use crate::fault::Fault;
use crate::office::Shared;

/// Whom a route is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Who {
    /// Anybody who reaches the office.
    Anyone,
    /// A phone with a token.
    Phone,
    /// The same, withdrawn ones too.
    AnyPhone,
}

/// A route.
pub struct Route {
    /// `GET`, `POST`, ...
    pub method: &'static str,
    /// The path, with `{name}` where something is filled in.
    pub path: &'static str,
    /// Whom it is for.
    pub who: Who,
    /// What answers.
    pub answer: MethodRouter<Shared>,
}

fn route(method: &'static str, path: &'static str, who: Who, answer: MethodRouter<Shared>) -> Route {
    Route { method, path, who, answer }
}

/// All routes.
pub fn routes() -> Vec<Route> {
    use Who::{AnyPhone, Anyone, Phone};
    vec![
        route("GET", "/capabilities", Anyone, get(phones::capabilities)),
        route("POST", "/enrol", Anyone, post(enrolling::enrol)),
        route("POST", "/entries", AnyPhone, post(phones::push)),
        route("GET", "/entries", Phone, get(phones::pull)),
        route("GET", "/digest", Phone, get(phones::digest)),
        route("GET", "/wanted", AnyPhone, get(phones::photos_wanted)),
        route("OPTIONS", "/photos", Anyone, options(photos::options)),
        route("POST", "/photos", AnyPhone, post(photos::begin)),
        route("GET", "/photos/{name}", Phone, get(photos::fetch)),
        route("HEAD", "/photos/up/{id}", AnyPhone, head(photos::head)),
        route("PATCH", "/photos/up/{id}", AnyPhone, patch(photos::add)),
        route("DELETE", "/photos/up/{id}", AnyPhone, delete(photos::give_up)),
    ]
}

/// All that the office answers.
pub fn router(office: Shared) -> Router {
    let mut router = Router::new();
    for Route { path, who, answer, .. } in routes() {
        let admit = middleware::from_fn_with_state((office.clone(), who), guard::admit);
        router = router.route(path, answer.layer(admit));
    }
    router
        .fallback(|| async { Fault::nothing("There is nothing here. The pages begin at /.") })
        // Every body is bounded where it is read, with a sentence of its own.
        .layer(DefaultBodyLimit::disable())
        .layer(middleware::from_fn_with_state(office.clone(), guard::headers))
        .with_state(office)
}
