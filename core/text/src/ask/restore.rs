//! What is asked while the supply comes back.

use super::{AskFirst, asks};
use crate::catalogue::say;

asks! {
    /// What is asked while the supply comes back.
    AskRestore in Restore {
        WarnedWho => "ask-restore-warned-who",
        WarnedHow => "ask-restore-warned-how",
        Beside => "ask-restore-beside",
        BackTo => "ask-restore-back-to",
        Reading => "ask-restore-reading",
        Rotation => "ask-restore-rotation",
        RotationGuard => "ask-restore-rotation-guard",
        RotationHow => "ask-restore-rotation-how",
        Odd => "ask-restore-odd",
        Answer => "ask-restore-answer",
        AnswerWho => "ask-restore-answer-who",
        AnswerHow => "ask-restore-answer-how",
    }
}
