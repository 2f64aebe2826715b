//! Ranking, and the reading that does not belong: a misread step, or a probe on another terminal.
//!
//! Every hypothesis is fitted to all readings, and again without each reading that it misses. If leaving one out helps by more than a
//! blunder costs, that pair is to be repeated. Below five conductors the plane alone cannot tell which pair it is; the causes can.

use super::super::Case;
use super::cause::Cause;
use super::causes::{self, Hypothesis};
use super::fit::{self, Fitted, Model};
use super::scene::{STEPS_BEGIN, Scene};

/// Price of a reading that is wrong, in chi squared: one in a hundred (9), times the choice among ten (5), times what it may show.
const BLUNDER: f64 = 16.0;
/// Price of a free parameter: twice the logarithm of its range over its spread, for numbers and for steps.
const FREE_EXACT: f64 = 7.0;
const FREE_STEPS: f64 = 3.0;
/// Price of explaining nothing.
const UNEXPLAINED: f64 = 20.0;
/// Other readings whose loss helps nearly as much are named as well, up to three in all.
const NEARLY: f64 = 5.0;
/// A pair is named even if a cause without a blunder is likelier by this much: to read it again costs seconds.
const DOUBT: f64 = 12.0;
/// The same below five conductors, where a wrong reading hides better: the plane has one reading to spare, or none.
const DOUBT_FEW: f64 = 18.0;
/// The hypotheses that are tried again without a reading.
const TRIED_AGAIN: usize = 30;

/// A cause with its fit; lower totals are better.
pub(super) struct Ranked {
    pub cause: Cause,
    pub which: Vec<usize>,
    pub total: f64,
    pub fitted: Fitted,
    /// The reading that was left out.
    pub skip: Option<usize>,
}

/// Every cause once, best first, and the readings to repeat, worst first.
pub(super) fn rank(case: &Case, scene: &Scene) -> (Vec<Ranked>, Vec<usize>) {
    let mut ranked: Vec<Ranked> = Vec::new();
    // For each reading, the least total without it.
    let mut without: Vec<(f64, usize)> = (0..scene.obs.len()).map(|k| (f64::INFINITY, k)).collect();
    if scene.exact() == 1.0 {
        add(scene, &mut ranked, &mut without);
    } else {
        for scene in STEPS_BEGIN.iter().filter_map(|begin| Scene::of(case, *begin)) {
            add(&scene, &mut ranked, &mut without);
        }
    }
    ranked.sort_by(|a, b| a.total.total_cmp(&b.total));
    let best = ranked.iter().filter(|r| r.skip.is_none()).map(|r| r.total).fold(f64::INFINITY, f64::min);
    without.sort_by(|a, b| a.0.total_cmp(&b.0));
    let least = without.first().map_or(f64::INFINITY, |w| w.0);
    // A triangle that does not close does not say which side is wrong.
    let nearly = if scene.names.len() < 4 { f64::INFINITY } else { NEARLY };
    let doubt = if scene.names.len() < 5 { DOUBT_FEW } else { DOUBT };
    let repeat = without.iter().filter(|w| w.0 < (best + doubt).min(least + nearly)).map(|w| w.1).take(3).collect();
    (ranked, repeat)
}

/// Fits every hypothesis to one scene.
fn add(scene: &Scene, ranked: &mut Vec<Ranked>, without: &mut [(f64, usize)]) {
    let free = FREE_STEPS + (FREE_EXACT - FREE_STEPS) * scene.exact();
    let price = |h: &Hypothesis| h.prior + free * ((h.model.start.len() - 1) as f64 - 0.5 * h.half as f64);
    let mut hypotheses = causes::all(scene);
    hypotheses.push(Hypothesis {
        cause: Cause::Unexplained,
        which: Vec::new(),
        prior: UNEXPLAINED,
        half: 0,
        model: fit::free(scene),
    });

    let whole: Vec<Fitted> = hypotheses.iter().map(|h| fit::solve(&h.model, scene, None, false)).collect();
    let firm: Vec<Fitted> = hypotheses.iter().map(|h| fit::solve(&h.model, scene, None, true)).collect();
    for (h, fitted) in hypotheses.iter().zip(&whole) {
        keep(ranked, h.cause, &h.which, price(h) + fitted.chi, fitted, None);
    }
    let worst = |f: &Fitted| f.residuals.iter().map(|r| r * r).fold(0.0, f64::max);
    let mut again: Vec<usize> = (0..hypotheses.len()).collect();
    let robust = |k: usize| price(&hypotheses[k]) + firm[k].chi - worst(&firm[k]);
    again.sort_by(|a, b| robust(*a).total_cmp(&robust(*b)));
    for k in again.into_iter().take(TRIED_AGAIN) {
        let h = &hypotheses[k];
        if h.cause == Cause::Unexplained && scene.names.len() < 5 {
            continue;
        }
        for obs in suspects(&h.model, &firm[k]) {
            let fitted = fit::solve(&h.model, scene, Some(obs), false);
            let total = price(h) + fitted.chi + BLUNDER;
            if total < without[obs].0 {
                without[obs].0 = total;
            }
            keep(ranked, Cause::Misplaced, &h.which, total, &fitted, Some(obs));
        }
    }
}

/// The readings that a model misses most; few, so that the time is bounded.
fn suspects(model: &Model, fitted: &Fitted) -> Vec<usize> {
    let mut order: Vec<usize> = (0..fitted.residuals.len()).filter(|k| fitted.residuals[*k].abs() > 0.8).collect();
    order.sort_by(|a, b| fitted.residuals[*b].abs().total_cmp(&fitted.residuals[*a].abs()));
    // A rigid model misses where the blunder is; one with more freedom spreads it.
    order.truncate(if model.start.len() < 4 { 6 } else { 10 });
    order
}

/// Keeps the best of each cause.
fn keep(ranked: &mut Vec<Ranked>, cause: Cause, which: &[usize], total: f64, fitted: &Fitted, skip: Option<usize>) {
    let new = || Ranked { cause, which: which.to_owned(), total, fitted: fitted.clone(), skip };
    match ranked.iter_mut().find(|r| r.cause == cause) {
        Some(old) if total < old.total => *old = new(),
        Some(_) => {}
        None => ranked.push(new()),
    }
}
