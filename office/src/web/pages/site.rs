//! Sites, their jobs and tags, and the search.

use std::collections::BTreeSet;

use axum::Extension;
use axum::extract::{Path, Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use serde::Deserialize;
use stillbar_core::journal::{EntryId, fingerprint};
use stillbar_core::text::terms::Speaking;
use stillbar_core::text::{self, times};

use super::form::{Posted, csrf};
use super::network::drawing;
use super::{Paged, ago, cell, csv, file, moment, or_page, refusal, shown, table};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::{AccountRole, Visitor};
use crate::records::{self, JobOf, SiteOf};
use crate::web::guard::Origin;
use crate::{audit, params};

/// A site from the address, which the visitor must see.
pub fn on_site(visitor: &Visitor, text: &str) -> Result<EntryId, OfficeError> {
    let site = text.parse().map_err(|_| OfficeError::nothing("There is no such site here for you."))?;
    visitor.on(site).map(|()| site)
}

/// A job of a site from the address; whether there is one is told when it is read.
pub fn on_job(visitor: &Visitor, site: &str, job: &str) -> Result<(EntryId, EntryId), OfficeError> {
    let job = job.parse().map_err(|_| OfficeError::nothing("There is no such job here."));
    Ok((on_site(visitor, site)?, job?))
}

pub async fn sites(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let of = visitor.sites.clone();
    let all = call(&office, move |office| records::sites(office, &of)).await.map_err(or_page(&visitor))?;
    let name = |id: EntryId| all.iter().find(|s| s.id == id).map_or("another site", |s| s.name.as_str());
    let rows: Vec<Vec<Markup>> = all
        .iter()
        .map(|s| {
            let state = match (s.main == s.id, s.taken) {
                (false, _) => format!("same place as {}", name(s.main)),
                (true, true) => "taken in".into(),
                (true, false) => "noted by a phone, not looked at yet".into(),
            };
            vec![
                html! { a href={ "/sites/" (s.id) } { (s.name) } },
                html! { (s.open) },
                html! { (s.locks) },
                cell(state),
            ]
        })
        .collect();
    let inside = html! {
        @if all.is_empty() { p { "No site is here for you yet. A phone brings the sites it notes, or plan one." } }
        @else { (table("Sites", &["Site", "Open jobs", "Locks as last heard", "State"], &rows)) }
        @if visitor.person.role >= AccountRole::Planner {
            h2 { "Add a site" }
            form method="post" action="/sites" .stack {
                (csrf(&visitor))
                label for="name" { "Name of the site" }
                input #name name="name" maxlength="120" required;
                button type="submit" { "Add this site" }
            }
        }
    };
    Ok(shown(&visitor, "Sites and jobs", "/sites", inside))
}

pub async fn add_site(State(office): State<Shared>, Extension(origin): Extension<Origin>, posted: Posted) -> Paged {
    let (person, name) = (posted.visitor.person.clone(), posted.text("name"));
    let made = call(&office, move |office| {
        let site = records::plan_site(office, &person, &name, &origin.0)?;
        // Who adds a site sees it.
        office.change(|tx| {
            tx.run(
                "INSERT INTO person_site (person, site) VALUES ($1, $2) ON CONFLICT DO NOTHING",
                params![person.id.as_str(), site],
            )
        })?;
        Ok(site)
    });
    let site = made.await.map_err(or_page(&posted.visitor))?;
    Ok(Redirect::to(&format!("/sites/{site}")).into_response())
}

fn stage(job: &JobOf) -> String {
    job.next.as_ref().map_or_else(text::stage_over, |next| text::stage(next.step.stage()))
}

fn jobs_table(caption: &str, jobs: &[JobOf], with_site: bool, now: i64) -> Markup {
    let rows: Vec<Vec<Markup>> = jobs
        .iter()
        .map(|j| {
            let _speaking = Speaking::of(j.rules);
            vec![
                html! { a href={ "/sites/" (j.site) "/jobs/" (j.id) } { (j.title) } @if with_site { br; (j.site_name) } },
                cell(&j.place),
                cell(text::proof_state_heard(j.proof)),
                html! { (stage(j)) @if let Some(next) = &j.next { br; (text::step(next)) } },
                cell(ago(j.changed_ms, now)),
            ]
        })
        .collect();
    table(caption, &["Job", "Place", "What stands", "Stage and next step", "Last entry"], &rows)
}

pub async fn site(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let id = on_site(&visitor, &site).map_err(or_page(&visitor))?;
    let of = visitor.sites.clone();
    let found = call(&office, move |office| {
        let jobs = records::jobs(office, id)?;
        let all = records::sites(office, &of)?;
        let tags = office.read(|tx| records::tags(tx, id))?;
        let supply = records::supply(office, id)?;
        Ok((jobs, all, tags, supply, records::company(office, id)?))
    });
    let (jobs, all, tags, supply, company) = found.await.map_err(or_page(&visitor))?;
    let Some(this) = all.iter().find(|s| s.id == id) else {
        return Err(refusal(Some(&visitor), &OfficeError::nothing("There is no such site here for you.")));
    };
    let company = company.held.map_or_else(
        || "None hold yet.".to_owned(),
        |held| format!("{}.", text::company_version(&held.rules, &fingerprint(&held.rules))),
    );
    let now = office.now();
    let tag_rows: Vec<Vec<Markup>> = tags
        .iter()
        .map(|t| {
            vec![
                cell(&t.label),
                cell(&t.place),
                cell(&t.tag),
                html! { @if let Some(why) = &t.gone { "came off: " (why) } @else { "since " (moment(t.since_ms, t.zone)) } },
            ]
        })
        .collect();
    let inside = html! {
        @if visitor.person.role >= AccountRole::Planner { p { a .button href={ "/sites/" (id) "/plan" } { "Plan a job here" } } }
        @if jobs.is_empty() { p { "No job of this site is here yet." } }
        @else { (jobs_table("Jobs, as last heard", &jobs, false, now)) }
        p { a href={ "/sites/" (id) "/jobs.csv" } { "Jobs as CSV" } " · " a href={ "/sites/" (id) "/export.json" } { "The site's entries as JSON" } }
        h2 { "Supply network" }
        @match &supply {
            Some(supply) => { (drawing(id, supply)) p { a .button href={ "/sites/" (id) "/network" } { "Its parts, and files" } } }
            None => p { "Nothing is drawn yet. " a href={ "/sites/" (id) "/network" } { "Supply network of this site" } },
        }
        h2 { "Company rules" }
        p { (company) " " a href={ "/sites/" (id) "/company-rules" } { "Company rules of this site" } }
        h2 { "Tags at points of isolation" }
        @if tags.is_empty() { p { "No tag is known here." } }
        @else { (table("Tags, as last heard", &["Point", "Where", "Tag", "Hangs"], &tag_rows)) }
        @if visitor.person.role >= AccountRole::Lead { (looking_after(&visitor, this, &all)) }
    };
    Ok(shown(&visitor, &this.name, "/sites", inside))
}

fn looking_after(visitor: &Visitor, this: &SiteOf, all: &[SiteOf]) -> Markup {
    html! {
        h2 { "This site" }
        @if !this.taken {
            form method="post" action={ "/sites/" (this.id) } .stack {
                (csrf(visitor))
                p { "A phone noted this site. Take it in, or say which site it is the same place as." }
                button type="submit" name="do" value="take" { "Take this site in" }
            }
        }
        form method="post" action={ "/sites/" (this.id) } .stack {
            (csrf(visitor))
            label for="same" { "It is the same place as" }
            select #same name="main" {
                @for other in all.iter().filter(|s| s.id != this.id && s.main == s.id) { option value=(other.id) { (other.name) } }
            }
            p .hint { "Phones and people of either then get both. This cannot be parted again." }
            button type="submit" name="do" value="join" { "Join them" }
        }
    }
}

