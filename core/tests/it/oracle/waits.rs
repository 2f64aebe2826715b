//! How long stored energy is waited for, as docs/systems.md has it, and whether that time is over. From the page alone.

use stillbar_core::journal::fact::StoredKind;
use stillbar_core::journal::{Entry, EntryId, Fact};

use super::known::{Known, MINUTE, Tick, now, tick};
use super::promise::Ask;

/// "Without a label, at least this long", in minutes; what nobody knows waits as long as the longest of the table.
fn of_the_table(kind: StoredKind) -> i64 {
    match kind {
        StoredKind::PowerFactor => 3,
        StoredKind::Capacitors => 5,
        StoredKind::Drive
        | StoredKind::Ups
        | StoredKind::PvInverter
        | StoredKind::BatteryConverter
        | StoredKind::NotKnown => 15,
    }
}

/// "The label on the equipment counts where it was read, longer or shorter. Without one, at least this long; whoever wants longer takes longer. A
/// shorter wait from any other phone is taken as this one, and what an earlier version wrote is the wait on its label." In milliseconds.
pub fn wait(kind: Option<StoredKind>, label: Option<u32>, said: u32) -> i64 {
    let said = i64::from(said) * 1000;
    let least = match (label, kind) {
        (Some(label), _) => i64::from(label) * 1000,
        (None, Some(kind)) => of_the_table(kind) * MINUTE,
        (None, None) => said,
    };
    said.max(least)
}

/// The wait for what somebody found, if they found something.
fn found(fact: &Fact) -> Option<i64> {
    match fact {
        Fact::StoredAnswered { found: Some(_), seconds, kind, label, .. } => Some(wait(*kind, *label, *seconds)),
        _ => None,
    }
}

/// "Counted from the opening", of every point of the job: by then it was over for what was read.
pub fn waited(ask: &Ask, read: &Entry, most: i64) -> bool {
    most == 0
        || ask
            .points
            .iter()
            .all(|(_, openings)| openings.iter().any(|o| is_over(ask.known, ask.job, o, tick(read), most)))
}

/// What was over once is over later, whatever a clock says then.
fn is_over(known: &Known, job: EntryId, opened: &Entry, at: Tick, most: i64) -> bool {
    let over = |at: Tick| known.shortest(opened, at).is_some_and(|ms| ms >= most);
    let between = |e: &Entry| known.is_before(e, at) && known.knew(e, opened);
    over(at) || known.of(job).any(|e| between(e) && over(tick(e)))
}

/// "Stored energy is waited for before covers come off, counted from the opening."
pub fn may_uncover(known: &Known, job: EntryId, moment: &super::known::Moment) -> Result<(), String> {
    let valid = || known.of(job).filter(|e| !known.is_withdrawn(e.id));
    let Some(most) = valid().filter_map(|e| found(&e.body.fact)).max() else { return Ok(()) };
    for point in valid().filter(|e| matches!(e.body.fact, Fact::PointAdded { .. })) {
        let opened = |e: &&Entry| matches!(e.body.fact, Fact::PointOpened { point: p, .. } if p == point.id);
        if !valid().filter(opened).any(|o| is_over(known, job, o, now(moment), most)) {
            return Err(format!("stored energy is not waited for: {} min from the opening", most / MINUTE));
        }
    }
    Ok(())
}
