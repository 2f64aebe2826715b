//! What a report says of instruments at work: runs, readings, and what followed.

use super::claim::Claim;
use super::report::{ReportReading, ReportRun, ReportSeen, When};
use super::tell::Teller;
use serde_json::json;
use stillbar_journal::fact::ProvedOn;
use stillbar_journal::{EntryId, Fact, Stamp};
use stillbar_rules::job::Voided;
use stillbar_rules::job::age::Moment;
use stillbar_rules::prove;
use stillbar_text as text;

/// Kinds of readings: the code, and what is printed.
type Kind = (&'static str, &'static str);
const TEST: Kind = ("dead-test", "dead test");
const DC_TEST: Kind = ("dead-test-dc", "dead test, direct voltage");
const DIRECT: Kind = ("direct-voltage", "direct voltage");
/// The supply is back: what is read then is no indication.
pub(super) const SUPPLY_BACK: Kind = ("supply-back", "supply back");

pub(super) fn runs(teller: &Teller) -> Vec<ReportRun> {
    teller.job.runs.iter().enumerate().map(|(i, run)| of_run(teller, i + 1, run)).collect()
}

fn of_run(teller: &Teller, number: usize, run: &prove::Run) -> ReportRun {
    let (job, world) = (teller.job, teller.reader.world);
    let on = |on: &ProvedOn| match on {
        ProvedOn::ProvingUnit(unit) => Claim::of(json!({ "unit": unit.to_string() }), text::instrument(world, *unit)),
        ProvedOn::KnownSource(what) => {
            Claim::of(json!({ "known-source": what }), format!("a source known to be live: {what}"))
        }
    };
    let lit: Vec<&prove::Taken> = run.readings.iter().filter(|t| job.shows(t)).collect();
    let after = run.after();
    let shows = if let Some(failed) = run.proofs.iter().skip(1).find(|p| !p.works) {
        let when = teller.when(&failed.stamp).at;
        let says = format!("Does not count: the indicator failed its proof at {when}. Treat as live.");
        Claim::of(json!({ "indicator-failed": failed.stamp.id.to_string() }), says)
    } else if run.reference().is_some_and(|e| !e.holds) {
        Claim::of("not-earth", text::in_terms("Does not count: the protective conductor is not earth. Treat as live."))
    } else if !lit.is_empty() {
        let pairs: Vec<String> =
            lit.iter().take(6).map(|t| format!("{} – {} {}", t.first, t.then, text::reading(t.reading))).collect();
        let more = if lit.len() > 6 { format!(" and {} more", lit.len() - 6) } else { String::new() };
        Claim::of(json!({ "indication": lit.len() }), format!("Indication: {}{more}. Treat as live.", pairs.join("; ")))
    } else if job.whole(run) && job.limits().ac_mv > 0 {
        let limit = text::reading(prove::Reading::Millivolts(job.limits().ac_mv));
        let says = format!(
            "No pair read more than {limit}, the limit for dead on this job, and the indicator worked before and after."
        );
        Claim::of("within-limit", says)
    } else if job.whole(run) {
        Claim::of("no-indication", "Every pair was read without indication, and the indicator worked before and after.")
    } else if job.unsigned(run) {
        Claim::of("unsigned", "Tested under supervision, and signed by nobody who is not. Treat as live.")
    } else {
        match job.untested(run, &Moment::of(after.map_or(&run.before, |p| &p.stamp))).len() {
            0 => Claim::of(
                "not-all-proved",
                "Every pair was read, but not all that has to be proved with it was. Treat as live.",
            ),
            missing => {
                Claim::of(json!({ "missing": missing }), format!("{missing} pairs were not read. Treat as live."))
            }
        }
    };
    let ended: Option<&Voided> = job.voided.iter().find(|v| v.stamp.clock >= run.before.clock);
    let reference = run.reference();
    let when = |stamp: &Stamp| teller.when(stamp);
    ReportRun {
        number,
        indicator: teller.instrument(run.indicator),
        on: run.on().map_or_else(|| Claim::named(None, ""), on),
        before: when(&run.before),
        reference: reference.map(|e| {
            let shown = text::in_terms(if e.holds { "shown to be earth" } else { "not earth" });
            Claim::of(
                json!({ "holds": e.holds, "way": e.way, "how": e.how }),
                format!("{shown}: {}", text::earth(e.way, &e.how)),
            )
        }),
        reference_when: reference.map(|e| when(&e.stamp)),
        after: after.map(|p| {
            let (works, on) = (if p.works { "works" } else { "does not respond" }, on(&p.on));
            Claim::of(json!({ "works": p.works, "on": on.code() }), format!("{works} on {on}"))
        }),
        after_when: after.map(|p| when(&p.stamp)),
        shows,
        ended: ended.map(|v| Claim::of(v.why.code(), text::ended(&v.why))),
        ended_when: ended.map(|v| when(&v.stamp)),
    }
}

/// Every reading that was taken, withdrawn or not: what was seen once is not made unseen.
pub(super) fn readings(teller: &Teller) -> Vec<ReportReading> {
    let job = teller.job;
    let named = |name: &String| Claim::named(Some(name.clone()), "");
    let number = |run: &EntryId| job.runs.iter().position(|r| r.id() == *run).map(|i| i + 1);
    let mut all: Vec<ReportReading> = Vec::new();
    for entry in teller.own {
        let (run, kind, first, then, reading) = match &entry.body.fact {
            Fact::ReadingTaken { run, first, then, reading, dc } => {
                let kind = if *dc { DC_TEST } else { TEST };
                (number(run), kind, named(first), then.clone(), reading)
            }
            Fact::VoltageMet { at, reading } => {
                (None, ("at-the-work", "at the work"), named(at), String::new(), reading)
            }
            Fact::DischargeRead { run, of, reading } => {
                let what = job.direct().into_iter().find(|(id, ..)| id == of).map(|(_, what, _)| what);
                (number(run), DIRECT, Claim::named(what, "withdrawn"), String::new(), reading)
            }
            Fact::PresenceRead { first, then, reading } => (None, SUPPLY_BACK, named(first), then.clone(), reading),
            _ => continue,
        };
        all.push(ReportReading {
            number: all.len() + 1,
            run,
            kind: Claim::of(kind.0, text::in_terms(kind.1)),
            first,
            then,
            reading: Claim::of(reading, text::reading(*reading)),
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
            | Fact::CompanyHeard { .. }
            | Fact::SourceElsewhere { .. }
            | Fact::PointsParted { .. }
            | Fact::RotationFound { .. }
            | Fact::SupplyAnswered { .. }
            | Fact::AsideAnswered { .. }
            | Fact::WorkFinished { .. }
            | Fact::NeutralParted { .. }
            | Fact::ScopeChanged { .. }
            | Fact::RotationRead { .. } => teller.said(entry),
            _ => continue,
        };
        let when: When = teller.when(&entry.stamp());
        all.push(ReportSeen { says, when });
    }
    all
}
