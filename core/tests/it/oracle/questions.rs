//! Questions of the procedure, as the page tells of them: what can be answered, and what an answer that stops means for a proof.
//!
//! "It stops: nothing behind it goes on, every proof before it is over, and nothing stands proved until somebody who knew of it answers
//! otherwise."

use stillbar_core::journal::fact::SourceKind;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::{Measured, System};
use stillbar_core::supply::Position;

use super::alike::says_something;
use super::known::Known;
use super::labels;
use super::later::may_go_on;
use super::promise::{Ask, system_of};
use super::runs::Run;
use super::systems::row;

/// What is asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    Job,
    Point,
    Source,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    Goes,
    Stands,
    Stops,
}

use Does::{Goes, Stands, Stops};

/// A row of the page's table: the answers, what each does, and whether it needs words.
pub struct Question {
    pub code: &'static str,
    pub of: Of,
    /// Asked once the work is over; it says nothing of what was proved before.
    restoring: bool,
    pub answers: &'static [(&'static str, Does, bool)],
}

const fn before_work(code: &'static str, of: Of, answers: &'static [(&'static str, Does, bool)]) -> Question {
    Question { code, of, restoring: false, answers }
}

const fn restoring(code: &'static str, of: Of, answers: &'static [(&'static str, Does, bool)]) -> Question {
    Question { code, of, restoring: true, answers }
}

/// "`l1`, `l2`, `l3`, with what was read; `not-known` stands."
const BY_LINE: &[(&str, Does, bool)] =
    &[("l1", Goes, true), ("l2", Goes, true), ("l3", Goes, true), ("not-known", Stands, true)];

pub const ALL: [Question; 24] = [
    before_work("told-each-other", Of::Job, &[("told", Goes, true), ("one-employer", Goes, false)]),
    before_work("instrument-fit", Of::Job, &[("fits", Goes, false), ("does-not-fit", Stops, false)]),
    before_work(
        "right-board",
        Of::Point,
        &[("seen-live", Goes, true), ("traced", Goes, true), ("not-shown", Stands, true)],
    ),
    before_work(
        "labels",
        Of::Point,
        &[("in-photo", Goes, false), ("not-shown", Stands, true), ("do-not-match", Stops, false)],
    ),
    before_work(
        "starts-itself",
        Of::Source,
        &[("blocked", Goes, true), ("cannot", Goes, true), ("not-blocked", Stops, false)],
    ),
    before_work(
        "tried-to-start",
        Of::Job,
        &[("nothing-moved", Goes, false), ("not-tried", Stands, true), ("it-started", Stops, false)],
    ),
    before_work(
        "interlocks",
        Of::Job,
        &[("none-fitted", Goes, false), ("in-order", Goes, true), ("bridged", Stops, false)],
    ),
    before_work(
        "coupled",
        Of::Job,
        &[("other-cause", Goes, true), ("gone-under-load", Stands, true), ("stays-under-load", Stops, false)],
    ),
    before_work(
        "charge-returned",
        Of::Job,
        &[("gone", Goes, true), ("shorted", Goes, true), ("returned", Stops, false)],
    ),
    before_work("temporary-earths", Of::Job, &[("fitted", Goes, false), ("not-asked", Goes, true)]),
    before_work(
        "current-transformers",
        Of::Job,
        &[("none", Goes, false), ("left-closed", Goes, false), ("shorted", Goes, true), ("open", Stops, false)],
    ),
    before_work("released-by", Of::Job, &[("tester", Goes, false), ("another", Goes, false)]),
    before_work("neutral-current", Of::Job, &[("none", Goes, true), ("current", Stops, false)]),
    before_work(
        "live-beside",
        Of::Job,
        &[("none", Goes, false), ("screened", Goes, true), ("not-screened", Stops, false)],
    ),
    before_work("high-line", Of::Job, BY_LINE),
    before_work("grounded-line", Of::Job, BY_LINE),
    before_work(
        "earthed-pole",
        Of::Job,
        &[("plus", Goes, true), ("minus", Goes, true), ("none", Goes, true), ("not-known", Stands, true)],
    ),
    before_work(
        "line-at-earth",
        Of::Job,
        &[("none", Goes, true), ("not-known", Stands, true), ("one-is", Stops, false), ("corrected", Goes, false)],
    ),
    restoring("left-inside", Of::Job, &[("nothing", Goes, false), ("something", Stops, false)]),
    restoring(
        "rcd",
        Of::Job,
        &[
            ("measured", Goes, true),
            ("button", Goes, false),
            ("none-fitted", Goes, false),
            ("not-tested", Stands, true),
        ],
    ),
    restoring("shorts-off", Of::Job, &[("off", Goes, true), ("left-on", Stands, true)]),
    restoring("counted-back", Of::Job, &[("all", Goes, false), ("missing", Stands, true)]),
    restoring("polarity-back", Of::Job, &[("as-marked", Goes, true), ("reversed", Stops, false)]),
    restoring("controls-back", Of::Source, &[("automatic", Goes, true), ("left-blocked", Stands, true)]),
];

/// An answer that can be read here.
#[derive(Clone, Copy)]
pub struct Answer<'a> {
    pub question: &'static Question,
    pub code: &'static str,
    pub of: Option<EntryId>,
    pub does: Does,
    /// It says what it has to say.
    pub said: bool,
    pub entry: &'a Entry,
}

/// "Three answers are read with an instrument": what each is where more was read than counts as nothing.
fn stop_of(question: &str) -> Option<&'static str> {
    match question {
        "neutral-current" => Some("current"),
        "coupled" => Some("stays-under-load"),
        "charge-returned" => Some("returned"),
        _ => None,
    }
}

/// "Only 0 A is none"; of volts, whatever a company may count as nothing lies below 120 V, the extra-low voltage of IEC 61140.
fn more_than_nothing(read: &Measured) -> bool {
    match read {
        Measured::NoIndication => false,
        Measured::Milliamps(ma) => *ma > 0,
        Measured::Millivolts(mv) => *mv > 120_000,
    }
}

pub fn answer(e: &Entry) -> Option<Answer<'_>> {
    let Fact::Answered { question, answer, of, words, who, read, .. } = &e.body.fact else { return None };
    let question = ALL.iter().find(|q| q.code == question)?;
    // "More than that *is* the answer that stops, whatever was tapped, and in whichever entry it comes."
    let answer = read.filter(more_than_nothing).and_then(|_| stop_of(question.code)).unwrap_or(answer);
    let (code, does, needs_words) = question.answers.iter().find(|a| a.0 == answer)?;
    // There is one job to ask about: whatever else somebody names there is of no matter.
    let of = of.filter(|_| question.of != Of::Job);
    Some(Answer {
        question,
        code,
        of,
        does: *does,
        said: !needs_words || says_something(words) || says_something(who),
        entry: e,
    })
}

/// An answer that bars a proof: it stops, or is one that nobody here can read.
pub fn bars(e: &Entry) -> Option<&'static str> {
    match answer(e) {
        Some(a) => (a.does == Stops && !a.question.restoring).then_some("a question was answered so that it stops"),
        // "Kept and told as 'written by a newer version: treat as live'."
        None => matches!(e.body.fact, Fact::Answered { .. }).then_some("an answer cannot be read here"),
    }
}

