//! What stands proved, in a word and a sentence, for the top of every screen of a job.

use crate::job::Job;
use crate::job::steps::Step;
use crate::point::Means;
use crate::prove::Standing as Proof;
use crate::screens::cx::Look;
use crate::screens::parts::{Standing, Tone};

/// What is said first while the device has forgotten what it wrote.
const FORGOTTEN: &str = "This phone has forgotten what it wrote: treat as live.";

/// What stands proved, for the top of every screen of the job.
pub fn standing(job: &Job, look: &Look) -> Standing {
    let forgot = job.known.as_ref().is_some_and(|known| known.forgot);
    let live = |text: String| (Tone::Warn, "Treat as live".to_owned(), text);
    let (tone, word, text) = match (job.standing(), &job.handed) {
        (_, Some((stamp, to, ..))) => (
            Tone::Plain,
            "Handed back".to_owned(),
            format!("To {to}, {}. The supply is back: treat as live.", look.by(stamp)),
        ),
        (Proof::Void { .. }, None) if job.finished.is_some() => {
            live("The work is finished and the supply is being restored.".into())
        }
        (Proof::NotBegun, _) => live("Nothing is proved yet.".into()),
        (Proof::UnderWay { missing: 0 }, _) => {
            live("Every pair is tested; the indicator is not proved again yet.".into())
        }
        (Proof::UnderWay { missing }, _) => live(format!("{missing} pairs are not tested yet.")),
        (Proof::Indication { readings }, _) => {
            let named = readings.iter().take(2).map(|met| format!("{} {}", met.at, met.reading.word()));
            let pairs = named.collect::<Vec<_>>().join("; ");
            let more = match readings.len().saturating_sub(2) {
                0 => String::new(),
                more => format!("; and {more} more"),
            };
            (Tone::Forbid, "Stop, treat as live".to_owned(), format!("Indication: {pairs}{more}."))
        }
        (Proof::Unsigned, _) => live("Tested under supervision, and not signed yet.".into()),
        (Proof::Void { why }, _) => live(format!("The proof is void. {why}")),
        (Proof::Proved { since }, _) => {
            let with = job.run().map(|r| look.world.instrument(r.indicator)).unwrap_or_default();
            (
                Tone::Plain,
                "Proved dead".to_owned(),
                format!(
                    "{}, with {with}, proved before and after. Void when a lock comes off, when a source, point, scope or shift \
                     changes, or when the work is left.",
                    look.by(&since)
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
            let step = Step::named(&d.step).map_or_else(|| d.step.clone(), |s| s.title(job));
            format!("Deviation at {step}: {} ({})", d.why, look.by(&d.stamp))
        })
        .collect();
    deviations.extend(
        job.differs
            .iter()
            .map(|d| format!("A way that the supply network shows does not count: {} ({})", d.why, look.by(&d.stamp))),
    );
    deviations.extend(job.locks_on().filter_map(|l| match &l.means {
        Means::Other(how) => Some(format!("{} is secured without a lock: {how}", job.lock_place(l.on))),
        _ => None,
    }));
    Standing { tone, word, text, deviations }
}
