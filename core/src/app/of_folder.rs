//! The record of a job from a data folder, while the app may be running.

use std::path::Path;

use super::{Platform, PlatformError};
use crate::journal::{DeviceKey, EntryId};
use crate::record::{Made, RecordError, Room, gather, make, photos as taken};
use crate::store::{JobRow, OpenError, Store, StoreError, photos};
use crate::text::screens::app as said;
use crate::text::times::rfc3339;

/// Fewest digits of a job's id that name it.
const FEWEST: usize = 4;
/// Most jobs of which an error lists the names.
const MOST: usize = 20;

/// Why there is no record.
#[derive(Debug, thiserror::Error)]
pub enum NoRecord {
    /// The folder cannot be looked into.
    #[error(transparent)]
    Folder(#[from] OpenError),
    /// What is in it cannot be read.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The device does not give its secret.
    #[error(transparent)]
    Device(#[from] PlatformError),
    /// There is no secret to sign with.
    #[error("{}", said::record_no_key())]
    NoKey,
    /// The folder has no job.
    #[error("{}", said::record_no_job())]
    NoJob,
    /// No job is called so.
    #[error("{}", said::record_not_called(.named, .listed))]
    NotCalled {
        /// What was asked for.
        named: String,
        /// What there is, a line each.
        listed: String,
    },
    /// Several are.
    #[error("{}", said::record_several(.named, .listed))]
    Several {
        /// What was asked for.
        named: String,
        /// Which, a line each.
        listed: String,
    },
    /// The record cannot be made.
    #[error(transparent)]
    Record(#[from] RecordError),
}

/// The record of the job that `named` says, by its title or the first digits of its id, signed by the folder's device.
pub fn of_folder(folder: &Path, platform: &dyn Platform, named: &str, withhold: bool) -> Result<Made, NoRecord> {
    let store = Store::look(folder)?;
    let job = find(&store.jobs()?, named)?;
    let secret = platform.load_secret()?;
    let key = secret.as_deref().and_then(DeviceKey::from_secret).ok_or(NoRecord::NoKey)?;
    let now = platform.now_ms();
    of_store(&store, job, &key, (now, platform.offset_minutes(now)), withhold)
}

/// The same from an open store. `now`: the device's clock, and minutes ahead of UTC.
pub(crate) fn of_store(
    store: &Store,
    job: EntryId,
    key: &DeviceKey,
    now: (i64, i32),
    withhold: bool,
) -> Result<Made, NoRecord> {
    let (own, shared) = (store.entries_of(job)?, store.shared_entries()?);
    let folder = photos::folder(&store.folder);
    let mut room = Room::default();
    let chosen = taken(&own).filter_map(|(sha256, signed)| {
        Some((sha256.to_owned(), room.choose(signed, photos::copies(&folder, sha256))?))
    });
    Ok(make(gather(job, &own, &shared, chosen.collect()), &rfc3339(now.0, now.1), withhold, key)?)
}

/// The one job of that name.
fn find(jobs: &[JobRow], named: &str) -> Result<EntryId, NoRecord> {
    let wanted = named.trim().to_lowercase();
    let digits = wanted.len() >= FEWEST && wanted.bytes().all(|b| b.is_ascii_hexdigit());
    let by_id = |job: &&JobRow| digits && job.id.to_string().starts_with(&wanted);
    let by_title = |job: &&JobRow| job.title.to_lowercase() == wanted;
    let found: Vec<&JobRow> = jobs.iter().filter(|job| by_id(job) || by_title(job)).collect();
    let named = named.to_owned();
    match found[..] {
        [job] => Ok(job.id),
        [] if jobs.is_empty() => Err(NoRecord::NoJob),
        [] => Err(NoRecord::NotCalled { named, listed: listed(jobs.iter()) }),
        _ => Err(NoRecord::Several { named, listed: listed(found.into_iter()) }),
    }
}

fn listed<'a>(jobs: impl Iterator<Item = &'a JobRow>) -> String {
    jobs.take(MOST).map(|j| format!("\n  {}  {}, {}", j.id.short(), j.title, j.place)).collect()
}
