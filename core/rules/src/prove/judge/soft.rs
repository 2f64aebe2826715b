//! Hypotheses in which something hangs free: the earth reference, the supply's star point, or dead cores beside live ones.

use super::super::{Earthing, ReferenceProof};
use super::cause::Cause;
use super::causes::CauseModel;
use super::fit::{Spot, SpotsOf};
use super::frames::frames;

/// Common logarithm of the reactance in kilohm: start, least, most. 10 nF to earth is 318 kilohm at 50 Hz, 100 pF is 32 megohm.
const SOFT: (f64, f64, f64) = (2.6, 0.0, 5.0);

/// The protective conductor is not where the supply's neutral point is: a broken reference, or a supply that is not earthed.
pub(super) fn reference(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let Some(earth) = scene.earth else { return };
    let lines = scene.lines();
    let (u, name) = (scene.volts, vec![earth]);
    let (cause, doubt) = match (scene.earthing, scene.reference) {
        (_, ReferenceProof::Failed) => (Cause::BrokenReference, -8.0),
        (Earthing::It, _) => (Cause::FloatingSupply, 0.0),
        (_, ReferenceProof::No) => (Cause::BrokenReference, 0.0),
        (_, ReferenceProof::Unsaid) => (Cause::BrokenReference, 3.0),
        _ => (Cause::BrokenReference, 6.0),
    };

    // Live lines in their arrangement, and earth anywhere among them, firm or soft.
    for frame in frames(scene, &lines) {
        for (angle, size, soft) in [
            (0.3, 0.1, false),
            (0.4, 0.9, false),
            (2.5, 0.9, false),
            (4.6, 0.9, false),
            (0.4, 0.4, true),
            (2.5, 0.4, true),
            (4.6, 0.4, true),
        ] {
            let (lines, spots) = (lines.clone(), frame.spots.clone());
            let place: SpotsOf = Box::new(move |p| {
                let mut all = vec![Spot::ZERO; n];
                for (k, (size, angle)) in lines.iter().zip(&spots) {
                    all[*k] = Spot::polar(p[0] * size, *angle);
                }
                all[earth] = Spot { x: p[1], y: p[2], soft: p.get(3).map_or(0.0, |log| 10f64.powf(*log)) };
                all
            });
            let at = Spot::polar(size * u, angle);
            let mut more = vec![(at.x, -1.8 * u, 1.8 * u), (at.y, -1.8 * u, 1.8 * u)];
            if soft {
                more.push((scene.load() - 0.4, -1.0, 6.0));
            }
            b.add(cause, name.clone(), 2.0 + doubt + frame.prior, &more, place);
            b.forgive(usize::from(soft));
        }
        // So soft that every reading to earth is nothing, whatever the rest does.
        let (lines, spots) = (lines.clone(), frame.spots.clone());
        let place: SpotsOf = Box::new(move |p| {
            let mut all = vec![Spot::ZERO; n];
            for (k, (size, angle)) in lines.iter().zip(&spots) {
                all[*k] = Spot::polar(p[0] * size, *angle);
            }
            all[earth].soft = 1e6;
            all
        });
        b.add(cause, name.clone(), 2.0 + doubt + frame.prior, &[], place);
    }

    // One line live, earth between it and the neutral or hanging free.
    if lines.len() > 1 {
        for line in lines.iter().copied() {
            for soft in [false, true] {
                let place: SpotsOf = Box::new(move |p| {
                    let mut all = vec![Spot::ZERO; n];
                    all[line].x = p[0];
                    all[earth].x = p[0] * p[1];
                    all[earth].soft = if soft { 10f64.powf(p[2]) } else { 0.0 };
                    all
                });
                let more: &[_] = if soft { &[(0.5, 0.0, 1.0), (3.0, -1.0, 6.0)] } else { &[(0.9, 0.06, 1.0)] };
                b.add(cause, name.clone(), 5.0 + doubt, more, place);
            }
        }
    }

    // Everything at one potential and earth away from it: a protective conductor that is live and broken upstream.
    let opened = match scene.neutral_opened {
        Some(true) => 5.0,
        Some(false) => 0.0,
        None => 2.0,
    };
    let place: SpotsOf = Box::new(move |p| {
        let mut all = vec![Spot::ZERO; n];
        all[earth].x = p[0] * p[1];
        all
    });
    b.add(cause, name, 2.0 + doubt + opened, &[(0.9, 0.4, 1.05)], place);
}

/// Dead cores beside live ones: each hangs on its capacitances, and what is read depends on the instrument.
pub(super) fn induced(b: &mut CauseModel) {
    let scene = b.scene;
    let n = scene.names.len();
    let lines = scene.lines();
    let u = scene.volts;
    // A low impedance pulls an interference voltage down; a high one shows it; unsaid may be either.
    let instrument = match (scene.all_low, scene.any_high) {
        (true, _) => 10.0,
        (_, true) => 0.0,
        _ => 2.0,
    };
    let with_neutral: &[bool] = if scene.neutrals.is_empty() { &[false] } else { &[false, true] };
    for with_neutral in with_neutral {
        let mut free = lines.clone();
        if *with_neutral {
            free.extend(&scene.neutrals);
        }
        if free.is_empty() || free.len() > 6 {
            continue;
        }
        let prior = instrument
            + match (with_neutral, scene.neutral_opened) {
                (true, Some(false)) => 8.0,
                (false, Some(true)) => 1.0,
                _ => 0.0,
            };
        let which = free.clone();
        // All alike; in one direction; anywhere.
        let list = free.clone();
        let place: SpotsOf = Box::new(move |p| {
            let mut all = vec![Spot::ZERO; n];
            list.iter().for_each(|k| all[*k] = Spot { x: p[1], y: 0.0, soft: 10f64.powf(p[2]) });
            all
        });
        b.add_loose(Cause::Induced, which.clone(), prior, 0.06, &[(0.4 * u, 0.0, 1.1 * u), SOFT], place);
        b.forgive(1);
        let list = free.clone();
        let count = free.len();
        let mut more = vec![(0.4 * u, -1.1 * u, 1.1 * u); count];
        more.extend(vec![SOFT; count]);
        let place: SpotsOf = Box::new(move |p| {
            let mut all = vec![Spot::ZERO; n];
            for (at, k) in list.iter().enumerate() {
                all[*k] = Spot { x: p[1 + at], y: 0.0, soft: 10f64.powf(p[1 + count + at]) };
            }
            all
        });
        b.add_loose(Cause::Induced, which.clone(), prior + 1.0, 0.08, &more, place);
        b.forgive(2 * count);
        if free.len() > 1 {
            let mut more = vec![SOFT, (0.4 * u, -1.1 * u, 1.1 * u)];
            for k in 1..free.len() {
                let at = Spot::polar(0.4 * u, 0.8 * k as f64);
                more.extend([(at.x, -1.1 * u, 1.1 * u), (at.y, -1.1 * u, 1.1 * u)]);
            }
            let list = free;
            let place: SpotsOf = Box::new(move |p| {
                let mut all = vec![Spot::ZERO; n];
                let soft = 10f64.powf(p[1]);
                all[list[0]] = Spot { x: p[2], y: 0.0, soft };
                for (at, k) in list.iter().enumerate().skip(1) {
                    all[*k] = Spot { x: p[1 + 2 * at], y: p[2 + 2 * at], soft };
                }
                all
            });
            b.add_loose(Cause::Induced, which, prior + 1.0, 0.08, &more, place);
            b.forgive(2 * count);
        }
    }
}
