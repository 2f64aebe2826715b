//! What is not taken in: aside until somebody releases it, and in quarantine because another entry has its number.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};
use stillbar_core::journal::{DeviceId, EntryId};

use super::form::{Posted, csrf};
use super::{Paged, cell, moment, or_page, shown, table};
use crate::error::OfficeError;
use crate::exchange::{self, Why};
use crate::office::{Shared, call};
use crate::people::{AccountRole, Visitor};
use crate::records;
use crate::store::SqlRow;
use crate::web::guard::Origin;
use crate::{audit, params};

/// Entries that are shown of each kind.
const MAX: usize = 200;

struct HeldShown {
    id: EntryId,
    device: DeviceId,
    phone: String,
    seq: i64,
    site: Option<EntryId>,
    kind: String,
    wall: i64,
    zone: i32,
    why: String,
}

fn read(row: &SqlRow) -> Result<HeldShown, OfficeError> {
    let entry = records::entry(row)?;
    let device = entry.body.device;
    Ok(HeldShown {
        id: entry.id,
        device,
        phone: records::named(&row.text(3)?, device),
        seq: i64::try_from(entry.body.seq).unwrap_or(i64::MAX),
        site: entry.body.site,
        kind: entry.body.fact.kind().replace('-', " "),
        wall: entry.body.wall,
        zone: entry.body.zone,
        why: exchange::say(Why::named(&row.text(2)?)).to_owned(),
    })
}

/// Whether somebody may see an entry: an admin every one, others those of their sites and those without one of phones of their sites.
fn may_see(visitor: &Visitor, entry: &HeldShown) -> bool {
    visitor.person.role == AccountRole::Admin || entry.site.is_some_and(|s| visitor.sites.contains(&s))
}

pub async fn held(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let found = call(&office, |office| {
        office.read(|tx| {
            let aside = tx.rows(
                "SELECT aside.body, aside.sig, aside.reason, device.label FROM aside JOIN device ON device.id = aside.device \
                 ORDER BY aside.device, aside.seq LIMIT $1",
                params![MAX],
            )?;
            let forks = tx.rows(
                "SELECT quarantine.body, quarantine.sig, quarantine.reason, device.label, quarantine.looked_by, quarantine.note \
                 FROM quarantine JOIN device ON device.id = quarantine.device \
                 ORDER BY quarantine.device, quarantine.seq LIMIT $1",
                params![MAX],
            )?;
            let aside = aside.iter().map(read).collect::<Result<Vec<_>, _>>()?;
            let forks = forks.iter().map(|row| Ok((read(row)?, row.maybe_text(4)?, row.maybe_text(5)?)));
            Ok((aside, forks.collect::<Result<Vec<_>, OfficeError>>()?))
        })
    });
    let (aside, forks) = found.await.map_err(or_page(&visitor))?;
    let aside: Vec<&HeldShown> = aside.iter().filter(|e| may_see(&visitor, e)).collect();
    let forks: Vec<_> = forks.iter().filter(|(e, ..)| may_see(&visitor, e)).collect();
    let mut devices: Vec<(DeviceId, &str)> = aside.iter().map(|e| (e.device, e.phone.as_str())).collect();
    devices.dedup();
    let inside = html! {
        h2 { "Aside" }
        p { "These entries are kept, and no phone gets them until you release them. Locks in them are shown on the board." }
        @if aside.is_empty() { p { "Nothing is aside." } }
        @else {
            (entries("Aside", &aside))
            @for (device, phone) in devices {
                form method="post" action={ "/held/" (device) "/release" } .stack {
                    (csrf(&visitor))
                    p { "Ask who has " strong { (phone) } " whether these entries are right before you release them." }
                    button type="submit" { "Release what is aside of " (phone) }
                }
            }
        }
        h2 { "Quarantine" }
        p { "A phone, or a copy of it, wrote two entries with one number. The first that came stands; the other is kept here as evidence and can \
             never enter the chain. The phone has to begin anew: revoke it and enrol it with a new key." }
        @if forks.is_empty() { p { "Nothing is in quarantine." } }
        @for (entry, looked, note) in forks {
            div .card {
                (entries("In quarantine", &[entry]))
                @if let Some(who) = looked { p { "Looked at by " (who) ": " (note.as_deref().unwrap_or("")) } }
                @else {
                    form method="post" action={ "/held/quarantine/" (entry.id) } .stack {
                        (csrf(&visitor))
                        label for={ "note-" (entry.id.short()) } { "What you found" }
                        input id={ "note-" (entry.id.short()) } name="note" maxlength="500" required;
                        button type="submit" { "Looked at" }
                    }
                }
            }
        }
    };
    Ok(shown(&visitor, "Not taken in", "/held", inside))
}

