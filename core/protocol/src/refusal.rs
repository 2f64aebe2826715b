//! What is answered with an error.

use serde::{Deserialize, Serialize};

/// Why a call was not answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "schema", derive(utoipa::ToSchema))]
pub struct Refusal {
    /// A word for a program.
    #[cfg_attr(feature = "schema", schema(required = true))]
    pub error: Code,
    /// A sentence that says what to do.
    #[cfg_attr(feature = "schema", schema(required = true))]
    pub say: String,
}

impl Default for Refusal {
    /// One that says nothing.
    fn default() -> Refusal {
        Refusal { error: Code::Unknown, say: String::new() }
    }
}

words! {
    /// The words of refusals and faults.
    Code,
    /// A word of a newer office: the call was not done.
    else Unknown:
    /// What was sent cannot be understood.
    Unreadable "unreadable",
    /// There is no such thing here, or it is not the caller's to see.
    NotFound "not-found",
    /// The store does not answer now. Nothing was kept.
    Busy "busy",
    /// Something in the office is broken. Nothing was kept.
    Fault "fault",
    /// No phone has this token.
    NotEnrolled "not-enrolled",
    /// The phone was withdrawn.
    DeviceWithdrawn "device-withdrawn",
    /// The code is used up, too old, or never was.
    CodeNotValid "code-not-valid",
    /// The signature is not the device's.
    NotSigned "not-signed",
    /// Too many tries.
    TooManyTries "too-many-tries",
    /// More entries than are taken at once.
    TooMany "too-many",
    /// More bytes than are taken.
    TooLarge "too-large",
    /// A text is longer than is kept.
    TooLong "too-long",
    /// What was sent ended before its end.
    BrokeOff "broke-off",
    /// A content encoding that is not known.
    Encoding "encoding",
    /// The body is not JSON by its kind.
    NotJson "not-json",
    /// The office's own entries come from nobody else.
    NotYours "not-yours",
    /// More devices that are not enrolled than are looked after.
    TooManyStrangers "too-many-strangers",
    /// Another version of tus.
    TusVersion "tus-version",
    /// The body is not of an upload by its kind.
    NotOctets "not-octets",
    /// The upload is at another byte.
    WrongOffset "wrong-offset",
    /// The bytes of this call do not have the checksum.
    Checksum "checksum",
    /// The bytes of the upload are not the photo.
    NotThisPhoto "not-this-photo",
    /// No entry names the photo.
    NotNamed "not-named",
    /// Too many uploads at once.
    TooManyUploads "too-many-uploads",
    /// The photo ends before the range.
    Range "range",
    /// A post from another page.
    ForeignOrigin "foreign-origin",
    /// A form of an earlier session.
    OldForm "old-form",
    /// Nobody is signed in, or name and password do not fit each other.
    NotSignedIn "not-signed-in",
    /// The role does not reach so far.
    NotAllowed "not-allowed",
    /// The password has to be changed first.
    FreshPassword "fresh-password",
    /// The job has nothing to record yet.
    NoRecordYet "no-record-yet",
    /// A lock of that person is on.
    LockOn "lock-on",
}
