//! The table of routes: what is answered, to whom, in one place. The router, the description at /openapi.json and the test of who may
//! do what all read it.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::header;
use axum::middleware;
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodRouter, delete, get, head, options, patch, post};

use super::{enrolling, guard, openapi, pages, phones, photos};
use crate::fault::Fault;
use crate::log;
use crate::office::Shared;
use crate::people::Role;

/// Whom a route is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Who {
    /// Anybody who reaches the office.
    Anyone,
    /// A phone with a token.
    Phone,
    /// The same, withdrawn ones too.
    AnyPhone,
    /// A person who is signed in and has at least this role.
    Person(Role),
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
    let reader = Who::Person(Role::Reader);
    let planner = Who::Person(Role::Planner);
    let lead = Who::Person(Role::Lead);
    let admin = Who::Person(Role::Admin);
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
        route("GET", "/openapi.json", Anyone, get(openapi::described)),
        route(
            "GET",
            "/style.css",
            Anyone,
            get(|| asset("text/css; charset=utf-8", include_str!("../../assets/style.css"))),
        ),
        route(
            "GET",
            "/office.js",
            Anyone,
            get(|| asset("text/javascript; charset=utf-8", include_str!("../../assets/office.js"))),
        ),
        route("GET", "/icon.svg", Anyone, get(|| asset("image/svg+xml", include_str!("../../assets/icon.svg")))),
        route("GET", "/sign-in", Anyone, get(pages::sign_in_form)),
        route("POST", "/sign-in", Anyone, post(pages::sign_in)),
        route("POST", "/sign-out", reader, post(pages::sign_out)),
        route("GET", "/", reader, get(pages::home)),
        route("GET", "/board", reader, get(pages::board)),
        route("GET", "/board/rows", reader, get(pages::board_rows)),
        route("GET", "/board.csv", reader, get(pages::board_csv)),
        route("GET", "/sites", reader, get(pages::sites)),
        route("GET", "/sites/{site}", reader, get(pages::site)),
        route("GET", "/sites/{site}/jobs.csv", reader, get(pages::jobs_csv)),
        route("GET", "/sites/{site}/export.json", reader, get(pages::export_json)),
        route("GET", "/sites/{site}/network", reader, get(pages::network)),
        route("GET", "/sites/{site}/network/{file}", reader, get(pages::network_file)),
        route("GET", "/sites/{site}/jobs/{job}", reader, get(pages::job)),
        route("GET", "/sites/{site}/jobs/{job}/record/{kind}", reader, get(pages::record)),
        route("GET", "/sites/{site}/jobs/{job}/stamps.json", reader, get(pages::stamps)),
        route("GET", "/pictures/{name}", reader, get(pages::picture)),
        route("GET", "/search", reader, get(pages::search)),
        route("GET", "/password", reader, get(pages::password)),
        route("POST", "/password", reader, post(pages::set_password)),
        route("POST", "/sites", planner, post(pages::add_site)),
        route("GET", "/sites/{site}/plan", planner, get(pages::plan_form)),
        route("POST", "/sites/{site}/plan", planner, post(pages::plan)),
        route(
            "POST",
            "/sites/{site}/network",
            planner,
            post(pages::take_network).layer(DefaultBodyLimit::max(MOST_NETWORK)),
        ),
        route("GET", "/labels", planner, get(pages::labels)),
        route("POST", "/labels", planner, post(pages::print_labels)),
        route("POST", "/sites/{site}", lead, post(pages::change_site)),
        route("GET", "/phones", lead, get(pages::phones)),
        route("POST", "/phones", lead, post(pages::make_code)),
        route("POST", "/phones/{device}", lead, post(pages::change_phone)),
        route("GET", "/held", lead, get(pages::held)),
        route("POST", "/held/{device}/release", lead, post(pages::release)),
        route("POST", "/held/quarantine/{id}", lead, post(pages::look_at)),
        route("GET", "/people", admin, get(pages::people)),
        route("POST", "/people", admin, post(pages::add_person)),
        route("POST", "/people/{id}", admin, post(pages::change_person)),
        route("GET", "/names", admin, get(pages::names)),
        route("POST", "/names/{id}", admin, post(pages::erase)),
        route("GET", "/audit", admin, get(pages::audit)),
    ]
}

async fn asset(kind: &'static str, text: &'static str) -> Response {
    // Not cached, so that a page never meets the script of another version.
    ([(header::CONTENT_TYPE, kind)], text).into_response()
}

/// Bytes of a form at most. What phones send is bounded where it is read, with a sentence of its own.
const MOST_FORM: usize = 256 * 1024;

/// Bytes of the form with a network at most: the most parts that a site's network takes, with long texts, as a form writes them.
const MOST_NETWORK: usize = 8 * 1024 * 1024;

/// All that the office answers.
pub fn router(office: Shared) -> Router {
    let mut router = Router::new();
    for Route { path, who, answer, .. } in routes() {
        let admit = middleware::from_fn_with_state((office.clone(), who), guard::admit);
        router = router.route(path, answer.layer(admit));
    }
    router
        .fallback(|| async { Fault::nothing("There is nothing here. The pages begin at /.") })
        .layer(DefaultBodyLimit::max(MOST_FORM))
        .layer(middleware::from_fn_with_state(office.clone(), guard::headers))
        .layer(middleware::from_fn(log::each))
        .with_state(office)
}
