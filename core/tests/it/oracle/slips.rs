//! Players who do everything right but one thing. The players who do anything hardly ever come near a proof; these come as near as one step,
//! and still no phone may show "proved dead" where the promises do not. Each slip is a sentence of the promises that somebody forgets, or
//! something that somebody else did and they did not hear of. What becomes of a job with it is in `slipping.rs`.

/// The one thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slip {
    // What somebody does not do, or does otherwise, before the proof.
    NoEarth,
    EarthByALiveLine,
    NoSecondProof,
    ProvedOnItself,
    SlowTest,
    OnePairLeft,
    OnePairAtAVolt,
    AlternatingAlone,
    DischargeNotRead,
    DischargeAtOnce,
    LightsLate,
    LightsAtAlternatingAlone,
    NotChecked,
    CheckedYesterday,
    OneSourceNotAsked,
    StoredNotAsked,
    OthersNotAnswered,
    OnePoleLeft,
    NeutralOfAnother,
    NoLock,
    LearnerAlone,
    ScopeChangedBefore,
    CauseNotFoundOnce,
    CauseFoundThenNot,
    OthersClockAhead,
    BlankSource,
    NoReasonElsewhere,
    CauseSaysNothing,
    DischargeLit,
    UnitAsIndicator,
    SignedByALearner,
    LimitByAnother,
    ProtectiveOpened,
    ProverFailed,
    EarthByAnyLine,
    LinkOfAnother,
    MiddleLeft,
    PoleAlternatingAlone,
    LightsAtThirty,
    WaitOfTheTable,
    WaitOfNothingKnown,
    WaitBelowItsLabel,
    WaitCutShort,
    CoverAtOnce,
    SourceNotRead,
    LabelsNotAnswered,
    LightsAboveTwelve,
    EarthByALineOfOnesOwn,
    PoleBesideLeft,
    LiveOfTheNormalSupply,
    LiveOfAListedSystem,
    LiveUnscreened,
    LiveButOpened,
    LiveWithdrawn,
    CorrectedBefore,
    // What was answered so that it stops.
    DoesNotFit,
    NotBlocked,
    StartedAndWentOn,
    StartsAgain,
    LiftSaysNothing,
    LiftOfAnother,
    LiftWithdrawn,
    StartedThenCannot,
    StartedThenOpened,
    LabelsDoNotMatch,
    LabelsInNoPhoto,
    LabelsOfAnother,
    UnknownQuestion,
    UnknownAnswer,
    // What happens once it is proved, and everything is put right but the test.
    Cover,
    Neutral,
    Source,
    Stored,
    Point,
    LockOffAndOn,
    Left,
    Stopped,
    Shift,
    Scope,
    EarthOff,
    NamedLive,
    Corrected,
    Limit,
    Withdrawn,
    Met,
    IndicatorFailed,
    TooOld,
    PutBack,
    StartedAfter,
    NotScreened,
    LabelsAfter,
    CurrentAfter,
    CurrentRead,
    ChargeRead,
    StopWithdrawn,
    // What somebody else did.
    MetUnheard,
    CoverUnheard,
    MetAside,
    FailedElsewhere,
    TwinFailed,
    ClosedElsewhere,
    ClockBack,
    LiftUnknowing,
    TwoStopsOneLift,
    StopUnheard,
    // What nobody answers, once it is proved: the gate lets nobody on.
    LiveBesideLeft,
    TransformersLeft,
    ChargeLeft,
    EarthsLeft,
    ReleaseLeft,
    InsideLeft,
    RcdLeft,
    ShortsLeft,
    ControlsLeft,
    PolarityLeft,
}

