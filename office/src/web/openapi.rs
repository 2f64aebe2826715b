//! The description at /openapi.json (OpenAPI 3.1): made from the table of routes, so that no route is missing and none is invented.

use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;
use serde_json::{Map, Value, json};

use super::{Who, body, routes};
use crate::exchange::{MOST_ENTRIES, Why};
use crate::fault::Fault;

/// What is said of a route beside its path.
struct About {
    say: &'static str,
    /// Parameters in the query or in headers: place, name, whether it must be there, schema.
    asks: Vec<(&'static str, &'static str, bool, Value)>,
    /// Kind and schema of the body.
    body: Option<(&'static str, Value)>,
    /// Statuses when it is done, with kind and schema of what comes back.
    done: Vec<(&'static str, Option<(&'static str, Value)>)>,
}

const JSON: &str = "application/json";
const HTML: &str = "text/html";
const FORM: &str = "application/x-www-form-urlencoded";

fn to(name: &str) -> Value {
    json!({"$ref": format!("#/components/schemas/{name}")})
}

fn form(fields: &[(&str, bool)]) -> Option<(&'static str, Value)> {
    let mut named = Map::new();
    for (name, _) in fields {
        named.insert((*name).into(), json!({"type": "string"}));
    }
    named.insert("csrf".into(), json!({"type": "string"}));
    let required: Vec<&str> = fields.iter().filter(|(_, must)| *must).map(|(name, _)| *name).chain(["csrf"]).collect();
    Some((FORM, json!({"type": "object", "properties": named, "required": required})))
}

fn text() -> Value {
    json!({"type": "string"})
}

fn number() -> Value {
    json!({"type": "integer", "minimum": 0, "maximum": i64::MAX})
}

fn page(say: &'static str) -> About {
    About { say, asks: vec![], body: None, done: vec![("200", Some((HTML, text()))), ("303", None)] }
}

fn posted(say: &'static str, fields: &[(&str, bool)]) -> About {
    About { body: form(fields), ..page(say) }
}

fn file(say: &'static str, kind: &'static str) -> About {
    About { done: vec![("200", Some((kind, text()))), ("303", None)], ..page(say) }
}

fn tus(name: &'static str, must: bool) -> (&'static str, &'static str, bool, Value) {
    let schema = match name {
        "Tus-Resumable" => json!({"type": "string", "const": "1.0.0"}),
        "Upload-Offset" | "Upload-Length" => json!({"type": "string", "pattern": "^[0-9]{1,15}$"}),
        _ => json!({"type": "string"}),
    };
    ("header", name, must, schema)
}

