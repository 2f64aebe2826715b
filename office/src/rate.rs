//! How often somebody may try. The counts are in the database, so that several processes count together.

use axum::http::StatusCode;

use crate::error::{Code, OfficeError};
use crate::office::Office;
use crate::params;

/// A limit.
#[derive(Debug, Clone, Copy)]
pub struct RateLimit {
    /// What is tried.
    pub what: &'static str,
    /// Tries in one slot.
    pub most: i64,
    /// Length of a slot in milliseconds.
    pub slot_ms: i64,
}

const MINUTE: i64 = 60_000;

/// Signing in, per name that is tried.
pub const SIGN_IN_NAME: RateLimit = RateLimit { what: "sign-in-name", most: 30, slot_ms: 15 * MINUTE };
/// Signing in, per address that tries.
pub const SIGN_IN_FROM: RateLimit = RateLimit { what: "sign-in-from", most: 60, slot_ms: 15 * MINUTE };
/// Enrolling, per address that tries.
pub const ENROL_FROM: RateLimit = RateLimit { what: "enrol-from", most: 60, slot_ms: 15 * MINUTE };

/// Counts one try of `who`, in a transaction of its own, and refuses if there were too many: a refusal later on does not take the count
/// back, and two tries at the same moment are two.
pub fn count(office: &Office, limit: RateLimit, who: &str) -> Result<(), OfficeError> {
    let slot = office.now().div_euclid(limit.slot_ms);
    let who: String = who.chars().take(200).collect();
    let tries = office.change(|tx| {
        let tries = tx.rows(
            "INSERT INTO rate (what, who, slot, tries) VALUES ($1, $2, $3, 1) \
             ON CONFLICT (what, who, slot) DO UPDATE SET tries = rate.tries + 1 RETURNING tries",
            params![limit.what, who.as_str(), slot],
        )?;
        let tries = tries.first().map_or(Ok(1), |row| row.int(0))?;
        if tries == 1 {
            tx.run("DELETE FROM rate WHERE what = $1 AND slot < $2", params![limit.what, slot])?;
        }
        Ok(tries)
    })?;
    if tries <= limit.most {
        return Ok(());
    }
    let say = format!("Too many tries. Wait {} minutes and try again.", limit.slot_ms / MINUTE);
    Err(OfficeError::refused(StatusCode::TOO_MANY_REQUESTS, Code::TooManyTries, say))
}
