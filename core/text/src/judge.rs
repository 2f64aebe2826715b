//! What the judge finds in readings: the verdict's reasons, what may be behind them, and what to do.

use serde::Serialize;

use super::catalogue::say;
use super::conditions::{holder, unmet};
use super::lists::{commas, listed, semicolons, sentences};
use super::words::{current, figure, pair, volts, yes};
use stillbar_rules::prove::judge::drawing::{self, Dot, Middle};
use stillbar_rules::prove::judge::neutral::{Oddity, Unexpected};
use stillbar_rules::prove::judge::{About, Cause, Diagnosis, Judgement, Potential, ReadAt, Reason, Verdict};
use stillbar_rules::prove::limit::Limits;
use stillbar_rules::prove::{GivenValue, ReferenceProof};
use stillbar_values::drawing::Drawing;

/// So many readings or places are named; the other readings are counted.
const NAMED: usize = 12;

/// A judgement as it is told, in the fields of `docs/formats.md`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ToldJudgement {
    /// What is proved.
    pub verdict: Verdict,
    /// Why, as sentences.
    pub why: Vec<String>,
    /// What may be behind it, likeliest first.
    pub diagnoses: Vec<ToldDiagnosis>,
    /// Pairs whose reading does not belong to the others, worst first.
    pub repeat: Vec<[String; 2]>,
    /// The potentials of the likeliest diagnosis.
    pub potentials: Option<Vec<Potential>>,
}

/// A diagnosis as it is told.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ToldDiagnosis {
    /// What it is.
    pub cause: Cause,
    /// How well its potentials give the readings.
    pub fit: f64,
    /// A plain sentence.
    pub explains: String,
    /// What to do.
    pub next: String,
}

/// A judgement in words.
pub fn judgement(said: &Judgement) -> ToldJudgement {
    let told = |d: &Diagnosis| ToldDiagnosis { cause: d.cause, fit: d.fit, explains: explains(d), next: next(d.cause) };
    ToldJudgement {
        verdict: said.verdict,
        why: reasons(&said.why),
        diagnoses: said.diagnoses.iter().map(told).collect(),
        repeat: said.repeat.clone(),
        potentials: said.potentials.clone(),
    }
}

/// Why the verdict is what it is, a sentence each. Of many readings the first are told, and one sentence is about all pairs not read.
pub fn reasons(why: &[Reason]) -> Vec<String> {
    let mut told: Vec<String> = why.iter().filter_map(alone).collect();
    let lit: Vec<String> = why.iter().filter_map(lit).take(NAMED).collect();
    let more = why.iter().filter(|reason| matches!(reason, Reason::Lit { .. })).count() - lit.len();
    told.extend(lit);
    told.extend((more > 0).then(|| say!("judge-lit-more", more = more)));
    told.extend(unmet(
        why.iter().filter_map(|reason| if let Reason::Unmet(unmet) = reason { Some(unmet) } else { None }),
    ));
    told
}

/// A reason that stands by itself.
fn alone(reason: &Reason) -> Option<String> {
    Some(match reason {
        Reason::FailedBefore => say!("judge-failed-before"),
        Reason::FailedAfter => say!("judge-failed-after"),
        Reason::ReferenceFailed => say!("judge-reference-failed"),
        Reason::AllRead { pairs, limits } => all_read(*pairs, *limits),
        Reason::Reference(proof) => say!("judge-reference", way = way(*proof)),
        Reason::LowImpedance => say!("judge-low-impedance"),
        Reason::Lit { .. } | Reason::Unmet(_) => return None,
    })
}

fn all_read(pairs: usize, limits: Limits) -> String {
    let set = [false, true].into_iter().filter(|dc| limits.of(*dc) > 0);
    let limit = |dc| say!("judge-limit", volts = volts(limits.of(dc)), current = current(dc));
    match set.map(limit).reduce(|first, then| say!("list-or", first = first, then = then)) {
        None => say!("judge-all-read", pairs = pairs),
        Some(limits) => say!("judge-all-read-limit", pairs = pairs, limits = limits),
    }
}

/// How the reference was shown to be earth, as selectors of messages take it.
fn way(proof: ReferenceProof) -> &'static str {
    match proof {
        ReferenceProof::KnownLine => "known-line",
        ReferenceProof::SecondEarth => "second-earth",
        ReferenceProof::Continuity => "continuity",
        ReferenceProof::Unsaid | ReferenceProof::No | ReferenceProof::Failed => "none",
    }
}

/// A voltage that was read.
fn lit(reason: &Reason) -> Option<String> {
    let Reason::Lit { at, value, dc, limit_mv } = reason else { return None };
    let (at, dc) = (read_at(at), yes(*dc));
    Some(match (value, *limit_mv) {
        (GivenValue::Volts(mv), 0) => say!("judge-read", at = at, volts = volts(*mv), dc = dc),
        (GivenValue::Volts(mv), limit) => {
            say!("judge-read-limit", at = at, volts = volts(*mv), dc = dc, limit = volts(limit))
        }
        (GivenValue::Level(mv), _) => say!("judge-lit-to", at = at, volts = volts(*mv), dc = dc),
        (GivenValue::Lit | GivenValue::None | GivenValue::Continuity, _) => say!("judge-lit", at = at, dc = dc),
    })
}

