//! What a step still lacks, and where an isolation does not hold.

use super::World;
use super::asked;
use super::catalogue::say;
use super::energised::odd;
use super::lists::ands;
use super::void::void;
use super::words::{
    earthing, job_title, label, met_at, reading, rotation, source_kind, supply_name, told_by, waiting, yes,
};
use stillbar_rules::job::blocker::{Charged, FindingAsk, OpenWay, PhotoLack};
use stillbar_rules::job::{Blocker, SupplyFinding, SupplyName, SupplyOdd};

/// How many questions about sources are open: kinds that nobody looked for, and sources that are known at the site.
pub fn sources_open(count: usize) -> String {
    say!("lacks-sources", count = count)
}

/// What a step still lacks, in a sentence.
pub fn blocker(lack: &Blocker, names: &World) -> String {
    match lack {
        Blocker::Permit => say!("lacks-permit"),
        Blocker::NobodyInCharge => say!("lacks-in-charge"),
        Blocker::NobodyTold => say!("lacks-told"),
        Blocker::NoBarrier => say!("lacks-barrier"),
        Blocker::RotationBefore => say!("lacks-rotation-before"),
        Blocker::CircuitsUnsaid => say!("lacks-circuits"),
        Blocker::NoInstrument => say!("lacks-instrument"),
        Blocker::OneInstrument => say!("lacks-second-instrument"),
        Blocker::CircuitOn { label } => say!("lacks-circuit-off", label = label),
        Blocker::NotSecured { at } => say!("lacks-securing", at = at),
        Blocker::NoOwnLock { person, at } => say!("lacks-own-lock", person = names.name(*person), at = at),
        Blocker::NoSign { at } => say!("lacks-sign", at = at),
        Blocker::Photo(lack) => photo_lack(lack),
        Blocker::Way(way) => open_way(way),
        Blocker::CoversUnsaid => say!("lacks-covers"),
        Blocker::Charged(what) => charged(what),
        Blocker::Unsigned => say!("lacks-signature"),
        Blocker::Void(why) => say!("lacks-proof", why = void(why, names)),
        Blocker::IndicatorUnproved => say!("lacks-indicator"),
        Blocker::ReferenceUnproved => say!("lacks-reference"),
        Blocker::Indication(met) => say!("lacks-no-voltage", at = met_at(met), reading = reading(met.reading)),
        Blocker::NotTested { first, then, direct } => {
            say!("lacks-test", first = first, then = then, direct = yes(*direct))
        }
        Blocker::NothingTested => say!("lacks-any-test"),
        Blocker::NotProvedAgain => say!("lacks-proof-after"),
        Blocker::AtWork => say!("lacks-end-of-work"),
        Blocker::NotAtWork => say!("lacks-work"),
        Blocker::CoverOff { what } => say!("lacks-cover-back", what = what),
        Blocker::NobodyWarned => say!("lacks-warning"),
        Blocker::LockOn { owner, place } => {
            say!("lacks-lock-off", owner = names.name(*owner), place = label(place))
        }
        Blocker::SignUp { at } => say!("lacks-sign-down", at = at),
        Blocker::StillOpen { at } => say!("lacks-closing", at = at),
        Blocker::Beside { at, own, others } => {
            let others = ands(others.iter().map(supply_name));
            say!("lacks-closing-beside", at = at, own = supply_name(own), others = others)
        }
        Blocker::Finding { finding, ask } => {
            let finding = supply_finding(finding);
            match ask {
                FindingAsk::ReadAgain => say!("lacks-reading-again", finding = finding),
                FindingAsk::MendOrLeaveOff => say!("lacks-mending", finding = finding),
                FindingAsk::Answer => say!("lacks-answer", finding = finding),
            }
        }
        Blocker::NotRead { first, then } => say!("lacks-presence", first = first, then = then),
        Blocker::RotationUnread => say!("lacks-rotation"),
        Blocker::RotationUnguarded => say!("lacks-rotation-guard"),
        Blocker::CircuitOff { label } => say!("lacks-circuit-on", label = label),
        Blocker::NotHandedBack => say!("lacks-hand-back"),
        Blocker::EarthIn { label, at } => say!("lacks-earth-off", label = label, at = at),
        Blocker::Question(open) => asked::lacking(open),
    }
}

/// Where an isolation does not hold, in a sentence.
pub fn open_way(way: &OpenWay) -> String {
    match way {
        OpenWay::NoPoint => say!("way-no-point"),
        OpenWay::OpensProtective { at, conductor } => say!("way-opens-protective", at = at, conductor = conductor),
        OpenWay::StoredUnanswered => say!("way-stored-unanswered"),
        OpenWay::SourceUnanswered(kind) => say!("way-source-unanswered", kind = source_kind(*kind)),
        OpenWay::SourceBeside { what, told_by: by } => say!("way-source-beside", what = what, by = told_by(by)),
        OpenWay::LineClosed { line } => say!("way-line", line = line),
        OpenWay::NoNormalPoint => say!("way-no-normal-point"),
        OpenWay::NeutralClosed { neutral, earthing: arrangement } => {
            say!("way-neutral", neutral = neutral, earthing = earthing(*arrangement))
        }
        OpenWay::SourceUncut { what } => say!("way-source-uncut", what = source(what)),
        OpenWay::SourceConductor { conductor, what } => {
            say!("way-source-conductor", conductor = conductor, what = source(what))
        }
        OpenWay::DirectUnread { what, seconds } => say!("way-direct-unread", what = what, wait = waiting(*seconds)),
        OpenWay::DirectShows { what, reading: read } => say!("way-direct-shows", what = what, reading = reading(*read)),
        OpenWay::DirectEarly { what, seconds } => say!("way-direct-early", what = what, wait = waiting(*seconds)),
        OpenWay::Stopped(open) => asked::lacking(open),
        OpenWay::NotOpen { at } => say!("way-not-open", at = at),
        OpenWay::ClosedBeside { at, job } => say!("way-closed-beside", at = at, job = job_title(job.as_deref())),
        OpenWay::NoLock { at } => say!("way-no-lock", at = at),
        OpenWay::NotAllLocked { at } => say!("way-not-all-locked", at = at),
    }
}

fn source(what: &SupplyName) -> String {
    match what {
        SupplyName::Unnamed => say!("way-source-unnamed"),
        named => supply_name(named),
    }
}

/// What may still hold a charge, in a sentence or two.
pub fn charged(charged: &Charged) -> String {
    let Charged { what, seconds, left_min } = charged;
    say!("still-charged", what = what, wait = waiting(*seconds), left = *left_min)
}

/// What the photos of a point do not show, in a sentence.
pub fn photo_lack(lack: &PhotoLack) -> String {
    match lack {
        PhotoLack::Lock { at } => say!("lacks-photo", at = at),
        PhotoLack::Tag { at } => say!("lacks-photo-of-tag", at = at),
    }
}

/// What was read with the supply back and stands out, in a sentence.
pub fn supply_finding(finding: &SupplyFinding) -> String {
    match &finding.what {
        SupplyOdd::Voltage(finding) => odd(finding),
        SupplyOdd::Turned(before, now) => say!("rotation-turned", now = rotation(*now), before = rotation(*before)),
    }
}
