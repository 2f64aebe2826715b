//! An entry in one sentence.

use super::asked;
use super::catalogue::say;
use super::lists::{commas, semicolons};
use super::steps::step;
use super::words::{self, earth, label, limit_set, pair_of, photo_doubt, waiting, yes};
use stillbar_journal::fact::{About, Duty, Found, PhotoDoubt, ProvedOn, RotationGuard, SupplyAnswer};
use stillbar_journal::{Entry, EntryId, Fact};
use stillbar_rules::job::{Job, NamedLock, Part, Summary};
use stillbar_rules::point::Means;
use stillbar_rules::prove::Supply;
use stillbar_rules::supply::Position;
use stillbar_rules::world::World;

/// What an entry says of its job.
pub fn said(job: &Job, entry: &Entry, names: &World) -> String {
    summary(&Summary::of(job, entry), names)
}

/// What an entry says.
pub fn summary(told: &Summary, names: &World) -> String {
    let read = recorded(told, names);
    if told.more { say!("entry-more", says = read) } else { read }
}

/// What the part is called that an entry names.
fn called(part: &Part, names: &World) -> String {
    match part {
        Part::Nothing => String::new(),
        Part::Point(point) => point.clone().unwrap_or_else(|| say!("part-point-withdrawn")),
        Part::Circuit(circuit) => circuit.clone().unwrap_or_else(|| say!("part-circuit-withdrawn")),
        Part::Place(place) => label(place),
        Part::Lock(Some(NamedLock { label: on_it, owner, place })) => {
            say!("part-lock", label = on_it, owner = names.name(*owner), place = label(place))
        }
        Part::Lock(None) => say!("part-lock-unknown"),
        Part::Direct(what) => what.clone().unwrap_or_else(|| say!("part-direct-withdrawn")),
        Part::Source(what) => what.clone().unwrap_or_else(|| say!("part-source-unknown")),
        Part::Cover(what) => what.clone().unwrap_or_else(|| say!("part-cover-unknown")),
        Part::Earth(label) => label.clone().unwrap_or_default(),
        Part::Asked(of) => of.clone().unwrap_or_default(),
        Part::Step(of) => of.as_ref().map(step).unwrap_or_default(),
    }
}

