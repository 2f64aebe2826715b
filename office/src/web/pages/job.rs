//! A job: what stands proved, its points and locks, photos, readings, and its time line.

use axum::Extension;
use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{Path, State};
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde_json::json;
use stillbar_core::job::Job;
use stillbar_core::journal::{EntryId, fingerprint};
use stillbar_core::screens::parts::Tone;
use stillbar_core::text;
use stillbar_protocol::WireEntry;

use super::site::{on_job, on_site};
use super::{Paged, ago, cell, file, moment, or_page, refusal, shown, table};
use crate::error::OfficeError;
use crate::office::{Office, Shared, call};
use crate::params;
use crate::people::Visitor;
use crate::photos::{self, Name};
use crate::records::{self, JobTold};
use crate::stamp::{self, Stamped};

pub async fn job(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path((site, job)): Path<(String, String)>,
) -> Paged {
    let failed = or_page(&visitor);
    let (site, job) = on_job(&visitor, &site, &job).map_err(&failed)?;
    let asked = move |office: &Office| Ok((records::job(office, site, job)?, stamp::stamps(office, site, job)?));
    let (told, stamps) = call(&office, asked).await.map_err(&failed)?;
    let now = office.now();
    let _speaking = told.speaking();
    let inside = html! {
        (standing(&told))
        p .asof { "As known here at " (moment(now, 0)) ". " (heard(&told, now)) }
        (facts(&told, site))
        p {
            "The record: "
            @for (kind, word) in KINDS { a href={ "/sites/" (site) "/jobs/" (job) "/record/" (kind) } { (word) } " " }
        }
        (locks(&told))
        (readings(&told))
        (pictures(&told))
        (time_line(&told))
        (stamped(&stamps, site, job))
    };
    Ok(shown(&visitor, &told.job.title, "/sites", inside))
}

/// When an authority outside saw what is here.
fn stamped(stamps: &[(usize, Stamped)], site: EntryId, job: EntryId) -> Markup {
    html! {
        h2 { "Time stamps" }
        @if stamps.is_empty() { p { "No authority has stamped this job yet. Until then only the devices' own clocks say when." } }
        @else {
            ul {
                @for (covers, said) in stamps {
                    li { (moment(said.at_ms, 0)) ": " (covers) " entries were there, by " (said.by) "." }
                }
            }
            p { a href={ "/sites/" (site) "/jobs/" (job) "/stamps.json" } { "The time stamps as JSON" } }
        }
    }
}

/// The ways of a record, and what they are called.
const KINDS: [(&str, &str); 3] = [("pdf", "as PDF"), ("json", "as JSON"), ("csv", "readings and time line as CSV")];

pub async fn record(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path((site, job, kind)): Path<(String, String, String)>,
) -> Paged {
    let failed = or_page(&visitor);
    let (site, job) = on_job(&visitor, &site, &job).map_err(&failed)?;
    let name = format!("record-{:.8}.{kind}", job.to_string());
    let made = records::record(&office, site, job).await.map_err(&failed)?;
    let written = call(&office, move |_| {
        let bytes = match kind.as_str() {
            "pdf" => made.pdf().map(|bytes| (bytes, "application/pdf")),
            "json" => made.json().map(|bytes| (bytes, "application/json")),
            "csv" => made.csv().map(|text| (text.into_bytes(), "text/csv; charset=utf-8")),
            _ => return Err(OfficeError::nothing("There is no such record here.")),
        };
        bytes.map_err(|e| OfficeError::broken(&e.to_string()))
    });
    let (bytes, kind) = written.await.map_err(&failed)?;
    Ok(file(&name, kind, bytes))
}

pub async fn stamps(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path((site, job)): Path<(String, String)>,
) -> Paged {
    let failed = or_page(&visitor);
    let (site, job) = on_job(&visitor, &site, &job).map_err(&failed)?;
    let proofs = call(&office, move |office| stamp::proofs(office, site, job)).await.map_err(&failed)?;
    let bytes =
        serde_json::to_vec(&proofs).map_err(|_| failed(OfficeError::broken("time stamps that do not become JSON")))?;
    Ok(file("stamps.json", "application/json", bytes))
}

fn standing(told: &JobTold) -> Markup {
    let tone = match told.standing.tone {
        Tone::Warn => "warn",
        Tone::Forbid => "forbid",
        Tone::Must => "must",
        Tone::Plain | Tone::Quiet => "plain",
    };
    html! {
        section .standing.(tone) aria-labelledby="word" {
            p .word #word { (told.standing.word) ", as last heard" }
            p { (told.standing.text) }
            @if !told.standing.deviations.is_empty() { ul { @for d in &told.standing.deviations { li { (d) } } } }
        }
    }
}

fn heard(told: &JobTold, now: i64) -> Markup {
    let phones: Vec<String> = told.phones.values().map(|(name, ms)| format!("{name} {}", ago(*ms, now))).collect();
    html! { "Last heard: " (phones.join("; ")) "." }
}

