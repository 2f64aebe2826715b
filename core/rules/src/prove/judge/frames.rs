//! The arrangements that a supply may have, about its earthed point.

use super::super::Earthing;
use super::scene::Scene;

/// One arrangement.
pub(super) struct Frame {
    /// Size in units of the line-to-neutral voltage, and angle, for each line.
    pub spots: Vec<(f64, f64)>,
    /// What it costs to assume it, from the nominal voltages.
    pub prior: f64,
}

/// Every arrangement that `lines` of one supply may have; the likeliest first.
pub(super) fn frames(scene: &Scene, lines: &[usize]) -> Vec<Frame> {
    let third = 2.0 * std::f64::consts::FRAC_PI_3;
    let m = lines.len();
    let mut found = vec![];
    let against = |wanted: f64| scene.ratio.map_or(0.0, |r| if (r - wanted).abs() < 0.12 { 0.0 } else { 10.0 });
    let star = (0..m).map(|k| (1.0, -third * k as f64)).collect();
    found.push(Frame { spots: star, prior: against(3f64.sqrt()) });
    // Half of the winding whose middle is earthed: 120 V in a 240 V delta.
    let half = if scene.line_line_only { 3f64.sqrt() / 2.0 } else { 1.0 };
    let unsaid = |costs: f64| if scene.ratio.is_some() { 0.0 } else { costs };
    if m == 2 {
        let prior = unsaid(6.0) + against(2.0);
        found.push(Frame { spots: vec![(half, 0.0), (half, std::f64::consts::PI)], prior });
    }
    if m == 3 {
        // High-leg delta: one line at the square root of three halves of the winding, square on the others.
        for high in 0..3 {
            let mut angle = 0.0;
            let spots = (0..3)
                .map(|k| {
                    if k == high {
                        return (half * 3f64.sqrt(), std::f64::consts::FRAC_PI_2);
                    }
                    angle += std::f64::consts::PI;
                    (half, angle)
                })
                .collect();
            found.push(Frame { spots, prior: unsaid(3.0) + against(2.0) + 1.0 });
        }
        // Corner-grounded delta: no neutral, one line is earth. On an unearthed supply this is an earth fault instead.
        if scene.neutrals.is_empty() && scene.earthing != Earthing::It {
            let side = scene.ratio.unwrap_or(3f64.sqrt());
            for corner in 0..3 {
                let mut angle = 0.0;
                let spots = (0..3)
                    .map(|k| {
                        if k == corner {
                            return (0.0, 0.0);
                        }
                        angle += std::f64::consts::FRAC_PI_3;
                        (side, angle)
                    })
                    .collect();
                found.push(Frame { spots, prior: 3.0 });
            }
        }
    }
    found.sort_by(|a, b| a.prior.total_cmp(&b.prior));
    found
}
