//! An entry in one sentence.

use super::steps::step;
use super::words::{self, earth, label, limit_set, photo_doubt, waiting};
use stillbar_journal::fact::{About, Duty, ProvedOn, RotationGuard, SupplyAnswer};
use stillbar_journal::{Entry, EntryId, Fact};
use stillbar_rules::job::{Job, NamedLock, Part, Summary};
use stillbar_rules::point::Means;
use stillbar_rules::supply::Position;
use stillbar_rules::world::World;

/// What an entry says of its job.
pub fn said(job: &Job, entry: &Entry, names: &World) -> String {
    summary(&Summary::of(job, entry), names)
}

/// What an entry says.
pub fn summary(told: &Summary, names: &World) -> String {
    let read = recorded(told, names);
    if told.more { format!("{read} (a newer version wrote more here than this one can read)") } else { read }
}

/// What the part is called that an entry names.
fn called(part: &Part, names: &World) -> String {
    let or = |known: &Option<String>, not: &str| known.clone().unwrap_or_else(|| not.to_owned());
    match part {
        Part::Nothing => String::new(),
        Part::Point(point) => or(point, "a withdrawn point"),
        Part::Circuit(circuit) => or(circuit, "a withdrawn circuit"),
        Part::Place(place) => label(place),
        Part::Lock(Some(NamedLock { label: on_it, owner, place })) => {
            format!("lock {on_it} of {} on {}", names.name(*owner), label(place))
        }
        Part::Lock(None) => "a lock not known here".into(),
        Part::Direct(what) => or(what, "withdrawn"),
        Part::Source(what) => or(what, "A source of this site"),
        Part::Cover(what) => or(what, "a cover"),
        Part::Step(of) => of.as_ref().map(step).unwrap_or_default(),
    }
}

