//! Planning a job, and sheets of labels.

use axum::Extension;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};
use stillbar_core::point::PointKind;
use stillbar_core::prove::{Earthing, Order, RuleSet, Supply, System};
use stillbar_core::tag::TagId;
use stillbar_core::tag::sheet::{Grid, Label, MAX_TAGS, SheetKind, print};
use stillbar_core::text;
use stillbar_core::text::terms::Speaking;

use super::form::{Posted, csrf};
use super::site::on_site;
use super::{Paged, file, or_page, shown};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::Visitor;
use crate::records::{self, NewJob, NewPoint};
use crate::web::guard::Origin;

/// Points that one form takes; more are added on the phone, or with a second form.
const POINTS: usize = 4;

fn choice(name: &str, label: &str, options: &[String]) -> Markup {
    html! {
        label for=(name) { (label) }
        select #(name) name=(name) required {
            option value="" { "Choose" }
            @for (at, option) in options.iter().enumerate() { option value=(at) { (option) } }
        }
    }
}

fn line(name: &str, label: &str, hint: &str, required: bool) -> Markup {
    let described = (!hint.is_empty()).then(|| format!("{name}-hint"));
    html! {
        label for=(name) { (label) }
        input #(name) name=(name) maxlength="600" required[required] aria-describedby=[described];
        @if !hint.is_empty() { p .hint id={ (name) "-hint" } { (hint) } }
    }
}

/// The systems that are planned here: a set of one's own is listed by whoever stands before it.
fn offered() -> [System; System::ALL.len() - 1] {
    std::array::from_fn(|at| System::ALL[at])
}

/// Whose rules: those of the site's last job are picked, and none need be named.
fn rules_choice(usual: Option<RuleSet>) -> Markup {
    html! {
        label for="rules" { "Rules of" }
        select #rules name="rules" aria-describedby="rules-hint" {
            option value="" { "Not named here" }
            @for rules in RuleSet::ALL {
                option value=(rules.name()) selected[usual == Some(rules)] { (text::rule_set(rules).name) }
            }
        }
        p .hint #rules-hint { "They choose words, tolerance and bounds of the job. " (text::defers(usual)) }
    }
}

pub async fn plan_form(
    State(office): State<Shared>,
    Extension(visitor): Extension<Visitor>,
    Path(site): Path<String>,
) -> Paged {
    let site = on_site(&visitor, &site).map_err(or_page(&visitor))?;
    let usual = call(&office, move |office| records::last_rules(office, site)).await.map_err(or_page(&visitor))?;
    let _speaking = Speaking::of(usual);
    let inside = html! {
        p { "The job reaches the phones of this site with their next exchange. Before a point is opened, the phone asks to see that it is the right one: a plan is no proof." }
        form method="post" action={ "/sites/" (site) "/plan" } .stack {
            (csrf(&visitor))
            (line("title", "What the job is", "Such as: replace contactor K3", true))
            (line("place", "Place on the site", "Building, floor, room", true))
            (line("equipment", "Equipment to isolate", "As it is labelled", true))
            (line("scope", "Scope of the work", "What is worked on, and where it ends", true))
            (rules_choice(usual))
            (choice("system", "Conductors at the point of work", &offered().map(text::system)))
            (choice("earthing", &text::in_terms("Earthing arrangement"), &Earthing::ALL.map(text::earthing)))
            (choice("order", &text::in_terms("Order of the dead test"), &Order::ALL.map(text::order)))
            label for="volts" { "Nominal voltage in volts" }
            input #volts name="volts" inputmode="decimal" required aria-describedby="volts-hint";
            p .hint #volts-hint { "Line to neutral or to PEN; where there is no neutral line to line, and pole to pole. Your own set of conductors is planned on the phone." }
            @for n in 1..=POINTS {
                fieldset {
                    legend { "Point of isolation " (n) @if n > 1 { ", if there is one" } }
                    (line(&format!("label{n}"), "Name on the device", "Such as: Q4 feeder switch", false))
                    (line(&format!("at{n}"), "Where it is", "", false))
                    label for={ "kind" (n) } { "What it is" }
                    select id={ "kind" (n) } name={ "kind" (n) } {
                        option value="" { "Choose" }
                        @for (at, kind) in PointKind::ALL.iter().enumerate() { option value=(at) { (text::point_kind(*kind)) } }
                    }
                    (line(&format!("poles{n}"), "Conductors that it opens", "As the drawing says, such as: L1, L2, L3", false))
                    label .box { input type="checkbox" name={ "lockable" (n) } value="1"; span { "It takes a lock" } }
                }
            }
            button type="submit" { "Plan this job" }
        }
    };
    Ok(shown(&visitor, "Plan a job", "/sites", inside))
}

fn chosen<T: Copy>(posted: &Posted, name: &str, all: &[T], say: &str) -> Result<T, OfficeError> {
    let at = posted.text(name).parse::<usize>().ok();
    at.and_then(|at| all.get(at)).copied().ok_or_else(|| OfficeError::unreadable(say))
}

/// The rules that were named, if any were.
fn named(posted: &Posted) -> Result<Option<RuleSet>, OfficeError> {
    let typed = posted.text("rules");
    let found = RuleSet::ALL.into_iter().find(|rules| rules.name() == typed);
    if found.is_none() && !typed.is_empty() {
        return Err(OfficeError::unreadable("Choose whose rules, or that none are named here."));
    }
    Ok(found)
}

