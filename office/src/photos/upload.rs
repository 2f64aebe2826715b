//! Uploads that go on at any byte (tus 1.0.0, <https://tus.io/protocols/resumable-upload>).
//!
//! What comes in is kept in pieces; a piece counts once its row is in the database, together with the upload's new length, and only
//! if nobody else was faster. Any process may take the next piece. When all bytes are here they are put together, verified and kept
//! under their name.

use axum::http::StatusCode;
use sha2::{Digest, Sha256};
use stillbar_core::evidence;
use stillbar_core::journal::DeviceId;

use super::{Name, blobs, length, named};
use crate::error::{Code, OfficeError};
use crate::office::{Office, Shared, call};
use crate::params;
use crate::store::{SqlRow, Tx};

/// Uploads of one device at once.
const MAX_UPLOADS: u64 = 64;
/// How long an upload waits for its next byte, in milliseconds.
const WAIT_MS: i64 = 7 * 24 * 3_600_000;

/// An upload under way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Upload {
    /// Its id.
    pub id: String,
    /// What it will be.
    pub name: Name,
    /// How many bytes it will have.
    pub length: i64,
    /// How many are here.
    pub here: i64,
}

/// How an upload begins.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UploadBegun {
    /// It goes on from where it is; from 0 if it is new.
    Upload(Upload),
    /// The bytes are here already.
    Here(i64),
}

const COLUMNS: &str = "SELECT id, sha256, size, length, here FROM upload";

fn read(row: &SqlRow) -> Result<Upload, OfficeError> {
    let name = Name { sha256: row.hash(1)?, size: row.int(2)? };
    Ok(Upload { id: row.text(0)?, name, length: row.int(3)?, here: row.int(4)? })
}

/// Begins an upload, or finds the one that the device began before.
pub fn begin(office: &Office, device: DeviceId, name: Name, bytes: i64) -> Result<UploadBegun, OfficeError> {
    let (id, now) = (office.secret::<16>()?, office.now());
    if bytes < 1 || bytes > name.most() {
        let say = format!("A photo of this size has 1 to {} bytes; this says {bytes}.", name.most());
        return Err(OfficeError::refused(StatusCode::PAYLOAD_TOO_LARGE, Code::TooLarge, say));
    }
    office.change(|tx| {
        if !named(tx, device, name.sha256, true)? {
            let say = "No entry here names this photo. Send the entry first, and the photo after it.";
            return Err(OfficeError::refused(StatusCode::FORBIDDEN, Code::NotNamed, say));
        }
        if let Some(kept) = length(tx, name)? {
            return Ok(UploadBegun::Here(kept));
        }
        let sql = format!("{COLUMNS} WHERE device = $1 AND sha256 = $2 AND size = $3 AND length = $4");
        if let Some(row) = tx.rows(&sql, params![device, name.sha256, name.size, bytes])?.first() {
            return read(row).map(UploadBegun::Upload);
        }
        let under_way = tx.rows("SELECT count(*) FROM upload WHERE device = $1", params![device])?;
        if under_way.first().map_or(Ok(0), |row| row.count(0))? >= MAX_UPLOADS {
            let say = "This device has too many uploads under way. Finish or delete some of them first.";
            return Err(OfficeError::refused(StatusCode::TOO_MANY_REQUESTS, Code::TooManyUploads, say));
        }
        tx.run(
            "INSERT INTO upload (id, device, sha256, size, length, here, touched_ms) VALUES ($1, $2, $3, $4, $5, 0, $6)",
            params![id.as_str(), device, name.sha256, name.size, bytes, now],
        )?;
        Ok(UploadBegun::Upload(Upload { id: id.clone(), name, length: bytes, here: 0 }))
    })
}

/// An upload of `device`.
pub fn upload(tx: &mut dyn Tx, device: DeviceId, id: &str) -> Result<Upload, OfficeError> {
    let rows = tx.rows(&format!("{COLUMNS} WHERE id = $1 AND device = $2"), params![id, device])?;
    rows.first().map(read).transpose()?.ok_or_else(|| {
        OfficeError::nothing("There is no such upload. Begin it again: what is here already is not sent twice.")
    })
}

