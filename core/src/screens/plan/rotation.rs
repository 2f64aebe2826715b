//! Which way the lines turn before anything is isolated: what is right after restoring is as it was found.

use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::UNKNOWN;
use super::super::job::next;
use super::super::parts::Tone;
use super::passed;
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::Rotation;
use crate::journal::{EntryId, Fact};
use crate::text::screens::job as said_job;
use crate::text::screens::plan as said;
use crate::text::{self, AskPlan};

/// What was read, and the form.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(Tone::Warn, said::rotation_says());
    if let Some((stamp, rotation, how)) = &job.rotation_found {
        let word = match rotation {
            Some(rotation) => text::rotation_choice(*rotation),
            None => said::rotation_not_read(),
        };
        page.fact(word, said_job::noted(how, look.by(stamp)));
    }
    page.entry("how", &said::rotation_where(), &said::rotation_where_hint(), look.draft("how"));
    page.heading(said::rotation());
    for (rotation, value) in Rotation::ALL {
        page.button(text::rotation_choice(rotation), format!("rotation {value}"));
    }
    if passed(job, Step::RotationFound) {
        next(page, job);
    }
    page.entry("why", &said::rotation_why_not(), &said::rotation_why_not_hint(), look.draft("why"));
    page.button(said::rotation_not_read(), "not-read");
}

/// Keeps it.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "rotation" => {
            let (rotation, ..) = Rotation::ALL.into_iter().find(|(_, v)| *v == arg).ok_or(UNKNOWN)?;
            Fact::RotationFound { rotation: Some(rotation), how: act.need("how", AskPlan::RotationWhere)? }
        }
        "not-read" => Fact::RotationFound { rotation: None, how: act.need("why", AskPlan::RotationWhyNot)? },
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact)?;
    act.onward(job, Step::RotationFound)
}
