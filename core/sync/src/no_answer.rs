//! Why no answer came, in words for whoever holds the phone or looks after the office, without the system's own numbers.

use std::io::ErrorKind;

use ureq::Error;

/// What a person can make of a call that brought no answer; a part of a sentence.
pub fn no_answer(error: &Error) -> String {
    match error {
        Error::Timeout(_) => "no answer in time".into(),
        Error::HostNotFound => "its address is not known, or there is no signal".into(),
        Error::ConnectionFailed => "no connection".into(),
        Error::RequireHttpsOnly(_) => "its address is not one of TLS".into(),
        Error::BodyExceedsLimit(_) => "the answer is too long".into(),
        Error::Io(e) => match e.kind() {
            ErrorKind::ConnectionRefused => "nothing answers at its address".into(),
            ErrorKind::NetworkDown | ErrorKind::NetworkUnreachable | ErrorKind::HostUnreachable => "no signal".into(),
            ErrorKind::TimedOut | ErrorKind::WouldBlock => "no answer in time".into(),
            ErrorKind::ConnectionReset
            | ErrorKind::ConnectionAborted
            | ErrorKind::BrokenPipe
            | ErrorKind::UnexpectedEof => "the connection broke off".into(),
            // TLS comes as an error of this kind, and its words name the certificate.
            ErrorKind::InvalidData => e.to_string(),
            ErrorKind::PermissionDenied => "this device lets nothing out to it".into(),
            _ => "the connection failed".into(),
        },
        other => other.to_string(),
    }
}