/// What each route does. `None` for a route that nobody described: a test fails then.
fn about(method: &str, path: &str) -> Option<About> {
    let plain = |say, status, schema: &str| About {
        say,
        asks: vec![],
        body: None,
        done: vec![(status, Some((JSON, to(schema))))],
    };
    Some(match (method, path) {
        ("GET", "/capabilities") => plain("Limits, and the office's clock", "200", "Capabilities"),
        ("POST", "/enrol") => {
            About { body: Some((JSON, to("Enrol"))), ..plain("A one-time code for a token", "201", "Enrolled") }
        }
        ("POST", "/entries") => About {
            asks: vec![("query", "of", false, to("Id"))],
            body: Some((JSON, to("Push"))),
            ..plain("Entries of one device's chain", "200", "Pushed")
        },
        ("GET", "/entries") => About {
            asks: vec![
                ("query", "after", false, text()),
                ("query", "limit", false, json!({"type": "integer", "minimum": 1, "maximum": MOST_ENTRIES})),
                ("query", "own", false, json!({"type": "integer", "enum": [0, 1]})),
            ],
            ..plain("What the phone's sites have, page by page", "200", "Page")
        },
        ("GET", "/digest") => plain("Counts and rolling hashes, to compare", "200", "Sums"),
        ("GET", "/wanted") => plain("Photos that the office lacks", "200", "Wanted"),
        ("OPTIONS", "/photos") => About { done: vec![("204", None)], ..page("What of tus is spoken") },
        ("POST", "/photos") => About {
            asks: vec![tus("Tus-Resumable", true), tus("Upload-Length", true), tus("Upload-Metadata", true)],
            done: vec![("200", None), ("201", None)],
            ..page("Begins an upload, or finds the one that was begun")
        },
        ("GET", "/photos/{name}") => About {
            asks: vec![("header", "Range", false, text())],
            done: vec![("200", Some(("*/*", text()))), ("206", Some(("application/octet-stream", text())))],
            ..page("A photo, or a part of it")
        },
        ("HEAD", "/photos/up/{id}") => {
            About { asks: vec![tus("Tus-Resumable", true)], done: vec![("200", None)], ..page("Where an upload is") }
        }
        ("PATCH", "/photos/up/{id}") => About {
            asks: vec![tus("Tus-Resumable", true), tus("Upload-Offset", true), tus("Upload-Checksum", false)],
            body: Some(("application/offset+octet-stream", json!({"type": "string", "format": "binary"}))),
            done: vec![("204", None)],
            ..page("Goes on with an upload")
        },
        ("DELETE", "/photos/up/{id}") => {
            About { asks: vec![tus("Tus-Resumable", true)], done: vec![("204", None)], ..page("Gives an upload up") }
        }
        ("GET", "/openapi.json") => {
            About { done: vec![("200", Some((JSON, json!({"type": "object"}))))], ..page("This description") }
        }
        ("GET", "/style.css") => file("The style of the pages", "text/css"),
        ("GET", "/office.js") => file("The script that renews the board", "text/javascript"),
        ("GET", "/icon.svg") => file("The icon", "image/svg+xml"),
        ("GET", "/sign-in") => page("The form to sign in"),
        ("POST", "/sign-in") => About {
            body: Some((
                FORM,
                json!({"type": "object", "properties": {"login": text(), "password": text()}, "required": ["login", "password"]}),
            )),
            ..page("Signs in")
        },
        ("POST", "/sign-out") => posted("Signs out", &[]),
        ("GET", "/") => page("Leads to the board"),
        ("GET", "/board") => page("Locks on now, as last heard"),
        ("GET", "/board/rows") => page("The part of the board that renews itself"),
        ("GET", "/board.csv") => file("Locks on now, as CSV", "text/csv"),
        ("GET", "/sites") => page("Sites"),
        ("GET", "/sites/{site}") => page("A site: jobs, network and tags"),
        ("GET", "/sites/{site}/jobs.csv") => file("The jobs of a site, as CSV", "text/csv"),
        ("GET", "/sites/{site}/export.json") => About {
            done: vec![("200", Some((JSON, json!({"type": "object"})))), ("303", None)],
            ..page("All entries of a site, with what is signed")
        },
        ("GET", "/sites/{site}/network") => page("The supply network of a site: drawing and parts"),
        ("GET", "/sites/{site}/network/{file}") => file(
            "The network as a file: drawing.svg, network.json, or the pair nodes.csv and links.csv; docs/formats.md",
            "*/*",
        ),
        ("POST", "/sites/{site}/network") => posted(
            "Notes the parts of a network file that are not known here, or known otherwise",
            &[("json", false), ("nodes", false), ("links", false)],
        ),
        ("GET", "/sites/{site}/jobs/{job}") => page("A job: what stands proved, locks, readings, photos, time line"),
        ("GET", "/sites/{site}/jobs/{job}/record/{kind}") => {
            file("The record of a job, with its time stamps, that anyone can verify: pdf, json or csv", "*/*")
        }
        ("GET", "/sites/{site}/jobs/{job}/stamps.json") => About {
            done: vec![("200", Some((JSON, json!({"type": "array", "items": {"type": "object"}})))), ("303", None)],
            ..page("The time stamps of a job, as `stillbar verify` takes them")
        },
        ("GET", "/pictures/{name}") => file("A photo for a page", "*/*"),
        ("GET", "/search") => About { asks: vec![("query", "q", false, text())], ..page("Search") },
        ("GET", "/password") => page("The form for a new password"),
        ("POST", "/password") => posted("A new password", &[("old", true), ("new", true), ("again", true)]),
        ("POST", "/sites") => posted("Adds a site", &[("name", true)]),
        ("GET", "/sites/{site}/plan") => page("The form to plan a job"),
        ("POST", "/sites/{site}/plan") => posted(
            "Plans a job",
            &[
                ("title", true),
                ("place", true),
                ("equipment", true),
                ("scope", true),
                ("system", true),
                ("earthing", true),
                ("order", true),
                ("volts", true),
            ],
        ),
        ("GET", "/labels") => page("The form for labels"),
        ("POST", "/labels") => About {
            done: vec![("200", Some(("application/pdf", text()))), ("303", None)],
            ..posted("A PDF of labels", &[("grid", true), ("name", false), ("points", false), ("signs", false)])
        },
        ("POST", "/sites/{site}") => posted("Takes a site in, or joins two", &[("do", true), ("main", false)]),
        ("GET", "/phones") => page("Phones"),
        ("POST", "/phones") => posted("A one-time code, as a QR", &[("label", true), ("site", false)]),
        ("POST", "/phones/{device}") => {
            posted("Withdraws or revokes a phone, or changes its sites", &[("do", true), ("site", false)])
        }
        ("GET", "/held") => page("What is aside and in quarantine"),
        ("POST", "/held/{device}/release") => posted("Releases what is aside of a phone", &[]),
        ("POST", "/held/quarantine/{id}") => posted("Notes what was found", &[("note", true)]),
        ("GET", "/people") => page("People"),
        ("POST", "/people") => {
            posted("Adds a person", &[("login", true), ("name", true), ("role", true), ("site", false)])
        }
        ("POST", "/people/{id}") => {
            posted("Changes a person", &[("do", true), ("role", false), ("off", false), ("site", false)])
        }
        ("GET", "/names") => page("People whom the journal names"),
        ("POST", "/names/{id}") => posted("Erases a person's name", &[("sure", true)]),
        ("GET", "/audit") => page("Who did what"),
        _ => return None,
    })
}