fn point(posted: &Posted, n: usize, system: System) -> Result<Option<NewPoint>, OfficeError> {
    let label = posted.text(&format!("label{n}"));
    if label.is_empty() {
        return Ok(None);
    }
    let bad = |say: &str| OfficeError::unreadable(format!("Point {n}: {say}"));
    let at = posted.text(&format!("at{n}"));
    if at.is_empty() || at.chars().count() > 600 || label.chars().count() > 600 {
        return Err(bad("write its name and where it is, in at most 600 characters each."));
    }
    let kind = chosen(posted, &format!("kind{n}"), &PointKind::ALL, "").map_err(|_| bad("choose what it is."))?;
    if kind == PointKind::ControlDevice {
        return Err(bad(
            "a stop button, interlock or contactor is never a point of isolation. Name the switch that cuts the supply.",
        ));
    }
    let names: Vec<String> = Supply::of(system, 0).conductors().into_iter().map(|c| c.name).collect();
    let typed = posted.text(&format!("poles{n}"));
    let poles: Vec<String> = typed.split(',').map(|p| p.trim().to_owned()).filter(|p| !p.is_empty()).collect();
    if poles.is_empty() || !poles.iter().all(|p| names.contains(p)) {
        return Err(bad(&format!("name the conductors that it opens, out of {}.", names.join(", "))));
    }
    Ok(Some(NewPoint { label, at, kind, lockable: posted.ticked(&format!("lockable{n}")), poles }))
}

fn millivolts(typed: &str) -> Result<u32, OfficeError> {
    let volts: f64 = typed.replace(',', ".").parse().unwrap_or(f64::NAN);
    if !(1.0..=1500.0).contains(&volts) {
        return Err(OfficeError::unreadable("The nominal voltage is a number of volts from 1 to 1500."));
    }
    // In range, so nothing is cut off.
    Ok((volts * 1000.0).round() as u32)
}

pub async fn plan(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(site): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let site = on_site(&posted.visitor, &site).map_err(&failed)?;
    let read = || -> Result<NewJob, OfficeError> {
        let system = chosen(&posted, "system", &offered(), "Choose the conductors at the point of work.")?;
        let points = (1..=POINTS).map(|n| point(&posted, n, system)).collect::<Result<Vec<_>, _>>()?;
        Ok(NewJob {
            title: posted.text("title"),
            place: posted.text("place"),
            equipment: posted.text("equipment"),
            scope: posted.text("scope"),
            rules: named(&posted)?,
            system,
            earthing: chosen(&posted, "earthing", &Earthing::ALL, "Choose the earthing arrangement.")?,
            order: chosen(&posted, "order", &Order::ALL, "Choose the order of the dead test.")?,
            nominal_millivolts: millivolts(&posted.text("volts"))?,
            points: points.into_iter().flatten().collect(),
        })
    };
    let new = read().map_err(&failed)?;
    let person = posted.visitor.person.clone();
    let job = call(&office, move |office| records::plan_job(office, &person, site, &new, &origin.0)).await;
    let job = job.map_err(&failed)?;
    Ok(Redirect::to(&format!("/sites/{site}/jobs/{job}")).into_response())
}

pub async fn labels(Extension(visitor): Extension<Visitor>) -> Paged {
    let inside = html! {
        p { "Each label gets a tag of its own. Stick one beside each point of isolation and scan it there." }
        form method="post" action="/labels" .stack {
            (csrf(&visitor))
            label for="name" { "Site to print on every label" }
            input #name name="name" maxlength="120";
            label for="points" { "Points, one a line; leave it empty for a page of labels without names" }
            textarea #points name="points" rows="6" maxlength="20000" {}
            label for="grid" { "Sheet" }
            select #grid name="grid" { @for grid in Grid::ALL { option value=(grid.name) { (grid.name) } } }
            label .box { input type="checkbox" name="signs" value="1"; span { "Caution signs, four to a page, instead of labels" } }
            button type="submit" { "Make the PDF" }
        }
        p .hint { "Print at 100 %, without \"fit to page\"." }
    };
    Ok(shown(&visitor, "Labels", "/labels", inside))
}

pub async fn print_labels(State(office): State<Shared>, posted: Posted) -> Paged {
    let failed = or_page(&posted.visitor);
    let grid = Grid::named(&posted.text("grid")).ok_or_else(|| failed(OfficeError::unreadable("Choose a sheet.")))?;
    let kind = if posted.ticked("signs") { SheetKind::Signs } else { SheetKind::Tags };
    let (site, typed) = (posted.text("name"), posted.text("points"));
    let points: Vec<String> = typed.lines().map(str::trim).filter(|l| !l.is_empty()).map(str::to_owned).collect();
    let count = if points.is_empty() { grid.count() } else { points.len() };
    if count > MAX_TAGS {
        return Err(failed(OfficeError::unreadable(format!("At most {MAX_TAGS} labels go into one file."))));
    }
    let made = call(&office, move |office| {
        let mut labels = Vec::with_capacity(count);
        for n in 0..count {
            let mut bytes = [0; TagId::RANDOM_BYTES];
            (office.lent.random)(&mut bytes)?;
            let point = points.get(n).cloned().unwrap_or_default();
            labels.push(Label { tag: TagId::from_random(bytes), site: site.clone(), point });
        }
        print(&labels, &grid, kind).map_err(|e| OfficeError::unreadable(e.to_string()))
    });
    Ok(file("labels.pdf", "application/pdf", made.await.map_err(&failed)?))
}
