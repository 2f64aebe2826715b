//! Two phones beside each other, with no signal: codes that are shown and scanned.

use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::{Drawing, Ink, Shape, Tone};
use crate::app::NotDone;
use crate::tag::{QUIET, Symbol};
use crate::text::screens::near as said;

/// The screen.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new(said::title());
    let near = look.near;
    match near.part(look.now) {
        None => {
            page.para(said::what_it_is());
            page.fact(said::one(), said::first());
            page.fact(said::two(), said::second());
            page.fact(said::three(), said::third());
            page.button(said::scan(), "scan");
            page.main(said::show(), "show");
        }
        Some((turn, text, of)) => {
            page.para(match near.entries {
                0 => said::shows_has(),
                count => said::shows_entries(count),
            });
            if of > 1 {
                page.para(said::part(turn + 1, of));
            }
            page.drawing(said::drawing(turn + 1, of), code(text));
            page.toned(said::stop(), "stop", Tone::Quiet);
            page.main(said::scan(), "scan");
        }
    }
    page
}

/// A code as a drawing: dark on light in any theme, or no camera would read it.
fn code(text: &str) -> Drawing {
    let symbol = Symbol::of_part(text);
    let side = (symbol.width + 2 * QUIET) as f32;
    let ground = Shape::Box { x: 0.0, y: 0.0, w: side, h: side, thick: 0.0, filled: true, ink: Ink::Light };
    let mut shapes = vec![ground];
    let at = |n: usize| (n + QUIET) as f32;
    shapes.extend(symbol.runs().into_iter().map(|(x, y, run)| Shape::Box {
        x: at(x),
        y: at(y),
        w: run as f32,
        h: 1.0,
        thick: 0.0,
        filled: true,
        ink: Ink::Dark,
    }));
    Drawing { width: side, height: side, shapes }
}

/// What is done here.
pub fn act(act: &mut Act, verb: &str) -> Result<(), NotDone> {
    match verb {
        "show" => act.app.show_has(),
        "stop" => {
            act.app.near.shown = None;
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}
