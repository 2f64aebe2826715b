//! What stands proved at the last entry, and what stands beside it, as codes with their values. The sentences are those of the screens.

use serde_json::{Value, json};
use stillbar_journal::EntryId;
use stillbar_rules::job::{Standing as Proof, UndoneWhat};
use stillbar_rules::point::Means;
use stillbar_rules::prove::Met;
use stillbar_text::Standing;

use super::claim::Claim;
use super::report::ReportState;
use super::tell::Teller;

/// What stands proved.
pub(super) fn state(teller: &Teller, told: &Standing) -> ReportState {
    let job = teller.job;
    let (state, with) = match (&job.handed, &job.given_up, job.standing()) {
        (Some((stamp, to, ..)), ..) => ("handed-back", json!({ "to": to, "entry": id(stamp.id) })),
        (None, Some((stamp, why)), Proof::Indication { readings }) => {
            ("given-up", json!({ "why": why, "entry": id(stamp.id), "indication": met(&readings) }))
        }
        (None, Some((stamp, why)), _) => ("given-up", json!({ "why": why, "entry": id(stamp.id) })),
        (None, None, proof) => match proof {
            Proof::NotBegun => ("not-begun", Value::Null),
            Proof::UnderWay { missing } => ("under-way", json!({ "missing": missing })),
            Proof::Indication { readings } => ("indication", json!({ "indication": met(&readings) })),
            Proof::Unsigned => ("unsigned", Value::Null),
            Proof::Void { .. } if job.finished.is_some() => ("restoring", Value::Null),
            Proof::Void { why } => ("void", json!({ "why": why.code() })),
            Proof::Proved { since } => {
                let indicator = job.run().map(|run| id(run.indicator));
                ("proved", json!({ "since": id(since.id), "indicator": indicator }))
            }
        },
    };
    ReportState { tone: told.tone, word: Claim::of(state, told.word.clone()), text: Claim::of(with, told.text.clone()) }
}

/// The entries that tell of what was met.
fn met(readings: &[Met]) -> Vec<String> {
    readings.iter().map(|met| id(met.stamp.id)).collect()
}

fn id(entry: EntryId) -> String {
    entry.to_string()
}

/// What was passed over, and what else stands beside the proof, in the order of the sentences that tell it.
pub(super) fn deviations(teller: &Teller, says: Vec<String>) -> Vec<Claim> {
    let job = teller.job;
    let mut codes: Vec<Value> = Vec::new();
    codes
        .extend(job.deviations.iter().map(|d| json!({ "passed-over": d.step, "why": d.why, "entry": id(d.stamp.id) })));
    codes.extend(job.differs.iter().map(|d| json!({ "way-does-not-count": d.why, "entry": id(d.stamp.id) })));
    codes.extend(job.locks_on().filter_map(|l| match &l.means {
        Means::Other(how) => Some(json!({ "no-lock": how, "entry": id(l.stamp.id) })),
        _ => None,
    }));
    codes.extend(job.undone.iter().map(|undone| {
        let what = match &undone.what {
            UndoneWhat::Source(..) => "source",
            UndoneWhat::Stored(_) => "stored-energy",
            UndoneWhat::Check(_) => "instrument-unfit",
        };
        json!({ "withdrawn": what, "why": undone.why, "entry": id(undone.stamp.id) })
    }));
    codes.extend(job.unfound().map(|(trouble, cause)| {
        json!({ "cause-not-found": id(trouble.stamp.id), "why": cause.cause, "entry": id(cause.stamp.id) })
    }));
    if job.has_newer() {
        codes.push(json!("newer-entry"));
    }
    codes.extend(job.remarks().iter().map(|_| json!("reading-unexpected")));
    let limits = job.limits();
    if let Some(limit) = job.limit.as_ref().filter(|_| limits.ac_mv > 0 || limits.dc_mv > 0) {
        codes.push(json!({ "limit": { "ac_mv": limits.ac_mv, "dc_mv": limits.dc_mv }, "rule": limit.rule }));
    }
    debug_assert_eq!(codes.len(), says.len(), "one sentence a code");
    // No sentence is lost for want of a code.
    let code = |at: usize| codes.get(at).cloned().unwrap_or_default();
    says.into_iter().enumerate().map(|(at, says)| Claim::of(code(at), says)).collect()
}
