//! Potentials from magnitudes: a plane phasor for each conductor, such that the distances are the readings.
//!
//! A reading gives the distance of two potentials and no angle, so a fit is known up to rotation and mirror image. An indicator's
//! step gives an interval. A conductor may be soft: it hangs on a capacitance, and the instrument pulls it down.

use super::scene::{Obs, Scene};

/// Where a conductor is: volts in the plane, and the reactance in kilohm through which it is held there (0: held firmly).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub x: f64,
    pub y: f64,
    pub soft: f64,
}

/// Places every conductor from parameters.
pub(super) type SpotsOf = Box<dyn Fn(&[f64]) -> Vec<Spot>>;

/// What can be fitted: a parametric prediction with bounds.
pub(super) struct Model {
    pub start: Vec<f64>,
    pub low: Vec<f64>,
    pub high: Vec<f64>,
    /// How far it may be off in proportion, beyond what meter and supply tolerance explain.
    pub loose: f64,
    /// It is about small voltages: the tolerance of a whole supply is no excuse.
    pub small: bool,
    /// The first parameter is the supply's voltage.
    pub scaled: bool,
    pub place: SpotsOf,
}

/// A model at its best parameters.
#[derive(Debug, Clone)]
pub(super) struct Fitted {
    pub spots: Vec<Spot>,
    /// Sum of squared normalised residuals and of what looseness costs.
    pub chi: f64,
    /// Normalised residuals, one a reading.
    pub residuals: Vec<f64>,
}

impl Spot {
    pub(super) const ZERO: Spot = Spot { x: 0.0, y: 0.0, soft: 0.0 };

    /// A firm potential at this magnitude and angle.
    pub(super) fn polar(volts: f64, angle: f64) -> Spot {
        Spot { x: volts * angle.cos(), y: volts * angle.sin(), soft: 0.0 }
    }
}

/// What an instrument with the load of `obs` reads between these two.
pub(super) fn predict(obs: &Obs, spots: &[Spot]) -> f64 {
    let (a, b) = (spots[obs.i], spots[obs.j]);
    let soft = a.soft + b.soft;
    (a.x - b.x).hypot(a.y - b.y) * obs.load / obs.load.hypot(soft)
}

/// By how many volts the prediction misses the reading or its interval.
pub(super) fn miss(obs: &Obs, spots: &[Spot]) -> f64 {
    let volts = predict(obs, spots);
    if volts < obs.lo { volts - obs.lo } else { (volts - obs.hi).max(0.0) }
}

/// One standard deviation of `obs` under a model that is `loose`.
fn sigma(obs: &Obs, model: &Model, small: bool) -> f64 {
    match (small, obs.exact) {
        (true, true) => obs.meter.hypot(0.5),
        // The lowest steps are the sharp ones in volts.
        (true, false) => 0.5 + 0.02 * obs.lo,
        (false, _) => obs.sigma.hypot(model.loose * obs.lo),
    }
}

/// Beyond this many standard deviations a robust fit gives a reading less and less weight.
const CAUCHY: f64 = 2.0;

