//! The step sequence, derived.
//!
//! Nothing here is stored and nothing is ticked: a step is done when it lacks nothing, and what it lacks is a list of
//! [`Blocker`]s worked out from the job. A *soft* one may be passed over by a named person with a reason (a deviation, shown on
//! everything that follows); a *firm* one may not.

use crate::journal::fact::About;
use crate::journal::{EntryId, Fact};

use super::{Blocker, Deviation, Job};

/// The steps of a job, in order; each point of isolation is a step of its own, because the person stands in front of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// Plan: the permit.
    Permit,
    /// Plan: who takes part.
    People,
    /// Plan: who was told.
    Told,
    /// Plan: barriers and signs.
    Barriers,
    /// Plan: other sources.
    Sources,
    /// Plan: stored energy.
    Stored,
    /// Plan: points of isolation.
    Points,
    /// Plan: indicator and proving unit.
    Instruments,
    /// Plan: the rotation before the isolation.
    RotationFound,
    /// Plan: circuits to shed.
    Circuits,
    /// Isolate: shed them.
    Shed,
    /// Isolate: one point: open, lock, sign, photograph.
    Isolate(EntryId),
    /// Prove: covers off.
    OpenUp,
    /// Prove: the indicator, before.
    ProveBefore,
    /// Prove: that the reference is earth.
    ProveReference,
    /// Prove: stored energy is gone, and no direct voltage is there.
    Discharge,
    /// Prove: every pair.
    DeadTest,
    /// Prove: the indicator, after.
    ProveAfter,
    /// Work.
    Work,
    /// Restore: covers back.
    CoversBack,
    /// Restore: people warned.
    Warn,
    /// Restore: locks and signs off.
    Unlock,
    /// Restore: points closed.
    Close,
    /// Restore: presence and rotation.
    Presence,
    /// Restore: circuits on.
    CircuitsOn,
    /// Restore: hand back.
    HandBack,
}

/// The part of a job that a step belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// Before anything is touched.
    Plan,
    /// Off, locked and labelled.
    Isolate,
    /// The dead test.
    Prove,
    /// The work itself.
    Work,
    /// The supply comes back.
    Restore,
}

impl Stage {
    /// All, in order.
    pub const ALL: [Stage; 5] = [Stage::Plan, Stage::Isolate, Stage::Prove, Stage::Work, Stage::Restore];

    /// Its name in tables.
    pub fn code(self) -> &'static str {
        match self {
            Stage::Plan => "plan",
            Stage::Isolate => "isolate",
            Stage::Prove => "prove",
            Stage::Work => "work",
            Stage::Restore => "restore",
        }
    }
}

/// A step with all that its title says: what it is called without the job at hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepOf {
    /// Which.
    pub step: Step,
    /// The label of the point that it is about; `None` if there is none, or it is not known here.
    pub point: Option<String>,
    /// Whether the job has more than one line, so that the lines turn.
    pub turns: bool,
}

/// A step of a job with its state.
#[derive(Debug, Clone, PartialEq)]
pub struct StepState {
    /// Which.
    pub step: Step,
    /// What it still lacks; empty when it is done.
    pub blockers: Vec<Blocker>,
    /// The deviation that passes over what is soft, if there is one.
    pub deviation: Option<Deviation>,
}

impl StepState {
    /// Whether the next step may begin.
    pub fn passed(&self) -> bool {
        self.blockers.is_empty() || (self.deviation.is_some() && self.blockers.iter().all(|l| !l.is_firm()))
    }

    /// Whether a deviation can be recorded now: something is lacking, and nothing of it is firm.
    pub fn may_deviate(&self) -> bool {
        // What is passed over at the hand-back is what comes before it.
        let mut blockers = self.blockers.iter().filter(|l| !matches!(l, Blocker::NotHandedBack)).peekable();
        blockers.peek().is_some() && self.deviation.is_none() && blockers.all(|l| !l.is_firm())
    }
}

impl Step {
    /// Its stage.
    pub fn stage(self) -> Stage {
        use Step::*;
        match self {
            Permit | People | Told | Barriers | Sources | Stored | Points | Instruments | RotationFound | Circuits => {
                Stage::Plan
            }
            Shed | Isolate(_) => Stage::Isolate,
            OpenUp | ProveBefore | ProveReference | Discharge | DeadTest | ProveAfter => Stage::Prove,
            Work => Stage::Work,
            CoversBack | Warn | Unlock | Close | Presence | CircuitsOn | HandBack => Stage::Restore,
        }
    }

