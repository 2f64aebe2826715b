//! What is said of a route beside its path: said in the table of routes, told at /openapi.json.

use serde_json::{Map, Value, json};
use utoipa::openapi::path::ParameterIn;
use utoipa::{IntoParams, ToSchema};

use super::ApiRoute;
use super::routes::Who;

pub(super) const JSON: &str = "application/json";
pub(super) const HTML: &str = "text/html";
const FORM: &str = "application/x-www-form-urlencoded";

/// What a route is asked, and what comes back.
#[derive(Default)]
pub struct AboutOffice {
    /// In a few words.
    pub say: &'static str,
    /// What is asked in the query or in headers, as OpenAPI has parameters.
    pub asks: Vec<Value>,
    /// Kind and schema of the body.
    pub body: Option<(&'static str, Value)>,
    /// Statuses when it is done, with kind and schema of what comes back.
    pub done: Vec<(u16, Option<(&'static str, Value)>)>,
    /// The types that these point to, by name.
    pub types: Vec<(String, Value)>,
}

fn text() -> Value {
    json!({"type": "string"})
}

/// A schema of a type, as JSON.
fn told(schema: impl serde::Serialize) -> Value {
    serde_json::to_value(schema).unwrap_or_default()
}

fn to<T: ToSchema>() -> Value {
    json!({"$ref": format!("#/components/schemas/{}", T::name())})
}

/// The types that `T` is made of, and itself.
pub(super) fn types<T: ToSchema>() -> Vec<(String, Value)> {
    let mut schemas = vec![(T::name().into_owned(), T::schema())];
    T::schemas(&mut schemas);
    schemas.into_iter().map(|(name, schema)| (name, bounded(told(schema)))).collect()
}

/// No number here is beyond what the database counts.
fn bounded(mut schema: Value) -> Value {
    match &mut schema {
        Value::Object(fields) => {
            fields.values_mut().for_each(|value| *value = bounded(value.take()));
            if fields.get("type") == Some(&json!("integer")) && !fields.contains_key("maximum") {
                fields.insert("maximum".into(), i64::MAX.into());
            }
        }
        Value::Array(all) => all.iter_mut().for_each(|value| *value = bounded(value.take())),
        _ => {}
    }
    schema
}

impl ApiRoute {
    /// What it does: a page, until something else is said.
    pub(super) fn says(mut self, say: &'static str) -> ApiRoute {
        self.about.say = say;
        self.about.done = vec![(200, Some((HTML, text()))), (303, None)];
        self
    }

    /// It gives a file of this kind. Who is not signed in is led there.
    pub(super) fn file(self, kind: &'static str) -> ApiRoute {
        self.whole(kind, text())
    }

    /// It gives JSON like this.
    pub(super) fn json(self, schema: Value) -> ApiRoute {
        self.whole(JSON, schema)
    }

    fn whole(mut self, kind: &'static str, schema: Value) -> ApiRoute {
        let to_sign_in = matches!(self.who, Who::Person(_)).then_some((303, None));
        self.about.done = [(200, Some((kind, schema)))].into_iter().chain(to_sign_in).collect();
        self
    }

    /// It answers with nothing but one of these.
    pub(super) fn bare(mut self, statuses: &[u16]) -> ApiRoute {
        self.about.done = statuses.iter().map(|status| (*status, None)).collect();
        self
    }

    /// It answers with one of these, and bytes of any kind.
    pub(super) fn bytes(mut self, statuses: &[(u16, &'static str)]) -> ApiRoute {
        self.about.done = statuses.iter().map(|(status, kind)| (*status, Some((*kind, text())))).collect();
        self
    }

    /// It answers with a `T`.
    pub(super) fn gives<T: ToSchema>(mut self, status: u16) -> ApiRoute {
        self.about.types.extend(types::<T>());
        self.about.done = vec![(status, Some((JSON, to::<T>())))];
        self
    }

    /// It is asked with a `T`. This version says nothing of other fields: they may mean something to another.
    pub(super) fn takes<T: ToSchema>(mut self) -> ApiRoute {
        let mut types = types::<T>();
        if let Some((_, asked)) = types.first_mut() {
            asked["additionalProperties"] = false.into();
        }
        self.about.types.extend(types);
        self.about.body = Some((JSON, to::<T>()));
        self
    }

    /// It is asked with bytes.
    pub(super) fn octets(mut self) -> ApiRoute {
        let kind = stillbar_protocol::photos::OCTETS;
        self.about.body = Some((kind, json!({"type": "string", "format": "binary"})));
        self
    }

    /// Its query has these.
    pub(super) fn asks<T: IntoParams>(mut self) -> ApiRoute {
        let parameters = T::into_params(|| Some(ParameterIn::Query));
        self.about.asks.extend(parameters.into_iter().map(|parameter| bounded(told(parameter))));
        self
    }

    /// Its query may have this text.
    pub(super) fn may_ask(mut self, name: &'static str) -> ApiRoute {
        self.about.asks.push(json!({"in": "query", "name": name, "required": false, "schema": text()}));
        self
    }

    /// It has this header, which must be there or not.
    pub(super) fn header(mut self, name: &'static str, must: bool) -> ApiRoute {
        let schema = match name {
            "Tus-Resumable" => json!({"type": "string", "const": stillbar_protocol::photos::TUS}),
            "Upload-Offset" | "Upload-Length" => json!({"type": "string", "pattern": "^[0-9]{1,15}$"}),
            _ => text(),
        };
        self.about.asks.push(json!({"in": "header", "name": name, "required": must, "schema": schema}));
        self
    }

    /// A form of ours with these fields, each of which must be there or not, and the token of the session.
    pub(super) fn form(self, fields: &[(&'static str, bool)]) -> ApiRoute {
        let with_token: Vec<_> = fields.iter().copied().chain([("csrf", true)]).collect();
        self.bare_form(&with_token)
    }

    /// A form before there is a session.
    pub(super) fn bare_form(mut self, fields: &[(&'static str, bool)]) -> ApiRoute {
        let named: Map<String, Value> = fields.iter().map(|(name, _)| ((*name).to_owned(), text())).collect();
        let required: Vec<&str> = fields.iter().filter(|(_, must)| *must).map(|(name, _)| *name).collect();
        self.about.body = Some((FORM, json!({"type": "object", "properties": named, "required": required})));
        self
    }
}
