//! The table of routes: what is answered, to whom, in one place. The router, the description at /openapi.json and the test of who may
//! do what all read it.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::header;
use axum::middleware;
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodRouter, delete, get, head, options, patch, post};

use serde_json::json;
use stillbar_protocol::{AllWanted, Ask, Capabilities, Digest, Enrolled, Of, Page, Pull, Push, Pushed, paths};

use super::about::AboutOffice;
use super::{enrolling, guard, openapi, pages, phones, photos};
use crate::error::OfficeError;
use crate::log;
use crate::office::Shared;
use crate::people::AccountRole;

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
    Person(AccountRole),
}

/// A route.
pub struct ApiRoute {
    /// `GET`, `POST`, ...
    pub method: &'static str,
    /// The path, with `{name}` where something is filled in.
    pub path: &'static str,
    /// Whom it is for.
    pub who: Who,
    /// What answers.
    pub answer: MethodRouter<Shared>,
    /// What is said of it.
    pub about: AboutOffice,
}

fn route(method: &'static str, path: &'static str, who: Who, answer: MethodRouter<Shared>) -> ApiRoute {
    ApiRoute { method, path, who, answer, about: AboutOffice::default() }
}

/// All routes.
pub fn routes() -> Vec<ApiRoute> {
    use Who::{AnyPhone, Anyone, Phone};
    let reader = Who::Person(AccountRole::Reader);
    let planner = Who::Person(AccountRole::Planner);
    let lead = Who::Person(AccountRole::Lead);
    let admin = Who::Person(AccountRole::Admin);
    vec![
        route("GET", paths::CAPABILITIES, Anyone, get(phones::capabilities))
            .says("Limits, versions, and the office's clock")
            .gives::<Capabilities>(200),
        route("POST", paths::ENROL, Anyone, post(enrolling::enrol))
            .says("A one-time code for a token")
            .takes::<Ask>()
            .gives::<Enrolled>(201),
        route("POST", paths::ENTRIES, AnyPhone, post(phones::push))
            .says("Entries of one device's chain")
            .asks::<Of>()
            .takes::<Push>()
            .gives::<Pushed>(200),
        route("GET", paths::ENTRIES, Phone, get(phones::pull))
            .says("What the phone's sites have, page by page")
            .asks::<Pull>()
            .gives::<Page>(200),
        route("GET", paths::DIGEST, Phone, get(phones::digest))
            .says("Counts and rolling hashes, to compare")
            .gives::<Digest>(200),
        route("GET", paths::WANTED, AnyPhone, get(phones::photos_wanted))
            .says("Photos that the office lacks")
            .gives::<AllWanted>(200),
        route("OPTIONS", paths::PHOTOS, Anyone, options(photos::options)).says("What of tus is spoken").bare(&[204]),
        route("POST", paths::PHOTOS, AnyPhone, post(photos::begin))
            .says("Begins an upload, or finds the one that was begun")
            .header("Tus-Resumable", true)
            .header("Upload-Length", true)
            .header("Upload-Metadata", true)
            .bare(&[200, 201]),
        route("GET", "/photos/{name}", Phone, get(photos::fetch))
            .says("A photo, or a part of it")
            .header("Range", false)
            .bytes(&[(200, "*/*"), (206, "application/octet-stream")]),
        route("HEAD", "/photos/up/{id}", AnyPhone, head(photos::head))
            .says("Where an upload is")
            .header("Tus-Resumable", true)
            .bare(&[200]),
        route("PATCH", "/photos/up/{id}", AnyPhone, patch(photos::add))
            .says("Goes on with an upload")
            .header("Tus-Resumable", true)
            .header("Upload-Offset", true)
            .header("Upload-Checksum", false)
            .octets()
            .bare(&[204]),
        route("DELETE", "/photos/up/{id}", AnyPhone, delete(photos::give_up))
            .says("Gives an upload up")
            .header("Tus-Resumable", true)
            .bare(&[204]),
        route("GET", "/openapi.json", Anyone, get(openapi::described)).says("This description").json(json!({"type": "object"})),
        route(
            "GET",
            "/style.css",
            Anyone,
            get(|| asset("text/css; charset=utf-8", include_str!("../../assets/style.css"))),
        )
        .says("The style of the pages")
        .file("text/css"),
        route(
            "GET",
            "/office.js",
            Anyone,
            get(|| asset("text/javascript; charset=utf-8", include_str!("../../assets/office.js"))),
        )
        .says("The script that renews the board")
        .file("text/javascript"),
        route("GET", "/icon.svg", Anyone, get(|| asset("image/svg+xml", include_str!("../../assets/icon.svg"))))
            .says("The icon")
            .file("image/svg+xml"),
        route("GET", "/sign-in", Anyone, get(pages::sign_in_form)).says("The form to sign in"),
        route("POST", "/sign-in", Anyone, post(pages::sign_in))
            .says("Signs in")
            .bare_form(&[("login", true), ("password", true)]),
        route("POST", "/sign-out", reader, post(pages::sign_out)).says("Signs out").form(&[]),
        route("GET", "/", reader, get(pages::home)).says("Leads to the board"),
        route("GET", "/board", reader, get(pages::board)).says("Locks on now, as last heard"),
        route("GET", "/board/rows", reader, get(pages::board_rows)).says("The part of the board that renews itself"),
        route("GET", "/board.csv", reader, get(pages::board_csv)).says("Locks on now, as CSV").file("text/csv"),
        route("GET", "/sites", reader, get(pages::sites)).says("Sites"),
        route("GET", "/sites/{site}", reader, get(pages::site)).says("A site: jobs, network and tags"),
        route("GET", "/sites/{site}/jobs.csv", reader, get(pages::jobs_csv))
            .says("The jobs of a site, as CSV")
            .file("text/csv"),
        route("GET", "/sites/{site}/export.json", reader, get(pages::export_json))
            .says("All entries of a site, with what is signed")
            .json(json!({"type": "object"})),
        route("GET", "/sites/{site}/network", reader, get(pages::network))
            .says("The supply network of a site: drawing and parts"),
        route("GET", "/sites/{site}/network/{file}", reader, get(pages::network_file))
            .says("The network as a file: drawing.svg, network.json, or the pair nodes.csv and links.csv; docs/formats.md")
            .file("*/*"),
        route("GET", "/sites/{site}/company-rules", reader, get(pages::company))
            .says("The rules of a company at a site: what holds, and what held before"),
        route("GET", "/sites/{site}/company-rules/company-rules.json", reader, get(pages::company_file))
            .says("The rules that hold, as a file; docs/company-rules.md")
            .file("application/json"),
        route("GET", "/sites/{site}/jobs/{job}", reader, get(pages::job))
            .says("A job: what stands proved, locks, readings, photos, time line"),
        route("GET", "/sites/{site}/jobs/{job}/record/{kind}", reader, get(pages::record))
            .says("The record of a job, with its time stamps, that anyone can verify: pdf, json or csv")
            .file("*/*"),
        route("GET", "/sites/{site}/jobs/{job}/stamps.json", reader, get(pages::stamps))
            .says("The time stamps of a job, as `stillbar verify` takes them")
            .json(json!({"type": "array", "items": {"type": "object"}})),
        route("GET", "/pictures/{name}", reader, get(pages::picture)).says("A photo for a page").file("*/*"),
        route("GET", "/search", reader, get(pages::search)).says("Search").may_ask("q"),
        route("GET", "/password", reader, get(pages::password)).says("The form for a new password"),
        route("POST", "/password", reader, post(pages::set_password))
            .says("A new password")
            .form(&[("old", true), ("new", true), ("again", true)]),
        route("POST", "/sites", planner, post(pages::add_site)).says("Adds a site").form(&[("name", true)]),
        route("GET", "/sites/{site}/plan", planner, get(pages::plan_form)).says("The form to plan a job"),
        route("POST", "/sites/{site}/plan", planner, post(pages::plan)).says("Plans a job").form(&[
            ("title", true),
            ("place", true),
            ("equipment", true),
            ("scope", true),
            ("rules", false),
            ("system", true),
            ("earthing", true),
            ("order", true),
            ("volts", true),
        ]),
        route(
            "POST",
            "/sites/{site}/network",
            planner,
            post(pages::take_network).layer(DefaultBodyLimit::max(MAX_NETWORK)),
        )
        .says("Notes the parts of a network file that are not known here, or known otherwise")
        .form(&[("json", false), ("nodes", false), ("links", false)]),
        route("GET", "/labels", planner, get(pages::labels)).says("The form for labels"),
        route("POST", "/labels", planner, post(pages::print_labels))
            .says("A PDF of labels")
            .form(&[("grid", true), ("name", false), ("points", false), ("signs", false)])
            .file("application/pdf"),
        route("POST", "/sites/{site}", lead, post(pages::change_site))
            .says("Takes a site in, or joins two")
            .form(&[("do", true), ("main", false)]),
        route("POST", "/sites/{site}/company-rules", lead, post(pages::take_company))
            .says("Takes in a file of rules of a company, for jobs that are opened from then on")
            .form(&[("rules", true)]),
        route("GET", "/phones", lead, get(pages::phones)).says("Phones"),
        route("POST", "/phones", lead, post(pages::make_code))
            .says("A one-time code, as a QR")
            .form(&[("label", true), ("site", false)]),
        route("POST", "/phones/{device}", lead, post(pages::change_phone))
            .says("Withdraws or revokes a phone, or changes its sites")
            .form(&[("do", true), ("site", false)]),
        route("GET", "/held", lead, get(pages::held)).says("What is aside and in quarantine"),
        route("POST", "/held/{device}/release", lead, post(pages::release))
            .says("Releases what is aside of a phone")
            .form(&[]),
        route("POST", "/held/quarantine/{id}", lead, post(pages::look_at))
            .says("Notes what was found")
            .form(&[("note", true)]),
        route("GET", "/people", admin, get(pages::people)).says("People"),
        route("POST", "/people", admin, post(pages::add_person))
            .says("Adds a person")
            .form(&[("login", true), ("name", true), ("role", true), ("site", false)]),
        route("POST", "/people/{id}", admin, post(pages::change_person))
            .says("Changes a person")
            .form(&[("do", true), ("role", false), ("off", false), ("site", false)]),
        route("GET", "/names", admin, get(pages::names)).says("People whom the journal names"),
        route("POST", "/names/{id}", admin, post(pages::erase)).says("Erases a person's name").form(&[("sure", true)]),
        route("GET", "/audit", admin, get(pages::audit)).says("Who did what"),
    ]
}

async fn asset(kind: &'static str, text: &'static str) -> Response {
    // Not cached, so that a page never meets the script of another version.
    ([(header::CONTENT_TYPE, kind)], text).into_response()
}

/// Bytes of a form at most. What phones send is bounded where it is read, with a sentence of its own.
const MAX_FORM: usize = 256 * 1024;

/// Bytes of the form with a network at most: the most parts that a site's network takes, with long texts, as a form writes them.
const MAX_NETWORK: usize = 8 * 1024 * 1024;

/// All that the office answers.
pub fn router(office: Shared) -> Router {
    let mut router = Router::new();
    for ApiRoute { path, who, answer, .. } in routes() {
        let admit = middleware::from_fn_with_state((office.clone(), who), guard::admit);
        router = router.route(path, answer.layer(admit));
    }
    router
        .fallback(|| async { OfficeError::nothing("There is nothing here. The pages begin at /.") })
        .layer(DefaultBodyLimit::max(MAX_FORM))
        .layer(middleware::from_fn_with_state(office.clone(), guard::headers))
        .layer(middleware::from_fn(log::each))
        .with_state(office)
}
