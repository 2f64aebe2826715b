//! Phones: enrolling by QR, revoking, withdrawing, and which sites they have.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use maud::{Markup, html};
use stillbar_core::journal::{DeviceId, EntryId};
use stillbar_core::tag::{QUIET, Symbol};

use super::form::{Posted, csrf};
use super::held::may_touch;
use super::{Paged, ago, or_page, shown};
use crate::enrol;
use crate::error::OfficeError;
use crate::exchange::sites_of;
use crate::office::{Shared, call};
use crate::people::{AccountRole, Visitor};
use crate::records::{self, SiteOf};
use crate::web::guard::Origin;
use crate::{audit, params};

struct PhoneOf {
    id: DeviceId,
    label: String,
    token: bool,
    enrolled: bool,
    withdrawn: bool,
    held: bool,
    entries: i64,
    heard_ms: i64,
    sites: Vec<EntryId>,
}

/// Boxes to tick for sites.
pub fn site_boxes(all: &[SiteOf], ticked: &[EntryId]) -> Markup {
    html! {
        fieldset {
            legend { "Sites" }
            @for site in all.iter().filter(|s| s.main == s.id) {
                label .box {
                    input type="checkbox" name="site" value=(site.id) checked[ticked.contains(&site.id)];
                    span { (site.name) }
                }
            }
            @if all.is_empty() { p .hint { "No site is here yet: the phone brings those that it notes." } }
        }
    }
}

pub async fn phones(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let who = visitor.clone();
    let found = call(&office, move |office| {
        let all = records::sites(office, &who.sites)?;
        let own = office.key.device();
        let phones = office.read(|tx| {
            let sql = "SELECT id, label, token, enrolled_ms, withdrawn_ms, held, last_seq, heard_ms FROM device ORDER BY label, id";
            let mut phones = Vec::new();
            for row in tx.rows(sql, &[])? {
                let id = row.device(0)?;
                let sites = sites_of(tx, id)?;
                let seen = who.person.role == AccountRole::Admin || sites.iter().any(|s| who.sites.contains(s));
                if id == own || !seen {
                    continue;
                }
                phones.push(PhoneOf {
                    id,
                    label: records::named(&row.text(1)?, id),
                    token: row.bytes(2).is_ok(),
                    enrolled: row.maybe_int(3)?.is_some(),
                    withdrawn: row.maybe_int(4)?.is_some(),
                    held: row.yes(5)?,
                    entries: row.int(6)?,
                    heard_ms: row.int(7)?,
                    sites: sites.into_iter().collect(),
                });
            }
            Ok(phones)
        })?;
        Ok((all, phones))
    });
    let (all, phones) = found.await.map_err(or_page(&visitor))?;
    let now = office.now();
    let inside = html! {
        h2 { "Enrol a phone" }
        form method="post" action="/phones" .stack {
            (csrf(&visitor))
            label for="label" { "What the phone is called, such as whose it is" }
            input #label name="label" maxlength="60" required;
            (site_boxes(&all, &[]))
            button type="submit" { "Show the code" }
        }
        h2 { "Phones" }
        @if phones.is_empty() { p { "No phone is enrolled here yet." } }
        @for phone in &phones { (card(&visitor, phone, &all, now)) }
    };
    Ok(shown(&visitor, "Phones", "/phones", inside))
}

fn card(visitor: &Visitor, phone: &PhoneOf, all: &[SiteOf], now: i64) -> Markup {
    let state = match (phone.withdrawn, phone.enrolled, phone.token) {
        (true, ..) => "Withdrawn: what it sends is kept aside, and it gets nothing.",
        (_, false, _) => "Not enrolled: another phone handed on what it wrote. It is kept aside.",
        (_, _, false) => "Revoked: it may not call until it is enrolled again.",
        _ => "Enrolled.",
    };
    let name = |id: &EntryId| all.iter().find(|s| s.id == *id).map_or("another site", |s| s.name.as_str());
    let names: Vec<&str> = phone.sites.iter().map(name).collect();
    html! {
        section .card aria-labelledby={ "p-" (&phone.id.to_string()[..8]) } {
            h3 id={ "p-" (&phone.id.to_string()[..8]) } { (phone.label) }
            p { (state) @if phone.held { " Entries of it are held back: look under Not taken in." } }
            p .hint { "Key " (&phone.id.to_string()[..8]) ", " (phone.entries) " entries, last heard " (ago(phone.heard_ms, now)) ". Sites: "
                @if names.is_empty() { "none" } @else { (names.join(", ")) } "." }
            details {
                summary { "Change " (phone.label) }
                form method="post" action={ "/phones/" (phone.id) } .stack {
                    (csrf(visitor))
                    (site_boxes(all, &phone.sites))
                    button type="submit" name="do" value="sites" { "Keep these sites" }
                }
                form method="post" action={ "/phones/" (phone.id) } .stack {
                    (csrf(visitor))
                    p { "Lost, stolen or not to be trusted: what it still sends is kept aside for you, and it gets nothing more." }
                    button type="submit" name="do" value="withdraw" .forbid { "Withdraw " (phone.label) }
                }
                form method="post" action={ "/phones/" (phone.id) } .stack {
                    (csrf(visitor))
                    p { "Ends its token: it may not call at all until it is enrolled again. What it recorded and did not send stays on it." }
                    button type="submit" name="do" value="revoke" .forbid { "Revoke " (phone.label) }
                }
            }
        }
    }
}

