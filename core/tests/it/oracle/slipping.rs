//! The job that a slip matters in, and what becomes of the right things in it.

use stillbar_core::journal::fact::*;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::{Earthing, Reading, System};

use super::finds::Stored;
use super::plan::{Next, Plan};
use super::slips::Slip;
use super::stopped;

/// What becomes of what would be right.
pub enum Turn {
    Right(Next),
    /// It is not done, and whoever should have done it goes on as if it had been.
    Believe(Fact),
}

impl Slip {
    /// Makes the job one in which the slip matters, and nothing else goes wrong.
    pub fn prepare(self, plan: &mut Plan, nth: usize) {
        plan.point = ("Q4 feeder switch", "Main board MB1, bay 4");
        plan.leaves_out = self.leaves_out().map(|(code, _)| code);
        plan.finds_out = self != Slip::CauseNotFoundOnce;
        plan.photos |= matches!(self, Slip::LabelsNotAnswered | Slip::LabelsDoNotMatch | Slip::LabelsOfAnother);
        plan.photos &= self != Slip::LabelsInNoPhoto;
        match self {
            Slip::EarthByALiveLine => plan.is_of(System::ThreePhaseNeutral, Earthing::It, ""),
            Slip::EarthByAnyLine => plan.is_of(System::CornerGrounded, Earthing::TnS, "not-known"),
            Slip::LinkOfAnother => {
                plan.is_of(System::CornerGrounded, Earthing::TnS, "l1");
                (plan.link, plan.others) = (true, Vec::new());
            }
            Slip::MiddleLeft => {
                plan.is_of(System::DcThreeWire, Earthing::It, "");
                plan.others = Vec::new();
            }
            // 55 V to earth: 27.5 V is where it has to light.
            Slip::LightsAtThirty => plan.is_of(System::SiteTransformer, Earthing::TnS, ""),
            Slip::PoleAlternatingAlone => {
                plan.is_of(System::DcTwoWire, Earthing::TnS, "minus");
                plan.figures = true;
            }
            Slip::PolarityLeft => plan.is_of(System::DcTwoWire, Earthing::TnS, "minus"),
            _ if self.leaves_out().is_some() => {
                plan.is_of(System::ThreePhaseNeutral, Earthing::TnS, "");
                let other = matches!(self, Slip::EarthsLeft | Slip::ControlsLeft);
                plan.others = if other { vec![Plan::another(SourceKind::Generator)] } else { Vec::new() };
                plan.stored = (self == Slip::ChargeLeft).then_some(Stored::bare("Drive 1", StoredKind::Drive, 900));
                plan.covers = true;
            }
            Slip::LightsAboveTwelve | Slip::EarthByALineOfOnesOwn => plan.lists(1, &[]),
            Slip::PoleBesideLeft => plan.lists(0, &[]),
            Slip::LiveOfTheNormalSupply => plan.lists(1, &["W"]),
            Slip::LiveOfAListedSystem => {
                plan.is_of(System::ThreePhaseNeutral, Earthing::TnS, "");
                plan.live = vec!["N".into()];
            }
            Slip::LiveUnscreened => {
                plan.lists(2, &["K1", "K2"]);
                plan.screened = ".";
            }
            Slip::LiveButOpened | Slip::LiveWithdrawn => plan.lists(0, &["S+", "S-"]),
            Slip::CorrectedBefore | Slip::Corrected => {
                plan.is_of(System::ThreeWire, Earthing::TnS, "");
                plan.others = Vec::new();
            }
            Slip::SourceNotRead => (plan.others, plan.stored) = (vec![Plan::another(SourceKind::Battery)], None),
            Slip::AlternatingAlone | Slip::LightsAtAlternatingAlone => {
                plan.others = vec![Plan::another(SourceKind::Pv)];
                // A dark lamp that shows both would say something of direct voltage too.
                plan.figures = true;
            }
            Slip::DischargeNotRead
            | Slip::DischargeAtOnce
            | Slip::DischargeLit
            | Slip::WaitOfTheTable
            | Slip::WaitCutShort
            | Slip::CoverAtOnce => plan.stored = Some(Stored::bare("Drive 1", StoredKind::Drive, 900)),
            Slip::WaitOfNothingKnown => plan.stored = Some(Stored::bare("Box", StoredKind::NotKnown, 900)),
            Slip::WaitBelowItsLabel => {
                plan.stored = Some(Stored { label: Some(900), ..Stored::bare("Bank", StoredKind::PowerFactor, 900) })
            }
            Slip::OthersNotAnswered | Slip::NoReasonElsewhere => {
                plan.others = if nth == 0 { vec![Plan::another(SourceKind::Generator)] } else { Vec::new() };
            }
            Slip::NeutralOfAnother => {
                plan.is_of(System::ThreePhaseNeutral, Earthing::Tt, "");
                plan.others = vec![Plan::another(SourceKind::Generator)];
            }
            Slip::Neutral => plan.is_of(System::ThreePhaseNeutral, Earthing::TnS, ""),
            // What is found again would ask for its point again, which is there.
            Slip::Source | Slip::Scope | Slip::ScopeChangedBefore => (plan.others, plan.stored) = (Vec::new(), None),
            Slip::CoverUnheard => plan.stored = None,
            // Nor may hearing of the other job end the proof by what else was found there.
            Slip::TwinFailed => (plan.others, plan.stored) = (Vec::new(), None),
            Slip::ClosedElsewhere => (plan.others, plan.stored, plan.covers) = (Vec::new(), None, false),
            _ if self.is_of_a_question() => stopped::prepare(plan, self == Slip::LiftOfAnother),
            _ => {}
        }
    }

