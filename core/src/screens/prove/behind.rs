//! What may be behind an indication: the judge's diagnosis as a drawing, a sentence and the next action. It never changes what is proved.

use std::sync::{Mutex, PoisonError};

use super::super::build::Page;
use super::super::build::answer;
use super::super::context::Look;
use super::super::parts::{Pad, PadRow, Tone};
use super::pairs::field_of;
use crate::job::Job;
use crate::prove::judge::{Cause, Judgement, judge};
use crate::prove::{Case, Run, Test};
use crate::text;
use crate::text::screens::prove as said;

/// Shows the likeliest causes of what was read.
pub fn view(page: &mut Page, job: &Job) {
    let said = judged(job.case());
    if said.diagnoses.is_empty() && said.repeat.is_empty() {
        return;
    }
    page.heading(said::behind());
    // Where the likeliest cause explains every reading, to doubt one as well would only send somebody to a live board again.
    let whole = said.diagnoses.first().is_some_and(|d| d.cause != Cause::Misplaced && d.fit > 0.995);
    let told = said.diagnoses.iter().filter(|d| !(whole && d.cause == Cause::Misplaced));
    for (i, diagnosis) in told.enumerate() {
        // How well it fits is no probability: docs/judge.md.
        page.fact(if i == 0 { said::likeliest() } else { said::or() }, text::explains(diagnosis));
        if i == 0 {
            page.fact(said::next(), text::next(diagnosis.cause));
            // The sentence and the next action first: they are what a person with a live board in front of them needs.
            if let Some((picture, label)) = text::potentials(&said) {
                page.drawing(label, picture);
            }
        }
    }
    for [a, b] in said.repeat.iter().filter(|_| !whole) {
        page.fact(said::odd(), said::odd_pair(a, b));
    }
    page.para(said::guess());
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
    page.heading(said::more());
    page.caution(Tone::Warn, said::more_caution());
    let rows = missing.iter().map(|t| {
        let field = field_of(run.id(), t);
        PadRow {
            chosen: look.draft(&field),
            label: said::pair(&t.first, &t.then),
            hint: said::more_hint(&t.first, &t.then),
            field,
        }
    });
    page.pad(Pad {
        label: said::more_pad(),
        rows: rows.collect(),
        options: vec![
            answer("none", said::nothing(), Tone::Plain),
            answer("continuity", said::continuity(), Tone::Plain),
            answer("lit", said::lit(), Tone::Forbid),
        ],
        volts: true,
        done: String::new(),
    });
    page.button(said::more_save(), "readings all");
}