fn recorded(told: &Summary, names: &World) -> String {
    let name = |id: &EntryId| names.name(*id);
    let part = called(&told.part, names);
    match &told.fact {
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
            format!("{}: found, {} at {}", words::source_kind(*kind), found.what, found.at)
        }
        Fact::SourceAnswered { kind, looked, .. } => {
            format!("{}: none found. Looked: {looked}", words::source_kind(*kind))
        }
        Fact::StoredAnswered { found: Some(found), seconds, .. } => {
            format!("Stored energy: {} at {}, wait {}", found.what, found.at, waiting(*seconds))
        }
        Fact::StoredAnswered { looked, .. } => format!("Stored energy: none found. Looked: {looked}"),
        Fact::PointAdded { label, at, .. } => format!("Point of isolation {label}, {at}"),
        Fact::BoxPlaced { label, at } => format!("Lock box {label}, {at}"),
        Fact::CircuitListed { label, serves } => format!("Circuit {label}: {serves}"),
        Fact::NoCircuits { why } => format!("No circuit to shed: {why}"),
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. } => {
            let fit =
                if *leads_sound && *tips_sound && *body_sound && *in_date { "fit for use" } else { "not fit for use" };
            format!("{} checked: {fit}", words::instrument(names, *instrument))
        }
        Fact::CircuitOff { seen, .. } => format!("{part} off. {seen}"),
        Fact::PointOpened { found: Position::Open, seen, .. } => {
            format!("{part} found open. {seen}")
        }
        Fact::PointOpened { off_load, seen, .. } => {
            format!("{part} opened {}. {seen}", if *off_load { "off load" } else { "under load" })
        }
        Fact::LockFitted { owner, means: Means::Other(how), .. } => {
            format!("{part} secured without a lock by {}: {how}", name(owner))
        }
        Fact::LockFitted { owner, label, through: Some(_), .. } => {
            format!("Lock {label} of {} on {part}: one cable or bar through it and another", name(owner))
        }
        Fact::LockFitted { owner, label, .. } => {
            format!("Lock {label} of {} on {part}", name(owner))
        }
        Fact::SignPosted { .. } => format!("Caution sign at {part}"),
        Fact::TagBound { tag, why, .. } => {
            let why = why.as_ref().map_or_else(String::new, |why| format!(". {why}"));
            format!("Tag {} hangs at {part}{why}", tag.spaced())
        }
        Fact::TagGone { tag, why, .. } => format!("Tag {} is off {part}: {why}", tag.spaced()),
        Fact::TagRead { tag, .. } => format!("Tag {} read at {part}", tag.spaced()),
        Fact::PhotoTaken { sha256, note, doubts, .. } => {
            let more: String = doubts.iter().map(|d| format!(". {}", photo_doubt(d, &part))).collect();
            let note = if note.is_empty() { String::new() } else { format!(" Kept because: {note}") };
            format!("Photo of {part}, SHA-256 {sha256:.8}…{more}{note}")
        }
        Fact::KeyOffered { to, .. } => format!("Offered to {}: {part}", name(to)),
        Fact::KeyTaken { .. } => "Lock and key taken over, signed".into(),
        Fact::ShiftOffered { to, told } => format!("Shift offered to {}: {told}", name(to)),
        Fact::ShiftTaken { .. } => "Shift taken, signed".into(),
        Fact::LockRemoved { cut: Some(why), .. } => format!("Cut by its owner, no key: {part}. {why}"),
        Fact::LockRemoved { .. } => format!("Taken off by its owner: {part}"),
        Fact::ForcedBegun { authority, function, reached, why, .. } => {
            format!("Forced removal begun under {}, {function}, reached {reached}: {part}. {why}", name(authority))
        }
        Fact::OwnerNotOnSite { how, .. } => format!("Owner not on site: {how}"),
        Fact::OwnerSought { how, outcome, .. } => format!("Owner sought: {how}. {outcome}"),
        Fact::LockForced { .. } => format!("Taken off in the owner's absence: {part}"),
        Fact::OwnerTold { how, .. } => format!("Owner told: {how}"),
        Fact::CoverOff { what } => format!("Cover off: {what}"),
        Fact::NoCovers { why } => format!("No cover comes off: {why}"),
        Fact::IndicatorProved { run, indicator, on, works } => {
            let on = match on {
                ProvedOn::ProvingUnit(unit) => words::instrument(names, *unit),
                ProvedOn::KnownSource(what) => format!("a source known to be live, {what}"),
            };
            format!(
                "Indicator {} on {on}: {}. {}",
                if run.is_some() { "proved again" } else { "proved" },
                if *works { "works" } else { "does not respond" },
                words::instrument(names, *indicator)
            )
        }
        Fact::ReadingTaken { first, then, reading, dc, .. } => {
            format!("{first} – {then}{}: {}", if *dc { " DC" } else { "" }, words::reading(*reading))
        }
        Fact::VoltageMet { at, reading } => format!("Voltage met at {at}: {}", words::reading(*reading)),
        Fact::ReferenceProved { way, how, holds, .. } => {
            let how = earth(*way, how);
            format!("Reference {}: {how}", if *holds { "shown to be earth" } else { "not earth" })
        }
        Fact::RunSigned { .. } => "Test under supervision signed".into(),
        Fact::DischargeRead { reading, .. } => {
            format!("Direct voltage at {part}: {}", words::reading(*reading))
        }
        Fact::CauseNoted { found: true, cause, .. } => format!("Cause: {cause}"),
        Fact::CauseNoted { cause, .. } => format!("Cause not found: {cause}"),
        Fact::WorkStopped {} => "Work stopped, everybody clear".into(),
        Fact::GivenUp { why, clear } => format!("Isolation given up: {why}. {clear}"),
        Fact::LimitSet { limit: Some(limit) } => limit_set(limit),
        Fact::LimitSet { limit: None } => "No limit for figures any more".into(),
        Fact::SourceElsewhere { why, .. } => {
            format!("{part} does not reach this work: {why}")
        }
        Fact::PointsParted { apart, .. } => {
            format!("{part} is another point than the one alike: {apart}")
        }
        Fact::RotationFound { rotation: Some(rotation), how } => {
            format!("Rotation before isolating {}. {how}", words::rotation(*rotation))
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
        Fact::CoverBack { .. } => {
            format!("Cover back: {part}")
        }
        Fact::SignRemoved { .. } => format!("Sign down at {part}"),
        Fact::PointClosed { beside: Some(why), .. } => {
            format!("{part} closed beside another source: {why}")
        }
        Fact::PointClosed { .. } => format!("{part} closed"),
        Fact::PresenceRead { first, then, reading } => {
            format!("Supply back, {first} – {then}: {}", words::reading(*reading))
        }
        Fact::RotationRead { rotation, how, guard } => {
            let guard = match guard {
                Some(RotationGuard::Uncoupled) => " (what turns was uncoupled)",
                Some(RotationGuard::Bumped) => " (a short bump was watched)",
                None => "",
            };
            format!("Rotation {}. {how}{guard}", words::rotation(*rotation))
        }
        Fact::CircuitOn { .. } => format!("{part} on"),
        Fact::HandedBack { to, note, .. } => format!("Handed back to {to}, signed. {note}"),
        Fact::Deviated { step, why } => {
            format!("Passed over {}: {why}", if part.is_empty() { step } else { &part })
        }
        Fact::Withdrawn { why, .. } => format!("An entry was withdrawn: {why}"),
        Fact::PointDrawn { switch, .. } => format!("{part} is {switch} in the supply network"),
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
