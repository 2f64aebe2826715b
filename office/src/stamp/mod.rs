//! Time stamps: once a day an authority outside signs that what the office holds of its jobs was there at that moment.
//!
//! A chain proves order and that nothing was changed since somebody else saw its end; an authority is such a somebody. For each job that got
//! entries since its last stamp a *head* is made: the hash over the ids of all its entries. The heads of the day are the leaves of a Merkle tree
//! (RFC 9162), and the authority stamps its root (RFC 3161), so it learns nothing of any job, and a job's proof tells nothing of others.
//!
//! Promises: what cannot be stamped now is stamped later, with the same root; no stamp is believed before its signature, its root and its
//! number were checked. Start at [`take`] and [`StampProof::holds`].

pub mod merkle;
pub mod token;

use std::collections::BTreeSet;
use std::time::Duration;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use stillbar_core::journal::EntryId;
use stillbar_core::record::Anchor;
use stillbar_core::sync::no_answer;
use stillbar_core::text::times;
use tokio_rustls::rustls::pki_types::CertificateDer;
use tokio_rustls::rustls::pki_types::pem::PemObject;

use crate::error::OfficeError;
use crate::office::Office;
use crate::store::{SqlRow, Tx};
use crate::{hex, params};
pub use token::{Stamped, TokenError, check};

/// Jobs under one root at most; of more, the rest has its turn the next time.
const MAX_JOBS: usize = 10_000;
/// Proofs of one job that are given out at most, the latest first.
const MAX_PROOFS: usize = 14;
/// What stands for a token until it came.
const NOT_YET: [u8; 0] = [];
/// How long an authority may take.
const PATIENCE: Duration = Duration::from_secs(30);
/// Bytes of an id.
const ID: usize = 32;

/// What shows that entries of a job were there when an authority stamped the root.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct StampProof {
    /// Ids of the entries, in their order as numbers, in hex.
    pub covers: Vec<String>,
    /// Which leaf the job's head is, from 0.
    pub index: u64,
    /// How many leaves there are.
    pub size: u64,
    /// The path of RFC 9162 section 2.1.3, in hex, from the leaf's side outwards.
    pub path: Vec<String>,
    /// The root, in hex.
    pub root: String,
    /// The time-stamp token of RFC 3161, base64.
    pub token: String,
}

