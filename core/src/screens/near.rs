//! Two phones beside each other, with no signal: codes that are shown and scanned.

use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::{Drawing, Ink, Shape, Tone};
use crate::app::NotDone;
use crate::app::near::entries;
use crate::tag::{QUIET, Symbol};

/// The screen.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new("Pass locks to a phone beside you");
    let near = look.near;
    match near.part(look.now) {
        None => {
            page.para(
                "Two phones tell each other of their jobs and locks by showing and scanning codes. It needs no signal and no office. What \
                 comes is checked like everything that comes from others.",
            );
            page.fact("1", "You show what this phone has. The other scans it.");
            page.fact("2", "The other then shows what this phone lacks. You scan it.");
            page.fact("3", "Then the other way round.");
            page.button("Scan what the other shows", "scan");
            page.main("Show what this phone has", "show");
        }
        Some((turn, text, of)) => {
            let what = match near.entries {
                0 => "What this phone has. The other phone scans it.".to_owned(),
                n => format!("{} that the other phone lacks. It scans these codes.", entries(n)),
            };
            page.para(what);
            if of > 1 {
                page.para(format!(
                    "Part {} of {of}. The parts come round by themselves: hold both phones still.",
                    turn + 1
                ));
            }
            page.drawing(format!("Code {} of {of}, for the other phone to scan.", turn + 1), code(text));
            page.toned("Stop showing", "stop", Tone::Quiet);
            page.main("Scan what the other shows", "scan");
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