fn read_at(at: &ReadAt) -> String {
    match at {
        ReadAt::Pair(of) => pair(of),
        ReadAt::Holder(what) => holder(what),
    }
}

/// What may be behind the readings, in one or two sentences.
pub fn explains(diagnosis: &Diagnosis) -> String {
    let said = cause(diagnosis.cause, which(diagnosis));
    match diagnosis.of {
        Some(count) => sentences(said, say!("cause-of-most", count = count)),
        None => said,
    }
}

/// What a diagnosis names.
fn which(diagnosis: &Diagnosis) -> String {
    match &diagnosis.about {
        // Where several conductors are earth, each of them is meant, not all together.
        About::Conductors(names) if diagnosis.cause == Cause::BrokenReference => commas(names.iter().cloned()),
        About::Conductors(names) if names.is_empty() => say!("the-lines"),
        About::Conductors(names) => listed(names.clone()),
        About::Places(places) => commas(places.iter().take(NAMED).map(read_at)),
        About::Pair(of) => pair(of),
        About::Neutral(found) => unexpected(found),
    }
}

fn cause(cause: Cause, which: String) -> String {
    match cause {
        Cause::NoVoltage => say!("cause-no-voltage"),
        Cause::NeutralDrop => say!("cause-neutral-drop", which = which),
        Cause::NotIsolated => say!("cause-not-isolated", which = which),
        Cause::OneLineLive => say!("cause-one-line-live", which = which),
        Cause::TwoLinesLive => say!("cause-two-lines-live", which = which),
        Cause::Backfeed => say!("cause-backfeed", which = which),
        Cause::OpenNeutral => say!("cause-open-neutral", which = which),
        Cause::BorrowedNeutral => say!("cause-borrowed-neutral", which = which),
        Cause::OtherSource => say!("cause-other-source", which = which),
        Cause::FloatingSupply => say!("cause-floating-supply"),
        Cause::BrokenReference => say!("cause-broken-reference", which = which),
        Cause::Induced => say!("cause-induced", which = which),
        Cause::Misplaced => say!("cause-misplaced", which = which),
        Cause::NeutralEarth => which,
        Cause::DirectVoltage => say!("cause-direct-voltage", which = which),
        Cause::Unexplained => say!("cause-unexplained"),
    }
}

/// What to do about a cause.
pub fn next(cause: Cause) -> String {
    match cause {
        Cause::NoVoltage => say!("next-no-voltage"),
        Cause::NeutralDrop => say!("next-neutral-drop"),
        Cause::NotIsolated => say!("next-not-isolated"),
        Cause::OneLineLive => say!("next-one-line-live"),
        Cause::TwoLinesLive => say!("next-two-lines-live"),
        Cause::Backfeed => say!("next-backfeed"),
        Cause::OpenNeutral => say!("next-open-neutral"),
        Cause::BorrowedNeutral => say!("next-borrowed-neutral"),
        Cause::OtherSource => say!("next-other-source"),
        Cause::FloatingSupply => say!("next-floating-supply"),
        Cause::BrokenReference => say!("next-broken-reference"),
        Cause::Induced => say!("next-induced"),
        Cause::Misplaced => say!("next-misplaced"),
        Cause::NeutralEarth => say!("next-neutral-earth"),
        Cause::DirectVoltage => say!("next-direct-voltage"),
        Cause::Unexplained => say!("next-unexplained"),
    }
}

/// A neutral that does not read to earth as predicted, in a sentence.
pub fn unexpected(found: &Unexpected) -> String {
    let Unexpected { neutral, earth, what } = found;
    match what {
        Oddity::Joined => say!("neutral-joined", neutral = neutral, earth = earth),
        Oddity::JoinedInTt => say!("neutral-joined-tt", neutral = neutral, earth = earth),
        Oddity::JoinedInIt => say!("neutral-joined-it", neutral = neutral, earth = earth),
        Oddity::NotJoined => say!("neutral-not-joined", neutral = neutral, earth = earth),
        Oddity::NoContinuity => say!("neutral-no-continuity", neutral = neutral, earth = earth),
    }
}

/// The potentials of a judgement as a drawing, and the same in words; nothing where it has none.
pub fn potentials(said: &Judgement) -> Option<(Drawing, String)> {
    let middle = match drawing::middle(said) {
        Middle::Earth => say!("middle-earth"),
        Middle::Supply => say!("middle-supply"),
    };
    let (picture, dots) = drawing::drawing(said, &middle)?;
    let dots = semicolons(dots.iter().map(|d| dot(d, &middle)));
    Some((picture, say!("dots", dots = dots)))
}

fn dot(dot: &Dot, middle: &str) -> String {
    let (names, several) = (commas(dot.names.iter().cloned()), yes(dot.names.len() > 1));
    if dot.volts < 1.0 {
        return say!("dot-at-middle", names = names, several = several, middle = middle);
    }
    say!("dot-off-middle", names = names, several = several, volts = figure(dot.volts.to_string()), middle = middle)
}
