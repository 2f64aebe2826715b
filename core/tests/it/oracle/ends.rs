//! What ends a proof, and what keeps it away until it is answered.

use std::collections::BTreeSet;

use stillbar_core::journal::fact::On;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::Reading;

use super::alike::says_something;
use super::known::Known;
use super::points::like;
use super::promise::Ask;
use super::questions::bars;
use super::runs::{Run, in_force};

/// What happened in a job that ends whatever was proved before, or without knowing of it.
pub fn of<'a>(known: &Known<'a>, job: EntryId) -> Vec<(&'a Entry, &'static str)> {
    known.of(job).filter_map(|e| Some((e, ends(known, e)?))).collect()
}

fn ends(known: &Known, e: &Entry) -> Option<&'static str> {
    let on_a_point = |lock: &EntryId| match known.get(*lock).map(|e| &e.body.fact) {
        Some(Fact::LockFitted { on, .. }) => matches!(on, On::Point(_)),
        _ => true,
    };
    match &e.body.fact {
        // "A further cover off, also during work; a source, control supply or stored energy found in this job".
        Fact::CoverOff { .. } => Some("a cover came off"),
        Fact::SourceAnswered { found: Some(_), .. } => Some("a source was found"),
        Fact::StoredAnswered { found: Some(_), .. } => Some("stored energy was found"),
        // "In a job only the person in charge changes it, naming the rule; that ends the proof."
        Fact::LimitSet { .. } => Some("the limit was changed"),
        // "A proof ends with a shift change and when the work is left."
        Fact::ShiftTaken { .. } => Some("the shift changed"),
        // "The work is left or stopped."
        Fact::WorkLeft { .. } => Some("the work was left"),
        Fact::WorkStopped {} => Some("the work was stopped"),
        // "As soon as a lock comes off, a source or point is added, a neutral is parted, the scope changes, an entry is withdrawn."
        Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => on_a_point(lock).then_some("a lock came off"),
        Fact::PointAdded { .. } => Some("a point was added"),
        Fact::NeutralParted { .. } => Some("a neutral was parted"),
        Fact::ScopeChanged { .. } => Some("the scope changed"),
        // "The entry says what is there and why, the proof ends."
        Fact::SystemCorrected { .. } => Some("the conductors were corrected"),
        Fact::Withdrawn { .. } => Some("an entry was withdrawn"),
        Fact::PointClosed { .. } => Some("a point was closed"),
        Fact::GivenUp { .. } => Some("the isolation was given up"),
        // "A temporary earth comes off", "something is named as staying live".
        Fact::EarthRemoved { earth } => {
            let fitted = matches!(known.get(*earth).map(|e| &e.body.fact), Some(Fact::EarthFitted { .. }));
            fitted.then_some("a temporary earth came off")
        }
        Fact::StaysLive { .. } => Some("something was named as staying live"),
        // "It stops: every proof before it is over."
        Fact::Answered { .. } => bars(e),
        Fact::WorkFinished { .. } | Fact::HandedBack { .. } => Some("the work is finished"),
        _ => None,
    }
}

/// Entries about this job that are kept aside, and that nobody has looked into.
pub fn asides(ask: &Ask) -> Result<(), String> {
    let points: Vec<BTreeSet<EntryId>> = ask.points.iter().map(|(p, _)| like(ask.known, p.id)).collect();
    for aside in &ask.known.aside {
        let answered =
            ask.valid().any(|e| matches!(e.body.fact, Fact::AsideAnswered { entry, .. } if entry == aside.id));
        if answered {
            continue;
        }
        if aside.job() == Some(ask.job)
            && let Some(why) = ends(ask.known, aside).or_else(|| trouble(ask, aside))
        {
            return Err(format!("in an entry kept aside ({}): {why}", aside.id.short()));
        }
        if let Fact::PointClosed { point, .. } = aside.body.fact
            && points.iter().any(|like| like.contains(&point))
        {
            return Err("a point was closed, by an entry kept aside".into());
        }
    }
    Ok(())
}