/// The whole description. A route that nobody described has no operation in it.
pub fn description(address: &str) -> Value {
    let mut paths: Map<String, Value> = Map::new();
    for route in routes() {
        let Some(about) = about(route.method, route.path) else { continue };
        let mut parameters: Vec<Value> = route
            .path
            .split('/')
            .filter_map(|part| part.strip_prefix('{')?.strip_suffix('}'))
            .map(|name| json!({"in": "path", "name": name, "required": true, "schema": {"type": "string", "minLength": 1}}))
            .collect();
        parameters.extend(
            about.asks.iter().map(
                |(place, name, must, schema)| json!({"in": place, "name": name, "required": must, "schema": schema}),
            ),
        );
        let mut responses: Map<String, Value> = Map::new();
        for (status, kind) in &about.done {
            let content = kind.as_ref().map(|(kind, schema)| json!({*kind: {"schema": schema}}));
            let mut said = json!({"description": "Done"});
            if let Some(content) = content {
                said["content"] = content;
            }
            responses.insert((*status).into(), said);
        }
        let refused = match route.who {
            Who::Person(_) => json!({HTML: {"schema": text()}, JSON: {"schema": to("Said")}}),
            _ if route.path == "/sign-in" => json!({HTML: {"schema": text()}, JSON: {"schema": to("Said")}}),
            _ => json!({JSON: {"schema": to("Said")}}),
        };
        responses.insert("4XX".into(), json!({"description": "Refused; says what to do", "content": refused}));
        responses.insert("503".into(), json!({"description": "Come again", "content": refused}));
        let mut operation = json!({"summary": about.say, "parameters": parameters, "responses": responses});
        operation["security"] = match route.who {
            Who::Anyone => json!([]),
            Who::Phone | Who::AnyPhone => json!([{"phone": []}]),
            Who::Person(role) => {
                operation["description"] = format!("For a {} and above.", role.word()).into();
                json!([{"person": []}])
            }
        };
        if let Some((kind, schema)) = &about.body {
            operation["requestBody"] = json!({"required": true, "content": {*kind: {"schema": schema}}});
        }
        let at = paths.entry(route.path).or_insert_with(|| json!({}));
        at[route.method.to_lowercase()] = operation;
    }
    json!({
        "openapi": "3.1.0",
        "info": {"title": "Stillbar office", "version": env!("CARGO_PKG_VERSION"), "description": "docs/exchange.md tells what the calls mean."},
        "servers": [{"url": address}],
        "paths": paths,
        "components": {
            "securitySchemes": {
                "phone": {"type": "http", "scheme": "bearer"},
                "person": {"type": "apiKey", "in": "cookie", "name": crate::people::COOKIE},
            },
            "schemas": schemas(),
        },
    })
}

