//! The hypotheses: what each cause predicts for the potentials, with how few parameters.
//!
//! Earth is the origin unless the cause says that it is not. Every cause has one free scale, because no supply is exactly at
//! its nominal voltage. A prior is in the units of chi squared: twice the natural logarithm of how much rarer a cause is.

use super::super::{Earthing, ReferenceProof};
use super::cause::Cause;
use super::fit::{Model, Spot, SpotsOf};
use super::frames::frames;
use super::scene::Scene;
use super::soft;

/// A cause with its prediction.
pub(super) struct Hypothesis {
    pub cause: Cause,
    /// The conductors that it names, as the scene numbers them.
    pub which: Vec<usize>,
    pub prior: f64,
    /// How many of its parameters are there only to forgive the instrument's load; they count half.
    pub half: usize,
    pub model: Model,
}

/// Builds models over the scale of the supply.
pub(super) struct CauseModel<'a> {
    pub scene: &'a Scene,
    pub found: Vec<Hypothesis>,
}

impl CauseModel<'_> {
    /// Adds a hypothesis whose first parameter is the scale of the supply in volts; `more` are (start, low, high).
    pub(super) fn add(
        &mut self,
        cause: Cause,
        which: Vec<usize>,
        prior: f64,
        more: &[(f64, f64, f64)],
        place: SpotsOf,
    ) {
        self.add_loose(cause, which, prior, 0.0, more, place);
    }

    /// The same with a proportional looseness.
    pub(super) fn add_loose(
        &mut self,
        cause: Cause,
        which: Vec<usize>,
        prior: f64,
        loose: f64,
        more: &[(f64, f64, f64)],
        place: SpotsOf,
    ) {
        let u = self.scene.volts;
        let (low, high) = if self.scene.volts_known { (0.85 * u, 1.15 * u) } else { (0.4 * u, 1.8 * u) };
        let small = matches!(cause, Cause::NoVoltage | Cause::NeutralDrop);
        let mut model = Model { start: vec![u], low: vec![low], high: vec![high], loose, small, scaled: true, place };
        for (start, low, high) in more {
            model.start.push(*start);
            model.low.push(*low);
            model.high.push(*high);
        }
        self.found.push(Hypothesis { cause, which, prior, half: 0, model });
    }

    /// The last `count` parameters of the hypothesis added last only forgive the instrument's load.
    pub(super) fn forgive(&mut self, count: usize) {
        if let Some(last) = self.found.last_mut() {
            last.half = count;
        }
    }
}

/// Every hypothesis about `scene`.
pub(super) fn all(scene: &Scene) -> Vec<Hypothesis> {
    let mut b = CauseModel { scene, found: Vec::new() };
    let n = scene.names.len();
    b.add(Cause::NoVoltage, Vec::new(), 0.0, &[], Box::new(move |_| vec![Spot::ZERO; n]));
    live(&mut b);
    some_lines(&mut b);
    neutral(&mut b);
    other_source(&mut b);
    soft::reference(&mut b);
    soft::induced(&mut b);
    b.found
}

/// Everything as it was before isolating, in each arrangement that the nominal voltages allow; one supply or several.
fn live(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let groups = scene.groups.len();
    for mask in 1usize..1 << groups.min(3) {
        let on: Vec<usize> = (0..groups).filter(|g| mask >> g & 1 == 1).collect();
        let whole = on.len() == groups;
        let cause = if whole && groups == 1 { Cause::NotIsolated } else { Cause::OtherSource };
        let unearthed = if scene.earthing == Earthing::It { 12.0 } else { 0.0 };
        for frame in frames(scene, &scene.groups[on[0]]) {
            let parts: Vec<_> = on.iter().map(|g| frames(scene, &scene.groups[*g]).swap_remove(0).spots).collect();
            let parts: Vec<_> = std::iter::once(frame.spots).chain(parts.into_iter().skip(1)).collect();
            let lists: Vec<Vec<usize>> = on.iter().map(|g| scene.groups[*g].clone()).collect();
            let turns: Vec<(f64, f64, f64)> = parts.iter().skip(1).map(|_| (0.3, -3.2, 3.2)).collect();
            let which = lists.concat();
            let place: SpotsOf = Box::new(move |p| {
                let mut spots = vec![Spot::ZERO; n];
                for (g, (list, part)) in lists.iter().zip(&parts).enumerate() {
                    let turn = if g == 0 { 0.0 } else { p[g] };
                    for (k, (size, angle)) in list.iter().zip(part) {
                        spots[*k] = Spot::polar(p[0] * size, angle + turn);
                    }
                }
                spots
            });
            b.add(cause, which, frame.prior + unearthed, &turns, place);
        }
    }
}

