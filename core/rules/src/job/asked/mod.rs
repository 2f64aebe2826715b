//! Questions of the procedure: what a good one asks beside what is done and read, each a room of its own.
//!
//! Promises: a question is asked only where the job calls for it, so that a small job stays short; it is answered by one of its answers
//! and never by default; an answer that stops keeps everything behind it waiting, and ends what was proved, until somebody who knew of it
//! answers anew. What a new one takes: a file here, a line in [`ALL`], and its messages. Start at [`Question`].

mod answer;
mod charge_returned;
mod controls_back;
mod counted_back;
mod coupled;
mod current_transformers;
mod earthed_pole;
mod grounded_line;
mod high_line;
mod instrument_fit;
mod interlocks;
mod labels;
mod left_inside;
mod line_at_earth;
mod live_beside;
mod neutral_current;
mod own;
mod polarity_back;
mod rcd;
mod reads;
mod released_by;
mod right_board;
mod shorts_off;
mod starts_itself;
mod subject;
mod temporary_earths;
mod told_each_other;
mod tried_to_start;

pub use answer::{Answer, Does, Lifts, Words};
pub use reads::{Quantity, Reads};
pub use subject::Subject;

use super::Job;
use super::steps::{Stage, Step};
use answer::{named, plain, said, stands, stops};

use crate::journal::{EntryId, Fact, Hlc, Stamp};
use crate::names::says_something;
use crate::prove::limit::Limits;
use crate::prove::{Measured, System};

/// Every question, in the order in which a screen asks them.
pub static ALL: [&Question; 27] = [
    &line_at_earth::QUESTION,
    &high_line::QUESTION,
    &grounded_line::QUESTION,
    &earthed_pole::QUESTION,
    &told_each_other::QUESTION,
    &instrument_fit::QUESTION,
    &right_board::QUESTION,
    &labels::QUESTION,
    &starts_itself::QUESTION,
    &own::ISOLATE,
    &tried_to_start::QUESTION,
    &interlocks::QUESTION,
    &coupled::QUESTION,
    &neutral_current::QUESTION,
    &charge_returned::QUESTION,
    &temporary_earths::QUESTION,
    &live_beside::QUESTION,
    &current_transformers::QUESTION,
    &own::WORK,
    &released_by::QUESTION,
    &left_inside::QUESTION,
    &polarity_back::QUESTION,
    &own::RESTORE,
    &rcd::QUESTION,
    &shorts_off::QUESTION,
    &controls_back::QUESTION,
    &counted_back::QUESTION,
];

/// All that decides when something is asked, how it may be answered, and what an answer does.
pub struct Question {
    /// Its name in entries, tables and messages.
    pub code: &'static str,
    /// The step that waits where an answer stops and the question is not asked otherwise.
    pub home: Step,
    /// Of what it is asked in this job now, answered or not.
    pub arises: fn(&Job) -> Vec<Asked>,
    /// Its answers, as offered.
    pub answers: &'static [Answer],
    /// Whether an answer still counts: what it told of may have changed since.
    pub counts: fn(&Job, &GivenAnswer) -> bool,
    /// Whether this is only done once the question is answered of that subject.
    pub before: fn(&Fact, &Subject) -> bool,
    /// Whether nobody may pass it over.
    pub firm: bool,
    /// Whether a company may have it asked where the job does not call for it.
    pub in_every_job: InEveryJob,
}

/// Whether a company may have a question asked in every job of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InEveryJob {
    /// It says nothing where the job does not call for it.
    Never,
    /// Every job calls for it.
    Anyway,
    /// Once in the job, at its home, where a company rules so.
    IfRuled,
}

/// Where a question is asked, and of what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// The step that waits for the answer; `None`: what it comes before is done at any time.
    pub step: Option<Step>,
    /// Of what.
    pub of: Subject,
}

/// An answer that was given.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GivenAnswer {
    /// When and by whom.
    pub stamp: Stamp,
    /// The question's code.
    pub question: String,
    /// The answer's.
    pub answer: String,
    /// What it is about.
    pub of: Subject,
    /// What was said with it.
    pub words: String,
    /// Who was named with it.
    pub who: String,
    /// What was read for it.
    pub read: Option<Measured>,
}

