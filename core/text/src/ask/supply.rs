//! What is asked about a site's supply network.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked about a site's supply network.
    AskSupply in Supply {
        Zone => "ask-supply-zone",
        Ways => "ask-supply-ways",
        WaysWhy => "ask-supply-ways-why",
        FedFrom => "ask-supply-fed-from",
        From => "ask-supply-from",
        To => "ask-supply-to",
        GoneHow => "part-gone-unsaid",
        Kind => "ask-supply-kind",
        LinkKind => "ask-supply-link-kind",
        Lockable => "ask-supply-lockable",
        Normally => "ask-supply-normally",
        Name => "ask-supply-name",
    }
}