/// One or two lines live; single-phase backfeed.
fn some_lines(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let lines = scene.lines();
    let m = lines.len();
    if m < 2 {
        return;
    }
    for k in &lines {
        let k = *k;
        // At the voltage that it has in an arrangement: the high leg of a delta has its own.
        let mut sizes: Vec<(f64, f64)> = vec![];
        for group in &scene.groups {
            let Some(at) = group.iter().position(|o| *o == k) else { continue };
            for frame in frames(scene, group) {
                let size = frame.spots[at].0;
                if size > 0.0 && !sizes.iter().any(|s| (s.0 - size).abs() < 0.05) {
                    sizes.push((size, frame.prior));
                }
            }
        }
        for (size, prior) in sizes {
            let mut spots = vec![Spot::ZERO; n];
            spots[k].x = size;
            b.add(Cause::OneLineLive, vec![k], 1.0 + prior, &[], scaled(spots));
        }
        // The others raised in part, through loads or through the cable's capacitance.
        // A neutral that was opened hangs free as well.
        let opened: &[usize] = if scene.neutral_opened == Some(false) { &[] } else { &scene.neutrals };
        let dead: Vec<usize> = lines.iter().copied().filter(|o| *o != k).collect();
        for (free, prior) in [(&[][..], 3.0), (opened, if scene.neutral_opened.is_some() { 3.0 } else { 5.0 })] {
            let others = [&dead[..], free].concat();
            let count = others.len();
            if count > 4 || (free.is_empty() && prior != 3.0) {
                continue;
            }
            // So free that nothing is read to them; alike, all of them; each in its own way.
            let mut spots = vec![Spot::ZERO; n];
            spots[k].x = 1.0;
            others.iter().for_each(|o| spots[*o].soft = 1e6);
            b.add(Cause::OneLineLive, vec![k], prior - 1.0, &[], scaled(spots));
            let list = others.clone();
            let place: SpotsOf = Box::new(move |p| {
                let mut spots = vec![Spot::ZERO; n];
                spots[k].x = p[0];
                list.iter().for_each(|o| spots[*o] = Spot { x: p[0] * p[1], y: 0.0, soft: 10f64.powf(p[2]) });
                spots
            });
            let more = [(0.3, 0.0, 0.9), (scene.load() + 0.5, -1.0, 6.0)];
            b.add_loose(Cause::OneLineLive, vec![k], prior, 0.03, &more, place);
            b.forgive(2);
            let mut more = vec![(0.3, 0.0, 0.7); count];
            more.extend(vec![(scene.load() - 0.5, -1.0, 4.5); count]);
            let place: SpotsOf = Box::new(move |p| {
                let mut spots = vec![Spot::ZERO; n];
                spots[k].x = p[0];
                for (at, o) in others.iter().enumerate() {
                    spots[*o] = Spot { x: p[0] * p[1 + at], y: 0.0, soft: 10f64.powf(p[1 + count + at]) };
                }
                spots
            });
            b.add(Cause::OneLineLive, vec![k], prior, &more, place);
            b.forgive(2 * count);
        }
    }
    let mut all = vec![Spot::ZERO; n];
    lines.iter().for_each(|k| all[*k] = Spot::polar(1.0, 0.0));
    b.add_loose(Cause::Backfeed, lines.clone(), 1.0, 0.02, &[], scaled(all));
    if m == 3 {
        for dead in 0..3 {
            let live: Vec<usize> = (0..3).filter(|k| *k != dead).map(|k| lines[k]).collect();
            let (one, two, third) = (live[0], live[1], lines[dead]);
            // The third at earth; hanging on the others through windings; or where unlike loads pull it.
            for share in [&[][..], &[(0.4, 0.05, 0.6)][..], &[(0.4, 0.05, 0.8), (0.0, -0.3, 0.3)][..]] {
                let place: SpotsOf = Box::new(move |p| {
                    let mut spots = vec![Spot::ZERO; n];
                    spots[one] = Spot::polar(p[0], 0.0);
                    spots[two] = Spot::polar(p[0], 2.0 * std::f64::consts::FRAC_PI_3);
                    let share = p.get(1).copied().unwrap_or(0.0);
                    let aside = p.get(2).copied().unwrap_or(0.0);
                    let (sum, across) = (add(spots[one], spots[two], 1.0), add(spots[one], spots[two], -1.0));
                    spots[third].x = share * sum.x + aside * across.x;
                    spots[third].y = share * sum.y + aside * across.y;
                    spots
                });
                b.add(Cause::TwoLinesLive, live.clone(), 1.0, share, place);
            }
        }
    }
}

