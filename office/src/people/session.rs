//! Signing in and out. A session is a row; the browser has its secret in a cookie that no script can read.

use std::collections::BTreeSet;

use axum::http::StatusCode;
use stillbar_core::journal::EntryId;

use super::{Account, person, sites, verify};
use crate::error::{Code, OfficeError};
use crate::office::{Office, kept};
use crate::{audit, params, rate};

/// The cookie's name.
pub const COOKIE: &str = "stillbar-office";
/// How long a session lasts without being used, in milliseconds.
const IDLE_MS: i64 = 2 * 3_600_000;
/// How long it lasts at most.
const LASTS_MS: i64 = 14 * 3_600_000;
/// How exactly its use is written down: not on every call.
const SEEN_MS: i64 = 60_000;

/// Somebody who is signed in.
#[derive(Debug, Clone)]
pub struct Visitor {
    /// Who.
    pub person: Account,
    /// The sites that they see.
    pub sites: BTreeSet<EntryId>,
    /// What every form of theirs has in it.
    pub csrf: String,
}

impl Visitor {
    /// Refuses what is not on a site of theirs, in the same words as what does not exist.
    pub fn on(&self, site: EntryId) -> Result<(), OfficeError> {
        if self.sites.contains(&site) {
            Ok(())
        } else {
            Err(OfficeError::nothing("There is no such site here for you."))
        }
    }
}

/// Signs in; the cookie's secret.
pub fn sign_in(office: &Office, login: &str, password: &str, origin: &str) -> Result<String, OfficeError> {
    let login = login.trim().to_lowercase();
    rate::count(office, rate::SIGN_IN_FROM, origin)?;
    rate::count(office, rate::SIGN_IN_NAME, &login)?;
    let found = office.read(|tx| {
        let rows = tx.rows("SELECT id, password FROM person WHERE login = $1 AND off = 0", params![login.as_str()])?;
        rows.first().map(|row| Ok((row.text(0)?, row.text(1)?))).transpose()
    })?;
    let right = verify(password, found.as_ref().map(|(_, hash)| hash.as_str()));
    let (token, csrf, now) = (office.secret::<32>()?, office.secret::<16>()?, office.now());
    office.change(|tx| {
        let who: String = login.chars().take(60).collect();
        match &found {
            Some((id, _)) if right => {
                tx.run("DELETE FROM session WHERE made_ms < $1", params![now - LASTS_MS])?;
                tx.run(
                    "INSERT INTO session (token, person, csrf, made_ms, seen_ms) VALUES ($1, $2, $3, $4, $4)",
                    params![kept(&token), id.as_str(), csrf.as_str(), now],
                )?;
                audit::note(tx, now, &who, "signed in", "", origin)
            }
            _ => audit::note(tx, now, &who, "sign-in refused", "", origin),
        }
    })?;
    if right {
        return Ok(token);
    }
    let say = "Name and password do not fit each other. Try again; an admin can give you a new password.";
    Err(OfficeError::refused(StatusCode::FORBIDDEN, Code::NotSignedIn, say))
}

/// Who has this cookie.
pub fn visitor(office: &Office, token: &str) -> Result<Option<Visitor>, OfficeError> {
    let (hash, now) = (kept(token), office.now());
    let found = office.read(|tx| {
        let sql = "SELECT person, csrf, seen_ms FROM session WHERE token = $1 AND made_ms > $2 AND seen_ms > $3";
        let rows = tx.rows(sql, params![hash, now - LASTS_MS, now - IDLE_MS])?;
        let Some(row) = rows.first() else { return Ok(None) };
        let person = person(tx, &row.text(0)?)?;
        if person.off {
            return Ok(None);
        }
        let sites = sites(tx, &person)?;
        Ok(Some((Visitor { person, sites, csrf: row.text(1)? }, row.int(2)?)))
    })?;
    let Some((visitor, seen)) = found else { return Ok(None) };
    if now - seen > SEEN_MS {
        office.change(|tx| tx.run("UPDATE session SET seen_ms = $1 WHERE token = $2", params![now, hash]))?;
    }
    Ok(Some(visitor))
}

/// Ends a session.
pub fn sign_out(office: &Office, token: &str, who: &str, origin: &str) -> Result<(), OfficeError> {
    let now = office.now();
    office.change(|tx| {
        tx.run("DELETE FROM session WHERE token = $1", params![kept(token)])?;
        audit::note(tx, now, who, "signed out", "", origin)
    })
}
