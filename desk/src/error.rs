//! Why a command ends without what it was asked for, and the exit code that says so. Each room has its own causes, with the sentence
//! beside each; here they come together.

use crate::calls::{PlanError, RescueError};
use crate::company::CompanyCheckError;
use crate::office::OfficeCommandError;
use crate::photo::PhotoCheckError;
use crate::record::{MakeError, VerifyError};
use crate::start::StartError;
use crate::supply::AskError;
use crate::tag_read::UnreadPhoto;
use crate::tags::NewTagsError;

/// The exit code of what could not be done.
pub const CANNOT: u8 = 1;

/// The exit code of a command that was not understood, or of something wrong that was given with it.
pub const WRONG: u8 = 2;

/// Why a command was not done. As text it is what is printed.
#[derive(Debug, thiserror::Error)]
pub enum CommandError {
    /// The desk or the demo.
    #[error(transparent)]
    Start(#[from] StartError),
    /// The office.
    #[error(transparent)]
    Office(#[from] OfficeCommandError),
    /// A plan or a judgement.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// Tags to print.
    #[error(transparent)]
    NewTags(#[from] NewTagsError),
    /// Some of the photos in which tags were looked for: one line each.
    #[error("{}", .0.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
    UnreadPhotos(Vec<UnreadPhoto>),
    /// A photo to check.
    #[error(transparent)]
    Photo(#[from] PhotoCheckError),
    /// A file of company rules to check.
    #[error(transparent)]
    Company(#[from] CompanyCheckError),
    /// A question to a network.
    #[error(transparent)]
    Supply(#[from] AskError),
    /// A record to write.
    #[error(transparent)]
    Record(#[from] MakeError),
    /// A record to check.
    #[error(transparent)]
    Verify(#[from] VerifyError),
    /// A rescue.
    #[error(transparent)]
    Rescue(#[from] RescueError),
}

impl CommandError {
    /// The exit code.
    pub fn code(&self) -> u8 {
        match self {
            CommandError::Start(_) | CommandError::Office(_) | CommandError::Rescue(_) => CANNOT,
            CommandError::Record(why) => {
                if why.is_given_wrong() {
                    WRONG
                } else {
                    CANNOT
                }
            }
            CommandError::Plan(_)
            | CommandError::NewTags(_)
            | CommandError::UnreadPhotos(_)
            | CommandError::Photo(_)
            | CommandError::Company(_)
            | CommandError::Supply(_)
            | CommandError::Verify(_) => WRONG,
        }
    }
}