/// What of a proof does not hold.
#[derive(Debug, thiserror::Error)]
pub enum ProofError {
    /// It has not the form of one.
    #[error("it cannot be read ({0}).")]
    Unreadable(#[from] serde_json::Error),
    /// A hash in it is none.
    #[error("a hash in it has not 64 hex digits.")]
    Hash,
    /// Its entries are not in the order of their ids.
    #[error("its entries are not in order.")]
    Order,
    /// Whoever checks it lacks an entry that it covers.
    #[error("it covers entry {:.8}, which is not in this record.", hex(&.0.0))]
    Missing(EntryId),
    /// The path leads elsewhere.
    #[error("these entries do not lead to the root that was stamped.")]
    Root,
    /// Its token is not base64.
    #[error("its token is not base64.")]
    Base64,
    /// Its token proves nothing.
    #[error(transparent)]
    Token(#[from] TokenError),
}

/// No certificate is in what was given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("It holds no certificate in PEM.")]
pub struct NoCertificate;

/// Why an authority gave no time stamp.
#[derive(Debug, thiserror::Error)]
enum AskError {
    #[error("{authority} did not answer: {}", no_answer(.why))]
    Silent {
        authority: String,
        #[source]
        why: ureq::Error,
    },
    #[error("{authority} sent no whole answer: {}", no_answer(.why))]
    BrokenOff {
        authority: String,
        #[source]
        why: ureq::Error,
    },
    #[error(transparent)]
    Token(#[from] TokenError),
}

impl StampProof {
    /// What the proof shows of a job; `entries` are the ids that whoever checks it has. The error says what does not hold.
    pub fn holds(
        &self,
        job: EntryId,
        entries: &BTreeSet<EntryId>,
        authorities: &[Vec<u8>],
    ) -> Result<Stamped, ProofError> {
        let read = |text: &String| text.parse::<EntryId>().map(|id| id.0).map_err(|_| ProofError::Hash);
        let covers = self.covers.iter().map(read).collect::<Result<Vec<_>, _>>()?;
        if !covers.is_sorted() {
            return Err(ProofError::Order);
        }
        if let Some(missing) = covers.iter().map(|id| EntryId(*id)).find(|id| !entries.contains(id)) {
            return Err(ProofError::Missing(missing));
        }
        let path = self.path.iter().map(read).collect::<Result<Vec<_>, _>>()?;
        let root = merkle::root_by(&leaf(job, head(&covers.concat())), self.index, self.size, &path);
        if root != Some(read(&self.root)?) {
            return Err(ProofError::Root);
        }
        let token = STANDARD.decode(&self.token).map_err(|_| ProofError::Base64)?;
        Ok(check(&token, &read(&self.root)?, authorities)?)
    }
}

/// Looks at an anchor of a record, as [`stillbar_core::record::verify()`] asks it to.
pub fn witness(
    job: EntryId,
    entries: &BTreeSet<EntryId>,
    anchor: &serde_json::Value,
    authorities: &[Vec<u8>],
) -> Result<Anchor, ProofError> {
    let proof: StampProof = serde_json::from_value(anchor.clone())?;
    let said = proof.holds(job, entries, authorities)?;
    let at = format!("{} UTC", times::exact(said.at_ms, 0));
    Ok(Anchor { at, by: said.by, covers: proof.covers.len(), trusted: said.trusted })
}

/// Certificates in PEM, as [`check`] takes them.
pub fn authorities(pem: &[u8]) -> Result<Vec<Vec<u8>>, NoCertificate> {
    let read: Result<Vec<_>, _> = CertificateDer::pem_slice_iter(pem).collect();
    match read {
        Ok(found) if !found.is_empty() => Ok(found.into_iter().map(|c| c.to_vec()).collect()),
        _ => Err(NoCertificate),
    }
}

/// A leaf: the job, and the hash over the ids of its entries in their order as numbers, end to end.
fn leaf(job: EntryId, head: [u8; ID]) -> [u8; 2 * ID] {
    let mut leaf = [0; 2 * ID];
    leaf[..ID].copy_from_slice(&job.0);
    leaf[ID..].copy_from_slice(&head);
    leaf
}

fn head(covers: &[u8]) -> [u8; ID] {
    Sha256::digest(covers).into()
}

/// Takes the stamp of the day if there is anything new; the day it is kept under, or `None` if there was nothing to do.
pub fn take(office: &Office, authority: &str) -> Result<Option<String>, OfficeError> {
    let now = office.now();
    let day = times::exact(now, 0).chars().take(10).collect::<String>();
    let Some(root) = begin(office, &day, now)? else { return Ok(None) };
    let nonce = office.random::<8>()?;
    let token = ask(authority, &root, &nonce).map_err(|why| OfficeError::Busy(format!("no time stamp came: {why}")))?;
    office.change(|tx| {
        tx.run(
            "UPDATE stamp SET token = $1 WHERE day = $2 AND root = $3 AND token = $4",
            params![token.clone(), day.as_str(), root.to_vec(), NOT_YET.to_vec()],
        )
    })?;
    Ok(Some(day))
}

/// The root to be stamped: the one of an earlier try, or of what is new since the last stamp.
fn begin(office: &Office, day: &str, now: i64) -> Result<Option<merkle::Hash>, OfficeError> {
    office.change(|tx| {
        // Two processes begin no two stamps: the row is there once.
        let rows = tx.rows("SELECT root, token FROM stamp WHERE day = $1 FOR UPDATE", params![day])?;
        if let Some(row) = rows.first() {
            return Ok(row.bytes(1)?.is_empty().then_some(row.id(0)?.0));
        }
        let sql = "SELECT site, id, have FROM job WHERE have > COALESCE((SELECT max(stamped.have) FROM stamped \
                   WHERE stamped.site = job.site AND stamped.job = job.id), 0) ORDER BY site, id LIMIT $1";
        let mut leaves = Vec::new();
        let mut rows = Vec::new();
        for (at, row) in tx.rows(sql, params![MAX_JOBS])?.into_iter().enumerate() {
            let (site, job, have) = (row.id(0)?, row.id(1)?, row.int(2)?);
            let mut covers = Vec::new();
            for entry in tx.rows("SELECT id FROM feed WHERE site = $1 AND job = $2 ORDER BY id", params![site, job])? {
                covers.extend(entry.id(0)?.0);
            }
            let head = head(&covers);
            leaves.push(leaf(job, head));
            let position = i64::try_from(at).unwrap_or(i64::MAX);
            rows.push(vec![
                day.into(),
                position.into(),
                site.into(),
                job.into(),
                have.into(),
                EntryId(head).into(),
                covers.into(),
            ]);
        }
        if leaves.is_empty() {
            return Ok(None);
        }
        let root = merkle::root(&leaves);
        tx.run(
            "INSERT INTO stamp (day, made_ms, root, size, token) VALUES ($1, $2, $3, $4, $5)",
            params![day, now, root.to_vec(), leaves.len(), NOT_YET.to_vec()],
        )?;
        tx.insert("stamped", &["day", "position", "site", "job", "have", "head", "covers"], "", &rows)?;
        Ok(Some(root))
    })
}

/// Asks an authority over HTTP (RFC 3161 section 3.4).
fn ask(authority: &str, root: &merkle::Hash, nonce: &[u8; 8]) -> Result<Vec<u8>, AskError> {
    let named = || authority.to_owned();
    let agent: ureq::Agent = ureq::Agent::config_builder().timeout_global(Some(PATIENCE)).build().into();
    let sent =
        agent.post(authority).header("content-type", "application/timestamp-query").send(&token::query(root, nonce)?);
    let mut answer = sent.map_err(|why| AskError::Silent { authority: named(), why })?;
    let read = answer.body_mut().with_config().limit(token::MAX_BYTES as u64).read_to_vec();
    let bytes = read.map_err(|why| AskError::BrokenOff { authority: named(), why })?;
    Ok(token::answer(&bytes, root, nonce)?)
}

/// The stamps of a job, the latest first: how many entries were there, and what the stamp says.
pub fn stamps(office: &Office, site: EntryId, job: EntryId) -> Result<Vec<(usize, Stamped)>, OfficeError> {
    let found = office.read(|tx| kept(tx, site, job))?;
    let said = |stamp: &StampKept| Ok((stamp.covers.len() / ID, kept_says(stamp)?));
    found.iter().map(said).collect()
}

/// The proofs of a job, the latest first.
pub fn proofs(office: &Office, site: EntryId, job: EntryId) -> Result<Vec<StampProof>, OfficeError> {
    office.read(|tx| {
        let mut found = Vec::new();
        for stamp in kept(tx, site, job)? {
            kept_says(&stamp)?;
            let mut leaves = Vec::new();
            for row in
                tx.rows("SELECT job, head FROM stamped WHERE day = $1 ORDER BY position", params![stamp.day.as_str()])?
            {
                leaves.push(leaf(row.id(0)?, row.hash(1)?));
            }
            let path = merkle::path(&leaves, usize::try_from(stamp.index).unwrap_or(usize::MAX));
            found.push(StampProof {
                covers: stamp.covers.chunks(ID).map(hex).collect(),
                index: stamp.index,
                size: stamp.size,
                path: path.iter().map(|h| hex(h)).collect(),
                root: hex(&stamp.root),
                token: STANDARD.encode(stamp.token),
            });
        }
        Ok(found)
    })
}

/// A stamp of a job as the database has it.
struct StampKept {
    day: String,
    root: merkle::Hash,
    size: u64,
    token: Vec<u8>,
    index: u64,
    covers: Vec<u8>,
}

fn kept(tx: &mut dyn Tx, site: EntryId, job: EntryId) -> Result<Vec<StampKept>, OfficeError> {
    let sql = "SELECT stamp.day, stamp.root, stamp.size, stamp.token, stamped.position, stamped.covers FROM stamped \
               JOIN stamp ON stamp.day = stamped.day WHERE stamped.site = $1 AND stamped.job = $2 AND stamp.token <> $3 \
               ORDER BY stamp.day DESC LIMIT $4";
    let read = |row: &SqlRow| {
        let (day, root, size) = (row.text(0)?, row.hash(1)?, row.count(2)?);
        Ok(StampKept { day, root, size, token: row.bytes(3)?, index: row.count(4)?, covers: row.bytes(5)? })
    };
    tx.rows(sql, params![site, job, NOT_YET.to_vec(), MAX_PROOFS])?.iter().map(read).collect()
}

fn kept_says(stamp: &StampKept) -> Result<Stamped, OfficeError> {
    check(&stamp.token, &stamp.root, &[]).map_err(|why| OfficeError::broken(&format!("a kept time stamp: {why}")))
}
