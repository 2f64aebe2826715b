//! The description at /openapi.json (OpenAPI 3.1): the table of routes with the types of the protocol, so that no route and no field is
//! missing and none is invented.

use axum::http::{HeaderMap, StatusCode};
use axum::response::Response;
use serde_json::{Map, Value, json};
use stillbar_protocol::{Refusal, schema::Id};

use super::about::{HTML, JSON, types};
use super::{ApiRoute, Who, body, routes};
use crate::error::OfficeError;

/// The whole description. A route of which nothing is said has no operation in it: a test fails then.
pub fn description(address: &str) -> Value {
    let mut paths: Map<String, Value> = Map::new();
    let mut schemas: Map<String, Value> = types::<Id>().into_iter().chain(types::<Refusal>()).collect();
    for route in routes().into_iter().filter(|route| !route.about.say.is_empty()) {
        let at = paths.entry(route.path).or_insert_with(|| json!({}));
        at[route.method.to_lowercase()] = operation(&route);
        schemas.extend(route.about.types);
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
            "schemas": schemas,
        },
    })
}

fn operation(route: &ApiRoute) -> Value {
    let about = &route.about;
    let in_path = route.path.split('/').filter_map(|part| part.strip_prefix('{')?.strip_suffix('}'));
    let in_path = in_path.map(
        |name| json!({"in": "path", "name": name, "required": true, "schema": {"type": "string", "minLength": 1}}),
    );
    let parameters: Vec<Value> = in_path.chain(about.asks.iter().cloned()).collect();
    let mut responses: Map<String, Value> = Map::new();
    for (status, kind) in &about.done {
        let mut said = json!({"description": "Done"});
        if let Some((kind, schema)) = kind {
            said["content"] = json!({*kind: {"schema": schema}});
        }
        responses.insert(status.to_string(), said);
    }
    let said = json!({"schema": {"$ref": "#/components/schemas/Refusal"}});
    let refused = match route.who {
        Who::Person(_) => json!({HTML: {"schema": {"type": "string"}}, JSON: said}),
        _ if route.path == "/sign-in" => json!({HTML: {"schema": {"type": "string"}}, JSON: said}),
        _ => json!({JSON: said}),
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
    operation
}

pub(super) async fn described(
    axum::extract::State(office): axum::extract::State<crate::office::Shared>,
    headers: HeaderMap,
) -> Result<Response, OfficeError> {
    body::answer(&headers, StatusCode::OK, &description(&office.reached.url))
}
