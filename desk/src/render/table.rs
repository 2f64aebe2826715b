//! Tables: as such where there is room; on a narrow screen one of many columns becomes a card a row.

use maud::{Markup, html};
use stillbar_core::parts::Row;

/// Up to this many columns fit a phone.
const NARROW: usize = 3;

pub fn table(id: &str, caption: &str, head: &[String], rows: &[Row]) -> Markup {
    // The roles are said again because a browser may drop them once a style turns rows into cards.
    html! {
        table #(id) .(if head.len() > NARROW { "many" } else { "few" }) role="table" {
            caption { (caption) }
            thead role="rowgroup" {
                tr role="row" { @for name in head { th scope="col" role="columnheader" { (name) } } }
            }
            tbody role="rowgroup" {
                @for row in rows {
                    tr role="row" {
                        @for (i, cell) in row.cells.iter().enumerate() {
                            @let name = head.get(i).map_or("", String::as_str);
                            @if i == 0 { th scope="row" role="rowheader" data-name=(name) { (cell) } }
                            @else { td role="cell" data-name=(name) { (cell) } }
                        }
                    }
                }
            }
        }
    }
}
