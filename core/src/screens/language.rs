//! In which language this device speaks. By which rules a job is done is chosen with the job, and does not follow from it.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::parts::{StepRow, StepState, Tone};
use crate::app::NotDone;
use crate::text::Gone;
use crate::text::languages::{Language, OFFERED};
use crate::text::screens::language as said;

/// Follows the device.
const AS_DEVICE: &str = "as-device";

/// What the first screen has of it.
pub(super) fn on_home(page: &mut Page, look: &Look) {
    let spoken = look.language.spoken();
    let lines = if spoken.draft() { vec![said::draft()] } else { vec![] };
    page.row(said::row(spoken.own_name()), lines, format!("go {}", Route::Language));
}

/// Above everything on the first screen where the language is a draft.
pub(super) fn caution(page: &mut Page, look: &Look) {
    if look.language.spoken().draft() {
        page.caution(Tone::Warn, said::draft_caution());
    }
}

/// The languages.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new(said::title());
    page.para(said::rules_apart());
    let as_device = vec![look.language.asked.own_name().to_owned()];
    row(&mut page, look.language.chosen.is_none(), said::as_device(), as_device, AS_DEVICE);
    for language in OFFERED {
        let lines = if language.draft() { vec![said::draft()] } else { vec![] };
        let here = look.language.chosen == Some(language);
        row(&mut page, here, language.own_name().into(), lines, language.tag());
    }
    page
}

fn row(page: &mut Page, here: bool, title: String, lines: Vec<String>, choice: &str) {
    if here {
        let (number, state, word) = (String::new(), StepState::Now, said::chosen());
        page.step(StepRow { number, title, state, word, lines, action: String::new() });
    } else {
        page.row(title, lines, format!("speak {choice}"));
    }
}

/// `speak TAG` or `speak as-device`.
pub fn act(act: &mut Act, verb: &str, arg: &str) -> Result<(), NotDone> {
    let chosen = match (verb, arg) {
        ("speak", AS_DEVICE) => None,
        ("speak", tag) => Some(Language::of_tag(tag).ok_or(Gone::Place)?),
        _ => return Err(Gone::Place.into()),
    };
    act.app.choose_language(chosen)?;
    act.go = Some(Route::Home);
    Ok(())
}
