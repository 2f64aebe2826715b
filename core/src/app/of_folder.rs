//! The record of a job from a data folder, while the app may be running.

use std::path::Path;

use super::Platform;
use crate::journal::{DeviceKey, EntryId};
use crate::record::{Made, Room, gather, make, photos as taken};
use crate::store::{JobRow, Store, photos};
use crate::text::times::rfc3339;

/// Fewest digits of a job's id that name it.
const FEWEST: usize = 4;

/// The record of the job that `named` says, by its title or the first digits of its id, signed by the folder's device. The error is a sentence
/// for the person.
pub fn of_folder(folder: &Path, platform: &dyn Platform, named: &str, withhold: bool) -> Result<Made, String> {
    let store = Store::look(folder).map_err(|e| e.to_string())?;
    let job = find(&store.jobs().map_err(|e| e.to_string())?, named)?;
    let secret = platform.load_secret().map_err(|e| e.to_string())?;
    let key = secret.as_deref().and_then(DeviceKey::from_secret);
    let key =
        key.ok_or("The device key (device.key) is missing, so nothing can be signed. Put it back from your copy.")?;
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
) -> Result<Made, String> {
    let own = store.entries_of(job).map_err(|e| e.to_string())?;
    let shared = store.shared_entries().map_err(|e| e.to_string())?;
    let folder = store.folder.join("photos");
    let mut room = Room::default();
    let chosen = taken(&own).filter_map(|(sha256, signed)| {
        Some((sha256.to_owned(), room.choose(signed, photos::copies(&folder, sha256))?))
    });
    make(gather(job, &own, &shared, chosen.collect()), &rfc3339(now.0, now.1), withhold, key).map_err(|e| e.to_string())
}

/// The one job of that name. The error lists what there is to choose from.
fn find(jobs: &[JobRow], named: &str) -> Result<EntryId, String> {
    let wanted = named.trim().to_lowercase();
    let digits = wanted.len() >= FEWEST && wanted.bytes().all(|b| b.is_ascii_hexdigit());
    let by_id = |job: &&JobRow| digits && job.id.to_string().starts_with(&wanted);
    let by_title = |job: &&JobRow| job.title.to_lowercase() == wanted;
    let found: Vec<&JobRow> = jobs.iter().filter(|job| by_id(job) || by_title(job)).collect();
    let listed = |jobs: &[&JobRow]| -> String {
        let lines = jobs.iter().take(20).map(|j| format!("\n  {}  {}, {}", j.id.short(), j.title, j.place));
        lines.collect()
    };
    match found[..] {
        [job] => Ok(job.id),
        [] if jobs.is_empty() => Err("There is no job in this folder.".into()),
        [] => Err(format!(
            "No job here is called {named:?}. Name one of these by its digits:{}",
            listed(&jobs.iter().collect::<Vec<_>>())
        )),
        _ => Err(format!("Several jobs are called {named:?}. Name one of these by its digits:{}", listed(&found))),
    }
}