/// Levenberg-Marquardt within bounds, with a numeric Jacobian; the reading numbered `skip` does not count.
/// A `robust` fit weighs great misses less (Cauchy's loss), so that one wrong reading does not drag it.
pub(super) fn solve(model: &Model, scene: &Scene, skip: Option<usize>, robust: bool) -> Fitted {
    let obs = &scene.obs;
    // Beside a reading of many volts, wrong or not, nothing else is sharp either.
    let small = model.small && skip.is_none_or(|k| obs[k].lo < 24.0);
    let residuals = |p: &[f64]| -> Vec<f64> {
        let spots = (model.place)(p);
        let missed = |(k, o)| {
            let r = if Some(k) == skip { 0.0 } else { miss(o, &spots) / sigma(o, model, small) };
            if robust { r.signum() * CAUCHY * (r / CAUCHY).powi(2).ln_1p().sqrt() } else { r }
        };
        // A supply is near its nominal voltage, however wide the steps of an indicator are.
        let scale = if model.scaled { (p[0] / model.start[0] - 1.0) / scene.tolerance() } else { 0.0 };
        obs.iter().enumerate().map(missed).chain([scale]).collect()
    };
    let sum = |r: &[f64]| r.iter().map(|v| v * v).sum::<f64>();
    let count = model.start.len();
    let mut p = model.start.clone();
    let mut r = residuals(&p);
    let mut chi = sum(&r);
    let mut damping = 1e-2;
    // Bounded: the models are smooth and small, and a start that needs more has lost against another one.
    for _ in 0..40 {
        if count == 0 || chi < 1e-9 {
            break;
        }
        let columns: Vec<Vec<f64>> = (0..count)
            .map(|k| {
                let span = model.high[k] - model.low[k];
                let step = if p[k] + 1e-5 * span > model.high[k] { -1e-5 * span } else { 1e-5 * span };
                let mut q = p.clone();
                q[k] += step;
                residuals(&q).iter().zip(&r).map(|(new, old)| (new - old) / step).collect()
            })
            .collect();
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
        let mut better = false;
        for _ in 0..8 {
            let mut matrix: Vec<Vec<f64>> =
                columns.iter().map(|a| columns.iter().map(|b| dot(a, b)).collect()).collect();
            for (k, row) in matrix.iter_mut().enumerate() {
                row[k] += damping * row[k] + 1e-12;
            }
            let mut right: Vec<f64> = columns.iter().map(|c| -dot(c, &r)).collect();
            eliminate(&mut matrix, &mut right);
            let q: Vec<f64> = (0..count).map(|k| (p[k] + right[k]).clamp(model.low[k], model.high[k])).collect();
            let next = residuals(&q);
            let now = sum(&next);
            if now < chi {
                better = chi - now > 1e-6 * chi;
                (p, r, chi) = (q, next, now);
                damping = (damping * 0.2f64).max(1e-9);
                break;
            }
            damping *= 5.0;
        }
        if !better {
            break;
        }
    }
    // A wider normal distribution is a lower one: without this term a loose model would always win.
    let width: f64 = obs
        .iter()
        .enumerate()
        .filter(|(k, o)| Some(*k) != skip && o.exact)
        .map(|(_, o)| 2.0 * (sigma(o, model, small) / o.sigma).ln())
        .sum();
    r.truncate(obs.len());
    Fitted { spots: (model.place)(&p), chi: chi + width, residuals: r }
}

/// Solves `matrix` x = `right` in place, with row pivots. A column without a pivot leaves its unknown at nought.
fn eliminate(matrix: &mut [Vec<f64>], right: &mut [f64]) {
    let n = right.len();
    for column in 0..n {
        let pivot = (column..n).max_by(|a, b| matrix[*a][column].abs().total_cmp(&matrix[*b][column].abs()));
        let Some(pivot) = pivot.filter(|row| matrix[*row][column].abs() > 1e-30) else { continue };
        matrix.swap(column, pivot);
        right.swap(column, pivot);
        for row in column + 1..n {
            let factor = matrix[row][column] / matrix[column][column];
            if factor != 0.0 {
                let (above, below) = matrix.split_at_mut(row);
                below[0][column..].iter_mut().zip(&above[column][column..]).for_each(|(b, a)| *b -= factor * a);
                right[row] -= factor * right[column];
            }
        }
    }
    for row in (0..n).rev() {
        let known: f64 = (row + 1..n).map(|k| matrix[row][k] * right[k]).sum();
        let pivot = matrix[row][row];
        right[row] = if pivot.abs() > 1e-30 { (right[row] - known) / pivot } else { 0.0 };
    }
}

