//! The judge: what a set of readings proves, and what may be behind them.
//!
//! Promises: the verdict is worked out from the readings and the plan's conditions alone, and no diagnosis changes it; of several readings
//! of one pair the worst counts; whatever is not known comes out as not proved. Start at [`judge`]; the method is in `docs/judge.md`.

mod blunder;
mod causes;
pub mod drawing;
pub mod energised;
mod fit;
mod frames;
pub mod neutral;
mod scene;
mod soft;
mod verdict;
mod words;

use serde::Serialize;

use super::Case;
use blunder::Ranked;
use causes::Cause;
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

/// What may be behind the readings.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Diagnosis {
    /// Its name, such as `one-line-live`; all are in `docs/formats.md`.
    pub cause: String,
    /// How well its potentials give the readings: 1 is exact, 0 is as bad as no voltage at all.
    pub fit: f64,
    /// A plain sentence.
    pub explains: String,
    /// What to do.
    pub next: String,
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

/// What the judge says.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judgement {
    /// What is proved.
    pub verdict: Verdict,
    /// Why, as sentences.
    pub why: Vec<String>,
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
    if let Some(where_) = verdict::direct(case) {
        out.diagnoses.push(diagnosis(Cause::DirectVoltage, &where_, 1.0));
    }
    let lit = case.readings.iter().any(|g| !g.dc && case.indicates(g));
    if lit && let Some(scene) = Scene::of(case, 1.0) {
        explain(case, &scene, &mut out);
    } else if case.reference_proved == super::ReferenceProof::Failed {
        let names: Vec<&str> =
            case.conductors.iter().filter(|c| c.role.is_reference()).map(|c| c.name.as_str()).collect();
        out.diagnoses.push(diagnosis(Cause::BrokenReference, &names.join(", "), 1.0));
    }
    for found in neutral::unexpected(case) {
        out.diagnoses.push(diagnosis(Cause::NeutralEarth, &found.sentence(), 1.0));
    }
    out
}

/// Ranks the causes and tells the best three.
fn explain(case: &Case, scene: &Scene, out: &mut Judgement) {
    let (ranked, repeat) = blunder::rank(case, scene);
    let least = ranked.first().map_or(0.0, |r| r.total);
    let shown = |r: &&Ranked| r.total <= least + SHOWN && (r.cause != Cause::Misplaced || !repeat.is_empty());
    for r in ranked.iter().filter(shown).take(3) {
        let mut said = diagnosis(r.cause, &r.which, fit_of(scene, r));
        if r.cause == Cause::Misplaced
            && let Some(pair) = repeat.first()
        {
            let [a, b] = pair_of(scene, *pair);
            said.explains = format!("The reading {a} – {b} does not fit the others: no potentials give all of them.");
        }
        if scene.left_out > 0 {
            let count = scene.names.len();
            said.explains += &format!(" (Worked out from the {count} conductors that read most.)");
        }
        out.diagnoses.push(said);
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

fn diagnosis(cause: Cause, which: &str, fit: f64) -> Diagnosis {
    let words = words::words(cause, which);
    Diagnosis { cause: words.name.into(), fit, explains: words.explains, next: words.next }
}