/// What stopped the job, whether it was called a mistake or not.
fn stops<'a>(known: &Known<'a>, job: EntryId) -> Vec<Answer<'a>> {
    let all = known.of(job).filter_map(answer);
    all.filter(|a| a.does == Stops && !a.question.restoring).collect()
}

/// Answers of the same question that go or stand, by somebody who knew of the one that stops.
fn lifts<'a>(known: &Known<'a>, job: EntryId, stop: &Answer) -> Vec<&'a Entry> {
    // "Until the conductors are corrected to a delta with a line at earth and somebody says `corrected`."
    let corrected = |f: &Fact| matches!(f, Fact::SystemCorrected { system: System::CornerGrounded, .. });
    let says_so = |a: &Answer| a.code == "corrected" && known.of(job).any(|e| corrected(&e.body.fact));
    // "`in-photo`, both labels, with a photo there": another is not taken.
    let in_none = |a: &Answer| a.code == "in-photo" && a.of.is_none_or(|point| !labels::has_photo(known, job, point));
    let same = |a: &Answer| {
        let line = a.question.code == "line-at-earth";
        a.question.code == stop.question.code && a.of == stop.of && (!line || says_so(a)) && !in_none(a)
    };
    let all = known.of(job).filter(|e| !known.is_withdrawn(e.id)).filter_map(answer);
    let lifting = all.filter(|a| same(a) && a.does != Stops && a.said && known.knew(a.entry, stop.entry));
    lifting.map(|a| a.entry).collect()
}

