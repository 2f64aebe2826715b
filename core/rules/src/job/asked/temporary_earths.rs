//! Temporary earths are fitted where the site's rule asks for them: with induced or stored energy, with what may feed back (NFPA 70E 120.6(8);
//! EN 50110-1; at low voltage often left out where the first three rules hold).

use super::*;

pub(super) static QUESTION: Question = Question {
    code: "temporary-earths",
    home: Step::Work,
    arises: |job| {
        let stores = job.stored.iter().any(|s| s.found.is_some());
        let feeds = job.found().next().is_some() || stores || super::coupled::is_coupled(job);
        if feeds && job.finished.is_none() { once(Step::Work) } else { Vec::new() }
    },
    answers: &[plain("fitted"), said("not-asked")],
    // Another round, another look.
    counts: |job, given| job.this_round(&given.stamp) && (given.answer != "fitted" || job.earths_in().next().is_some()),
    before: |fact, _| matches!(fact, Fact::WorkBegan { .. }),
    firm: true,
    in_every_job: InEveryJob::IfRuled,
};
