//! The record of a job, made at the office: the core's own, with the time stamps that the office has of it, sealed with the office's key.

use std::collections::BTreeMap;

use axum::http::StatusCode;
use stillbar_core::journal::{Entry, EntryId};
use stillbar_core::record::{MAX_PHOTOS, Made, RecordError, Room, gather, make, photos};
use stillbar_core::text::times;

use super::{entries_of, shared};
use crate::error::{Code, OfficeError};
use crate::office::{Office, Shared, call};
use crate::photos::{Name, key};
use crate::stamp;

/// The record of a job of a site. One that lacks pictures only because their store does not answer is not made.
pub async fn record(office: &Shared, site: EntryId, job: EntryId) -> Result<Made, OfficeError> {
    // A record and its pictures are in memory whole, as a photo that is put together is.
    let _turn = office.photos.acquire().await.map_err(|_| OfficeError::Busy("the office is ending".into()))?;
    let (own, shared) =
        call(office, move |office| office.read(|tx| Ok((entries_of(tx, site, job)?, shared(tx, site)?)))).await?;
    let pictures = pictures(office, &own).await?;
    call(office, move |office| {
        let gathered = gather(job, &own, &shared, pictures);
        let made = make(gathered, &times::rfc3339(office.now(), 0), false, &office.key).map_err(|e| match e {
            RecordError::NoJob => OfficeError::nothing("There is no such job here."),
            // What is missing may still come; the sentence says what to do.
            other => OfficeError::refused(StatusCode::CONFLICT, Code::NoRecordYet, other.to_string()),
        })?;
        anchored(office, made, site, job)
    })
    .await
}

/// The record with the time stamps that the office has of the job.
fn anchored(office: &Office, made: Made, site: EntryId, job: EntryId) -> Result<Made, OfficeError> {
    let proofs = stamp::proofs(office, site, job)?;
    let anchors = proofs.iter().map(serde_json::to_value).collect::<Result<_, _>>();
    Ok(made.anchored(anchors.map_err(|_| OfficeError::broken("time stamps that do not become JSON"))?))
}

/// Of each photo the copy that the record shows, of those that are here, by the SHA-256 of the original.
async fn pictures(office: &Shared, own: &[Entry]) -> Result<BTreeMap<String, Vec<u8>>, OfficeError> {
    let (mut room, mut pictures) = (Room::default(), BTreeMap::new());
    for (sha256, signed) in photos(own) {
        let Some(name) = Name::read(sha256) else { continue };
        let mut found = Vec::new();
        for size in [960, 320] {
            found.extend(office.blobs.get(&key(Name { size, ..name })).await?.map(|bytes| bytes.to_vec()));
        }
        if let Some(chosen) = room.choose(signed, found) {
            pictures.insert(sha256.to_owned(), chosen);
        }
        // With more than that none is made, and the sentence says so.
        if pictures.len() > MAX_PHOTOS {
            break;
        }
    }
    Ok(pictures)
}