    /// What becomes of the next right thing.
    pub fn turns(self, plan: &Plan, me: EntryId, mate: EntryId, next: Next) -> Turn {
        let fact = match next {
            Next::Keep(fact) => fact,
            Next::Wait(_) if matches!(self, Slip::DischargeAtOnce | Slip::WaitCutShort) => {
                return Turn::Believe(Fact::NoCovers { why: "It is open".into() });
            }
            Next::Wait(_) if self == Slip::CoverAtOnce => {
                return Turn::Right(Next::Keep(Fact::CoverOff { what: "Front plate".into() }));
            }
            other => return Turn::Right(other),
        };
        if self.is_of_a_question() || self.leaves_out().is_some() {
            return stopped::turns(fact);
        }
        let (last_line, reference) = (plan.lines().pop().unwrap_or_default(), plan.reference());
        let forgotten = match (self, &fact) {
            (Slip::NoEarth, Fact::ReferenceProved { .. })
            | (Slip::NoSecondProof, Fact::IndicatorProved { run: Some(_), .. })
            | (Slip::AlternatingAlone | Slip::PoleAlternatingAlone, Fact::ReadingTaken { dc: true, .. })
            | (Slip::DischargeNotRead | Slip::SourceNotRead, Fact::DischargeRead { .. })
            | (Slip::NotChecked | Slip::CheckedYesterday, Fact::InstrumentChecked { .. })
            | (Slip::ScopeChangedBefore, Fact::SourceAnswered { .. } | Fact::StoredAnswered { .. })
            | (Slip::OneSourceNotAsked, Fact::SourceAnswered { kind: SourceKind::Battery, .. })
            | (Slip::StoredNotAsked, Fact::StoredAnswered { .. })
            | (Slip::OthersNotAnswered, Fact::SourceElsewhere { .. })
            | (Slip::NoLock, Fact::LockFitted { .. }) => true,
            (Slip::OnePairLeft, Fact::ReadingTaken { first, then, .. }) => *first == reference && *then == last_line,
            (Slip::LiveWithdrawn, Fact::StaysLive { .. }) => true,
            // Between the string and the board.
            (Slip::PoleBesideLeft, Fact::ReadingTaken { first, then, .. }) => first == "N" && then == "S-",
            (Slip::LabelsNotAnswered, Fact::Answered { question, .. }) => question == "labels",
            _ => false,
        };
        if forgotten {
            return Turn::Believe(fact);
        }
        Turn::Right(Next::Keep(match (self, fact) {
            (
                Slip::EarthByALiveLine | Slip::EarthByAnyLine | Slip::EarthByALineOfOnesOwn,
                Fact::ReferenceProved { run, how, holds, .. },
            ) => Fact::ReferenceProved { run, way: EarthProof::LiveLine, how, holds },
            (Slip::ProvedOnItself, Fact::IndicatorProved { run, indicator, works, .. }) => {
                Fact::IndicatorProved { run, indicator, on: ProvedOn::ProvingUnit(indicator), works }
            }
            (Slip::OnePairAtAVolt, Fact::ReadingTaken { run, first, then, dc, .. })
                if first == reference && then == last_line =>
            {
                Fact::ReadingTaken { run, first, then, reading: Reading::Millivolts(1_200), dc }
            }
            (
                Slip::LightsLate | Slip::LightsAtThirty | Slip::LightsAboveTwelve | Slip::LightsAtAlternatingAlone,
                Fact::InstrumentNoted { kind: kind @ InstrumentKind::Indicator, name, serial, .. },
            ) => {
                let (ac, dc) = match self {
                    Slip::LightsLate => (120_000, Some(120_000)),
                    Slip::LightsAtThirty => (30_000, Some(30_000)),
                    Slip::LightsAboveTwelve => (13_000, Some(13_000)),
                    _ => (12_000, None),
                };
                Fact::InstrumentNoted { kind, name, serial, lights_from: Some(LightsFrom { ac, dc }) }
            }
            (Slip::OnePoleLeft, Fact::PointAdded { label, at, kind, lockable, poles, same_as, cuts, .. }) => {
                let poles = poles.into_iter().filter(|p| *p != last_line).collect();
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch: None, stays_open: false, same_as }
            }
            (
                Slip::NeutralOfAnother,
                Fact::PointAdded { label, at, kind, lockable, poles, same_as, cuts: Some(cuts), .. },
            ) => {
                let poles = poles.into_iter().filter(|p| p != "N").collect();
                let (cuts, switch, stays_open) = (Some(cuts), None, false);
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as }
            }
            // L1 is the one at earth: another stays closed.
            (Slip::LinkOfAnother, Fact::PointAdded { label, at, kind, lockable, same_as, cuts, .. }) => {
                let (poles, switch, stays_open) = (vec!["L1".into(), "L3".into()], None, false);
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as }
            }
            (Slip::MiddleLeft, Fact::PointAdded { label, at, kind, lockable, poles, same_as, cuts, .. }) => {
                let poles = poles.into_iter().filter(|p| p != "M").collect();
                let (switch, stays_open) = (None, false);
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as }
            }
            (
                Slip::WaitOfTheTable | Slip::WaitOfNothingKnown | Slip::WaitBelowItsLabel,
                Fact::StoredAnswered { found: found @ Some(_), looked, kind, label, .. },
            ) => Fact::StoredAnswered { found, seconds: 120, looked, kind, label },
            (Slip::BlankSource, Fact::IndicatorProved { run, indicator, works, .. }) => {
                Fact::IndicatorProved { run, indicator, on: ProvedOn::KnownSource(" \u{200b}".into()), works }
            }
            (Slip::NoReasonElsewhere, Fact::SourceElsewhere { source, .. }) => {
                Fact::SourceElsewhere { source, why: ".".into() }
            }
            (Slip::CauseSaysNothing, Fact::CauseNoted { of, found, .. }) => {
                Fact::CauseNoted { of, found, cause: "..".into() }
            }
            (Slip::DischargeLit, Fact::DischargeRead { run, of, .. }) => {
                Fact::DischargeRead { run, of, reading: Reading::Lit(None) }
            }
            (Slip::UnitAsIndicator, Fact::IndicatorProved { run, on: ProvedOn::ProvingUnit(unit), works, .. }) => {
                Fact::IndicatorProved { run, indicator: unit, on: ProvedOn::KnownSource("Outlet 3".into()), works }
            }
            (
                Slip::LiveButOpened,
                Fact::PointAdded { label, at, kind, lockable, mut poles, same_as, cuts: None, .. },
            ) => {
                poles.push("S+".into());
                let (cuts, switch, stays_open) = (None, None, false);
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as }
            }
            (Slip::ProtectiveOpened, Fact::PointAdded { label, at, kind, lockable, mut poles, same_as, cuts, .. }) => {
                poles.push(reference);
                let (switch, stays_open) = (None, false);
                Fact::PointAdded { label, at, kind, lockable, poles, cuts, switch, stays_open, same_as }
            }
            (Slip::LearnerAlone | Slip::SignedByALearner, Fact::WorkerJoined { person, duty: Duty::InCharge })
                if person == me =>
            {
                Fact::WorkerJoined { person: mate, duty: Duty::InCharge }
            }
            (Slip::LearnerAlone | Slip::SignedByALearner, Fact::WorkerJoined { person, .. }) if person == me => {
                Fact::WorkerJoined { person, duty: Duty::Learning }
            }
            (_, fact) => fact,
        }))
    }
}
