//! What was said in earlier jobs, offered again so that a thumb can say it: never what was found, read or fitted, only the words for it.

use super::context::Look;
use crate::job::Job;
use crate::journal::EntryId;
use crate::journal::fact::About;
use crate::names::alike;

/// Most that are offered for one field: a fourth would push what is asked off the screen.
const MOST: usize = 3;
/// Longer texts are no button.
const LONGEST: usize = 60;

/// Of what the jobs before said, latest first: each once.
fn each<T: PartialEq>(look: &Look, of: impl Fn(&Job) -> Vec<T>, fits: impl Fn(&T) -> bool) -> Vec<T> {
    let mut said = Vec::new();
    for one in look.site.before.iter().flat_map(of).filter(fits) {
        if said.len() < MOST && !said.contains(&one) {
            said.push(one);
        }
    }
    said
}

/// Whether it can stand on a button, and in the action behind it: what came from elsewhere may hold line breaks and tabs, which part texts there.
fn short(said: &str) -> bool {
    !said.is_empty() && said.chars().count() <= LONGEST && !said.contains(char::is_control)
}

fn words(look: &Look, of: impl Fn(&Job) -> Vec<String>) -> Vec<String> {
    each(look, of, |said| short(said))
}

fn pairs(look: &Look, of: impl Fn(&Job) -> Vec<(String, String)>) -> Vec<(String, String)> {
    each(look, of, |(first, then)| short(first) && short(then))
}

/// Where somebody looked for sources.
pub(super) fn looked(look: &Look) -> Vec<String> {
    words(look, |job| {
        let none = job.sources.iter().filter(|s| s.found.is_none()).map(|s| s.looked.clone());
        none.chain(job.stored.iter().map(|s| s.looked.clone())).collect()
    })
}

/// Who was told that the supply goes off, and how.
pub(super) fn told(look: &Look) -> Vec<(String, String)> {
    pairs(look, |job| {
        let told = job.told.iter().filter(|told| told.about == About::Isolating);
        told.map(|told| (told.who.clone(), told.how.clone())).collect()
    })
}

/// What was put up, and where.
pub(super) fn barriers(look: &Look) -> Vec<(String, String)> {
    pairs(look, |job| job.barriers.iter().map(|(_, what, at)| (what.clone(), at.clone())).collect())
}

/// What was seen when points were opened.
pub(super) fn seen(look: &Look) -> Vec<String> {
    words(look, |job| job.points.iter().map(|p| p.seen.clone()).collect())
}

/// What a person wrote on their locks; but for those that are on somewhere.
pub(super) fn lock_labels(look: &Look, owner: EntryId) -> Vec<String> {
    let on = |label: &str| look.locks.iter().any(|l| l.on && l.owner == owner && alike(&l.label, label));
    words(look, |job| {
        let own = job.locks.iter().filter(|l| l.owner == owner && !on(&l.label));
        own.map(|l| l.label.clone()).collect()
    })
}

/// Covers that came off.
pub(super) fn covers(look: &Look) -> Vec<String> {
    words(look, |job| job.covers.iter().map(|(_, what, _)| what.clone()).collect())
}

/// Where the reference was shown to be earth.
pub(super) fn earth(look: &Look) -> Vec<String> {
    words(look, |job| job.runs.iter().filter_map(|run| run.reference()).map(|earth| earth.how.clone()).collect())
}

/// What was said with this answer to this question.
pub(super) fn answer(look: &Look, question: &str, answer: &str) -> Vec<String> {
    words(look, |job| {
        let given = job.given.iter().filter(|g| g.question == question && g.answer == answer);
        given.map(|g| g.said().to_owned()).collect()
    })
}
