//! Passwords: argon2id (RFC 9106) with 19 MiB, two passes, one lane: the least that OWASP's cheat sheet on storing passwords asks
//! for (from memory).

use argon2::password_hash::phc::PasswordHash;
use argon2::{Argon2, PasswordHasher, PasswordVerifier};

use crate::error::OfficeError;
use crate::office::Office;

/// Fewest characters of a password that a person chooses (NIST SP 800-63B asks for 8; from memory).
const FEWEST: usize = 10;
/// Most bytes of a password: more is no password, and would take long to hash.
const MAX: usize = 1024;
/// What a password is held against that nobody has: signing in as somebody unknown takes as long as as somebody known.
const NOBODY: &str = "$argon2id$v=19$m=19456,t=2,p=1$c3RpbGxiYXItbm9ib2R5$bm9ib2R5IGhhcyB0aGlzIHBhc3N3b3JkIGF0IGFsbCE";

/// A password as it is kept.
pub fn hash(office: &Office, password: &str) -> Result<String, OfficeError> {
    let mut salt = [0; 16];
    (office.lent.random)(&mut salt)?;
    let hashed: Result<PasswordHash, _> = Argon2::default().hash_password_with_salt(password.as_bytes(), &salt);
    hashed.map(|h| h.to_string()).map_err(|e| OfficeError::broken(&format!("a password could not be hashed: {e}")))
}

/// Whether `password` is the one that is kept. Takes as long where none is.
pub fn verify(password: &str, kept: Option<&str>) -> bool {
    let right = PasswordHash::new(kept.unwrap_or(NOBODY)).is_ok_and(|hash| {
        password.len() <= MAX && Argon2::default().verify_password(password.as_bytes(), &hash).is_ok()
    });
    right && kept.is_some()
}

/// Whether a person may choose this password; the error is a sentence.
pub fn check_new(password: &str, login: &str) -> Result<(), OfficeError> {
    if password.chars().count() < FEWEST || password.len() > MAX {
        return Err(OfficeError::unreadable(format!(
            "A password has at least {FEWEST} characters. A few words in a row are good."
        )));
    }
    if !login.is_empty() && password.to_lowercase().contains(login) {
        return Err(OfficeError::unreadable("Your sign-in name may not be in your password."));
    }
    Ok(())
}
