//! An entry in one sentence.

use super::cx::Look;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{About, Duty, ProvedOn, RotationGuard, SupplyAnswer};
use crate::journal::{Entry, EntryId, Fact, Newer};
use crate::point::Means;
use crate::supply::Position;
use crate::text;

/// What an entry says.
pub fn said(look: &Look, job: &Job, entry: &Entry) -> String {
    let read = recorded(look, job, &entry.body.fact);
    match entry.newer {
        Some(Newer::Beside) => format!("{read} (a newer version wrote more here than this one can read)"),
        Some(Newer::Fact) | None => read,
    }
}

fn recorded(look: &Look, job: &Job, fact: &Fact) -> String {
    let name = |id: &EntryId| look.name(*id);
    let point = |id: &EntryId| job.point(*id).map_or_else(|| "a withdrawn point".to_owned(), |p| p.label.clone());
    let lock = |id: &EntryId| match job.lock(*id) {
        Some(lock) => format!("lock {} of {} on {}", lock.label, look.name(lock.owner), text::place(job, lock.on)),
        None => "a lock not known here".into(),
    };
    let circuit = |id: &EntryId| {
        job.circuits
            .iter()
            .find(|c| c.stamp.id == *id)
            .map_or_else(|| "a withdrawn circuit".to_owned(), |c| c.label.clone())
    };
    match fact {
        Fact::JobOpened { title, .. } => format!("Job opened: {title}"),
        Fact::ScopeChanged { scope, why } => format!("Scope changed to: {scope}. {why}"),
        Fact::PermitNoted { reference: Some(reference), .. } => format!("Permit {reference}"),
        Fact::PermitNoted { why_none, .. } => {
            format!("No permit: {}", why_none.as_deref().unwrap_or("no reason given"))
        }
        Fact::WorkerJoined { person, duty } => {
            let duty = match duty {
                Duty::InCharge => "answers for the isolation",
                Duty::Working => "works",
                Duty::Learning => "learns under supervision",
            };
            format!("{} {duty}", name(person))
        }
        Fact::WorkerLeft { person } => format!("{} left the job", name(person)),
        Fact::Told { who, how, about: About::Isolating } => format!("Told that the supply goes off: {who}, {how}"),
        Fact::Told { who, how, about: About::Energising } => format!("Warned that the supply comes back: {who}, {how}"),
        Fact::BarrierPlaced { what, at } => format!("{what} at {at}"),
        Fact::SourceAnswered { kind, found: Some(found), .. } => {
            format!("{}: found, {} at {}", text::source_kind(*kind), found.what, found.at)
        }
        Fact::SourceAnswered { kind, looked, .. } => {
            format!("{}: none found. Looked: {looked}", text::source_kind(*kind))
        }
        Fact::StoredAnswered { found: Some(found), seconds, .. } => {
            format!("Stored energy: {} at {}, wait {}", found.what, found.at, text::waiting(*seconds))
        }
        Fact::StoredAnswered { looked, .. } => format!("Stored energy: none found. Looked: {looked}"),
        Fact::PointAdded { label, at, .. } => format!("Point of isolation {label}, {at}"),
        Fact::BoxPlaced { label, at } => format!("Lock box {label}, {at}"),
        Fact::CircuitListed { label, serves } => format!("Circuit {label}: {serves}"),
        Fact::NoCircuits { why } => format!("No circuit to shed: {why}"),
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. } => {
            let fit =
                if *leads_sound && *tips_sound && *body_sound && *in_date { "fit for use" } else { "not fit for use" };
            format!("{} checked: {fit}", text::instrument(look.world, *instrument))
        }
        Fact::CircuitOff { circuit: id, seen } => format!("{} off. {seen}", circuit(id)),
        Fact::PointOpened { point: id, found: Position::Open, seen, .. } => {
            format!("{} found open. {seen}", point(id))
        }
        Fact::PointOpened { point: id, off_load, seen, .. } => {
            format!("{} opened {}. {seen}", point(id), if *off_load { "off load" } else { "under load" })
        }
        Fact::LockFitted { on, owner, means: Means::Other(how), .. } => {
            format!("{} secured without a lock by {}: {how}", text::place(job, *on), name(owner))
        }
        Fact::LockFitted { on, owner, label, through: Some(_), .. } => {
            format!(
                "Lock {label} of {} on {}: one cable or bar through it and another",
                name(owner),
                text::place(job, *on)
            )
        }
        Fact::LockFitted { on, owner, label, .. } => {
            format!("Lock {label} of {} on {}", name(owner), text::place(job, *on))
        }
        Fact::SignPosted { point: id } => format!("Caution sign at {}", point(id)),
        Fact::TagBound { tag, point: id, why } => {
            let why = why.as_ref().map_or_else(String::new, |why| format!(". {why}"));
            format!("Tag {} hangs at {}{why}", tag.spaced(), point(id))
        }
        Fact::TagGone { tag, point: id, why } => format!("Tag {} is off {}: {why}", tag.spaced(), point(id)),
        Fact::TagRead { tag, point: id } => format!("Tag {} read at {}", tag.spaced(), point(id)),
        Fact::PhotoTaken { sha256, of, note, doubts, .. } => {
            let more: String = doubts.iter().map(|d| format!(". {d}")).collect();
            let note = if note.is_empty() { String::new() } else { format!(" Kept because: {note}") };
            format!("Photo of {}, SHA-256 {:.8}…{more}{note}", point(of), sha256)
        }
        Fact::KeyOffered { lock: id, to } => format!("Offered to {}: {}", name(to), lock(id)),
        Fact::KeyTaken { .. } => "Lock and key taken over, signed".into(),
        Fact::ShiftOffered { to, told } => format!("Shift offered to {}: {told}", name(to)),
        Fact::ShiftTaken { .. } => "Shift taken, signed".into(),
        Fact::LockRemoved { lock: id, cut: Some(why) } => format!("Cut by its owner, no key: {}. {why}", lock(id)),
        Fact::LockRemoved { lock: id, .. } => format!("Taken off by its owner: {}", lock(id)),
        Fact::ForcedBegun { lock: id, authority, function, reached, why } => {
            format!(
                "Forced removal begun under {}, {function}, reached {reached}: {}. {why}",
                name(authority),
                lock(id)
            )
        }
        Fact::OwnerNotOnSite { how, .. } => format!("Owner not on site: {how}"),
        Fact::OwnerSought { how, outcome, .. } => format!("Owner sought: {how}. {outcome}"),
        Fact::LockForced { lock: id, .. } => format!("Taken off in the owner's absence: {}", lock(id)),
        Fact::OwnerTold { how, .. } => format!("Owner told: {how}"),
        Fact::CoverOff { what } => format!("Cover off: {what}"),
        Fact::NoCovers { why } => format!("No cover comes off: {why}"),
        Fact::IndicatorProved { run, indicator, on, works } => {
            let on = match on {
                ProvedOn::ProvingUnit(unit) => text::instrument(look.world, *unit),
                ProvedOn::KnownSource(what) => format!("a source known to be live, {what}"),
            };
            format!(
                "Indicator {} on {on}: {}. {}",
                if run.is_some() { "proved again" } else { "proved" },
                if *works { "works" } else { "does not respond" },
                text::instrument(look.world, *indicator)
            )
        }
        Fact::ReadingTaken { first, then, reading, dc, .. } => {
            format!("{first} – {then}{}: {}", if *dc { " DC" } else { "" }, text::reading(*reading))
        }
        Fact::VoltageMet { at, reading } => format!("Voltage met at {at}: {}", text::reading(*reading)),
        Fact::ReferenceProved { way, how, holds, .. } => {
            let how = super::earth_in_words(*way, how);
            format!("Reference {}: {how}", if *holds { "shown to be earth" } else { "not earth" })
        }
        Fact::RunSigned { .. } => "Test under supervision signed".into(),
        Fact::DischargeRead { of, reading, .. } => {
            let what =
                job.direct().into_iter().find(|(id, ..)| id == of).map_or("withdrawn".into(), |(_, what, _)| what);
            format!("Direct voltage at {what}: {}", text::reading(*reading))
        }
        Fact::CauseNoted { found: true, cause, .. } => format!("Cause: {cause}"),
        Fact::CauseNoted { cause, .. } => format!("Cause not found: {cause}"),
        Fact::WorkStopped {} => "Work stopped, everybody clear".into(),
        Fact::GivenUp { why, clear } => format!("Isolation given up: {why}. {clear}"),
        Fact::LimitSet { limit: Some(limit) } => super::rules::limit_in_words(limit),
        Fact::LimitSet { limit: None } => "No limit for figures any more".into(),
        Fact::SourceElsewhere { source, why } => {
            let known = job.known.iter().flat_map(|k| &k.sources).find(|s| s.source == *source);
            let what = known.map_or("A source of this site", |s| s.what.as_str());
            format!("{what} does not reach this work: {why}")
        }
        Fact::PointsParted { point: id, apart, .. } => {
            format!("{} is another point than the one alike: {apart}", point(id))
        }
        Fact::RotationFound { rotation: Some(rotation), how } => {
            format!("Rotation before isolating {}. {how}", text::rotation(*rotation))
        }
        Fact::RotationFound { how, .. } => format!("Rotation not read before isolating: {how}"),
        Fact::SupplyAnswered { answer, who, how, .. } => {
            let word = match answer {
                SupplyAnswer::Mended => "mended",
                SupplyAnswer::LeftOff => "left off",
                SupplyAnswer::Accepted => "accepted",
            };
            format!("Reading out of tolerance {word}: {who}. {how}")
        }
        Fact::AsideAnswered { why, .. } => format!("An entry that is put aside was looked into: {why}"),
        Fact::WorkBegan { .. } => "Work began under the proof that stood".into(),
        Fact::WorkLeft { why } => format!("Work left: {why}"),
        Fact::NeutralParted { what } => format!("Neutral parted: {what}"),
        Fact::WorkFinished { clear } => format!("Work finished. {clear}"),
        Fact::CoverBack { cover } => {
            let what = job.covers.iter().find(|(s, ..)| s.id == *cover).map_or("a cover", |(_, what, _)| what.as_str());
            format!("Cover back: {what}")
        }
        Fact::SignRemoved { point: id } => format!("Sign down at {}", point(id)),
        Fact::PointClosed { point: id, beside: Some(why) } => {
            format!("{} closed beside another source: {why}", point(id))
        }
        Fact::PointClosed { point: id, .. } => format!("{} closed", point(id)),
        Fact::PresenceRead { first, then, reading } => {
            format!("Supply back, {first} – {then}: {}", text::reading(*reading))
        }
        Fact::RotationRead { rotation, how, guard } => {
            let guard = match guard {
                Some(RotationGuard::Uncoupled) => " (what turns was uncoupled)",
                Some(RotationGuard::Bumped) => " (a short bump was watched)",
                None => "",
            };
            format!("Rotation {}. {how}{guard}", text::rotation(*rotation))
        }
        Fact::CircuitOn { circuit: id } => format!("{} on", circuit(id)),
        Fact::HandedBack { to, note, .. } => format!("Handed back to {to}, signed. {note}"),
        Fact::Deviated { step, why } => {
            format!("Passed over {}: {why}", Step::named(step).map_or_else(|| step.clone(), |s| text::title(s, job)))
        }
        Fact::Withdrawn { why, .. } => format!("An entry was withdrawn: {why}"),
        Fact::PointDrawn { point: id, switch, .. } => format!("{} is {switch} in the supply network", point(id)),
        Fact::ZoneNoted { zone } => format!("Work zone in the supply network: {}", zone.join(", ")),
        Fact::CutDiffers { ways, why } => {
            format!("Answered for a way in the supply network ({}): {why}", ways.join("; "))
        }
        Fact::Newer { kind, .. } => {
            format!("Written by a newer version and not readable here ({kind}): update this app")
        }
        Fact::DeviceBegan { .. }
        | Fact::SiteNoted { .. }
        | Fact::PersonNoted { .. }
        | Fact::InstrumentNoted { .. }
        | Fact::LimitRuled { .. }
        | Fact::SiteRuled { .. }
        | Fact::NodeNoted { .. }
        | Fact::LinkNoted { .. }
        | Fact::PartGone { .. }
        | Fact::LinkSeen { .. } => "Not of this job".into(),
    }
}
