//! The record of a job, made at the office: the core's own, with the time stamps that the office has of it, sealed with the office's key.

use stillbar_core::evidence;
use stillbar_core::journal::EntryId;
use stillbar_core::record::{Made, RecordError, gather, make};
use stillbar_core::words;

use super::{entries_of, shared};
use crate::fault::Fault;
use crate::office::Office;
use crate::photos::{self, Name, key};
use crate::stamp;

/// The record of a job of a site. To be called where blocking is allowed, inside the runtime.
pub fn record(office: &Office, site: EntryId, job: EntryId) -> Result<Made, Fault> {
    let (own, shared) = office.read(|tx| Ok((entries_of(tx, site, job)?, shared(tx, site)?)))?;
    // The larger copy if it is here, and only one that a signed entry names.
    let copy = |sha256: &str, copies: &[String]| {
        let found = [960, 320].into_iter().filter_map(|size| picture(office, sha256, size));
        found.into_iter().find(|bytes| copies.contains(&evidence::sha256(bytes)))
    };
    let gathered = gather(job, &own, &shared, &copy);
    let made = make(gathered, &words::rfc3339(office.now(), 0), false, &office.key).map_err(|e| match e {
        RecordError::NoJob => Fault::nothing("There is no such job here."),
        // What is missing may still come; the sentence says what to do.
        other => Fault::refused(axum::http::StatusCode::CONFLICT, "no-record-yet", other.to_string()),
    })?;
    let proofs = stamp::proofs(office, site, job)?;
    let anchors = proofs.iter().map(serde_json::to_value).collect::<Result<_, _>>();
    Ok(made.anchored(anchors.map_err(|_| Fault::broken("time stamps that do not become JSON"))?))
}

/// A copy of a photo, if it is here.
fn picture(office: &Office, sha256: &str, size: i64) -> Option<Vec<u8>> {
    let name = Name { size, ..Name::read(sha256)? };
    office.read(|tx| photos::length(tx, name)).ok()??;
    let bytes = tokio::runtime::Handle::try_current().ok()?.block_on(office.blobs.get(&key(name))).ok()??;
    Some(bytes.to_vec())
}
