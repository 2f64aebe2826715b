//! What stands proved, in a word and a sentence, for the top of every screen of a job.

use crate::reader::Reader;
use serde::Serialize;
use stillbar_rules::job::steps::Step;
use stillbar_rules::job::{Job, Standing as Proof, UndoneWhat, Void};
use stillbar_rules::point::Means;
use stillbar_rules::prove::{Met, volts};
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

/// What is said first while the device has forgotten what it wrote.
const FORGOTTEN: &str = "This phone has forgotten what it wrote: treat as live.";

/// What stands proved, for the top of every screen of the job.
pub fn standing(job: &Job, reader: &Reader) -> Standing {
    let forgot = job.known.as_ref().is_some_and(|known| known.forgot);
    let live = |text: String| (Tone::Warn, "Treat as live".to_owned(), text);
    let (tone, word, text) = match (job.standing(), &job.handed) {
        (_, Some((stamp, to, ..))) => (
            Tone::Plain,
            "Handed back".to_owned(),
            format!("To {to}, {}. The supply is back: treat as live.", reader.by(stamp)),
        ),
        (proof, None) if job.given_up.is_some() => given_up(job, reader, &proof),
        (Proof::Void { .. }, None) if job.finished.is_some() => {
            live("The work is finished and the supply is being restored.".into())
        }
        (Proof::NotBegun, _) => live("Nothing is proved yet.".into()),
        (Proof::UnderWay { missing: 0 }, _) => {
            live("Every pair is tested; the indicator is not proved again yet.".into())
        }
        (Proof::UnderWay { missing }, _) => live(format!("{missing} pairs are not tested yet.")),
        (Proof::Indication { readings }, _) => (Tone::Forbid, "Stop, treat as live".to_owned(), indication(&readings)),
        (Proof::Unsigned, _) => live("Tested under supervision, and not signed yet.".into()),
        (Proof::Void { why }, _) => live(format!("The proof is void. {}", super::void(&why, reader.world))),
        (Proof::Proved { since }, _) => {
            let with = job.run().map(|r| super::instrument(reader.world, r.indicator)).unwrap_or_default();
            (
                Tone::Plain,
                "Proved dead".to_owned(),
                format!(
                    "{}, with {with}, proved before and after. {}Void when a lock or a cover comes off, when a source, point, scope or shift \
                     changes, or when the work is left or finished.",
                    reader.by(&since),
                    runs_out(job)
                ),
            )
        }
    };
    let (tone, word, text) = match tone {
        _ if !forgot => (tone, word, text),
        // An indication is more than what was forgotten.
        Tone::Forbid => (tone, word, format!("{FORGOTTEN} {text}")),
        _ => (Tone::Warn, "Treat as live".to_owned(), format!("{FORGOTTEN} {text}")),
    };
    let mut deviations: Vec<String> = job
        .deviations
        .iter()
        .map(|d| {
            let step = Step::named(&d.step).map_or_else(|| d.step.clone(), |s| super::title(s, job));
            format!("Deviation at {step}: {} ({})", d.why, reader.by(&d.stamp))
        })
        .collect();
    deviations.extend(
        job.differs.iter().map(|d| {
            format!("A way that the supply network shows does not count: {} ({})", d.why, reader.by(&d.stamp))
        }),
    );
    deviations.extend(job.locks_on().filter_map(|l| match &l.means {
        Means::Other(how) => Some(format!("{} is secured without a lock: {how}", super::place(job, l.on))),
        _ => None,
    }));
    deviations.extend(beside(job, reader));
    Standing { tone, word, text, deviations }
}

/// That a proof soon runs out, within half an hour before it does.
fn runs_out(job: &Job) -> String {
    const SOON_MS: i64 = 30 * 60_000;
    match job.proof_left() {
        Some(left) if left < SOON_MS => format!("It runs out in {} min. ", (left.max(0) + 59_999) / 60_000),
        _ => String::new(),
    }
}

/// What stands beside the proof until it is answered anew, and what a reader has to know of it.
fn beside(job: &Job, reader: &Reader) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for undone in &job.undone {
        let what = match &undone.what {
            UndoneWhat::Source(kind, what) => format!("{} found ({what})", super::source_kind(*kind)),
            UndoneWhat::Stored(what) => format!("Stored energy found ({what})"),
            UndoneWhat::Check(id) => format!("{} found not fit for use", super::instrument(reader.world, *id)),
        };
        all.push(format!("{what}: withdrawn. {} ({})", undone.why, reader.by(&undone.stamp)));
    }
    for (trouble, cause) in job.unfound() {
        all.push(format!(
            "{} Cause not found: {} ({})",
            super::trouble(&trouble.kind),
            cause.cause,
            reader.by(&cause.stamp)
        ));
    }
    if job.has_newer() {
        all.push(super::void(&Void::Newer, reader.world));
    }
    all.extend(job.remarks().iter().map(super::unexpected));
    let limits = job.limits();
    if let Some(limit) = job.limit.as_ref().filter(|_| limits.ac_mv > 0 || limits.dc_mv > 0) {
        all.push(format!(
            "Up to {} V AC and {} V DC count as no indication, by {}",
            volts(limits.ac_mv),
            volts(limits.dc_mv),
            limit.rule
        ));
    }
    all
}

/// What was read, in a sentence; the first two of many.
fn indication(readings: &[Met]) -> String {
    let named = readings.iter().take(2).map(|met| format!("{} {}", super::met_at(met), super::reading(met.reading)));
    let pairs = named.collect::<Vec<_>>().join("; ");
    let more = match readings.len().saturating_sub(2) {
        0 => String::new(),
        more => format!("; and {more} more"),
    };
    format!("Indication: {pairs}{more}.")
}

/// The isolation was given up before the work was done; what was met is said on.
fn given_up(job: &Job, reader: &Reader, proof: &Proof) -> (Tone, String, String) {
    let said = job.given_up.as_ref().map_or_else(String::new, |(stamp, why)| format!("{why} ({})", reader.by(stamp)));
    let text = format!("The isolation was given up, and the supply is being restored. {said}");
    match proof {
        Proof::Indication { readings } => {
            (Tone::Forbid, "Stop, treat as live".to_owned(), format!("{text}. {}", indication(readings)))
        }
        _ => (Tone::Warn, "Treat as live".to_owned(), text),
    }
}