/// The answer, or the source that it is about: then there is nothing left that could start.
fn is_mistake(known: &Known, stop: &Answer) -> bool {
    known.is_withdrawn(stop.entry.id) || stop.of.is_some_and(|of| known.is_withdrawn(of))
}

/// Whether an answer to this question stops the job, whatever it is about, and nobody who knew of it answered otherwise.
pub fn stopped(known: &Known, job: EntryId, code: &str) -> bool {
    let mut all = known.of(job).filter_map(answer).filter(|a| a.question.code == code && a.does == Stops);
    all.any(|stop| !is_mistake(known, &stop) && lifts(known, job, &stop).is_empty())
}

/// Those that still stop, and were not called a mistake.
pub fn standing<'a>(known: &Known<'a>, job: EntryId) -> Vec<&'a Entry> {
    let all = stops(known, job).into_iter().filter(|s| !is_mistake(known, s));
    all.filter(|s| lifts(known, job, s).is_empty()).map(|s| s.entry).collect()
}

/// Nothing stops, and every answer can be read.
pub fn allow(ask: &Ask) -> Result<(), String> {
    let newer = ask.valid().find(|e| matches!(e.body.fact, Fact::Answered { .. }) && answer(e).is_none());
    if let Some(newer) = newer {
        return Err(format!("an answer ({}) is of a newer version: treat as live", newer.id.short()));
    }
    match standing(ask.known, ask.job).first() {
        Some(stop) => {
            Err(format!("{} ({}), and nobody who knew of it answered otherwise", told(stop), stop.id.short()))
        }
        None => Ok(()),
    }
}

/// A run counts only if whoever began it knew of all that had stopped, and of what lifted it. That a stop was a mistake changes nothing of
/// what it ended.
pub fn known_to(ask: &Ask, run: &Run) -> Result<(), String> {
    for stop in stops(ask.known, ask.job) {
        let what = format!("{} ({})", told(stop.entry), stop.entry.id.short());
        if !ask.known.knew(run.begin, stop.entry) {
            return Err(format!("{what}, and this run was begun without knowing it"));
        }
        let lifted = lifts(ask.known, ask.job, &stop).iter().any(|l| ask.known.knew(run.begin, l));
        if !is_mistake(ask.known, &stop) && !lifted {
            return Err(format!("{what}, and this run was begun without knowing what lifted it"));
        }
    }
    Ok(())
}

fn told(e: &Entry) -> String {
    match &e.body.fact {
        Fact::Answered { question, answer, .. } => format!("{question} was answered: {answer}"),
        _ => String::new(),
    }
}

