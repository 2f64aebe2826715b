//! What is asked while a point is opened and secured, about its photos and its tags too.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked while a point is opened and secured, about its photos and its tags too.
    AskIsolate in Isolate {
        Apart => "ask-isolate-apart",
        OffLoad => "ask-isolate-off-load",
        Found => "ask-isolate-found",
        Seen => "ask-isolate-seen",
        PhotoWhy => "ask-isolate-photo-why",
        TagMovedWhy => "ask-isolate-tag-moved-why",
        TagGone => "tag-gone-unsaid",
    }
}
