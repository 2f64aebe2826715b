//! What is asked about locks and keys.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked about locks and keys.
    AskLock in Lock {
        OnJobFirst => "key-not-on-job",
        SecuredInstead => "ask-lock-secured-instead",
        Label => "ask-lock-label",
        Where => "ask-lock-where",
        Key => "ask-lock-key",
        KeyWithOwner => "ask-lock-key-with-owner",
        Means => "ask-lock-means",
        MeansOther => "ask-lock-means-other",
        PadlockMark => "ask-lock-padlock-mark",
        OfferTo => "ask-lock-offer-to",
        OfferFirst => "ask-lock-offer-first",
        CutWhy => "ask-lock-cut-why",
        Authority => "ask-lock-authority",
        AuthorityFirst => "ask-lock-authority-first",
        AuthorityIs => "ask-lock-authority-is",
        AuthorityReached => "ask-lock-authority-reached",
        CannotWait => "ask-lock-cannot-wait",
        NotOnSite => "ask-lock-not-on-site",
        SoughtHow => "ask-lock-sought-how",
        SoughtOutcome => "ask-lock-sought-outcome",
        ToldHow => "ask-lock-told-how",
        Telephone => "ask-lock-telephone",
    }
}
