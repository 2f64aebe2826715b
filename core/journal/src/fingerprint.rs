//! What names the rules of a company, whatever it calls them.

use sha2::{Digest, Sha256};
use stillbar_values::CompanyRules;

use super::cbor;

/// SHA-256, in hex, of rules in deterministic CBOR: the very bytes that stand in the entry of a job that was opened with them. Blanks, the
/// order of fields and whom to call change nothing in it.
pub fn fingerprint(rules: &CompanyRules) -> String {
    // Texts, whole numbers and truth values: they can always be written.
    let bytes = cbor::encode(rules).unwrap_or_default();
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}
