//! Sites, their jobs and tags, and the search over them.

use std::collections::BTreeSet;

use stillbar_core::job::ProofState;
use stillbar_core::job::steps::StepOf;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::RuleSet;
use stillbar_core::store::read_next;

use super::{entry, refresh};
use crate::error::OfficeError;
use crate::office::Office;
use crate::params;
use crate::store::{SqlRow, Tx};

/// Rows of a list at most; a page says so when there are more.
pub const MAX: usize = 500;

/// A site.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SiteOf {
    /// The entry that noted it.
    pub id: EntryId,
    /// What it is called.
    pub name: String,
    /// The site that it is the same place as; itself otherwise.
    pub main: EntryId,
    /// Whether a site lead took it in.
    pub taken: bool,
    /// Jobs that are not handed back.
    pub open: u64,
    /// Locks on, as last heard.
    pub locks: u64,
}

/// A job in a list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobOf {
    /// Its site.
    pub site: EntryId,
    /// What the site is called.
    pub site_name: String,
    /// The job.
    pub id: EntryId,
    /// What it is.
    pub title: String,
    /// Where.
    pub place: String,
    /// The step whose turn it is; `None` once nothing is left to do.
    pub next: Option<StepOf>,
    /// By whose rules it is done: it is told of in their words.
    pub rules: Option<RuleSet>,
    /// What stood proved when it was last heard of.
    pub proof: ProofState,
    /// Whether it is handed back.
    pub done: bool,
    /// When it was opened, by the phone's clock; milliseconds since 1970-01-01T00:00Z.
    pub opened_ms: i64,
    /// When its last entry came in.
    pub changed_ms: i64,
}

/// A tag at a point of isolation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PointTagged {
    /// The tag.
    pub tag: String,
    /// The job whose point it is.
    pub job: EntryId,
    /// The point.
    pub label: String,
    /// Where it is.
    pub place: String,
    /// Since when it hangs there, milliseconds since 1970-01-01T00:00Z.
    pub since_ms: i64,
    /// Minutes ahead of UTC at that time.
    pub zone: i32,
    /// Why it no longer hangs there.
    pub gone: Option<String>,
}

fn ids(sites: &BTreeSet<EntryId>) -> Vec<[u8; 32]> {
    sites.iter().map(|s| s.0).collect()
}

/// These sites, by name.
pub fn sites(office: &Office, of: &BTreeSet<EntryId>) -> Result<Vec<SiteOf>, OfficeError> {
    refresh(office, of)?;
    office.read(|tx| {
        let sql = "SELECT id, name, main, taken, \
                   (SELECT count(*) FROM job WHERE job.site = site.id AND done = 0), \
                   (SELECT count(*) FROM lock_on WHERE lock_on.site = site.id AND is_on = 1) \
                   FROM site WHERE id IN (@) ORDER BY name, id";
        let rows = tx.among(sql, &[], &ids(of))?;
        rows.iter()
            .map(|row| {
                Ok(SiteOf {
                    id: row.id(0)?,
                    name: row.text(1)?,
                    main: row.id(2)?,
                    taken: row.yes(3)?,
                    open: row.count(4)?,
                    locks: row.count(5)?,
                })
            })
            .collect()
    })
}

const JOB: &str = "SELECT job.site, site.name, job.id, job.title, job.place, job.proof, job.done, \
                   job.opened_ms, job.changed_ms, job.next, job.next_at, job.turns, feed.body, feed.sig \
                   FROM job JOIN site ON site.id = job.site LEFT JOIN feed ON feed.site = job.site AND feed.id = job.id";

fn job_of(row: &SqlRow) -> Result<JobOf, OfficeError> {
    Ok(JobOf {
        site: row.id(0)?,
        site_name: row.text(1)?,
        id: row.id(2)?,
        title: row.text(3)?,
        place: row.text(4)?,
        proof: ProofState::of_code(&row.text(5)?),
        done: row.yes(6)?,
        opened_ms: row.int(7)?,
        changed_ms: row.int(8)?,
        next: read_next(row.maybe_text(9)?, row.maybe_text(10)?, row.yes(11)?),
        rules: rules_of(row),
    })
}

