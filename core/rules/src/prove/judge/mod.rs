//! The judge: what a set of readings proves, and what may be behind them.
//!
//! Promises: the verdict is worked out from the readings and the plan's conditions alone, and no diagnosis changes it; of several readings
//! of one pair the worst counts; whatever is not known comes out as not proved. Start at [`judge`]; the method is in `docs/judge.md`.

mod blunder;
mod cause;
mod causes;
pub mod drawing;
pub mod energised;
mod fit;
mod frames;
pub mod neutral;
mod scene;
mod soft;
mod verdict;

use serde::Serialize;

pub use cause::Cause;

use super::conditions::Unmet;
use super::limit::Limits;
use super::{Case, GivenValue, Holder, ReferenceProof};
use blunder::Ranked;
use neutral::Unexpected;
use scene::Scene;

/// What the readings prove.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Every pair was read without an indication, and the case shows all that the plan demands.
    ProvedDead,
    /// A pair gave an indication, or the reference failed.
    TreatAsLive,
    /// Something that the plan demands is missing. Treat as live.
    Incomplete,
    /// The readings are worth nothing. Treat as live.
    Void,
}

/// Why the verdict is what it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    /// The indicator did not work on its proof before the tests.
    FailedBefore,
    /// The indicator did not work on its proof after the tests.
    FailedAfter,
    /// The proof of the reference failed.
    ReferenceFailed,
    /// A voltage was read.
    Lit {
        /// Where.
        at: ReadAt,
        /// What.
        value: GivenValue,
        /// Direct voltage, or alternating.
        dc: bool,
        /// The greatest figure that would have counted as dead, in millivolts.
        limit_mv: u32,
    },
    /// The plan demands it, and the case does not show it.
    Unmet(Unmet),
    /// All pairs were read without an indication, so many of them, and the indicator worked before and after.
    AllRead {
        /// How many pairs.
        pairs: usize,
        /// Up to which figures a reading counted as dead.
        limits: Limits,
    },
    /// The reference was shown to be earth in this way.
    Reference(ReferenceProof),
    /// Everything was read with a low impedance, which pulls an interference voltage down only while it touches.
    LowImpedance,
}

/// Where something was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ReadAt {
    /// Between two conductors.
    Pair([String; 2]),
    /// At the terminals of what holds a charge.
    Holder(Holder),
}

/// What may be behind the readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagnosis {
    /// What it is.
    pub cause: Cause,
    /// How well its potentials give the readings: 1 is exact, 0 is as bad as no voltage at all.
    pub fit: f64,
    /// What it is about.
    pub about: About,
    /// From how many conductors it was worked out, those that read most; `None`: from all.
    pub of: Option<usize>,
}

/// What a diagnosis is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// These conductors.
    Conductors(Vec<String>),
    /// These places.
    Places(Vec<ReadAt>),
    /// The pair whose reading does not belong to the others.
    Pair([String; 2]),
    /// A neutral and earth.
    Neutral(Unexpected),
}

/// A conductor in the plane of potentials.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Potential {
    /// The conductor.
    pub name: String,
    /// Volts to the right. The turn of the whole and its mirror image mean nothing.
    pub x: f64,
    /// Volts upwards.
    pub y: f64,
}

/// What the judge finds.
#[derive(Debug, Clone, PartialEq)]
pub struct Judgement {
    /// What is proved.
    pub verdict: Verdict,
    /// Why.
    pub why: Vec<Reason>,
    /// What may be behind it, likeliest first. Never a reason to call anything dead.
    pub diagnoses: Vec<Diagnosis>,
    /// Pairs whose reading does not belong to the others, worst first.
    pub repeat: Vec<[String; 2]>,
    /// The potentials of the likeliest diagnosis, if there is voltage and the readings suffice.
    pub potentials: Option<Vec<Potential>>,
}

/// A diagnosis further from the best than this, in chi squared, is not shown.
const SHOWN: f64 = 24.0;

/// Judges a case. Bounded: at most twelve conductors are fitted together, those that read most.
pub fn judge(case: &Case) -> Judgement {
    let (verdict, why) = verdict::verdict(case);
    let mut out = Judgement { verdict, why, diagnoses: Vec::new(), repeat: Vec::new(), potentials: None };
    let direct = verdict::direct(case);
    if !direct.is_empty() {
        out.diagnoses.push(whole(Cause::DirectVoltage, About::Places(direct)));
    }
    let lit = case.readings.iter().any(|g| !g.dc && case.indicates(g));
    if lit && let Some(scene) = Scene::of(case, 1.0) {
        explain(case, &scene, &mut out);
    } else if case.reference_proved == ReferenceProof::Failed {
        let names = case.conductors.iter().filter(|c| c.role.is_reference()).map(|c| c.name.clone());
        out.diagnoses.push(whole(Cause::BrokenReference, About::Conductors(names.collect())));
    }
    let odd = neutral::unexpected(case).into_iter();
    out.diagnoses.extend(odd.map(|found| whole(Cause::NeutralEarth, About::Neutral(found))));
    out
}

/// Ranks the causes and tells the best three.
fn explain(case: &Case, scene: &Scene, out: &mut Judgement) {
    let (ranked, repeat) = blunder::rank(case, scene);
    let least = ranked.first().map_or(0.0, |r| r.total);
    let shown = |r: &&Ranked| r.total <= least + SHOWN && (r.cause != Cause::Misplaced || !repeat.is_empty());
    for r in ranked.iter().filter(shown).take(3) {
        let about = match repeat.first() {
            Some(pair) if r.cause == Cause::Misplaced => About::Pair(pair_of(scene, *pair)),
            _ => About::Conductors(r.which.iter().map(|k| scene.names[*k].clone()).collect()),
        };
        let of = (scene.left_out > 0).then_some(scene.names.len());
        out.diagnoses.push(Diagnosis { cause: r.cause, fit: fit_of(scene, r), about, of });
    }
    out.repeat = repeat.iter().map(|k| pair_of(scene, *k)).collect();
    out.potentials = ranked.first().map(|r| {
        let spots = scene.names.iter().zip(&r.fitted.spots);
        let tenth = |v: f64| (v * 10.0).round() / 10.0 + 0.0;
        spots.map(|(name, s)| Potential { name: name.clone(), x: tenth(s.x), y: tenth(s.y) }).collect()
    });
}

fn pair_of(scene: &Scene, obs: usize) -> [String; 2] {
    let o = &scene.obs[obs];
    [scene.names[o.i].clone(), scene.names[o.j].clone()]
}

/// One minus what is left over, in proportion to what was read.
fn fit_of(scene: &Scene, r: &Ranked) -> f64 {
    let (mut left, mut read) = (0.0, 25.0);
    for (k, o) in scene.obs.iter().enumerate() {
        if Some(k) != r.skip {
            left += fit::miss(o, &r.fitted.spots).powi(2);
            read += o.lo * o.lo;
        }
    }
    let fit: f64 = 1.0 - (left / read).sqrt();
    (fit.clamp(0.0, 1.0) * 1000.0).round() / 1000.0
}

/// A diagnosis that rests on no fit.
fn whole(cause: Cause, about: About) -> Diagnosis {
    Diagnosis { cause, fit: 1.0, about, of: None }
}
