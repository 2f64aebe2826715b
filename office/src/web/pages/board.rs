//! Locks on now, as last heard.

use axum::Extension;
use axum::extract::State;
use axum::response::{Html, IntoResponse, Redirect, Response};
use maud::{Markup, html};
use stillbar_core::text::{no_pin, times};

use super::{Paged, ago, cell, csv, file, moment, or_page, shown, table};
use crate::office::{Shared, call};
use crate::people::Visitor;
use crate::records::{self, Board, HeldLock, LockOn};

pub async fn home() -> Redirect {
    Redirect::to("/board")
}

async fn look(office: &Shared, visitor: &Visitor) -> Result<(Markup, Vec<LockOn>), Response> {
    let sites = visitor.sites.clone();
    let found = call(office, move |office| records::board(office, &sites)).await;
    let Board { on, owed, held } = found.map_err(or_page(visitor))?;
    let now = office.now();
    let drawn = html! {
        p .asof { "As known here at " (moment(now, 0)) ". Each lock is as last heard from a phone." }
        @if on.is_empty() {
            p { strong { "No lock is known here. That is no clearance" } ": phones without signal tell of their locks later. Look at the point itself." }
        } @else {
            (locks(&format!("{} on, as last heard", count(on.len())), &on, now))
        }
        @if !owed.is_empty() {
            h2 { "Forced off, owner not told" }
            p .notice .must { "Tell each owner before they resume work." }
            (locks("Forced off", &owed, now))
        }
        @if !held.is_empty() { (not_taken(&held)) }
    };
    Ok((drawn, on))
}

fn count(n: usize) -> String {
    if n == 1 { "1 lock".into() } else { format!("{n} locks") }
}

fn locks(caption: &str, all: &[LockOn], now: i64) -> Markup {
    let head = ["Where", "Whose", "Lock", "Key", "Since", "Last heard"];
    let rows: Vec<Vec<Markup>> = all
        .iter()
        .map(|l| {
            vec![
                html! { strong { (l.place) } br; (l.site_name) br; a href={ "/sites/" (l.site) "/jobs/" (l.job) } { (l.job_title) } },
                html! { strong { (l.owner) } @if !l.telephone.is_empty() { br; (l.telephone) } },
                cell(&l.label),
                cell(&l.key_at),
                html! { (moment(l.since_ms, l.zone)) @if l.no_pin { (no_pin(String::new(), true)) } },
                html! { (ago(l.heard_ms, now)) br; (l.phone) },
            ]
        })
        .collect();
    table(caption, &head, &rows)
}

fn not_taken(held: &[HeldLock]) -> Markup {
    let rows: Vec<Vec<Markup>> = held
        .iter()
        .map(|h| vec![html! { strong { "Lock " (h.label) } }, cell(&h.phone), moment(h.since_ms, h.zone), cell(&h.why)])
        .collect();
    html! {
        h2 { "Not taken in yet" }
        p .notice .warn { "A phone told of these locks in entries that somebody has to look at. Treat them as on." }
        (table("Locks in entries that are not taken in", &["Lock", "Phone", "By its clock", "Why"], &rows))
    }
}

pub async fn board(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let (drawn, _) = look(&office, &visitor).await?;
    let inside = html! {
        div #board data-renew="/board/rows" { (drawn) }
        p #renewed .unseen role="status" {}
        p { a href="/board.csv" { "As CSV" } }
    };
    Ok(shown(&visitor, "Locks on now", "/board", inside))
}

/// The part that renews itself.
pub async fn board_rows(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let (drawn, _) = look(&office, &visitor).await?;
    Ok(Html(drawn.into_string()).into_response())
}

pub async fn board_csv(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let (_, on) = look(&office, &visitor).await?;
    let head = [
        "site",
        "job",
        "place",
        "lock",
        "owner",
        "telephone",
        "key",
        "since",
        "without PIN",
        "phone",
        "last heard",
        "as last heard, no clearance",
    ];
    let mut rows = vec![head.map(str::to_owned).to_vec()];
    rows.extend(on.iter().map(|l| {
        vec![
            l.site_name.clone(),
            l.job_title.clone(),
            l.place.clone(),
            l.label.clone(),
            l.owner.clone(),
            l.telephone.clone(),
            l.key_at.clone(),
            times::exact(l.since_ms, l.zone),
            if l.no_pin { "yes".into() } else { String::new() },
            l.phone.clone(),
            times::exact(l.heard_ms, 0),
            String::new(),
        ]
    }));
    Ok(file("locks.csv", "text/csv; charset=utf-8", csv(&rows)))
}
