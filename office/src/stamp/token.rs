//! Time stamps of RFC 3161: what is asked of an authority, and what its answer proves.

use std::time::Duration;

use cms::content_info::ContentInfo;
use cms::signed_data::{SignedData, SignerIdentifier, SignerInfo};
use const_oid::ObjectIdentifier as Oid;
use der::asn1::{AnyRef, Int, IntRef, OctetString, OctetStringRef};
use der::{Decode, Encode, Reader, Sequence, SliceReader, Tag, Tagged};
use sha2::{Digest, Sha256, Sha384, Sha512};
use tokio_rustls::rustls::pki_types::{CertificateDer, TrustAnchor, UnixTime};
use x509_cert::Certificate;
use x509_cert::ext::pkix::SubjectKeyIdentifier;
use x509_cert::spki::AlgorithmIdentifierOwned;

use super::merkle::Hash;

/// Bytes of an answer at most; those with long chains of certificates have about 10 KiB.
pub const MAX_BYTES: usize = 64 * 1024;

const SHA256: Oid = Oid::new_unwrap("2.16.840.1.101.3.4.2.1");
const SHA384: Oid = Oid::new_unwrap("2.16.840.1.101.3.4.2.2");
const SHA512: Oid = Oid::new_unwrap("2.16.840.1.101.3.4.2.3");
const SIGNED_DATA: Oid = Oid::new_unwrap("1.2.840.113549.1.7.2");
const TST_INFO: Oid = Oid::new_unwrap("1.2.840.113549.1.9.16.1.4");
const CONTENT_TYPE: Oid = Oid::new_unwrap("1.2.840.113549.1.9.3");
const MESSAGE_DIGEST: Oid = Oid::new_unwrap("1.2.840.113549.1.9.4");
const RSA: [&str; 4] =
    ["1.2.840.113549.1.1.1", "1.2.840.113549.1.1.11", "1.2.840.113549.1.1.12", "1.2.840.113549.1.1.13"];
const ECDSA: [&str; 2] = ["1.2.840.10045.4.3.2", "1.2.840.10045.4.3.3"];
const P256: Oid = Oid::new_unwrap("1.2.840.10045.3.1.7");
/// id-kp-timeStamping, 1.3.6.1.5.5.7.3.8, as it stands in a certificate.
const FOR_TIME_STAMPS: &[u8] = &[0x2B, 6, 1, 5, 5, 7, 3, 8];

/// What a time stamp says, once its own signature was seen to hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stamped {
    /// When, milliseconds since 1970-01-01T00:00Z.
    pub at_ms: i64,
    /// Who signed it, as their certificate names them.
    pub by: String,
    /// The number that was sent along, if one comes back.
    pub nonce: Option<Vec<u8>>,
    /// Whether the certificate leads to one of the authorities that were given, and is for time stamps.
    pub trusted: bool,
}

/// Why there is no time stamp to believe.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TokenError {
    /// The question could not be written.
    #[error("The question for a time stamp could not be written: {0}.")]
    Question(#[source] der::Error),
    /// The answer is none of RFC 3161.
    #[error("The authority's answer is no time stamp (RFC 3161).")]
    Answer,
    /// The authority says no, with this status.
    #[error("The authority refused a time stamp: status {0:?}.")]
    Refused(Vec<u8>),
    /// The number that was sent along does not come back.
    #[error("The authority's answer is one to another question.")]
    OtherQuestion,
    /// More than [`MAX_BYTES`].
    #[error("A time stamp has at most {MAX_BYTES} bytes.")]
    TooLong,
    /// It is no token, or its content is of another kind.
    #[error("This is no time stamp (RFC 3161, RFC 5652).")]
    Form,
    /// Nobody signed it.
    #[error("The time stamp is not signed.")]
    Unsigned,
    /// Something else is signed.
    #[error("This is no time stamp.")]
    OtherContent,
    /// None signed it, or several.
    #[error("A time stamp has one signer.")]
    Signers,
    /// The certificate that its signer names is not in it.
    #[error("The time stamp does not bring its signer's certificate.")]
    NoCertificate,
    /// What it says cannot be read.
    #[error("The time stamp's content cannot be read (RFC 3161 section 2.4.2).")]
    Content,
    /// It stamps another root.
    #[error("The time stamp is one of something else.")]
    OtherRoot,
    /// Its time cannot be read.
    #[error("The time stamp's time cannot be read.")]
    Time,
    /// The signature does not hold.
    #[error("The signature of the time stamp does not hold.")]
    Signature,
    /// The signature is made in a way that is not known here.
    #[error("The time stamp is signed in a way that is not known here.")]
    Way,
}