/// By which rules of a company it is done, and that none were known when it was opened.
fn company(job: &Job) -> String {
    let none = "None were known when this job was opened.";
    let version = job.company.as_ref().map(|rules| text::company_version(rules, &fingerprint(rules)));
    match version {
        None => none.to_owned(),
        Some(version) if job.company_heard.is_empty() => version,
        Some(version) => format!("{none} Since then heard of: {version}"),
    }
}

fn facts(told: &JobTold, site: EntryId) -> Markup {
    let job = &told.job;
    let people = job.present().map(|w| told.world.name(w.person)).collect::<Vec<_>>().join(", ");
    let charge = job.in_charge().map(|p| told.world.name(p)).unwrap_or_default();
    html! {
        dl .facts {
            div { dt { "Site" } dd { a href={ "/sites/" (site) } { (told.site_name) } } }
            div { dt { "Place" } dd { (job.place) } }
            div { dt { "Equipment" } dd { (job.equipment) } }
            div { dt { "Scope" } dd { (job.scope) } }
            div { dt { "Conductors" } dd { (text::system(job.system)) ", " (text::earthing(job.earthing)) } }
            div { dt { "Company rules" } dd { (company(job)) } }
            div { dt { "Local rules" } dd { (text::rules_in_short(job.rule_set)) } }
            @if !people.is_empty() { div { dt { "On the job" } dd { (people) } } }
            @if !charge.is_empty() { div { dt { "Answers for the isolation" } dd { (charge) } } }
        }
    }
}

fn locks(told: &JobTold) -> Markup {
    let job = &told.job;
    let rows: Vec<Vec<Markup>> = job
        .points
        .iter()
        .map(|p| {
            let state = match (&p.opened, &p.closed) {
                (Some(stamp), _) => html! { "open since " (moment(stamp.wall, stamp.zone)) },
                (None, Some(stamp)) => html! { "closed since " (moment(stamp.wall, stamp.zone)) },
                (None, None) => cell("not opened yet"),
            };
            let on = job.locks_at(p.stamp.id);
            let locks = html! {
                @if on.is_empty() { "no lock is known here; no clearance" }
                @else { ul { @for l in on { li { (l.label) ", " (told.world.name(l.owner)) } } } }
            };
            vec![html! { strong { (p.label) } br; (p.at) }, state, locks, cell(p.poles.join(", "))]
        })
        .collect();
    html! {
        h2 { "Points of isolation" }
        @if rows.is_empty() { p { "No point is recorded yet." } }
        @else { (table("Points and locks, as last heard", &["Point", "State", "Locks on it", "Opens"], &rows)) }
    }
}

fn readings(told: &JobTold) -> Markup {
    let Some(run) = told.job.run() else { return html! {} };
    let rows: Vec<Vec<Markup>> = run
        .readings
        .iter()
        .map(|t| {
            vec![html! { (t.first) " – " (t.then) }, cell(text::reading(t.reading)), moment(t.stamp.wall, t.stamp.zone)]
        })
        .collect();
    html! {
        h2 { (text::in_terms("Readings of the latest dead test")) }
        p { "Indicator: " (text::instrument(&told.world, run.indicator)) }
        @if !rows.is_empty() { (table("Readings", &["Pair", "Reading", "When"], &rows)) }
    }
}

fn pictures(told: &JobTold) -> Markup {
    if told.job.photos.is_empty() {
        return html! {};
    }
    html! {
        h2 { "Photos" }
        ul .photos {
            @for photo in &told.job.photos {
                @let of = told.job.point(photo.of).map_or("the job", |p| p.label.as_str());
                @let here = told.photos.get(&photo.sha256);
                li {
                    @let has = |size| here.is_some_and(|sizes| sizes.contains(&size));
                    @if has(320) || has(0) {
                        @let small = if has(320) { ".320.jpg" } else { "" };
                        @let large = if has(0) { "" } else if has(960) { ".960.jpg" } else { small };
                        a href={ "/pictures/" (photo.sha256) (large) } {
                            img src={ "/pictures/" (photo.sha256) (small) } alt={ "Photo of " (of) } loading="lazy";
                        }
                    } @else { p .missing { "The photo is still on the phone." } }
                    p { (of) ", " (moment(photo.stamp.wall, photo.stamp.zone)) }
                    @for doubt in &photo.doubts { p .hint { (text::photo_doubt(doubt, of)) } }
                }
            }
        }
    }
}