/// Every conductor free in the plane: classical scaling (Torgerson 1952) gives the start. One conductor at the origin, one on
/// the axis, so that no parameter is wasted on rotation: 2 n - 3 of them.
pub(super) fn free(scene: &Scene) -> Model {
    let n = scene.names.len();
    let mut spots = scaling(scene);
    let far = |from: Spot, s: &Spot| (s.x - from.x).hypot(s.y - from.y);
    let origin = scene.earth.unwrap_or(0);
    let zero = spots[origin];
    let axis = (0..n).filter(|k| *k != origin).max_by(|a, b| far(zero, &spots[*a]).total_cmp(&far(zero, &spots[*b])));
    let axis = axis.unwrap_or(origin);
    let (dx, dy) = (spots[axis].x - zero.x, spots[axis].y - zero.y);
    let length = dx.hypot(dy).max(1e-9);
    for s in &mut spots {
        let (x, y) = (s.x - zero.x, s.y - zero.y);
        (s.x, s.y) = ((x * dx + y * dy) / length, (y * dx - x * dy) / length);
    }
    let reach = 3.0 * scene.volts + scene.obs.iter().map(|o| o.guess).fold(0.0, f64::max);
    // A point on the axis has no slope away from it: a small push lets the fit choose a side.
    let push = |k: usize| if k.is_multiple_of(2) { 0.5 } else { -0.5 };
    let rest: Vec<usize> = (0..n).filter(|k| *k != origin && *k != axis).collect();
    let mut start = vec![spots[axis].x];
    rest.iter().for_each(|k| start.extend([spots[*k].x, spots[*k].y + push(*k)]));
    let count = start.len();
    let place: SpotsOf = Box::new(move |p| {
        let mut spots = vec![Spot::ZERO; n];
        spots[axis].x = p[0];
        for (at, k) in rest.iter().enumerate() {
            (spots[*k].x, spots[*k].y) = (p[1 + 2 * at], p[2 + 2 * at]);
        }
        spots
    });
    Model { start, low: vec![-reach; count], high: vec![reach; count], loose: 0.0, small: false, scaled: false, place }
}

/// Classical multidimensional scaling: the two strongest directions of the doubly centred squared distances.
fn scaling(scene: &Scene) -> Vec<Spot> {
    let n = scene.names.len();
    let mut square = vec![vec![0.0; n]; n];
    for o in &scene.obs {
        let value: f64 = o.guess * o.guess;
        square[o.i][o.j] = value.max(square[o.i][o.j]);
        square[o.j][o.i] = square[o.i][o.j];
    }
    let mean: Vec<f64> = square.iter().map(|row| row.iter().sum::<f64>() / n as f64).collect();
    let all = mean.iter().sum::<f64>() / n as f64;
    let mut gram: Vec<Vec<f64>> =
        (0..n).map(|i| (0..n).map(|j| -0.5 * (square[i][j] - mean[i] - mean[j] + all)).collect()).collect();
    let mut axes = [vec![0.0; n], vec![0.0; n]];
    for (turn, axis) in axes.iter_mut().enumerate() {
        // Power iteration, shifted so that the most positive eigenvalue is the largest in size.
        let shift = gram.iter().map(|row| row.iter().map(|v| v.abs()).sum::<f64>()).fold(0.0, f64::max);
        let mut v: Vec<f64> = (0..n).map(|k| ((k * 7 + turn * 3) as f64 * 0.9).cos() + 0.1).collect();
        let mut length = 0.0;
        for _ in 0..200 {
            let next: Vec<f64> =
                (0..n).map(|i| shift * v[i] + (0..n).map(|j| gram[i][j] * v[j]).sum::<f64>()).collect();
            length = next.iter().map(|x| x * x).sum::<f64>().sqrt();
            if length < 1e-12 {
                break;
            }
            v = next.iter().map(|x| x / length).collect();
        }
        let eigen = (length - shift).max(0.0);
        for i in 0..n {
            axis[i] = v[i] * eigen.sqrt();
            for j in 0..n {
                gram[i][j] -= eigen * v[i] * v[j];
            }
        }
    }
    (0..n).map(|k| Spot { x: axes[0][k], y: axes[1][k], soft: 0.0 }).collect()
}
