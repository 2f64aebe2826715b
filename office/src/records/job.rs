//! One job: what stands proved, its time line, its readings and photos, in the core's own words.

use std::collections::BTreeMap;

use stillbar_core::app::standing;
use stillbar_core::job::Job;
use stillbar_core::journal::{Entry, EntryId};
use stillbar_core::screens::cx::{Look, TagKnown};
use stillbar_core::screens::parts::Standing;
use stillbar_core::screens::said;
use stillbar_core::world::World;

use super::{entries_of, world};
use crate::fault::Fault;
use crate::office::Office;
use crate::with;

/// A job as it is told to a person.
pub struct Told {
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

fn look<'a>(
    world: &'a World,
    none: &'a (BTreeMap<String, String>, TagKnown),
    entries: &'a [Entry],
    now: i64,
) -> Look<'a> {
    Look { world, acting: None, drafts: &none.0, now, zone: 0, locks: &[], tag: &none.1, entries }
}

/// A job of a site.
pub fn job(office: &Office, site: EntryId, id: EntryId) -> Result<Told, Fault> {
    let now = office.now();
    office.read(|tx| {
        let mut entries = entries_of(tx, site, id)?;
        entries.sort_by_key(|e| (e.order(), e.id));
        let job = Job::fold(&entries).ok_or_else(|| Fault::nothing("There is no such job here."))?;
        let world = world(tx, site)?;
        let site_name = tx.rows("SELECT name FROM site WHERE id = $1", with![site])?;
        let site_name = site_name.first().map_or(Ok(String::new()), |row| row.text(0))?;
        let mut phones = BTreeMap::new();
        for entry in &entries {
            let device = entry.body.device;
            if phones.contains_key(&device.0) {
                continue;
            }
            let rows = tx.rows("SELECT label, heard_ms FROM device WHERE id = $1", with![device])?;
            if let Some(row) = rows.first() {
                phones.insert(device.0, (super::board::named(&row.text(0)?, device), row.int(1)?));
            }
        }
        let mut photos: BTreeMap<String, Vec<i64>> = BTreeMap::new();
        for photo in &job.photos {
            let Ok(hash) = photo.sha256.parse::<EntryId>() else { continue };
            for row in tx.rows("SELECT size FROM photo WHERE sha256 = $1 ORDER BY size", with![hash])? {
                photos.entry(photo.sha256.clone()).or_default().push(row.int(0)?);
            }
        }
        let none = (BTreeMap::new(), TagKnown::default());
        let standing = standing(&job, &look(&world, &none, &entries, now));
        Ok(Told { job, entries, world, standing, site_name, phones, photos })
    })
}

/// The sentence of every entry of a job, as the phone's time line has it.
pub fn sentences(told: &Told, now: i64) -> Vec<String> {
    let none = (BTreeMap::new(), TagKnown::default());
    let look = look(&told.world, &none, &told.entries, now);
    told.entries.iter().map(|e| said(&look, &told.job, &e.body.fact)).collect()
}
