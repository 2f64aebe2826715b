//! Making a record: which entries belong into it, and its files.

use std::collections::{BTreeMap, BTreeSet};

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use super::file::{FORMAT, MAX_ENTRIES, MAX_PHOTOS, Picture, RecordFile, Seal, VERSION};
use super::report::Report;
use super::verify::{Failure, Unreadable};
use super::write_error::WriteError;
use super::{links, pdf, tell};
use stillbar_journal::{DeviceKey, Entry, EntryError, EntryId, Fact};
use stillbar_media::evidence;
use stillbar_protocol::{Carried, WireEntry};

/// Why no record can be made. Each is a sentence for the person.
#[derive(Debug, thiserror::Error)]
pub enum RecordError {
    /// None of the entries opens the job.
    #[error("This job is not on this device.")]
    NoJob,
    /// More than a record holds.
    #[error("This job has {0} entries and photos; a record holds at most {MAX_ENTRIES} and {MAX_PHOTOS}.")]
    TooMany(usize),
    /// Something is missing.
    #[error("No record can be made yet: {0}: {1} Exchange with the office or the other phone first.")]
    Gap(String, String),
    /// An entry has a name in its signed part.
    #[error("Names cannot be withheld: {0} has a name in what is signed.")]
    Plain(String),
    /// An entry cannot be kept apart from its names.
    #[error("An entry cannot be read ({0}).")]
    Entry(#[from] EntryError),
    /// The file could not be written.
    #[error("The record could not be made ({0}).")]
    Failed(#[from] WriteError),
}

/// What goes into a record.
pub struct RecordParts {
    /// The job.
    pub job: EntryId,
    /// The job's entries and those that they name, in the journal's order.
    pub entries: Vec<Entry>,
    /// Copies of photos by the SHA-256 of their originals; JPEG.
    pub photos: BTreeMap<String, Vec<u8>>,
}

/// The photos that a job's entries name: each by the original's SHA-256, with the hashes of its copies.
pub fn photos(own: &[Entry]) -> impl Iterator<Item = (&str, &[String])> {
    own.iter().filter_map(|entry| match &entry.body.fact {
        Fact::PhotoTaken { sha256, copies, .. } => Some((sha256.as_str(), copies.as_slice())),
        _ => None,
    })
}

/// Bytes of pictures in a record, after which photos come in the small copy: a record has to go through a mail server.
const PICTURES: usize = 12 << 20;

/// The room that is left for pictures in a record.
pub struct Room(usize);

impl Default for Room {
    fn default() -> Room {
        Room(PICTURES)
    }
}

impl Room {
    /// Of the copies of a photo that were found, the best first, the one that the record shows: only such as an entry names in `signed`, the
    /// first that there is room for, or else the last.
    pub fn choose(&mut self, signed: &[String], mut found: Vec<Vec<u8>>) -> Option<Vec<u8>> {
        found.retain(|bytes| signed.contains(&evidence::sha256(bytes)));
        let fits = found.iter().position(|bytes| bytes.len() <= self.0);
        let chosen = if found.is_empty() { None } else { Some(found.swap_remove(fits.unwrap_or(found.len() - 1))) };
        self.0 = self.0.saturating_sub(chosen.as_ref().map_or(0, Vec::len));
        chosen
    }
}

/// A record that was made.
pub struct Made {
    file: RecordFile,
    report: Report,
    photos: BTreeMap<String, Vec<u8>>,
}

/// Chooses what belongs into the record of `job`: of `own`, the job's entries, everything; of `shared`, the entries of no job, those that
/// are named, what corrects a person among them, the beginnings of the devices, and the site's supply network where the job rests on it.
/// `photos`: copies by the SHA-256 of their originals, as [`Room::choose`] chose them.
pub fn gather(job: EntryId, own: &[Entry], shared: &[Entry], photos: BTreeMap<String, Vec<u8>>) -> RecordParts {
    let site = own.iter().find_map(|e| e.body.site);
    let on_network = own.iter().any(|e| matches!(e.body.fact, Fact::ZoneNoted { .. }));
    let devices: BTreeSet<_> = own.iter().map(|e| e.body.device).collect();
    let mut wanted: BTreeSet<EntryId> = own.iter().flat_map(Entry::refers).chain(site).collect();
    let mut chosen: BTreeMap<EntryId, &Entry> = BTreeMap::new();
    // What is chosen names more; three rounds reach whatever an entry of no job can name.
    for _round in 0..3 {
        for entry in shared {
            // What a company rules stands in the entry that opens the job; whom to call is for who works there.
            let network = on_network && !matches!(entry.body.fact, Fact::CompanyRuled { .. });
            let of_site = network && entry.body.site.is_some() && entry.body.site == site;
            let begins = entry.body.seq == 1 && devices.contains(&entry.body.device);
            let corrects =
                matches!(entry.body.fact, Fact::PersonNoted { corrects: Some(who), .. } if wanted.contains(&who));
            if wanted.contains(&entry.id) || of_site || begins || corrects {
                wanted.extend(entry.refers());
                chosen.insert(entry.id, entry);
            }
        }
    }
    let mut entries: Vec<Entry> = chosen.into_values().chain(own).cloned().collect();
    entries.sort_by_key(|e| (e.order(), e.id));
    RecordParts { job, entries, photos }
}

/// Makes the record and signs it with the key of the device that makes it. `made`: now, by its clock (RFC 3339). `withhold`: without what
/// names or marks a person.
pub fn make(gathered: RecordParts, made: &str, withhold: bool, key: &DeviceKey) -> Result<Made, RecordError> {
    let RecordParts { job, mut entries, mut photos } = gathered;
    if entries.len() > MAX_ENTRIES || photos.len() > MAX_PHOTOS {
        return Err(RecordError::TooMany(entries.len().max(photos.len())));
    }
    // A telephone number is for who works there, and nobody else needs it.
    let keep = |field: &str| !withhold && field != "telephone";
    entries = entries.iter().map(|e| e.keeping(&keep)).collect::<Result<_, _>>()?;
    if withhold && let Some(plain) = entries.iter().find(|e| e.names()) {
        return Err(RecordError::Plain(links::called(plain)));
    }
    let report = tell::report(job, &entries).ok_or(RecordError::NoJob)?;
    // A record that would not hold is not made.
    if let Some((which, why)) = links::check(job, &entries).broken.into_iter().next() {
        return Err(RecordError::Gap(which, why));
    }
    let pictures = |photo: &super::report::ReportPhoto| {
        let copy = evidence::sha256(photos.get(&photo.sha256)?);
        photo.copies.contains(&copy).then(|| Picture { copy, jpeg: None, sha256: photo.sha256.clone() })
    };
    let mut shown: Vec<Picture> = report.photos.iter().filter_map(pictures).collect();
    let mut once = BTreeSet::new();
    shown.retain(|p| once.insert(p.sha256.clone()));
    photos.retain(|sha256, _| once.contains(sha256));
    let mut file = RecordFile {
        anchors: Vec::new(),
        claims: serde_json::to_value(&report).map_err(WriteError::from)?,
        entries: entries.iter().map(WireEntry::of).collect(),
        format: FORMAT.into(),
        job: job.to_string(),
        made: made.into(),
        photos: shown,
        program: concat!("stillbar ", env!("CARGO_PKG_VERSION")).into(),
        seal: Seal { device: String::new(), sig: String::new() },
        version: VERSION,
    };
    file.seal(key)?;
    Ok(Made { file, report, photos })
}

impl Made {
    /// What it claims.
    pub fn report(&self) -> &Report {
        &self.report
    }

    /// With proofs by others of when its entries were there; the seal is over everything else, so they may come later.
    pub fn anchored(mut self, anchors: Vec<serde_json::Value>) -> Made {
        self.file.anchors = anchors;
        self
    }

    /// As JSON, with its pictures in it.
    pub fn json(&self) -> Result<Vec<u8>, RecordError> {
        let mut file = self.file.clone();
        for picture in &mut file.photos {
            picture.jpeg = self.photos.get(&picture.sha256).map(|bytes| STANDARD.encode(bytes));
        }
        Ok(file.written()?)
    }

    /// As PDF/A-3, with the JSON embedded and its pictures on the pages.
    pub fn pdf(&self) -> Result<Vec<u8>, RecordError> {
        Ok(pdf::write(&self.file.without_pictures(), &self.report, &self.photos)?)
    }

    /// Readings and time line as CSV (RFC 4180).
    pub fn csv(&self) -> Result<String, RecordError> {
        Ok(super::csv(&self.report)?)
    }
}

/// Why the pages of a record that is here cannot be made anew.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RereadError {
    /// It is no record.
    #[error(transparent)]
    Unreadable(#[from] Unreadable),
    /// It does not hold.
    #[error("The record does not hold: {}: {}", .0.what, .0.why)]
    Fails(Failure),
    /// It holds, and tells of no job.
    #[error("The record tells of no job.")]
    NoJob,
}

/// A record that was read from a file and holds, so that its pages can be made anew.
pub fn reread(bytes: &[u8]) -> Result<Made, RereadError> {
    super::verify::read_whole(bytes)
}

impl Made {
    pub(super) fn of(file: RecordFile, report: Report, photos: BTreeMap<String, Vec<u8>>) -> Made {
        Made { file, report, photos }
    }
}
