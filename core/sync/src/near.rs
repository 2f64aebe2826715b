//! From phone to phone with no signal: what one has and the other lacks, as codes that are shown and scanned.
//!
//! First one shows what it has ([`Has`]), a single small code. The other then shows what that one lacks, in parts that come round and
//! round until all were scanned, in any order. What arrives is checked like anything else that arrives: nothing is believed because it
//! came from beside. A part is `NEAR1`, a letter for what it is, four characters that its set has in common, two digits for its number from
//! 0 and two for how many there are, and the content in base 45 (RFC 9285), so that a code needs the alphanumeric set only.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Read;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use stillbar_journal::{Entry, MAX_ENTRY_BYTES, cbor};

/// How every part begins.
const BEGINS: &str = "NEAR1";
/// Characters of content in a part: a code of 89 modules, which a phone's camera reads from another phone.
const PART: usize = 900;
/// Parts of a set at most: three minutes of looking.
const MAX_PARTS: usize = 90;
/// Bytes of a set when it is unpacked.
const MAX_BYTES: u64 = 4 * 1024 * 1024;
/// Bytes by which jobs and devices are told apart in [`Has`].
const SHORT: usize = 8;

/// The first bytes of an id.
pub type Short = [u8; SHORT];

/// What a phone has of the jobs that are under way: job, device, and that device's last entry in it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Has(pub BTreeMap<Short, BTreeMap<Short, u64>>);

/// The first bytes of an id.
pub fn short(id: &[u8; 32]) -> Short {
    std::array::from_fn(|i| id[i])
}

/// What a set of parts is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartKind {
    /// [`Has`].
    Has,
    /// Entries.
    Entries,
}

impl PartKind {
    fn letter(self) -> char {
        match self {
            PartKind::Has => 'H',
            PartKind::Entries => 'E',
        }
    }
}

/// What does not go by codes, in a sentence.
pub type PartRefused = String;

/// A phone's knowledge, as parts.
pub fn show_has(has: &Has) -> Result<Vec<String>, PartRefused> {
    parts(PartKind::Has, &cbor::encode(has).map_err(|e| e.to_string())?)
}

/// Entries, as parts.
pub fn show_entries(entries: &[Entry]) -> Result<Vec<String>, PartRefused> {
    let mut plain = Vec::new();
    for entry in entries {
        let length = u16::try_from(entry.bytes.len()).map_err(|_| "an entry is too long".to_owned())?;
        plain.extend(length.to_be_bytes());
        plain.extend(&entry.bytes);
        plain.extend(entry.signature);
    }
    parts(PartKind::Entries, &plain)
}

/// Reads what [`show_has`] wrote.
pub fn read_has(plain: &[u8]) -> Option<Has> {
    cbor::decode(plain).ok()
}

/// Reads what [`show_entries`] wrote: entries whose signatures hold, or nothing at all.
pub fn read_entries(mut plain: &[u8]) -> Option<Vec<Entry>> {
    let mut entries = Vec::new();
    while !plain.is_empty() {
        let (length, rest) = plain.split_at_checked(2)?;
        let length = usize::from(u16::from_be_bytes(length.try_into().ok()?));
        let (body, rest) = rest.split_at_checked(length).filter(|_| length <= MAX_ENTRY_BYTES)?;
        let (signature, rest) = rest.split_at_checked(64)?;
        entries.push(Entry::open(body.to_vec(), signature.try_into().ok()?).ok()?);
        plain = rest;
    }
    Some(entries)
}

fn parts(kind: PartKind, plain: &[u8]) -> Result<Vec<String>, PartRefused> {
    let mut packed = Vec::new();
    let mut packer = flate2::read::DeflateEncoder::new(plain, flate2::Compression::best());
    packer.read_to_end(&mut packed).map_err(|e| e.to_string())?;
    let text = base45::encode(&packed);
    let set: String = Sha256::digest(&packed).iter().take(2).map(|b| format!("{b:02X}")).collect();
    let pieces: Vec<&str> = text.as_bytes().chunks(PART).map(|c| std::str::from_utf8(c).unwrap_or_default()).collect();
    let count = pieces.len().max(1);
    if count > MAX_PARTS {
        return Err("This is more than can be shown in codes: let the phones meet the office first.".into());
    }
    let part = |(n, piece): (usize, &&str)| format!("{BEGINS}{}{set}{n:02}{count:02}{piece}", kind.letter());
    Ok(pieces.iter().enumerate().map(part).collect())
}

/// Parts that were scanned, until there is a whole set.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PartsGathered {
    set: String,
    count: usize,
    parts: BTreeMap<usize, String>,
}

/// What a scanned part came to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PartStep {
    /// So many of so many parts are here.
    Parts(usize, usize),
    /// The set is whole.
    Whole(PartKind, Vec<u8>),
}

/// Whether a text is a part.
pub fn is_part(text: &str) -> bool {
    text.starts_with(BEGINS)
}

impl PartsGathered {
    /// Takes in a part. One of another set begins anew. `None`: it is no part, or the whole set cannot be read; then it begins anew too.
    pub fn take(&mut self, text: &str) -> Option<PartStep> {
        let rest = text.strip_prefix(BEGINS).filter(|r| r.is_ascii() && r.len() >= 9 && r.len() <= 9 + PART)?;
        let (kind, set) = (rest.get(..1)?, rest.get(..5)?);
        let (number, count): (usize, usize) = (rest.get(5..7)?.parse().ok()?, rest.get(7..9)?.parse().ok()?);
        let kind = [PartKind::Has, PartKind::Entries].into_iter().find(|k| kind.starts_with(k.letter()))?;
        if count == 0 || count > MAX_PARTS || number >= count {
            return None;
        }
        if (self.set.as_str(), self.count) != (set, count) {
            *self = PartsGathered { set: set.to_owned(), count, parts: BTreeMap::new() };
        }
        self.parts.insert(number, rest[9..].to_owned());
        if self.parts.len() < count {
            return Some(PartStep::Parts(self.parts.len(), count));
        }
        let text: String = std::mem::take(self).parts.into_values().collect();
        let packed = base45::decode(&text).ok()?;
        let mut plain = Vec::new();
        flate2::read::DeflateDecoder::new(&packed[..]).take(MAX_BYTES + 1).read_to_end(&mut plain).ok()?;
        (plain.len() as u64 <= MAX_BYTES).then_some(PartStep::Whole(kind, plain))
    }
}

/// What of `entries`, those of one job in the journal's order, the other phone lacks.
pub fn lacked<'a>(has: Option<&BTreeMap<Short, u64>>, entries: &'a [Entry]) -> Vec<&'a Entry> {
    let known = |e: &Entry| has.and_then(|h| h.get(&short(&e.body.device.0))).is_some_and(|last| e.body.seq <= *last);
    entries.iter().filter(|e| !known(e)).collect()
}

/// The entries of no job that these name: people, instruments, sites, the devices' beginnings. `shared`: all entries of no job.
pub fn named<'a>(entries: &[&Entry], shared: &'a [Entry]) -> Vec<&'a Entry> {
    let mut wanted: BTreeSet<_> = entries.iter().flat_map(|e| e.refers()).collect();
    wanted.extend(entries.iter().filter_map(|e| e.body.site));
    let devices: BTreeSet<_> = entries.iter().map(|e| e.body.device).collect();
    let begins = |e: &&Entry| wanted.contains(&e.id) || (e.body.seq == 1 && devices.contains(&e.body.device));
    shared.iter().filter(begins).collect()
}
