//! What stands proved at the last entry, and what stands beside it, as codes with their values. The sentences are those of the screens.

use serde_json::{Value, json};
use stillbar_journal::EntryId;
use stillbar_rules::job::{Job, SaidBeside, Standing as Proof, Stated, UndoneWhat};
use stillbar_rules::prove::Met;

/// What stands: the state, and what belongs to it.
pub(super) fn state(job: &Job) -> (&'static str, Value) {
    match job.stated() {
        Stated::HandedBack { stamp, to } => ("handed-back", json!({ "to": to, "entry": id(stamp.id) })),
        Stated::GivenUp { stamp, why, standing: Proof::Indication { readings } } => {
            ("given-up", json!({ "why": why, "entry": id(stamp.id), "indication": met(&readings) }))
        }
        Stated::GivenUp { stamp, why, .. } => ("given-up", json!({ "why": why, "entry": id(stamp.id) })),
        Stated::Restoring => ("restoring", Value::Null),
        Stated::Proof(proof) => match proof {
            Proof::NotBegun => ("not-begun", Value::Null),
            Proof::UnderWay { missing } => ("under-way", json!({ "missing": missing })),
            Proof::Indication { readings } => ("indication", json!({ "indication": met(&readings) })),
            Proof::Unsigned => ("unsigned", Value::Null),
            Proof::Void { why } => ("void", json!({ "why": why.code() })),
            Proof::Proved { since } => {
                let indicator = job.run().map(|run| id(run.indicator));
                ("proved", json!({ "since": id(since.id), "indicator": indicator }))
            }
        },
    }
}

/// What stands beside it.
pub(super) fn beside(said: &SaidBeside) -> Value {
    match said {
        SaidBeside::PassedOver(d) => json!({ "passed-over": d.step, "why": d.why, "entry": id(d.stamp.id) }),
        SaidBeside::WayDiffers(d) => json!({ "way-does-not-count": d.why, "entry": id(d.stamp.id) }),
        SaidBeside::NoLock { lock, how } => json!({ "no-lock": how, "entry": id(lock.stamp.id) }),
        SaidBeside::Undone(undone) => {
            let what = match &undone.what {
                UndoneWhat::Source(..) => "source",
                UndoneWhat::Stored(_) => "stored-energy",
                UndoneWhat::Check(_) => "instrument-unfit",
            };
            json!({ "withdrawn": what, "why": undone.why, "entry": id(undone.stamp.id) })
        }
        SaidBeside::CauseNotFound(trouble, cause) => {
            json!({ "cause-not-found": id(trouble.stamp.id), "why": cause.cause, "entry": id(cause.stamp.id) })
        }
        SaidBeside::Corrected(corrected) => {
            json!({ "corrected-from": corrected.was, "mv": corrected.was_nominal, "why": corrected.why, "entry": id(corrected.stamp.id) })
        }
        SaidBeside::StaysLive(live) => {
            json!({ "stays-live": live.what, "at": live.at, "screened": live.screened, "entry": id(live.stamp.id) })
        }
        SaidBeside::Unshown(given) => {
            let (who, words, entry) = (&given.who, &given.words, id(given.stamp.id));
            let mut code = json!({ "question": given.question, "answer": given.answer, "who": who, "words": words, "entry": entry });
            if let Some(read) = given.read {
                code["read"] = json!(read);
            }
            code
        }
        SaidBeside::Newer => json!("newer-entry"),
        SaidBeside::Unexpected(_) => json!("reading-unexpected"),
        SaidBeside::Limit { limits, rule } => {
            json!({ "limit": { "ac_mv": limits.ac_mv, "dc_mv": limits.dc_mv }, "rule": rule.rule })
        }
    }
}

/// The entries that tell of what was met.
fn met(readings: &[Met]) -> Vec<String> {
    readings.iter().map(|met| id(met.stamp.id)).collect()
}

fn id(entry: EntryId) -> String {
    entry.to_string()
}
