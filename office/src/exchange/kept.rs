//! An entry on its way into the feeds.

use std::collections::BTreeSet;

use stillbar_core::journal::{DeviceId, Entry, EntryId, Fact, Hlc};

/// An entry that is about to enter its feeds, with what is asked of it read once.
#[derive(Debug, Clone)]
pub struct FeedEntry {
    pub(super) id: EntryId,
    pub(super) device: DeviceId,
    pub(super) seq: i64,
    pub(super) clock: Hlc,
    pub(super) site: Option<EntryId>,
    pub(super) job: Option<EntryId>,
    pub(super) refers: BTreeSet<EntryId>,
    pub(super) begins: bool,
    pub(super) corrects: Option<EntryId>,
    pub(super) photo: Option<[u8; 32]>,
    pub(super) body: Vec<u8>,
    pub(super) sig: [u8; 64],
}

/// The photo that an entry names.
pub(crate) fn photo(entry: &Entry) -> Option<[u8; 32]> {
    match &entry.body.fact {
        Fact::PhotoTaken { sha256, .. } => sha256.parse::<EntryId>().ok().map(|hash| hash.0),
        _ => None,
    }
}

impl FeedEntry {
    /// Of an entry whose number the chain has already taken.
    pub fn of(entry: &Entry) -> FeedEntry {
        FeedEntry {
            id: entry.id,
            device: entry.body.device,
            seq: i64::try_from(entry.body.seq).unwrap_or(i64::MAX),
            clock: entry.body.clock,
            site: entry.body.site,
            job: entry.job(),
            refers: entry.refers(),
            begins: matches!(entry.body.fact, Fact::SiteNoted { .. }),
            corrects: match entry.body.fact {
                Fact::PersonNoted { corrects, .. } => corrects,
                _ => None,
            },
            photo: photo(entry),
            body: entry.bytes.clone(),
            sig: entry.signature,
        }
    }

    /// The feed that it goes into by itself; an entry that notes a site begins that site's feed.
    pub(super) fn target(&self) -> Option<EntryId> {
        if self.begins { Some(self.id) } else { self.site }
    }
}
