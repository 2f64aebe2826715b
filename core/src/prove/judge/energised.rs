//! After the power is back: is it there, is it the voltage it should be, are the lines alike, and in which order do they turn.
//!
//! This judges a supply that is meant to be live; nothing here bears on whether anything is dead.

use serde::Serialize;

/// Which tolerance the site works to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tolerance {
    /// IEC 60038: 10 % either way.
    Iec60038,
    /// United Kingdom, 230 V: +10 %, -6 % (UKSI 1994/3021).
    Uk,
    /// ANSI C84.1 Range A, service voltage: 5 % either way.
    AnsiC841A,
}

/// How the supply is arranged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrangement {
    /// Three lines about a neutral.
    Star,
    /// A delta with the middle of L3-L1 as neutral: L2 is the high leg.
    HighLeg,
    /// A delta with L1 at earth, and no neutral.
    CornerGrounded,
}

/// Which way the lines turn, from an indicator of rotation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rotation {
    /// L1, L2, L3.
    Clockwise,
    /// L3, L2, L1.
    Anticlockwise,
}

/// What was read, in volts. A delta's lines are read to earth or mid-point where a star's are read to neutral.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Energised {
    /// L1, L2, L3 to neutral, mid-point or earth.
    pub to_neutral: [f64; 3],
    /// L1-L2, L2-L3, L3-L1.
    pub between: [f64; 3],
    /// Nominal line-to-line voltage.
    pub line_line: f64,
    /// How the supply is arranged.
    pub arrangement: Arrangement,
    /// Which tolerance counts.
    pub tolerance: Tolerance,
    /// Which way it turned before the work and turns now, if that was read.
    pub rotation: Option<(Rotation, Rotation)>,
}

/// What an energised supply shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Presence {
    /// Everything is there and within tolerance, and the rotation is as before.
    pub as_expected: bool,
    /// What is not, as sentences.
    pub why: Vec<String>,
    /// Unbalance of the line-to-line voltages in per cent; `None` if one is missing.
    pub unbalance: Option<f64>,
}

/// Below this share of what is expected a line counts as missing, not as low.
const MISSING: f64 = 0.2;
/// More unbalance than this is told. IEC 61000-2-2 takes 2 % (negative over positive sequence) as the level to be compatible with.
const UNBALANCE: f64 = 2.0;
/// How far line-to-line and line-to-neutral may part, in proportion, before one of them is doubted.
const TOGETHER: f64 = 0.05;

impl Tolerance {
    /// The least and the greatest voltage that a nominal one allows.
    pub fn band(self, nominal: f64) -> (f64, f64) {
        let (less, more) = match self {
            Tolerance::Iec60038 => (0.10, 0.10),
            Tolerance::Uk => (0.06, 0.10),
            Tolerance::AnsiC841A => (0.05, 0.05),
        };
        (nominal * (1.0 - less), nominal * (1.0 + more))
    }
}

impl Arrangement {
    /// What L1, L2 and L3 read to neutral, mid-point or earth at this line-to-line voltage.
    pub fn to_neutral(self, line_line: f64) -> [f64; 3] {
        let root = 3f64.sqrt();
        match self {
            Arrangement::Star => [line_line / root; 3],
            Arrangement::HighLeg => [line_line / 2.0, line_line / 2.0 * root, line_line / 2.0],
            Arrangement::CornerGrounded => [0.0, line_line, line_line],
        }
    }
}

/// Judges an energised supply.
pub fn energised(read: &Energised) -> Presence {
    let mut why = Vec::new();
    let expected = read.arrangement.to_neutral(read.line_line);
    let lines = ["L1", "L2", "L3"];
    let other = if read.arrangement == Arrangement::CornerGrounded { "earth" } else { "neutral" };
    for k in 0..3 {
        check(&mut why, &format!("{} to {other}", lines[k]), read.to_neutral[k], expected[k], read);
    }
    let pairs = ["L1 to L2", "L2 to L3", "L3 to L1"];
    for (pair, volts) in pairs.iter().zip(read.between) {
        check(&mut why, pair, volts, read.line_line, read);
    }
    let all = [read.to_neutral, read.between].concat();
    if why.is_empty() && all.iter().all(|v| v.is_finite()) {
        together(&mut why, read, &expected);
    }
    let unbalance = unbalance(read.between);
    if let Some(percent) = unbalance.filter(|u| *u > UNBALANCE) {
        why.push(format!(
            "The line-to-line voltages are unbalanced by {percent:.1} %; look for a broken neutral or a lost line."
        ));
    }
    match read.rotation {
        Some((before, now)) if before != now => {
            why.push("The lines turn the other way than before the work: motors would run backwards. Two lines are exchanged.".into());
        }
        _ => {}
    }
    Presence { as_expected: why.is_empty(), why, unbalance }
}

/// Whether one reading is there and within tolerance.
fn check(why: &mut Vec<String>, what: &str, volts: f64, nominal: f64, read: &Energised) {
    let (least, most) = read.tolerance.band(nominal);
    if !volts.is_finite() || volts < 0.0 {
        why.push(format!("{what} has no reading."));
    } else if nominal == 0.0 {
        // The earthed corner: a few volts are the drop along the way.
        if volts > MISSING * read.line_line {
            why.push(format!("{what} reads {volts:.1} V, and this corner should be at earth."));
        }
    } else if volts < MISSING * nominal {
        why.push(format!("{what} reads {volts:.1} V: it is missing."));
    } else if volts < least || volts > most {
        why.push(format!("{what} reads {volts:.1} V, outside {least:.1} to {most:.1} V."));
    }
}

/// Line-to-line against line-to-neutral: the square root of three in a star.
fn together(why: &mut Vec<String>, read: &Energised, expected: &[f64; 3]) {
    let sum: f64 = expected.iter().sum();
    let ratio = read.between.iter().sum::<f64>() / read.to_neutral.iter().sum::<f64>();
    let wanted = 3.0 * read.line_line / sum;
    if (ratio / wanted - 1.0).abs() > TOGETHER {
        why.push("The line-to-line voltages do not belong to those to neutral: read both again.".into());
    }
}

/// Negative over positive sequence from the three line-to-line magnitudes, in per cent: the true unbalance factor as
/// IEC 61000-4-30 gives it for magnitudes, sqrt((1 - sqrt(3 - 6 b)) / (1 + sqrt(3 - 6 b))) with b = sum of V^4 / (sum of V^2)^2.
pub fn unbalance(between: [f64; 3]) -> Option<f64> {
    if between.iter().any(|v| !v.is_finite() || *v <= 0.0) {
        return None;
    }
    let square: f64 = between.iter().map(|v| v * v).sum();
    let b = between.iter().map(|v| v.powi(4)).sum::<f64>() / (square * square);
    let root = (3.0 - 6.0 * b).max(0.0).sqrt();
    Some(100.0 * ((1.0 - root).max(0.0) / (1.0 + root)).sqrt())
}