/// Keeps one piece at `from`. Returns where the upload is now; somebody else may have been faster.
pub async fn add(office: &Shared, upload: &Upload, from: i64, piece: Vec<u8>) -> Result<i64, OfficeError> {
    let path = format!("uploads/{}/{from}-{}", upload.id, office.secret::<9>()?);
    let bytes = i64::try_from(piece.len()).map_err(|_| OfficeError::broken("a piece that cannot be counted"))?;
    office.blobs.put(&path, piece).await?;
    let (id, kept) = (upload.id.clone(), path.clone());
    let taken = call(office, move |office| {
        let now = office.now();
        office.change(|tx| {
            let moved = tx.run(
                "UPDATE upload SET here = $1, touched_ms = $2 WHERE id = $3 AND here = $4 AND length >= $1",
                params![from + bytes, now, id.as_str(), from],
            )?;
            if moved == 1 {
                tx.run(
                    "INSERT INTO part (upload, start, length, path) VALUES ($1, $2, $3, $4)",
                    params![id.as_str(), from, bytes, kept.as_str()],
                )?;
            }
            Ok(moved == 1)
        })
    })
    .await?;
    if taken {
        return Ok(from + bytes);
    }
    office.blobs.delete(&path).await?;
    let say = "Another call was faster: ask where the upload is, and go on from there.";
    Err(OfficeError::refused(StatusCode::CONFLICT, Code::WrongOffset, say))
}

/// Puts an upload together of which all bytes are here. Bytes that are not what they should be are thrown away.
pub async fn finish(office: &Shared, upload: &Upload) -> Result<(), OfficeError> {
    let _turn = office.photos.acquire().await.map_err(|_| OfficeError::Busy("the office is ending".into()))?;
    let (id, name) = (upload.id.clone(), upload.name);
    let parts = call(office, move |office| {
        office.read(|tx| {
            let rows = tx.rows("SELECT path FROM part WHERE upload = $1 ORDER BY start", params![id.as_str()])?;
            rows.iter().map(|row| row.text(0)).collect::<Result<Vec<_>, _>>()
        })
    })
    .await?;
    let mut bytes = Vec::with_capacity(usize::try_from(upload.length).unwrap_or(0));
    for path in &parts {
        match office.blobs.get(path).await? {
            Some(piece) => bytes.extend_from_slice(&piece),
            None => break,
        }
    }
    let right = if i64::try_from(bytes.len()) != Ok(upload.length) {
        false
    } else if name.size == 0 {
        Sha256::digest(&bytes).as_slice() == name.sha256 && evidence::media(&bytes).is_some()
    } else {
        evidence::media(&bytes) == Some("image/jpeg")
    };
    let whole = upload.length;
    if right {
        office.blobs.put(&blobs::key(name), bytes).await?;
        call(office, move |office| {
            let now = office.now();
            office.change(|tx| {
                tx.run(
                    "INSERT INTO photo (sha256, size, length, kept_ms) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING",
                    params![name.sha256, name.size, whole, now],
                )
            })
        })
        .await?;
    }
    let cleared = drop_upload(office, &upload.id).await;
    // Another call may have finished it meanwhile, and taken the pieces away.
    if right || call(office, move |office| office.read(|tx| length(tx, name))).await?.is_some() {
        return Ok(());
    }
    // Before the phone begins anew it has to be gone.
    cleared?;
    let status = StatusCode::from_u16(stillbar_protocol::photos::MISMATCH).unwrap_or(StatusCode::CONFLICT);
    let say =
        "The bytes are not those of the photo that the entry names. They were thrown away: begin this upload again.";
    Err(OfficeError::refused(status, Code::NotThisPhoto, say))
}

/// Forgets an upload and its pieces.
pub async fn drop_upload(office: &Shared, id: &str) -> Result<(), OfficeError> {
    // What is there, not what the rows name: a process that was killed may have kept a piece without its row. The rows go last, for by them
    // what could not be cleared now is found again.
    office.blobs.clear(&format!("uploads/{id}")).await?;
    let id = id.to_owned();
    call(office, move |office| {
        office.change(|tx| {
            tx.run("DELETE FROM part WHERE upload = $1", params![id.as_str()])?;
            tx.run("DELETE FROM upload WHERE id = $1", params![id.as_str()])
        })
    })
    .await?;
    Ok(())
}

/// Forgets a few uploads that nobody went on with.
pub async fn sweep(office: &Shared) -> Result<(), OfficeError> {
    let old = call(office, |office| {
        let before = office.now() - WAIT_MS;
        office.read(|tx| {
            let rows = tx.rows("SELECT id FROM upload WHERE touched_ms < $1 LIMIT 10", params![before])?;
            rows.iter().map(|row| row.text(0)).collect::<Result<Vec<_>, _>>()
        })
    })
    .await?;
    for id in old {
        drop_upload(office, &id).await?;
    }
    Ok(())
}
