//! Questions of the procedure on the step that waits for them: one at a time, each answer a button.

use super::again;
use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::Job;
use crate::job::asked::{Does, Question, Subject, Words};
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::text;

/// Keeps an answer.
pub(super) const ANSWER: &str = "answer-question";
/// Asks for the words that an answer needs.
pub(super) const SAY: &str = "say-answer";
/// Where what an answer needs is typed.
const WORDS: &str = "words";
/// The answer that it is typed for.
const CHOSEN: &str = "answering";

/// What is open at a step, the first of it to be answered, and what was answered.
pub(super) fn view(page: &mut Page, look: &Look, job: &Job, step: Option<Step>) {
    for given in job.answers(step) {
        let of = job.called(&given.of).unwrap_or_default();
        let mut said = text::answer_to(&given.question, &given.answer);
        if !given.said().is_empty() {
            said = format!("{said}: {}", given.said());
        }
        page.fact(text::asked_of(&given.question, &of), format!("{said} ({})", look.by(&given.stamp)));
    }
    let Some((question, of, open)) = job.questions(step).into_iter().next() else { return };
    page.heading(text::question(question.code, open.about.as_deref().unwrap_or_default()));
    let chosen = look.draft(CHOSEN);
    for answer in question.offered(job, &of) {
        let of = match &of {
            Subject::Job => String::new(),
            Subject::Part(id) => format!(" {id}"),
            Subject::Own(code) => format!(" {code}"),
        };
        let action = format!("{} {}{of}", question.code, answer.code);
        let label = text::answer_to(question.code, answer.code);
        match text::answer_words(question.code, answer.code) {
            Some(words) if chosen == action => {
                let before = again::answer(look, question.code, answer.code);
                page.entry_again(look, WORDS, &words, "", before);
                page.button(text::save_answer(&label), format!("{ANSWER} {action}"));
            }
            Some(_) => {
                page.toned(label, format!("{SAY} {action}"), tone(answer.does));
            }
            None => {
                page.toned(label, format!("{ANSWER} {action}"), tone(answer.does));
            }
        }
    }
}

fn tone(does: Does) -> Tone {
    match does {
        Does::Goes => Tone::Plain,
        Does::Stands => Tone::Quiet,
        Does::Stops => Tone::Forbid,
    }
}

/// An answer that needs words: the screen asks for them.
pub(super) fn say(act: &mut Act, arg: &str) -> Result<(), NotDone> {
    act.note(CHOSEN, arg);
    act.say = Some(text::say_it());
    Ok(())
}

/// Keeps an answer: the question's code, the answer's, and what it is asked of. The gate says what is no answer here.
pub(super) fn act(act: &mut Act, job: EntryId, step: Option<Step>, arg: &str) -> Result<(), NotDone> {
    let mut parts = arg.split(' ');
    let (Some(question), Some(answer)) = (parts.next(), parts.next()) else { return Err(UNKNOWN.into()) };
    // An id has 64 hex digits, the code of a point of one's own at most 40 characters.
    let named = parts.next();
    let of: Option<EntryId> = named.and_then(|id| id.parse().ok());
    let point = named.filter(|_| of.is_none()).map(str::to_owned);
    let takes = Question::of(question).and_then(|q| q.answer(answer)).map_or(Words::None, |a| a.words);
    let said = if takes == Words::None { String::new() } else { super::home::spare(act, WORDS)? };
    let (words, who) = if takes == Words::Who { (String::new(), said) } else { (said, String::new()) };
    let (question, answer) = (question.to_owned(), answer.to_owned());
    act.keep(Some(job), Fact::Answered { question, answer, of, point, words, who })?;
    step.map_or(Ok(()), |step| act.onward(job, step))
}