/// The neutral away from earth: broken under live lines, fed by another circuit, or a few volts of drop.
fn neutral(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let (Some(&neutral), Some(_)) = (scene.neutrals.first(), scene.earth) else { return };
    let lines = scene.lines();
    let m = lines.len();
    let name = vec![neutral];
    let u = scene.volts;

    // A broken neutral goes where the loads pull it (Millman): anywhere about the star.
    if m == 1 {
        let line = lines[0];
        let opened = if scene.neutral_opened == Some(true) { 4.0 } else { 0.0 };
        let place: SpotsOf = Box::new(move |p| {
            let mut spots = vec![Spot::ZERO; n];
            spots[line].x = p[0];
            spots[neutral].x = p[0] * p[1];
            spots
        });
        b.add(Cause::OpenNeutral, name.clone(), 2.0 + opened, &[(0.95, 0.2, 1.0)], place);
    } else {
        // Unearthed, the star point is not at earth to begin with.
        let unearthed = if scene.earthing == Earthing::It { 8.0 } else { 0.0 };
        for frame in frames(scene, &lines) {
            for angle in [0.5, 2.6, 4.7] {
                let (lines, spots) = (lines.clone(), frame.spots.clone());
                let place: SpotsOf = Box::new(move |p| {
                    let mut all = vec![Spot::ZERO; n];
                    for (k, (size, angle)) in lines.iter().zip(&spots) {
                        all[*k] = Spot::polar(p[0] * size, *angle);
                    }
                    all[neutral] = Spot { x: p[1], y: p[2], soft: 0.0 };
                    all
                });
                let at = Spot::polar(0.4 * u, angle);
                let more = [(at.x, -1.3 * u, 1.3 * u), (at.y, -1.3 * u, 1.3 * u)];
                b.add(Cause::OpenNeutral, name.clone(), 1.0 + frame.prior + unearthed, &more, place);
            }
        }
    }

    // A borrowed neutral: the loads of another circuit lift it; each line follows through its loads, or stays at earth, or hangs free.
    let closed = match scene.neutral_opened {
        Some(true) => 0.0,
        Some(false) => 6.0,
        None => 2.0,
    };
    let shaken = if scene.reference == ReferenceProof::Failed { 8.0 } else { 0.0 };
    let count = if m <= 3 { 3usize.pow(m as u32) } else { 3 };
    for code in 0..count {
        let states: Vec<usize> = (0..m).map(|k| if m <= 3 { code / 3usize.pow(k as u32) % 3 } else { code }).collect();
        // A mixture is rarer than all alike, and a line that hangs free beside lines with loads is rarer still.
        let mixed = match states.iter().all(|s| *s == states[0]) {
            true => 0.0,
            false if states.contains(&2) => 10.0,
            false => 2.0,
        };
        for (cause, prior, start, low, high) in [
            (Cause::BorrowedNeutral, 1.0 + mixed + closed + shaken, 0.95, 0.6, 1.1),
            (Cause::NeutralDrop, mixed, 0.02, 0.0, 0.04),
        ] {
            let (lines, states) = (lines.clone(), states.clone());
            let place: SpotsOf = Box::new(move |p| {
                let mut spots = vec![Spot::ZERO; n];
                spots[neutral].x = p[0] * p[1];
                for (k, state) in lines.iter().zip(&states) {
                    spots[*k] = match state {
                        0 => spots[neutral],
                        1 => Spot::ZERO,
                        _ => Spot { x: 0.0, y: 0.0, soft: 1e6 },
                    };
                }
                spots
            });
            b.add(cause, name.clone(), prior, &[(start, low, high)], place);
        }
    }
    // Every line between earth and neutral through what is left of its insulation or a small load, each in its own way.
    if m <= 4 {
        for (cause, prior, start, low, high) in [
            (Cause::BorrowedNeutral, 2.0 + closed + shaken, 0.95, 0.6, 1.1),
            (Cause::NeutralDrop, 2.0, 0.02, 0.0, 0.04),
        ] {
            let lines = lines.clone();
            let place: SpotsOf = Box::new(move |p| {
                let mut spots = vec![Spot::ZERO; n];
                spots[neutral].x = p[0] * p[1];
                for (at, k) in lines.iter().enumerate() {
                    let soft = 10f64.powf(p[2 + 2 * at]);
                    spots[*k] = Spot { x: spots[neutral].x * p[3 + 2 * at], y: 0.0, soft };
                }
                spots
            });
            let mut more = vec![(start, low, high)];
            (0..m).for_each(|_| more.extend([(scene.load() - 0.5, -2.0, 6.0), (0.2, 0.0, 1.0)]));
            b.add(cause, name.clone(), prior, &more, place);
            b.forgive(2 * m);
        }
    }
}

