//! What a form of ours brings back.

use axum::Form;
use axum::extract::{FromRequest, Request};
use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use stillbar_core::journal::EntryId;

use super::refusal;
use crate::error::{Code, OfficeError};
use crate::people::Visitor;

/// The fields of a form whose token is that of the session.
pub struct Posted {
    /// Who sent it.
    pub visitor: Visitor,
    fields: Vec<(String, String)>,
}

/// The token that every form has in it.
pub fn csrf(visitor: &Visitor) -> Markup {
    html! { input type="hidden" name="csrf" value=(visitor.csrf); }
}

impl<S: Send + Sync> FromRequest<S> for Posted {
    type Rejection = Response;

    async fn from_request(request: Request, state: &S) -> Result<Posted, Response> {
        let visitor = request.extensions().get::<Visitor>().cloned();
        let Some(visitor) = visitor else {
            return Err(refusal(None, &OfficeError::broken("a form without a visitor")));
        };
        let read = Form::<Vec<(String, String)>>::from_request(request, state).await;
        let Form(fields) = read.map_err(|e| {
            let fault = OfficeError::refused(
                e.status(),
                Code::Unreadable,
                "The form could not be read. Open the page again and fill it in.",
            );
            refusal(Some(&visitor), &fault)
        })?;
        let posted = Posted { visitor, fields };
        // Equal lengths of random text: how long comparing takes tells nothing that could be used.
        if posted.text("csrf") != posted.visitor.csrf {
            let say = "The form was from an earlier session. Open the page again and fill it in.";
            return Err(refusal(
                Some(&posted.visitor),
                &OfficeError::refused(StatusCode::FORBIDDEN, Code::OldForm, say),
            ));
        }
        Ok(posted)
    }
}

impl Posted {
    /// A field, trimmed; empty if it is not there.
    pub fn text(&self, name: &str) -> String {
        self.fields.iter().find(|(n, _)| n == name).map(|(_, v)| v.trim().to_owned()).unwrap_or_default()
    }

    /// A field as it was typed.
    pub fn typed(&self, name: &str) -> &str {
        self.fields.iter().find(|(n, _)| n == name).map_or("", |(_, v)| v)
    }

    /// Whether a box was ticked.
    pub fn ticked(&self, name: &str) -> bool {
        self.fields.iter().any(|(n, _)| n == name)
    }

    /// The sites that were ticked; each must be one that the visitor sees.
    pub fn sites(&self) -> Result<Vec<EntryId>, OfficeError> {
        let named = self.fields.iter().filter(|(n, _)| n == "site");
        named
            .map(|(_, value)| {
                let site = value.parse().map_err(|_| OfficeError::unreadable("A site is named by 64 hex digits."))?;
                self.visitor.on(site).map(|()| site)
            })
            .collect()
    }
}
