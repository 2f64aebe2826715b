//! What a report says of instruments at work: runs, readings, and what followed.

use super::report::{ReportReading, ReportRun, ReportSeen, When};
use super::tell::Teller;
use stillbar_journal::fact::ProvedOn;
use stillbar_journal::{EntryId, Fact, Stamp};
use stillbar_rules::job::Voided;
use stillbar_rules::job::age::Moment;
use stillbar_rules::prove;
use stillbar_text as text;

pub(super) fn runs(teller: &Teller) -> Vec<ReportRun> {
    teller.job.runs.iter().enumerate().map(|(i, run)| of_run(teller, i + 1, run)).collect()
}

fn of_run(teller: &Teller, number: usize, run: &prove::Run) -> ReportRun {
    let (job, world) = (teller.job, teller.reader.world);
    let on = |on: &ProvedOn| match on {
        ProvedOn::ProvingUnit(unit) => text::instrument(world, *unit),
        ProvedOn::KnownSource(what) => format!("a source known to be live: {what}"),
    };
    let lit: Vec<&prove::Taken> = run.readings.iter().filter(|t| job.shows(t)).collect();
    let after = run.after();
    let shows = if let Some(failed) = run.proofs.iter().skip(1).find(|p| !p.works) {
        let when = teller.when(&failed.stamp).at;
        format!("Does not count: the indicator failed its proof at {when}. Treat as live.")
    } else if run.reference().is_some_and(|e| !e.holds) {
        "Does not count: the protective conductor is not earth. Treat as live.".into()
    } else if !lit.is_empty() {
        let pairs: Vec<String> =
            lit.iter().take(6).map(|t| format!("{} – {} {}", t.first, t.then, text::reading(t.reading))).collect();
        let more = if lit.len() > 6 { format!(" and {} more", lit.len() - 6) } else { String::new() };
        format!("Indication: {}{more}. Treat as live.", pairs.join("; "))
    } else if job.whole(run) && job.limits().ac_mv > 0 {
        let limit = text::reading(prove::Reading::Millivolts(job.limits().ac_mv));
        format!(
            "No pair read more than {limit}, the limit for dead on this job, and the indicator worked before and after."
        )
    } else if job.whole(run) {
        "Every pair was read without indication, and the indicator worked before and after.".to_owned()
    } else if job.unsigned(run) {
        "Tested under supervision, and signed by nobody who is not. Treat as live.".into()
    } else {
        match job.untested(run, &Moment::of(after.map_or(&run.before, |p| &p.stamp))).len() {
            0 => "Every pair was read, but not all that has to be proved with it was. Treat as live.".into(),
            missing => format!("{missing} pairs were not read. Treat as live."),
        }
    };
    let ended: Option<&Voided> = job.voided.iter().find(|v| v.stamp.clock >= run.before.clock);
    let reference = run.reference();
    let when = |stamp: &Stamp| teller.when(stamp);
    ReportRun {
        number,
        indicator: text::instrument(world, run.indicator),
        on: run.on().map(on).unwrap_or_default(),
        before: when(&run.before),
        reference: reference.map(|e| {
            format!("{}: {}", if e.holds { "shown to be earth" } else { "not earth" }, text::earth(e.way, &e.how))
        }),
        reference_when: reference.map(|e| when(&e.stamp)),
        after: after.map(|p| format!("{} on {}", if p.works { "works" } else { "does not respond" }, on(&p.on))),
        after_when: after.map(|p| when(&p.stamp)),
        shows,
        ended: ended.map(|v| text::ended(&v.why)),
        ended_when: ended.map(|v| when(&v.stamp)),
    }
}

/// Every reading that was taken, withdrawn or not: what was seen once is not made unseen.
pub(super) fn readings(teller: &Teller) -> Vec<ReportReading> {
    let job = teller.job;
    let number = |run: &EntryId| job.runs.iter().position(|r| r.id() == *run).map(|i| i + 1);
    let mut all: Vec<ReportReading> = Vec::new();
    for entry in teller.own {
        let (run, kind, first, then, reading) = match &entry.body.fact {
            Fact::ReadingTaken { run, first, then, reading, dc } => {
                let kind = if *dc { "dead test, direct voltage" } else { "dead test" };
                (number(run), kind, first.clone(), then.clone(), reading)
            }
            Fact::VoltageMet { at, reading } => (None, "at the work", at.clone(), String::new(), reading),
            Fact::DischargeRead { run, of, reading } => {
                let what = job.direct().into_iter().find(|(id, ..)| id == of).map(|(_, what, _)| what);
                (number(run), "direct voltage", what.unwrap_or_else(|| "withdrawn".into()), String::new(), reading)
            }
            Fact::PresenceRead { first, then, reading } => (None, "supply back", first.clone(), then.clone(), reading),
            _ => continue,
        };
        all.push(ReportReading {
            number: all.len() + 1,
            run,
            kind: kind.into(),
            first,
            then,
            reading: text::reading(*reading),
            indicates: job.troubles.iter().any(|t| t.stamp.id == entry.id) || job.shows_voltage(*reading, false),
            withdrawn: teller.withdrawn(entry.id),
            when: teller.when(&entry.stamp()),
        });
    }
    all
}

/// Causes of indications, turns of the work, what was parted, the rotation.
pub(super) fn work(teller: &Teller) -> Vec<ReportSeen> {
    let mut all = Vec::new();
    for entry in teller.own.iter().filter(|e| teller.withdrawn(e.id).is_none()) {
        let says = match &entry.body.fact {
            Fact::CauseNoted { .. }
            | Fact::WorkBegan { .. }
            | Fact::WorkLeft { .. }
            | Fact::WorkStopped {}
            | Fact::GivenUp { .. }
            | Fact::RunSigned { .. }
            | Fact::LimitSet { .. }
            | Fact::SourceElsewhere { .. }
            | Fact::PointsParted { .. }
            | Fact::RotationFound { .. }
            | Fact::SupplyAnswered { .. }
            | Fact::AsideAnswered { .. }
            | Fact::WorkFinished { .. }
            | Fact::NeutralParted { .. }
            | Fact::ScopeChanged { .. }
            | Fact::RotationRead { .. } => text::said(teller.job, entry, teller.reader.world),
            _ => continue,
        };
        let when: When = teller.when(&entry.stamp());
        all.push(ReportSeen { says, when });
    }
    all
}