/// Two lines from sources that do not belong together: at an angle that no arrangement of one supply has.
fn other_source(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let lines = scene.lines();
    let degree = std::f64::consts::PI / 180.0;
    if lines.len() > 6 {
        return;
    }
    for (at, one) in lines.iter().enumerate() {
        for two in &lines[at + 1..] {
            let (one, two) = (*one, *two);
            for (from, to) in [(14.0, 106.0), (134.0, 226.0)] {
                let place: SpotsOf = Box::new(move |p| {
                    let mut spots = vec![Spot::ZERO; n];
                    spots[one] = Spot::polar(p[0], 0.0);
                    spots[two] = Spot::polar(p[0] * p[2], p[1]);
                    spots
                });
                let more = [((from + to) / 2.0 * degree * 0.97, from * degree, to * degree), (1.0, 0.85, 1.15)];
                b.add(Cause::OtherSource, vec![one, two], 2.0, &more, place);
            }
        }
    }
    if let [one, two, three] = lines[..] {
        for (odd, x, y) in [(one, two, three), (two, one, three), (three, one, two)] {
            for (from, to) in [(14.0, 106.0), (134.0, 226.0), (254.0, 346.0)] {
                let place: SpotsOf = Box::new(move |p| {
                    let mut spots = vec![Spot::ZERO; n];
                    spots[x] = Spot::polar(p[0], 0.0);
                    spots[y] = Spot::polar(p[0], 120.0 * degree);
                    spots[odd] = Spot::polar(p[0] * p[2], p[1]);
                    spots
                });
                let more = [((from + to) / 2.0 * degree, from * degree, to * degree), (1.0, 0.85, 1.15)];
                b.add(Cause::OtherSource, vec![odd], 3.0, &more, place);
            }
        }
    }
}

fn add(a: Spot, b: Spot, times: f64) -> Spot {
    Spot { x: a.x + times * b.x, y: a.y + times * b.y, soft: 0.0 }
}

/// A pattern in units of the scale.
pub(super) fn scaled(unit: Vec<Spot>) -> SpotsOf {
    Box::new(move |p| unit.iter().map(|s| Spot { x: s.x * p[0], y: s.y * p[0], soft: s.soft }).collect())
}