pub async fn change_site(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(site): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let id = on_site(&posted.visitor, &site).map_err(&failed)?;
    let (work, main, who) = (posted.text("do"), posted.text("main"), posted.visitor.person.login.clone());
    let main: Option<EntryId> = match work.as_str() {
        "join" => Some(on_site(&posted.visitor, &main).map_err(&failed)?),
        "take" => None,
        _ => return Err(failed(OfficeError::unreadable("Choose what to do with the site."))),
    };
    if main == Some(id) {
        return Err(failed(OfficeError::unreadable("A site is the same place as itself. Choose another.")));
    }
    let done = call(&office, move |office| {
        let now = office.now();
        office.change(|tx| {
            tx.run("UPDATE site SET taken = 1 WHERE id = $1", params![id])?;
            let Some(main) = main else {
                return audit::note(tx, now, &who, "site taken in", &id.to_string(), &origin.0);
            };
            // Whoever had either has both: sites are given by the main one.
            let rows = tx.rows("SELECT main FROM site WHERE id = $1", params![main])?;
            let main = rows.first().map_or(Ok(main), |row| row.id(0))?;
            let rows = tx.rows("SELECT main FROM site WHERE id = $1", params![id])?;
            let from = rows.first().map_or(Ok(id), |row| row.id(0))?;
            if from != main {
                tx.run("UPDATE site SET main = $1 WHERE main = $2", params![main, from])?;
                for sql in [
                    "INSERT INTO device_site (device, site) SELECT device, $1 FROM device_site WHERE site = $2 ON CONFLICT DO NOTHING",
                    "INSERT INTO person_site (person, site) SELECT person, $1 FROM person_site WHERE site = $2 ON CONFLICT DO NOTHING",
                ] {
                    tx.run(sql, params![main, from])?;
                }
                tx.run("DELETE FROM device_site WHERE site = $1", params![from])?;
                tx.run("DELETE FROM person_site WHERE site = $1", params![from])?;
            }
            audit::note(tx, now, &who, "sites joined", &format!("{id} into {main}"), &origin.0)
        })
    });
    done.await.map_err(&failed)?;
    Ok(Redirect::to(&format!("/sites/{id}")).into_response())
}

