//! A device's Ed25519 key (RFC 8032). The secret never leaves this type except to the device's own secret store.

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};

use super::DeviceId;

/// The key that signs this device's entries.
pub struct DeviceKey(SigningKey);

impl DeviceKey {
    /// From 32 secret bytes, fresh from the system's source or from the secret store; `None` if there are not 32.
    pub fn from_secret(secret: &[u8]) -> Option<DeviceKey> {
        Some(DeviceKey(SigningKey::from_bytes(secret.try_into().ok()?)))
    }

    /// The public key, which is the device's name.
    pub fn device(&self) -> DeviceId {
        DeviceId(self.0.verifying_key().to_bytes())
    }

    /// 64 bytes of signature over `message`.
    pub fn sign(&self, message: &[u8]) -> [u8; 64] {
        self.0.sign(message).to_bytes()
    }
}

/// What was signed by the one that it is asked of.
pub trait Signed {
    /// Whether `signature` over `message` is theirs. Strict: small-order keys and second spellings are refused.
    fn signed(&self, message: &[u8], signature: &[u8; 64]) -> bool;
}

impl Signed for DeviceId {
    fn signed(&self, message: &[u8], signature: &[u8; 64]) -> bool {
        VerifyingKey::from_bytes(&self.0)
            .is_ok_and(|key| key.verify_strict(message, &Signature::from_bytes(signature)).is_ok())
    }
}
