//! Points of a company's own checklist: asked like questions, in the company's words, each before what it has to be answered before. What a
//! company asks beside ours is as firm as ours; where it allows that, somebody says why a point does not apply.

use super::*;
use stillbar_values::company::OwnStage;

/// The answer that only a point takes which may be skipped.
const DOES_NOT_APPLY: &str = "does-not-apply";
static ANSWERS: [Answer; 3] = [plain("done"), said(DOES_NOT_APPLY), stops("not-as-it-should-be")];

pub(super) static ISOLATE: Question = Question {
    code: "company-isolate",
    home: Step::Shed,
    arises: |job| of(job, OwnStage::Isolate, Step::Shed),
    answers: &ANSWERS,
    // Another scope, another look.
    counts: |job, given| job.this_round(&given.stamp),
    before: |fact, _| matches!(fact, Fact::PointOpened { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};

pub(super) static WORK: Question = Question {
    code: "company-work",
    home: Step::Work,
    arises: |job| if job.finished.is_some() { Vec::new() } else { of(job, OwnStage::Work, Step::Work) },
    answers: &ANSWERS,
    counts: |job, given| job.this_round(&given.stamp),
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};

pub(super) static RESTORE: Question = Question {
    code: "company-restore",
    home: Step::Warn,
    arises: |job| of(job, OwnStage::Restore, Step::Warn),
    answers: &ANSWERS,
    counts: |job, given| job.after_work(&given.stamp),
    before: |fact, _| matches!(fact, Fact::PointClosed { .. }),
    firm: true,
    in_every_job: InEveryJob::Never,
};

/// The points of a stage in this job.
fn of(job: &Job, stage: OwnStage, step: Step) -> Vec<Asked> {
    let points = job.company_all().flat_map(|company| &company.points).filter(|p| p.stage == stage);
    let mut all: Vec<Asked> = Vec::new();
    for asked in points.map(|p| Asked { step: Some(step), of: Subject::Own(p.code.clone()) }) {
        // One code is one point, also where two versions have it.
        if !all.iter().any(|other| other.of == asked.of) {
            all.push(asked);
        }
    }
    all
}

/// Whether this subject takes an answer: one that does not apply has to be one that may be skipped.
pub(super) fn takes(job: &Job, of: &Subject, answer: &str) -> bool {
    let point = || if let Subject::Own(code) = of { job.company_point(code) } else { None };
    answer != DOES_NOT_APPLY || point().is_some_and(|p| p.skippable)
}
