//! What an act is about, and what is not there: gone meanwhile, or never.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What an act is about, and what is not there: gone meanwhile, or never.
    Gone in Gone {
        Action => "gone-action",
        Place => "gone-place",
        Job => "gone-job",
        Person => "gone-person",
        Lock => "gone-lock",
        Point => "gone-point",
        PointOfStep => "gone-point-of-step",
        PointKnown => "gone-point-known",
        Part => "gone-part",
        Proposal => "gone-proposal",
        Source => "gone-source",
        PhotoWaiting => "gone-photo-waiting",
        PhotoUnasked => "gone-photo-unasked",
        PhotoNot => "gone-photo-not",
        PhotoOfNothing => "gone-photo-of-nothing",
        Screen => "gone-screen",
        Hand => "gone-hand",
        Journal => "gone-journal",
        Codes => "gone-codes",
        Memory => "gone-memory",
    }
}