/// The rules in the entry that opens the job of a row, where it can be read.
fn rules_of(row: &SqlRow) -> Option<RuleSet> {
    let opening = SqlRow(vec![row.bytes(12).ok()?.into(), row.bytes(13).ok()?.into()]);
    match entry(&opening).ok()?.body.fact {
        Fact::JobOpened { rules, .. } => rules,
        _ => None,
    }
}

/// By whose rules the last job of a site was opened.
pub fn last_rules(office: &Office, site: EntryId) -> Result<Option<RuleSet>, OfficeError> {
    office.read(|tx| {
        let sql = format!("{JOB} WHERE job.site = $1 ORDER BY job.opened_ms DESC, job.id LIMIT 1");
        Ok(tx.rows(&sql, params![site])?.first().and_then(rules_of))
    })
}

/// The jobs of a site, open ones first, latest first.
pub fn jobs(office: &Office, site: EntryId) -> Result<Vec<JobOf>, OfficeError> {
    refresh(office, &BTreeSet::from([site]))?;
    office.read(|tx| {
        let sql = format!(
            "{JOB} WHERE job.site = $1 AND job.proof <> $2 ORDER BY job.done, job.opened_ms DESC, job.id LIMIT $3"
        );
        tx.rows(&sql, params![site, "", MAX])?.iter().map(job_of).collect()
    })
}

/// The tags of a site.
pub fn tags(tx: &mut dyn Tx, site: EntryId) -> Result<Vec<PointTagged>, OfficeError> {
    let sql =
        "SELECT tag, job, label, place, since_ms, zone, gone FROM tag WHERE site = $1 ORDER BY label, tag LIMIT $2";
    let read = |row: &SqlRow| {
        Ok(PointTagged {
            tag: row.text(0)?,
            job: row.id(1)?,
            label: row.text(2)?,
            place: row.text(3)?,
            since_ms: row.int(4)?,
            zone: i32::try_from(row.int(5)?).unwrap_or(0),
            gone: row.maybe_text(6)?,
        })
    };
    tx.rows(sql, params![site, MAX])?.iter().map(read).collect()
}

/// Jobs of these sites whose title, place or site has `text` in it, or that have a tag or a lock of this name; at most fifty.
pub fn search(office: &Office, of: &BTreeSet<EntryId>, text: &str) -> Result<Vec<JobOf>, OfficeError> {
    refresh(office, of)?;
    // What a person types is looked for as it is; `%` and `_` mean themselves.
    let typed = text.trim().to_lowercase();
    let escaped = typed.replace('\\', "\\\\").replace('%', "\\%").replace('_', "\\_");
    let like = format!("%{escaped}%");
    let tag = format!("%{}%", escaped.to_uppercase().replace([' ', '-'], ""));
    office.read(|tx| {
        let sql = format!(
            "{JOB} WHERE job.proof <> $1 AND (lower(job.title) LIKE $2 ESCAPE '\\' OR lower(job.place) LIKE $2 ESCAPE '\\' \
             OR lower(site.name) LIKE $2 ESCAPE '\\' \
             OR EXISTS (SELECT 1 FROM tag WHERE tag.site = job.site AND tag.job = job.id \
                        AND (tag.tag LIKE $3 ESCAPE '\\' OR lower(tag.label) LIKE $2 ESCAPE '\\')) \
             OR EXISTS (SELECT 1 FROM lock_on WHERE lock_on.site = job.site AND lock_on.job = job.id \
                        AND lower(lock_on.label) LIKE $2 ESCAPE '\\')) \
             AND job.site IN (@) ORDER BY job.done, job.opened_ms DESC, job.id LIMIT 50"
        );
        tx.among(&sql, params!["", like.as_str(), tag.as_str()], &ids(of))?.iter().map(job_of).collect()
    })
}