    /// Its name in routes and deviations.
    pub fn name(self) -> String {
        use Step::*;
        match self {
            Permit => "permit",
            People => "people",
            Told => "told",
            Barriers => "barriers",
            Sources => "sources",
            Stored => "stored-energy",
            Points => "points",
            Instruments => "instruments",
            RotationFound => "rotation-found",
            Circuits => "circuits",
            Shed => "shed",
            Isolate(point) => return format!("isolate-{point}"),
            OpenUp => "open-up",
            ProveBefore => "prove-before",
            ProveReference => "prove-reference",
            Discharge => "discharge",
            DeadTest => "dead-test",
            ProveAfter => "prove-after",
            Work => "work",
            CoversBack => "covers-back",
            Warn => "warn",
            Unlock => "unlock",
            Close => "close",
            Presence => "presence",
            CircuitsOn => "circuits-on",
            HandBack => "hand-back",
        }
        .into()
    }

    /// The step of that name.
    pub fn named(name: &str) -> Option<Step> {
        if let Some(point) = name.strip_prefix("isolate-") {
            return point.parse().ok().map(Step::Isolate);
        }
        Step::FIXED.into_iter().find(|step| step.name() == name)
    }

    /// Every step but those of single points, in order.
    const FIXED: [Step; 25] = {
        use Step::*;
        [
            Permit,
            People,
            Told,
            Barriers,
            Sources,
            Stored,
            Points,
            Instruments,
            RotationFound,
            Circuits,
            Shed,
            OpenUp,
            ProveBefore,
            ProveReference,
            Discharge,
            DeadTest,
            ProveAfter,
            Work,
            CoversBack,
            Warn,
            Unlock,
            Close,
            Presence,
            CircuitsOn,
            HandBack,
        ]
    };

    /// With what its title says.
    pub fn of_job(self, job: &Job) -> StepOf {
        let point = match self {
            Step::Isolate(point) => job.point(point).map(|p| p.label.clone()),
            _ => None,
        };
        StepOf { step: self, point, turns: job.turns() }
    }

    /// The step that `fact` belongs to, if it belongs to one whose turn has to have come.
    pub fn of(fact: &Fact) -> Option<Step> {
        Some(match fact {
            Fact::CircuitOff { .. } => Step::Shed,
            Fact::PointOpened { point, .. } | Fact::SignPosted { point } => Step::Isolate(*point),
            Fact::CoverOff { .. } | Fact::NoCovers { .. } => Step::OpenUp,
            Fact::RotationFound { .. } => Step::RotationFound,
            Fact::RunSigned { .. } => Step::ProveAfter,
            Fact::IndicatorProved { run: None, .. } => Step::ProveBefore,
            // A long test is proved in between: the indicator's turn is whenever a pair's is.
            Fact::IndicatorProved { run: Some(_), works: true, .. } => Step::DeadTest,
            Fact::ReferenceProved { .. } => Step::ProveReference,
            Fact::DischargeRead { .. } => Step::Discharge,
            Fact::ReadingTaken { .. } => Step::DeadTest,
            Fact::WorkBegan { .. } | Fact::WorkFinished { .. } => Step::Work,
            Fact::CoverBack { .. } => Step::CoversBack,
            Fact::Told { about: About::Energising, .. } => Step::Warn,
            Fact::PointClosed { .. } => Step::Close,
            Fact::PresenceRead { .. } | Fact::RotationRead { .. } | Fact::SupplyAnswered { .. } => Step::Presence,
            Fact::CircuitOn { .. } => Step::CircuitsOn,
            Fact::HandedBack { .. } => Step::HandBack,
            _ => return None,
        })
    }
}

impl Job {
    /// The steps in order.
    pub fn sequence(&self) -> Vec<Step> {
        let mut steps = Step::FIXED.to_vec();
        // One line does not turn.
        steps.retain(|s| *s != Step::RotationFound || self.turns());
        let after_shedding = 1 + steps.iter().position(|s| *s == Step::Shed).unwrap_or(0);
        steps.splice(after_shedding..after_shedding, self.points.iter().map(|p| Step::Isolate(p.stamp.id)));
        steps
    }

    /// The steps with their states.
    pub fn steps(&self) -> Vec<StepState> {
        self.sequence()
            .into_iter()
            .map(|step| StepState {
                step,
                blockers: self.blockers(step),
                // A deviation passes over what was lacking in its own round, not what a changed scope asks for anew.
                deviation: self
                    .deviations
                    .iter()
                    .rev()
                    .find(|d| d.step == step.name() && self.this_round(&d.stamp))
                    .cloned(),
            })
            .collect()
    }

    /// The step whose turn it is, or `None` when the job is handed back.
    pub fn current(&self) -> Option<Step> {
        self.steps().into_iter().find(|s| !s.passed()).map(|s| s.step)
    }
}
