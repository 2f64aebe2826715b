//! Of what a question is asked, and what that is called.

use crate::job::Job;
use crate::journal::{EntryId, Fact, Stamp};

/// Of what a question is asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Subject {
    /// The job.
    Job,
    /// A point or a source.
    Part(EntryId),
    /// A point of the company's own checklist, by its code.
    Own(String),
}

impl Subject {
    /// What an answer is about.
    pub fn of(fact: &Fact) -> Subject {
        match fact {
            Fact::Answered { point: Some(code), .. } => Subject::Own(code.clone()),
            Fact::Answered { of: Some(id), .. } => Subject::Part(*id),
            _ => Subject::Job,
        }
    }

    /// The point or source, as an entry names it.
    pub fn part(&self) -> Option<EntryId> {
        if let Subject::Part(id) = self { Some(*id) } else { None }
    }

    /// The code of a point of the company's own, as an entry names it.
    pub fn own(&self) -> Option<&str> {
        if let Subject::Own(code) = self { Some(code) } else { None }
    }
}

impl Job {
    /// What a question is asked of, as it is called; `None` where it is asked of the job. A point of the company's own is told in its words.
    pub fn called(&self, of: &Subject) -> Option<String> {
        match of {
            Subject::Job => None,
            Subject::Part(id) => {
                let source = || self.sources.iter().find(|s| s.stamp.id == *id).and_then(|s| s.found.as_ref());
                let called = self.point(*id).map(|p| p.label.clone()).or_else(|| source().map(|f| f.what.clone()));
                Some(called.unwrap_or_default())
            }
            Subject::Own(code) => {
                let point = self.company_point(code);
                Some(point.map_or_else(|| code.clone(), |p| p.text.clone()))
            }
        }
    }

    /// Whether something was done after the work of this round was over, finished or given up.
    pub(super) fn after_work(&self, stamp: &Stamp) -> bool {
        let end = self.finished.as_ref().or(self.given_up.as_ref()).map(|(stamp, _)| stamp);
        end.is_some_and(|end| end.clock < stamp.clock)
    }
}