/// "An answer that stops is never refused, whoever's turn it is": if it is one, and is about something of the job that it can be about, why
/// it may not be refused.
pub fn never_refused(known: &Known, job: EntryId, by: EntryId, fact: &Fact) -> Option<&'static str> {
    let Fact::Answered { question, answer, of, .. } = fact else { return None };
    let asked = ALL.iter().find(|q| q.code == question)?;
    asked.answers.iter().find(|a| a.0 == answer && a.1 == Stops)?;
    // "After the work is over, nothing that belongs to an earlier step is asked any more; after an isolation was given up, only what belongs
    // to restoring is."
    let over = known.of(job).any(|e| match e.body.fact {
        Fact::HandedBack { .. } => true,
        Fact::WorkFinished { .. } | Fact::GivenUp { .. } => !asked.restoring,
        _ => false,
    });
    // "Only where the job calls for it."
    let has = |fits: &dyn Fn(&Fact) -> bool| known.of(job).any(|e| !known.is_withdrawn(e.id) && fits(&e.body.fact));
    let called = match question.as_str() {
        "instrument-fit" => has(&|f| matches!(f, Fact::InstrumentChecked { .. })),
        "tried-to-start" => has(
            &|f| matches!(f, Fact::Answered { question, answer, of, .. } if question == "starts-itself" && answer == "blocked" && of.is_some()),
        ),
        // "Where a cover came off; after the work is over"; where the supply is direct voltage, with the supply back.
        "left-inside" => {
            has(&|f| matches!(f, Fact::CoverOff { .. })) && has(&|f| matches!(f, Fact::WorkFinished { .. }))
        }
        "polarity-back" => false,
        "live-beside" => has(&|f| matches!(f, Fact::CoverOff { .. })),
        _ => true,
    };
    // And of somebody who is on it.
    let mut on = false;
    for e in known.of(job) {
        match e.body.fact {
            Fact::WorkerJoined { person, .. } if person == by => on = true,
            Fact::WorkerLeft { person } if person == by => on = false,
            _ => {}
        }
    }
    let fits = match (asked.of, of.and_then(|id| known.get(id))) {
        (Of::Job, None) => of.is_none(),
        (Of::Source, Some(e)) => {
            let other = matches!(&e.body.fact, Fact::SourceAnswered { kind, found: Some(_), .. } if *kind != SourceKind::Control);
            e.job() == Some(job) && other && !known.is_withdrawn(e.id)
        }
        (Of::Point, Some(e)) => labels::is_apart(known, job, e.id),
        _ => false,
    };
    (fits && called && on && !over).then_some("an answer that stops was refused")
}

/// "Before what": nobody opens a point of the normal supply before it was asked whether it is the right one, and so on.
pub fn may_do(known: &Known, job: EntryId, fact: &Fact) -> Result<(), String> {
    let valid = |e: &&Entry| !known.is_withdrawn(e.id);
    let answered = |code: &str, of: Option<EntryId>| {
        let all = known.of(job).filter(valid).filter_map(answer);
        let fits = all.filter(|a| a.question.code == code && a.of == of && a.said);
        fits.filter(|a| a.does != Stops).count() > 0
    };
    match fact {
        // What is found open was opened by somebody else.
        Fact::PointOpened { point, found: Position::Closed, .. } => {
            let normal = known.get(*point).is_some_and(|p| matches!(p.body.fact, Fact::PointAdded { cuts: None, .. }));
            let own = known.get(*point).and_then(Entry::job) == Some(job);
            if own && normal && !answered("right-board", Some(*point)) {
                return Err("nobody said how it is known to be the right one".into());
            }
            // "Asked, never assumed, before anything is opened, with what was read."
            if let Some((code, _)) = system_of(known, job).and_then(|told| row(told.0).marks)
                && !answered(code, None)
            {
                return Err(format!("nobody answered {code}"));
            }
        }
        // It is firm: whoever goes on to the test has passed it over.
        Fact::IndicatorProved { run: None, works: true, .. } => {
            if let Some(point) = labels::asked(known, job).iter().find(|p| !answered("labels", Some(p.id))) {
                return Err(format!("nobody answered for both labels of {}", point.id.short()));
            }
        }
        _ => {}
    }
    may_go_on(known, job, fact)
}
