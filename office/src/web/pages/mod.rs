//! The pages: drawn on the server, with one small script that renews the board.
//!
//! Promises: no page says that anything is without danger; what is known here is *as last heard*, and that no lock is known is no
//! clearance; every state is a word, colour only repeats it. Start at [`page`].

mod board;
mod company;
mod form;
mod held;
mod job;
mod names;
mod network;
mod people;
mod phones;
mod plan;
mod sign_in;
mod site;

pub use board::{board, board_csv, board_rows, home};
pub use company::{company, company_file, take_company};
pub use held::{held, look_at, release};
pub use job::{export_json, job, picture, record, stamps};
pub use names::{erase, names};
pub use network::{network, network_file, take_network};
pub use people::{add_person, audit, change_person, password, people, set_password};
pub use phones::{change_phone, make_code, phones};
pub use plan::{labels, plan, plan_form, print_labels};
pub use sign_in::{sign_in, sign_in_form, sign_out};
pub use site::{add_site, change_site, jobs_csv, search, site, sites};

use axum::Extension;
use axum::http::{StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use maud::{DOCTYPE, Markup, html};
use stillbar_core::text::times;

use crate::error::OfficeError;
use crate::log::RefusedCode;
use crate::people::{AccountRole, Visitor};

/// What a page answers; a fault is a page as well.
pub type Paged = Result<Response, Response>;

/// A fault as a page.
pub fn refusal(visitor: Option<&Visitor>, fault: &OfficeError) -> Response {
    let (status, word, say) = fault.told();
    let title = match status.as_u16() {
        400..=403 | 405..=428 => "This was not done",
        404 => "There is nothing here",
        429 => "Wait a little",
        _ => "The office cannot answer now",
    };
    (
        status,
        Extension(RefusedCode(word)),
        page(visitor, title, "", html! { p .notice role="alert" { (say) } p { a href="/board" { "Locks on now" } } }),
    )
        .into_response()
}

/// Turns a fault into a page for somebody.
pub fn or_page<'a>(visitor: &'a Visitor) -> impl Fn(OfficeError) -> Response + 'a {
    move |fault| refusal(Some(visitor), &fault)
}

/// The pages that lead somewhere, and who sees them.
const PLACES: [(&str, &str, AccountRole); 10] = [
    ("/board", "Locks on now", AccountRole::Reader),
    ("/sites", "Sites and jobs", AccountRole::Reader),
    ("/search", "Search", AccountRole::Reader),
    ("/labels", "Labels", AccountRole::Planner),
    ("/phones", "Phones", AccountRole::Lead),
    ("/held", "Not taken in", AccountRole::Lead),
    ("/people", "People", AccountRole::Admin),
    ("/names", "Names in the journal", AccountRole::Admin),
    ("/audit", "Who did what", AccountRole::Admin),
    ("/password", "Your password", AccountRole::Reader),
];

/// A whole page. `here` is the place it belongs to.
pub fn page(visitor: Option<&Visitor>, title: &str, here: &str, inside: Markup) -> Html<String> {
    let drawn = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="dark light";
                title { (title) " · Stillbar office" }
                link rel="icon" href="/icon.svg" type="image/svg+xml";
                link rel="stylesheet" href="/style.css";
                script src="/office.js" defer {}
            }
            body {
                a .skip href="#main" { "To the content" }
                header .top {
                    p .plate { "Stillbar office" }
                    @if let Some(visitor) = visitor {
                        nav aria-label="Places" {
                            ul {
                                @for (to, name, role) in PLACES {
                                    @if visitor.person.role >= role {
                                        li { a href=(to) aria-current=[(to == here).then_some("page")] { (name) } }
                                    }
                                }
                            }
                        }
                        form method="post" action="/sign-out" .who {
                            (form::csrf(visitor))
                            span { (visitor.person.name) ", " (visitor.person.role.word()) }
                            button type="submit" .quiet { "Sign out" }
                        }
                    }
                }
                main #main tabindex="-1" { h1 { (title) } (inside) }
            }
        }
    };
    Html(drawn.into_string())
}

/// A page, as an answer.
pub fn shown(visitor: &Visitor, title: &str, here: &str, inside: Markup) -> Response {
    page(Some(visitor), title, here, inside).into_response()
}

/// A moment as a person reads it; offices look at phones of several zones, so the date and the zone are always said.
pub fn moment(ms: i64, zone: i32) -> Markup {
    let sign = if zone < 0 { '-' } else { '+' };
    let (hours, minutes) = (zone.unsigned_abs() / 60, zone.unsigned_abs() % 60);
    let zone_text = if zone == 0 { "UTC".to_owned() } else { format!("UTC{sign}{hours}:{minutes:02}") };
    html! { time { (times::exact(ms, zone)) " " (zone_text) } }
}

/// "3 min ago": how old what is known is.
pub fn ago(ms: i64, now: i64) -> String {
    match now.saturating_sub(ms).max(0) / 60_000 {
        0 => "less than a minute ago".into(),
        minutes @ 1..=119 => format!("{minutes} min ago"),
        minutes @ 120..=2879 => format!("{} h ago", minutes / 60),
        minutes => format!("{} days ago", minutes / 1440),
    }
}

/// A table that becomes cards on a narrow screen; the roles are said again because a browser may drop them then.
pub fn table(caption: &str, head: &[&str], rows: &[Vec<Markup>]) -> Markup {
    html! {
        table role="table" {
            caption { (caption) }
            thead role="rowgroup" { tr role="row" { @for name in head { th scope="col" role="columnheader" { (name) } } } }
            tbody role="rowgroup" {
                @for row in rows {
                    tr role="row" {
                        @for (i, cell) in row.iter().enumerate() {
                            @let name = head.get(i).copied().unwrap_or_default();
                            @if i == 0 { th scope="row" role="rowheader" data-name=(name) { div { (cell) } } }
                            @else { td role="cell" data-name=(name) { div { (cell) } } }
                        }
                    }
                }
            }
        }
    }
}

/// A text in a cell.
pub fn cell(text: impl AsRef<str>) -> Markup {
    html! { (text.as_ref()) }
}

/// A file to keep.
pub fn file(name: &str, kind: &'static str, bytes: Vec<u8>) -> Response {
    let safe: String =
        name.chars().map(|c| if c.is_ascii_alphanumeric() || "-.".contains(c) { c } else { '-' }).collect();
    let headers = [
        (header::CONTENT_TYPE, kind.to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{safe}\"")),
    ];
    (StatusCode::OK, headers, bytes).into_response()
}

/// Rows as CSV (RFC 4180). A cell that a spreadsheet would take for a formula gets a quote before it.
pub fn csv(rows: &[Vec<String>]) -> Vec<u8> {
    let cell = |text: &String| {
        let guard = if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { "'" } else { "" };
        format!("\"{guard}{}\"", text.replace('"', "\"\""))
    };
    let lines = rows.iter().map(|row| row.iter().map(cell).collect::<Vec<_>>().join(",") + "\r\n");
    lines.collect::<String>().into_bytes()
}