fn schemas() -> Value {
    let reasons: Vec<&str> = Why::ALL.iter().map(|w| w.word()).collect();
    let object = |fields: Value, must: &[&str]| json!({"type": "object", "properties": fields, "required": must});
    let list = |of: Value| json!({"type": "array", "items": of});
    json!({
        "Id": {"type": "string", "pattern": "^[0-9a-f]{64}$"},
        "Said": object(json!({"error": text(), "say": text()}), &["error", "say"]),
        "Entry": object(json!({"body": text(), "sig": text()}), &["body", "sig"]),
        "Capabilities": object(
            json!({"exchange": number(), "entries-per-push": number(), "bytes-per-push": number(), "entries-per-page": number(),
                   "photo-bytes": number(), "copy-bytes": number(), "now-ms": number()}),
            &["exchange", "entries-per-push", "bytes-per-push", "entries-per-page", "photo-bytes", "copy-bytes", "now-ms"],
        ),
        "Enrol": {"type": "object", "additionalProperties": false, "required": ["code", "device", "label", "sig"],
                  "properties": {"code": text(), "device": to("Id"), "label": text(), "sig": text()}},
        "Enrolled": object(
            json!({"token": text(), "office": text(), "sites": list(to("Id")), "office-device": to("Id")}),
            &["token", "office", "sites", "office-device"],
        ),
        "Push": {"type": "object", "additionalProperties": false, "required": ["entries"],
                 "properties": {"entries": {"type": "array", "items": to("Entry"), "maxItems": MOST_ENTRIES}}},
        "Pushed": object(
            json!({
                "answers": list(object(
                    json!({"id": to("Id"), "answer": {"enum": ["accepted", "duplicate", "refused", "aside"]}, "reason": {"enum": reasons}}),
                    &["id", "answer"],
                )),
                "last": object(json!({"seq": number(), "id": to("Id")}), &["seq", "id"]),
            }),
            &["answers", "last"],
        ),
        "Page": object(
            json!({
                "entries": list(to("Entry")),
                "erased": list(object(json!({"id": to("Id"), "device": to("Id"), "seq": number()}), &["id", "device", "seq"])),
                "next": text(),
                "more": {"type": "boolean"},
            }),
            &["entries", "next", "more"],
        ),
        "Sums": object(
            json!({"sites": list(object(
                json!({"site": to("Id"), "devices": list(object(
                    json!({"device": to("Id"), "count": number(), "last-seq": number(), "hash": to("Id")}),
                    &["device", "count", "last-seq", "hash"],
                ))}),
                &["site", "devices"],
            ))}),
            &["sites"],
        ),
        "Wanted": object(
            json!({"wanted": list(object(
                json!({"sha256": to("Id"), "sizes": list(json!({"enum": ["320", "960", "original"]}))}),
                &["sha256", "sizes"],
            ))}),
            &["wanted"],
        ),
    })
}

pub(super) async fn described(
    axum::extract::State(office): axum::extract::State<crate::office::Shared>,
    headers: HeaderMap,
) -> Result<Response, Fault> {
    body::answer(&headers, StatusCode::OK, &description(&office.reached.url))
}
