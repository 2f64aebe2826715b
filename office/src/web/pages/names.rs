//! People whom the journal names, and erasing them.

use axum::Extension;
use axum::extract::{Path, State};
use maud::html;
use stillbar_core::journal::EntryId;

use super::form::{Posted, csrf};
use super::{Paged, moment, or_page, shown};
use crate::error::OfficeError;
use crate::office::{Shared, call};
use crate::people::Visitor;
use crate::records;
use crate::web::guard::Origin;

pub async fn names(State(office): State<Shared>, Extension(visitor): Extension<Visitor>) -> Paged {
    let all = call(&office, records::names).await.map_err(or_page(&visitor))?;
    let inside = html! {
        p .notice .warn { "Erasing takes a name out of the office for good. The entry keeps its place, its hash and its signature, so the chain stays \
             whole. It does not reach copies on phones, in back-ups and on paper, nor names in free text, photos or typed signatures." }
        @if all.is_empty() { p { "The journal names nobody." } }
        @for named in &all {
            section .card aria-labelledby={ "n-" (named.id.short()) } {
                h3 id={ "n-" (named.id.short()) } { (named.name) }
                p .hint { "Came in " (moment(named.came_ms, 0)) ". Sites: "
                    @if named.sites.is_empty() { "none" } @else { (named.sites.join(", ")) } "." }
                details {
                    summary { "Erase " (named.name) }
                    form method="post" action={ "/names/" (named.id) } .stack {
                        (csrf(&visitor))
                        label .box { input type="checkbox" name="sure" value="1" required; span { "Nobody needs this name for a job or a dispute any more" } }
                        button type="submit" .forbid { "Erase " (named.name) }
                    }
                }
            }
        }
    };
    Ok(shown(&visitor, "Names in the journal", "/names", inside))
}

pub async fn erase(
    State(office): State<Shared>,
    Extension(origin): Extension<Origin>,
    Path(id): Path<String>,
    posted: Posted,
) -> Paged {
    let failed = or_page(&posted.visitor);
    let id: EntryId =
        id.parse().map_err(|_| failed(OfficeError::nothing("There is no such person in the journal.")))?;
    if !posted.ticked("sure") {
        return Err(failed(OfficeError::unreadable("Tick that nobody needs this name any more.")));
    }
    let who = posted.visitor.person.login.clone();
    let gone = call(&office, move |office| records::erase(office, id, &who, &origin.0)).await.map_err(&failed)?;
    let inside = html! {
        p role="status" { (gone) " entries keep their place, and tell no name any more." }
        p { a href="/names" { "Names in the journal" } }
    };
    Ok(shown(&posted.visitor, "Erased", "/names", inside))
}