#[derive(Sequence)]
struct Imprint {
    algorithm: AlgorithmIdentifierOwned,
    hashed: OctetString,
}

#[derive(Sequence)]
struct Query {
    version: u8,
    imprint: Imprint,
    nonce: Int,
    with_certificates: bool,
}

/// What is sent to an authority (section 2.4.1), asking for its certificates along with the stamp.
pub fn query(root: &Hash, nonce: &[u8; 8]) -> Result<Vec<u8>, TokenError> {
    let failed = TokenError::Question;
    let imprint = Imprint {
        algorithm: AlgorithmIdentifierOwned { oid: SHA256, parameters: Some(der::Any::null()) },
        hashed: OctetString::new(root.as_slice()).map_err(failed)?,
    };
    let nonce = Int::new(&positive(nonce)).map_err(failed)?;
    Query { version: 1, imprint, nonce, with_certificates: true }.to_der().map_err(failed)
}

/// The shortest bytes of a number that is not negative.
fn positive(nonce: &[u8; 8]) -> Vec<u8> {
    let number = u64::from_be_bytes(*nonce) >> 1;
    let bytes = number.to_be_bytes();
    let first = bytes.iter().position(|b| *b != 0).unwrap_or(7);
    let mut out = bytes[first..].to_vec();
    if out[0] & 0x80 != 0 {
        out.insert(0, 0);
    }
    out
}

/// The token in an authority's answer (section 2.4.2), if it stamps this root and brings this number back.
pub fn answer(bytes: &[u8], root: &Hash, nonce: &[u8; 8]) -> Result<Vec<u8>, TokenError> {
    let garbled = |_| TokenError::Answer;
    let mut reader = SliceReader::new(bytes).map_err(garbled)?;
    let whole = AnyRef::decode(&mut reader).map_err(garbled)?;
    let mut inside = SliceReader::new(whole.value()).map_err(garbled)?;
    let status = AnyRef::decode(&mut inside).map_err(garbled)?;
    let mut said = SliceReader::new(status.value()).map_err(garbled)?;
    let granted = IntRef::decode(&mut said).map_err(garbled)?;
    if !matches!(granted.as_bytes(), [0 | 1]) {
        return Err(TokenError::Refused(granted.as_bytes().to_vec()));
    }
    let token = inside.read_slice(inside.remaining_len()).map_err(garbled)?.to_vec();
    let stamped = check(&token, root, &[])?;
    if stamped.nonce.as_deref() != Some(&positive(nonce)[..]) {
        return Err(TokenError::OtherQuestion);
    }
    Ok(token)
}

/// What a token proves of `root`. `authorities` are certificates in DER; without one that fits, the stamp is not trusted, and says so.
pub fn check(token: &[u8], root: &Hash, authorities: &[Vec<u8>]) -> Result<Stamped, TokenError> {
    if token.len() > MAX_BYTES {
        return Err(TokenError::TooLong);
    }
    let garbled = |_| TokenError::Form;
    let info = ContentInfo::from_der(token).map_err(garbled)?;
    if info.content_type != SIGNED_DATA {
        return Err(TokenError::Unsigned);
    }
    let signed: SignedData = info.content.decode_as().map_err(garbled)?;
    let inside = &signed.encap_content_info;
    let content = inside.econtent.as_ref().filter(|_| inside.econtent_type == TST_INFO);
    let content = content.ok_or(TokenError::OtherContent)?.decode_as::<OctetString>().map_err(garbled)?;
    let said = read(content.as_bytes(), root)?;
    let [signer] = signed.signer_infos.0.as_slice() else { return Err(TokenError::Signers) };
    let held: Vec<&Certificate> = signed.certificates.iter().flat_map(|c| c.0.iter()).filter_map(certificate).collect();
    let by = held.iter().find(|c| names(&signer.sid, c)).ok_or(TokenError::NoCertificate)?;
    signature_holds(signer, content.as_bytes(), by)?;
    let trusted = leads_to(by, &held, said.at_ms, authorities);
    Ok(Stamped { by: by.tbs_certificate().subject().to_string(), trusted, ..said })
}