/// "An indication is a voltage read on a pair, or at the work, after the points were opened and before anything is restored, whoever read it";
/// "any indication, failed proof of earth, or failed second proof of an indicator".
fn trouble(ask: &Ask, e: &Entry) -> Option<&'static str> {
    let limit = in_force(ask, e);
    let shows = |reading: &Reading, limit: u32| match reading {
        Reading::Lit(_) => true,
        Reading::Millivolts(mv) => *mv > limit,
        _ => false,
    };
    match &e.body.fact {
        Fact::ReadingTaken { reading, dc, .. } => {
            shows(reading, if *dc { limit.1 } else { limit.0 }).then_some("an indication")
        }
        // Nobody said in which range it was met.
        Fact::VoltageMet { reading, .. } => shows(reading, limit.0.min(limit.1)).then_some("a voltage was met"),
        Fact::DischargeRead { reading, .. } => shows(reading, limit.1).then_some("stored energy showed a voltage"),
        Fact::ReferenceProved { holds: false, .. } => Some("the proof of earth failed"),
        Fact::IndicatorProved { run: Some(_), works: false, .. } => Some("the second proof of the indicator failed"),
        _ => None,
    }
}

/// The run that an entry belongs to.
pub fn run_of(e: &Entry) -> Option<EntryId> {
    match e.body.fact {
        Fact::IndicatorProved { run: None, .. } => Some(e.id),
        Fact::IndicatorProved { run, .. } => run,
        Fact::ReadingTaken { run, .. } | Fact::ReferenceProved { run, .. } | Fact::DischargeRead { run, .. } => {
            Some(run)
        }
        _ => None,
    }
}

/// Everything of the kind in a job, withdrawn or not: "an indication is never lost".
pub fn troubles<'a>(ask: &Ask<'_, 'a>) -> Vec<(&'a Entry, &'static str)> {
    let all = ask.entries().filter_map(|e| Some((e, trouble(ask, e)?)));
    all.filter(|(e, _)| !is_restored(ask, e) && !is_before_opening(ask, e)).collect()
}

/// Read before any point was opened, and certainly so.
fn is_before_opening(ask: &Ask, e: &Entry) -> bool {
    let opened: Vec<&Entry> = ask.entries().filter(|o| matches!(o.body.fact, Fact::PointOpened { .. })).collect();
    opened.iter().all(|o| ask.known.knew(o, e))
}

/// Read with points closed again, and certainly so.
fn is_restored(ask: &Ask, e: &Entry) -> bool {
    let switched = ask
        .entries()
        .filter(|o| matches!(o.body.fact, Fact::PointOpened { .. } | Fact::PointClosed { .. }) && ask.known.knew(e, o));
    matches!(switched.last().map(|o| &o.body.fact), Some(Fact::PointClosed { .. }))
}

/// A trouble "keeps 'treat as live' until its cause is noted *and* a whole run was begun by someone who had seen it. 'Cause not found' is an
/// answer: then two whole runs, the second with another indicator or by another person."
pub fn answered(ask: &Ask, run: &Run, earlier: &[Run]) -> Result<(), String> {
    for (trouble, what) in troubles(ask) {
        if !ask.known.knew(run.begin, trouble) {
            return Err(format!("{what} ({}), and this run was begun without knowing it", trouble.id.short()));
        }
        let causes: Vec<&Entry> = ask
            .valid()
            .filter(|e| match &e.body.fact {
                Fact::CauseNoted { of, cause, .. } => of.contains(&trouble.id) && says_something(cause),
                _ => false,
            })
            .collect();
        let last: Vec<&Entry> =
            causes.iter().copied().filter(|c| !causes.iter().any(|later| ask.known.knew(later, c))).collect();
        if last.is_empty() {
            return Err(format!("{what} ({}), and nobody noted its cause", trouble.id.short()));
        }
        if last.iter().any(|c| matches!(c.body.fact, Fact::CauseNoted { found: true, .. })) {
            continue;
        }
        let twice = earlier.iter().any(|first| {
            let others = !ask.known.same_instrument(first.indicator, run.indicator)
                || first.begin.body.by.map(|by| ask.known.person(by))
                    != run.begin.body.by.map(|by| ask.known.person(by));
            first.begin.id != run.begin.id && others && ask.known.knew(first.begin, trouble)
        });
        if !twice {
            return Err(format!(
                "{what} ({}): its cause was not found, and one whole run is not two",
                trouble.id.short()
            ));
        }
    }
    Ok(())
}
