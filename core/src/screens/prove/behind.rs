//! What may be behind an indication: the judge's diagnosis as a drawing, a sentence and the next action. It never changes what is proved.

use std::sync::{Mutex, PoisonError};

use super::super::build::Page;
use super::super::build::answer;
use super::super::context::Look;
use super::super::parts::{Pad, PadRow, Tone};
use super::field_of;
use crate::job::Job;
use crate::prove::judge::{Cause, Judgement, judge};
use crate::prove::{Case, Run, Test};
use crate::text;

/// Shows the likeliest causes of what was read.
pub fn view(page: &mut Page, job: &Job) {
    let said = judged(job.case());
    if said.diagnoses.is_empty() && said.repeat.is_empty() {
        return;
    }
    page.heading("What may be behind it");
    // Where the likeliest cause explains every reading, to doubt one as well would only send somebody to a live board again.
    let whole = said.diagnoses.first().is_some_and(|d| d.cause != Cause::Misplaced && d.fit > 0.995);
    let told = said.diagnoses.iter().filter(|d| !(whole && d.cause == Cause::Misplaced));
    for (i, diagnosis) in told.enumerate() {
        // How well it fits is no probability: docs/judge.md.
        page.fact(if i == 0 { "Likeliest" } else { "Or" }, text::explains(diagnosis));
        if i == 0 {
            page.fact("Next", text::next(diagnosis.cause));
            // The sentence and the next action first: they are what a person with a live board in front of them needs.
            if let Some((picture, label)) = text::potentials(&said) {
                page.drawing(label, picture);
            }
        }
    }
    for [a, b] in said.repeat.iter().filter(|_| !whole) {
        page.fact("Odd one out", format!("{a} – {b}: test this pair again."));
    }
    page.para("A guess from the readings, and from how common each cause is. No guess makes a conductor dead.");
}

/// Judging takes tens of milliseconds and the screen is drawn again after every touch: the last answer is kept with its question.
fn judged(case: Case) -> Judgement {
    static LAST: Mutex<Option<(Case, Judgement)>> = Mutex::new(None);
    let mut last = LAST.lock().unwrap_or_else(PoisonError::into_inner);
    match &*last {
        Some((asked, said)) if *asked == case => said.clone(),
        _ => {
            let said = judge(&case);
            *last = Some((case, said.clone()));
            said
        }
    }
}

/// The pairs not read yet, for finding the cause where the site's rules let a person measure on.
pub fn more(page: &mut Page, look: &Look, run: &Run, plan: &[Test]) {
    let missing = run.missing(plan);
    if missing.is_empty() {
        return;
    }
    page.heading("More readings, to find the cause");
    page.caution(
        Tone::Warn,
        "Only if your rules let you measure on live parts, with the protection that they ask for.",
    );
    let rows = missing.iter().map(|t| {
        let field = field_of(run.id(), t);
        PadRow {
            chosen: look.draft(&field),
            label: format!("{} – {}", t.first, t.then),
            hint: format!("First probe on {}, other probe on {}.", t.first, t.then),
            field,
        }
    });
    page.pad(Pad {
        label: "Pairs not read yet".into(),
        rows: rows.collect(),
        options: vec![
            answer("none", "Nothing", Tone::Plain),
            answer("continuity", "Continuity", Tone::Plain),
            answer("lit", "Lit", Tone::Forbid),
        ],
        volts: true,
    });
    page.button("Save the further readings", "readings all");
}