#[derive(Deserialize)]
pub struct Searched {
    #[serde(default)]
    q: String,
}

pub async fn search(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    asked: Result<Query<Searched>, axum::extract::rejection::QueryRejection>,
) -> Paged {
    let text: String = asked.map(|Query(a)| a.q).unwrap_or_default().chars().take(200).collect();
    let of: BTreeSet<EntryId> = visitor.sites.clone();
    let typed = text.clone();
    let found =
        call(
            &office,
            move |office| {
                if typed.trim().is_empty() { Ok(Vec::new()) } else { records::search(office, &of, &typed) }
            },
        );
    let found = found.await.map_err(or_page(&visitor))?;
    let inside = html! {
        form method="get" action="/search" .stack role="search" {
            label for="q" { "A job, a place, a site, a tag, or what is written on a lock" }
            input #q name="q" value=(text) type="search";
            button type="submit" { "Search" }
        }
        @if !text.trim().is_empty() {
            @if found.is_empty() { p role="status" { "No title, place, site, tag or lock that is on has that. What a job says besides is on its own page, and a phone may know more than the office has heard." } }
            @else { (jobs_table("Found, as last heard", &found, true, office.now())) }
        }
    };
    Ok(shown(&visitor, "Search", "/search", inside))
}

pub async fn jobs_csv(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Response {
    let id = match on_site(&visitor, &site) {
        Ok(id) => id,
        Err(fault) => return refusal(Some(&visitor), &fault),
    };
    match call(&office, move |office| records::jobs(office, id)).await {
        Err(fault) => refusal(Some(&visitor), &fault),
        Ok(jobs) => {
            let head = ["site", "job", "title", "place", "stage", "next step", "what stands", "handed back", "opened"];
            let mut rows = vec![head.map(str::to_owned).to_vec()];
            rows.extend(jobs.into_iter().map(|j| {
                let done = if j.done { "yes" } else { "no" }.to_owned();
                let _speaking = Speaking::of(j.rules);
                let opened = times::exact(j.opened_ms, 0);
                let (stage, proof) = (stage(&j), text::proof_state_heard(j.proof));
                let next = j.next.as_ref().map(text::step).unwrap_or_default();
                vec![j.site_name, j.id.to_string(), j.title, j.place, stage, next, proof, done, opened]
            }));
            file("jobs.csv", "text/csv; charset=utf-8", csv(&rows))
        }
    }
}