/// A question that is open, as it is told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Open {
    /// Its code.
    pub question: &'static str,
    /// What it is asked of, as it is called; `None` where it is asked of the job.
    pub about: Option<String>,
    /// What was answered last, where that stops.
    pub stopped: Option<&'static str>,
    /// Whether nobody may pass it over.
    pub firm: bool,
}

impl GivenAnswer {
    /// What an entry answers; `None` if it answers nothing.
    fn of(stamp: Stamp, fact: &Fact) -> Option<GivenAnswer> {
        let Fact::Answered { question, answer, words, who, read, .. } = fact else { return None };
        let (question, answer, of) = (question.clone(), answer.clone(), Subject::of(fact));
        Some(GivenAnswer { stamp, question, answer, of, words: words.clone(), who: who.clone(), read: *read })
    }

    /// What was said with it, or who was named.
    pub fn said(&self) -> &str {
        if self.who.is_empty() { &self.words } else { &self.who }
    }
}

impl Question {
    /// The question of this code.
    pub fn of(code: &str) -> Option<&'static Question> {
        ALL.into_iter().find(|q| q.code == code)
    }

    /// Its answer of this code.
    pub fn answer(&self, code: &str) -> Option<&'static Answer> {
        self.answers.iter().find(|a| a.code == code)
    }

    /// What an answer is, as what was read for it says: more than counts as nothing makes it the one that stops, whatever it was called.
    pub fn judged(&'static self, job: &Job, given: &GivenAnswer) -> Option<&'static Answer> {
        self.as_read(&given.answer, given.read, job.limits_known(&given.stamp))
    }

    /// The same under these limits.
    fn as_read(&'static self, answer: &str, read: Option<Measured>, limits: Limits) -> Option<&'static Answer> {
        let answer = self.answer(answer)?;
        match (&answer.reads, read) {
            (Some(reads), Some(read)) if reads.is_over(read, limits) => self.answer(reads.over),
            _ => Some(answer),
        }
    }

    /// Answers to it about this subject, first to last. One without the words that it needs is none.
    fn given<'a>(&'static self, job: &'a Job, of: &Subject) -> impl DoubleEndedIterator<Item = &'a GivenAnswer> {
        let stops = |g: &GivenAnswer| self.judged(job, g).is_some_and(|a| a.does == Does::Stops);
        let whole = move |g: &GivenAnswer| match self.answer(&g.answer).map(|a| a.words) {
            Some(Words::None) => true,
            Some(Words::How) => says_something(&g.words) || stops(g),
            Some(Words::Who) => says_something(&g.who),
            None => false,
        };
        job.given
            .iter()
            .filter(move |g| g.question == self.code && g.of == *of && whole(g) && own::takes(job, of, &g.answer))
    }

    /// The answer that stops and that nobody who knew of it has answered anew. Whatever changes meanwhile, it stays.
    fn stopped(&'static self, job: &Job, of: &Subject) -> Option<&'static Answer> {
        let stops = |g: &GivenAnswer| self.judged(job, g).filter(|a| a.does == Does::Stops);
        let over = |g: &GivenAnswer, stop: &Answer| {
            let lifts = |l: &&GivenAnswer| self.judged(job, l).is_some_and(|a| a.lifts(stop));
            let later = self.given(job, of).filter(|l| l.stamp.clock > g.stamp.clock);
            // What is said to be in a photo lifts nothing where none was taken, whoever wrote it.
            let in_none = |l: &GivenAnswer| self.code == labels::QUESTION.code && !(self.counts)(job, l);
            later.filter(lifts).any(|l| job.heard.saw(&l.stamp, &g.stamp) && !in_none(l))
        };
        self.given(job, of).find_map(|g| stops(g).filter(|stop| !over(g, stop)))
    }

    /// The answer that holds, if one does.
    pub fn answered<'a>(&'static self, job: &'a Job, of: &Subject) -> Option<&'a GivenAnswer> {
        if self.stopped(job, of).is_some() {
            return None;
        }
        self.given(job, of).rfind(|g| (self.counts)(job, g))
    }

    /// Of what it is asked in this job now, answered or not: where the job calls for it, and where the company has it asked.
    fn arises_in(&'static self, job: &Job) -> Vec<Asked> {
        let mut all = (self.arises)(job);
        // What comes before the work is not asked any more once it is over.
        let over = self.home == Step::Work && job.finished.is_some();
        if job.ruled_in(self) && !over && !all.iter().any(|asked| asked.of == Subject::Job) {
            all.extend(once(self.home));
        }
        all
    }

    /// The answers that a subject takes, as offered.
    pub fn offered(&'static self, job: &Job, of: &Subject) -> impl Iterator<Item = &'static Answer> {
        self.answers.iter().filter(|answer| own::takes(job, of, answer.code))
    }

    fn open(&'static self, job: &Job, of: &Subject) -> Option<Open> {
        if self.answered(job, of).is_some() {
            return None;
        }
        let stopped = self.stopped(job, of).map(|a| a.code);
        Some(Open { question: self.code, about: job.called(of), stopped, firm: self.firm || stopped.is_some() })
    }
}

/// The line or pole that somebody has shown to be the marked one of the job's system.
pub(super) fn marked(job: &Job) -> Option<String> {
    let asked = [&high_line::QUESTION, &grounded_line::QUESTION, &earthed_pole::QUESTION].into_iter();
    let given = asked.filter(|q| !(q.arises)(job).is_empty()).find_map(|q| q.answered(job, &Subject::Job))?;
    Some(
        match given.answer.as_str() {
            "l1" => "L1",
            "l2" => "L2",
            "l3" => "L3",
            "plus" => "L+",
            "minus" => "L-",
            _ => return None,
        }
        .to_owned(),
    )
}

impl Job {
    /// What an entry answers.
    pub(super) fn answer_given(&mut self, stamp: Stamp, fact: &Fact) {
        let Some(given) = GivenAnswer::of(stamp, fact) else { return };
        // What a later version asks, or a later answer, may stop everything.
        if Question::of(&given.question).and_then(|q| q.answer(&given.answer)).is_none() {
            self.newer.push(stamp);
        }
        self.given.push(given);
    }

    /// Of what a question is asked: where the job calls for it, and wherever an answer stops.
    fn asked_of(&self, question: &'static Question) -> Vec<Asked> {
        let mut all = question.arises_in(self);
        for given in self.given.iter().filter(|g| g.question == question.code) {
            if !all.iter().any(|a| a.of == given.of) && question.stopped(self, &given.of).is_some() {
                all.push(Asked { step: Some(question.home), of: given.of.clone() });
            }
        }
        all
    }

    /// The questions that are open at a step, and of what.
    pub fn questions(&self, step: Option<Step>) -> Vec<(&'static Question, Subject, Open)> {
        let mut all = Vec::new();
        for question in ALL {
            for asked in self.asked_of(question).into_iter().filter(|a| a.step == step) {
                let open = question.open(self, &asked.of);
                all.extend(open.map(|open| (question, asked.of, open)));
            }
        }
        all
    }

    /// The answers that hold, where the job calls for them.
    fn holding(&self) -> impl Iterator<Item = (&'static Question, Asked, &GivenAnswer)> {
        ALL.into_iter().flat_map(move |question| {
            let asked = question.arises_in(self).into_iter();
            asked.filter_map(move |asked| question.answered(self, &asked.of).map(|given| (question, asked, given)))
        })
    }

    /// The answers of a step that hold.
    pub fn answers(&self, step: Option<Step>) -> Vec<&GivenAnswer> {
        self.holding().filter(|(_, asked, _)| asked.step == step).map(|(.., given)| given).collect()
    }

    /// The question that has to be answered before this is done.
    pub(super) fn question_before(&self, fact: &Fact) -> Option<Open> {
        ALL.into_iter().find_map(|question| {
            let arises = question.arises_in(self).into_iter();
            let before = arises.filter(|asked| (question.before)(fact, &asked.of));
            before.filter_map(|asked| Some((asked.step, question.open(self, &asked.of)?))).find_map(|(step, open)| {
                let passed_over = || self.steps().iter().any(|s| Some(s.step) == step && s.deviation.is_some());
                (open.firm || !passed_over()).then_some(open)
            })
        })
    }

    /// Whether an answer would count if it were given now, behind everything that is recorded.
    pub(super) fn would_count(&self, question: &Question, fact: &Fact) -> bool {
        let last = Stamp { clock: Hlc(i64::MAX, u32::MAX), ..self.stamp };
        GivenAnswer::of(last, fact).is_some_and(|given| (question.counts)(self, &given))
    }

    /// Where a question is asked of this subject, if it is asked at all.
    pub(super) fn asked(&self, question: &'static Question, of: &Subject) -> Option<Asked> {
        self.asked_of(question).into_iter().find(|asked| asked.of == *of)
    }

    /// Whether an answer to it about this subject stops.
    pub(super) fn is_stopped(&self, question: &'static Question, of: &Subject) -> bool {
        question.stopped(self, of).is_some()
    }

    /// The codes of a question and of an answer that stops, where this is one.
    pub(super) fn stopping(&self, stamp: Stamp, fact: &Fact) -> Option<(&'static str, &'static str)> {
        let given = GivenAnswer::of(stamp, fact)?;
        let question = Question::of(&given.question)?;
        let answer = question.judged(self, &given).filter(|a| a.does == Does::Stops)?;
        Some((question.code, answer.code))
    }

    /// What an answer would be if it were given now, as what was read for it says.
    pub fn would_be(
        &self,
        question: &'static Question,
        answer: &str,
        read: Option<Measured>,
    ) -> Option<&'static Answer> {
        question.as_read(answer, read, self.limits())
    }

    /// The codes of the question and of the answer that stops, where this answers it otherwise.
    pub(super) fn lifted_by(&self, fact: &Fact) -> Option<(&'static str, &'static str)> {
        let Fact::Answered { question, .. } = fact else { return None };
        let question = Question::of(question)?;
        Some((question.code, question.stopped(self, &Subject::of(fact))?.code))
    }

    /// An answer that stops, but for questions of restoring: nothing stands proved under it.
    pub(super) fn stopped_by(&self) -> Option<Open> {
        ALL.into_iter().filter(|q| q.home.stage() != Stage::Restore).find_map(|question| {
            let of = self.asked_of(question).into_iter().map(|asked| asked.of);
            of.filter(|of| question.stopped(self, of).is_some()).find_map(|of| question.open(self, &of))
        })
    }

    /// Answers that hold and by which not all was shown.
    pub fn unshown(&self) -> Vec<&GivenAnswer> {
        let stands =
            |question: &Question, g: &GivenAnswer| question.answer(&g.answer).is_some_and(|a| a.does == Does::Stands);
        self.holding().filter(|(question, _, given)| stands(question, given)).map(|(.., given)| given).collect()
    }
}

/// Holds nothing back by itself: its step waits for it.
fn nothing(_: &Fact, _: &Subject) -> bool {
    false
}

/// Counts in this round, with every point closed that is: what is asked with the supply back.
fn supply_back(job: &Job, given: &GivenAnswer) -> bool {
    let closed = job.points.iter().filter_map(|p| p.closed.as_ref());
    job.this_round(&given.stamp) && closed.into_iter().all(|c| c.clock < given.stamp.clock)
}

/// Counts in the test that was begun last, in this round.
fn since_this_run(job: &Job, given: &GivenAnswer) -> bool {
    job.this_round(&given.stamp) && job.run().is_some_and(|run| run.before.clock < given.stamp.clock)
}

/// Counts in this round, for all that is behind a cover by then: another cover shows other parts.
fn behind_covers(job: &Job, given: &GivenAnswer) -> bool {
    job.this_round(&given.stamp) && job.covers.iter().all(|(off, ..)| off.clock < given.stamp.clock)
}

/// Counts with every point open that is: one that was opened since was not in it.
fn points_open(job: &Job, given: &GivenAnswer) -> bool {
    let opened = job.points.iter().filter_map(|p| p.opened.as_ref());
    opened.into_iter().all(|o| o.clock < given.stamp.clock)
}

/// Once in a job, at this step.
fn once(step: Step) -> Vec<Asked> {
    vec![Asked { step: Some(step), of: Subject::Job }]
}