fn recorded(told: &Summary, names: &World) -> String {
    let name = |id: &EntryId| names.name(*id);
    let part = called(&told.part, names);
    match &told.fact {
        Fact::JobOpened { title, company: Some(rules), .. } => {
            say!("entry-job-opened-by", title = title, company = &*rules.company, version = &*rules.version)
        }
        Fact::JobOpened { title, .. } => say!("entry-job-opened", title = title),
        Fact::SystemCorrected { system, earthing, nominal_millivolts, own, why } => {
            let conductors = words::supply(&Supply { own: own.clone(), ..Supply::of(*system, *nominal_millivolts) });
            let (earthing, volts) = (words::earthing(*earthing), stillbar_rules::prove::volts(*nominal_millivolts));
            say!("entry-system-corrected", system = conductors, volts = volts, earthing = earthing, why = why)
        }
        Fact::StaysLive { what, at, screened, .. } => {
            say!("entry-stays-live", what = what, at = at, screened = screened)
        }
        Fact::ScopeChanged { scope, why } => say!("entry-scope", scope = scope, why = why),
        Fact::PermitNoted { reference: Some(reference), .. } => say!("entry-permit", reference = reference),
        Fact::PermitNoted { why_none: Some(why), .. } => say!("entry-no-permit", why = why),
        Fact::PermitNoted { .. } => say!("entry-no-permit-unsaid"),
        Fact::WorkerJoined { person, duty: Duty::InCharge } => say!("entry-in-charge", person = name(person)),
        Fact::WorkerJoined { person, duty: Duty::Working } => say!("entry-works", person = name(person)),
        Fact::WorkerJoined { person, duty: Duty::Learning } => say!("entry-learns", person = name(person)),
        Fact::WorkerLeft { person } => say!("entry-left-job", person = name(person)),
        Fact::Told { who, how, about: About::Isolating } => say!("entry-told-off", who = who, how = how),
        Fact::Told { who, how, about: About::Energising } => say!("entry-told-back", who = who, how = how),
        Fact::BarrierPlaced { what, at } => say!("entry-barrier", what = what, at = at),
        Fact::SourceAnswered { kind, found: Some(Found { what, at }), .. } => {
            say!("entry-source-found", kind = words::source_kind(*kind), what = what, at = at)
        }
        Fact::SourceAnswered { kind, looked, .. } => {
            say!("entry-source-none", kind = words::source_kind(*kind), looked = looked)
        }
        Fact::StoredAnswered { found: Some(Found { what, at }), seconds, label, .. } => {
            let wait = waiting(*seconds);
            match label {
                Some(label) => {
                    say!("entry-stored-found-label", what = what, at = at, wait = wait, label = waiting(*label))
                }
                None => say!("entry-stored-found", what = what, at = at, wait = wait),
            }
        }
        Fact::StoredAnswered { looked, .. } => say!("entry-stored-none", looked = looked),
        Fact::PointAdded { label, at, .. } => say!("entry-point", label = label, at = at),
        Fact::BoxPlaced { label, at } => say!("entry-box", label = label, at = at),
        Fact::CircuitListed { label, serves } => say!("entry-circuit", label = label, serves = serves),
        Fact::NoCircuits { why } => say!("entry-no-circuit", why = why),
        Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. } => {
            let fit = *leads_sound && *tips_sound && *body_sound && *in_date;
            say!("entry-instrument", instrument = words::instrument(names, *instrument), fit = yes(fit))
        }
        Fact::CircuitOff { seen, .. } => say!("entry-circuit-off", circuit = part, seen = seen),
        Fact::PointOpened { found: Position::Open, seen, .. } => {
            say!("entry-point-found-open", point = part, seen = seen)
        }
        Fact::PointOpened { off_load, seen, .. } => {
            say!("entry-point-opened", point = part, off_load = yes(*off_load), seen = seen)
        }
        Fact::LockFitted { owner, means: Means::Other(how), .. } => {
            say!("entry-no-lock", place = part, person = name(owner), how = how)
        }
        Fact::LockFitted { owner, label, through: Some(_), .. } => {
            say!("entry-lock-through", label = label, owner = name(owner), place = part)
        }
        Fact::LockFitted { owner, label, .. } => say!("entry-lock", label = label, owner = name(owner), place = part),
        Fact::SignPosted { .. } => say!("entry-sign", at = part),
        Fact::TagBound { tag, why: Some(why), .. } => {
            say!("entry-tag-hangs-why", tag = tag.spaced(), at = part, why = why)
        }
        Fact::TagBound { tag, .. } => say!("entry-tag-hangs", tag = tag.spaced(), at = part),
        Fact::TagGone { tag, why, .. } => say!("entry-tag-gone", tag = tag.spaced(), at = part, why = why),
        Fact::TagRead { tag, .. } => say!("entry-tag-read", tag = tag.spaced(), at = part),
        Fact::PhotoTaken { sha256, note, doubts, .. } => photo(&part, sha256, note, doubts),
        Fact::KeyOffered { to, .. } => say!("entry-key-offered", person = name(to), lock = part),
        Fact::KeyTaken { .. } => say!("entry-key-taken"),
        Fact::ShiftOffered { to, told } => say!("entry-shift-offered", person = name(to), told = told),
        Fact::ShiftTaken { .. } => say!("entry-shift-taken"),
        Fact::LockRemoved { cut: Some(why), .. } => say!("entry-lock-cut", lock = part, why = why),
        Fact::LockRemoved { .. } => say!("entry-lock-off", lock = part),
        Fact::ForcedBegun { authority, function, reached, why, .. } => {
            let authority = name(authority);
            say!(
                "entry-forced-begun",
                authority = authority,
                function = function,
                reached = reached,
                lock = part,
                why = why
            )
        }
        Fact::OwnerNotOnSite { how, .. } => say!("entry-owner-not-on-site", how = how),
        Fact::OwnerSought { how, outcome, .. } => say!("entry-owner-sought", how = how, outcome = outcome),
        Fact::LockForced { .. } => say!("entry-lock-forced", lock = part),
        Fact::OwnerTold { how, .. } => say!("entry-owner-told", how = how),
        Fact::CoverOff { what } => say!("entry-cover-off", what = what),
        Fact::NoCovers { why } => say!("entry-no-cover", why = why),
        Fact::IndicatorProved { run, indicator, on, works } => {
            let on = match on {
                ProvedOn::ProvingUnit(unit) => words::instrument(names, *unit),
                ProvedOn::KnownSource(what) => say!("entry-live-source", what = what),
            };
            let indicator = words::instrument(names, *indicator);
            say!("entry-indicator", again = yes(run.is_some()), on = on, works = yes(*works), indicator = indicator)
        }
        Fact::ReadingTaken { first, then, reading, dc, .. } => {
            say!("entry-reading", pair = pair_of(first, then), dc = yes(*dc), reading = words::reading(*reading))
        }
        Fact::VoltageMet { at, reading } => say!("entry-voltage-met", at = at, reading = words::reading(*reading)),
        Fact::ReferenceProved { way, how, holds, .. } => {
            say!("entry-reference", holds = yes(*holds), how = earth(*way, how))
        }
        Fact::RunSigned { .. } => say!("entry-run-signed"),
        Fact::DischargeRead { reading, .. } => say!("entry-direct", at = part, reading = words::reading(*reading)),
        Fact::CauseNoted { found: true, cause, .. } => say!("entry-cause", cause = cause),
        Fact::CauseNoted { cause, .. } => say!("entry-cause-not-found", cause = cause),
        Fact::WorkStopped {} => say!("entry-work-stopped"),
        Fact::GivenUp { why, clear } => say!("entry-given-up", why = why, clear = clear),
        Fact::LimitSet { limit: Some(limit) } => limit_set(limit),
        Fact::LimitSet { limit: None } => say!("entry-no-limit"),
        Fact::CompanyHeard { rules } => {
            say!("entry-company-heard", company = &*rules.company, version = &*rules.version)
        }
        Fact::SourceElsewhere { why, .. } => say!("entry-source-elsewhere", source = part, why = why),
        Fact::PointsParted { apart, .. } => say!("entry-points-parted", point = part, apart = apart),
        Fact::RotationFound { rotation: Some(rotation), how } => {
            say!("entry-rotation-before", rotation = words::rotation(*rotation), how = how)
        }
        Fact::RotationFound { how, .. } => say!("entry-rotation-before-unread", how = how),
        Fact::SupplyAnswered { answer, who, how, .. } => match answer {
            SupplyAnswer::Mended => say!("entry-answer-mended", who = who, how = how),
            SupplyAnswer::LeftOff => say!("entry-answer-left-off", who = who, how = how),
            SupplyAnswer::Accepted => say!("entry-answer-accepted", who = who, how = how),
        },
        Fact::AsideAnswered { why, .. } => say!("entry-aside-answered", why = why),
        Fact::EarthFitted { label, at } => say!("entry-earth-in", label = label, at = at),
        Fact::EarthRemoved { .. } => say!("entry-earth-off", label = part),
        Fact::WorkBegan { .. } => say!("entry-work-began"),
        Fact::WorkLeft { why } => say!("entry-work-left", why = why),
        Fact::NeutralParted { what } => say!("entry-neutral-parted", what = what),
        Fact::WorkFinished { clear } => say!("entry-work-finished", clear = clear),
        Fact::CoverBack { .. } => say!("entry-cover-back", what = part),
        Fact::SignRemoved { .. } => say!("entry-sign-down", at = part),
        Fact::PointClosed { beside: Some(why), .. } => say!("entry-point-closed-beside", point = part, why = why),
        Fact::PointClosed { .. } => say!("entry-point-closed", point = part),
        Fact::PresenceRead { first, then, reading } => {
            say!("entry-presence", pair = pair_of(first, then), reading = words::reading(*reading))
        }
        Fact::RotationRead { rotation, how, guard } => {
            let rotation = words::rotation(*rotation);
            match guard {
                Some(RotationGuard::Uncoupled) => say!("entry-rotation-uncoupled", rotation = rotation, how = how),
                Some(RotationGuard::Bumped) => say!("entry-rotation-bumped", rotation = rotation, how = how),
                None => say!("entry-rotation", rotation = rotation, how = how),
            }
        }
        Fact::CircuitOn { .. } => say!("entry-circuit-on", circuit = part),
        Fact::HandedBack { to, note, .. } => say!("entry-handed-back", to = to, note = note),
        Fact::Answered { question, answer, words, who, read, .. } => {
            let said = if who.is_empty() { words } else { who };
            asked::told(question, answer, &part, &asked::said_with(*read, said))
        }
        Fact::Deviated { step, why } => {
            let step = if part.is_empty() { step.clone() } else { part };
            say!("entry-passed-over", step = step, why = why)
        }
        Fact::Withdrawn { why, .. } => say!("entry-withdrawn", why = why),
        Fact::PointDrawn { switch, .. } => say!("entry-point-drawn", point = part, switch = switch),
        Fact::ZoneNoted { zone } => say!("entry-zone", zone = commas(zone.iter().cloned())),
        Fact::CutDiffers { ways, why } => {
            say!("entry-way-answered", ways = semicolons(ways.iter().cloned()), why = why)
        }
        Fact::Newer { kind, .. } => say!("entry-newer", kind = kind),
        Fact::DeviceBegan { .. }
        | Fact::SiteNoted { .. }
        | Fact::PersonNoted { .. }
        | Fact::InstrumentNoted { .. }
        | Fact::LimitRuled { .. }
        | Fact::SiteRuled { .. }
        | Fact::CompanyRuled { .. }
        | Fact::NodeNoted { .. }
        | Fact::LinkNoted { .. }
        | Fact::PartGone { .. }
        | Fact::LinkSeen { .. } => say!("entry-not-of-job"),
    }
}

/// A picture: of what, the beginning of its hash, and what was poor about it.
fn photo(of: &str, sha256: &str, note: &str, doubts: &[PhotoDoubt]) -> String {
    let said = say!("entry-photo", of = of, hash = format!("{sha256:.8}"));
    let doubts = doubts.iter().map(|doubt| photo_doubt(doubt, of));
    let said = doubts.fold(said, |photo, doubt| say!("entry-photo-doubt", photo = photo, doubt = doubt));
    if note.is_empty() { said } else { say!("entry-photo-kept", photo = said, note = note) }
}
