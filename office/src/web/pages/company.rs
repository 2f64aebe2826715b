//! The rules of a company at a site: what holds, the file in and out, and what held before.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};
use stillbar_core::job::company::CompanyFile;
use stillbar_core::journal::{EntryId, fingerprint};
use stillbar_core::text;
use stillbar_core::world::CompanyHeld;

use super::form::{Posted, csrf};
use super::site::on_site;
use super::{Paged, cell, file, moment, or_page, shown, table};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::{AccountRole, Visitor};
use crate::records::{self, CompanyVersion};
use crate::web::guard::Origin;

/// What the file is called when it is kept.
const FILE: &str = "company-rules.json";

pub async fn company(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let failed = or_page(&visitor);
    let site = on_site(&visitor, &site).map_err(&failed)?;
    let found = call(&office, move |office| records::company(office, site)).await.map_err(&failed)?;
    let inside = html! {
        p { a href={ "/sites/" (site) } { "The site" } }
        @match &found.held {
            None => p { "No rules of a company hold at this site. Jobs are done by what the app asks." },
            Some(held) => (holds(site, held)),
        }
        @if visitor.person.role >= AccountRole::Lead { (bring_in(&visitor, site)) }
        @else { p .hint { "A site lead brings in another version." } }
        @if found.versions.len() > 1 { (before(&found.versions)) }
    };
    Ok(shown(&visitor, "Company rules", "/sites", inside))
}

fn holds(site: EntryId, held: &CompanyHeld) -> Markup {
    let file = CompanyFile { rules: (*held.rules).clone(), call: held.call.clone() };
    let told = text::company_file(&file, &fingerprint(&file.rules));
    let rows: Vec<Vec<Markup>> = told.iter().map(|(label, says)| vec![cell(label), cell(says)]).collect();
    html! {
        (table("What holds for jobs that are opened from now on", &["Rule", "What it says"], &rows))
        p { a href={ "/sites/" (site) "/company-rules/" (FILE) } { "The rules as a file" } }
    }
}

fn before(versions: &[CompanyVersion]) -> Markup {
    let rows: Vec<Vec<Markup>> = versions
        .iter()
        .map(|v| {
            let told = text::company_version(&v.rules, &fingerprint(&v.rules));
            vec![cell(told), cell(&v.by), moment(v.stamp.wall, v.stamp.zone)]
        })
        .collect();
    table("Versions, latest first: a job is done by the one that it was opened with", &["Version", "By", "When"], &rows)
}

fn bring_in(visitor: &Visitor, site: EntryId) -> Markup {
    html! {
        h2 { "Bring in a file" }
        p {
            "Rules of a company ask for more, or set less; they drop nothing that the app asks. Give what has changed a version of its own. "
            "The file is kept in your name and reaches the phones of this site with their next exchange; jobs that are open go on by the "
            "rules that they were opened with."
        }
        form method="post" action={ "/sites/" (site) "/company-rules" } .stack {
            (csrf(visitor))
            label for="rules" { "Rules as JSON" }
            input type="file" data-into="rules" accept=".json,application/json" aria-label="File for: Rules as JSON" hidden;
            textarea #rules name="rules" rows="12" spellcheck="false" {}
            button type="submit" { "Bring these rules in" }
        }
    }
}

pub async fn take_company(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(site): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let site = on_site(&posted.visitor, &site).map_err(&failed)?;
    let (person, typed) = (posted.visitor.person.clone(), posted.typed("rules").to_owned());
    let done = call(&office, move |office| {
        let file = CompanyFile::from_json(&typed)
            .map_err(|e| OfficeError::unreadable(format!("In the rules: {}", text::company_error(&e))))?;
        records::take_company(office, &person, site, &file, &origin.0)
    });
    done.await.map_err(&failed)?;
    Ok(Redirect::to(&format!("/sites/{site}/company-rules")).into_response())
}

pub async fn company_file(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let failed = or_page(&visitor);
    let site = on_site(&visitor, &site).map_err(&failed)?;
    let found = call(&office, move |office| records::company(office, site)).await.map_err(&failed)?;
    let nothing = || failed(OfficeError::nothing("No rules of a company hold at this site."));
    let CompanyHeld { rules, call, .. } = found.held.ok_or_else(nothing)?;
    let written = CompanyFile { rules: (*rules).clone(), call }.to_json();
    Ok(file(FILE, "application/json", written.into_bytes()))
}
