//! People of the office, one's own password, and who did what.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};

use super::form::{Posted, csrf};
use super::phones::site_boxes;
use super::{Paged, cell, moment, or_page, shown, table};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::{self, AccountRole, NewAccount, Visitor};
use crate::records;
use crate::web::guard::Origin;
use crate::{audit as notes, params};

fn roles(chosen: AccountRole, id: &str) -> Markup {
    html! {
        label for=(id) { "Role" }
        select id=(id) name="role" { @for role in AccountRole::ALL { option value=(role.word()) selected[role == chosen] { (role.word()) } } }
    }
}

pub async fn people(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let of = visitor.sites.clone();
    let found = call(&office, move |office| {
        let all = records::sites(office, &of)?;
        let people = office.read(|tx| {
            let mut people = Vec::new();
            for person in people::all(tx)? {
                let rows = tx.rows("SELECT site FROM person_site WHERE person = $1", params![person.id.as_str()])?;
                let sites = rows.iter().map(|row| row.id(0)).collect::<Result<Vec<_>, _>>()?;
                people.push((person, sites));
            }
            Ok(people)
        })?;
        Ok((all, people))
    });
    let (all, people) = found.await.map_err(or_page(&visitor))?;
    let inside = html! {
        h2 { "Add a person" }
        form method="post" action="/people" .stack {
            (csrf(&visitor))
            label for="name" { "Name" }
            input #name name="name" maxlength="80" required;
            label for="login" { "Sign-in name" }
            input #login name="login" maxlength="60" autocapitalize="none" required;
            (roles(AccountRole::Reader, "role"))
            (site_boxes(&all, &[]))
            button type="submit" { "Add this person" }
        }
        h2 { "People" }
        @for (person, sites) in &people {
            section .card aria-labelledby={ "u-" (person.id) } {
                h3 id={ "u-" (person.id) } { (person.name) }
                p .hint { (person.login) ", " (person.role.word()) @if person.off { ", may not sign in" } @if person.fresh { ", has a one-time password" } }
                details {
                    summary { "Change " (person.name) }
                    form method="post" action={ "/people/" (person.id) } .stack {
                        (csrf(&visitor))
                        (roles(person.role, &format!("role-{}", person.id)))
                        label .box { input type="checkbox" name="off" value="1" checked[person.off]; span { "May not sign in" } }
                        (site_boxes(&all, sites))
                        button type="submit" name="do" value="keep" { "Keep this" }
                    }
                    form method="post" action={ "/people/" (person.id) } .stack {
                        (csrf(&visitor))
                        button type="submit" name="do" value="password" { "Give a new one-time password" }
                    }
                }
            }
        }
    };
    Ok(shown(&visitor, "People", "/people", inside))
}

fn once(visitor: &Visitor, login: &str, password: &str) -> axum::response::Response {
    let inside = html! {
        p { "Give this to " strong { (login) } ". It is shown once; the person chooses one of their own when they sign in." }
        p .code { code { (password) } }
        p { a href="/people" { "People" } }
    };
    shown(visitor, "A one-time password", "/people", inside)
}

pub async fn add_person(State(office): State<Shared>, Extension(origin): Extension<Origin>, posted: Posted) -> Paged {
    let failed = or_page(&posted.visitor);
    let role =
        AccountRole::named(&posted.text("role")).ok_or_else(|| failed(OfficeError::unreadable("Choose a role.")))?;
    let sites = posted.sites().map_err(&failed)?;
    let new = NewAccount { login: posted.text("login"), name: posted.text("name"), role, sites };
    let (who, login) = (posted.visitor.person.login.clone(), new.login.clone());
    let made = call(&office, move |office| people::add(office, &new, &who, &origin.0)).await.map_err(&failed)?;
    Ok(once(&posted.visitor, &login, &made))
}