/// A QR symbol as a drawing that needs no picture.
fn symbol(text: &str) -> Markup {
    let symbol = Symbol::of_text(text);
    let side = symbol.width + 2 * QUIET;
    let mut path = String::new();
    for (x, y, run) in symbol.runs() {
        path.push_str(&format!("M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET));
    }
    html! {
        svg .qr viewBox={ "0 0 " (side) " " (side) } role="img" aria-label="The code to scan with the phone" shape-rendering="crispEdges" {
            rect width=(side) height=(side) fill="#fff" {}
            path d=(path) fill="#000" {}
        }
    }
}

pub async fn make_code(State(office): State<Shared>, Extension(origin): Extension<Origin>, posted: Posted) -> Paged {
    let failed = or_page(&posted.visitor);
    let (label, sites) = (posted.text("label"), posted.sites().map_err(&failed)?);
    let who = posted.visitor.person.clone();
    if label.is_empty() || label.chars().count() > 60 {
        return Err(failed(OfficeError::unreadable("Write what the phone is called, in at most 60 characters.")));
    }
    // A lead enrols phones for sites they look after; one without a site could begin any.
    if sites.is_empty() && who.role < AccountRole::Admin {
        return Err(failed(OfficeError::unreadable("Tick at least one site for the phone.")));
    }
    let made = call(&office, move |office| {
        office.change(|tx| {
            let code = enrol::make_code(office, tx, &who.login, &label, &sites)?;
            audit::note(tx, office.now(), &who.login, "code made", &label, &origin.0)?;
            Ok(enrol::qr_text(office, &code))
        })
    });
    let text = made.await.map_err(&failed)?;
    let inside = html! {
        p { "Scan this with the phone, within 15 minutes. It serves one phone, once." }
        (symbol(&text))
        p { "If the camera does not take it, type:" }
        p .code { code { (text) } }
        p { a href="/phones" { "Phones" } }
    };
    Ok(shown(&posted.visitor, "Enrol a phone", "/phones", inside))
}

pub async fn change_phone(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(device): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let device: DeviceId =
        device.parse().map_err(|_| failed(OfficeError::nothing("There is no such phone here for you.")))?;
    let (work, sites, visitor) = (posted.text("do"), posted.sites().map_err(&failed)?, posted.visitor.clone());
    call(&office, move |office| {
        let now = office.now();
        office.change(|tx| {
            may_touch(tx, &visitor, device)?;
            let what = match work.as_str() {
                "withdraw" => {
                    tx.run("UPDATE device SET withdrawn_ms = $1 WHERE id = $2", params![now, device])?;
                    "phone withdrawn"
                }
                "revoke" => {
                    tx.run("UPDATE device SET token = NULL WHERE id = $1", params![device])?;
                    "phone revoked"
                }
                "sites" => {
                    tx.run("DELETE FROM device_site WHERE device = $1", params![device])?;
                    for site in &sites {
                        tx.run(
                            "INSERT INTO device_site (device, site) SELECT $1, main FROM site WHERE id = $2 ON CONFLICT DO NOTHING",
                            params![device, *site],
                        )?;
                    }
                    "sites of a phone changed"
                }
                _ => return Err(OfficeError::unreadable("Choose what to do with the phone.")),
            };
            audit::note(tx, now, &visitor.person.login, what, &format!("{:.8}", device.to_string()), &origin.0)
        })
    })
    .await
    .map_err(&failed)?;
    Ok::<Response, Response>(Redirect::to("/phones").into_response())
}
