//! What stands proved, in a word and a sentence, for the top of every screen of a job.

use super::catalogue::say;
use super::lists::{commas, semicolons, sentences};
use super::words::{proof_state, volts};
use crate::reader::Reader;
use serde::Serialize;
use stillbar_journal::Stamp;
use stillbar_rules::job::steps::Step;
use stillbar_rules::job::{Job, ProofState, SaidBeside, Standing as Proof, Stated, UndoneWhat, Void};
use stillbar_rules::prove::Met;
use stillbar_values::Tone;

/// The state of the proof, in a word and a sentence; never "safe".
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Standing {
    /// How to draw it. Shape and word carry the meaning; colour only repeats it.
    pub tone: Tone,
    /// One or two words, such as "Treat as live".
    pub word: String,
    /// What was proved, when, by whom, with what; or what is missing.
    pub text: String,
    /// Deviations of this job, each one sentence: they follow everything that comes after them.
    pub deviations: Vec<String>,
}

/// What stands proved, for the top of every screen of the job.
pub fn standing(job: &Job, reader: &Reader) -> Standing {
    let forgot = job.known.as_ref().is_some_and(|known| known.forgot);
    let live = |text: String| (Tone::Warn, proof_state(ProofState::Live), text);
    let (tone, word, text) = match job.stated() {
        Stated::HandedBack { stamp, to } => (
            Tone::Plain,
            proof_state(ProofState::HandedBack),
            say!("standing-handed-back", to = to, by = reader.by(stamp)),
        ),
        Stated::GivenUp { stamp, why, standing } => given_up(&reader.by(stamp), why, &standing),
        Stated::Restoring => live(say!("standing-restoring")),
        Stated::Proof(proof) => match proof {
            Proof::NotBegun => live(say!("standing-nothing-proved")),
            Proof::UnderWay { missing: 0 } => live(say!("standing-not-proved-again")),
            Proof::UnderWay { missing } => live(say!("standing-untested", pairs = missing)),
            Proof::Indication { readings } => (Tone::Forbid, proof_state(ProofState::Stop), indication(&readings)),
            Proof::Unsigned => live(say!("standing-unsigned")),
            Proof::Void { why } => live(say!("standing-void", why = super::void(&why, reader.world))),
            Proof::Proved { since } => (Tone::Plain, proof_state(ProofState::Proved), proved(job, reader, &since)),
        },
    };
    let (tone, word, text) = match tone {
        _ if !forgot => (tone, word, text),
        // An indication is more than what was forgotten.
        Tone::Forbid => (tone, word, sentences(say!("standing-forgotten"), text)),
        _ => live(sentences(say!("standing-forgotten"), text)),
    };
    let deviations = job.said_beside().iter().map(|said| beside(said, job, reader)).collect();
    Standing { tone, word, text, deviations }
}

/// Since when it is proved and with what, that it soon runs out, and what ends it.
fn proved(job: &Job, reader: &Reader, since: &Stamp) -> String {
    const SOON_MS: i64 = 30 * 60_000;
    let with = job.run().map(|r| super::instrument(reader.world, r.indicator)).unwrap_or_default();
    let proved = say!("standing-proved", by = reader.by(since), with = with);
    let proved = if job.stays_live.is_empty() {
        proved
    } else {
        let live = commas(job.stays_live.iter().map(|live| live.what.clone()));
        let dead = commas(job.conductors().into_iter().map(|c| c.name));
        sentences(say!("standing-still-live", dead = dead, live = live), proved)
    };
    let proved = match job.proof_left() {
        Some(left) if left < SOON_MS => {
            sentences(proved, say!("standing-runs-out", minutes = (left.max(0) + 59_999) / 60_000))
        }
        _ => proved,
    };
    sentences(proved, say!("standing-void-when"))
}

/// What stands beside the proof.
fn beside(said: &SaidBeside, job: &Job, reader: &Reader) -> String {
    match said {
        SaidBeside::PassedOver(d) => {
            let step = Step::named(&d.step).map_or_else(|| d.step.clone(), |s| super::title(s, job));
            say!("standing-deviation", step = step, why = &*d.why, by = reader.by(&d.stamp))
        }
        SaidBeside::WayDiffers(d) => say!("standing-way-differs", why = &*d.why, by = reader.by(&d.stamp)),
        SaidBeside::NoLock { lock, how } => {
            say!("standing-no-lock", place = super::place(job, lock.on), how = *how)
        }
        SaidBeside::Undone(undone) => {
            let what = match &undone.what {
                UndoneWhat::Source(kind, what) => say!("undone-source", kind = super::source_kind(*kind), what = what),
                UndoneWhat::Stored(what) => say!("undone-stored", what = what),
                UndoneWhat::Check(id) => say!("undone-check", instrument = super::instrument(reader.world, *id)),
            };
            say!("standing-undone", what = what, why = &*undone.why, by = reader.by(&undone.stamp))
        }
        SaidBeside::CauseNotFound(trouble, cause) => {
            let (met, by) = (super::trouble(&trouble.kind), reader.by(&cause.stamp));
            say!("standing-cause-not-found", trouble = met, cause = &*cause.cause, by = by)
        }
        SaidBeside::Corrected(corrected) => {
            let volts = volts(corrected.was_nominal);
            let (was, by) = (super::system(corrected.was), reader.by(&corrected.stamp));
            say!("standing-corrected", was = was, volts = volts, why = &*corrected.why, by = by)
        }
        SaidBeside::StaysLive(live) => {
            say!(
                "standing-stays-live",
                what = &*live.what,
                at = &*live.at,
                screened = &*live.screened,
                by = reader.by(&live.stamp)
            )
        }
        SaidBeside::Unshown(given) => {
            let of = job.called(&given.of).unwrap_or_default();
            say!("standing-unshown", says = super::given(given, &of), by = reader.by(&given.stamp))
        }
        SaidBeside::Newer => super::void(&Void::Newer, reader.world),
        SaidBeside::Unexpected(remark) => super::unexpected(remark),
        SaidBeside::Limit { limits, rule } => {
            let (ac, dc) = (volts(limits.ac_mv), volts(limits.dc_mv));
            say!("standing-limit", ac = ac, dc = dc, rule = &*rule.rule)
        }
    }
}

/// What was read, in a sentence; the first two of many.
fn indication(readings: &[Met]) -> String {
    let reading = |met: &Met| say!("standing-reading", at = super::met_at(met), reading = super::reading(met.reading));
    let first = semicolons(readings.iter().take(2).map(reading));
    match readings.len().saturating_sub(2) {
        0 => say!("standing-indication", readings = first),
        more => say!("standing-indication-more", readings = first, more = more),
    }
}

/// The isolation was given up before the work was done; what was met is said on.
fn given_up(by: &str, why: &str, proof: &Proof) -> (Tone, String, String) {
    let text = say!("standing-given-up", why = why, by = by);
    match proof {
        Proof::Indication { readings } => {
            let text = say!("standing-given-up-indication", given_up = text, indication = indication(readings));
            (Tone::Forbid, proof_state(ProofState::Stop), text)
        }
        _ => (Tone::Warn, proof_state(ProofState::Live), text),
    }
}
