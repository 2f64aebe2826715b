//! The device's key: found, made for a new journal, or refused.

use super::{OpenError, Platform, PlatformError};
use crate::journal::{DeviceId, DeviceKey};
use crate::text::screens::app as said;

/// The device's key. `renew`: the key that is there may not go on, because the end of its chain is not known, unless it is the one of
/// this name, which was begun for this journal. `fresh`: a new one may be made; `name` then keeps its name before it is stored.
pub(super) fn device_key(
    platform: &dyn Platform,
    renew: Option<&str>,
    fresh: bool,
    name: impl FnOnce(&str) -> Result<(), OpenError>,
) -> Result<DeviceKey, OpenError> {
    if let Some(found) = platform.load_secret().map_err(secret)? {
        let found = DeviceKey::from_secret(&found).ok_or_else(wrong_key)?;
        if renew.is_none_or(|begun| found.device().to_string() == begun) {
            return Ok(found);
        }
    }
    // A new key for an old journal would look like another device going on: nobody could tell whether entries are missing.
    if !fresh {
        return Err(wrong_key());
    }
    let fresh = platform.random(32);
    let key = DeviceKey::from_secret(&fresh).ok_or_else(|| OpenError::Secret { what: said::key_no_chance() })?;
    name(&key.device().to_string())?;
    platform.store_secret(fresh).map_err(secret)?;
    Ok(key)
}

/// The device whose key is stored.
pub(super) fn stored_device(platform: &dyn Platform) -> Result<Option<DeviceId>, OpenError> {
    let found = platform.load_secret().map_err(secret)?;
    Ok(found.and_then(|found| DeviceKey::from_secret(&found)).map(|key| key.device()))
}

fn secret(error: PlatformError) -> OpenError {
    OpenError::Secret { what: said::key_unusable(error.to_string()) }
}

pub(super) fn wrong_key() -> OpenError {
    OpenError::Secret { what: said::key_wrong() }
}