impl Slip {
    pub const ALL: [Slip; 115] = [
        Slip::NoEarth,
        Slip::EarthByALiveLine,
        Slip::NoSecondProof,
        Slip::ProvedOnItself,
        Slip::SlowTest,
        Slip::OnePairLeft,
        Slip::OnePairAtAVolt,
        Slip::AlternatingAlone,
        Slip::DischargeNotRead,
        Slip::DischargeAtOnce,
        Slip::LightsLate,
        Slip::LightsAtAlternatingAlone,
        Slip::NotChecked,
        Slip::CheckedYesterday,
        Slip::OneSourceNotAsked,
        Slip::StoredNotAsked,
        Slip::OthersNotAnswered,
        Slip::OnePoleLeft,
        Slip::NeutralOfAnother,
        Slip::NoLock,
        Slip::LearnerAlone,
        Slip::ScopeChangedBefore,
        Slip::CauseNotFoundOnce,
        Slip::CauseFoundThenNot,
        Slip::OthersClockAhead,
        Slip::BlankSource,
        Slip::NoReasonElsewhere,
        Slip::CauseSaysNothing,
        Slip::DischargeLit,
        Slip::UnitAsIndicator,
        Slip::SignedByALearner,
        Slip::LimitByAnother,
        Slip::ProtectiveOpened,
        Slip::ProverFailed,
        Slip::EarthByAnyLine,
        Slip::LinkOfAnother,
        Slip::MiddleLeft,
        Slip::PoleAlternatingAlone,
        Slip::LightsAtThirty,
        Slip::WaitOfTheTable,
        Slip::WaitOfNothingKnown,
        Slip::WaitBelowItsLabel,
        Slip::WaitCutShort,
        Slip::CoverAtOnce,
        Slip::SourceNotRead,
        Slip::LabelsNotAnswered,
        Slip::LightsAboveTwelve,
        Slip::EarthByALineOfOnesOwn,
        Slip::PoleBesideLeft,
        Slip::LiveOfTheNormalSupply,
        Slip::LiveOfAListedSystem,
        Slip::LiveUnscreened,
        Slip::LiveButOpened,
        Slip::LiveWithdrawn,
        Slip::CorrectedBefore,
        Slip::DoesNotFit,
        Slip::NotBlocked,
        Slip::StartedAndWentOn,
        Slip::StartsAgain,
        Slip::LiftSaysNothing,
        Slip::LiftOfAnother,
        Slip::LiftWithdrawn,
        Slip::StartedThenCannot,
        Slip::StartedThenOpened,
        Slip::LabelsDoNotMatch,
        Slip::LabelsInNoPhoto,
        Slip::LabelsOfAnother,
        Slip::UnknownQuestion,
        Slip::UnknownAnswer,
        Slip::Cover,
        Slip::Neutral,
        Slip::Source,
        Slip::Stored,
        Slip::Point,
        Slip::LockOffAndOn,
        Slip::Left,
        Slip::Stopped,
        Slip::Shift,
        Slip::Scope,
        Slip::EarthOff,
        Slip::NamedLive,
        Slip::Corrected,
        Slip::Limit,
        Slip::Withdrawn,
        Slip::Met,
        Slip::IndicatorFailed,
        Slip::TooOld,
        Slip::PutBack,
        Slip::StartedAfter,
        Slip::NotScreened,
        Slip::LabelsAfter,
        Slip::CurrentAfter,
        Slip::CurrentRead,
        Slip::ChargeRead,
        Slip::StopWithdrawn,
        Slip::MetUnheard,
        Slip::CoverUnheard,
        Slip::MetAside,
        Slip::FailedElsewhere,
        Slip::TwinFailed,
        Slip::ClosedElsewhere,
        Slip::ClockBack,
        Slip::LiftUnknowing,
        Slip::TwoStopsOneLift,
        Slip::StopUnheard,
        Slip::LiveBesideLeft,
        Slip::TransformersLeft,
        Slip::ChargeLeft,
        Slip::EarthsLeft,
        Slip::ReleaseLeft,
        Slip::InsideLeft,
        Slip::RcdLeft,
        Slip::ShortsLeft,
        Slip::ControlsLeft,
        Slip::PolarityLeft,
    ];

    /// Whether all is proved before it.
    pub fn comes_after(self) -> bool {
        self >= Slip::Cover
    }

    /// Whether it takes one person only, whose phone need not hear of another's.
    pub fn is_of_one(self) -> bool {
        !matches!(
            self,
            Slip::OthersClockAhead
                | Slip::Shift
                | Slip::PutBack
                | Slip::MetUnheard
                | Slip::CoverUnheard
                | Slip::MetAside
                | Slip::FailedElsewhere
                | Slip::TwinFailed
                | Slip::ClosedElsewhere
                | Slip::ClockBack
                | Slip::LiftUnknowing
                | Slip::TwoStopsOneLift
                | Slip::StopUnheard
        )
    }

    /// Whether it says nothing of a proof, and the gate has to refuse it wherever there is one.
    pub fn is_refused(self) -> bool {
        self == Slip::LabelsNotAnswered || self.leaves_out().is_some()
    }

    /// The question that nobody answers once it is proved, and what waits for it.
    pub fn leaves_out(self) -> Option<(&'static str, &'static str)> {
        Some(match self {
            Slip::LiveBesideLeft => ("live-beside", "WorkBegan"),
            Slip::TransformersLeft => ("current-transformers", "WorkBegan"),
            Slip::ChargeLeft => ("charge-returned", "WorkBegan"),
            Slip::EarthsLeft => ("temporary-earths", "WorkBegan"),
            Slip::ReleaseLeft => ("released-by", "WorkBegan"),
            Slip::InsideLeft => ("left-inside", "CoverBack"),
            Slip::RcdLeft => ("rcd", "HandedBack"),
            Slip::ShortsLeft => ("shorts-off", "HandedBack"),
            Slip::ControlsLeft => ("controls-back", "HandedBack"),
            // Nobody passes the readings over without it.
            Slip::PolarityLeft => ("polarity-back", "Deviated"),
            _ => return None,
        })
    }

    /// Whether it is about an answer that stops, whoever gave it.
    pub fn is_of_a_question(self) -> bool {
        self.goes_on_stopped()
            || matches!(
                self,
                Slip::StartedAfter
                    | Slip::NotScreened
                    | Slip::LabelsAfter
                    | Slip::CurrentAfter
                    | Slip::CurrentRead
                    | Slip::ChargeRead
                    | Slip::StopWithdrawn
                    | Slip::StopUnheard
            )
    }

    /// Whether nobody answers otherwise, however often it stops.
    pub fn goes_on_stopped(self) -> bool {
        (Slip::DoesNotFit..=Slip::UnknownAnswer).contains(&self)
            || matches!(self, Slip::LiftUnknowing | Slip::TwoStopsOneLift)
    }
}
