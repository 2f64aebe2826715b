//! Signing in and out.

use axum::Extension;
use axum::Form;
use axum::extract::State;
use axum::extract::rejection::FormRejection;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;

use super::form::Posted;
use super::page;
use crate::error::{Code, OfficeError};
use crate::log::RefusedCode;
use crate::office::{Shared, call};
use crate::people::{self, COOKIE};
use crate::web::guard::{self, Origin};

fn form(say: &str, login: &str) -> Markup {
    html! {
        @if !say.is_empty() { p .notice role="alert" { (say) } }
        form method="post" action="/sign-in" .stack {
            label for="login" { "Sign-in name" }
            input #login name="login" value=(login) autocomplete="username" autocapitalize="none" required;
            label for="password" { "Password" }
            input #password name="password" type="password" autocomplete="current-password" required;
            button type="submit" { "Sign in" }
        }
    }
}

pub async fn sign_in_form() -> Response {
    page(None, "Sign in", "", form("", "")).into_response()
}

#[derive(Deserialize)]
pub struct SignIn {
    login: String,
    password: String,
}

pub async fn sign_in(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    headers: HeaderMap,
    asked: Result<Form<SignIn>, FormRejection>,
) -> Response {
    let again = |fault: &OfficeError, login: &str| {
        let (status, word, say) = fault.told();
        (status, Extension(RefusedCode(word)), page(None, "Sign in", "", form(&say, login))).into_response()
    };
    if !guard::same_origin(&headers) {
        return again(
            &OfficeError::refused(
                StatusCode::FORBIDDEN,
                Code::ForeignOrigin,
                "This came from another page. Sign in here.",
            ),
            "",
        );
    }
    let Ok(Form(SignIn { login, password })) = asked else {
        return again(&OfficeError::unreadable("Write your sign-in name and your password."), "");
    };
    let _turn = office.passwords.acquire().await;
    let name = login.clone();
    match call(&office, move |office| people::sign_in(office, &login, &password, &origin.0)).await {
        Ok(token) => {
            let secure = if office.reached.secure { "; Secure" } else { "" };
            let cookie = format!("{COOKIE}={token}; Path=/; HttpOnly; SameSite=Strict{secure}");
            ([(header::SET_COOKIE, cookie)], Redirect::to("/board")).into_response()
        }
        Err(fault) => again(&fault, &name),
    }
}

pub async fn sign_out(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    headers: HeaderMap,
    posted: Posted,
) -> Response {
    let (who, token) = (posted.visitor.person.login.clone(), guard::cookie(&headers).unwrap_or_default());
    if let Err(fault) = call(&office, move |office| people::sign_out(office, &token, &who, &origin.0)).await {
        return super::refusal(Some(&posted.visitor), &fault);
    }
    let cookie = format!("{COOKIE}=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0");
    ([(header::SET_COOKIE, cookie)], Redirect::to("/sign-in")).into_response()
}
