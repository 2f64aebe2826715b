//! Enrolling a phone: a one-time code that the office shows as a QR, and a token in exchange.

use axum::http::StatusCode;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use stillbar_core::journal::{EntryId, Signed};
use stillbar_protocol::{Ask, Enrolled, code_text, signed as signed_text};

use crate::error::{Code, OfficeError};
use crate::office::{Office, kept};
use crate::store::Tx;
use crate::{audit, params, rate};

/// How long a code may be used, in milliseconds.
pub const CODE_MS: i64 = 15 * 60_000;
/// Longest name of a device, in characters.
const MAX_LABEL: usize = 60;

/// Makes a code for a phone of these sites. What it returns is shown once.
pub fn make_code(
    office: &Office,
    tx: &mut dyn Tx,
    made_by: &str,
    label: &str,
    sites: &[EntryId],
) -> Result<String, OfficeError> {
    let (code, now) = (office.secret::<16>()?, office.now());
    let hash = kept(&code);
    tx.run(
        "DELETE FROM code_site WHERE hash IN (SELECT hash FROM code WHERE expires_ms < $1)",
        params![now - CODE_MS],
    )?;
    tx.run("DELETE FROM code WHERE expires_ms < $1", params![now - CODE_MS])?;
    tx.run(
        "INSERT INTO code (hash, label, made_by, expires_ms) VALUES ($1, $2, $3, $4)",
        params![hash, label, made_by, now + CODE_MS],
    )?;
    for site in sites {
        tx.run("INSERT INTO code_site (hash, site) VALUES ($1, $2)", params![hash, *site])?;
    }
    Ok(code)
}

/// What the QR says.
pub fn qr_text(office: &Office, code: &str) -> String {
    code_text(&office.reached.url, code)
}

/// Enrols a phone. A phone whose answer was lost may ask again with the same code, until it used its token; it then gets a new one.
pub fn enrol(office: &Office, ask: &Ask, origin: &str) -> Result<Enrolled, OfficeError> {
    let refused = || {
        let say = "This code is not valid any more, or never was. Ask the office for a new one, and scan that.";
        OfficeError::refused(StatusCode::FORBIDDEN, Code::CodeNotValid, say)
    };
    let device = ask.device;
    let sig: Option<[u8; 64]> = STANDARD.decode(&ask.sig).ok().and_then(|s| s.try_into().ok());
    let signed = sig.is_some_and(|sig| device.signed(signed_text(&ask.code).as_bytes(), &sig));
    let label: String = ask.label.trim().chars().take(MAX_LABEL).collect();
    let (now, token, hash) = (office.now(), office.secret::<32>()?, kept(&ask.code));
    rate::count(office, rate::ENROL_FROM, origin)?;
    if !signed {
        let say = "The signature over the code is not that of the device. Scan the code again.";
        return Err(OfficeError::refused(StatusCode::FORBIDDEN, Code::NotSigned, say));
    }
    if device == office.key.device() {
        return Err(refused());
    }
    let sites = office.change(|tx| {
        let used = tx.run(
            "UPDATE code SET used_ms = $1, used_by = $2 WHERE hash = $3 AND expires_ms > $1 \
             AND (used_by IS NULL OR used_by = $2)",
            params![now, device, hash],
        )?;
        if used != 1 {
            return Err(refused());
        }
        let code = tx.rows("SELECT label, made_by FROM code WHERE hash = $1", params![hash])?;
        let row = code.first().ok_or_else(refused)?;
        let (given, made_by) = (row.text(0)?, row.text(1)?);
        let label = if given.is_empty() { label.clone() } else { given };
        tx.run(
            "INSERT INTO device (id, label, token, enrolled_ms, withdrawn_ms, held, last_seq, last_id, heard_ms) \
             VALUES ($1, $2, $3, $4, NULL, 0, 0, $5, $4) \
             ON CONFLICT (id) DO UPDATE SET label = excluded.label, token = excluded.token, \
             enrolled_ms = excluded.enrolled_ms, withdrawn_ms = NULL, heard_ms = excluded.heard_ms",
            params![device, label.as_str(), kept(&token), now, EntryId::NONE],
        )?;
        tx.run(
            "INSERT INTO device_site (device, site) SELECT $1, site.main FROM code_site JOIN site ON site.id = code_site.site \
             WHERE code_site.hash = $2 ON CONFLICT DO NOTHING",
            params![device, hash],
        )?;
        let about = format!("{label}, {:.8}, with a code of {made_by}", device.to_string());
        audit::note(tx, now, "a phone", "phone enrolled", &about, origin)?;
        crate::exchange::sites_of(tx, device)
    })?;
    Ok(Enrolled {
        token,
        office: office.name.clone(),
        sites: sites.into_iter().collect(),
        office_device: Some(office.key.device()),
    })
}
