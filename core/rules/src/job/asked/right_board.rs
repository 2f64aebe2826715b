//! Is it the right switch? What it feeds was seen live without opening anything, and goes dead with it (HSG85; NFPA 70E; common practice).
//!
//! That it could not be shown is an answer, and stands on the record: nobody is made to say what was not seen.

use super::*;

impl Job {
    /// Whether something has to be answered before this point is opened.
    pub fn asked_before_opening(&self, point: EntryId) -> bool {
        QUESTION.open(self, &Subject::Part(point)).is_some()
            && (QUESTION.arises)(self).iter().any(|asked| asked.of == Subject::Part(point))
    }

    /// Whether what a point feeds was seen live before it was opened.
    pub fn shown_live(&self, point: EntryId) -> bool {
        QUESTION.answered(self, &Subject::Part(point)).is_some_and(|given| given.answer == "seen-live")
    }
}

pub(super) static QUESTION: Question = Question {
    code: "right-board",
    home: Step::OpenUp,
    arises: |job| {
        let normal = job.points.iter().filter(|p| p.cuts.is_none());
        normal.map(|p| Asked { step: Some(Step::Isolate(p.stamp.id)), of: Subject::Part(p.stamp.id) }).collect()
    },
    answers: &[said("seen-live"), said("traced"), stands("not-shown")],
    // What the switch feeds does not change with the scope.
    counts: |_, _| true,
    before: |fact, of| matches!(fact, Fact::PointOpened { point, .. } if Some(*point) == of.part()),
    firm: true,
    in_every_job: InEveryJob::Never,
};
