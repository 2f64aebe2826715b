//! The supply network of a site: its drawing, its parts, and files in and out.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};
use stillbar_core::journal::EntryId;
use stillbar_core::supply::Drawn;
use stillbar_core::supply::files::{FileError, Read, from_csv, from_json, to_csv, to_json};
use stillbar_core::{svg, text};

use super::form::{Posted, csrf};
use super::site::on_site;
use super::{Paged, cell, file, moment, or_page, shown, table};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::{AccountRole, Visitor};
use crate::records::{self, SiteSupply};
use crate::web::guard::Origin;

/// The drawing on a page; its letters are read in the file of its own, which can be made larger.
pub fn drawing(site: EntryId, supply: &SiteSupply) -> Markup {
    html! {
        a href={ "/sites/" (site) "/network/drawing.svg" } .drawn {
            img src={ "/sites/" (site) "/network/drawing.svg" } alt=(supply.words)
                width=(svg::length(supply.drawing.width)) height=(svg::length(supply.drawing.height));
        }
    }
}

pub async fn network(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let failed = or_page(&visitor);
    let site = on_site(&visitor, &site).map_err(&failed)?;
    let supply = call(&office, move |office| records::supply(office, site)).await.map_err(&failed)?;
    let inside = html! {
        p { a href={ "/sites/" (site) } { "The site" } }
        p .notice .warn { (text::other_sources()) }
        @match &supply {
            None => p { "Nothing is drawn of this site yet. A phone notes what is found on site; a planner brings in a file." },
            Some(supply) => {
                (drawing(site, supply))
                p .asof { "As last heard, with the locks of open jobs. Tap the drawing for its own page, where it can be made larger." }
                (parts(&supply.drawn))
                p {
                    a href={ "/sites/" (site) "/network/network.json" } { "The network as JSON" } " · "
                    a href={ "/sites/" (site) "/network/nodes.csv" } { "nodes" } " and "
                    a href={ "/sites/" (site) "/network/links.csv" } { "links as CSV" }
                }
            }
        }
        @if visitor.person.role >= AccountRole::Planner { (bring_in(&visitor, site)) }
    };
    Ok(shown(&visitor, "Supply network", "/sites", inside))
}

fn parts(drawn: &Drawn) -> Markup {
    let nodes: Vec<Vec<Markup>> = drawn
        .nodes()
        .iter()
        .map(|n| {
            let (part, stamp) = (&n.part, &n.stamp);
            let stops =
                if part.untraced.is_empty() { part.stops.clone() } else { format!("Not traced: {}", part.untraced) };
            vec![cell(&part.id), cell(part.kind.name()), cell(&part.place), cell(stops), moment(stamp.wall, stamp.zone)]
        })
        .collect();
    let links: Vec<Vec<Markup>> = drawn
        .links()
        .iter()
        .map(|l| {
            let (part, stamp) = (&l.part, &l.stamp);
            let seen = drawn.states().get(&part.id).map_or_else(String::new, |at| text::seen(*at));
            let lock = if part.lockable { "takes a lock" } else { "takes no lock" };
            vec![
                cell(&part.id),
                cell(format!("{}, {} to {}", part.kind.name(), part.from, part.to)),
                cell(&part.place),
                html! { (lock) @if !seen.is_empty() { br; (seen) } },
                moment(stamp.wall, stamp.zone),
            ]
        })
        .collect();
    html! {
        (table("Sources, boards and loads", &["Part", "Kind", "Where", "What stops", "Noted"], &nodes))
        (table("Switches and cables", &["Part", "Between", "Where", "Lock", "Noted"], &links))
    }
}

fn bring_in(visitor: &Visitor, site: EntryId) -> Markup {
    html! {
        h2 { "Bring in a file" }
        p {
            "A part with a name that is known here takes the place of what was noted of it. What the file leaves out stays. Everything is kept "
            "in your name and reaches the phones of this site with their next exchange."
        }
        form method="post" action={ "/sites/" (site) "/network" } .stack {
            (csrf(visitor))
            (text("json", "A network as JSON", ".json,application/json"))
            p { "or a pair of tables, as a spreadsheet saves them:" }
            (text("nodes", "Sources, boards and loads as CSV", ".csv,text/csv"))
            (text("links", "Switches and cables as CSV", ".csv,text/csv"))
            button type="submit" { "Bring this in" }
        }
    }
}

/// A text that is pasted, or filled from a file by the pages' script.
fn text(name: &str, label: &str, accept: &str) -> Markup {
    html! {
        label for=(name) { (label) }
        input type="file" data-into=(name) accept=(accept) aria-label={ "File for: " (label) } hidden;
        textarea #(name) name=(name) rows="4" spellcheck="false" {}
    }
}

pub async fn take_network(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(site): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let site = on_site(&posted.visitor, &site).map_err(&failed)?;
    let person = posted.visitor.person.clone();
    let (json, nodes, links) =
        (posted.typed("json").to_owned(), posted.typed("nodes").to_owned(), posted.typed("links").to_owned());
    let done = call(&office, move |office| {
        let read = read(&json, &nodes, &links)?;
        records::take_network(office, &person, site, &read.network, &origin.0).map(|parts| (parts, read.remarks))
    });
    let (parts, remarks) = done.await.map_err(&failed)?;
    if remarks.is_empty() {
        return Ok(Redirect::to(&format!("/sites/{site}/network")).into_response());
    }
    let inside = html! {
        p { @if parts == 1 { "1 part was noted." } @else { (parts) " parts were noted." } " Some of it was taken for something unknown:" }
        ul { @for remark in &remarks { li { (text::remark(remark)) } } }
        p { a .button href={ "/sites/" (site) "/network" } { "Supply network" } }
    };
    Ok(shown(&posted.visitor, "Brought in", "/sites", inside))
}

fn read(json: &str, nodes: &str, links: &str) -> Result<Read, OfficeError> {
    let told = |file: &str, e: &FileError| OfficeError::unreadable(format!("In {file}: {}", text::file_error(e)));
    match (json.trim().is_empty(), nodes.trim().is_empty() && links.trim().is_empty()) {
        (false, true) => from_json(json).map_err(|e| told("the JSON", &e)),
        (true, false) => from_csv(nodes, links).map_err(|e| told(if e.second { "the links" } else { "the nodes" }, &e)),
        (true, true) => {
            Err(OfficeError::unreadable("Choose a file or paste a network: JSON, or nodes and links as CSV."))
        }
        (false, false) => Err(OfficeError::unreadable("Bring in either JSON or the pair of CSV tables, not both.")),
    }
}

pub async fn network_file(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path((site, name)): Path<(String, String)>,
) -> Paged {
    let failed = or_page(&visitor);
    let site = on_site(&visitor, &site).map_err(&failed)?;
    let nothing = || failed(OfficeError::nothing("There is no such file of a network here."));
    let supply = call(&office, move |office| records::supply(office, site)).await.map_err(&failed)?;
    let Some(SiteSupply { mut drawn, drawing, words }) = supply else { return Err(nothing()) };
    let network = drawn.network();
    Ok(match name.as_str() {
        "drawing.svg" => ([("content-type", "image/svg+xml")], svg::file(&drawing, &words)).into_response(),
        "network.json" => file(&name, "application/json", to_json(&network).into_bytes()),
        "nodes.csv" => file(&name, "text/csv; charset=utf-8", to_csv(&network).0.into_bytes()),
        "links.csv" => file(&name, "text/csv; charset=utf-8", to_csv(&network).1.into_bytes()),
        _ => return Err(nothing()),
    })
}