pub async fn change_person(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(id): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let who = posted.visitor.person.clone();
    match posted.text("do").as_str() {
        "password" => {
            let person = id.clone();
            let found =
                call(&office, move |office| office.read(|tx| people::person(tx, &person))).await.map_err(&failed)?;
            let made = call(&office, move |office| people::renew(office, &id, &who.login, &origin.0)).await;
            Ok(once(&posted.visitor, &found.login, &made.map_err(&failed)?))
        }
        "keep" => {
            let role = AccountRole::named(&posted.text("role"))
                .ok_or_else(|| failed(OfficeError::unreadable("Choose a role.")))?;
            let (off, sites) = (posted.ticked("off"), posted.sites().map_err(&failed)?);
            if id == who.id && (off || role != AccountRole::Admin) {
                return Err(failed(OfficeError::unreadable(
                    "You cannot take away your own rights. Ask another admin.",
                )));
            }
            call(&office, move |office| {
                let now = office.now();
                office.change(|tx| {
                    let found = people::person(tx, &id)?;
                    let sql = "UPDATE person SET role = $1, off = $2 WHERE id = $3";
                    tx.run(sql, params![role.number(), off, id.as_str()])?;
                    people::give_sites(tx, &id, &sites)?;
                    if off {
                        tx.run("DELETE FROM session WHERE person = $1", params![id.as_str()])?;
                    }
                    let about = format!("{}, {}{}", found.login, role.word(), if off { ", off" } else { "" });
                    notes::note(tx, now, &who.login, "person changed", &about, &origin.0)
                })
            })
            .await
            .map_err(&failed)?;
            Ok(Redirect::to("/people").into_response())
        }
        _ => Err(failed(OfficeError::unreadable("Choose what to change."))),
    }
}

pub async fn password(Extension(visitor): Extension<Visitor>) -> Paged {
    let inside = html! {
        @if visitor.person.fresh { p .notice .must { "Choose a password of your own before you go on." } }
        form method="post" action="/password" .stack {
            (csrf(&visitor))
            label for="old" { "Password so far" }
            input #old name="old" type="password" autocomplete="current-password" required;
            label for="new" { "New password, at least 10 characters" }
            input #new name="new" type="password" autocomplete="new-password" minlength="10" required;
            label for="again" { "The new one again" }
            input #again name="again" type="password" autocomplete="new-password" required;
            button type="submit" { "Keep the new password" }
        }
    };
    Ok(shown(&visitor, "Your password", "/password", inside))
}

pub async fn set_password(State(office): State<Shared>, Extension(origin): Extension<Origin>, posted: Posted) -> Paged {
    let failed = or_page(&posted.visitor);
    let person = posted.visitor.person.clone();
    let (old, new, again) = (posted.typed("old").to_owned(), posted.typed("new").to_owned(), posted.typed("again"));
    if new != again {
        return Err(failed(OfficeError::unreadable("The two new passwords differ. Go back and write them again.")));
    }
    people::check_new(&new, &person.login).map_err(&failed)?;
    let _turn = office.passwords.acquire().await;
    call(&office, move |office| people::choose(office, &person, &old, &new, &origin.0)).await.map_err(&failed)?;
    Ok(Redirect::to("/board").into_response())
}

/// Notes of the audit that are shown.
const MAX: usize = 300;

pub async fn audit(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let found = call(&office, |office| {
        office.read(|tx| {
            let rows =
                tx.rows("SELECT ms, who, what, about, origin FROM audit ORDER BY number DESC LIMIT $1", params![MAX])?;
            rows.iter()
                .map(|row| Ok((row.int(0)?, [row.text(1)?, row.text(2)?, row.text(3)?, row.text(4)?])))
                .collect::<Result<Vec<_>, OfficeError>>()
        })
    });
    let found = found.await.map_err(or_page(&visitor))?;
    let rows: Vec<Vec<Markup>> = found
        .iter()
        .map(|(ms, [who, what, about, from])| vec![moment(*ms, 0), cell(who), cell(what), cell(about), cell(from)])
        .collect();
    let inside = table("Latest first", &["When", "Who", "What", "About", "From"], &rows);
    Ok(shown(&visitor, "Who did what", "/audit", inside))
}
