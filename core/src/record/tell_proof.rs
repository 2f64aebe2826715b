//! What a report says of instruments at work: runs, readings, and what followed.

use super::report::{Reading, Run, Seen, When};
use super::tell::Teller;
use crate::journal::fact::ProvedOn;
use crate::journal::{EntryId, Fact, Stamp};
use crate::prove::{self, Standing, Voided};

pub(super) fn runs(teller: &Teller) -> Vec<Run> {
    teller.job.runs.iter().enumerate().map(|(i, run)| of_run(teller, i + 1, run)).collect()
}

fn of_run(teller: &Teller, number: usize, run: &prove::Run) -> Run {
    let (job, world) = (teller.job, teller.look.world);
    let on = |on: &ProvedOn| match on {
        ProvedOn::ProvingUnit(unit) => world.instrument(*unit),
        ProvedOn::KnownSource => "a known live source".into(),
    };
    let shows = match run.standing(&job.plan(), job.dead_limit, &[]) {
        Standing::Proved { .. } if job.dead_limit > 0 => {
            let limit = prove::Reading::Millivolts(job.dead_limit).word();
            format!(
                "No pair read more than {limit}, the limit for dead on this job, and the indicator worked before and after."
            )
        }
        Standing::Proved { .. } => {
            "Every pair was read without indication, and the indicator worked before and after.".to_owned()
        }
        Standing::Indication { readings } => {
            let pairs: Vec<String> =
                readings.iter().take(6).map(|t| format!("{} – {} {}", t.first, t.then, t.reading.word())).collect();
            let more = if readings.len() > 6 { format!(" and {} more", readings.len() - 6) } else { String::new() };
            format!("Indication: {}{more}. Treat as live.", pairs.join("; "))
        }
        Standing::Void { why } => format!("Worth nothing. {why} Treat as live."),
        Standing::UnderWay { missing: 0 } => {
            "Every pair was read, but not all that has to be proved with it was. Treat as live.".into()
        }
        Standing::UnderWay { missing } => format!("{missing} pairs were not read. Treat as live."),
        Standing::NotBegun => "Nothing was proved. Treat as live.".into(),
    };
    let ended: Option<&Voided> = job.voided.iter().find(|v| v.stamp.clock >= run.before.clock);
    let reference = run.reference.as_ref();
    let after = run.after.as_ref();
    let when = |stamp: &Stamp| teller.when(stamp);
    Run {
        number,
        indicator: world.instrument(run.indicator),
        on: on(&run.on),
        before: when(&run.before),
        reference: reference
            .map(|(_, how, holds)| format!("{}: {how}", if *holds { "shown to be earth" } else { "not earth" })),
        reference_when: reference.map(|(stamp, ..)| when(stamp)),
        after: after.map(|(_, proved, works)| {
            format!("{} on {}", if *works { "works" } else { "does not respond" }, on(proved))
        }),
        after_when: after.map(|(stamp, ..)| when(stamp)),
        shows,
        ended: ended.map(|v| v.why.clone()),
        ended_when: ended.map(|v| when(&v.stamp)),
    }
}

/// Every reading that was taken, withdrawn or not: what was seen once is not made unseen.
pub(super) fn readings(teller: &Teller) -> Vec<Reading> {
    let job = teller.job;
    let number = |run: &EntryId| job.runs.iter().position(|r| r.id() == *run).map(|i| i + 1);
    let mut all: Vec<Reading> = Vec::new();
    for entry in teller.own {
        let (run, kind, first, then, reading) = match &entry.body.fact {
            Fact::ReadingTaken { run, first, then, reading } => {
                (number(run), "dead test", first.clone(), then.clone(), reading)
            }
            Fact::DischargeRead { run, of, reading } => {
                let what = job.direct().into_iter().find(|(id, ..)| id == of).map(|(_, what, _)| what);
                (number(run), "direct voltage", what.unwrap_or_else(|| "withdrawn".into()), String::new(), reading)
            }
            Fact::PresenceRead { first, then, reading } => (None, "supply back", first.clone(), then.clone(), reading),
            _ => continue,
        };
        all.push(Reading {
            number: all.len() + 1,
            run,
            kind: kind.into(),
            first,
            then,
            reading: reading.word(),
            indicates: reading.indicates(job.dead_limit),
            withdrawn: teller.withdrawn(entry.id),
            when: teller.when(&entry.stamp()),
        });
    }
    all
}

/// Causes of indications, turns of the work, what was parted, the rotation.
pub(super) fn work(teller: &Teller) -> Vec<Seen> {
    let mut all = Vec::new();
    for entry in teller.own.iter().filter(|e| teller.withdrawn(e.id).is_none()) {
        let says = match &entry.body.fact {
            Fact::CauseNoted { .. }
            | Fact::WorkBegan { .. }
            | Fact::WorkLeft { .. }
            | Fact::WorkFinished { .. }
            | Fact::NeutralParted { .. }
            | Fact::ScopeChanged { .. }
            | Fact::RotationRead { .. } => crate::screens::said(teller.look, teller.job, &entry.body.fact),
            _ => continue,
        };
        let when: When = teller.when(&entry.stamp());
        all.push(Seen { says, when });
    }
    all
}