fn time_line(told: &JobTold) -> Markup {
    let said = records::sentences(told);
    html! {
        h2 { "Time line" }
        p .hint { "Latest first. Nothing here can be edited: a correction is a new entry." }
        ol .line {
            @for (entry, sentence) in told.entries.iter().zip(&said).rev() {
                @let gone = told.job.withdrawn.iter().find(|(_, id, _)| *id == entry.id);
                li id={ "e-" (entry.id.short()) } {
                    p { strong { (sentence) } }
                    p .hint {
                        (moment(entry.body.wall, entry.body.zone))
                        @if let Some(by) = entry.body.by { ", " (told.world.name(by)) }
                        @if let Some((phone, _)) = told.phones.get(&entry.body.device.0) { ", " (phone) }
                        ", entry " (entry.body.seq)
                    }
                    @if entry.body.clock.0.saturating_sub(entry.body.wall) > 60_000 {
                        p .hint { "The phone's clock was behind: its time is in doubt, its place in the order is not." }
                    }
                    @if let Some((_, _, why)) = gone { p { "Withdrawn: " (why) } }
                }
            }
        }
    }
}

/// A photo for a page.
pub async fn picture(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(name): Path<String>,
    headers: HeaderMap,
) -> Response {
    let none = || OfficeError::nothing("There is no such photo here for you.");
    let Some(name) = Name::read(&name) else { return refusal(Some(&visitor), &none()) };
    let sites = visitor.sites.clone();
    let found = call(&office, move |office| {
        office.read(|tx| {
            let rows = tx.rows("SELECT site FROM photo_named WHERE sha256 = $1", params![name.sha256])?;
            let seen = rows.iter().any(|row| row.id(0).is_ok_and(|site| sites.contains(&site)));
            if seen { photos::length(tx, name) } else { Ok(None) }
        })
    });
    let given = match found.await {
        Ok(Some(length)) => crate::web::photos::give(&office, name, length, &headers).await,
        Ok(None) => Err(none()),
        Err(fault) => Err(fault),
    };
    given.unwrap_or_else(|fault| refusal(Some(&visitor), &fault))
}

/// Entries that one read of an export takes.
const AT_ONCE: usize = 500;

/// All entries of a site as JSON, with what is signed, so that anybody can verify them; sent as it is read.
pub async fn export_json(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let site = on_site(&visitor, &site).map_err(or_page(&visitor))?;
    let (send, receive) = tokio::sync::mpsc::channel::<Bytes>(4);
    tokio::spawn(async move {
        let head = format!("{{\"site\":\"{site}\",\"entries\":[");
        if send.send(head.into()).await.is_err() {
            return;
        }
        let mut from = 0i64;
        loop {
            let rows = call(&office, move |office| {
                office.read(|tx| {
                    let sql = "SELECT number, id, device, seq, body, sig FROM feed WHERE site = $1 AND number > $2 ORDER BY number LIMIT $3";
                    tx.rows(sql, params![site, from, AT_ONCE])
                })
            });
            // A break leaves JSON without its end, which no reader takes for the whole.
            let Ok(rows) = rows.await else { return };
            let mut text = String::new();
            for row in &rows {
                let Ok((number, said)) = exported(row) else { return };
                text.push_str(if from == 0 { "" } else { "," });
                text.push('\n');
                text.push_str(&said);
                from = number;
            }
            if send.send(text.into()).await.is_err() {
                return;
            }
            if rows.len() < AT_ONCE {
                break;
            }
        }
        let _ = send.send("]}\n".into()).await;
    });
    let headers = [
        (header::CONTENT_TYPE, "application/json".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"site-{}.json\"", site.short())),
    ];
    Ok((headers, Body::new(Coming(receive))).into_response())
}

fn exported(row: &crate::store::SqlRow) -> Result<(i64, String), OfficeError> {
    let body = row.bytes(4)?;
    let mut said = json!({"number": row.int(0)?, "id": row.id(1)?, "device": row.device(2)?, "seq": row.int(3)?});
    if body.is_empty() {
        said["erased"] = true.into();
    } else {
        let wire = WireEntry::from_bytes(&body, &row.signature(5)?);
        said["body"] = wire.body.into();
        said["sig"] = wire.sig.into();
        let entry = records::entry(&row_of(row)?)?;
        said["by"] = entry.body.by.map(|id| id.to_string()).into();
        said["wall-ms"] = entry.body.wall.into();
        said["fact"] = serde_json::to_value(&entry.body.fact).map_err(|e| OfficeError::broken(&e.to_string()))?;
    }
    Ok((row.int(0)?, said.to_string()))
}

/// Body and signature of a row, in the order in which entries are read.
fn row_of(row: &crate::store::SqlRow) -> Result<crate::store::SqlRow, OfficeError> {
    Ok(crate::store::SqlRow(vec![row.bytes(4)?.into(), row.bytes(5)?.into()]))
}

/// A body whose pieces come from a channel.
struct Coming(tokio::sync::mpsc::Receiver<Bytes>);

impl HttpBody for Coming {
    type Data = Bytes;
    type Error = std::convert::Infallible;

    fn poll_frame(
        mut self: std::pin::Pin<&mut Self>,
        cx: &mut std::task::Context<'_>,
    ) -> std::task::Poll<Option<Result<http_body::Frame<Bytes>, Self::Error>>> {
        self.0.poll_recv(cx).map(|piece| piece.map(|bytes| Ok(http_body::Frame::data(bytes))))
    }
}