fn certificate(choice: &cms::cert::CertificateChoices) -> Option<&Certificate> {
    match choice {
        cms::cert::CertificateChoices::Certificate(certificate) => Some(certificate),
        _ => None,
    }
}

fn names(signer: &SignerIdentifier, certificate: &Certificate) -> bool {
    let tbs = certificate.tbs_certificate();
    match signer {
        SignerIdentifier::IssuerAndSerialNumber(id) => {
            id.issuer == *tbs.issuer() && id.serial_number == *tbs.serial_number()
        }
        SignerIdentifier::SubjectKeyIdentifier(id) => {
            tbs.get_extension::<SubjectKeyIdentifier>().ok().flatten().is_some_and(|(_, found)| found == *id)
        }
    }
}

/// TSTInfo, section 2.4.2. `by` and `trusted` are told later.
fn read(bytes: &[u8], root: &Hash) -> Result<Stamped, TokenError> {
    let garbled = |_| TokenError::Content;
    let mut reader = SliceReader::new(bytes).map_err(garbled)?;
    let whole = AnyRef::decode(&mut reader).map_err(garbled)?;
    let mut inside = SliceReader::new(whole.value()).map_err(garbled)?;
    let _version = IntRef::decode(&mut inside).map_err(garbled)?;
    let _policy = AnyRef::decode(&mut inside).map_err(garbled)?;
    let imprint = Imprint::decode(&mut inside).map_err(garbled)?;
    if imprint.algorithm.oid != SHA256 || imprint.hashed.as_bytes() != root {
        return Err(TokenError::OtherRoot);
    }
    let _serial = IntRef::decode(&mut inside).map_err(garbled)?;
    let time = AnyRef::decode(&mut inside).map_err(garbled)?;
    let at_ms = (time.tag() == Tag::GeneralizedTime).then(|| moment(time.value())).flatten();
    let at_ms = at_ms.ok_or(TokenError::Time)?;
    let mut nonce = None;
    // Accuracy, order, number, name and more may follow; of these only the number counts here.
    while !inside.is_finished() {
        let part = AnyRef::decode(&mut inside).map_err(garbled)?;
        if part.tag() == Tag::Integer {
            nonce = Some(part.value().to_vec());
        }
    }
    Ok(Stamped { at_ms, by: String::new(), nonce, trusted: false })
}

/// `YYYYMMDDhhmmss[.s…]Z` (section 2.4.2), in milliseconds since 1970-01-01T00:00Z.
fn moment(text: &[u8]) -> Option<i64> {
    let text = std::str::from_utf8(text).ok()?.strip_suffix('Z')?;
    let (whole, fraction) = text.split_once('.').unwrap_or((text, ""));
    if whole.len() != 14 || !whole.bytes().chain(fraction.bytes()).all(|b| b.is_ascii_digit()) {
        return None;
    }
    let part = |from: usize, to: usize| whole[from..to].parse::<u16>().ok();
    let small = |from: usize| whole[from..from + 2].parse::<u8>().ok();
    let at = der::DateTime::new(part(0, 4)?, small(4)?, small(6)?, small(8)?, small(10)?, small(12)?).ok()?;
    let seconds = i64::try_from(at.unix_duration().as_secs()).ok()?;
    let milliseconds: i64 = format!("{fraction:0<3}")[..3].parse().ok()?;
    Some(seconds * 1000 + milliseconds)
}

