//! The step sequence, derived.
//!
//! Nothing here is stored and nothing is ticked: a step is done when it lacks nothing, and what it lacks is a list of
//! sentences worked out from the job. A *soft* lack may be passed over by a named person with a reason (a deviation, shown on
//! everything that follows); a *firm* one may not.

use crate::journal::fact::About;
use crate::journal::{EntryId, Fact};
use crate::prove::System;

use super::{Deviation, Job};

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

/// Something a step still lacks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lack {
    /// One sentence.
    pub text: String,
    /// Whether no deviation can pass it over.
    pub firm: bool,
}

/// A step of a job with its state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepState {
    /// Which.
    pub step: Step,
    /// What it still lacks; empty when it is done.
    pub lacks: Vec<Lack>,
    /// The deviation that passes over what is soft, if there is one.
    pub deviation: Option<Deviation>,
}

impl StepState {
    /// Whether the next step may begin.
    pub fn passed(&self) -> bool {
        self.lacks.is_empty() || (self.deviation.is_some() && self.lacks.iter().all(|l| !l.firm))
    }

    /// Whether a deviation can be recorded now: something is lacking, and nothing of it is firm.
    pub fn may_deviate(&self) -> bool {
        !self.lacks.is_empty() && self.deviation.is_none() && self.lacks.iter().all(|l| !l.firm)
    }
}

impl Step {
    /// Its stage.
    pub fn stage(self) -> &'static str {
        use Step::*;
        match self {
            Permit | People | Told | Barriers | Sources | Stored | Points | Instruments | RotationFound | Circuits => {
                "Plan"
            }
            Shed | Isolate(_) => "Isolate",
            OpenUp | ProveBefore | ProveReference | Discharge | DeadTest | ProveAfter => "Prove dead",
            Work => "Work",
            CoversBack | Warn | Unlock | Close | Presence | CircuitsOn | HandBack => "Restore",
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

    /// Its title on a screen.
    pub fn title(self, job: &Job) -> String {
        use Step::*;
        match self {
            Permit => "Permit reference",
            People => "People on the job",
            Told => "Tell the people affected",
            Barriers => "Barriers and danger signs",
            Sources => "Look for other sources",
            Stored => "Look for stored energy",
            Points => "Points of isolation",
            Instruments => "Indicator and proving unit",
            RotationFound => "Rotation before isolating",
            Circuits => "Circuits to shed",
            Shed => "Shed the circuits",
            Isolate(point) => {
                return format!("Isolate {}", job.point(point).map_or("a point", |p| p.label.as_str()));
            }
            OpenUp => "Open up, treating it as live",
            ProveBefore => "Prove the indicator",
            ProveReference => "Prove the reference",
            Discharge => "Stored energy and direct voltage",
            DeadTest => "Test every pair",
            ProveAfter => "Prove the indicator again",
            Work => "Work",
            CoversBack => "Covers back",
            Warn => "Warn before energising",
            Unlock => "Locks and signs off",
            Close => "Close the points",
            Presence if job.system == System::OnePhase => "Presence",
            Presence => "Presence and rotation",
            CircuitsOn => "Circuits on, in order",
            HandBack => "Hand back",
        }
        .into()
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
        steps.retain(|s| *s != Step::RotationFound || self.system != System::OnePhase);
        let after_shedding = 1 + steps.iter().position(|s| *s == Step::Shed).unwrap_or(0);
        steps.splice(after_shedding..after_shedding, self.points.iter().map(|p| Step::Isolate(p.stamp.id)));
        steps
    }

    /// The steps with their states. `name` gives people's names.
    pub fn steps(&self, name: &dyn Fn(EntryId) -> String) -> Vec<StepState> {
        self.sequence()
            .into_iter()
            .map(|step| StepState {
                step,
                lacks: self.lacks(step, name),
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
    pub fn current(&self, name: &dyn Fn(EntryId) -> String) -> Option<Step> {
        self.steps(name).into_iter().find(|s| !s.passed()).map(|s| s.step)
    }
}
