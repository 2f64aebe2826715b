//! Why a proof is void.

use super::asked::told;
use super::blocker::open_way;
use super::catalogue::say;
use super::entry::summary;
use super::supply::uncut;
use super::words::{label, met_at, reading, told_by};
use stillbar_rules::job::{Ended, TroubleKind, Void};
use stillbar_rules::world::World;

/// Why a run is worth nothing, in one or two sentences.
pub fn void(why: &Void, names: &World) -> String {
    match why {
        Void::Ended(why) => ended(why),
        Void::Trouble(kind) => trouble(kind),
        Void::TroubleUnknown(kind) => say!("void-trouble-unknown", trouble = trouble(kind)),
        Void::IndicatorUnfit => say!("void-indicator-unfit"),
        Void::ProverUnfit => say!("void-prover-unfit"),
        Void::TestTwice => say!("void-test-twice"),
        Void::HeldAgainstNothing => say!("void-alone"),
        Void::Way(way) => open_way(way),
        Void::Newer => say!("void-newer"),
        Void::Forgotten => say!("void-forgotten"),
        Void::SourceKnown { what, told_by: by } => say!("void-source-known", what = what, by = told_by(by)),
        Void::SourceFound { what } => say!("void-source-found", what = what),
        Void::Network { why } => say!("void-network", says = uncut(why)),
        Void::ZoneUnsaid => say!("void-zone-unsaid"),
        Void::Aside { says } => say!("void-aside", says = summary(says, names)),
        Void::LightsLate => say!("void-lights-late"),
        Void::ProverUnknown => say!("void-prover-unknown"),
        Void::NotThisShift => say!("void-not-this-shift"),
        Void::ClockDoubt => say!("void-clock-doubt"),
        Void::TooOld => say!("void-too-old"),
    }
}

/// What an entry ended the proofs before it with, in a sentence.
pub fn ended(why: &Ended) -> String {
    match why {
        Ended::LockOff { place } => say!("ended-lock-off", place = label(place)),
        Ended::StoredFound { what } => say!("ended-stored-found", what = what),
        Ended::SourceFound { what } => say!("ended-source-found", what = what),
        Ended::PointAdded { label } => say!("ended-point-added", label = label),
        Ended::PointOpened { label } => say!("ended-point-opened", label = label),
        Ended::ClosedBetween { label } => say!("ended-closed-between", label = label),
        Ended::PointClosed { label: Some(label) } => say!("ended-point-closed", label = label),
        Ended::PointClosed { label: None } => say!("ended-some-point-closed"),
        Ended::OpenedAndClosed { label } => say!("ended-opened-and-closed", label = label),
        Ended::Scope => say!("ended-scope"),
        Ended::Zone => say!("ended-zone"),
        Ended::Shift => say!("ended-shift"),
        Ended::WayAnswered => say!("ended-way-answered"),
        Ended::WorkLeft => say!("ended-work-left"),
        Ended::WorkFinished => say!("ended-work-finished"),
        Ended::WorkStopped => say!("ended-work-stopped"),
        Ended::GivenUp => say!("ended-given-up"),
        Ended::CoverOff { what } => say!("ended-cover-off", what = what),
        Ended::Limit => say!("ended-limit"),
        Ended::CompanyLimit => say!("ended-company-limit"),
        Ended::NeutralParted { what } => say!("ended-neutral-parted", what = what),
        Ended::Withdrawn => say!("ended-withdrawn"),
        Ended::SystemCorrected => say!("ended-system-corrected"),
        Ended::EarthOff { label } => say!("ended-earth-off", label = label),
        Ended::StaysLive { what } => say!("ended-stays-live", what = what),
        Ended::Answered { question, answer, about } => {
            say!("ended-answered", says = told(question, answer, about, ""))
        }
    }
}

/// Something that was met, in a sentence.
pub fn trouble(kind: &TroubleKind) -> String {
    match kind {
        TroubleKind::Voltage(met) => say!("trouble-voltage", at = met_at(met), reading = reading(met.reading)),
        TroubleKind::NotEarth => say!("trouble-not-earth"),
        TroubleKind::IndicatorFailed(_) => say!("trouble-indicator-failed"),
    }
}
