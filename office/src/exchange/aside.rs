//! What is kept aside, and its release by a person.

use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact};

use super::feeds::Feeds;
use super::kept::FeedEntry;
use super::push::sites_of;
use crate::error::OfficeError;
use crate::params;
use crate::store::Tx;

/// Entries of one device that are released in one transaction.
const AT_ONCE: usize = 2_000;

/// Releases what is aside of `device`, in the order of its chain: it goes into its feeds now. What stands on a site that is not the
/// device's stays; returns how many went and how many stayed.
pub fn release(tx: &mut dyn Tx, now: i64, device: DeviceId) -> Result<(usize, usize), OfficeError> {
    tx.rows("SELECT id FROM device WHERE id = $1 FOR UPDATE", params![device])?;
    let mut ours = sites_of(tx, device)?;
    let sql = "SELECT body, sig FROM aside WHERE device = $1 ORDER BY seq LIMIT $2";
    let (mut going, mut began, mut stay) = (Vec::new(), Vec::new(), 0);
    let rows = tx.rows(sql, params![device, AT_ONCE])?;
    let all = rows.len() < AT_ONCE;
    for row in rows {
        let entry = Entry::trusted(row.bytes(0)?, row.signature(1)?)
            .map_err(|e| OfficeError::broken(&format!("an entry in the database is damaged: {e}")))?;
        let begins = matches!(entry.body.fact, Fact::SiteNoted { .. }) && entry.body.site.is_none();
        let fits = match entry.body.site {
            Some(site) => ours.contains(&site),
            None => begins || entry.job().is_none(),
        };
        if !fits {
            stay += 1;
            continue;
        }
        if begins {
            ours.insert(entry.id);
            began.push(entry.id);
        }
        going.push(entry);
    }
    let gone: Vec<&Entry> = going.iter().collect();
    let mut feeds = Feeds::new(tx, now);
    for site in &began {
        feeds.begin_site(*site, &gone, &[device])?;
    }
    feeds.take(&gone.iter().map(|e| FeedEntry::of(e)).collect::<Vec<_>>(), false)?;
    feeds.finish()?;
    for entry in &gone {
        tx.run("DELETE FROM aside WHERE id = $1", params![entry.id])?;
        if let Some(sha256) = super::kept::photo(entry) {
            tx.run(
                "DELETE FROM photo_named WHERE sha256 = $1 AND site = $2 AND device = $3",
                params![sha256, EntryId::NONE, device],
            )?;
        }
    }
    // While more waits, what comes now waits behind it.
    if all {
        tx.run("UPDATE device SET held = 0 WHERE id = $1", params![device])?;
    }
    Ok((gone.len(), stay))
}
