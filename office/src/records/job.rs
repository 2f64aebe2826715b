//! One job: what stands proved, its time line, its readings and photos, in the core's own words.

use std::collections::BTreeMap;
use std::sync::Arc;

use stillbar_core::job::age::Moment;
use stillbar_core::job::{Job, Known};
use stillbar_core::journal::{DeviceId, Entry, EntryId, Hlc};
use stillbar_core::screens::parts::Standing;
use stillbar_core::text::terms::Speaking;
use stillbar_core::text::{self, Reader, standing};
use stillbar_core::world::World;

use super::{across, drawn, entries_of, world};
use crate::error::OfficeError;
use crate::office::Office;
use crate::params;

/// Who looks from the office looks with no device.
const NOBODY: DeviceId = DeviceId([0; 32]);

/// A job as it is told to a person.
pub struct JobTold {
    /// The job, folded.
    pub job: Job,
    /// Its entries, in the journal's order.
    pub entries: Vec<Entry>,
    /// People, sites and instruments of its site.
    pub world: World,
    /// What stands proved.
    pub standing: Standing,
    /// What the site is called.
    pub site_name: String,
    /// Phones by name, for those that wrote of it.
    pub phones: BTreeMap<[u8; 32], (String, i64)>,
    /// Which photos of it are here, and in which sizes.
    pub photos: BTreeMap<String, Vec<i64>>,
}

impl JobTold {
    /// In the words of the rules that the job is done by, while what is given lives.
    pub fn speaking(&self) -> Speaking {
        Speaking::of(self.job.rule_set)
    }
}

/// A job of a site.
pub fn job(office: &Office, site: EntryId, id: EntryId) -> Result<JobTold, OfficeError> {
    let now = office.now();
    office.read(|tx| {
        let mut entries = entries_of(tx, site, id)?;
        entries.sort_by_key(|e| (e.order(), e.id));
        let mut job = Job::fold(&entries).ok_or_else(|| OfficeError::nothing("There is no such job here."))?;
        let world = world(tx, site)?;
        let moment = Moment { device: NOBODY, running: None, wall: now, clock: Hlc(now, 0), doubt: false };
        let mut known = Known::of_site(moment, &job, across(tx, site)?.iter(), &world);
        let site_name = tx.rows("SELECT name FROM site WHERE id = $1", params![site])?;
        let site_name = site_name.first().map_or(Ok(String::new()), |row| row.text(0))?;
        let mut phones = BTreeMap::new();
        for entry in &entries {
            let device = entry.body.device;
            if phones.contains_key(&device.0) {
                continue;
            }
            let rows = tx.rows("SELECT label, heard_ms FROM device WHERE id = $1", params![device])?;
            if let Some(row) = rows.first() {
                phones.insert(device.0, (super::board::named(&row.text(0)?, device), row.int(1)?));
            }
        }
        let mut photos: BTreeMap<String, Vec<i64>> = BTreeMap::new();
        for photo in &job.photos {
            let Ok(hash) = photo.sha256.parse::<EntryId>() else { continue };
            for row in tx.rows("SELECT size FROM photo WHERE sha256 = $1 ORDER BY size", params![hash])? {
                photos.entry(photo.sha256.clone()).or_default().push(row.int(0)?);
            }
        }
        known.know_network(&job, &mut drawn(tx, site)?);
        job.known = Some(Arc::new(known));
        let reader = Reader { world: &world, now, zone: 0 };
        let _speaking = Speaking::of(job.rule_set);
        let standing = standing(&job, &reader);
        Ok(JobTold { job, entries, world, standing, site_name, phones, photos })
    })
}

/// The sentence of every entry of a job, as the phone's time line has it.
pub fn sentences(told: &JobTold) -> Vec<String> {
    told.entries.iter().map(|e| text::said(&told.job, e, &told.world)).collect()
}
