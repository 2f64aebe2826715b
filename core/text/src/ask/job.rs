//! What is asked about a job as a whole: its set-up, its entries, the work, the shift.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked about a job as a whole: its set-up, its entries, the work, the shift.
    AskJob in Job {
        Title => "ask-job-title",
        Site => "ask-job-site",
        Place => "ask-job-place",
        Equipment => "ask-job-equipment",
        Rules => "ask-job-rules",
        System => "ask-job-system",
        SystemWhy => "ask-job-system-why",
        Own => "ask-job-own",
        StaysLive => "ask-job-stays-live",
        Earth => "ask-job-earth",
        Earthing => "ask-job-earthing",
        Order => "ask-job-order",
        Volts => "ask-job-volts",
        Tolerance => "ask-job-tolerance",
        Reason => "ask-job-reason",
        EntryWrong => "ask-job-entry-wrong",
        AtTheSpot => "ask-job-at-the-spot",
        GiveUpWhy => "ask-job-give-up-why",
        GiveUpClear => "ask-job-give-up-clear",
        ProveFirst => "ask-job-prove-first",
        Clear => "ask-job-clear",
        MetAt => "ask-job-met-at",
        LeftWhy => "ask-job-left-why",
        SourceKind => "ask-job-source-kind",
        SourceWhat => "ask-job-source-what",
        SourceAt => "ask-job-source-at",
        ScopeNew => "ask-job-scope-new",
        ScopeWhy => "ask-job-scope-why",
        NeutralParted => "ask-job-neutral-parted",
        ShiftTo => "ask-job-shift-to",
        ShiftTold => "ask-job-shift-told",
        ShiftOffered => "ask-job-shift-offered",
    }
}
