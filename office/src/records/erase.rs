//! Erasing a person's name from the journal without breaking its chain.
//!
//! An entry commits to a person's name, and what opens that stands behind its body. So the opening goes and the body stays: id, signature
//! and chain still hold, and who has the opening can still prove that it was this name. An entry that another program wrote may have the name in
//! its body; there the body goes, and id, number, device and signature stay, so that the chain is whole and the sums still fit.

use axum::http::StatusCode;
use stillbar_core::journal::{EntryId, Fact, WITHHELD};

use super::board::place;
use super::{entry, refresh};
use crate::error::{Code, OfficeError};
use crate::office::Office;
use crate::store::SqlRow;
use crate::{audit, params};

/// Names that are listed at most.
const MAX: usize = 1_000;

/// A person whom the journal names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedPerson {
    /// The entry that brought them.
    pub id: EntryId,
    /// Their name, as in that entry or its latest correction.
    pub name: String,
    /// When the entry came in, milliseconds since 1970-01-01T00:00Z.
    pub came_ms: i64,
    /// Names of sites whose phones got it.
    pub sites: Vec<String>,
}

/// The people whom the journal names, by name. What is a correction stands under the entry that it corrects.
pub fn names(office: &Office) -> Result<Vec<NamedPerson>, OfficeError> {
    office.read(|tx| {
        let mut found: Vec<NamedPerson> = Vec::new();
        // Corrections come after what they correct, so the latest name wins.
        for row in tx.rows("SELECT body, sig, came_ms FROM loose ORDER BY came_ms, device, seq", &[])? {
            if row.bytes(0)?.is_empty() {
                continue;
            }
            let entry = entry(&row)?;
            let Fact::PersonNoted { name, corrects, .. } = &entry.body.fact else { continue };
            if name == WITHHELD {
                continue;
            }
            let id = corrects.unwrap_or(entry.id);
            match found.iter().position(|n| n.id == id) {
                Some(known) => found[known].name.clone_from(name),
                None if found.len() < MAX => {
                    let sql = "SELECT site.name FROM shared JOIN site ON site.id = shared.site WHERE shared.id = $1 ORDER BY site.name";
                    let rows = tx.rows(sql, params![entry.id])?;
                    let sites = rows.iter().map(|row| row.text(0)).collect::<Result<_, _>>()?;
                    found.push(NamedPerson { id, name: name.clone(), came_ms: row.int(2)?, sites });
                }
                None => {}
            }
        }
        found.sort_by(|a, b| a.name.cmp(&b.name));
        Ok(found)
    })
}

/// Erases the names in the entry that brought a person and of its corrections, wherever the office keeps them. How many went.
pub fn erase(office: &Office, id: EntryId, who: &str, origin: &str) -> Result<usize, OfficeError> {
    let now = office.now();
    let named = office.read(|tx| {
        tx.rows("SELECT site FROM shared WHERE id = $1", params![id])?.iter().map(|row| row.id(0)).collect()
    })?;
    refresh(office, &named)?;
    office.change(|tx| {
        let on = tx.rows("SELECT label, place FROM lock_on WHERE owner = $1 ORDER BY since_ms LIMIT 5", params![id])?;
        if !on.is_empty() {
            let lock = |row: &SqlRow| Ok(format!("{} on {}", row.text(0)?, place(row, 1)?));
            let on = on.iter().map(lock).collect::<Result<Vec<_>, OfficeError>>()?;
            let say = format!(
                "A lock of this person is on ({}). Whoever meets it has to know whose it is and whom to ring. Erase the name when the lock is off.",
                on.join("; ")
            );
            return Err(OfficeError::refused(StatusCode::CONFLICT, Code::LockOn, say));
        }
        let mut all = vec![id];
        for row in tx.rows("SELECT id FROM correction WHERE corrects = $1 ORDER BY id", params![id])? {
            all.push(row.id(0)?);
        }
        let mut gone = 0;
        for id in all {
            let rows = tx.rows("SELECT body, sig FROM loose WHERE id = $1 FOR UPDATE", params![id])?;
            let Some(row) = rows.first() else { continue };
            if row.bytes(0)?.is_empty() {
                continue;
            }
            // Only what names a person can go: everything else is evidence.
            let whole = entry(row)?;
            let Fact::PersonNoted { name, .. } = &whole.body.fact else { continue };
            let left = match (whole.opens(), name.as_str()) {
                (true, _) => whole.withheld().map_err(|e| OfficeError::broken(&e.to_string()))?.bytes,
                (false, WITHHELD) => continue,
                (false, _) => Vec::new(),
            };
            tx.run("UPDATE loose SET body = $1 WHERE id = $2", params![left.clone(), id])?;
            for row in tx.rows("SELECT site FROM shared WHERE id = $1", params![id])? {
                let site = row.id(0)?;
                tx.run("UPDATE feed SET body = $1 WHERE site = $2 AND id = $3", params![left.clone(), site, id])?;
            }
            gone += 1;
        }
        if gone == 0 {
            return Err(OfficeError::nothing("There is no such person in the journal, or they are erased already."));
        }
        // Who they were is not written down here: that is the point.
        audit::note(tx, now, who, "person erased from the journal", &id.to_string(), origin)?;
        Ok(gone)
    })
}
