//! Questions of the procedure on the step that waits for them: one at a time, each answer a button.

use super::again;
use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::asked::{Answer, Does, Quantity, Question, Reads, Subject, Words};
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::prove::{Measured, parse_amps, parse_volts};
use crate::text::{self, AskDevice, AskFirst};

/// Keeps an answer.
pub(super) const ANSWER: &str = "answer-question";
/// Keeps an answer with the words that stand in the action, as they were said in an earlier job.
pub(super) const AGAIN: &str = "answer-again";
/// Asks for the words that an answer needs.
pub(super) const SAY: &str = "say-answer";
/// Keeps an answer with an indicator that showed nothing.
pub(super) const NOTHING: &str = "answer-nothing-shown";
/// Where what was read is typed.
const READ: &str = "read";
/// Where what an answer needs is typed.
const WORDS: &str = "words";
/// The answer that it is typed for.
const CHOSEN: &str = "answering";

/// What is open at a step, the first of it to be answered, and what was answered.
pub(super) fn view(page: &mut Page, look: &Look, job: &Job, step: Option<Step>) {
    for given in job.answers(step) {
        let of = job.called(&given.of).unwrap_or_default();
        let mut said = text::answer_to(&given.question, &given.answer);
        let with = text::said_with(given.read, given.said());
        if !with.is_empty() {
            said = text::answer_with(&said, &with);
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
                form(page, look, question.code, answer, &words, &action);
            }
            Some(_) => {
                // The words of an earlier job with the answer in one tap; a figure is read anew.
                let before = again::answer(look, question.code, answer.code);
                let usual = if before.is_empty() { text::usual_words(question.code, answer.code) } else { Vec::new() };
                if answer.reads.is_none() && answer.does == Does::Goes {
                    for said in before.iter().take(1).chain(&usual) {
                        page.button(text::answer_with(&label, said), format!("{AGAIN} {action}\t{said}"));
                    }
                }
                page.toned(label, format!("{SAY} {action}"), tone(answer.does));
            }
            None => {
                page.toned(label, format!("{ANSWER} {action}"), tone(answer.does));
            }
        }
    }
}

/// What an answer needs, and the button that saves it. A reading is saved as such: what it is called follows from the figure.
fn form(page: &mut Page, look: &Look, question: &str, answer: &Answer, words: &str, action: &str) {
    let read = text::answer_read(question, answer.code);
    if let Some(label) = &read {
        page.field(READ, label, &text::as_shown(), look.draft(READ), EntryKind::Number, 12);
    }
    // Beside a figure what is said is about that reading alone.
    let before = if read.is_some() { Vec::new() } else { again::answer(look, question, answer.code) };
    page.entry_again(look, WORDS, words, "", before);
    let saves = match read {
        Some(_) => text::save_reading(false),
        None => text::save_answer(&text::answer_to(question, answer.code)),
    };
    page.button(saves, format!("{ANSWER} {action}"));
    if answer.reads.is_some_and(|reads| reads.quantity != Quantity::Current) {
        page.button(text::save_reading(true), format!("{NOTHING} {action}"));
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

/// What was read for an answer. Nothing typed is no reading: the gate asks for one.
fn read(act: &Act, reads: Reads) -> Result<Option<Measured>, NotDone> {
    let typed = act.given(READ);
    // The sign of a direct voltage or current says which way round, not how much.
    let typed = typed.trim_start_matches(['-', '−']);
    if typed.is_empty() {
        return Ok(None);
    }
    let read = match reads.quantity {
        Quantity::Current => parse_amps(typed).map(Measured::Milliamps),
        Quantity::Voltage | Quantity::DirectVoltage => parse_volts(typed).map(Measured::Millivolts),
    };
    Ok(Some(read.map_err(AskFirst::Volts)?))
}

/// Keeps an answer: the question's code, the answer's, and what it is asked of. The gate says what is no answer here.
pub(super) fn act(act: &mut Act, job: EntryId, step: Option<Step>, verb: &str, arg: &str) -> Result<(), NotDone> {
    let (arg, before) = arg.split_once('\t').unwrap_or((arg, ""));
    let mut parts = arg.split(' ');
    let (Some(question), Some(answer)) = (parts.next(), parts.next()) else { return Err(UNKNOWN.into()) };
    // An id has 64 hex digits, the code of a point of one's own at most 40 characters.
    let named = parts.next();
    let of: Option<EntryId> = named.and_then(|id| id.parse().ok());
    let point = named.filter(|_| of.is_none()).map(str::to_owned);
    let asked = Question::of(question);
    let mut answers = asked.and_then(|q| q.answer(answer));
    let said = match answers {
        Some(answer) if verb == AGAIN && answer.words != Words::None => Act::bounded(before, AskDevice::Shorter)?,
        Some(answer) if answer.words != Words::None => super::home::spare(act, WORDS)?,
        _ => String::new(),
    };
    let read = match answers.and_then(|a| a.reads) {
        // A figure that was typed is what was shown.
        Some(_) if verb == NOTHING && act.given(READ).is_empty() => Some(Measured::NoIndication),
        Some(reads) => read(act, reads)?,
        None => None,
    };
    // More than counts as nothing is what it is, whatever was tapped.
    let over = match (asked, read) {
        (Some(asked), Some(_)) => act.job(job)?.would_be(asked, answer, read).filter(|a| a.code != answer),
        _ => None,
    };
    answers = over.or(answers);
    let (words, who) =
        if answers.is_some_and(|a| a.words == Words::Who) { (String::new(), said) } else { (said, String::new()) };
    let answer = answers.map_or(answer, |a| a.code).to_owned();
    let told = over.zip(read).map(|(over, read)| text::read_over(read, question, over.code));
    act.keep(Some(job), Fact::Answered { question: question.to_owned(), answer, of, point, words, who, read })?;
    if told.is_some() {
        (act.alarm, act.say) = (true, told);
        return Ok(());
    }
    step.map_or(Ok(()), |step| act.onward(job, step))
}