/// RFC 5652 section 5.4: the signature is over the signed attributes, and these name the content by its hash.
fn signature_holds(signer: &SignerInfo, content: &[u8], by: &Certificate) -> Result<(), TokenError> {
    let attributes = signer.signed_attrs.as_ref().ok_or(TokenError::Signature)?;
    let one = |oid: Oid| {
        let found = attributes.iter().find(|a| a.oid == oid)?;
        match found.values.as_slice() {
            [value] => Some(value.clone()),
            _ => None,
        }
    };
    let kind = one(CONTENT_TYPE).and_then(|v| v.decode_as::<Oid>().ok());
    let digest = one(MESSAGE_DIGEST).ok_or(TokenError::Signature)?;
    let digest = digest.decode_as::<&OctetStringRef>().map_err(|_| TokenError::Signature)?.as_bytes().to_vec();
    let hash = match signer.digest_alg.oid {
        SHA256 => Sha256::digest(content).to_vec(),
        SHA384 => Sha384::digest(content).to_vec(),
        SHA512 => Sha512::digest(content).to_vec(),
        _ => return Err(TokenError::Way),
    };
    if kind != Some(TST_INFO) || digest != hash {
        return Err(TokenError::Signature);
    }
    let bytes = attributes.to_der().map_err(|_| TokenError::Signature)?;
    let key = by.tbs_certificate().subject_public_key_info();
    let algorithm = signer.signature_algorithm.oid.to_string();
    let way: &dyn ring::signature::VerificationAlgorithm = if RSA.contains(&algorithm.as_str()) {
        // Named by the digest where the algorithm is plain RSA (RFC 5754 section 3.2).
        match (algorithm.as_str(), signer.digest_alg.oid) {
            ("1.2.840.113549.1.1.12", _) | ("1.2.840.113549.1.1.1", SHA384) => {
                &ring::signature::RSA_PKCS1_2048_8192_SHA384
            }
            ("1.2.840.113549.1.1.13", _) | ("1.2.840.113549.1.1.1", SHA512) => {
                &ring::signature::RSA_PKCS1_2048_8192_SHA512
            }
            _ => &ring::signature::RSA_PKCS1_2048_8192_SHA256,
        }
    } else if ECDSA.contains(&algorithm.as_str()) {
        let curve = key.algorithm.parameters.as_ref().and_then(|p| p.decode_as::<Oid>().ok());
        match (curve == Some(P256), algorithm == ECDSA[0]) {
            (true, true) => &ring::signature::ECDSA_P256_SHA256_ASN1,
            (true, false) => &ring::signature::ECDSA_P256_SHA384_ASN1,
            (false, true) => &ring::signature::ECDSA_P384_SHA256_ASN1,
            (false, false) => &ring::signature::ECDSA_P384_SHA384_ASN1,
        }
    } else {
        return Err(TokenError::Way);
    };
    let key = key.subject_public_key.as_bytes().ok_or(TokenError::Signature)?;
    let key = ring::signature::UnparsedPublicKey::new(way, key);
    key.verify(&bytes, signer.signature.as_bytes()).map_err(|_| TokenError::Signature)
}

/// Whether a certificate led to an authority at that time, and is one for time stamps (RFC 3161 section 2.3).
fn leads_to(by: &Certificate, held: &[&Certificate], at_ms: i64, authorities: &[Vec<u8>]) -> bool {
    let der = |c: &Certificate| c.to_der().map(CertificateDer::from).ok();
    let Some(own) = der(by) else { return false };
    let between: Vec<CertificateDer> = held.iter().filter_map(|c| der(c)).collect();
    let given: Vec<CertificateDer> = authorities.iter().map(|a| CertificateDer::from(a.as_slice())).collect();
    let anchors: Vec<TrustAnchor> = given.iter().filter_map(|c| webpki::anchor_from_trusted_cert(c).ok()).collect();
    let Ok(end) = webpki::EndEntityCert::try_from(&own) else { return false };
    let at = UnixTime::since_unix_epoch(Duration::from_millis(u64::try_from(at_ms).unwrap_or(0)));
    let use_of = webpki::KeyUsage::required(FOR_TIME_STAMPS);
    end.verify_for_usage(webpki::ALL_VERIFICATION_ALGS, &anchors, &between, at, use_of, None, None).is_ok()
}
