//! Who did what at the office. No secret is ever in it.

use crate::error::OfficeError;
use crate::params;
use crate::store::Tx;

/// Keeps a note, in the transaction that did it.
pub fn note(tx: &mut dyn Tx, now: i64, who: &str, what: &str, about: &str, origin: &str) -> Result<(), OfficeError> {
    tx.run(
        "INSERT INTO audit (ms, who, what, about, origin) VALUES ($1, $2, $3, $4, $5)",
        params![now, who, what, about, origin],
    )?;
    Ok(())
}
