//! What is asked while it is proved dead.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked while it is proved dead.
    AskProve in Prove {
        Cover => "ask-prove-cover",
        NoCovers => "ask-prove-no-covers",
        Indicator => "ask-prove-indicator",
        On => "ask-prove-on",
        Source => "ask-prove-source",
        IndicatorFirst => "ask-prove-indicator-first",
        Reading => "ask-prove-reading",
        Seen => "ask-prove-seen",
        Level => "ask-prove-level",
        Direct => "ask-prove-direct",
        Reference => "ask-prove-reference",
        Cause => "ask-prove-cause",
        CauseSought => "ask-prove-cause-sought",
    }
}