fn entries(caption: &str, all: &[&HeldShown]) -> Markup {
    let rows: Vec<Vec<Markup>> = all
        .iter()
        .map(|e| {
            let number = html! { (e.kind) ", entry " (e.seq) };
            vec![number, cell(&e.phone), moment(e.wall, e.zone), cell(&e.why)]
        })
        .collect();
    table(caption, &["Entry", "Phone", "By its clock", "Why"], &rows)
}

pub async fn release(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(device): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let device: DeviceId = device.parse().map_err(|_| failed(OfficeError::nothing("There is no such phone here.")))?;
    let visitor = posted.visitor.clone();
    let (gone, stay) = call(&office, move |office| {
        let now = office.now();
        office.change(|tx| {
            may_touch(tx, &visitor, device)?;
            let done = exchange::release(tx, now, device)?;
            let about = format!("{} released, {} stayed, of {:.8}", done.0, done.1, device.to_string());
            audit::note(tx, now, &visitor.person.login, "aside released", &about, &origin.0)?;
            Ok(done)
        })
    })
    .await
    .map_err(&failed)?;
    let inside = html! {
        p role="status" { (gone) " entries were released." }
        @if stay > 0 { p .notice .warn { (stay) " stayed: their site is not one of that phone's. Give the phone its site first, under Phones." } }
        p { a href="/held" { "Not taken in" } }
    };
    Ok(shown(&posted.visitor, "Released", "/held", inside))
}

/// A lead may touch a phone only if they look after every site that it has.
pub fn may_touch(tx: &mut dyn crate::store::Tx, visitor: &Visitor, device: DeviceId) -> Result<(), OfficeError> {
    let none = || OfficeError::nothing("There is no such phone here for you.");
    if tx.rows("SELECT 1 FROM device WHERE id = $1", params![device])?.is_empty() {
        return Err(none());
    }
    let theirs = exchange::sites_of(tx, device)?;
    if visitor.person.role == AccountRole::Admin || (!theirs.is_empty() && theirs.is_subset(&visitor.sites)) {
        return Ok(());
    }
    Err(none())
}

pub async fn look_at(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(id): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let none = || OfficeError::nothing("There is no such entry in quarantine.");
    let id: EntryId = id.parse().map_err(|_| failed(none()))?;
    let (visitor, note) = (posted.visitor.clone(), posted.text("note"));
    if note.is_empty() || note.chars().count() > 500 {
        return Err(failed(OfficeError::unreadable("Write what you found, in at most 500 characters.")));
    }
    call(&office, move |office| {
        let now = office.now();
        office.change(|tx| {
            let rows = tx.rows("SELECT device FROM quarantine WHERE id = $1", params![id])?;
            let device = rows.first().ok_or_else(none)?.device(0)?;
            may_touch(tx, &visitor, device)?;
            let who = visitor.person.login.as_str();
            tx.run(
                "UPDATE quarantine SET looked_by = $1, looked_ms = $2, note = $3 WHERE id = $4",
                params![who, now, note.as_str(), id],
            )?;
            audit::note(tx, now, who, "quarantine looked at", &id.to_string(), &origin.0)
        })
    })
    .await
    .map_err(&failed)?;
    Ok(Redirect::to("/held").into_response())
}
